package parchment.gather;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import parchment.sheet.Words;

/**
 * Finds two lists that say different things of the same batches, such as a plan and what was done, and asks which of them stands.
 *
 * <p>A few differences are slips, and are told where the values are put together.
 */
final class ListRivals {
    private static final int FEWEST = 3;

    /** Holds two lists in the order in which their rows stand. */
    private record Pair(Table first, Table second) {}

    private record Difference(String batch, String heading, String first, String second) {
        String shown() {
            return batch + ", " + heading + ": " + first + " and " + second;
        }
    }

    private ListRivals() {}

    /** Returns the rows with those first that stand where lists differ. */
    static List<ListedRoast> settled(List<ListedRoast> roasts, GatherQuestions questions) {
        Map<Pair, Map<String, Difference>> differing = new LinkedHashMap<>();
        roasts.forEach(roast -> compare(roast, differing));
        List<Pair> turned = new ArrayList<>();
        differing.forEach((pair, differences) -> {
            if (differences.size() >= FEWEST && secondStands(pair, List.copyOf(differences.values()), questions)) {
                turned.add(pair);
            }
        });
        return turned.isEmpty()
                ? roasts
                : roasts.stream().map(roast -> turned(roast, turned)).toList();
    }

    /** Notes the first difference of each batch. */
    private static void compare(ListedRoast roast, Map<Pair, Map<String, Difference>> differing) {
        for (int i = 1; i < roast.rows().size(); i++) {
            ListedBatch later = roast.rows().get(i);
            for (ListedBatch earlier : roast.rows().subList(0, i)) {
                if (earlier.table() == later.table()) {
                    continue;
                }
                earlier.written().forEach((heading, value) -> {
                    String other = later.written().getOrDefault(heading, value);
                    if (!other.equals(value) && !heading.equals("note")) {
                        differing
                                .computeIfAbsent(
                                        new Pair(earlier.table(), later.table()), pair -> new LinkedHashMap<>())
                                .putIfAbsent(roast.shown(), new Difference(roast.shown(), heading, value, other));
                    }
                });
            }
        }
    }

    private static boolean secondStands(Pair pair, List<Difference> differences, GatherQuestions questions) {
        String first = Source.of(pair.first()).stem();
        String second = Source.of(pair.second()).stem();
        String choices = first + ", " + second;
        return questions
                .ask(
                        "lists." + GatherQuestions.key(first) + "." + GatherQuestions.key(second),
                        Source.of(pair.first()).shown() + " and "
                                + Source.of(pair.second()).shown() + " say different things of "
                                + Words.count(differences.size(), "batch", "batches") + ", such as "
                                + differences.get(0).shown() + ". Which of the two stands, " + first + " or " + second
                                + "?",
                        first,
                        List.of(first, second)::contains,
                        choices,
                        differences.size())
                .equals(second);
    }

    private static ListedRoast turned(ListedRoast roast, List<Pair> turned) {
        List<ListedBatch> rows = new ArrayList<>(roast.rows());
        Comparator<ListedBatch> order = (one, other) -> turned.contains(new Pair(one.table(), other.table()))
                ? 1
                : turned.contains(new Pair(other.table(), one.table())) ? -1 : 0;
        rows.sort(order);
        return new ListedRoast(roast.name(), rows);
    }
}
