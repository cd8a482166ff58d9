package parchment.gather;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import parchment.logbook.contents.LogbookException;
import parchment.sheet.NoTableException;
import parchment.sheet.Sheet;
import parchment.sheet.TextFile;
import parchment.sheet.Words;
import parchment.sheet.Workbook;

/** The tables of a folder as they were read once, so that a further answer does not read them again. */
final class StrangeFolder {
    /** Holds a table and what its columns look like. */
    record Found(FoundTable table, List<StrangeColumn> columns, List<MeaningProposal> proposals, boolean recording) {
        static Found of(FoundTable table) {
            List<StrangeColumn> columns = IntStream.range(0, table.headings().size())
                    .mapToObj(i -> StrangeColumn.of(table, i))
                    .toList();
            List<MeaningProposal> proposals = MeaningProposal.of(columns);
            boolean recording = MeaningProposal.isRecording(proposals)
                    && MeaningProposal.hasTimes(columns, proposals)
                    && !TableClaims.isSparse(table)
                    && (isTooLarge(table) || TableKind.of(table, Clues.NONE).what() != TableKind.What.BATCHES);
            return new Found(table, columns, proposals, recording);
        }

        Found withoutTab() {
            return onTab("");
        }

        Found onTab(String tab) {
            Sheet sheet = table.sheet();
            FoundTable untabbed = new FoundTable(
                    new Sheet(sheet.file(), tab, sheet.delimiter(), sheet.decimal(), List.of()),
                    table.above(),
                    table.headings(),
                    table.rows(),
                    table.lines(),
                    table.leftOut());
            return new Found(untabbed, columns, proposals, recording);
        }

        /** Ten batches a day are 20,000 in five years (common practice, no source): what is longer is a recording or nothing. */
        private static boolean isTooLarge(FoundTable table) {
            int rows = table.rows().size();
            return rows > LONGEST_LIST || rows * (long) table.headings().size() > LARGEST_LIST;
        }

        boolean isNothing() {
            return !recording && isTooLarge(table);
        }

        /** A list may hold times and temperatures too: what fits a list better is none. */
        boolean isRecording() {
            return recording;
        }
    }

    private static final int MOST_TOLD = 3;
    private static final int LONGEST_LIST = 30_000;
    private static final long LARGEST_LIST = 20L * LONGEST_LIST;

    private static final Pattern OTHER_LETTERS =
            Pattern.compile("The letters of the file are not UTF-8: read as (.+), first on line \\d+\\.");

    /** A file that is written into all the time is read so many times more. */
    private static final int READ_AGAIN = 3;

    private final Path path;
    private final Map<String, List<String>> otherLetters = new LinkedHashMap<>();
    private final List<Path> files;
    private final Map<Path, FileSum> sums = new LinkedHashMap<>();
    private final List<Found> tables = new ArrayList<>();
    private final List<String> neither = new ArrayList<>();
    private final List<String> told;
    private final List<String> taken = new ArrayList<>();

    private StrangeFolder(Path path) throws IOException {
        this.path = path;
        GatherQuestions said = new GatherQuestions(Map.of());
        this.files = GatherFiles.in(path, said);
        this.told = new ArrayList<>(said.leftOut());
        SameFiles same = SameFiles.in(files, path, told);
        sums.putAll(same.sums());
        for (Path file : same.once()) {
            int before = told.size();
            List<FoundTable> inFile = unchanged(file);
            if (inFile.isEmpty() && told.size() == before) {
                neither.add(path.relativize(file).toString());
            }
            for (Found found : found(inFile)) {
                if (found.isNothing()) {
                    told.add(TablePlace.of(found.table()).shown() + " has "
                            + Words.count(found.table().rows().size(), "row", "rows") + " and "
                            + Words.count(found.table().headings().size(), "column", "columns")
                            + ", more than a list of batches or a score sheet has, and is no recording: left out.");
                } else {
                    tables.add(found);
                }
            }
        }
    }

    /**
     * Reads a folder.
     *
     * @throws LogbookException if there is no such folder, it cannot be read, or no table is in it
     */
    static StrangeFolder read(Path path) {
        if (!Files.isDirectory(path)) {
            throw new LogbookException("There is no folder " + Words.quote(path.toString())
                    + ". Give the folder that holds the logger's files.");
        }
        try {
            StrangeFolder folder = new StrangeFolder(path);
            if (folder.tables.isEmpty()) {
                throw new LogbookException(folder.empty());
            }
            return folder;
        } catch (IOException e) {
            throw new LogbookException(
                    "The folder " + Words.quote(path.toString()) + " cannot be read: " + TextFile.reason(e) + ".", e);
        }
    }

    /** A workbook with one recording is named like its file: its tab may be called the same in all of them. */
    private static List<Found> found(List<FoundTable> inFile) {
        List<Found> read = inFile.stream().map(Found::of).toList();
        List<Found> all = withTitles(read, apart(read));
        boolean alone = all.stream().filter(Found::isRecording).count() == 1;
        return all.stream()
                .map(found -> alone && found.isRecording() ? found.withoutTab() : found)
                .toList();
    }

    /** Recordings beside one another on one tab are told apart by the batch that stands above each, as if it named a tab of its own. */
    private static List<Found> apart(List<Found> all) {
        Map<TablePlace, Long> onTab = all.stream()
                .filter(Found::isRecording)
                .collect(Collectors.groupingBy(found -> TablePlace.of(found.table()), Collectors.counting()));
        return all.stream()
                .map(found -> {
                    Set<String> titles = BatchNumbers.titles(found.table().above());
                    return found.isRecording()
                                    && onTab.getOrDefault(TablePlace.of(found.table()), 0L) > 1
                                    && titles.size() == 1
                            ? found.onTab((found.table().sheet().tab() + " batch "
                                            + titles.iterator().next())
                                    .strip())
                            : found;
                })
                .toList();
    }

    /** What stands above each of the recordings that were told apart so is a list of its own. */
    private static List<Found> withTitles(List<Found> read, List<Found> apart) {
        // Two tables can be long: whether one is another is asked by identity.
        Set<Found> same = Collections.newSetFromMap(new IdentityHashMap<>());
        same.addAll(read);
        List<Found> beside =
                apart.stream().filter(found -> !same.contains(found)).toList();
        Optional<FoundTable> titles =
                TitleFacts.of(beside.stream().map(Found::table).toList());
        if (titles.isEmpty()) {
            return apart;
        }
        List<Found> all = new ArrayList<>();
        for (Found found : apart) {
            all.add(
                    !same.contains(found)
                            ? new Found(
                                    TitleFacts.withoutTaken(found.table()),
                                    found.columns(),
                                    found.proposals(),
                                    found.recording())
                            : found);
        }
        all.add(Found.of(titles.get()));
        return all;
    }

    /** Reads a file, and once more if somebody wrote into it meanwhile: what is known of it has to be of the bytes that were read. */
    private List<FoundTable> unchanged(Path file) {
        List<String> toldBefore = List.copyOf(told);
        List<FoundTable> read = tables(file);
        for (int again = 0; again < READ_AGAIN && isOther(file); again++) {
            told.clear();
            told.addAll(toldBefore);
            read = tables(file);
        }
        return read;
    }

    /** Returns whether a file is not as it was known, and knows it as it is. */
    private boolean isOther(Path file) {
        FileSum known = sums.get(file);
        try {
            FileSum now = FileSum.of(file);
            sums.put(file, now);
            return !now.equals(known);
        } catch (IOException e) {
            sums.remove(file); // What cannot be read was told; once it can be read it is new.
            return false;
        }
    }

    private List<FoundTable> tables(Path file) {
        String name = Words.quote(path.relativize(file).toString());
        try {
            Workbook workbook = Workbook.read(file, path);
            for (String line : workbook.told()) {
                Matcher letters = OTHER_LETTERS.matcher(line);
                if (letters.matches()) {
                    Path parent = path.relativize(file).getParent();
                    otherLetters
                            .computeIfAbsent(
                                    (parent == null ? "" : parent.toString()) + '\n' + letters.group(1),
                                    key -> new ArrayList<>())
                            .add(name + ": " + line);
                } else {
                    taken.add(name + ": " + line);
                }
            }
            return workbook.sheets().stream()
                    .flatMap(sheet -> FoundTable.in(sheet).stream())
                    .map(YearlessDays::completed)
                    .flatMap(table -> BatchBeside.parts(table).stream())
                    .toList();
        } catch (NoTableException e) {
            told.add(name + " is " + e.getMessage() + "; left out.");
        } catch (IOException e) {
            told.add(name + " is " + TextFile.reason(e) + "; left out.");
        }
        return List.of();
    }

    Path path() {
        return path;
    }

    /** Says that there is nothing to gather, and what there is. */
    private String empty() {
        List<String> lines = new ArrayList<>(List.of("The folder " + Words.quote(path.toString())
                + " holds no table of readings, batches or scores: "
                + Words.count(files.size(), "file was", "files were")
                + " looked at. Such tables are text or workbooks (.csv, .tsv, .txt, .log, .dat, .xlsx, .ods); give the folder"
                + " that holds them."));
        told.stream().limit(MOST_TOLD).forEach(lines::add);
        if (!neither.isEmpty()) {
            lines.add("No table of values: " + Words.all(neither) + ".");
        }
        return String.join(" ", lines);
    }

    /** Returns the files that were looked at. */
    List<Path> files() {
        return files;
    }

    /** Returns what each file was like when it was read; one that could not be read has nothing. */
    Map<Path, FileSum> sums() {
        return sums;
    }

    List<Found> tables() {
        return tables;
    }

    /** Returns what is to be known of how files were read, a sentence each. */
    List<String> taken() {
        List<String> all = new ArrayList<>(taken);
        // A folder's files are of one program as a rule: one line says it of all.
        otherLetters.forEach((key, lines) -> all.add(
                lines.size() == 1
                        ? lines.get(0)
                        : lines.size() + " files "
                                + (key.startsWith("\n")
                                        ? ""
                                        : "in " + Words.quote(key.substring(0, key.indexOf('\n'))) + " ")
                                + "have letters that are not UTF-8: read as " + key.substring(key.indexOf('\n') + 1)
                                + ", such as "
                                + lines.get(0).substring(0, lines.get(0).indexOf(": The letters"))
                                + "."));
        return all;
    }

    /** Returns what was not looked at or holds no table, a sentence each. */
    List<String> told() {
        List<String> all = new ArrayList<>(told);
        if (!neither.isEmpty()) {
            all.add("No table of values, and left out: " + Words.all(neither) + ".");
        }
        return all;
    }
}
