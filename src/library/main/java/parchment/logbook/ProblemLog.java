package parchment.logbook;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import parchment.logbook.written.Problem;
import parchment.sheet.TextReader;

/**
 * Collects the problems of one file while it is read.
 *
 * <p>Of problems that are alike the first {@value #ALIKE_KEPT} are kept one by one and the rest is counted, so that a file of a
 * million bad rows gives a list that can be read and held. Not for use by several threads.
 */
final class ProblemLog {
    static final int ALIKE_KEPT = 100;

    private record Kind(String column, String expected, String done) {}

    private final String file;
    private final List<Problem> list = new ArrayList<>();
    private final Map<Kind, Integer> seen = new LinkedHashMap<>();

    ProblemLog(String file) {
        this.file = file;
    }

    String file() {
        return file;
    }

    void add(int line, String column, String found, String expected, String done) {
        if (seen.merge(new Kind(column, expected, done), 1, Integer::sum) <= ALIKE_KEPT) {
            list.add(new Problem(file, line, column, found, expected, done));
        }
    }

    /** Returns what was collected, with a line for each kind that was met too often to list. */
    List<Problem> toList() {
        List<Problem> all = new ArrayList<>(list);
        seen.forEach((kind, count) -> {
            if (count > ALIKE_KEPT) {
                String found = (count - ALIKE_KEPT) + " more like the " + ALIKE_KEPT + " before";
                all.add(new Problem(file, 0, kind.column(), found, kind.expected(), kind.done()));
            }
        });
        return all;
    }

    /** Tells of letters that are not UTF-8, once for the file and with the line of the first; asked when the text was read. */
    void encoding(TextReader text) {
        text.other()
                .ifPresent(other ->
                        add(other.line(), "", "letters that are not UTF-8", "UTF-8", "read as " + other.encoding()));
    }

    /** Tells of columns that something else than a comma keeps apart, and returns that sign. */
    char delimiter(char found) {
        if (found != ',') {
            add(
                    0,
                    "",
                    found == ';' ? "semicolons between the columns" : "tabs between the columns",
                    "commas",
                    "read with them, and a comma in a number taken for the decimal comma");
        }
        return found;
    }
}
