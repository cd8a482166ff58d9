package parchment.gather;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import parchment.file.WholeFile;
import parchment.logbook.LogbookFiles;
import parchment.sheet.CsvText;
import parchment.sheet.Words;

/**
 * Adds to a logbook what a grown folder has new. A file that is as the earlier gathering wrote it is written anew, and no row of it is lost; one that somebody has
 * changed is never written over: rows of new batches are added at its end, and what else is new is laid aside; one that somebody
 * has taken out stays out.
 */
final class GrownLogbook {
    /** The folder for new versions of files that somebody has changed. */
    static final String ASIDE = "gathered aside";

    private final Path logbook;
    private final Path made;
    private final GatheredBefore earlier;
    private final List<String> told = new ArrayList<>();
    private final List<String> takenOut = new ArrayList<>();
    private final List<String> kept = new ArrayList<>();
    private final Map<String, FileSum> written = new LinkedHashMap<>();
    private boolean sameSources;
    private int added;
    private int renewed;

    /**
     * Prepares the growing.
     *
     * @param logbook the logbook
     * @param made the logbook as the grown folder alone would make it
     * @param earlier what the earlier gathering left
     */
    GrownLogbook(Path logbook, Path made, GatheredBefore earlier) {
        this.logbook = logbook;
        this.made = made;
        this.earlier = earlier;
        written.putAll(earlier.written());
    }

    /** Adds it, and returns what was done, a sentence each. */
    List<String> add(Gathering gathering, StrangeFolder folder) throws IOException {
        GatheredBefore now = GatheredBefore.of(gathering, folder, written);
        // The same files under other answers: what they gave before is no longer said by any of them.
        sameSources = now.sources().equals(earlier.sources());
        Files.createDirectories(logbook.resolve(LogbookFiles.CURVES));
        Map<String, FileSum> fresh = GatherPlace.sums(made);
        // Curves come first: if this is stopped half way, the next run finds them as it would write them.
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
        String record = now.keeping(earlier).text();
        if (!record.equals(Files.readString(logbook.resolve(GatheredBefore.FILE)))) {
            WholeFile.at(logbook.resolve(GatheredBefore.FILE)).write(record);
        }
        return words(now);
    }

    private void file(String name, FileSum fresh) throws IOException {
        Path target = logbook.resolve(name);
        FileSum before = earlier.written().get(name);
        if (!Files.exists(target)) {
            if (before != null) {
                takenOut.add(name);
                return;
            }
            WholeFile.at(target).ifNew().copy(made.resolve(name));
            written.put(name, fresh);
            added++;
            return;
        }
        FileSum there = FileSum.of(target);
        if (there.equals(fresh)) {
            written.put(name, fresh);
        } else if (there.equals(before)) {
            renew(name, target);
        } else {
            edited(name, target, fresh, before);
        }
    }

    private void renew(String name, Path target) throws IOException {
        Path newer = made.resolve(name);
        if (KeptRows.isTable(name)) {
            Optional<KeptRows> old = KeptRows.read(target, name);
            Optional<KeptRows> rows = KeptRows.read(newer, name);
            if (old.isPresent() && rows.isPresent()) {
                KeptRows both = sameSources
                        ? old.get().replaced(rows.get(), name)
                        : old.get().with(rows.get(), name);
                String text = both.text();
                WholeFile.at(target).write(text);
                written.put(name, FileSum.of(target));
                renewed++;
                return;
            }
        }
        WholeFile.at(target).write(Files.readString(newer));
        written.put(name, FileSum.of(target));
        renewed += name.equals(GatherWriter.REPORT) || name.equals(GatherWriter.ANSWERS) ? 0 : 1;
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
        WholeFile.at(target).write(text + end + CsvText.of(cells));
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
            WholeFile.at(target).write(text + (text.endsWith("\n") ? "" : "\n") + lines);
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
        Path place = logbook.resolve(ASIDE).resolve(name);
        Files.createDirectories(place.toAbsolutePath().getParent());
        WholeFile.at(place).write(Files.readString(made.resolve(name)));
    }

    private List<String> words(GatheredBefore now) {
        List<String> lines = new ArrayList<>();
        List<String> newBatches = now.batches().stream()
                .filter(name -> !earlier.batches().contains(name))
                .toList();
        lines.add(
                "Added " + Words.count(newBatches.size(), "batch", "batches") + " to " + Words.quote(logbook.toString())
                        + (newBatches.isEmpty() ? "" : ": " + Words.all(newBatches)) + ". "
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
