package parchment.logbook;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;
import parchment.logbook.written.Problem;
import parchment.quantity.MassUnit;
import parchment.sheet.BoundedReader;
import parchment.sheet.CsvText;
import parchment.sheet.Delimiter;
import parchment.sheet.Header;
import parchment.sheet.Numbers;
import parchment.sheet.ReadableFile;
import parchment.sheet.TextFile;
import parchment.sheet.TextReader;
import parchment.sheet.Words;

/** Reads one of the logbook's tables: matches its headings with the columns that are known, and keeps the rest as extras. */
final class CsvTable {
    /** Holds where a known column stands in this file, and the heading it was found under. */
    record Found(Field field, Header header, int index) {}

    private static final int SHORTEST_NAME_TO_QUESTION = 5;

    private final ProblemLog problems;
    private final Settings settings;
    private final Map<String, Found> found = new HashMap<>();
    private final Map<Integer, Header> extras = new LinkedHashMap<>();
    private final Set<String> toldAsAWhole = new HashSet<>();
    private final List<UnusableColumn> unusable = new ArrayList<>();
    private final List<Row> rows = new ArrayList<>();
    private final List<Header> headings = new ArrayList<>();
    private int headLine;
    private Numbers.Decimal decimal = Numbers.Decimal.POINT;
    private int width;

    private CsvTable(ProblemLog problems, Settings settings) {
        this.problems = problems;
        this.settings = settings;
    }

    /** Reads a table; a file that is not there gives a table without rows, and so does one that cannot be used. */
    static CsvTable read(Path folder, List<Field> fields, Settings settings, ProblemLog problems) {
        CsvTable table = new CsvTable(problems, settings);
        Path file = folder.resolve(problems.file());
        if (ReadableFile.isThere(file)) {
            try (InputStream in = ReadableFile.open(file, folder)) {
                table.read(in, fields);
            } catch (IOException e) {
                problems.add(0, "", TextFile.reason(e), "a CSV file", Problem.FILE_LEFT_OUT);
            }
        }
        return table;
    }

    private void read(InputStream in, List<Field> fields) throws IOException {
        try (TextReader text = TextFile.reader(in);
                BoundedReader bounded = new BoundedReader(text, BoundedReader.mostCharacters());
                Reader peeked = new BufferedReader(bounded, 1 << 16)) {
            char delimiter = problems.delimiter(Delimiter.ofFirstLine(peeked));
            decimal = delimiter == ',' ? Numbers.Decimal.POINT : Numbers.Decimal.EITHER;
            CSVFormat format = CSVFormat.RFC4180
                    .builder()
                    .setDelimiter(delimiter)
                    .setIgnoreEmptyLines(false)
                    .setTrailingData(true)
                    .get();
            int line = 1;
            try (CSVParser parser =
                    CSVParser.builder().setReader(peeked).setFormat(format).get()) {
                boolean headed = false;
                for (CSVRecord record : parser) {
                    if (!isBlank(record)) {
                        if (!headed && !head(record, fields, line)) {
                            return;
                        }
                        if (headed) {
                            row(record, line);
                        }
                        headed = true;
                    }
                    line = (int) parser.getCurrentLineNumber() + 1;
                    bounded.startRow();
                }
                if (!headed) {
                    problems.add(0, "", "an empty file", "a heading and rows", Problem.FILE_LEFT_OUT);
                } else if (rows.isEmpty()) {
                    problems.add(0, "", "a heading and no rows", "one row or more", "nothing read");
                }
            } catch (UncheckedIOException e) {
                stopped(e.getCause(), line);
            } finally {
                problems.encoding(text);
            }
            unusable.forEach(column -> column.report(headLine, problems));
        }
    }

    private void stopped(@Nullable IOException cause, int line) {
        String found = cause instanceof BoundedReader.TooLong && cause.getMessage() != null
                ? cause.getMessage()
                : cause != null && String.valueOf(cause.getMessage()).contains("EOF")
                        ? "a quotation mark that is never closed"
                        : "a row that cannot be read";
        problems.add(line, "", found, "rows of columns", "this row and all after it left out");
    }

    private static boolean isBlank(CSVRecord record) {
        for (String cell : record) {
            if (!cell.isBlank()) {
                return false;
            }
        }
        return true;
    }

    private boolean head(CSVRecord record, List<Field> fields, int line) {
        width = record.size();
        headLine = line;
        if (width > Bounds.MOST_COLUMNS) {
            problems.add(line, "", width + " columns", "at most " + Bounds.MOST_COLUMNS, Problem.FILE_LEFT_OUT);
            return false;
        }
        Map<String, Field> known = new LinkedHashMap<>();
        fields.forEach(field -> known.put(Header.plain(field.name()), field));
        List<String> names = List.copyOf(known.keySet());
        fields.forEach(field -> field.earlierNames().forEach(name -> known.put(Header.plain(name), field)));
        for (int i = 0; i < record.size(); i++) {
            Header header = Header.parse(CsvText.cell(record.get(i)));
            headings.add(header);
            Field field = known.get(Header.plain(header.name()));
            if (field == null) {
                extra(i, header, names, line);
            } else if (found.containsKey(field.name())) {
                problems.add(line, header.written(), "the same column twice", "one of them", "the first one read");
            } else if (!field.accepts(header)) {
                problems.add(
                        line,
                        header.written(),
                        header.unit().isEmpty() ? "no unit" : "the unit " + Words.quote(header.unit()),
                        field.kind().units(),
                        "column kept as an extra, not used");
                extras.put(i, header);
            } else {
                if (header.brackets() == Header.Brackets.ROUND) {
                    problems.add(
                            line, header.written(), "a unit in round brackets", "square brackets", "read all the same");
                }
                found.put(field.name(), new Found(field, header, i));
            }
        }
        boolean usable = true;
        for (Field field : fields) {
            if (field.need() == Field.Need.REQUIRED && !found.containsKey(field.name())) {
                List<String> headings =
                        extras.values().stream().map(Header::name).toList();
                problems.add(
                        line,
                        "",
                        "no column '" + field.name() + "'",
                        "one; the headings are " + Words.some(headings(record)) + "."
                                + Words.didYouMean(field.name(), headings),
                        Problem.FILE_LEFT_OUT);
                usable = false;
            }
        }
        return usable;
    }

    private static List<String> headings(CSVRecord record) {
        List<String> headings = new ArrayList<>();
        record.forEach(heading -> headings.add(CsvText.cell(heading)));
        return headings;
    }

    private void extra(int index, Header header, List<String> known, int line) {
        Optional<UnusableColumn> cannotBeUsed = UnusableColumn.of(index, header);
        if (cannotBeUsed.isPresent()) {
            unusable.add(cannotBeUsed.get());
            return;
        }
        if (extras.values().stream().anyMatch(other -> other.written().equals(header.written()))) {
            problems.add(line, header.written(), "the same column twice", "one of them", "the first one read");
            return;
        }
        extras.put(index, header);
        Optional<String> meant = Words.closest(header.name(), known);
        if (meant.isPresent() && header.name().length() >= SHORTEST_NAME_TO_QUESTION) {
            problems.add(
                    line,
                    header.written(),
                    "a column that is not known",
                    Words.quote(meant.get()) + ", if that is meant",
                    "kept as an extra");
        }
    }

    private void row(CSVRecord record, int line) {
        if (record.size() > width) {
            problems.add(
                    line,
                    "",
                    Words.count(record.size(), "value", "values"),
                    width + ", one for each heading (a name with a comma needs quotes)",
                    "row skipped");
            return;
        }
        if (record.size() < width) {
            problems.add(
                    line,
                    "",
                    Words.count(record.size(), "value", "values"),
                    width + ", one for each heading",
                    "values at the end treated as missing");
        }
        List<String> cells = new ArrayList<>(record.size());
        for (String cell : record) {
            cells.add(bounded(CsvText.cell(cell).strip(), cells.size(), line));
        }
        for (UnusableColumn column : unusable) {
            if (column.index() < cells.size() && !cells.get(column.index()).isEmpty()) {
                column.value();
            }
        }
        rows.add(new Row(this, line, Collections.unmodifiableList(cells)));
    }

    private String bounded(String cell, int index, int line) {
        if (cell.length() <= Bounds.LONGEST_CELL) {
            return cell;
        }
        boolean name = found.values().stream()
                .anyMatch(f -> f.index() == index && f.field().kind() == Field.Kind.NAME);
        problems.add(
                line,
                index < headings.size() ? headings.get(index).written() : "",
                Words.quote(cell) + (name ? ", a name of " : ", a text of ") + cell.length() + " letters",
                name
                        ? "a name of at most " + Bounds.LONGEST_NAME + " letters"
                        : "at most " + Bounds.LONGEST_CELL + " letters",
                "value treated as missing");
        return "";
    }

    /** Says of each column without a known meaning that a file has no place for it. */
    void leaveOutExtras() {
        extras.forEach((index, header) -> {
            long values = rows.stream().filter(row -> row.at(index).isPresent()).count();
            if (values > 0) {
                problems.add(
                        headLine,
                        header.written(),
                        Words.count(values, "value", "values") + " in a column that this file has no place for",
                        "the columns of the table in the format's page",
                        "column left out");
            }
        });
    }

    /** Says of an extra column with values that another file is the place for it. */
    void tellOfAnotherFile(String name, String file, String whatForOneRow) {
        extras.forEach((index, header) -> {
            long values = rows.stream().filter(row -> row.at(index).isPresent()).count();
            if (values > 0 && Header.plain(header.name()).equals(Header.plain(name))) {
                problems.add(
                        headLine,
                        header.written(),
                        Words.count(values, "value", "values") + " in a column that this file has no place for",
                        "'" + name + "' in " + file + ", a row for each " + whatForOneRow,
                        "kept as an extra, not used: write it there");
            }
        });
    }

    List<Row> rows() {
        return rows;
    }

    ProblemLog problems() {
        return problems;
    }

    Settings settings() {
        return settings;
    }

    Numbers.Decimal decimal() {
        return decimal;
    }

    /** Notes that a column's masses were told of as a whole, so that no row tells again of one that there cannot be. */
    void tellAsAWhole(String name) {
        toldAsAWhole.add(name);
    }

    boolean isToldAsAWhole(String name) {
        return toldAsAWhole.contains(name);
    }

    Optional<Found> found(String name) {
        return Optional.ofNullable(found.get(name));
    }

    /** Returns the unit that a column of masses is written in; kilograms if there is no such column. */
    MassUnit massUnit(String name) {
        return found(name)
                .flatMap(found -> Header.massUnit(found.header().plainUnit()))
                .orElse(MassUnit.KILOGRAM);
    }

    /** Returns the columns without a known meaning, by their place. */
    Map<Integer, Header> extras() {
        return extras;
    }
}
