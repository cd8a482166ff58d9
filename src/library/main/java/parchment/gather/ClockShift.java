package parchment.gather;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import parchment.sheet.Words;

/**
 * Finds stretches of days on which the loggers' clock and the lists' differ by a constant: one that was not put to summer time, or one of another zone.
 *
 * <p>Each day is scored under each difference of whole quarter hours up to two hours: pairs of recordings and rows whose times then are at most
 * {@link JoinEvidence#CLOSE_SECONDS} apart, more if the drops fit or both have one number, less if they differ. The run of differences with the highest sum over
 * all days is found, where each change of the clock costs {@link #CHANGE}. These figures are our own.
 *
 * @param from the first day of the stretch
 * @param to its last day
 * @param behind by how much the loggers' clock is behind the lists'; below 0 if it is ahead
 * @param fit how many recordings fit a row under it
 * @param of how many recordings of the stretch could fit a row
 * @param open whether the stretch begins with the first day known, ends with the last one, both or neither
 */
record ClockShift(LocalDate from, LocalDate to, Duration behind, int fit, int of, Reach open) {
    enum Reach {
        ALL,
        FROM,
        UNTIL,
        BETWEEN
    }

    static final int FEWEST = 5;
    private static final int CHANGE = 4;
    private static final int QUARTERS = 8;
    private static final double MOST_FIT = 0.8;
    private static final Duration QUARTER = Duration.ofMinutes(15);

    private record Fit(int pairs, int points) {}

    private record Day(LocalDate date, List<JoinEvidence.Curve> curves, List<JoinRow> roasts) {
        Fit under(Duration behind) {
            List<JoinEvidence.Curve> free = new ArrayList<>(curves);
            int pairs = 0;
            int points = 0;
            for (JoinRow roast : roasts) {
                LocalDateTime at = roast.roastedAt().orElseThrow().minus(behind);
                JoinEvidence.Curve nearest = free.stream()
                        .min(Comparator.comparing(curve -> apart(curve, at)))
                        .orElse(null);
                if (nearest != null && apart(nearest, at) <= JoinEvidence.CLOSE_SECONDS) {
                    free.remove(nearest);
                    pairs++;
                    points += 2 + JoinEvidence.agreement(nearest, roast);
                }
            }
            return new Fit(pairs, Math.max(points, 0));
        }

        private static long apart(JoinEvidence.Curve curve, LocalDateTime at) {
            return Duration.between(curve.batch().roastedAt().orElseThrow(), at)
                    .abs()
                    .toSeconds();
        }

        int possible() {
            return Math.min(curves.size(), roasts.size());
        }
    }

    /** Returns the stretches, in the order of time; none where the clocks agree or nothing clear can be said. */
    static List<ClockShift> in(List<GatheredBatch> curves, List<ListedRoast> roasts) {
        List<Day> days = days(curves, roasts);
        int[] quarters = best(days);
        List<ClockShift> shifts = new ArrayList<>();
        for (int first = 0; first < days.size(); ) {
            int end = first + 1;
            while (end < days.size() && quarters[end] == quarters[first]) {
                end++;
            }
            if (quarters[first] != 0) {
                List<Day> stretch = days.subList(first, end);
                Duration behind = QUARTER.multipliedBy(quarters[first]);
                Fit moved = sum(stretch, behind);
                Fit asItIs = sum(stretch, Duration.ZERO);
                int of = stretch.stream().mapToInt(Day::possible).sum();
                if (moved.pairs() >= FEWEST
                        && moved.pairs() >= MOST_FIT * of
                        && moved.points() >= 2 * asItIs.points()) {
                    shifts.add(new ClockShift(
                            days.get(first).date(),
                            days.get(end - 1).date(),
                            behind,
                            moved.pairs(),
                            of,
                            reach(first == 0, end == days.size())));
                }
            }
            first = end;
        }
        return shifts;
    }

    private static Reach reach(boolean begins, boolean ends) {
        return begins ? ends ? Reach.ALL : Reach.UNTIL : ends ? Reach.FROM : Reach.BETWEEN;
    }

    private static Fit sum(List<Day> days, Duration behind) {
        List<Fit> all = days.stream().map(day -> day.under(behind)).toList();
        return new Fit(
                all.stream().mapToInt(Fit::pairs).sum(),
                all.stream().mapToInt(Fit::points).sum());
    }

    /** Returns the quarter hours of each day that give the highest sum, a change of the clock counted against it. */
    private static int[] best(List<Day> days) {
        int states = 2 * QUARTERS + 1;
        int[] sums = new int[states];
        int[][] cameFrom = new int[days.size()][states];
        for (int s = 0; s < states; s++) {
            sums[s] = s == QUARTERS ? 0 : -CHANGE;
        }
        for (int d = 0; d < days.size(); d++) {
            int[] before = sums;
            int highest = IntStream.range(0, states)
                    .boxed()
                    .max(Comparator.comparing(s -> before[s]))
                    .orElseThrow();
            int[] next = new int[states];
            for (int s = 0; s < states; s++) {
                boolean stays = d == 0 || before[s] >= before[highest] - CHANGE;
                cameFrom[d][s] = stays ? s : highest;
                next[s] = (stays ? before[s] : before[highest] - CHANGE)
                        + days.get(d).under(QUARTER.multipliedBy(s - QUARTERS)).points();
            }
            sums = next;
        }
        int[] last = sums;
        int state = IntStream.range(0, states)
                .boxed()
                .max(Comparator.<Integer, Integer>comparing(s -> last[s]).thenComparing(s -> -Math.abs(s - QUARTERS)))
                .orElseThrow();
        int[] quarters = new int[days.size()];
        for (int d = days.size() - 1; d >= 0; d--) {
            quarters[d] = state - QUARTERS;
            state = cameFrom[d][state];
        }
        return quarters;
    }

    private static List<Day> days(List<GatheredBatch> curves, List<ListedRoast> roasts) {
        Map<LocalDate, Day> days = new TreeMap<>();
        for (ListedRoast roast : roasts) {
            roast.roastedAt().ifPresent(at -> day(days, at).roasts().add(JoinRow.of(roast)));
        }
        for (GatheredBatch curve : curves) {
            curve.roastedAt().ifPresent(at -> day(days, at).curves().add(JoinEvidence.Curve.of(curve)));
        }
        return days.values().stream().filter(day -> day.possible() > 0).toList();
    }

    private static Day day(Map<LocalDate, Day> days, LocalDateTime at) {
        return days.computeIfAbsent(at.toLocalDate(), date -> new Day(date, new ArrayList<>(), new ArrayList<>()));
    }

    /** Returns the key of its question. */
    String key() {
        return "clock." + from;
    }

    /** Returns what was found, as a sentence. */
    String words() {
        String when = switch (open) {
            case ALL -> "On all days";
            case FROM -> "From " + from + " on";
            case UNTIL -> "Up to " + to;
            case BETWEEN -> "From " + from + " to " + to;
        };
        return when + " the logger's clock is " + length() + (behind.isNegative() ? " ahead of" : " behind")
                + " the list's: " + fit + " of " + of + " recordings fit a row so.";
    }

    private String length() {
        long minutes = behind.abs().toMinutes();
        return minutes == 60 ? "one hour" : minutes == 120 ? "two hours" : Words.count(minutes, "minute", "minutes");
    }

    boolean holds(LocalDateTime at) {
        return !at.toLocalDate().isBefore(from) && !at.toLocalDate().isAfter(to);
    }
}
