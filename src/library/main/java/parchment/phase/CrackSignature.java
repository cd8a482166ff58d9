package parchment.phase;

/**
 * Reads the curve's own sign near first crack: where the rate of rise begins to fall away most sharply.
 *
 * <p>Beans that crack give off steam and may take up or give off heat; a probe among them may show it as a bend of the rate of rise. Whether
 * it does on a machine is not assumed: the habit uses the sign only as far as it foretells marks of other days. The place of the bend is
 * where the rate over the {@value #REACH_SECONDS} s before, less that over the {@value #REACH_SECONDS} s after, exceeds the steady fall the
 * most, within {@value #WINDOW_CELSIUS} °C of where the habit expects the mark. Both numbers are common practice, no source: the smoothing
 * window on either side, and the spread of first crack that roasters speak of.
 */
final class CrackSignature {
    static final double REACH_SECONDS = 40;
    static final double WINDOW_CELSIUS = 8;

    private CrackSignature() {}

    /** Returns the temperature of the bend in °C; NaN where the climb is too short to show one. */
    static double celsius(RisingPart climb, double expected) {
        double best = Double.NEGATIVE_INFINITY;
        double at = Double.NaN;
        for (double seconds : climb.times()) {
            double height = climb.celsiusAt(seconds);
            if (Math.abs(height - expected) > WINDOW_CELSIUS) {
                continue;
            }
            double before = climb.rateAt(seconds - REACH_SECONDS);
            double after = climb.rateAt(seconds + REACH_SECONDS);
            double bend = 2 * climb.rateAt(seconds) - before - after;
            if (bend > best) {
                best = bend;
                at = height;
            }
        }
        return at;
    }
}
