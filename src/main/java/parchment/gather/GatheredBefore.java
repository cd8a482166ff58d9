package parchment.gather;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import parchment.logbook.LogbookFiles;
import parchment.sheet.CsvText;
import parchment.sheet.TextFile;

/**
 * Holds what an earlier gathering has left in its logbook: which files it read and wrote, as they were then, what each batch is called, and what was answered.
 *
 * @param sources the files it read, by their place in the folder
 * @param written the files it wrote, by their place in the logbook
 * @param origins the names of batches by where their recordings stand in the folder
 * @param batches the names of all batches
 * @param answers what was answered
 */
record GatheredBefore(
        Map<String, FileSum> sources,
        Map<String, FileSum> written,
        Map<String, String> origins,
        List<String> batches,
        Map<String, String> answers) {
    /** The file that keeps it. */
    static final String FILE = "gathered-files.txt";

    private static final List<String> HEADINGS = List.of("what", "file", "size", "checksum", "batch");
    private static final String SOURCE = "read";
    private static final String WRITTEN = "written";
    private static final String BATCH = "batch";

    /** Reads it from a logbook; empty if the folder holds none that was gathered. */
    static Optional<GatheredBefore> in(Path logbook) throws IOException {
        Path file = logbook.resolve(FILE);
        if (!Files.isRegularFile(file)) {
            return Optional.empty();
        }
        Path kept = logbook.resolve(GatherWriter.ANSWERS);
        GatheredBefore before = new GatheredBefore(
                new LinkedHashMap<>(),
                new LinkedHashMap<>(),
                new LinkedHashMap<>(),
                new ArrayList<>(),
                Files.isRegularFile(kept) ? LogbookFiles.settings(kept) : Map.of());
        try (InputStream in = Files.newInputStream(file);
                Reader reader = TextFile.reader(in);
                CSVParser parser = CSVFormat.RFC4180.parse(reader)) {
            for (var row : parser) {
                if (row.size() == HEADINGS.size()) {
                    before.add(row.toList().stream().map(CsvText::cell).toList());
                }
            }
        } catch (java.io.UncheckedIOException e) {
            throw e.getCause();
        }
        return Optional.of(before);
    }

    private void add(List<String> cells) {
        String file = cells.get(1);
        switch (cells.get(0)) {
            case SOURCE -> sources.put(file, sum(cells));
            case WRITTEN -> written.put(file, sum(cells));
            case BATCH -> {
                batches.add(cells.get(4));
                if (!file.isEmpty()) {
                    origins.put(file, cells.get(4));
                }
            }
            default -> {
                // The headings, or a line of somebody's own.
            }
        }
    }

    private static FileSum sum(List<String> cells) {
        return new FileSum(cells.get(2).matches("\\d{1,18}") ? Long.parseLong(cells.get(2)) : -1, cells.get(3));
    }

    /** Returns what it would leave itself. */
    static GatheredBefore of(Gathering gathering, StrangeFolder folder, Map<String, FileSum> written) {
        Map<String, FileSum> sources = new LinkedHashMap<>();
        for (Path file : folder.files()) {
            try {
                sources.put(relative(folder.path(), file.toString()), FileSum.of(file));
            } catch (IOException e) {
                // What cannot be read, or is gone by now, was told; once it can be read it is new.
                continue;
            }
        }
        Map<String, String> origins = new LinkedHashMap<>();
        gathering.names().forEach((origin, name) -> origins.put(relative(folder.path(), origin), name));
        return new GatheredBefore(
                sources,
                written,
                origins,
                gathering.batches().stream().map(GatheredBatch::name).toList(),
                gathering.questions().settled());
    }

    private static String relative(Path folder, String file) {
        String begin = folder.toString().replace('\\', '/');
        String plain = file.replace('\\', '/');
        return plain.startsWith(begin + "/") ? plain.substring(begin.length() + 1) : plain;
    }

    /** Returns the names of batches by where their recordings stand, as {@link GatheredBatch#origin} tells it. */
    Map<String, String> names(Path folder) {
        Map<String, String> names = new LinkedHashMap<>();
        String begin = folder.toString().replace('\\', '/') + "/";
        origins.forEach((origin, name) -> names.put(begin + origin, name));
        return names;
    }

    /** Returns this with what is known from before and is no longer there. */
    GatheredBefore keeping(GatheredBefore earlier) {
        earlier.sources().forEach(sources::putIfAbsent);
        Map<String, String> all = new LinkedHashMap<>(earlier.origins());
        all.putAll(origins);
        List<String> names = new ArrayList<>(earlier.batches());
        batches.stream().filter(name -> !names.contains(name)).forEach(names::add);
        return new GatheredBefore(sources, written, all, names, answers);
    }

    /** Returns it as the text of its file. */
    String text() {
        List<List<String>> rows = new ArrayList<>();
        rows.add(HEADINGS);
        sources.forEach((file, sum) -> rows.add(List.of(SOURCE, file, Long.toString(sum.size()), sum.checksum(), "")));
        written.forEach((file, sum) -> rows.add(List.of(WRITTEN, file, Long.toString(sum.size()), sum.checksum(), "")));
        Map<String, String> origin = new LinkedHashMap<>();
        origins.forEach((from, name) -> origin.put(name, from));
        batches.forEach(name -> rows.add(List.of(BATCH, origin.getOrDefault(name, ""), "", "", name)));
        return CsvText.of(rows);
    }
}
