package parchment.phase;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;

/**
 * A roast by other equations than those of the virtual roastery, for measurements of marks only.
 *
 * <p>Beans follow the air by Newton's law and lose heat to drying; the probe sees beans and air through two lags one after the other, so
 * that its reading turns down smoothly after the charge and after the drop, where the virtual roastery's has a corner. All numbers are
 * invented.
 */
final class OtherRoast {
    private static final double STEP = 0.1;
    private static final double BEFORE = 120;
    private static final int SIZE = 15_000;

    final double turningPoint;
    final double drop;
    private final double[] reading = new double[SIZE];

    OtherRoast(Random random) {
        double first = between(random, 10, 25);
        double second = between(random, 3, 12);
        double covered = between(random, 0.75, 0.92);
        double idle = between(random, 175, 215);
        double gain = 1 / between(random, 230, 300);
        double hot = between(random, 265, 310);
        double wanted = between(random, 197, 222);
        double cool = between(random, 60, 120);
        double creep = random.nextGaussian() * 0.02;
        double air = idle;
        double bean = 22;
        double one = idle;
        double two = idle;
        double lowest = Double.POSITIVE_INFINITY;
        double turned = Double.NaN;
        double dropped = Double.NaN;
        for (int i = 0; i < SIZE; i++) {
            double t = i * STEP - BEFORE;
            if (t < 0) {
                reading[i] = idle + creep * t;
                continue;
            }
            reading[i] = two;
            if (two < lowest && t < 300) {
                lowest = two;
                turned = t;
            }
            if (Double.isNaN(dropped) && t > 300 && two >= wanted) {
                dropped = t;
            }
            // Gas is taken away twice; the air follows within a minute.
            double target = t < 240 ? hot : t < 420 ? hot - 15 : hot - 28;
            air += STEP * (target - 0.35 * (target - bean) - air) / 55;
            double drying = 0.05 * Math.exp(-Math.pow((bean - 120) / 30, 2));
            bean += STEP * (gain * (air - bean) - drying);
            double seen = Double.isNaN(dropped) ? covered * bean + (1 - covered) * air : cool;
            double before = one;
            one += STEP * (seen - one) / first;
            // Half of the step's own change is seen: else the reading would fall half a step before the drop.
            two += STEP * (0.5 * (before + one) - two) / second;
        }
        turningPoint = turned;
        drop = dropped;
    }

    private static double between(Random random, double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    /** What the probe reads without noise, in seconds since charge. */
    DoubleUnaryOperator course() {
        return t -> {
            double at = Math.max(0, Math.min(SIZE - 2, (t + BEFORE) / STEP));
            int i = (int) at;
            return reading[i] + (at - i) * (reading[i + 1] - reading[i]);
        };
    }
}
