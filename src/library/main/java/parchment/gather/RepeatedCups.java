package parchment.gather;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import parchment.sheet.Words;

/**
 * Counts cups where several rows are of one batch and one cupper, or of nobody, and nothing tells them apart: the first is cup 1, the second cup 2. That
 * they are cups and not cuppers without names cannot be told from the sheet, so it is asked.
 */
record RepeatedCups(List<TastedCup> cups, List<String> told, List<String> open) {
    RepeatedCups {
        cups = List.copyOf(cups);
        told = List.copyOf(told);
        open = List.copyOf(open);
    }

    static RepeatedCups of(List<TastedCup> read) {
        Map<List<String>, List<TastedCup>> alike = new LinkedHashMap<>();
        for (TastedCup cup : read) {
            alike.computeIfAbsent(
                            List.of(
                                    cup.tastedOn().map(Object::toString).orElse(""),
                                    cup.cupping(),
                                    cup.cupper(),
                                    cup.batch(),
                                    cup.code(),
                                    cup.lot()),
                            key -> new ArrayList<>())
                    .add(cup);
        }
        alike.values().removeIf(cups -> cups.size() < 2 || !isRepeated(cups));
        Map<TastedCup, Integer> numbers = new IdentityHashMap<>();
        alike.values().forEach(cups -> {
            for (int i = 0; i < cups.size(); i++) {
                numbers.put(cups.get(i), i + 1);
            }
        });
        List<String> told = new ArrayList<>();
        List<String> open = new ArrayList<>();
        if (!alike.isEmpty()) {
            told.add("Nothing tells these rows of one batch apart, and they are read as cups 1, 2 and so on: "
                    + alike.values().stream().map(RepeatedCups::shown).collect(Collectors.joining("; ")) + ".");
            alike.values().forEach(cups -> same(cups).ifPresent(told::add));
            if (alike.values().stream().anyMatch(cups -> cups.get(0).cupper().isEmpty())) {
                open.add("Are rows of one batch that name nobody several cups, or one cup of several cuppers?"
                        + " Until a column says who scored, they are cups of one panel.");
            }
        }
        return new RepeatedCups(
                read.stream()
                        .map(cup -> cup.numbered(numbers.getOrDefault(cup, cup.cup())))
                        .toList(),
                told,
                open);
    }

    // A row for each attribute of one cup is no second cup.
    private static boolean isRepeated(List<TastedCup> cups) {
        Set<String> attributes = new HashSet<>();
        boolean twice = false;
        for (TastedCup cup : cups) {
            for (String attribute : cup.scores().keySet()) {
                twice |= !attributes.add(attribute);
            }
        }
        return twice
                && cups.stream().allMatch(cup -> cup.cup() == 0 && !cup.scores().isEmpty());
    }

    private static Optional<String> same(List<TastedCup> cups) {
        Map<Map<String, Double>, List<TastedCup>> byScores = cups.stream()
                .collect(Collectors.groupingBy(TastedCup::scores, LinkedHashMap::new, Collectors.toList()));
        List<String> same = byScores.entrySet().stream()
                .filter(entry -> entry.getKey().size() > 1 && entry.getValue().size() > 1)
                .map(entry -> lines(entry.getValue()))
                .toList();
        return same.isEmpty()
                ? Optional.empty()
                : Optional.of("The " + String.join(" and the ", same) + " of " + name(cups.get(0))
                        + " hold the same scores: if one was pasted twice, take it out.");
    }

    private static String shown(TastedCup first, String lines) {
        return name(first) + (first.cupper().isEmpty() ? "" : " by " + Words.quote(first.cupper())) + ", " + lines;
    }

    private static String shown(List<TastedCup> cups) {
        return shown(cups.get(0), lines(cups));
    }

    private static String name(TastedCup cup) {
        return Words.quote(!cup.batch().isEmpty() ? cup.batch() : !cup.code().isEmpty() ? cup.code() : cup.lot());
    }

    private static String lines(List<TastedCup> cups) {
        return "lines " + cups.stream().map(cup -> String.valueOf(cup.line())).collect(Collectors.joining(", "));
    }
}
