package parchment.gather;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * Finds the rows that a recording may be without looking at all of them: those of a name that stands in its file's name or first lines, and those of its day or
 * of a time near its own. Nothing but another day connects it with the others.
 */
final class JoinCandidates {
    private static final Duration NEAR = Duration.ofSeconds(JoinEvidence.NEAR_SECONDS);

    private final Map<String, List<Integer>> byName = new HashMap<>();
    private final Map<String, List<Integer>> byNumber = new HashMap<>();
    private final Map<String, List<Integer>> byMarkedNumber = new HashMap<>();
    private final Map<String, List<Integer>> byWords = new HashMap<>();
    private final Map<LocalDate, List<Integer>> byDay = new HashMap<>();

    /** A name of signs alone is looked for everywhere. */
    private final List<Integer> ofSigns = new ArrayList<>();

    private int mostWords;

    JoinCandidates(List<JoinRow> rows) {
        for (int r = 0; r < rows.size(); r++) {
            JoinRow row = rows.get(r);
            int place = r;
            row.day().ifPresent(day -> add(byDay, day, place));
            if (row.name().isEmpty()) {
                continue;
            }
            add(byName, row.plain(), r);
            if (row.isNumber()) {
                row.number().ifPresent(number -> add(byNumber, number, place));
            } else {
                inWords(row.inName(), r);
            }
            if (row.name().matches("\\d+")) {
                add(byMarkedNumber, row.inLines(), r);
            } else {
                inWords(row.inLines(), r);
            }
            if (row.inName().isEmpty()) {
                ofSigns.add(r);
            }
        }
    }

    private void inWords(String words, int row) {
        add(byWords, words, row);
        mostWords = Math.max(mostWords, words.split(" ").length);
    }

    private static <T> void add(Map<T, List<Integer>> rows, T key, int row) {
        rows.computeIfAbsent(key, k -> new ArrayList<>()).add(row);
    }

    /** Returns the places of the rows, rising. */
    TreeSet<Integer> of(JoinEvidence.Curve curve) {
        TreeSet<Integer> found = new TreeSet<>(ofSigns);
        curve.day().ifPresent(day -> found.addAll(byDay.getOrDefault(day, List.of())));
        curve.batch().roastedAt().ifPresent(at -> {
            found.addAll(byDay.getOrDefault(dayOf(at.minus(NEAR)), List.of()));
            found.addAll(byDay.getOrDefault(dayOf(at.plus(NEAR)), List.of()));
        });
        named(found, curve.plain());
        curve.aliases().forEach(alias -> named(found, alias));
        for (JoinEvidence.Title title : curve.titles()) {
            named(found, title.plain());
            title.number().ifPresent(number -> named(found, number));
        }
        curve.cells().forEach(cell -> named(found, cell));
        curve.afterWord().ifPresent(number -> named(found, number));
        curve.numbers().forEach(number -> found.addAll(byNumber.getOrDefault(number, List.of())));
        worded(found, curve.inName().strip());
        curve.above()
                .forEach(cells -> cells.forEach(cell -> {
                    worded(found, BatchNumbers.words(cell));
                    BatchNumbers.numbered(cell)
                            .ifPresent(number -> found.addAll(byMarkedNumber.getOrDefault(number, List.of())));
                }));
        return found;
    }

    private static LocalDate dayOf(LocalDateTime at) {
        return at.toLocalDate();
    }

    private void named(TreeSet<Integer> found, String plain) {
        found.addAll(byName.getOrDefault(plain, List.of()));
    }

    /** Adds the rows whose names stand in a text as words of their own. */
    private void worded(TreeSet<Integer> found, String text) {
        String[] words = text.split(" ");
        for (int from = 0; from < words.length; from++) {
            StringBuilder name = new StringBuilder();
            for (int to = from; to < words.length && to < from + mostWords; to++) {
                name.append(to == from ? "" : " ").append(words[to]);
                found.addAll(byWords.getOrDefault(name.toString(), List.of()));
            }
        }
    }
}
