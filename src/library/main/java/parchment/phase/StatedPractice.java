package parchment.phase;

import parchment.logbook.MarkKind;
import parchment.stats.mixed.NewGroupForecast.Forecast;

/**
 * Gives where a mark is usually written where a logbook does not teach it: common practice, no source.
 *
 * <p>Yellowing around 155 °C and the start of first crack around 196 °C, on a bean probe in a drum; between probes and machines these
 * differ by {@value #BETWEEN_PROBES} °C as a standard deviation, and one roaster's marks on one probe by {@value #ON_ONE_PROBE} °C. A few
 * written marks move the expected temperature towards them, as the mean of two normal statements does.
 */
final class StatedPractice {
    static final double BETWEEN_PROBES = 7;
    static final double ON_ONE_PROBE = 3;

    private StatedPractice() {}

    /** Returns the usual temperature of a mark in °C. */
    static double celsius(MarkKind kind) {
        return kind == MarkKind.YELLOWING ? 155 : 196;
    }

    /** Returns what to expect of one more mark after a few written ones. */
    static Forecast after(MarkKind kind, double[] written) {
        double prior = 1 / (BETWEEN_PROBES * BETWEEN_PROBES);
        double data = 0;
        double sum = prior * celsius(kind);
        for (double celsius : written) {
            data += 1 / (ON_ONE_PROBE * ON_ONE_PROBE);
            sum += celsius / (ON_ONE_PROBE * ON_ONE_PROBE);
        }
        double weight = prior + data;
        return new Forecast(sum / weight, Math.sqrt(1 / weight + ON_ONE_PROBE * ON_ONE_PROBE));
    }
}
