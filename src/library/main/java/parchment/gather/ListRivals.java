package parchment.gather;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import parchment.sheet.Words;

/**
 * Finds two lists that say different things of the same batches, such as a plan and what was done, and asks which of them stands.
 *
 * <p>A few differences are slips, and are told where the values are put together.
 */
final class ListRivals {
    private static final int FEWEST = 3;

    /** Holds two lists in the order in which their rows stand. */
    private record Pair(FoundTable first, FoundTable second) {}

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
        // Which of two tables stands before which.
        Set<Pair> settled = new HashSet<>();
        boolean[] turned = {false};
        differing.forEach((pair, differences) -> {
            if (differences.size() >= FEWEST) {
                boolean second = secondStands(pair, List.copyOf(differences.values()), questions);
                settled.add(second ? new Pair(pair.second(), pair.first()) : pair);
                turned[0] |= second;
            }
        });
        return turned[0] ? roasts.stream().map(roast -> inOrder(roast, settled)).toList() : roasts;
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
        String first = TablePlace.of(pair.first()).stem();
        String second = TablePlace.of(pair.second()).stem();
        String choices = first + ", " + second;
        return questions
                .ask(
                        "lists." + GatherQuestions.key(first) + "." + GatherQuestions.key(second),
                        TablePlace.of(pair.first()).shown() + " and "
                                + TablePlace.of(pair.second()).shown() + " say different things of "
                                + Words.count(differences.size(), "batch", "batches") + ", such as "
                                + differences.get(0).shown() + ". Which of the two stands, " + first + " or " + second
                                + "?",
                        first,
                        List.of(first, second)::contains,
                        choices,
                        differences.size())
                .equals(second);
    }

    /** Puts rows behind those that stand before them by an answer; what no answer is about stays where it is as far as it can. */
    private static ListedRoast inOrder(ListedRoast roast, Set<Pair> settled) {
        List<ListedBatch> left = new ArrayList<>(roast.rows());
        List<ListedBatch> rows = new ArrayList<>();
        while (!left.isEmpty()) {
            ListedBatch next = left.stream()
                    .filter(row ->
                            left.stream().noneMatch(other -> settled.contains(new Pair(other.table(), row.table()))))
                    .findFirst()
                    // Answers that go round in a circle leave the order of the lists.
                    .orElse(left.get(0));
            rows.add(next);
            left.remove(next);
        }
        return new ListedRoast(roast.name(), rows);
    }
}
