package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Reads random score sheets of known truth and counts what becomes of each score: right; named, where what is told or asked speaks of its line, its
 * column or the sheet; or lost or wrong in silence. {@code RandomScoreSheetStudy FIRST-LAST} prints a line for each layout and what is wrong in silence.
 */
public final class RandomScoreSheetStudy {
    enum Fate {
        RIGHT,
        NAMED,
        LOST_IN_SILENCE,
        WRONG_IN_SILENCE
    }

    private final Map<Fate, Integer> counts = new TreeMap<>();
    private final List<String> silent = new ArrayList<>();

    private RandomScoreSheetStudy() {}

    static RandomScoreSheetStudy of(RandomScoreSheet made) {
        RandomScoreSheetStudy study = new RandomScoreSheetStudy();
        study.measure(made);
        return study;
    }

    Map<Fate, Integer> counts() {
        return counts;
    }

    /** Returns what was lost or wrong in silence, a line each. */
    List<String> silent() {
        return silent;
    }

    private void measure(RandomScoreSheet made) {
        Map<String, Double> left = new LinkedHashMap<>(made.truth());
        List<String> said = new ArrayList<>();
        List<String> cuppers = new ArrayList<>(ScoreForms.cuppers(made.tables(), ScoreClues.of(made.batches())));
        List<String> wrong = new ArrayList<>();
        boolean unread = false;
        for (FoundTable table : made.tables()) {
            var sheet = ScoreSheets.of(table, ScoreClues.of(made.batches()).withCuppers(cuppers));
            unread |= sheet.isEmpty();
            if (sheet.isPresent()) {
                said.addAll(sheet.get().told());
                said.addAll(sheet.get().open());
                sheet.get()
                        .cups()
                        .forEach(cup -> cup.scores().forEach((attribute, score) -> {
                            List<String> keys = List.of(
                                    RandomScoreSheet.key(cup.batch(), cup.cupper(), attribute),
                                    RandomScoreSheet.key(cup.batch(), cup.cupper(), ""));
                            String found = keys.stream()
                                    .filter(key -> score.equals(left.get(key)))
                                    .findFirst()
                                    .or(() -> cup(left, cup, attribute, score))
                                    .orElse("");
                            if (found.isEmpty()) {
                                wrong.add("line " + cup.line() + " " + keys.get(0) + " = " + score);
                            } else {
                                left.remove(found);
                            }
                        }));
            }
        }
        add(Fate.RIGHT, made.truth().size() - left.size());
        // "Are 'A' and 'B' cuppers?" asks about every score of the sheet, and a table of no scores is named whole.
        boolean asked = said.stream().anyMatch(line -> line.startsWith("Are '") || line.contains("by 'Nobody'"));
        for (String lost : left.keySet()) {
            String cell = made.cells().getOrDefault(lost, "");
            boolean named = unread
                    || asked
                    || said.stream()
                            .anyMatch(line -> line.contains("'" + cell + "'")
                                    || line.contains("sums or means of the rows above") && line.contains(cell));
            add(named ? Fate.NAMED : Fate.LOST_IN_SILENCE, 1);
            if (!named) {
                silent.add("lost " + lost + " " + cell);
            }
        }
        for (String line : wrong) {
            if (!asked) {
                add(Fate.WRONG_IN_SILENCE, 1);
                silent.add("wrong " + line);
            }
        }
    }

    /** Finds a cup of nobody's among those of its batch: a row without scores is none, so that their numbers need not be the truth's. */
    private static Optional<String> cup(Map<String, Double> left, TastedCup cup, String attribute, double score) {
        return left.entrySet().stream()
                .filter(entry -> cup.cup() > 0
                        && entry.getValue() == score
                        && entry.getKey().startsWith(cup.batch() + " /  ")
                        && entry.getKey().endsWith(" / " + attribute.toLowerCase(Locale.ROOT)))
                .map(Map.Entry::getKey)
                .findFirst();
    }

    private void add(Fate fate, int count) {
        counts.merge(fate, count, Integer::sum);
    }

    public static void main(String[] arguments) {
        String[] range = arguments[0].split("-");
        Map<RandomScoreSheet.Layout, Map<Fate, Integer>> byLayout = new TreeMap<>();
        int shown = 0;
        for (long seed = Long.parseLong(range[0]); seed <= Long.parseLong(range[1]); seed++) {
            RandomScoreSheet made = new RandomScoreSheet(seed);
            RandomScoreSheetStudy study = of(made);
            study.counts.forEach((fate, count) -> byLayout.computeIfAbsent(made.layout(), layout -> new TreeMap<>())
                    .merge(fate, count, Integer::sum));
            if (!study.silent.isEmpty() && shown++ < 12) {
                System.out.println("seed " + seed + ": " + made.shown() + "  " + study.silent);
            }
        }
        byLayout.forEach((layout, counts) -> System.out.println(String.format(
                Locale.ROOT,
                "| %s | %s |",
                layout.name().toLowerCase(Locale.ROOT).replace('_', ' '),
                counts)));
    }
}
