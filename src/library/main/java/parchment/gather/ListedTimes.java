package parchment.gather;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import parchment.logbook.MarkKind;
import parchment.sheet.Words;

/**
 * Helps to part a recording of several batches, by when the lists say that beans went into the drum and out of it.
 *
 * <p>The list's clock is believed where it and the falls agree for half of its rows at least.
 *
 * @param rows the rows with a date and time of their charge
 */
record ListedTimes(List<Row> rows) {
    static final ListedTimes NONE = new ListedTimes(List.of());

    /** Two clocks of a roastery are within as many seconds of one another (common practice, no source). */
    private static final double SAME = JoinEvidence.CLOSE_SECONDS;

    private static final double NEAR = 180;
    private static final double SOON = 60;
    private static final int FEWEST = 2;

    /**
     * Holds a row.
     *
     * @param shown its name
     * @param at when it was charged
     * @param drop when it was dropped, in seconds since the charge; NaN if that is not written
     */
    record Row(String shown, LocalDateTime at, double drop) {}

    ListedTimes {
        rows = List.copyOf(rows);
    }

    static ListedTimes of(List<ListedRoast> roasts) {
        return new ListedTimes(roasts.stream()
                .flatMap(roast -> roast.roastedAt().stream()
                        .map(at -> new Row(roast.shown(), at, roast.marks().getOrDefault(MarkKind.DROP, Double.NaN))))
                .sorted(Comparator.comparing(Row::at))
                .toList());
    }

    /** Holds a row in the seconds of a recording. */
    private record Placed(Row row, double at) {}

    private List<Placed> within(Recording recording) {
        List<Double> seconds = recording.seconds();
        if (seconds.isEmpty() || recording.zero().isEmpty()) {
            return List.of();
        }
        LocalDateTime zero = recording.zero().get();
        double last = seconds.get(seconds.size() - 1);
        return rows.stream()
                .map(row -> new Placed(row, Duration.between(zero, row.at()).toMillis() / 1000.0))
                .filter(placed -> placed.at() >= seconds.get(0) - SOON && placed.at() <= last - SOON)
                .toList();
    }

    /** Returns whether several rows were charged while it ran. */
    boolean speakOfSeveral(Recording recording) {
        return within(recording).size() >= FEWEST;
    }

    /** Returns the fall of each row, nearest first, each fall once; nothing where the clocks do not agree. */
    private static Map<Placed, Double> pairs(List<Placed> placed, List<Double> falls) {
        record Pair(Placed placed, double fall) {}
        List<Pair> near = new ArrayList<>();
        placed.forEach(one -> falls.stream()
                .filter(fall -> Math.abs(fall - one.at()) <= SAME)
                .forEach(fall -> near.add(new Pair(one, fall))));
        near.sort(Comparator.comparingDouble(
                pair -> Math.abs(pair.fall() - pair.placed().at())));
        Map<Placed, Double> pairs = new LinkedHashMap<>();
        near.forEach(pair -> {
            if (!pairs.containsKey(pair.placed()) && !pairs.containsValue(pair.fall())) {
                pairs.put(pair.placed(), pair.fall());
            }
        });
        return FEWEST * pairs.size() >= placed.size() ? pairs : Map.of();
    }

    /** Returns the falls of a recording of several batches that are charges by the list too; what differs is told. */
    List<Double> falls(Recording recording, List<Double> seen, GatherQuestions questions) {
        List<Placed> placed = within(recording);
        if (placed.size() < FEWEST) {
            return seen;
        }
        Map<Placed, Double> pairs = pairs(placed, seen);
        if (pairs.isEmpty()) {
            return seen;
        }
        TreeSet<Double> falls = new TreeSet<>(seen);
        String file = TablePlace.of(recording.file()).shown();
        // One row that agrees may do so by chance, and a batch would be lost by it.
        List<Double> inDoubt = pairs.size() < FEWEST ? List.of() : seen;
        for (double fall : inDoubt) {
            inside(pairs, fall).ifPresent(row -> {
                falls.remove(fall);
                questions.leaveOut(file + ": the bean temperature falls at " + recording.clock(fall)
                        + " as at a charge, but the list has " + Words.quote(row.shown())
                        + " in the drum then: no batch is made of it.");
            });
        }
        double off = offset(pairs);
        for (Placed one : placed) {
            if (pairs.containsKey(one)) {
                continue;
            }
            double expected = one.at() + off;
            Optional<Double> smaller = recording.beans().smallerFall(expected - NEAR, expected + NEAR).stream()
                    .filter(at -> falls.stream().noneMatch(fall -> Math.abs(fall - at) < ChargeFinder.SHORTEST_BATCH))
                    .filter(at -> inside(pairs, at).isEmpty())
                    .findFirst();
            if (smaller.isPresent()) {
                falls.add(smaller.get());
                questions.say(
                        "  " + file + ": the list has " + Words.quote(one.row().shown()) + " charged at "
                                + one.row().at().toLocalTime() + "; the bean temperature falls a little at "
                                + recording.clock(smaller.get()) + ", which is taken for that charge.");
            } else {
                questions.leaveOut(
                        file + ": the list has " + Words.quote(one.row().shown()) + " charged at "
                                + one.row().at().toLocalTime()
                                + ", where the bean temperature does not fall as at a charge.");
            }
        }
        return List.copyOf(falls);
    }

    /** Returns the row whose beans were in the drum at a fall, if the list says so. */
    private static Optional<Row> inside(Map<Placed, Double> pairs, double fall) {
        return pairs.entrySet().stream()
                .filter(pair -> fall > pair.getValue() + SOON
                        && fall < pair.getValue() + pair.getKey().row().drop()
                        && !pairs.containsValue(fall))
                .map(pair -> pair.getKey().row())
                .findFirst();
    }

    private static double offset(Map<Placed, Double> pairs) {
        double[] off = pairs.entrySet().stream()
                .mapToDouble(pair -> pair.getValue() - pair.getKey().at())
                .toArray();
        Arrays.sort(off);
        return off[off.length / 2];
    }

    /** Returns when the batch that was charged at a second was dropped, by the list; NaN if no row says it. */
    double drop(Recording recording, double charge) {
        return within(recording).stream()
                .filter(placed -> Math.abs(placed.at() - charge) <= SAME)
                .min(Comparator.comparingDouble(placed -> Math.abs(placed.at() - charge)))
                .map(placed -> charge + placed.row().drop())
                .orElse(Double.NaN);
    }
}
