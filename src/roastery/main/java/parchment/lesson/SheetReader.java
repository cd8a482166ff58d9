package parchment.lesson;

import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Supplier;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import parchment.file.NameForms;
import parchment.lesson.sheet.GivenAnswer;
import parchment.lesson.sheet.StatedClaim;
import parchment.quantity.TemperatureUnit;
import parchment.sheet.CsvText;
import parchment.virtual.written.SavedTable;

/**
 * Reads the rows of a sheet of answers, as a notebook wrote it or as a spreadsheet has saved it since.
 *
 * @param name what to call it in messages
 */
record SheetReader(String name) {
    /** Rows that a sheet has at most; no lesson asks a third as many questions. */
    static final int MOST_ROWS = 50;
    /** Letters that a cell has at most. */
    static final int MOST_LETTERS = 500;
    /** Answers that anybody has given to one question. */
    static final int MOST_TRIES = 10_000;

    private static final List<String> NEEDED = Arrays.stream(AnswerSheet.HEADERS)
            .filter(column -> !column.equals("code")) // Sheets of work alone had none at first.
            .toList();

    AnswerSheet read(String written) throws IOException {
        SavedTable table = SavedTable.of(written);
        if (table.text().isEmpty()) {
            throw new IOException(name + " is empty: ask for it again.");
        }
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setDelimiter(table.delimiter())
                .setTrim(true)
                .get();
        List<GivenAnswer> answers = new ArrayList<>();
        try (Reader reader = new StringReader(table.text());
                CSVParser parser = CSVParser.parse(reader, format)) {
            Iterator<CSVRecord> records = parser.iterator();
            Map<String, Integer> columns = columns(records);
            while (records.hasNext()) {
                CSVRecord cells = records.next();
                if (cells.stream().allMatch(String::isBlank)) {
                    continue; // A spreadsheet leaves rows of bare commas.
                }
                if (answers.size() == MOST_ROWS) {
                    throw new IOException(name + " has more than " + MOST_ROWS
                            + " answers, which no lesson asks for: ask for it again.");
                }
                try {
                    answers.add(answer(new Row(columns, cells)));
                } catch (IllegalArgumentException e) {
                    throw new IOException(
                            name + ", line " + (table.linesBefore() + parser.getCurrentLineNumber())
                                    + ", cannot be read: " + e.getMessage(),
                            e);
                }
            }
        } catch (UncheckedIOException | IllegalStateException e) {
            throw new IOException(name + " breaks off or has a quotation mark too few: ask for it again.", e);
        }
        return new AnswerSheet(answers);
    }

    /** Returns where each column stands; one without a heading, which a spreadsheet adds, counts for nothing. */
    private Map<String, Integer> columns(Iterator<CSVRecord> records) throws IOException {
        Map<String, Integer> columns = new HashMap<>();
        if (records.hasNext()) {
            CSVRecord heading = records.next();
            for (int i = 0; i < heading.size(); i++) {
                String column = heading.get(i).strip().toLowerCase(Locale.ROOT);
                if (!column.isEmpty() && columns.put(column, i) != null) {
                    throw new IOException(name + " is not a sheet of answers: two of its columns have one heading.");
                }
            }
        }
        if (!columns.keySet().containsAll(NEEDED)) {
            throw new IOException(name + " is not a sheet of answers: its columns should be "
                    + String.join(", ", AnswerSheet.HEADERS) + ".");
        }
        return columns;
    }

    /** Holds the cells of a row by the headings of their columns. */
    private record Row(Map<String, Integer> columns, CSVRecord cells) {
        /** Returns a cell, blank where the row is shorter than the heading. */
        String cell(String column) {
            Integer index = columns.get(column);
            return index == null || index >= cells.size() ? "" : CsvText.cell(cells.get(index));
        }
    }

    private static GivenAnswer answer(Row row) {
        for (String cell : row.cells()) {
            if (cell.length() > MOST_LETTERS) {
                throw new IllegalArgumentException(
                        "a cell has " + cell.length() + " letters; at most " + MOST_LETTERS + " are expected.");
            }
        }
        if (row.cell("student").isEmpty()) {
            throw new IllegalArgumentException("'student' is blank; expected a number or a name.");
        }
        String right = row.cell("right");
        return new GivenAnswer(
                (int) whole(row, "lesson", 1, Course.size()),
                NameForms.composed(row.cell("student")),
                row.cell("seed").isEmpty()
                        ? OptionalLong.empty()
                        : OptionalLong.of(whole(row, "seed", Long.MIN_VALUE, Long.MAX_VALUE)),
                row.cell("code"),
                word(row, "degrees", "celsius or fahrenheit", () -> scale(upper(row, "degrees"))),
                row.cell("question"),
                (int) whole(row, "tries", 1, MOST_TRIES),
                right.isEmpty()
                        ? Optional.empty()
                        : Optional.of(
                                word(row, "right", "yes or no", () -> GivenAnswer.Right.valueOf(upper(row, "right")))),
                row.cell("answer"),
                claim(row));
    }

    /** The scales that a lesson can be answered on. */
    private static TemperatureUnit scale(String word) {
        TemperatureUnit unit = TemperatureUnit.valueOf(word);
        if (unit == TemperatureUnit.KELVIN) {
            throw new IllegalArgumentException("No lesson is answered in kelvin.");
        }
        return unit;
    }

    private static Optional<StatedClaim> claim(Row row) {
        String cannotTell = row.cell("cannot tell").toLowerCase(Locale.ROOT);
        return switch (cannotTell) {
            case "yes" -> Optional.of(StatedClaim.cannotTell());
            case "no" -> Optional.of(StatedClaim.between(number(row, "lower"), number(row, "upper")));
            case "" -> {
                if (!row.cell("lower").isEmpty() || !row.cell("upper").isEmpty()) {
                    throw new IllegalArgumentException(
                            "an interval is stated, but 'cannot tell' is blank; expected 'no' there.");
                }
                yield Optional.empty();
            }
            default ->
                throw new IllegalArgumentException(
                        "'cannot tell' is expected to be yes or no, but is '" + cannotTell + "'.");
        };
    }

    private static String upper(Row row, String column) {
        return row.cell(column).toUpperCase(Locale.ROOT);
    }

    private static <T> T word(Row row, String column, String expected, Supplier<T> meant) {
        try {
            return meant.get();
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(
                    "'" + column + "' is expected to be " + expected + ", but is '" + row.cell(column) + "'.", e);
        }
    }

    private static long whole(Row row, String column, long lowest, long highest) {
        String cell = row.cell(column);
        try {
            long value = Long.parseLong(cell);
            if (value >= lowest && value <= highest) {
                return value;
            }
        } catch (NumberFormatException e) {
            // Said below, as for a number out of bounds.
        }
        throw new IllegalArgumentException("'" + column + "' is expected to be a whole number"
                + (lowest == Long.MIN_VALUE ? "" : String.format(Locale.ROOT, " from %,d to %,d", lowest, highest))
                + ", but is '" + cell + "'.");
    }

    /** Returns an end of a claim; as in a notebook, a decimal comma and a unit behind the number are understood. */
    private static double number(Row row, String column) {
        String cell = row.cell(column);
        try {
            double value = Double.parseDouble(cell.replace(',', '.'));
            if (Double.isFinite(value)) {
                return value;
            }
        } catch (NumberFormatException e) {
            OptionalDouble read = AnswerText.number(cell);
            if (read.isPresent()) {
                return read.getAsDouble();
            }
        }
        throw new IllegalArgumentException("the " + column + " end of the claim is expected to be a number, but is "
                + (cell.isEmpty() ? "blank" : "'" + cell + "'") + ".");
    }
}
