package parchment.logbook.contents;

import java.util.Arrays;

/**
 * Finds the scale that scores are taken to be on where none is written: the smallest of 0 to 10, 0 to 20 and 0 to 100 (and ten times more,
 * and so on) that holds at least 95 in 100 of them, so that a slip of the pen makes no scale.
 *
 * @param top its upper end
 * @param above how many scores lie above it
 * @param scores how many there are
 */
public record AssumedScale(double top, int above, int scores) {
    /** Share of the scores that it must hold; common practice, no source. */
    static final double SHARE_HELD = 0.95;

    private static final double[] FIRST = {10, 20, 100};

    /** Returns the scale of some scores; 0 to 10 if there are none. */
    public static AssumedScale of(double[] scores) {
        double[] known = Arrays.stream(scores).filter(Double::isFinite).toArray();
        double top = FIRST[0];
        for (int next = 1; above(known, top) > (1 - SHARE_HELD) * known.length; next++) {
            top = next < FIRST.length ? FIRST[next] : 10 * top;
        }
        return new AssumedScale(top, above(known, top), known.length);
    }

    private static int above(double[] scores, double top) {
        return (int) Arrays.stream(scores).filter(score -> score > top).count();
    }
}
