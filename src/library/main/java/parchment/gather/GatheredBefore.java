package parchment.gather;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import parchment.logbook.LogbookFiles;
import parchment.logbook.contents.LogbookException;
import parchment.sheet.CsvText;
import parchment.sheet.TextFile;
import parchment.sheet.Words;

/**
 * Lets a later gathering go on from an earlier one: which files it read and wrote, as they were then, what each batch is called, and what
 * was answered.
 *
 * @param sources the files it read, by their place in the folder
 * @param written the files it wrote, by their place in the logbook
 * @param begun the files that a run was about to write when it was stopped, as they would be then; each is there so, as before, or not at all
 * @param origins the names of batches by where their recordings stand in the folder
 * @param batches the names of all batches
 * @param answers what was answered
 */
record GatheredBefore(
        Map<String, FileSum> sources,
        Map<String, FileSum> written,
        Map<String, FileSum> begun,
        Map<String, String> origins,
        List<String> batches,
        Map<String, String> answers) {
    /** Nothing was left: no run was before. */
    static GatheredBefore nothing() {
        return new GatheredBefore(
                new LinkedHashMap<>(),
                new LinkedHashMap<>(),
                new LinkedHashMap<>(),
                new LinkedHashMap<>(),
                new ArrayList<>(),
                Map.of());
    }

    /** The file that keeps it. */
    static final String FILE = "gathered-files.txt";

    private static final List<String> HEADINGS = List.of("what", "file", "size", "SHA-256", "batch");
    /** As it was headed when no last line said how many there are. */
    private static final List<String> EARLIER_HEADINGS = List.of("what", "file", "size", "checksum", "batch");

    private static final String SOURCE = "read";
    private static final String WRITTEN = "written";
    private static final String BEGUN = "about to be written";
    private static final String BATCH = "batch";
    private static final String END = "end";

    /**
     * Reads it from a logbook; empty if the folder holds none that was gathered.
     *
     * @throws LogbookException if it, or the file of answers, is damaged; the message says where and what to do
     */
    static Optional<GatheredBefore> in(Path logbook) throws IOException {
        Path file = logbook.resolve(FILE);
        if (!Files.isRegularFile(file)) {
            return Optional.empty();
        }
        Path kept = logbook.resolve(GatherWriter.ANSWERS);
        GatheredBefore nothing = nothing();
        GatheredBefore before = new GatheredBefore(
                nothing.sources,
                nothing.written,
                nothing.begun,
                nothing.origins,
                nothing.batches,
                Files.isRegularFile(kept) ? answers(kept) : Map.of());
        List<List<String>> rows = new ArrayList<>();
        try (InputStream in = Files.newInputStream(file);
                Reader reader = TextFile.reader(in);
                CSVParser parser = CSVFormat.RFC4180.parse(reader)) {
            for (var row : parser) {
                rows.add(row.toList().stream().map(CsvText::cell).toList());
            }
        } catch (UncheckedIOException e) {
            if (e.getCause() instanceof CSVException) {
                throw damaged(file, rows.size() + 1, "it cannot be read on from there");
            }
            throw e.getCause();
        }
        boolean earlier = !rows.isEmpty() && rows.get(0).equals(EARLIER_HEADINGS);
        if (!earlier && (rows.isEmpty() || !rows.get(0).equals(HEADINGS))) {
            throw damaged(file, 1, "its headings are not " + String.join(",", HEADINGS));
        }
        for (int i = 1; i < rows.size(); i++) {
            if (rows.get(i).size() != HEADINGS.size() || !before.add(rows.get(i), i)) {
                throw damaged(file, i + 1, "found " + Words.quote(String.join(",", rows.get(i))));
            }
        }
        if (!earlier && !rows.get(rows.size() - 1).get(0).equals(END)) {
            throw damaged(file, rows.size(), "it breaks off there");
        }
        return Optional.of(before);
    }

    private static LogbookException damaged(Path file, int line, String found) {
        return new LogbookException(Words.quote(FILE) + " in " + Words.quote(String.valueOf(file.getParent()))
                + " is damaged at line " + line + ": " + found
                + ". It says which files of the logbook were gathered, and nothing is written without it. Put back a safety"
                + " copy of it, or gather into a new folder; the logbook was left as it was.");
    }

    private static Map<String, String> answers(Path file) {
        try {
            return LogbookFiles.settings(file);
        } catch (LogbookException e) {
            throw new LogbookException(
                    "The answers of the last gathering cannot be taken as they stand in "
                            + Words.quote(GatherWriter.ANSWERS) + ". " + e.getMessage()
                            + " Mend that line, or take it out, and type the same line again;"
                            + " the logbook was left as it was.",
                    e);
        }
    }

    /** Takes a row; false if it is none. */
    private boolean add(List<String> cells, int place) {
        String file = cells.get(1);
        Optional<FileSum> sum = FileSum.parse(cells.get(2), cells.get(3));
        switch (cells.get(0)) {
            case SOURCE -> sum.ifPresent(known -> sources.put(file, known));
            case WRITTEN -> sum.ifPresent(known -> written.put(file, known));
            case BEGUN -> sum.ifPresent(known -> begun.put(file, known));
            case BATCH -> {
                batches.add(cells.get(4));
                if (!file.isEmpty()) {
                    origins.put(file, cells.get(4));
                }
                return true;
            }
            case END -> {
                return cells.get(2).equals(Integer.toString(place - 1));
            }
            default -> {
                return false;
            }
        }
        return sum.isPresent();
    }

    /** Returns what it would leave itself. */
    static GatheredBefore of(Gathering gathering, StrangeFolder folder, Map<String, FileSum> written) {
        Map<String, FileSum> sources = sums(folder);
        Map<String, String> origins = new LinkedHashMap<>();
        gathering.names().forEach((origin, name) -> origins.put(relative(folder.path(), origin), name));
        return new GatheredBefore(
                sources,
                written,
                Map.of(),
                origins,
                gathering.batches().stream().map(GatheredBatch::name).toList(),
                gathering.questions().settled());
    }

    private static String relative(Path folder, String file) {
        String begin = folder.toString().replace('\\', '/');
        String plain = file.replace('\\', '/');
        return plain.startsWith(begin + "/") ? plain.substring(begin.length() + 1) : plain;
    }

    /**
     * Returns the names of batches by where their recordings stand now, as {@link GatheredBatch#origin} tells it: a file that is no longer where it was is the one
     * that holds the same bytes elsewhere.
     */
    Map<String, String> names(StrangeFolder folder) {
        Map<String, String> names = new LinkedHashMap<>();
        String begin = folder.path().toString().replace('\\', '/') + "/";
        Map<String, String> moved = moved(folder);
        origins.forEach((origin, name) -> {
            String file = fileOf(origin);
            names.put(begin + moved.getOrDefault(file, file) + origin.substring(file.length()), name);
        });
        return names;
    }

    /** Returns where each recording's file stands now that is no longer where it was. */
    private Map<String, String> moved(StrangeFolder folder) {
        Map<String, FileSum> now = sums(folder);
        Set<String> known = origins.keySet().stream().map(this::fileOf).collect(Collectors.toSet());
        Map<FileSum, String> free = new LinkedHashMap<>();
        now.forEach((file, sum) -> {
            if (!known.contains(file)) {
                free.putIfAbsent(sum, file);
            }
        });
        Map<String, String> moved = new LinkedHashMap<>();
        for (String file : known) {
            FileSum was = sources.get(file);
            String there = was == null || was.size() == 0 || now.containsKey(file) ? null : free.remove(was);
            if (there != null) {
                moved.put(file, there);
            }
        }
        return moved;
    }

    /** Returns the file of an origin, which may name a tab and a part behind it. */
    private String fileOf(String origin) {
        String file = origin;
        while (!sources.containsKey(file)) {
            int end = Math.max(file.lastIndexOf('|'), file.lastIndexOf('#'));
            if (end < 0) {
                return origin;
            }
            file = file.substring(0, end);
        }
        return file;
    }

    private static Map<String, FileSum> sums(StrangeFolder folder) {
        Map<String, FileSum> sums = new LinkedHashMap<>();
        folder.sums().forEach((file, sum) -> sums.put(relative(folder.path(), file.toString()), sum));
        return sums;
    }

    /** Returns whether a folder is the one that was read: it holds a file where it was, or most of what was read, elsewhere. */
    boolean knows(StrangeFolder folder) {
        Map<String, FileSum> now = sums(folder);
        return sources.isEmpty()
                || sources.keySet().stream()
                        .anyMatch(file -> Files.isRegularFile(folder.path().resolve(file)))
                || 2 * sources.values().stream().filter(now::containsValue).count() > sources.size();
    }

    /** Returns this with what is known from before and is no longer there. */
    GatheredBefore keeping(GatheredBefore earlier) {
        earlier.sources().forEach(sources::putIfAbsent);
        Map<String, String> all = new LinkedHashMap<>(earlier.origins());
        all.putAll(origins);
        List<String> names = new ArrayList<>(earlier.batches());
        batches.stream().filter(name -> !names.contains(name)).forEach(names::add);
        return new GatheredBefore(sources, written, Map.of(), all, names, answers);
    }

    /** Returns it with what is about to be written; what is known from a run that was stopped stays. */
    GatheredBefore beginning(Map<String, FileSum> files) {
        Map<String, FileSum> all = new LinkedHashMap<>(begun);
        all.putAll(files);
        return new GatheredBefore(sources, written, all, origins, batches, answers);
    }

    /** Returns whether two are of one run, whatever was answered since. */
    boolean isSameRecord(GatheredBefore other) {
        return text().equals(other.text());
    }

    /** Returns whether a file is as a run before has written it, or one that was stopped. */
    boolean isOwn(String file, FileSum there) {
        return there.equals(written.get(file)) || there.equals(begun.get(file));
    }

    /** Returns it as the text of its file. */
    String text() {
        List<List<String>> rows = new ArrayList<>();
        rows.add(HEADINGS);
        add(rows, SOURCE, sources);
        add(rows, WRITTEN, written);
        add(rows, BEGUN, begun);
        Map<String, String> origin = new LinkedHashMap<>();
        origins.forEach((from, name) -> origin.put(name, from));
        batches.forEach(name -> rows.add(List.of(BATCH, origin.getOrDefault(name, ""), "", "", name)));
        rows.add(List.of(END, "", Integer.toString(rows.size() - 1), "", ""));
        return CsvText.of(rows);
    }

    private static void add(List<List<String>> rows, String what, Map<String, FileSum> files) {
        files.forEach((file, sum) -> rows.add(List.of(what, file, Long.toString(sum.size()), sum.checksum(), "")));
    }
}
