package parchment.gather;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import parchment.file.FileWords;
import parchment.file.WholeFolder;
import parchment.logbook.Logbook;
import parchment.logbook.LogbookException;
import parchment.logbook.LogbookFiles;
import parchment.logbook.LogbookPlace;
import parchment.sheet.TextFile;
import parchment.sheet.Words;

/**
 * Makes a logbook of a folder of strange CSV files: recordings of any logger, sheets that list batches.
 *
 * <p>It shows the first rows of each style of file, proposes what each column means and in which unit, with its reason, and asks. The
 * new logbook is written elsewhere; nothing in the old folder is changed. Without anybody to ask, proposals stand and are told.
 *
 * <pre>{@code
 * Gather.folder(Path.of("Logger files")).look(System.out);             // shows and proposes, writes nothing
 * Gather.folder(Path.of("Logger files"))
 *         .withAnswers(Path.of("answers.properties"))
 *         .to(Path.of("My Roasts"), Gather.NOBODY, System.out);
 * }</pre>
 */
public final class Gather {
    /** Asks a person. */
    @FunctionalInterface
    public interface Console {
        /** Returns the line that was typed; "" takes what is proposed in brackets; nothing if nobody is there. */
        Optional<String> ask(String question);
    }

    /** Is a console without a person: every proposal stands, and what has none is left out. */
    public static final Console NOBODY = question -> Optional.empty();

    private final Path folder;
    private final Map<String, String> answers;

    private Gather(Path folder, Map<String, String> answers) {
        this.folder = folder;
        this.answers = Map.copyOf(answers);
    }

    /** Returns the gathering of a folder. */
    public static Gather folder(Path folder) {
        return new Gather(folder, Map.of());
    }

    /**
     * Returns the gathering with answers from a file, as an earlier gathering left it in {@code gathered-answers.properties}.
     *
     * @throws LogbookException if the file cannot be read
     */
    public Gather withAnswers(Path file) {
        return new Gather(folder, LogbookFiles.settings(file));
    }

    /**
     * Gathers a folder and prints what it did and how to go on; the whole of the command line's {@code gather}.
     *
     * @param to the new folder, which must not lie in the old one
     * @param answers a file of answers
     * @return 0 if a logbook was written, 1 if not
     */
    public static int run(Path folder, Path to, Optional<Path> answers, Console in, Appendable out) {
        return guarded(out, () -> {
            Gather gather = folder(folder);
            for (Path file : answers.stream().toList()) {
                gather = gather.withAnswers(file);
            }
            gather.to(to, in, out);
        });
    }

    /**
     * Shows what a gathering would ask and propose, and writes nothing; the whole of {@code gather --look}.
     *
     * @return 0 if there is something to gather, 1 if not
     */
    public static int look(Path folder, Appendable out) {
        return guarded(out, () -> folder(folder).look(out));
    }

    private static int guarded(Appendable out, Runnable work) {
        try {
            work.run();
            return 0;
        } catch (LogbookException e) {
            try {
                out.append(e.getMessage()).append('\n');
            } catch (IOException cannotTell) {
                throw new UncheckedIOException(cannotTell);
            }
            return 1;
        }
    }

    /**
     * Shows what would be asked and proposed, and writes nothing.
     *
     * @throws LogbookException if there is no such folder, or nothing to gather in it
     */
    public void look(Appendable out) {
        GatherQuestions questions = new GatherQuestions(answers, NOBODY, out);
        Gathered gathered = gather(questions);
        questions.say("");
        questions.say("This would make " + Words.count(gathered.batches().size(), "batch", "batches")
                + ". Nothing was written."
                + " To change an answer, write its key (the last word in brackets) and the answer into a file, key=answer, one a line,"
                + " and give it with --answers.");
    }

    /**
     * Writes a new logbook.
     *
     * @param to the new folder; made if it is not there
     * @return the new logbook, opened
     * @throws LogbookException if the folder is not there or holds nothing to gather, if the new folder lies in it or is not empty, or
     *     if something cannot be written
     */
    public Logbook to(Path to, Console console, Appendable out) {
        checkTarget(to);
        GatherQuestions questions = new GatherQuestions(answers, console, out);
        Gathered gathered = gather(questions);
        String zone = questions.ask(
                "time.zone",
                "In which time zone are the times?",
                ZoneId.systemDefault().getId(),
                Gather::isZone,
                "a time zone such as Europe/Berlin");
        unused(questions);
        questions.say("");
        try {
            Path name = to.toAbsolutePath().normalize().getFileName();
            Logbook.Provenance provenance = GatherProvenance.of(folder, GatherFiles.DEEPEST);
            WholeFolder.at(to).fill(aside -> {
                new GatherWriter(aside, provenance)
                        .write(
                                name == null ? "logbook" : name.toString(),
                                zone,
                                gathered.batches(),
                                questions.answered(),
                                questions.report(),
                                gathered.odd());
                return aside;
            });
        } catch (IOException e) {
            throw new LogbookException(
                    "The new logbook " + Words.quote(to.toString()) + " cannot be written: " + FileWords.reason(e)
                            + ". Choose another folder.",
                    e);
        }
        Logbook logbook = Logbook.open(to);
        say(questions, logbook, gathered, to);
        return logbook;
    }

    private void say(GatherQuestions questions, Logbook logbook, Gathered gathered, Path to) {
        long curves = gathered.batches().stream()
                .filter(b -> b.recording().isPresent())
                .count();
        questions.say("Wrote " + Words.count(gathered.batches().size(), "batch", "batches") + " (" + curves
                + " with a curve) to " + Words.quote(to.toString()) + ". " + Words.quote(folder.toString())
                + " is as it was.");
        questions.say("Reading it back: " + logbook + ".");
        questions.say("How to go on: open it with Logbook.open(\"" + to
                + "\"), look at logbook.problems(), and add lots.csv and"
                + " cuppings.csv as the logbook format describes. What was asked and answered is in "
                + GatherWriter.REPORT + "; to change an"
                + " answer, edit " + GatherWriter.ANSWERS + " and gather again into a new folder with --answers.");
    }

    private static boolean isZone(String text) {
        try {
            return !ZoneId.of(text).getId().isEmpty();
        } catch (DateTimeException e) {
            return false;
        }
    }

    private static void unused(GatherQuestions questions) {
        Set<String> asked = questions.answered().keySet();
        questions
                .unused()
                .forEach(key -> questions.say("The answer to " + key + " was not needed: nothing asks for it."
                        + Words.didYouMean(key, asked)));
    }

    private void checkTarget(Path to) {
        Path source = LogbookPlace.real(folder);
        Path target = LogbookPlace.real(to);
        if (target.startsWith(source)) {
            throw new LogbookException("The new logbook " + Words.quote(to.toString()) + " would lie in "
                    + Words.quote(folder.toString()) + ", where nothing is ever written. Choose a folder elsewhere.");
        }
        try {
            if (Files.isDirectory(to)) {
                if (!WholeFolder.at(to).isFree()) {
                    throw new LogbookException("The folder " + Words.quote(to.toString())
                            + " is not empty, and nothing in it is written over. Choose a new one.");
                }
            } else if (Files.exists(to)) {
                throw new LogbookException(Words.quote(to.toString()) + " is a file. Choose a new folder.");
            }
        } catch (IOException e) {
            throw new LogbookException("The folder " + Words.quote(to.toString()) + " cannot be looked into.", e);
        }
    }

    private record Gathered(List<GatheredBatch> batches, Set<Double> odd) {}

    private Gathered gather(GatherQuestions questions) {
        if (!Files.isDirectory(folder)) {
            throw new LogbookException("There is no folder " + Words.quote(folder.toString())
                    + ". Give the folder that holds the logger's files.");
        }
        try {
            return gather(questions, GatherFiles.in(folder, questions));
        } catch (IOException e) {
            throw new LogbookException(
                    "The folder " + Words.quote(folder.toString()) + " cannot be read: " + TextFile.reason(e) + ".", e);
        }
    }

    private Gathered gather(GatherQuestions questions, List<Path> files) throws IOException {
        Map<String, GatherStyle> styles = new LinkedHashMap<>();
        List<StrangeFile> sheets = new ArrayList<>();
        List<String> neither = new ArrayList<>();
        for (Path path : files) {
            Optional<StrangeFile> file = readable(path);
            if (file.isEmpty()) {
                neither.add(folder.relativize(path).toString());
                continue;
            }
            List<StrangeColumn> columns = IntStream.range(
                            0, file.get().headings().size())
                    .mapToObj(i -> StrangeColumn.of(file.get(), i))
                    .toList();
            List<MeaningProposal> proposals = MeaningProposal.of(columns);
            if (!MeaningProposal.isRecording(proposals)) {
                sheets.add(file.get());
                continue;
            }
            GatherStyle style = styles.computeIfAbsent(
                    GatherStyle.key(file.get(), proposals),
                    key -> new GatherStyle(letter(styles.size()), file.get(), columns, proposals));
            style.add(file.get(), columns, proposals);
        }
        if (styles.isEmpty() && sheets.isEmpty()) {
            throw new LogbookException("The folder " + Words.quote(folder.toString()) + " holds no table of readings: "
                    + Words.count(files.size(), "file was", "files were")
                    + " looked at (.csv, .tsv, .txt, .log, .dat).");
        }
        questions.say("Looked at " + Words.count(files.size(), "file", "files") + " in "
                + Words.quote(folder.toString()) + ": "
                + Words.count(
                        styles.values().stream().mapToInt(s -> s.paths().size()).sum(), "recording", "recordings")
                + " in " + Words.count(styles.size(), "style", "styles") + ", "
                + Words.count(sheets.size(), "other table", "other tables") + ".");
        if (!neither.isEmpty()) {
            questions.say(
                    "No table of values, or too long for a recording, and left out: " + Words.some(neither) + ".");
        }
        Set<Double> odd = new TreeSet<>();
        List<GatheredBatch> batches = new ArrayList<>();
        for (GatherStyle style : styles.values()) {
            odd.addAll(style.odd().keySet());
            batches.addAll(new GatherRecordings(questions, style).gather());
        }
        GatherSheets joined = new GatherSheets(questions, batches);
        for (int i = 0; i < sheets.size(); i++) {
            joined.join(sheets.get(i), letter(i));
        }
        return new Gathered(joined.batches(), odd);
    }

    private static Optional<StrangeFile> readable(Path path) {
        try {
            return StrangeFile.read(path);
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    private static String letter(int index) {
        String last = String.valueOf((char) ('a' + index % 26));
        return index < 26 ? last : letter(index / 26 - 1) + last;
    }
}
