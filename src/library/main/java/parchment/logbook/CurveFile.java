package parchment.logbook;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import parchment.quantity.TemperatureUnit;
import parchment.sheet.CsvText;
import parchment.sheet.Delimiter;
import parchment.sheet.Header;
import parchment.sheet.Lines;
import parchment.sheet.Numbers;
import parchment.sheet.TextFile;
import parchment.sheet.TextReader;

/**
 * Reads one curve file line by line; what is kept is bounded by {@value #MOST_READINGS} readings.
 *
 * <p>Lines without quotes, which is nearly all of them, are split and read as numbers in place; the others go through Commons CSV.
 */
final class CurveFile {
    /** Most readings of one file: eleven days at one a second; more is no roast. */
    static final int MOST_READINGS = 1_000_000;

    /** Most values of one file, so that a file of very many columns cannot fill the memory. */
    private static final int MOST_VALUES = 16_000_000;

    /** A file that shows no reading in this many rows is no curve file. */
    private static final int ROWS_WITHOUT_READING = 10_000;

    private static final double HALF_A_DAY = 43_200;
    private static final double DAY = 86_400;

    /** Holds what was read, and the scale the bean temperature was written in. */
    record Result(CurveSet curves, Optional<TemperatureUnit> written) {
        static final Result NOTHING = new Result(CurveSet.NONE, Optional.empty());
    }

    private final Settings settings;
    private final ProblemLog problems;
    private CurveLayout layout;
    private char delimiter;
    private Numbers.Decimal decimal = Numbers.Decimal.POINT;
    private char[] text = new char[0];
    private final int[] from = new int[Bounds.MOST_COLUMNS];
    private final int[] to = new int[Bounds.MOST_COLUMNS];
    private int width;
    private boolean tooManyColumns;

    private CurveFile(CurveLayout layout, Settings settings, ProblemLog problems) {
        this.layout = layout;
        this.settings = settings;
        this.problems = problems;
    }

    /** Reads a curve file; whatever is wrong with it becomes a problem. */
    static Result read(InputStream in, CurveLayout layout, Settings settings, ProblemLog problems) throws IOException {
        try (TextReader reader = TextFile.reader(in)) {
            Result result = new CurveFile(layout, settings, problems).read(new Lines(reader));
            problems.encoding(reader);
            return result;
        } catch (Lines.LineTooLong e) {
            problems.add(0, "", String.valueOf(e.getMessage()), "short lines of readings", "file left out");
            return Result.NOTHING;
        }
    }

    private Result read(Lines lines) throws IOException {
        int skip = layout.rowsSkipped();
        boolean any = false;
        while (lines.next()) {
            any |= !lines.isBlank();
            if (lines.number() > skip && !lines.isBlank()) {
                return layout.headings() == CurveLayout.Headings.YES ? headed(lines) : unheaded(lines);
            }
            if (skip > 0 && lines.number() == 1 && isOwnForm(lines.text())) {
                layout = CurveLayout.standard();
                return headed(lines);
            }
        }
        problems.add(
                0,
                "",
                any ? "nothing after the rows to skip" : "an empty file",
                "a heading and readings",
                "file left out");
        return Result.NOTHING;
    }

    /** A logbook may hold files of a logger beside files in the logbook's own form; those explain themselves. */
    private static boolean isOwnForm(String line) {
        List<String> names = List.of(line.split("[,;\t]")).stream()
                .map(cell -> Header.plain(Header.parse(cell.replace("\"", "")).name()))
                .toList();
        return names.contains("time") && names.contains(Quantity.BEAN_TEMPERATURE.words());
    }

    private Result headed(Lines lines) throws IOException {
        if (!layout.isStandard() && isOwnForm(lines.text()) && !namesItsColumns(lines.text())) {
            layout = CurveLayout.standard();
        }
        int line = lines.number();
        findDelimiter(lines);
        split(lines);
        if (tooManyColumns) {
            return refused(line);
        }
        List<String> headings = cells();
        Optional<CurveColumns> columns = CurveColumns.match(headings, line, layout, problems);
        return columns.isEmpty() || !lines.next()
                ? nothing(columns.isPresent())
                : readings(lines, columns.get(), headings.size());
    }

    private Result refused(int line) {
        String found = "more than " + Bounds.MOST_COLUMNS + " columns";
        problems.add(line, "", found, "a column for the time and one for each reading", "file left out");
        return Result.NOTHING;
    }

    private boolean namesItsColumns(String line) {
        return layout.time()
                .map(source -> source.place().isPresent() || line.contains(source.column()))
                .orElse(true);
    }

    private Result nothing(boolean headed) {
        if (headed) {
            problems.add(0, "", "a heading and no readings", "one reading or more", "file left out");
        }
        return Result.NOTHING;
    }

    private Result unheaded(Lines lines) throws IOException {
        findDelimiter(lines);
        split(lines);
        if (tooManyColumns) {
            return refused(lines.number());
        }
        List<String> headings = new ArrayList<>();
        for (int i = 1; i <= width; i++) {
            headings.add("#" + i);
        }
        Optional<CurveColumns> columns = CurveColumns.match(headings, lines.number(), layout, problems);
        return columns.isEmpty() ? Result.NOTHING : readings(lines, columns.get(), width);
    }

    private void findDelimiter(Lines lines) {
        delimiter = layout.delimiter()
                .orElseGet(() -> problems.delimiter(Delimiter.of(lines.buffer(), lines.from(), lines.to())));
        decimal = switch (layout.decimal()) {
            case POINT -> Numbers.Decimal.POINT;
            case COMMA -> Numbers.Decimal.COMMA;
            case FOUND -> delimiter == ',' ? Numbers.Decimal.POINT : Numbers.Decimal.EITHER;
        };
    }

    /** Reads from the current line on. */
    private Result readings(Lines lines, CurveColumns columns, int headings) throws IOException {
        Readings readings = new Readings(columns.columns().size());
        ColumnChecks checks = new ColumnChecks(columns, settings, problems);
        TimeColumn time = new TimeColumn(columns, layout, decimal);
        int most = Math.min(
                MOST_READINGS, MOST_VALUES / Math.max(1, columns.columns().size()));
        double day = 0;
        double latest = Double.NaN;
        do {
            if (lines.isBlank()) {
                continue;
            }
            split(lines);
            int line = lines.number();
            if (width > headings || tooManyColumns) {
                checks.tooWide(line, width, headings);
                continue;
            }
            if (width < headings) {
                if (!lines.complete()) {
                    checks.cutShort(line);
                    continue;
                }
                checks.tooNarrow(line, width, headings);
            }
            double seconds =
                    width > columns.time() ? time.seconds(text, from[columns.time()], to[columns.time()]) : Double.NaN;
            if (!(Math.abs(seconds) <= Bounds.LATEST_SECONDS)) {
                checks.noTime(line, width > columns.time() ? cell(columns.time()) : "");
                if (readings.size() == 0 && checks.rowsWithoutTime() >= ROWS_WITHOUT_READING) {
                    break;
                }
                continue;
            }
            if (layout.timeForm() == CurveLayout.TimeForm.TIME_OF_DAY && seconds + day < latest - HALF_A_DAY) {
                day += DAY;
            }
            if (readings.size() == most) {
                checks.tooLong(line, most);
                break;
            }
            latest = seconds + day;
            readings.add(latest, line);
            values(columns, checks, readings, line);
            unusable(columns);
            if (!lines.complete() && checks.looksCut(readings)) {
                checks.cutShort(line);
                readings.removeLast();
            }
        } while (lines.next());
        checks.report();
        time.report(columns.timeHeading(), readings, problems);
        if (readings.size() == 0) {
            problems.add(0, "", "no reading with a time", "one reading or more", "file left out");
            return Result.NOTHING;
        }
        double start = layout.timeForm() == CurveLayout.TimeForm.TIME_OF_DAY ? readings.secondsAt(0) : 0;
        int[] order = CurveClock.order(readings, columns.timeHeading(), problems);
        LengthQuestion.ask(readings, order, time, columns.timeHeading(), problems);
        return CurveBuilder.build(columns, readings, order, start, checks, problems);
    }

    private void values(CurveColumns columns, ColumnChecks checks, Readings readings, int line) {
        for (int c = 0; c < columns.columns().size(); c++) {
            int index = columns.columns().get(c).index();
            if (index >= width) {
                continue;
            }
            double value = number(index);
            if (Double.isNaN(value)) {
                if (to[index] > from[index]) {
                    checks.noNumber(c, line, cell(index));
                }
            } else if (checks.isMissing(value)) {
                checks.sentinel(c, line, value);
            } else if (!checks.isPossible(c, value)) {
                checks.impossible(c, line, value);
            } else {
                readings.set(c, value);
                checks.number(c);
            }
        }
    }

    private void unusable(CurveColumns columns) {
        for (UnusableColumn column : columns.unusable()) {
            if (column.index() < width && !cell(column.index()).isEmpty()) {
                column.value();
            }
        }
    }

    private double number(int index) {
        // A number with a plus before it is written with an apostrophe.
        return to[index] > from[index] && text[from[index]] == '\''
                ? Numbers.parse(cell(index), decimal)
                : Numbers.parse(text, from[index], to[index], decimal);
    }

    private List<String> cells() {
        List<String> cells = new ArrayList<>(width);
        for (int i = 0; i < width; i++) {
            cells.add(cell(i));
        }
        return cells;
    }

    private String cell(int index) {
        return CsvText.cell(new String(text, from[index], to[index] - from[index]))
                .strip();
    }

    /** Splits the current line, joined with those after it if a quotation mark is open at its end. */
    private void split(Lines lines) throws IOException {
        text = lines.buffer();
        int start = lines.from();
        int end = lines.to();
        boolean quoted = false;
        width = 0;
        tooManyColumns = false;
        from[0] = start;
        for (int i = start; i < end; i++) {
            char c = text[i];
            if (c == delimiter) {
                to[width] = i;
                if (width < Bounds.MOST_COLUMNS - 1) {
                    width++;
                } else {
                    tooManyColumns = true;
                }
                from[width] = i + 1;
            } else if (c == '"') {
                quoted = true;
                break;
            }
        }
        to[width++] = end;
        if (quoted) {
            splitQuoted(lines);
        }
    }

    private void splitQuoted(Lines lines) throws IOException {
        StringBuilder joined = new StringBuilder(lines.text());
        while (joined.chars().filter(c -> c == '"').count() % 2 == 1
                && joined.length() < Lines.LONGEST
                && lines.next()) {
            joined.append('\n').append(lines.text());
        }
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setDelimiter(delimiter)
                .setTrailingData(true)
                .setLenientEof(true)
                .get();
        StringBuilder flat = new StringBuilder();
        width = 0;
        tooManyColumns = false;
        try (CSVParser parser = CSVParser.parse(joined.toString(), format)) {
            for (CSVRecord record : parser) {
                for (String value : record) {
                    if (width < Bounds.MOST_COLUMNS) {
                        from[width] = flat.length();
                        flat.append(value);
                        to[width++] = flat.length();
                    } else {
                        tooManyColumns = true;
                    }
                }
                break;
            }
        }
        text = flat.toString().toCharArray();
    }
}
