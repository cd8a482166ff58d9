package parchment.gather;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Gives each style of recordings and each sheet its letter: the one it had in an earlier gathering, so that the answers of then are still its own, else the
 * next that is free.
 */
final class GatherStyles {
    private static final String STYLE = "style.";
    private static final String SHEET = "sheet.";
    private static final String STYLE_IS = ".headings";
    private static final String SHEET_IS = ".file";
    private static final int LONGEST = 300;

    private GatherStyles() {}

    /** Returns the styles, in the order of their letters. */
    static List<GatherStyle> of(List<StrangeFolder.Found> recordings, GatherQuestions questions) {
        Map<String, List<StrangeFolder.Found>> byKey = new LinkedHashMap<>();
        recordings.forEach(found -> byKey.computeIfAbsent(
                        GatherStyle.key(found.table(), found.proposals()), key -> new ArrayList<>())
                .add(found));
        Letters letters = new Letters(STYLE, STYLE_IS, questions);
        Map<String, GatherStyle> styles = new TreeMap<>(Letters.ORDER);
        letters.of(byKey.keySet()).forEach((letter, key) -> {
            List<StrangeFolder.Found> alike = byKey.getOrDefault(key, List.of());
            StrangeFolder.Found first = alike.get(0);
            GatherStyle style = new GatherStyle(letter, first.table(), first.columns(), first.proposals());
            alike.forEach(found -> style.add(found.table(), found.columns(), found.proposals()));
            styles.put(letter, style);
        });
        return new ArrayList<>(styles.values());
    }

    /** Returns the sheets by their letters. */
    static Map<String, FoundTable> letters(List<FoundTable> sheets, GatherQuestions questions, Path folder) {
        Map<String, FoundTable> byName = new LinkedHashMap<>();
        for (FoundTable sheet : sheets) {
            String name = folder.relativize(sheet.sheet().file()).toString().replace('\\', '/')
                    + (sheet.sheet().tab().isEmpty() ? "" : "|" + sheet.sheet().tab())
                    + place(sheet, sheets);
            String own = name;
            // Tables side by side may begin on one line with one heading.
            for (int i = 2; byName.containsKey(own); i++) {
                own = name + " " + i;
            }
            byName.put(own, sheet);
        }
        Map<String, FoundTable> lettered = new TreeMap<>(Letters.ORDER);
        new Letters(SHEET, SHEET_IS, questions).of(byName.keySet()).forEach((letter, name) -> {
            FoundTable sheet = byName.get(name);
            if (sheet != null) {
                lettered.put(letter, sheet);
            }
        });
        return lettered;
    }

    /** Tells tables of one sheet apart: the second and later ones by their line. */
    private static String place(FoundTable sheet, List<FoundTable> sheets) {
        FoundTable first = sheets.stream()
                .filter(other -> TablePlace.of(other).equals(TablePlace.of(sheet)))
                .findFirst()
                .orElse(sheet);
        return first == sheet || sheet.lines().isEmpty()
                ? ""
                : "|line " + sheet.lines().get(0) + " " + sheet.headings().get(0);
    }

    /** Keeps and finds letters again. */
    private record Letters(String begin, String end, GatherQuestions questions) {
        static final java.util.Comparator<String> ORDER =
                java.util.Comparator.comparingInt(String::length).thenComparing(java.util.Comparator.naturalOrder());

        /** Returns the names by their letters. */
        Map<String, String> of(Iterable<String> names) {
            Map<String, String> before = new LinkedHashMap<>();
            for (String key : questions.keys(begin)) {
                if (key.endsWith(end)) {
                    before.put(questions.raw(key), key.substring(begin.length(), key.length() - end.length()));
                }
            }
            Map<String, String> lettered = new LinkedHashMap<>();
            int next = 0;
            for (String name : names) {
                String shown = shown(name);
                String letter = before.get(shown);
                while (letter == null || lettered.containsKey(letter)) {
                    String free = letter(next++);
                    letter = before.containsValue(free) ? null : free;
                }
                lettered.put(letter, name);
                questions.keep(begin + letter + end, shown);
            }
            before.forEach((shown, letter) -> questions.keep(begin + letter + end, shown));
            return lettered;
        }

        private static String shown(String name) {
            String plain = name.replace("\t", " tab ")
                    .replaceAll("[\\p{Cc}\\\\]+", " ")
                    .strip();
            return plain.length() <= LONGEST ? plain : plain.substring(0, LONGEST) + " " + plain.hashCode();
        }

        private static String letter(int index) {
            String last = String.valueOf((char) ('a' + index % 26));
            return index < 26 ? last : letter(index / 26 - 1) + last;
        }
    }
}
