package parchment.phase;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import parchment.curve.Curve;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.phase.found.Mark;
import parchment.virtual.Scenario;
import parchment.virtual.SealedTruth;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.VirtualRoastery;

/**
 * Measures how often what is read off logs that were switched on late holds the truth of the virtual roastery.
 *
 * <p>Run {@link #main} with seeds for the table of docs/measurements/marks.md.
 */
final class LateStartStudy {
    /** How late a first reading is a late one here, whatever the library takes for one. */
    private static final double LATE_SECONDS = 15;

    private LateStartStudy() {}

    /** Prints a row for each seed and each thing that is read. */
    public static void main(String[] seeds) {
        List<double[]> every = new ArrayList<>();
        for (String seed : seeds) {
            VirtualLogbook made = VirtualRoastery.of(Scenario.named("untidy-year"))
                    .withBatches(150)
                    .withSeed(Long.parseLong(seed))
                    .run();
            Logbook logbook = made.opened();
            SealedTruth truth = made.truth();
            List<double[]> late = new ArrayList<>();
            for (Phases phases : Phases.of(logbook)) {
                boolean isLate = phases.batch()
                        .curve(Quantity.BEAN_TEMPERATURE)
                        .filter(curve -> isLate(curve))
                        .isPresent();
                if (isLate) {
                    late.add(row(phases, truth.batch(phases.batch().name())));
                }
            }
            print(seed, late);
            every.addAll(late);
        }
        print("together", every);
    }

    private static boolean isLate(Curve curve) {
        return !curve.isEmpty() && curve.secondsAt(0) > LATE_SECONDS;
    }

    /** For charge, turning point, drop and the drop's temperature: 1 held, 0 not, NaN missing. */
    private static double[] row(Phases phases, Map<String, Double> truth) {
        double charge = phases.mark(MarkKind.CHARGE).map(Mark::standardError).orElse(0.0);
        return new double[] {
            held(phases.chargeOnLogger(), charge),
            phases.mark(MarkKind.TURNING_POINT)
                    .map(turn -> held(
                            turn.seconds() - truth.get("turning point [s]"), Math.hypot(charge, turn.standardError())))
                    .orElse(Double.NaN),
            phases.mark(MarkKind.DROP)
                    .map(drop -> held(drop.seconds() - truth.get("drop [s]"), Math.hypot(charge, drop.standardError())))
                    .orElse(Double.NaN),
            phases.mark(MarkKind.DROP)
                    .filter(drop -> drop.beanTemperature().isPresent())
                    .map(drop -> held(
                            drop.beanTemperature().orElseThrow().celsius() - truth.get("drop reading [°C]"),
                            drop.beanTemperatureStandardError()))
                    .orElse(Double.NaN)
        };
    }

    private static double held(double off, double error) {
        return Math.abs(off) <= 1.645 * error ? 1 : 0;
    }

    private static void print(String seed, List<double[]> late) {
        StringBuilder row = new StringBuilder("| " + seed + " | " + late.size());
        for (int k = 0; k < 4; k++) {
            int at = k;
            double[] known = late.stream()
                    .mapToDouble(one -> one[at])
                    .filter(value -> !Double.isNaN(value))
                    .toArray();
            double share = java.util.Arrays.stream(known).average().orElse(Double.NaN);
            row.append(String.format(
                    Locale.ROOT,
                    " | %.0f of %d, %.0f ± %.0f %%",
                    java.util.Arrays.stream(known).sum(),
                    known.length,
                    100 * share,
                    100 * Math.sqrt(share * (1 - share) / Math.max(1, known.length))));
        }
        System.out.println(row.append(" |"));
    }
}
