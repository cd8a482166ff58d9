package parchment.virtual;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import parchment.display.answer.Spelling;
import parchment.quantity.MassUnit;
import parchment.quantity.TemperatureUnit;
import parchment.sheet.CsvText;
import parchment.virtual.written.SavedTable;

/** Reads the cells of a plan: headers in any order and case, units in brackets, errors with file and line. */
final class PlanTable {
    static final String BATCH = "batch";
    static final String LOT = "lot";
    static final String MASS = "green mass";
    static final String CHARGE = "charge temperature";
    static final String DROP = "drop temperature";
    static final String HABIT = "habit";
    static final String GAS_AT_START = "gas at start";
    static final String GAS_AFTER = "gas after yellowing";
    static final String AIR_AT_START = "airflow at start";
    static final String AIR_AT_END = "airflow at end";

    static final List<String> COLUMNS =
            List.of(BATCH, LOT, MASS, CHARGE, DROP, HABIT, GAS_AT_START, GAS_AFTER, AIR_AT_START, AIR_AT_END);
    private static final int MOST_ROWS = 60;
    /** Letters that a cell has at most; a number has ten, and the name of a lot a few words. */
    private static final int MOST_LETTERS = 100;

    /** A column's place and the unit in its header's brackets. */
    private record Header(int index, String unit) {}

    /** Says how a message counts: the lines of a file, or the batches of somebody who typed them and sees no heading. */
    enum Counting {
        LINES,
        BATCHES
    }

    private final String file;
    private final Counting counting;
    private final Map<String, Header> headers;
    private final List<Row> rows = new ArrayList<>();

    private PlanTable(String file, Counting counting, Map<String, Header> headers) {
        this.file = file;
        this.counting = counting;
        this.headers = headers;
    }

    static PlanTable read(Path path) throws IOException {
        Path name = path.getFileName();
        return of(
                Files.readString(path, StandardCharsets.UTF_8),
                name == null ? path.toString() : name.toString(),
                Counting.LINES);
    }

    static PlanTable of(String text, String file, Counting counting) {
        SavedTable saved = SavedTable.of(text);
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setIgnoreEmptyLines(true)
                .setIgnoreSurroundingSpaces(true)
                .setDelimiter(saved.delimiter())
                .get();
        try (CSVParser parser = CSVParser.parse(saved.text(), format)) {
            List<CSVRecord> records = new ArrayList<>();
            List<Long> lines = new ArrayList<>();
            for (CSVRecord record : parser) {
                if (record.stream().allMatch(String::isBlank)) {
                    continue; // A spreadsheet leaves rows of bare commas.
                }
                records.add(record);
                lines.add(saved.linesBefore() + parser.getCurrentLineNumber());
            }
            if (records.size() < 2) {
                throw new IllegalArgumentException(
                        file + ": a plan has a line of headers and a line for each batch; found " + records.size()
                                + (records.size() == 1 ? " line." : " lines."));
            }
            if (records.size() > MOST_ROWS + 1) {
                throw new IllegalArgumentException(
                        file + ": a plan has at most " + MOST_ROWS + " batches; found " + (records.size() - 1) + ".");
            }
            PlanTable table = new PlanTable(file, counting, headers(records.get(0), file, lines.get(0)));
            for (int i = 1; i < records.size(); i++) {
                table.rows.add(table.new Row(records.get(i), counting == Counting.LINES ? lines.get(i) : i));
            }
            return table;
        } catch (IOException | UncheckedIOException | IllegalStateException e) {
            throw new IllegalArgumentException(
                    file + ": the plan breaks off or has a quotation mark too few: write it again.", e);
        }
    }

    private static Map<String, Header> headers(CSVRecord record, String file, long line) {
        checkLengths(record, file + ", line " + line);
        Map<String, Header> headers = new HashMap<>();
        for (int i = 0; i < record.size(); i++) {
            String header = CsvText.cell(record.get(i)).strip().toLowerCase(Locale.ROOT);
            int bracket = header.indexOf('[');
            String name = (bracket < 0 ? header : header.substring(0, bracket)).strip();
            String unit = bracket < 0
                    ? ""
                    : header.substring(bracket + 1)
                            .replace("]", "")
                            .replace("°", "")
                            .strip();
            if (header.isEmpty()) {
                continue; // A spreadsheet adds columns that nobody uses.
            }
            if (!COLUMNS.contains(name)) {
                throw new IllegalArgumentException(file + ", line 1: a plan has no column '" + name + "'."
                        + Spelling.question(name, COLUMNS) + " Columns: " + String.join(", ", COLUMNS) + ".");
            }
            headers.put(name, new Header(i, unit));
        }
        for (String needed : List.of(LOT, DROP)) {
            if (!headers.containsKey(needed)) {
                throw new IllegalArgumentException(file + ", line 1: a plan needs the column '" + needed + "'.");
            }
        }
        return headers;
    }

    private static void checkLengths(CSVRecord record, String place) {
        for (String cell : record) {
            if (cell.length() > MOST_LETTERS) {
                throw new IllegalArgumentException(String.format(
                        Locale.ROOT,
                        "%s: a cell has %,d letters; at most %d are expected.",
                        place,
                        cell.length(),
                        MOST_LETTERS));
            }
        }
    }

    List<Row> rows() {
        return List.copyOf(rows);
    }

    /** Reads one line of the plan. */
    final class Row {
        private final CSVRecord record;
        private final long number;

        Row(CSVRecord record, long number) {
            this.record = record;
            this.number = number;
            checkLengths(record, place());
            checkHeadings();
        }

        /** A cell too many is often half of a number: 203,5 where the comma parts the columns. */
        private void checkHeadings() {
            for (int i = 0; i < record.size(); i++) {
                int index = i;
                if (!record.get(i).isBlank()
                        && headers.values().stream().noneMatch(header -> header.index() == index)) {
                    throw new IllegalArgumentException(
                            place() + ": '" + record.get(i)
                                    + "' stands in a column without a heading. A number with a decimal comma stands in quotation marks.");
                }
            }
        }

        String place() {
            return file + (counting == Counting.LINES ? ", line " : ", batch ") + number;
        }

        Optional<String> text(String column) {
            Header header = headers.get(column);
            if (header == null || header.index() >= record.size()) {
                return Optional.empty();
            }
            String cell = CsvText.cell(record.get(header.index())).strip();
            return cell.isEmpty() ? Optional.empty() : Optional.of(cell);
        }

        /** Returns a temperature in °C, which must lie between two others. */
        Optional<Double> temperature(String column, double low, double high) {
            Optional<String> cell = text(column);
            if (cell.isEmpty()) {
                return Optional.empty();
            }
            TemperatureUnit unit = switch (unit(column)) {
                case "c" -> TemperatureUnit.CELSIUS;
                case "f" -> TemperatureUnit.FAHRENHEIT;
                default -> throw noUnit(column, "[°C] or [°F]");
            };
            return Optional.of(within(
                    column,
                    unit.toCelsius(number(column, cell.get())),
                    low,
                    high,
                    unit.fromCelsius(low),
                    unit.fromCelsius(high),
                    unit.symbol()));
        }

        /** Returns a mass in kg that the machine takes. */
        Optional<Double> mass(String column) {
            Optional<String> cell = text(column);
            if (cell.isEmpty()) {
                return Optional.empty();
            }
            MassUnit unit = switch (unit(column)) {
                case "kg" -> MassUnit.KILOGRAM;
                case "g" -> MassUnit.GRAM;
                case "lb" -> MassUnit.POUND;
                default -> throw noUnit(column, "[kg], [g] or [lb]");
            };
            return Optional.of(within(
                    column,
                    unit.toKilograms(number(column, cell.get())),
                    1,
                    2.8,
                    unit.fromKilograms(1),
                    unit.fromKilograms(2.8),
                    unit.symbol()));
        }

        Optional<Double> share(String column) {
            return text(column).map(cell -> within(column, number(column, cell), 20, 100, 20, 100, "%") / 100);
        }

        private String unit(String column) {
            Header header = headers.get(column);
            return header == null ? "" : header.unit();
        }

        private double number(String column, String cell) {
            try {
                return new BigDecimal(cell.replace(',', '.')).doubleValue();
            } catch (NumberFormatException e) {
                throw new IllegalArgumentException(
                        place() + ": the " + column + " is expected to be a number, but is '" + cell + "'.", e);
            }
        }

        private double within(
                String column, double value, double low, double high, double lowShown, double highShown, String unit) {
            if (value >= low - 1e-9 && value <= high + 1e-9) {
                return value;
            }
            throw new IllegalArgumentException(place() + ": the " + column + " is expected from "
                    + Decimals.of(lowShown, 1) + " to " + Decimals.of(highShown, 1) + " " + unit
                    + " on this invented machine, but is '" + text(column).orElse("") + "'.");
        }

        private IllegalArgumentException noUnit(String column, String expected) {
            return new IllegalArgumentException(
                    file + ", line 1: the column '" + column + "' needs its unit in brackets: " + expected + ".");
        }
    }
}
