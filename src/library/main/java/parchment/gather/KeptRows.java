package parchment.gather;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import parchment.logbook.LogbookFiles;
import parchment.sheet.CsvText;
import parchment.sheet.Header;
import parchment.sheet.TextFile;

/**
 * Adds to a table of a logbook that was written before, by its headings and without losing a row.
 *
 * @param headings the headings as they stand
 * @param rows the cells of each row by the heading's plain form; blank ones are not there
 */
record KeptRows(List<String> headings, List<Map<String, String>> rows) {
    /** What tells the rows of each table apart. */
    private static final Map<String, List<String>> KEYS = Map.of(
            LogbookFiles.BATCHES,
            List.of("batch"),
            LogbookFiles.CUPPINGS,
            List.of("cupping", "tasted on", "cupper", "batch", "blind code", "cup"),
            LogbookFiles.SESSIONS,
            List.of("cupping"),
            "lots.csv",
            List.of("lot"),
            "upkeep.csv",
            List.of("machine", "done on", "what", "kind", "note"));

    /** Returns whether a file is a table whose rows are known by a key. */
    static boolean isTable(String file) {
        return KEYS.containsKey(file);
    }

    /** Reads a table; empty if it is none in the logbook's own form with a column for the key. */
    static Optional<KeptRows> read(Path file, String name) throws IOException {
        try (InputStream in = Files.newInputStream(file);
                Reader reader = TextFile.reader(in);
                CSVParser parser = CSVFormat.RFC4180.parse(reader)) {
            List<String> headings = new ArrayList<>();
            List<Map<String, String>> rows = new ArrayList<>();
            for (var record : parser) {
                if (headings.isEmpty()) {
                    record.forEach(cell -> headings.add(CsvText.cell(cell)));
                    continue;
                }
                Map<String, String> row = new LinkedHashMap<>();
                for (int i = 0; i < record.size() && i < headings.size(); i++) {
                    String cell = CsvText.cell(record.get(i));
                    if (!cell.isBlank()) {
                        row.putIfAbsent(plain(headings.get(i)), cell);
                    }
                }
                rows.add(row);
            }
            boolean keyed = headings.stream()
                    .anyMatch(heading -> plain(heading)
                            .equals(KEYS.getOrDefault(name, List.of("")).get(0)));
            return keyed ? Optional.of(new KeptRows(headings, rows)) : Optional.empty();
        } catch (java.io.UncheckedIOException e) {
            return Optional.empty();
        }
    }

    private static String plain(String heading) {
        return Header.parse(heading).written().toLowerCase(Locale.ROOT);
    }

    /** Returns what tells a row of the table from others. */
    static String key(Map<String, String> row, String name) {
        return KEYS.getOrDefault(name, List.of()).stream()
                .map(heading -> row.getOrDefault(heading, ""))
                .collect(Collectors.joining("\u001F"));
    }

    Set<String> keys(String name) {
        return rows.stream().map(row -> key(row, name)).collect(Collectors.toCollection(LinkedHashSet::new));
    }

    /**
     * Returns this table with a newer one's values and rows: a value that the newer one has replaces, one that it has no longer stays.
     *
     * @param lost the batches whose recording is no longer there: what it said of charge, marks and notes stays, whatever a list says instead
     */
    KeptRows with(KeptRows newer, String name, Set<String> lost) {
        List<String> all = new ArrayList<>(headings);
        Set<String> known = headings.stream().map(KeptRows::plain).collect(Collectors.toSet());
        newer.headings.stream().filter(heading -> known.add(plain(heading))).forEach(all::add);
        Set<String> inAnotherUnit = headings.stream()
                .map(KeptRows::plain)
                .filter(heading ->
                        newer.headings.stream().noneMatch(other -> plain(other).equals(heading)))
                .filter(heading -> newer.headings.stream()
                        .anyMatch(other -> heading.endsWith("]")
                                && plain(other).endsWith("]")
                                && bare(other).equals(bare(heading))))
                .collect(Collectors.toSet());
        Map<String, Map<String, String>> merged = new LinkedHashMap<>();
        numbered(NumberedCups.as(newer.rows, rows, name), name)
                .forEach((key, row) -> merged.put(key, new LinkedHashMap<>(row)));
        numbered(NumberedCups.as(rows, newer.rows, name), name).forEach((key, row) -> {
            Map<String, String> kept = merged.computeIfAbsent(key, unused -> new LinkedHashMap<>());
            kept.keySet().removeAll(inAnotherUnit);
            boolean isLost = lost.contains(row.getOrDefault("batch", ""));
            row.forEach((heading, value) -> {
                if (!isLost || !isOfARecording(heading) || !kept.containsKey(heading)) {
                    kept.put(heading, value);
                }
            });
        });
        return new KeptRows(all, new ArrayList<>(merged.values())).without(inAnotherUnit);
    }

    private static boolean isOfARecording(String heading) {
        return heading.equals("roasted at") || heading.equals("note") || heading.endsWith("[min:s]");
    }

    /** Returns this table as the same files give it under other answers: a newer row stands alone, and only rows that it lacks stay. */
    KeptRows replaced(KeptRows newer, String name) {
        Map<String, Map<String, String>> merged =
                new LinkedHashMap<>(numbered(NumberedCups.as(newer.rows, rows, name), name));
        merged.putAll(numbered(NumberedCups.as(rows, newer.rows, name), name));
        List<String> all = new ArrayList<>(newer.headings);
        Set<String> known = newer.headings.stream().map(KeptRows::plain).collect(Collectors.toSet());
        Set<String> old = new LinkedHashSet<>();
        headings.stream().filter(heading -> known.add(plain(heading))).forEach(heading -> {
            all.add(heading);
            old.add(plain(heading));
        });
        return new KeptRows(all, new ArrayList<>(merged.values())).without(old);
    }

    /** Returns this without those of the columns in which nothing stands any more. */
    private KeptRows without(Set<String> columns) {
        List<String> left = headings.stream()
                .filter(heading -> !columns.contains(plain(heading))
                        || rows.stream().anyMatch(row -> row.containsKey(plain(heading))))
                .toList();
        return new KeptRows(left, rows);
    }

    private static String bare(String heading) {
        return plain(heading).replaceFirst("\\s*\\[[^\\]]*\\]$", "");
    }

    /** Returns rows by their keys; of rows with one key, such as two cups of a batch that nobody numbered, each is a row of its own. */
    private static Map<String, Map<String, String>> numbered(List<Map<String, String>> rows, String name) {
        Map<String, Integer> met = new HashMap<>();
        Map<String, Map<String, String>> numbered = new LinkedHashMap<>();
        for (Map<String, String> row : rows) {
            String key = key(row, name);
            numbered.put(key + "\u001F" + met.merge(key, 1, Integer::sum), row);
        }
        return numbered;
    }

    /** Returns the rows that are new to another table and that it may have, as they fit under its headings. */
    List<Map<String, String>> newTo(KeptRows other, String name, Set<String> known) {
        Set<String> there = new KeptRows(other.headings, NumberedCups.as(rows, other.rows, name)).keys(name);
        return NumberedCups.as(other.rows, rows, name).stream()
                .filter(row -> !there.contains(key(row, name)) && !known.contains(key(row, name)))
                .toList();
    }

    /** Returns a row's cells under the headings of this table. */
    List<String> cells(Map<String, String> row) {
        return headings.stream()
                .map(heading -> row.getOrDefault(plain(heading), ""))
                .toList();
    }

    /** Returns whether every value of a row has a place under the headings. */
    boolean fits(Map<String, String> row) {
        Set<String> places = headings.stream().map(KeptRows::plain).collect(Collectors.toSet());
        return places.containsAll(row.keySet());
    }

    /** Returns the table as text. */
    String text() {
        List<List<String>> all = new ArrayList<>();
        all.add(headings);
        rows.forEach(row -> all.add(cells(row)));
        return CsvText.of(all);
    }
}
