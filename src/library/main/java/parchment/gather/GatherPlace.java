package parchment.gather;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.file.FileWords;
import parchment.file.FolderLock;
import parchment.file.WholeFile;
import parchment.file.WholeFolder;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookException;
import parchment.logbook.contents.LogbookPlace;
import parchment.sheet.Words;

/** The folder that a gathering is written into: a new one, or a logbook that was gathered from the same files before and now grows. */
final class GatherPlace {
    private final Gather gather;
    private final Path to;
    private final Optional<GatheredBefore> before;

    private GatherPlace(Gather gather, Path to, Optional<GatheredBefore> before) {
        this.gather = gather;
        this.to = to;
        this.before = before;
    }

    /**
     * Looks at the folder.
     *
     * @throws LogbookException if it lies in the gathered one, is a file, or holds something that was not gathered from there
     */
    static GatherPlace of(Gather gather, Path to) {
        Path folder = gather.folder().path();
        if (LogbookPlace.real(to).startsWith(LogbookPlace.real(folder))) {
            throw new LogbookException("The new logbook " + Words.quote(to.toString()) + " would lie in "
                    + Words.quote(folder.toString()) + ", where nothing is ever written. Choose a folder elsewhere.");
        }
        try {
            if (Files.exists(to) && !Files.isDirectory(to)) {
                throw new LogbookException(Words.quote(to.toString()) + " is a file. Choose a new folder.");
            }
            Optional<GatheredBefore> before = GatheredBefore.in(to);
            if (before.isEmpty() && !WholeFolder.at(to).isFree()) {
                throw new LogbookException("The folder " + Words.quote(to.toString())
                        + " is not empty, and nothing in it is written over. Choose a new one.");
            }
            if (before.isPresent() && !before.get().knows(gather.folder())) {
                throw new LogbookException("The logbook " + Words.quote(to.toString())
                        + " was gathered from other files than those in " + Words.quote(folder.toString())
                        + ". Choose a new folder.");
            }
            Gather grown = before.isEmpty() ? gather : gather.after(before.get());
            return new GatherPlace(grown, to, before);
        } catch (IOException e) {
            throw new LogbookException("The folder " + Words.quote(to.toString()) + " cannot be looked into.", e);
        }
    }

    /** Returns the gathering with what an earlier one answered. */
    Gather gather() {
        return gather;
    }

    /** Returns the same place for the gathering with more answers. */
    GatherPlace with(Gather answered) {
        return new GatherPlace(answered, to, before);
    }

    /**
     * Writes, and returns what was done, a sentence each.
     *
     * @throws LogbookException if something cannot be written
     */
    List<String> write() {
        return write(PlannedFile::write);
    }

    /** Writes in a way of its own into a folder that is there. */
    List<String> write(PlannedFile.Doing doing) {
        Gathering gathering = gather.gathering();
        try {
            List<String> done = Files.isDirectory(to) ? writeInto(gathering, doing) : writeNew(gathering);
            Logbook logbook = Logbook.open(to);
            List<String> told = new ArrayList<>(done);
            told.add("Reading it back: " + logbook + ".");
            told.add(
                    "How to go on: open it with Logbook.open(\"" + to + "\"), and look at logbook.problems(). What was"
                            + " decided is in " + GatherWriter.REPORT + "; to change an answer, edit "
                            + GatherWriter.ANSWERS
                            + " and gather into a new folder with --answers. When the folder has grown, run the same command again.");
            return told;
        } catch (IOException e) {
            throw new LogbookException(
                    "The new logbook " + Words.quote(to.toString()) + " cannot be written: " + FileWords.reason(e)
                            + ". Choose another folder.",
                    e);
        }
    }

    private List<String> writeNew(Gathering gathering) throws IOException {
        WholeFolder.at(to).fill(aside -> {
            fresh(gathering, aside);
            GatheredBefore left = GatheredBefore.of(gathering, gather.folder(), sums(aside));
            WholeFile.at(aside.resolve(GatheredBefore.FILE)).ifNew().write(left.text());
            return aside;
        });
        return wrote(gathering);
    }

    private List<String> wrote(Gathering gathering) {
        long curves = gathering.batches().stream()
                .filter(batch -> batch.recording().isPresent())
                .count();
        return List.of("Wrote " + Words.count(gathering.batches().size(), "batch", "batches") + " (" + curves
                + " with a curve) to " + Words.quote(to.toString()) + ". "
                + Words.quote(gather.folder().path().toString()) + " is as it was.");
    }

    /** Writes into a folder that is there. */
    private List<String> writeInto(Gathering gathering, PlannedFile.Doing doing) throws IOException {
        return WholeFolder.at(to).work(work -> {
            Path made = Files.createDirectory(work.resolve("logbook"));
            fresh(gathering, made);
            GrownLogbook grown = new GrownLogbook(to, made, before.orElseGet(GatheredBefore::nothing), doing);
            grown.plan(gathering, gather.folder());
            if (grown.hasWork()) {
                alone(grown);
            }
            return before.isEmpty() ? wrote(gathering) : grown.words();
        });
    }

    /** Writes while nobody else does, if nobody has since the folder was looked at. */
    private void alone(GrownLogbook grown) throws IOException {
        Optional<FolderLock> lock = FolderLock.of(to);
        if (lock.isEmpty()) {
            throw busy("is being written into it now. Wait until that one has ended");
        }
        try (FolderLock held = lock.get()) {
            Optional<GatheredBefore> there = GatheredBefore.in(to);
            boolean same = before.isPresent()
                    ? there.filter(before.get()::isSameRecord).isPresent()
                    : WholeFolder.at(to).isFree();
            if (!same) {
                throw busy("has added to it since this one began. Look at what is there");
            }
            grown.write();
        }
    }

    private LogbookException busy(String what) {
        return new LogbookException("Another gathering " + what + ", and type the same line again: "
                + Words.quote(to.toString()) + " was left as it was.");
    }

    private void fresh(Gathering gathering, Path folder) throws IOException {
        Path name = to.toAbsolutePath().normalize().getFileName();
        Logbook.Provenance provenance = GatherProvenance.of(gather.folder().path(), GatherFiles.DEEPEST);
        new GatherWriter(folder, provenance)
                .write(
                        name == null ? "logbook" : name.toString(),
                        gathering,
                        GatherWords.whole(gathering).text() + "\n" + allJoins(gathering));
    }

    private static String allJoins(Gathering gathering) {
        List<String> lines = GatherWords.allJoins(gathering);
        return lines.isEmpty() ? "" : "\nAll recordings and their rows\n\n" + String.join("\n", lines) + "\n";
    }

    /** Returns the sums of all files of a folder, by their places in it. */
    static Map<String, FileSum> sums(Path folder) throws IOException {
        Map<String, FileSum> sums = new LinkedHashMap<>();
        for (Path file : FilesWithin.of(folder, Integer.MAX_VALUE).paths()) {
            if (Files.isRegularFile(file)) {
                sums.put(folder.relativize(file).toString().replace('\\', '/'), FileSum.of(file));
            }
        }
        return sums;
    }
}
