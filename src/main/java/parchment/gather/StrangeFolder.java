package parchment.gather;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import parchment.logbook.LogbookException;
import parchment.sheet.NoTableException;
import parchment.sheet.TextFile;
import parchment.sheet.Words;
import parchment.sheet.Workbook;

/** Holds the tables of a folder as they were read once, before any question is answered. */
final class StrangeFolder {
    /** Holds a table and what its columns look like. */
    record Found(Table table, List<StrangeColumn> columns, List<MeaningProposal> proposals, boolean recording) {
        static Found of(Table table) {
            List<StrangeColumn> columns = IntStream.range(0, table.headings().size())
                    .mapToObj(i -> StrangeColumn.of(table, i))
                    .toList();
            List<MeaningProposal> proposals = MeaningProposal.of(columns);
            TableKind.What kind = TableKind.of(table, Clues.NONE).what();
            boolean recording = MeaningProposal.isRecording(proposals) && kind != TableKind.What.BATCHES;
            return new Found(table, columns, proposals, recording);
        }

        /** A list may hold times and temperatures too: what fits a list better is none. */
        boolean isRecording() {
            return recording;
        }
    }

    private final Path path;
    private final List<Path> files;
    private final List<Found> tables = new ArrayList<>();
    private final List<String> neither = new ArrayList<>();
    private final List<String> told;
    private final List<String> taken = new ArrayList<>();

    private StrangeFolder(Path path) throws IOException {
        this.path = path;
        GatherQuestions said = new GatherQuestions(Map.of());
        this.files = GatherFiles.in(path, said);
        this.told = new ArrayList<>(said.leftOut());
        CopiedFiles copies = CopiedFiles.among(files);
        for (Path file : files) {
            Path original = copies.originals().get(file);
            if (original != null) {
                told.add(Words.quote(path.relativize(file).toString()) + " holds the same, to the last sign, as "
                        + Words.quote(path.relativize(original).toString()) + ": a copy, left out.");
                continue;
            }
            int before = told.size();
            List<Table> inFile = tables(file);
            if (inFile.isEmpty() && told.size() == before) {
                neither.add(path.relativize(file).toString());
            }
            inFile.stream().map(Found::of).forEach(tables::add);
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
                throw new LogbookException("The folder " + Words.quote(path.toString()) + " holds no table of readings: "
                        + Words.count(folder.files.size(), "file was", "files were")
                        + " looked at (.csv, .tsv, .txt, .log, .dat, .xlsx, .ods).");
            }
            return folder;
        } catch (IOException e) {
            throw new LogbookException(
                    "The folder " + Words.quote(path.toString()) + " cannot be read: " + TextFile.reason(e) + ".", e);
        }
    }

    private List<Table> tables(Path file) {
        String name = Words.quote(path.relativize(file).toString());
        try {
            Workbook workbook = Workbook.read(file, path);
            workbook.told().forEach(line -> taken.add(name + ": " + line));
            return workbook.sheets().stream()
                    .flatMap(sheet -> Table.in(sheet).stream())
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

    /** Returns the files that were looked at. */
    List<Path> files() {
        return files;
    }

    List<Found> tables() {
        return tables;
    }

    /** Returns what is to be known of how files were read, a sentence each. */
    List<String> taken() {
        return taken;
    }

    /** Returns what was not looked at or holds no table, a sentence each. */
    List<String> told() {
        List<String> all = new ArrayList<>(told);
        if (!neither.isEmpty()) {
            all.add("No table of values, and left out: " + Words.some(neither) + ".");
        }
        return all;
    }
}
