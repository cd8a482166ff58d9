package parchment.logbook;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Problem;

/**
 * Looks for what stands in a logbook twice: the readings of one roast under two names, and the scores of one cup.
 *
 * <p>What is counted twice makes every answer look surer than it is, so nothing of it is passed over. A row of scores that repeats another in
 * every cell is set aside, if it names the cup or its place in the order of serving; without either it may be a second cup that happened to
 * get the same scores. That is believed only of a table that elsewhere gives such rows different scores.
 */
final class Duplicates {
    private Duplicates() {}

    /** Names batches whose bean temperatures are the same reading for reading; all are kept. */
    static List<Problem> curves(List<CurveFolder.Entry> entries, String shownFolder) {
        String expected = "readings of its own; no two roasts are alike to the last digit";
        String done = "both kept as two batches: if they are one, take one out, else it counts twice";
        Map<Long, String> seen = new LinkedHashMap<>();
        AlikeProblems problems = new AlikeProblems(shownFolder, "", expected, done);
        for (CurveFolder.Entry entry : entries) {
            String file = shownFolder + entry.batch() + ".csv";
            String other = entry.fingerprint() == 0 ? null : seen.putIfAbsent(entry.fingerprint(), file);
            if (other != null) {
                problems.add(
                        () -> new Problem(file, 0, "", "the same bean temperatures as in " + other, expected, done));
            }
        }
        return problems.toList();
    }

    /** What tells one cup of one cupper from another. */
    private record Cup(
            String cupping,
            String cupper,
            String batch,
            Optional<String> blindCode,
            Optional<String> cup,
            OptionalInt servingPosition) {
        static Cup of(CupScores scores) {
            return new Cup(
                    scores.cupping(),
                    scores.cupper(),
                    scores.batch(),
                    scores.blindCode(),
                    scores.cup(),
                    scores.servingPosition());
        }

        boolean isNamed() {
            return cup.isPresent() || servingPosition.isPresent();
        }
    }

    /** Returns the cups without the rows that only repeat another; those and second scores of one cup are problems. */
    static CuppingFiles.Cups cups(CuppingFiles.Cups read, ProblemLog problems) {
        boolean severalUnnamed = hasSeveralUnnamed(read.cups());
        Map<CupScores, Integer> rows = new LinkedHashMap<>();
        Map<Cup, Integer> scored = new LinkedHashMap<>();
        List<CupScores> kept = new ArrayList<>();
        List<Integer> lines = new ArrayList<>();
        for (int i = 0; i < read.cups().size(); i++) {
            CupScores scores = read.cups().get(i);
            int line = read.lines().get(i);
            Cup cup = Cup.of(scores);
            Integer same = rows.putIfAbsent(scores, line);
            Integer before = scored.putIfAbsent(cup, line);
            if (same != null && (cup.isNamed() || !severalUnnamed)) {
                problems.add(
                        line,
                        "batch",
                        "line " + same + " again, cell for cell (" + words(scores) + ")",
                        "one row for each cup that a cupper scored; a second cup has its own number in the column 'cup'",
                        "row set aside, the first one kept");
                continue;
            }
            if (same != null) {
                problems.add(
                        line,
                        "cup",
                        "the scores of line " + same + " again (" + words(scores) + ")",
                        "the number of the cup, which tells a second cup from a row that was copied",
                        "kept as a second cup");
            } else if (before != null && cup.isNamed()) {
                problems.add(
                        line,
                        "cup",
                        "other scores of the cup on line " + before + " (" + words(scores) + ")",
                        "one row for each cup that a cupper scored",
                        "both kept: if one is a slip, take it out");
            }
            kept.add(scores);
            lines.add(line);
        }
        return new CuppingFiles.Cups(kept, lines);
    }

    /** Whether rows that name no cup are several cups: somewhere two of them have different scores. */
    private static boolean hasSeveralUnnamed(List<CupScores> all) {
        Map<Cup, CupScores> first = new LinkedHashMap<>();
        return all.stream().anyMatch(scores -> {
            Cup cup = Cup.of(scores);
            CupScores before = first.putIfAbsent(cup, scores);
            return !cup.isNamed() && before != null && !before.scores().equals(scores.scores());
        });
    }

    private static String words(CupScores scores) {
        return scores.cupper() + ", " + scores.cupping() + ", batch " + scores.batch()
                + scores.cup().map(cup -> ", cup " + cup).orElse("");
    }
}
