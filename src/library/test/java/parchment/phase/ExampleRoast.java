package parchment.phase;

import java.util.function.DoubleUnaryOperator;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.quantity.Elapsed;
import parchment.quantity.Unit;

/**
 * A roast whose every number can be worked out by hand.
 *
 * <p>Before charge the probe reads 180 °C. From then on it reads 80 + 0.2 t + 100 exp(-t/25) °C: it falls to its lowest where
 * 4 exp(-t/25) = 0.2, at t = 25 ln 20 = 74.893 s and 80 + 0.2 · 74.893 + 5 = 99.979 °C, and from about 200 s on it rises by 12 °C/min.
 * Yellowing is at 360 s (152 °C), first crack at 600 s (200 °C), the drop at 740 s (228 °C).
 */
public final class ExampleRoast {
    public static final double TURNING_POINT_SECONDS = 25 * Math.log(20);
    public static final double TURNING_POINT_CELSIUS = 80 + 0.2 * TURNING_POINT_SECONDS + 5;
    public static final DoubleUnaryOperator BEAN = t -> t < 0 ? 180 : 80 + 0.2 * t + 100 * Math.exp(-t / 25);

    private ExampleRoast() {}

    public static Curve curve(String name, Unit unit, DoubleUnaryOperator of, double from, double to, double every) {
        int n = (int) Math.floor((to - from) / every + 1e-9) + 1;
        double[] x = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = from + i * every;
            y[i] = of.applyAsDouble(x[i]);
        }
        return Curve.of(name, unit, x, y);
    }

    public static Curve bean(double from, double to) {
        return curve("bean temperature", Unit.TEMPERATURE, BEAN, from, to, 2);
    }

    /** The curve from 40 s before charge to the drop, no mark written. */
    public static Batch.Builder unwritten() {
        return Batch.named("112").curve(Quantity.BEAN_TEMPERATURE, bean(-40, 740));
    }

    /** The same with all marks written. */
    public static Batch.Builder written() {
        return unwritten()
                .writtenMark(MarkKind.YELLOWING, Elapsed.seconds(360))
                .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(600))
                .writtenMark(MarkKind.DROP, Elapsed.seconds(740));
    }
}
