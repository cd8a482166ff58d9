package parchment.gather;

import java.util.List;
import java.util.Optional;
import parchment.sheet.Words;

/**
 * Tells a pair whose clocks differ by something else than those of the day's other pairs: two clocks keep their difference for a day.
 *
 * <p>The figures are our own: a list in minutes and a charge that is read off scatter by a minute or so.
 */
final class DayClock {
    static final int FEWEST = 3;
    static final long ALIKE_SECONDS = 90;
    private static final double MOST = 2 / 3.0;

    private DayClock() {}

    /**
     * Returns in words that a pair's difference is not the day's; empty if it is, or if the day has none.
     *
     * @param others by how many seconds the recording's clock is ahead of the list's, in each other pair of the day whose drops fit
     * @param own the same of the pair
     */
    static Optional<String> against(List<Long> others, long own) {
        if (others.size() < FEWEST) {
            return Optional.empty();
        }
        long middle = others.stream().sorted().toList().get(others.size() / 2);
        long alike = others.stream()
                .filter(other -> Math.abs(other - middle) <= ALIKE_SECONDS)
                .count();
        if (alike < FEWEST || alike < MOST * others.size() || Math.abs(own - middle) <= JoinEvidence.CLOSE_SECONDS) {
            return Optional.empty();
        }
        return Optional.of("in " + alike + " others of that day whose drops fit, the recording is " + later(middle)
                + " the list, and here " + later(own) + " it");
    }

    private static String later(long seconds) {
        long minutes = Math.round(Math.abs(seconds) / 60.0);
        return Words.count(minutes, "minute", "minutes") + (seconds < 0 ? " before" : " after");
    }
}
