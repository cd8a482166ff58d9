package parchment.curve.measured;

import java.util.Locale;

/**
 * Sets what counts as a spike, a stuck probe and a gap.
 *
 * <p>Defaults of {@link #STANDARD}: a spike lies 5 robust standard deviations (and 3 steps of the logger) off the line through its
 * neighbours and is at most 3 readings wide; a probe is stuck when the curve should have moved by 4 steps of the logger or more
 * while it stood still for at least 8 seconds; a gap is more than 10 seconds, and more than 3 usual intervals, without a reading.
 *
 * @param spikeThreshold robust standard deviations beyond which a reading is a spike, above 0
 * @param widestSpike the most readings in a row that can be one spike, 1 or more
 * @param shortestStuck seconds that a reading must stand still before it is called stuck, 0 or more
 * @param stuckSteps steps of the logger that the curve should have moved meanwhile, above 0
 * @param longestHole seconds without a reading that are not yet a gap, 0 or more
 */
public record Cleaning(
        double spikeThreshold, int widestSpike, double shortestStuck, double stuckSteps, double longestHole) {

    /** The usual settings; common practice, no source, but for the filter itself (Hampel 1974; Pearson 2002). */
    public static final Cleaning STANDARD = new Cleaning(5, 3, 8, 4, 10);

    /** @throws IllegalArgumentException if a setting is out of its range */
    public Cleaning {
        require(spikeThreshold > 0, "a spike threshold above 0", spikeThreshold);
        require(widestSpike >= 1, "a widest spike of 1 reading or more", widestSpike);
        require(shortestStuck >= 0, "a shortest standstill of 0 s or more", shortestStuck);
        require(stuckSteps > 0, "a number of missed steps above 0", stuckSteps);
        require(longestHole >= 0, "a longest hole of 0 s or more", longestHole);
    }

    /** Returns the same settings with another threshold for spikes, in robust standard deviations. */
    public Cleaning withSpikeThreshold(double standardDeviations) {
        return new Cleaning(standardDeviations, widestSpike, shortestStuck, stuckSteps, longestHole);
    }

    /** Returns the same settings with another number of readings that can be one spike. */
    public Cleaning withWidestSpike(int readings) {
        return new Cleaning(spikeThreshold, readings, shortestStuck, stuckSteps, longestHole);
    }

    /** Returns the same settings with another shortest standstill. */
    public Cleaning withShortestStuck(double seconds) {
        return new Cleaning(spikeThreshold, widestSpike, seconds, stuckSteps, longestHole);
    }

    /** Returns the same settings with another time without a reading that is not yet a gap. */
    public Cleaning withLongestHole(double seconds) {
        return new Cleaning(spikeThreshold, widestSpike, shortestStuck, stuckSteps, seconds);
    }

    private static void require(boolean holds, String expected, double given) {
        if (!holds) {
            throw new IllegalArgumentException(
                    String.format(Locale.ROOT, "Cleaning a curve needs %s; it was given %s.", expected, given));
        }
    }
}
