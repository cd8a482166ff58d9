package parchment.gather;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** Tells from sheets with the same headings who filled in each: "Ana.csv" and "Teo.csv" of one form are a sheet of each cupper. */
final class ScoreForms {
    private ScoreForms() {}

    /** Returns the names that sheets of one form, two or more, are called by. */
    static Set<String> cuppers(Collection<FoundTable> tables, ScoreClues clues) {
        Map<List<String>, Set<String>> byForm = new LinkedHashMap<>();
        for (FoundTable table : tables) {
            String around = ScoreSurroundings.of(table, clues).said(ScorePart.CUPPER);
            String name = around.isEmpty() ? file(table) : around;
            if (!name.isEmpty()) {
                byForm.computeIfAbsent(table.headings(), form -> new TreeSet<>())
                        .add(name);
            }
        }
        Set<String> names = new TreeSet<>();
        byForm.values().stream().filter(some -> some.size() > 1).forEach(names::addAll);
        return names;
    }

    /** Returns the name of a file that is called by one word that can be a person's; "" otherwise. */
    private static String file(FoundTable table) {
        String name = String.valueOf(table.sheet().file().getFileName()).replaceFirst("\\.[^.]*$", "");
        String capital = name.isEmpty() ? "" : name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
        boolean person =
                ScoreWords.isName(capital) && !capital.contains(" ") && !ScoreSurroundings.hasCommonWords(name);
        return person ? capital : "";
    }
}
