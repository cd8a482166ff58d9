package parchment.lesson;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.contents.EmptyLogbook;

/**
 * Shows the seconds that each person wrote for one mark, batch after batch, so that a pen's habits can be seen.
 *
 * <pre>{@code
 * WrittenTimes.of(logbook, MarkKind.FIRST_CRACK_START)
 * }</pre>
 */
public final class WrittenTimes implements Showable {
    private final Logbook logbook;
    private final MarkKind mark;

    private WrittenTimes(Logbook logbook, MarkKind mark) {
        this.logbook = logbook;
        this.mark = mark;
    }

    /** Gathers the times of a mark; batches without it, or without a person, are counted and left out. */
    public static WrittenTimes of(Logbook logbook, MarkKind mark) {
        return new WrittenTimes(logbook, mark);
    }

    private List<String> people() {
        return logbook.batches().stream()
                .flatMap(batch -> batch.operator().stream())
                .distinct()
                .sorted()
                .toList();
    }

    /** Returns the seconds since charge that a person wrote, in the order of roasting. */
    public List<Long> seconds(String person) {
        return logbook.batches().stream()
                .filter(batch -> batch.operator().filter(person::equals).isPresent())
                .map(batch -> batch.writtenMark(mark))
                .flatMap(Optional::stream)
                .map(at -> Math.round(at.seconds()))
                .toList();
    }

    private long used() {
        return people().stream().mapToLong(person -> seconds(person).size()).sum();
    }

    private Table table() {
        return Table.titled("Seconds since charge, as written: " + mark.words())
                .withText("person", people(), person -> person)
                .withNumber(
                        "batches", "", 0, people(), person -> seconds(person).size())
                .withText(
                        "seconds",
                        people(),
                        person -> seconds(person).stream().map(String::valueOf).collect(Collectors.joining(", ")))
                .withNote(
                        logbook.batches().isEmpty()
                                ? EmptyLogbook.WORDS
                                : (logbook.batches().size() - used()) + " of "
                                        + LessonWords.count(logbook.batches().size(), "batch", "batches")
                                        + " left out: the mark or the person was not written.");
    }

    @Override
    public String text() {
        return table().text();
    }

    @Override
    public Optional<String> html() {
        return table().html();
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT, "%d written times of %s, by %d people", used(), mark.words(), people().size());
    }
}
