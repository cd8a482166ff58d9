package parchment.logbook;

import java.util.Locale;
import parchment.logbook.written.RoastLength;
import parchment.quantity.Elapsed;

/** Asks about the unit of a curve whose roast is shorter or longer than a roast may be. */
final class LengthQuestion {
    /** A short curve of fewer readings may be one that was cut; a column without a unit is asked about in any case. */
    private static final int FEWEST_READINGS = 10;

    private LengthQuestion() {}

    /** Asks about the unit where readings of a clock, in order, span less or more than a roast; what was before zero is not counted. */
    static void ask(Readings readings, int[] order, TimeColumn time, String heading, ProblemLog problems) {
        if (order.length == 0) {
            return;
        }
        double first = readings.secondsAt(order[0]);
        double last = readings.secondsAt(order[order.length - 1]);
        double length = last > 0 ? last - Math.max(0, first) : last - first;
        boolean isShort = length < RoastLength.SHORTEST_SECONDS && order.length >= FEWEST_READINGS && !time.isGuessed();
        if (isShort || length > RoastLength.LONGEST_SECONDS) {
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
