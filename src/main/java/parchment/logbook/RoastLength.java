package parchment.logbook;

import java.util.Locale;
import parchment.quantity.Elapsed;

/**
 * Parts a roast from a clock in the wrong unit, by how long one may be from charge to drop; common practice, no source. A curve that is
 * shorter or longer was most likely logged in another unit of time than its heading says, which nobody but the roaster can know: it is
 * asked, and never converted by a guess.
 */
public final class RoastLength {
    /** No roast is dropped sooner after charge, in seconds. */
    public static final double SHORTEST_SECONDS = 60;

    /** No roast is dropped later after charge, in seconds: two hours, far beyond any drum roast. */
    public static final double LONGEST_SECONDS = 7200;

    /** A short curve of fewer readings may be one that was cut; a column without a unit is asked about in any case. */
    private static final int FEWEST_READINGS = 10;

    private RoastLength() {}

    /** Asks about the unit where readings of a clock, in order, span less or more than a roast; what was before zero is not counted. */
    static void ask(Readings readings, int[] order, TimeColumn time, String heading, ProblemLog problems) {
        if (order.length == 0) {
            return;
        }
        double first = readings.secondsAt(order[0]);
        double last = readings.secondsAt(order[order.length - 1]);
        double length = last > 0 ? last - Math.max(0, first) : last - first;
        boolean isShort = length < SHORTEST_SECONDS && order.length >= FEWEST_READINGS && !time.isGuessed();
        if (isShort || length > LONGEST_SECONDS) {
            problems.add(
                    0,
                    heading,
                    String.format(Locale.ROOT, "a curve of %s (%,.0f s)", Elapsed.seconds(length), length),
                    "a roast of one minute to two hours",
                    "kept, but no mark and no answer uses a curve whose roast is shorter or longer. "
                            + (isShort ? time.perhapsLonger() : time.perhapsShorter()));
        }
    }
}
