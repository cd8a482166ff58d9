package parchment.gather;

import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.sheet.Words;

/**
 * Names where a recording stands: a file, or a tab of a workbook.
 *
 * @param file the file
 * @param tab the tab's name; "" in a text file
 */
record TablePlace(Path file, String tab) {
    /** What spreadsheets call a tab that nobody named (common practice, no source). */
    private static final Pattern UNNAMED_TAB =
            Pattern.compile("(?iu)(?:sheet|tabelle|blatt|hoja|feuille?|foglio|folha|planilha|plan)\\s*(\\d*)");

    static TablePlace of(FoundTable table) {
        return new TablePlace(table.sheet().file(), table.sheet().tab());
    }

    /** Returns the file's name as it is told to a person, with the tab's if it has one. */
    String shown() {
        return Words.quote(String.valueOf(file.getFileName())) + (tab.isEmpty() ? "" : ", sheet " + Words.quote(tab));
    }

    /** Returns what a batch is called if nothing names it: the tab's name, or the file's without its ending. */
    String stem() {
        String name = String.valueOf(file.getFileName());
        int dot = name.lastIndexOf('.');
        String whole = dot > 0 ? name.substring(0, dot) : name;
        Matcher unnamed = UNNAMED_TAB.matcher(tab.strip());
        if (tab.isBlank() || unnamed.matches() && unnamed.group(1).matches("|1")) {
            return whole;
        }
        return unnamed.matches() ? whole + "-" + unnamed.group(1) : tab.strip();
    }
}
