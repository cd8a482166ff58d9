package parchment.logbook;

import java.util.Optional;
import parchment.sheet.Header;
import parchment.sheet.Words;

/** Counts the values of a column whose heading cannot be used, so that they are told and not dropped in silence. */
final class UnusableColumn {
    private final int index;
    private final String under;
    private final String expected;
    private int values;

    private UnusableColumn(int index, String under, String expected) {
        this.index = index;
        this.under = under;
        this.expected = expected;
    }

    /** Returns a count for a column whose heading is blank or longer than a name may be; nothing for any other. */
    static Optional<UnusableColumn> of(int index, Header header) {
        int length = header.written().length();
        if (length > 0 && length <= Bounds.LONGEST_NAME) {
            return Optional.empty();
        }
        return Optional.of(
                length == 0
                        ? new UnusableColumn(index, "no heading", "a heading that says what they are")
                        : new UnusableColumn(
                                index,
                                "a heading of " + length + " letters",
                                "a heading of at most " + Bounds.LONGEST_NAME));
    }

    int index() {
        return index;
    }

    void value() {
        values++;
    }

    /** Says how many values were left out; a column in which nothing stands is none. */
    void report(int line, ProblemLog problems) {
        if (values > 0) {
            problems.add(
                    line,
                    "column " + (index + 1),
                    Words.count(values, "value", "values") + " under " + under,
                    expected,
                    "column left out");
        }
    }
}
