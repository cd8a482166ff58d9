package parchment.chart;

import java.util.Locale;

/** Refuses what cannot be drawn, in words. */
final class ChartChecks {
    private ChartChecks() {}

    static double[] sameLength(String what, double[] xs, String name, double[] values) {
        if (xs.length != values.length) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "%s needs as many %s as positions along x; it was given %d and %d. Leave a missing one as NaN.",
                    what,
                    name,
                    values.length,
                    xs.length));
        }
        return values.clone();
    }

    static double finite(String what, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(
                    what + " needs a finite position; it was given " + value + ". Leave it out where it is missing.");
        }
        return value;
    }
}
