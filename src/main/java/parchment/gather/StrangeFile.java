package parchment.gather;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import parchment.sheet.CsvText;
import parchment.sheet.Lines;
import parchment.sheet.Numbers;
import parchment.sheet.Sheet;
import parchment.sheet.TextFile;
import parchment.sheet.Words;

/** Reads a text file of unknown form as a table: finds the sign between its columns, its headings and its first row of values. */
final class StrangeFile {
    /** Most rows that are held: three days at one a second. */
    static final int MOST_ROWS = 300_000;

    private StrangeFile() {}

    private static final int MOST_CHARACTERS = 40_000_000;
    private static final char[] DELIMITERS = {'\t', ';', '|', ','};
    private static final int LINES_LOOKED_AT = 300;
    private static final double USUAL_SHARE = 0.6;
    private static final String UNIT =
            "(?i)\\[?\\(?(s|sec|min|h:min:s|min:s|[°º]?\\s?[cfk]|%|[km]?pa|mbar|rpm|1/min)\\)?]?";

    /** Reads a file; empty if it is no table, or too long for a recording. */
    static Optional<Table> read(Path path) throws IOException {
        List<String> lines = new ArrayList<>();
        int characters = 0;
        try (InputStream in = Files.newInputStream(path);
                Reader reader = TextFile.reader(in)) {
            Lines all = new Lines(reader);
            while (all.next() && lines.size() <= MOST_ROWS && characters <= MOST_CHARACTERS) {
                if (!all.isBlank()) {
                    lines.add(all.text());
                    characters += all.to() - all.from();
                }
            }
        } catch (Lines.LineTooLong e) {
            return Optional.empty();
        }
        if (lines.size() > MOST_ROWS || characters > MOST_CHARACTERS) {
            return Optional.empty();
        }
        return delimiter(lines).flatMap(delimiter -> of(path, lines, delimiter));
    }

    private static Optional<Character> delimiter(List<String> lines) {
        List<String> looked = lines.subList(0, Math.min(lines.size(), LINES_LOOKED_AT));
        // Commas come last: where another sign stands on every line, they are decimals or part of words.
        for (char sign : DELIMITERS) {
            if (usualWidth(looked, sign) > 1) {
                return Optional.of(sign);
            }
        }
        return Optional.empty();
    }

    /** Returns the number of columns that most lines have, or 0 if there is no such number. */
    private static int usualWidth(List<String> lines, char delimiter) {
        Map<Integer, Integer> counts = new HashMap<>();
        for (String line : lines) {
            counts.merge(split(line, delimiter).size(), 1, Integer::sum);
        }
        return counts.entrySet().stream()
                .filter(entry -> entry.getValue() >= USUAL_SHARE * lines.size()
                        || entry.getValue() >= lines.size() - 12 && entry.getValue() > 1)
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElse(0);
    }

    private static Optional<Table> of(Path path, List<String> lines, char delimiter) {
        int width = usualWidth(lines.subList(0, Math.min(lines.size(), LINES_LOOKED_AT)), delimiter);
        List<List<String>> split =
                lines.stream().map(line -> split(line, delimiter)).toList();
        int first = 0;
        while (first < split.size() && !isValues(split, first, width)) {
            first++;
        }
        if (first == split.size()) {
            return Optional.empty();
        }
        int headed = first;
        List<String> headings = numbered(width);
        if (first > 0 && split.get(first - 1).size() == width) {
            headings = split.get(first - 1);
            headed = first - 1;
            if (headed > 0 && areUnits(headings) && split.get(headed - 1).size() == width) {
                headings = withUnits(split.get(headed - 1), headings);
                headed--;
            }
        }
        List<List<String>> rows = new ArrayList<>();
        int ragged = 0;
        for (List<String> row : split.subList(first, split.size())) {
            if (row.size() == width) {
                rows.add(row);
            } else {
                ragged++;
            }
        }
        List<List<String>> above = split.subList(0, headed).stream()
                .map(cells -> cells.stream().map(String::strip).toList())
                .toList();
        Numbers.Decimal decimal = delimiter == ',' ? Numbers.Decimal.POINT : Numbers.Decimal.EITHER;
        List<String> leftOut = ragged == 0
                ? List.of()
                : List.of(Words.count(ragged, "row", "rows") + " of another width left out");
        List<Integer> numbers = IntStream.rangeClosed(1, rows.size()).boxed().toList();
        return Optional.of(new Table(
                new Sheet(path, "", delimiter, decimal, List.of()), above, headings, rows, numbers, leftOut));
    }

    private static List<String> numbered(int width) {
        List<String> names = new ArrayList<>();
        for (int i = 1; i <= width; i++) {
            names.add("#" + i);
        }
        return names;
    }

    /** A row of values holds a number, a time or a date where a heading holds words. */
    private static boolean isValues(List<List<String>> rows, int at, int width) {
        List<String> row = rows.get(at);
        return row.size() == width
                && row.stream().anyMatch(cell -> StrangeColumn.Form.of(cell).isValue());
    }

    private static boolean areUnits(List<String> cells) {
        return cells.stream().anyMatch(cell -> !cell.isEmpty())
                && cells.stream().allMatch(cell -> cell.isEmpty() || cell.matches(UNIT));
    }

    private static List<String> withUnits(List<String> names, List<String> units) {
        List<String> joined = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            String unit = units.get(i).replaceAll("[\\[\\]()]", "");
            joined.add(unit.isEmpty() ? names.get(i) : names.get(i) + " [" + unit + "]");
        }
        return joined;
    }

    private static List<String> split(String line, char delimiter) {
        List<String> cells = new ArrayList<>();
        if (line.indexOf('"') < 0) {
            int from = 0;
            for (int i = 0; i <= line.length(); i++) {
                if (i == line.length() || line.charAt(i) == delimiter) {
                    cells.add(CsvText.cell(line.substring(from, i)).strip());
                    from = i + 1;
                }
            }
            return cells;
        }
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setDelimiter(delimiter)
                .setTrailingData(true)
                .setLenientEof(true)
                .get();
        try (CSVParser parser = CSVParser.parse(line, format)) {
            for (CSVRecord record : parser) {
                record.forEach(cell -> cells.add(CsvText.cell(cell).strip()));
                break;
            }
        } catch (IOException | java.io.UncheckedIOException e) {
            cells.clear();
            cells.add(line);
        }
        return cells;
    }
}
