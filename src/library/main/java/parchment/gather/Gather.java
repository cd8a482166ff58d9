package parchment.gather;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import parchment.display.Showable;
import parchment.logbook.Logbook;
import parchment.logbook.LogbookFiles;
import parchment.logbook.contents.LogbookException;
import parchment.sheet.Words;

/**
 * Makes a logbook of a folder as it is: recordings of any logger, lists of batches, score sheets.
 *
 * <p>It proposes what each file, column and row is, with its reason, and shows which recording is which row of a list before anything is written. What cannot
 * be known from the files is an open question, and until it is answered the answer stands that loses nothing. The logbook is written elsewhere; nothing
 * in the old folder is changed.
 *
 * <pre>{@code
 * Gather.of(Path.of("Logger files"))                         // a page: shows and proposes, writes nothing
 * Gather.of(Path.of("Logger files"))
 *         .answer("date.order", "day/month/year")
 *         .writeTo(Path.of("My Roasts"))                     // writes, and returns the logbook
 * }</pre>
 */
public final class Gather implements Showable {
    /** Asks a person. */
    @FunctionalInterface
    public interface Console {
        /** Returns the line that was typed; "" takes what is proposed in brackets; nothing if nobody is there. */
        Optional<String> ask(String question);
    }

    /** Is a console without a person: every proposal stands. */
    public static final Console NOBODY = question -> Optional.empty();

    private final StrangeFolder folder;
    private final Map<String, String> answers;
    private final Map<String, String> earlierNames;
    private @Nullable Gathering gathering;

    private Gather(StrangeFolder folder, Map<String, String> answers, Map<String, String> earlierNames) {
        this.folder = folder;
        this.answers = Map.copyOf(answers);
        this.earlierNames = Map.copyOf(earlierNames);
    }

    /**
     * Returns the gathering of a folder, after reading it.
     *
     * @throws LogbookException if there is no such folder, or nothing to gather in it
     */
    public static Gather of(Path folder) {
        return new Gather(StrangeFolder.read(folder), Map.of(), Map.of());
    }

    /**
     * Returns the gathering with an answer to one of its questions.
     *
     * @param key the question's key, as the page shows it in brackets
     * @throws LogbookException when it is shown or written, if the answer is not one that the question takes
     */
    public Gather answer(String key, String answer) {
        return with(Map.of(key, answer));
    }

    /**
     * Returns the gathering with answers from a file, as an earlier gathering left it in {@code gathered-answers.properties}.
     *
     * @throws LogbookException if the file cannot be read
     */
    public Gather withAnswers(Path file) {
        return with(LogbookFiles.settings(file));
    }

    private Gather with(Map<String, String> more) {
        Map<String, String> all = new LinkedHashMap<>(answers);
        more.forEach((key, answer) -> all.put(key.toLowerCase(Locale.ROOT), answer));
        return new Gather(folder, all, earlierNames);
    }

    /** Returns the gathering as it goes on from an earlier one: with its answers where none is given, and its names of batches. */
    Gather after(GatheredBefore before) {
        Map<String, String> all = new LinkedHashMap<>(before.answers());
        all.putAll(answers);
        return new Gather(folder, all, before.names(folder));
    }

    StrangeFolder folder() {
        return folder;
    }

    /** Returns what the folder would become. */
    Gathering gathering() {
        Gathering known = gathering;
        if (known == null) {
            known = Gathering.of(folder, answers, earlierNames);
            gathering = known;
        }
        return known;
    }

    /**
     * Writes a new logbook, or adds what is new to one that was gathered before.
     *
     * @param to the folder, which must not lie in the old one
     * @return the logbook, opened
     * @throws LogbookException if the folder lies in the old one, holds something else than a gathered logbook, or cannot be written
     */
    public Logbook writeTo(Path to) {
        GatherPlace place = GatherPlace.of(this, to);
        place.write();
        return Logbook.open(to);
    }

    @Override
    public String text() {
        return GatherWords.page(gathering()).text();
    }

    @Override
    public Optional<String> html() {
        return GatherWords.page(gathering()).html();
    }

    @Override
    public String toString() {
        return gathering().summary() + " " + GatherWords.wouldMake(gathering()) + " "
                + Words.count(gathering().questions().open().size(), "question is", "questions are") + " open.";
    }

    /**
     * Gathers a folder and prints what it did and how to go on; the whole of the command line's {@code gather}.
     *
     * @param to the folder for the logbook, which must not lie in the old one
     * @param answers a file of answers
     * @return 0 if a logbook was written, 1 if not
     */
    public static int run(Path folder, Path to, Optional<Path> answers, Console in, Appendable out) {
        return guarded(out, () -> {
            GatherTalk talk = new GatherTalk(in, out);
            Gather gather = of(folder);
            for (Path file : answers.stream().toList()) {
                gather = gather.withAnswers(file);
            }
            GatherPlace place = GatherPlace.of(gather, to);
            Gather before = place.gather();
            talk.say(before.text());
            talk.say("");
            Gather answered = talk.ask(before);
            if (answered != before) {
                List<String> joins = GatherWords.joins(answered.gathering());
                if (!joins.equals(GatherWords.joins(before.gathering()))) {
                    talk.say("");
                    talk.say("With these answers:");
                    talk.say(GatherFold.lists(joins));
                }
            }
            talk.say(place.with(answered).write());
            talk.say(GatherWords.notAnswered(answered.gathering()));
        });
    }

    /**
     * Shows what a gathering would ask and propose, and writes nothing; the whole of {@code gather --look}.
     *
     * @return 0 if there is something to gather, 1 if not
     */
    public static int look(Path folder, Optional<Path> answers, Appendable out) {
        return guarded(out, () -> {
            GatherTalk talk = new GatherTalk(NOBODY, out);
            Gather gather = of(folder);
            for (Path file : answers.stream().toList()) {
                gather = gather.withAnswers(file);
            }
            talk.say(gather.text());
            talk.say("");
            talk.say(
                    "Nothing was written. To change an answer, write its key (the last word in brackets) and the answer into a file,"
                            + " key=answer, one a line, and give it with --answers.");
        });
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

    static boolean isZone(String text) {
        try {
            return !ZoneId.of(text).getId().isEmpty();
        } catch (DateTimeException e) {
            return false;
        }
    }
}
