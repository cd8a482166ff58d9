package parchment.gather;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import parchment.logbook.LogbookFiles;
import parchment.sheet.CsvText;
import parchment.sheet.Words;

/**
 * Adds to a logbook what a grown folder has new. What is about to be written is noted first, then each file is written whole, then it is noted that all are: wherever the
 * run is stopped, the next one knows each file as its own and goes on.
 *
 * <p> A file that is as the earlier gathering wrote it is written anew, and no row of it is lost; one that somebody has
 * changed is never written over: rows of new batches are added at its end, and what else is new is laid aside; one that somebody
 * has taken out stays out.
 */
final class GrownLogbook {
    /** The folder for new versions of files that somebody has changed. */
    static final String ASIDE = "gathered aside";

    private final Path logbook;
    private final Path made;
    private final GatheredBefore earlier;
    private final PlannedFile.Doing doing;
    private final List<PlannedFile> planned = new ArrayList<>();
    private final Map<String, FileSum> begun = new LinkedHashMap<>();
    private final List<String> told = new ArrayList<>();
    private final List<String> takenOut = new ArrayList<>();
    private final List<String> kept = new ArrayList<>();
    private final Map<String, FileSum> written = new LinkedHashMap<>();
    private final Set<String> rowsBefore = new HashSet<>();
    private GatheredBefore now = GatheredBefore.nothing();
    private String record = "";
    private boolean sameSources;
    private int added;
    private int renewed;

    /**
     * Prepares the growing.
     *
     * @param logbook the logbook
     * @param made the logbook as the grown folder alone would make it
     * @param earlier what the earlier gathering left
     * @param doing how it is written
     */
    GrownLogbook(Path logbook, Path made, GatheredBefore earlier, PlannedFile.Doing doing) {
        this.logbook = logbook;
        this.made = made;
        this.earlier = earlier;
        this.doing = doing;
        written.putAll(earlier.written());
    }

    /** Works out what is to be written. */
    void plan(Gathering gathering, StrangeFolder folder) throws IOException {
        now = GatheredBefore.of(gathering, folder, written);
        // The same files under other answers: what they gave before is no longer said by any of them.
        sameSources = now.sources().equals(earlier.sources());
        Map<String, FileSum> fresh = GatherPlace.sums(made);
        // Curves come first: no row is there before its curve.
        for (Map.Entry<String, FileSum> file : fresh.entrySet()) {
            if (file.getKey().startsWith(LogbookFiles.CURVES + "/")) {
                file(file.getKey(), file.getValue());
            }
        }
        for (Map.Entry<String, FileSum> file : fresh.entrySet()) {
            if (!file.getKey().startsWith(LogbookFiles.CURVES + "/")
                    && !file.getKey().equals(GatherWriter.REPORT)) {
                file(file.getKey(), file.getValue());
            }
        }
        if (added + renewed + told.size() > 0) {
            file(GatherWriter.REPORT, FileSum.of(made.resolve(GatherWriter.REPORT)));
        }
        rowsBefore.addAll(rowsOfBatches());
        record = now.keeping(earlier).text();
    }

    /** Returns whether there is anything to write. */
    boolean hasWork() throws IOException {
        Path place = logbook.resolve(GatheredBefore.FILE);
        return !planned.isEmpty() || !Files.exists(place) || !record.equals(Files.readString(place));
    }

    /** Notes what is about to be written, writes it, and notes that it is. */
    void write() throws IOException {
        Path place = logbook.resolve(GatheredBefore.FILE);
        if (!begun.isEmpty()) {
            String beginning = earlier.beginning(begun).text();
            doing.write(new PlannedFile(place, () -> beginning, PlannedFile.Replaces.AN_EARLIER_ONE));
        }
        for (PlannedFile file : planned) {
            doing.write(file);
        }
        doing.write(new PlannedFile(place, () -> record, PlannedFile.Replaces.AN_EARLIER_ONE));
    }

    /** Returns the names of the batches that have a row, as far as the table can be read. */
    private Set<String> rowsOfBatches() throws IOException {
        Path table = logbook.resolve(LogbookFiles.BATCHES);
        return Files.isRegularFile(table)
                ? new LinkedHashSet<>(KeptRows.read(table, LogbookFiles.BATCHES)
                        .map(rows -> rows.keys(LogbookFiles.BATCHES))
                        .orElse(Set.of()))
                : new LinkedHashSet<>();
    }

    /** Has one of our own files written. */
    private void own(String name, FileSum sum, PlannedFile.Text text, PlannedFile.Replaces replaces) {
        written.put(name, sum);
        begun.put(name, sum);
        planned.add(new PlannedFile(logbook.resolve(name), text, replaces));
    }

    private void file(String name, FileSum fresh) throws IOException {
        Path target = logbook.resolve(name);
        if (!Files.exists(target)) {
            if (earlier.written().containsKey(name)) {
                takenOut.add(name);
                return;
            }
            own(name, fresh, () -> Files.readString(made.resolve(name)), PlannedFile.Replaces.NOTHING);
            added++;
            return;
        }
        FileSum there = FileSum.of(target);
        if (there.equals(fresh)) {
            written.put(name, fresh);
        } else if (earlier.isOwn(name, there)) {
            renew(name, target, there);
        } else {
            edited(name, target, fresh, earlier.written().get(name));
        }
    }

    private void renew(String name, Path target, FileSum there) throws IOException {
        Path newer = made.resolve(name);
        String whole = Files.readString(newer);
        if (KeptRows.isTable(name)) {
            Optional<KeptRows> old = KeptRows.read(target, name);
            Optional<KeptRows> rows = KeptRows.read(newer, name);
            if (old.isPresent() && rows.isPresent()) {
                KeptRows both = sameSources
                        ? old.get().replaced(rows.get(), name)
                        : old.get()
                                .with(
                                        rows.get(),
                                        name,
                                        name.equals(LogbookFiles.BATCHES) ? lostRecordings() : Set.of());
                whole = both.text();
            }
        }
        String text = whole;
        FileSum sum = FileSum.of(text);
        if (sum.equals(there)) {
            written.put(name, there);
            return;
        }
        own(name, sum, () -> text, PlannedFile.Replaces.AN_EARLIER_ONE);
        renewed += name.equals(GatherWriter.REPORT) || name.equals(GatherWriter.ANSWERS) ? 0 : 1;
    }

    /** Returns the batches whose recordings were read before and are no longer in the folder. */
    private Set<String> lostRecordings() {
        Set<String> lost = new HashSet<>(earlier.origins().values());
        lost.removeAll(now.origins().values());
        return lost;
    }

    private void edited(String name, Path target, FileSum fresh, @Nullable FileSum before) throws IOException {
        if (name.equals(GatherWriter.ANSWERS)) {
            moreAnswers(target);
            return;
        }
        if (KeptRows.isTable(name) && addRows(name, target)) {
            return;
        }
        if (fresh.equals(before)) {
            kept.add(name);
            return;
        }
        aside(name);
        told.add(Words.quote(name) + " was changed by hand and stays as it is; the new version is in "
                + Words.quote(ASIDE) + ".");
    }

    /** Adds the rows of new batches at the end of a table that somebody has changed; false if its form does not let it. */
    private boolean addRows(String name, Path target) throws IOException {
        Optional<KeptRows> there = KeptRows.read(target, name);
        Optional<KeptRows> newer = KeptRows.read(made.resolve(name), name);
        if (there.isEmpty() || newer.isEmpty()) {
            return false;
        }
        Set<String> known = name.equals(LogbookFiles.BATCHES) ? new HashSet<>(earlier.batches()) : Set.of();
        List<Map<String, String>> rows = newer.get().newTo(there.get(), name, known);
        if (!name.equals(LogbookFiles.BATCHES) && !rows.isEmpty()) {
            return false; // A row that was taken out of another table cannot be told from a new one.
        }
        if (rows.isEmpty()) {
            kept.add(name);
            return true;
        }
        Optional<String> written = utf8(target);
        if (written.isEmpty()) {
            return false; // Lines in two encodings would be no text.
        }
        String text = written.get();
        String end = text.endsWith("\n") ? "" : "\n";
        List<List<String>> cells = rows.stream().map(there.get()::cells).toList();
        planned.add(new PlannedFile(target, () -> text + end + CsvText.of(cells), PlannedFile.Replaces.AN_EARLIER_ONE));
        boolean all = rows.stream().allMatch(there.get()::fits);
        if (!all) {
            aside(name);
        }
        told.add(Words.quote(name) + " was changed by hand: its rows stay as they are, and the "
                + Words.count(rows.size(), "row of a new batch stands", "rows of new batches stand") + " at its end."
                + (all
                        ? ""
                        : " It has no column for some of what is new of them; the new version is in "
                                + Words.quote(ASIDE) + "."));
        return true;
    }

    /** Adds what was answered now to a file of answers that somebody has changed. */
    private void moreAnswers(Path target) throws IOException {
        Map<String, String> there = LogbookFiles.settings(target);
        Map<String, String> newer = LogbookFiles.settings(made.resolve(GatherWriter.ANSWERS));
        Map<String, String> more = new LinkedHashMap<>(newer);
        more.keySet().removeAll(there.keySet());
        String text = utf8(target).orElse("");
        if (!more.isEmpty() && !text.isEmpty()) {
            String lines = GatherWriter.properties(more)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .collect(Collectors.joining("\n", "", "\n"));
            planned.add(new PlannedFile(
                    target,
                    () -> text + (text.endsWith("\n") ? "" : "\n") + lines,
                    PlannedFile.Replaces.AN_EARLIER_ONE));
        }
        told.add(Words.quote(GatherWriter.ANSWERS)
                + " was changed by hand: its answers were taken, and its lines stay.");
    }

    private static Optional<String> utf8(Path file) throws IOException {
        try {
            return Optional.of(Files.readString(file));
        } catch (CharacterCodingException e) {
            return Optional.empty();
        }
    }

    private void aside(String name) throws IOException {
        planned.add(new PlannedFile(
                logbook.resolve(ASIDE).resolve(name),
                () -> Files.readString(made.resolve(name)),
                PlannedFile.Replaces.AN_EARLIER_ONE));
    }

    /** Returns what was done, a sentence each. */
    List<String> words() throws IOException {
        Set<String> newRows = rowsOfBatches();
        newRows.removeAll(rowsBefore);
        List<String> lines = new ArrayList<>();
        if (!earlier.begun().isEmpty()) {
            lines.add("The run before was stopped half way; what it had written was found, and it is finished now.");
        }
        lines.add("Added " + Words.count(newRows.size(), "batch", "batches") + " to "
                + Words.quote(logbook.toString())
                + (newRows.isEmpty() ? "" : ": " + Words.all(newRows)) + ". "
                + Words.count(added, "file", "files")
                + " new, " + Words.count(renewed, "file", "files") + " written anew.");
        List<String> gone = earlier.batches().stream()
                .filter(name -> !now.batches().contains(name))
                .toList();
        if (!gone.isEmpty()) {
            lines.add("No longer in the folder, and kept in the logbook: " + Words.all(gone) + ".");
        }
        List<String> changed = now.sources().entrySet().stream()
                .filter(file -> earlier.sources().containsKey(file.getKey())
                        && !earlier.sources().get(file.getKey()).equals(file.getValue()))
                .map(Map.Entry::getKey)
                .toList();
        if (!changed.isEmpty()) {
            lines.add("Changed in the folder since: " + Words.all(changed) + ".");
        }
        if (!kept.isEmpty()) {
            lines.add("Changed by hand in the logbook, and left as they are: " + Words.all(kept) + ".");
        }
        if (!takenOut.isEmpty()) {
            lines.add("Taken out of the logbook by hand, and not written again: " + Words.all(takenOut) + ".");
        }
        lines.addAll(told);
        return lines;
    }
}
