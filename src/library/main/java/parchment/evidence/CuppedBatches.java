package parchment.evidence;

import java.util.List;
import java.util.Locale;
import parchment.display.Showable;
import parchment.evidence.finding.Wording;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/**
 * Compares the feature between batches that were scored and batches that were not.
 *
 * <p>If only the batches that went well were cupped, the answer speaks of those.
 */
final class CuppedBatches implements Showable {
    /** A difference is mentioned as one if Welch's t is beyond this and it is at least a quarter of the spread. */
    private static final double FAR = 2;

    private static final double NOTABLE_SHARE = 0.25;

    private final int cupped;
    private final int notCupped;
    private final double difference;
    private final double error;
    private final double spread;
    private final String feature;
    private final Unit unit;
    private final TemperatureUnit reader;

    private CuppedBatches(double[] cupped, double[] notCupped, String feature, Unit unit, TemperatureUnit reader) {
        this.cupped = cupped.length;
        this.notCupped = notCupped.length;
        this.difference = mean(cupped) - mean(notCupped);
        this.error = Math.sqrt(variance(cupped) / cupped.length + variance(notCupped) / notCupped.length);
        this.spread = Math.sqrt(variance(cupped));
        this.feature = feature;
        this.unit = unit;
        this.reader = reader;
    }

    static CuppedBatches of(
            List<Double> cupped, List<Double> notCupped, String feature, Unit unit, TemperatureUnit reader) {
        return new CuppedBatches(
                cupped.stream().mapToDouble(value -> value).toArray(),
                notCupped.stream().mapToDouble(value -> value).toArray(),
                feature,
                unit,
                reader);
    }

    /** Returns how many batches with the feature were not scored. */
    public int notCupped() {
        return notCupped;
    }

    /** Returns the mean of the scored batches less that of the others, as the library keeps the feature; NaN if there are no others. */
    public double difference() {
        return difference;
    }

    /** Says whether the scored batches differ from the others in the feature. */
    public boolean differ() {
        return Math.abs(difference) > FAR * error && Math.abs(difference) > NOTABLE_SHARE * spread;
    }

    @Override
    public String toString() {
        if (notCupped == 0) {
            return "Every batch with a " + feature + " was scored.";
        }
        if (notCupped < 3 || cupped < 3) {
            return Wording.count(notCupped, "batch with a " + feature + " was", "batches with a " + feature + " were")
                    + " not scored; that is too few to compare them with the scored ones.";
        }
        Unit fitting = unit.withDigitsFor(2 * error, reader);
        String size = fitting.formatStep(Math.abs(difference), reader);
        return String.format(
                Locale.ROOT,
                differ()
                        ? "The %d scored batches differ from the %d that were not scored: their mean %s is %s %s (give or take"
                                + " %s). The answer speaks of batches like the scored ones."
                        : "The %d scored batches and the %d that were not scored had about the same mean %s (%s %s, give or take"
                                + " %s).",
                cupped,
                notCupped,
                feature,
                size,
                difference < 0 ? "lower" : "higher",
                fitting.formatStep(2 * error, reader));
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return values.length == 0 ? Double.NaN : sum / values.length;
    }

    private static double variance(double[] values) {
        double mean = mean(values);
        double sum = 0;
        for (double value : values) {
            sum += (value - mean) * (value - mean);
        }
        return values.length < 2 ? Double.NaN : sum / (values.length - 1);
    }
}
