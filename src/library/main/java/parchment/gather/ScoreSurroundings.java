package parchment.gather;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import parchment.sheet.Words;

/** Reads what stands around a table of scores: above it, on its tab, in its file's name. */
final class ScoreSurroundings {
    private static final Pattern CUPPING = Pattern.compile(
            "\\b(cuppings?|tastings?|scores?|verkostung|bewertung|sensor\\w+|catas?|degusta\\w+|assaggi\\w*|prova)\\b");

    private final Map<ScorePart, String> said = new EnumMap<>(ScorePart.class);
    private final Map<ScorePart, String> where = new EnumMap<>(ScorePart.class);
    private final List<String> told = new ArrayList<>();
    private final Set<String> used = new HashSet<>();
    private Optional<double[]> scale = Optional.empty();
    private List<String> groups = List.of();
    private boolean calledCupping;
    private final ScoreSections sections;

    private ScoreSurroundings(ScoreSections sections) {
        this.sections = sections;
    }

    static ScoreSurroundings of(FoundTable table, ScoreClues clues) {
        ScoreSurroundings around = new ScoreSurroundings(ScoreSections.of(table, clues));
        around.corner(table, clues);
        int last = table.above().size() - 1;
        if (last >= 0 && isGroupRow(table.above().get(last), table)) {
            around.groups = spread(table.above().get(last), table.headings().size());
            last--;
        }
        for (int i = 0; i <= last; i++) {
            around.line(table.above().get(i), clues);
        }
        // "Blad1" and "Tabelle2" are what a spreadsheet calls its tabs by itself, in whatever language.
        if (!table.sheet().tab().matches("\\p{L}+\\d{1,2}")) {
            around.name(table.sheet().tab(), "the tab's name", clues);
        }
        String file = String.valueOf(table.sheet().file().getFileName());
        String name = file.replaceFirst("\\.[^.]*$", "");
        // A word that is a file's whole name is as often what its sheet is called, in some language.
        if (!name.matches("\\p{L}+") || isKnown(name, clues)) {
            around.name(name, "the file's name", clues);
        } else {
            around.calledCupping |= CUPPING.matcher(ScoreWords.plain(name)).find();
        }
        return around;
    }

    // Names over a few columns each: nothing with a colon, a date or a sentence, and cells that stand apart.
    private static boolean isGroupRow(List<String> row, FoundTable table) {
        List<String> filled =
                row.stream().map(String::strip).filter(c -> !c.isEmpty()).toList();
        boolean labels = filled.stream().anyMatch(c -> c.contains(":") || c.length() > 40);
        boolean keys = !filled.isEmpty()
                && ScoreWords.key(filled.get(0))
                        .filter(part -> part != ScorePart.BATCH)
                        .isPresent()
                && filled.size() == 2
                && table.headings().size() > 3;
        Set<String> heads = new HashSet<>(table.headings().stream()
                .map(h -> h.replaceFirst("\\s+\\d+$", ""))
                .toList());
        boolean repeated = heads.size() < table.headings().size();
        return filled.size() >= 2
                && !labels
                && !keys
                && row.size() > 2
                && (repeated || filled.size() > 2)
                && row.get(0).isBlank();
    }

    private static List<String> spread(List<String> row, int width) {
        List<String> wide = new ArrayList<>();
        String over = "";
        for (int i = 0; i < width; i++) {
            String cell = i < row.size() ? row.get(i).strip() : "";
            over = cell.isEmpty() ? over : cell;
            wide.add(over);
        }
        return wide;
    }

    /** Over a column of attributes the corner is free for the batch that the whole table is of, as in "Roast no. 62". */
    private void corner(FoundTable table, ScoreClues clues) {
        String batch = table.headings().isEmpty()
                ? ""
                : ScoreHeads.bare(table.headings().get(0));
        if (clues.batches().contains(batch) && table.column(0).stream().allMatch(ScoreWords::isAttribute)) {
            say(ScorePart.BATCH, batch, "what stands in the corner of the table");
        }
    }

    private void line(List<String> row, ScoreClues clues) {
        List<String> cells =
                row.stream().map(String::strip).filter(c -> !c.isEmpty()).toList();
        for (int i = 0; i < cells.size(); i++) {
            String cell = cells.get(i);
            int colon = cell.indexOf(':');
            String label = colon > 0 ? cell.substring(0, colon) : cell;
            Optional<ScorePart> part = ScoreWords.key(label);
            String value = colon > 0 ? cell.substring(colon + 1).strip() : "";
            if (part.isPresent()
                    && value.isEmpty()
                    && i + 1 < cells.size()
                    && ScoreWords.key(cells.get(i + 1)).isEmpty()) {
                value = cells.get(++i);
            }
            if (sections.usesText(cell)) {
                continue;
            }
            if (part.isPresent() && !value.isEmpty()) {
                say(
                        part.get(),
                        part.get() == ScorePart.DAY ? date(value, clues) : value,
                        "what stands above the table");
            } else if (!title(cell, clues)) {
                told.add("Above the table stands " + Words.quote(cell) + ", which is not used.");
            }
        }
    }

    private boolean title(String cell, ScoreClues clues) {
        ScoreHead head = ScoreHead.of(cell);
        if (head.scale().isPresent()
                && ScoreWords.plain(cell).matches(".*\\b(scale|skala|escala|scala|echelle)\\b.*")) {
            scale = head.scale();
            return true;
        }
        if (ScoreWords.isAttribute(cell) && ScoreWords.plain(cell).split(" ").length <= 2) {
            say(ScorePart.ATTRIBUTE, cell, "what stands above the table");
            return true;
        }
        Optional<WrittenDay> day = WrittenDay.find(cell);
        day.ifPresent(d -> say(ScorePart.DAY, written(d, clues), "what stands above the table"));
        return day.isPresent();
    }

    private static boolean isKnown(String word, ScoreClues clues) {
        return ScoreWords.isAttribute(word) || clues.cuppers().stream().anyMatch(word::equalsIgnoreCase);
    }

    private void name(String name, String place, ScoreClues clues) {
        calledCupping |= CUPPING.matcher(ScoreWords.plain(name)).find();
        WrittenDay.find(name).ifPresent(day -> say(ScorePart.DAY, written(day, clues), place));
        if (ScoreWords.isAttribute(name) && ScoreWords.plain(name).split(" ").length <= 2) {
            say(ScorePart.ATTRIBUTE, name, place);
            return;
        }
        List<String> names = new ArrayList<>();
        for (String word : name.replaceAll("\\d[\\d._-]*", " ").split("[\\s_,;()-]+")) {
            if (clues.cuppers().stream().anyMatch(word::equalsIgnoreCase)) {
                say(ScorePart.CUPPER, word, place);
                return;
            }
            if (!word.isBlank() && !isCommon(word)) {
                names.add(word);
            }
        }
        String left = String.join(" ", names);
        if (names.size() == 1) {
            String capital = left.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + left.substring(1);
            if (ScoreWords.isName(capital)) {
                say(ScorePart.CUPPER, capital, place);
            }
        }
    }

    /** Returns whether a text has a word that is no person's name. */
    static boolean hasCommonWords(String text) {
        return List.of(text.split("[\\s_,;()-]+")).stream().anyMatch(ScoreSurroundings::isCommon);
    }

    private static boolean isCommon(String word) {
        return ScoreWords.plain(word)
                .matches(
                        "|cuppings?|scores?|sheets?|verkostung(en)?|bewertung(en)?|cata(s)?|degustac\\w+|degustazion\\w|degustation\\w*"
                                + "|sensory|sensorik|session|of|by|von|de|di|da|del|the|and|und|y|e|et|fiche|scheda|hoja|ficha|bogen|blatt"
                                + "|results?|ergebnisse?|resultados?|risultati|notes?|punkte|coffee|kaffee|cafe|caffe|table|tabelle|tab"
                                + "|january|february|march|april|may|june|july|august|september|october|november|december|week|new|final"
                                + "|copy|kopie|data|list|liste|lista|elenco|panel|blind|tasting|sample|form|csv|xlsx|averages?|mean|key|round|test|roasts?|batch(es)?");
    }

    private void say(ScorePart part, String value, String place) {
        if (!value.isBlank() && said.putIfAbsent(part, value.strip()) == null) {
            where.put(part, place);
        }
    }

    private static String date(String value, ScoreClues clues) {
        return WrittenDay.find(value).map(day -> written(day, clues)).orElse(value);
    }

    private static String written(WrittenDay date, ScoreClues clues) {
        return date.on(clues.dates()).map(LocalDate::toString).orElse(date.written());
    }

    /** Returns what is said of all cups of the table, "" if nothing is. */
    String said(ScorePart part) {
        return said.containsKey(part) ? said.getOrDefault(part, "") : sections.first(part);
    }

    /** Returns what the lines over parts of the sheet say of a row. */
    Map<ScorePart, String> over(int line) {
        return sections.over(line);
    }

    /** Returns what the table leaves out; a line that says whom the rows below are of is none of it. */
    List<String> leftOut(FoundTable table) {
        return table.leftOut().stream()
                .filter(sentence -> !sections.uses(sentence))
                .toList();
    }

    /** Returns whether the file or tab is called a cupping. */
    boolean isCalledCupping() {
        return calledCupping;
    }

    /** Returns the same, and notes that it was needed. */
    String use(ScorePart part) {
        if (said.containsKey(part)
                && used.add(part.words())
                && !where.getOrDefault(part, "").startsWith("what")) {
            told.add(Words.quote(said.get(part)) + " is taken for the "
                    + (part == ScorePart.DAY ? "day of tasting" : part.words()) + " of every row: it stands in "
                    + where.get(part) + ".");
        }
        return said.getOrDefault(part, "");
    }

    /** Returns what stands over each column, or nothing if no row of groups stands above the headings. */
    List<String> groups() {
        return groups;
    }

    Optional<double[]> scale() {
        return scale;
    }

    List<String> told() {
        List<String> all = new ArrayList<>(told);
        all.addAll(sections.told());
        return all;
    }
}
