package parchment.picture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.sheet.Words;
import parchment.stats.linear.Robust;

/**
 * Numbers by group, for boxes beside each other.
 *
 * @param drawn the groups with enough numbers, from left to right
 * @param notes what is not drawn, in sentences; empty ones say nothing
 */
record Groups(List<Group> drawn, List<String> notes) {
    /** Quarters of fewer say more of the batches that happened to be there than of the group. Common practice, no source. */
    static final int FEWEST = 5;

    /** So many boxes still have room for their names. */
    static final int MOST = 12;

    /** How groups stand beside each other. */
    enum Order {
        LARGEST_FIRST,
        BY_NAME
    }

    /** One group, its numbers sorted. */
    record Group(String name, List<Double> numbers) {
        double quantile(double share) {
            return Robust.quantile(numbers.stream().mapToDouble(x -> x).toArray(), share);
        }
    }

    /**
     * Groups numbers.
     *
     * @param names the group of each row; empty where it is in none
     * @param what what a group is called, and many of them
     */
    static Groups of(DrawnNumbers measure, List<String> names, DrawnNumbers.Named what, Order order) {
        Map<String, List<Double>> byName = new LinkedHashMap<>();
        int inNone = 0;
        for (int i = 0; i < measure.values().size(); i++) {
            double value = measure.values().get(i);
            if (!Double.isFinite(value)) {
                continue;
            }
            if (names.get(i).isBlank()) {
                inNone++;
            } else {
                byName.computeIfAbsent(names.get(i), name -> new ArrayList<>()).add(value);
            }
        }
        List<Group> large = byName.entrySet().stream()
                .filter(entry -> entry.getValue().size() >= FEWEST)
                .map(entry -> new Group(
                        entry.getKey(), entry.getValue().stream().sorted().toList()))
                .sorted(Comparator.comparingInt(group -> -group.numbers().size()))
                .toList();
        // Of too many months the newest are wanted, of too many lots or machines the largest.
        List<Group> byTheirName =
                large.stream().sorted(Comparator.comparing(Group::name)).toList();
        List<Group> drawn = order == Order.BY_NAME
                ? byTheirName.subList(Math.max(0, byTheirName.size() - MOST), byTheirName.size())
                : large.subList(0, Math.min(MOST, large.size()));
        return new Groups(
                drawn,
                List.of(
                        small(measure, byName, what),
                        rest(large.size() - drawn.size(), what, order),
                        inNone == 0
                                ? ""
                                : measure.rows().counted(inNone) + (inNone == 1 ? " names" : " name") + " no "
                                        + what.one() + " and " + (inNone == 1 ? "is" : "are") + " not drawn."));
    }

    private static String small(DrawnNumbers measure, Map<String, List<Double>> byName, DrawnNumbers.Named what) {
        int[] sizes = byName.values().stream()
                .mapToInt(List::size)
                .filter(size -> size < FEWEST)
                .toArray();
        return sizes.length == 0
                ? ""
                : String.format(
                        Locale.ROOT,
                        "%s with fewer than %d %s %s no box (%s).",
                        Words.count(sizes.length, what.one(), what.many()),
                        FEWEST,
                        measure.rows().many(),
                        sizes.length == 1 ? "has" : "have",
                        measure.rows().counted(Arrays.stream(sizes).sum()));
    }

    private static String rest(int left, DrawnNumbers.Named what, Order order) {
        return left <= 0
                ? ""
                : String.format(
                        Locale.ROOT,
                        "There is room for %d boxes; %d %s %s %s not drawn.",
                        MOST,
                        left,
                        order == Order.BY_NAME ? "earlier" : "smaller",
                        left == 1 ? what.one() : what.many(),
                        left == 1 ? "is" : "are");
    }

    /** Returns the group whose middle is lowest, and the one whose middle is highest. */
    Optional<List<Group>> farthest() {
        Comparator<Group> byMiddle = Comparator.comparingDouble(group -> group.quantile(0.5));
        return drawn.size() < 2
                ? Optional.empty()
                : Optional.of(List.of(
                        drawn.stream().min(byMiddle).orElseThrow(),
                        drawn.stream().max(byMiddle).orElseThrow()));
    }
}
