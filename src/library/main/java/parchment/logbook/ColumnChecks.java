package parchment.logbook;

import java.util.Locale;
import parchment.logbook.written.Problem;
import parchment.sheet.Numbers;
import parchment.sheet.Words;

/** Counts what was wrong in a curve file while it is read, so that each kind of problem is said once with its first line. */
final class ColumnChecks {
    private static final String MISSING = "treated as missing";

    private final CurveColumns columns;
    private final double[] missingReadings;
    private final ProblemLog problems;
    private final Tally[] noNumbers;
    private final Tally[] sentinels;
    private final Tally[] impossible;
    private final Bounds.Range[] possible;
    private final int[] numbers;
    private final Tally wide = new Tally();
    private final Tally narrow = new Tally();
    private final Tally timeless = new Tally();

    /** Holds a count, and the line and words of the first. */
    private static final class Tally {
        private int count;
        private int line;
        private String first = "";

        void add(int atLine, String what) {
            if (count++ == 0) {
                line = atLine;
                first = what;
            }
        }
    }

    ColumnChecks(CurveColumns columns, Settings settings, ProblemLog problems) {
        this.columns = columns;
        this.problems = problems;
        this.missingReadings = settings.missingReadings().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        int size = columns.columns().size();
        noNumbers = new Tally[size];
        sentinels = new Tally[size];
        impossible = new Tally[size];
        possible = new Bounds.Range[size];
        numbers = new int[size];
        for (int i = 0; i < size; i++) {
            noNumbers[i] = new Tally();
            sentinels[i] = new Tally();
            impossible[i] = new Tally();
            possible[i] = Bounds.of(columns.columns().get(i));
        }
    }

    boolean isMissing(double value) {
        for (double missing : missingReadings) {
            if (value == missing) {
                return true;
            }
        }
        return false;
    }

    /** Returns whether a number can stand in a column at all; whether it fits a roast is asked when all are read. */
    boolean isPossible(int column, double value) {
        return possible[column].holds(value);
    }

    void impossible(int column, int line, double value) {
        impossible[column].add(line, Numbers.written(value));
    }

    void number(int column) {
        numbers[column]++;
    }

    void noNumber(int column, int line, String written) {
        if (written.equalsIgnoreCase("NaN")) {
            sentinel(column, line, Double.NaN);
        } else if (!written.isEmpty()) {
            noNumbers[column].add(line, Words.quote(written));
        }
    }

    void sentinel(int column, int line, double value) {
        sentinels[column].add(line, Numbers.written(value));
    }

    void tooWide(int line, int width, int headings) {
        wide.add(line, width + " values under " + Words.count(headings, "heading", "headings"));
    }

    void tooNarrow(int line, int width, int headings) {
        narrow.add(line, Words.count(width, "value", "values") + " under " + headings + " headings");
    }

    void noTime(int line, String written) {
        timeless.add(line, written.isEmpty() ? "nothing" : Words.quote(written));
    }

    int rowsWithoutTime() {
        return timeless.count;
    }

    void cutShort(int line) {
        problems.add(line, "", "a file that ends in the middle of a line", "a whole line", "row skipped");
    }

    void tooLong(int line, int most) {
        problems.add(
                line,
                "",
                "more than " + most + " readings",
                "one roast; 'parchment gather' splits a longer recording",
                "this row and all after it left out");
    }

    /** Returns whether the last value of the last row has lost its end: fewer digits, and another size, than in the row before. */
    boolean looksCut(Readings readings) {
        int last = readings.size() - 1;
        int column = -1;
        for (int c = 0; c < columns.columns().size(); c++) {
            if (column < 0
                    || columns.columns().get(c).index()
                            > columns.columns().get(column).index()) {
                column = c;
            }
        }
        if (last < 1 || column < 0 || columns.columns().get(column).index() < columns.time()) {
            return false;
        }
        double now = readings.valueAt(column, last);
        double before = readings.valueAt(column, last - 1);
        return !Double.isNaN(before)
                && (Double.isNaN(now)
                        || Math.abs(now) < Math.abs(before) / 4
                                && Numbers.written(before).startsWith(Numbers.written(now)));
    }

    /** Returns whether a column holds words rather than numbers. */
    boolean holdsWords(int column) {
        return noNumbers[column].count > numbers[column];
    }

    /** Turns the counts into problems. */
    void report() {
        columns.unusable().forEach(column -> column.report(0, problems));
        String widths = "one value for each heading (a decimal comma needs curves/layout.properties)";
        say(wide, "", "row", "rows", "with", widths, "skipped");
        say(narrow, "", "row", "rows", "with", "one value for each heading", "values at the end " + MISSING);
        String times = String.format(Locale.ROOT, "a time within %,.0f s of 0", Bounds.LATEST_SECONDS);
        say(timeless, columns.timeHeading(), "time", "times", "like", times, "rows skipped");
        for (int c = 0; c < columns.columns().size(); c++) {
            String heading = columns.columns().get(c).heading();
            if (holdsWords(c)) {
                problems.add(
                        noNumbers[c].line,
                        heading,
                        "words, such as " + noNumbers[c].first,
                        "numbers; 'parchment gather' can make marks of words",
                        "column left out");
            } else {
                say(noNumbers[c], heading, "value", "values", "like", "a number", MISSING);
            }
            say(impossible[c], heading, "reading", "readings", "of", possible[c].words(), MISSING);
            say(sentinels[c], heading, "reading", "readings", "of", Problem.NO_SIGN_FOR_NONE, MISSING);
        }
    }

    private void say(Tally tally, String column, String one, String many, String with, String expected, String done) {
        if (tally.count > 0) {
            String found = Words.count(tally.count, one, many) + " " + with + " " + tally.first;
            problems.add(tally.line, column, found, expected, done);
        }
    }
}
