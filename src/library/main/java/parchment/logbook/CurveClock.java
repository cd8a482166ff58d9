package parchment.logbook;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Locale;
import java.util.stream.IntStream;
import parchment.sheet.Words;

/**
 * Puts the readings of a curve file in an order in which time strictly rises, and says what it took.
 *
 * <p>Rows that are out of order all over the file are sorted. A clock that jumps (back by more than ten seconds, or forward over a
 * gap of ten minutes and a hundred usual steps) leaves stretches that cannot be put on one clock: the longest is kept.
 */
final class CurveClock {
    private static final double SMALL_STEP_BACK = 10;
    private static final double LONG_GAP = 600;
    private static final double USUAL_STEPS_IN_A_GAP = 100;
    private static final int FEW_DESCENTS = 3;

    private final Readings readings;
    private final String heading;
    private final ProblemLog problems;

    private CurveClock(Readings readings, String heading, ProblemLog problems) {
        this.readings = readings;
        this.heading = heading;
        this.problems = problems;
    }

    /** Returns the places of the readings that are kept, in order. */
    static int[] order(Readings readings, String heading, ProblemLog problems) {
        return new CurveClock(readings, heading, problems).order();
    }

    private int[] order() {
        int[] all = IntStream.range(0, readings.size()).toArray();
        int descents = 0;
        int firstDescent = -1;
        int ascents = 0;
        for (int i = 1; i < all.length; i++) {
            double step = readings.secondsAt(i) - readings.secondsAt(i - 1);
            ascents += step > 0 ? 1 : 0;
            if (step < 0) {
                firstDescent = descents == 0 ? i : firstDescent;
                descents++;
            }
        }
        if (descents > FEW_DESCENTS && (descents > all.length / 50 || ascents == 0)) {
            return withoutRepeats(fullest(sorted(all, descents, firstDescent)));
        }
        return withoutRepeats(fullest(withoutStepsBack(longestStretch(all))));
    }

    /** Returns the readings of the fullest {@link Bounds#LONGEST_RECORDING} seconds; no roast goes on for longer. */
    private int[] fullest(int[] order) {
        if (order.length == 0 || span(order, 0, order.length) <= Bounds.LONGEST_RECORDING) {
            return order;
        }
        int bestFrom = 0;
        int bestTo = 0;
        int from = 0;
        for (int to = 1; to <= order.length; to++) {
            while (span(order, from, to) > Bounds.LONGEST_RECORDING) {
                from++;
            }
            if (to - from > bestTo - bestFrom) {
                bestFrom = from;
                bestTo = to;
            }
        }
        problems.add(
                readings.lineAt(order[bestFrom == 0 ? bestTo : 0]),
                heading,
                String.format(Locale.ROOT, "readings over %,.0f s", span(order, 0, order.length)),
                String.format(Locale.ROOT, "one roast, or at most %,.0f s", Bounds.LONGEST_RECORDING),
                Words.count(order.length - (bestTo - bestFrom), "reading", "readings") + " left out");
        return Arrays.copyOfRange(order, bestFrom, bestTo);
    }

    private double span(int[] order, int from, int to) {
        return readings.secondsAt(order[to - 1]) - readings.secondsAt(order[from]);
    }

    private int[] sorted(int[] all, int descents, int firstDescent) {
        problems.add(
                readings.lineAt(firstDescent),
                heading,
                Words.count(descents, "time", "times") + " before the one above",
                "times that rise",
                "readings sorted by time");
        return IntStream.of(all)
                .boxed()
                .sorted(Comparator.comparingDouble(readings::secondsAt))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    private int[] longestStretch(int[] all) {
        double gap = Math.max(LONG_GAP, USUAL_STEPS_IN_A_GAP * usualStep(all));
        int from = 0;
        int bestFrom = 0;
        int bestTo = 0;
        int jumps = 0;
        int firstJump = 0;
        for (int i = 1; i <= all.length; i++) {
            double step = i == all.length ? Double.NaN : readings.secondsAt(i) - readings.secondsAt(i - 1);
            boolean jump = step < -SMALL_STEP_BACK || step > gap;
            if (jump) {
                firstJump = jumps == 0 ? i : firstJump;
                jumps++;
            }
            if (jump || i == all.length) {
                if (i - from > bestTo - bestFrom) {
                    bestFrom = from;
                    bestTo = i;
                }
                from = i;
            }
        }
        if (jumps == 0) {
            return all;
        }
        double step = readings.secondsAt(firstJump) - readings.secondsAt(firstJump - 1);
        problems.add(
                readings.lineAt(firstJump),
                heading,
                Words.count(jumps, "jump", "jumps") + " of the clock, the first by " + Math.round(step) + " s",
                "one clock from start to end",
                String.format(
                        Locale.ROOT,
                        "the longest stretch kept, lines %d to %d; %s left out",
                        readings.lineAt(bestFrom),
                        readings.lineAt(bestTo - 1),
                        Words.count(all.length - (bestTo - bestFrom), "reading", "readings")));
        return Arrays.copyOfRange(all, bestFrom, bestTo);
    }

    private double usualStep(int[] all) {
        double[] steps = new double[Math.max(all.length - 1, 0)];
        for (int i = 1; i < all.length; i++) {
            steps[i - 1] = Math.abs(readings.secondsAt(i) - readings.secondsAt(i - 1));
        }
        Arrays.sort(steps);
        return steps.length == 0 ? 0 : steps[steps.length / 2];
    }

    private int[] withoutStepsBack(int[] order) {
        int[] kept = new int[order.length];
        int size = 0;
        int left = 0;
        int first = 0;
        double latest = Double.NEGATIVE_INFINITY;
        for (int i : order) {
            if (readings.secondsAt(i) < latest) {
                first = left == 0 ? readings.lineAt(i) : first;
                left++;
            } else {
                kept[size++] = i;
                latest = readings.secondsAt(i);
            }
        }
        if (left > 0) {
            problems.add(
                    first,
                    heading,
                    "a clock that steps back, over " + Words.count(left, "reading", "readings"),
                    "times that rise",
                    "those readings left out until the clock had caught up");
        }
        return Arrays.copyOf(kept, size);
    }

    private int[] withoutRepeats(int[] order) {
        int[] kept = new int[order.length];
        int size = 0;
        int repeats = 0;
        int first = 0;
        for (int i : order) {
            if (size > 0 && readings.secondsAt(i) == readings.secondsAt(kept[size - 1])) {
                first = repeats == 0 ? readings.lineAt(i) : first;
                repeats++;
            } else {
                kept[size++] = i;
            }
        }
        if (repeats > 0) {
            problems.add(
                    first,
                    heading,
                    Words.count(repeats, "reading", "readings") + " at a time that was already read",
                    "one reading for each time",
                    "the first of each kept");
        }
        return Arrays.copyOf(kept, size);
    }
}
