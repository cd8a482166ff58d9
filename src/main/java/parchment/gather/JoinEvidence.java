package parchment.gather;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parchment.logbook.MarkKind;
import parchment.quantity.Elapsed;
import parchment.sheet.Words;

/**
 * Weighs what speaks for a recording being a row of a list, and against it.
 *
 * <p>The points are our own; how far two clocks of a roastery are apart is common practice, no source: a clock that is read off and
 * written down shows minutes, and a logger is often started before the charge or stopped after the drop.
 */
final class JoinEvidence {
    static final int SAME_WRITING = 10;
    static final int SAME_NAME = 7;
    static final int NUMBER_AFTER_WORD = 6;
    static final int ONLY_NUMBER = 4;
    static final int ONE_OF_THE_NUMBERS = 2;
    static final int WITHIN_MINUTES = 5;
    static final int NEAR = 2;
    static final int SAME_DAY = 3;
    static final int OTHER_TIME = -3;
    static final int OTHER_DAY = -5;
    static final int SAME_PLACE = 2;
    static final int SAME_LENGTH = 2;
    static final int SAME_WORD = 2;
    static final int OTHER_WORD = -4;
    static final int TOO_SHORT = -3;

    static final long CLOSE_SECONDS = 300;
    static final long NEAR_SECONDS = 1200;
    static final double SAME_LENGTH_SECONDS = 20;
    static final double MISSING_SECONDS = 60;

    /** Holds what of a recording is compared, worked out once. */
    record Curve(
            GatheredBatch batch,
            Set<String> titles,
            Set<String> cells,
            Optional<String> afterWord,
            List<String> numbers) {
        static Curve of(GatheredBatch batch) {
            List<List<String>> above =
                    batch.recording().map(recording -> recording.file().above()).orElse(List.of());
            return new Curve(
                    batch,
                    BatchNumbers.titles(above),
                    BatchNumbers.cells(above),
                    BatchNumbers.afterWord(batch.name()),
                    BatchNumbers.all(batch.name()));
        }

        Optional<LocalDate> day() {
            return batch.roastedAt().map(LocalDateTime::toLocalDate).or(batch::day);
        }
    }

    private JoinEvidence() {}

    /** Returns the clues, the heaviest kind first; none if nothing connects the two. */
    static List<Clue> of(Curve curve, ListedRoast roast) {
        List<Clue> clues = new ArrayList<>();
        name(curve, roast.name()).or(() -> numberOfDay(curve, roast)).ifPresent(clues::add);
        time(curve, roast).ifPresent(clues::add);
        if (clues.stream().anyMatch(clue -> !clue.against())) {
            length(curve.batch(), roast.marks()).ifPresent(clues::add);
        }
        return clues;
    }

    private static Optional<Clue> name(Curve curve, String name) {
        if (name.isEmpty()) {
            return Optional.empty();
        }
        String plain = BatchNumbers.plain(GatherNames.plain(name));
        String own = curve.batch().name();
        if (own.equals(name)) {
            return named(SAME_WRITING, "its file is named so");
        }
        if (BatchNumbers.plain(GatherNames.plain(own)).equals(plain)) {
            return named(SAME_NAME, "its file is named " + Words.quote(own));
        }
        for (String title : curve.titles()) {
            if (BatchNumbers.plain(title).equals(plain)
                    || name.matches("\\d+")
                            && BatchNumbers.afterWord("batch " + title)
                                    .map(BatchNumbers::plain)
                                    .equals(Optional.of(plain))) {
                return named(SAME_NAME, "its first lines name batch " + title);
            }
        }
        if (curve.titles().isEmpty() && curve.cells().contains(plain)) {
            return named(NUMBER_AFTER_WORD, "its first lines hold " + Words.quote(name));
        }
        return inFileName(curve, own, plain).or(() -> inFirstLines(curve, name));
    }

    /** A name that stands in the first lines is a clue whatever word stands before it; a bare number only behind a sign for a number. */
    private static Optional<Clue> inFirstLines(Curve curve, String name) {
        boolean holds = curve.batch().recording().stream()
                .flatMap(recording -> recording.file().above().stream())
                .anyMatch(cells -> BatchNumbers.hold(cells, name));
        return holds
                ? named(
                        name.matches(".*\\p{L}.*") && name.matches(".*\\d.*") ? ONLY_NUMBER : ONE_OF_THE_NUMBERS,
                        "its first lines hold " + Words.quote(name))
                : Optional.empty();
    }

    /** A number that begins again every day tells among the recordings of its day. */
    private static Optional<Clue> numberOfDay(Curve curve, ListedRoast roast) {
        Optional<String> running = roast.numberOfDay();
        if (running.isEmpty() || curve.day().isEmpty() || !curve.day().equals(roast.day())) {
            return Optional.empty();
        }
        String plain = BatchNumbers.plain(running.get());
        if (curve.titles().stream().anyMatch(title -> BatchNumbers.plain(title).equals(plain))) {
            return named(NUMBER_AFTER_WORD, "its first lines name batch " + running.get() + " of the day");
        }
        return curve.afterWord().map(BatchNumbers::plain).equals(Optional.of(plain))
                ? named(
                        NUMBER_AFTER_WORD,
                        "its file " + Words.quote(curve.batch().name()) + " has the number " + plain + " of the day")
                : Optional.empty();
    }

    private static Optional<Clue> inFileName(Curve curve, String own, String plain) {
        if (curve.afterWord().map(BatchNumbers::plain).equals(Optional.of(plain))) {
            return named(NUMBER_AFTER_WORD, "its file " + Words.quote(own) + " has the number " + plain);
        }
        Optional<String> last = BatchNumbers.last(plain);
        boolean number = plain.matches("\\d+");
        if (number && last.isPresent() && curve.numbers().contains(last.get())) {
            boolean only = curve.numbers().stream().distinct().count() == 1
                    && curve.afterWord().isEmpty();
            return named(
                    only ? ONLY_NUMBER : ONE_OF_THE_NUMBERS,
                    "its file " + Words.quote(own) + " has the number " + last.get());
        }
        boolean inside = !number
                && plain.length() >= 2
                && (" " + BatchNumbers.plain(own).replaceAll("[^\\p{L}\\p{N}]+", " ") + " ")
                        .contains(
                                " " + plain.replaceAll("[^\\p{L}\\p{N}]+", " ").strip() + " ");
        return inside
                ? named(
                        last.isPresent() ? NUMBER_AFTER_WORD : ONE_OF_THE_NUMBERS,
                        "its file " + Words.quote(own) + " has " + Words.quote(plain) + " in its name")
                : Optional.empty();
    }

    private static Optional<Clue> named(int points, String words) {
        return Optional.of(new Clue(Clue.Kind.NAME, points, words));
    }

    private static Optional<Clue> time(Curve curve, ListedRoast roast) {
        Optional<LocalDateTime> at = curve.batch().roastedAt();
        Optional<LocalDateTime> written = roast.roastedAt();
        if (at.isPresent() && written.isPresent()) {
            long apart = Duration.between(at.get(), written.get()).abs().toSeconds();
            if (apart <= CLOSE_SECONDS) {
                return Optional.of(new Clue(
                        Clue.Kind.TIME,
                        WITHIN_MINUTES + SAME_DAY,
                        "both were charged on " + at.get().toLocalDate() + " at " + clock(written.get())
                                + (apart < 60 ? "" : ", " + minutes(apart) + " apart")));
            }
            if (apart <= NEAR_SECONDS) {
                return Optional.of(new Clue(
                        Clue.Kind.NEAR_TIME,
                        NEAR + SAME_DAY,
                        "both were charged on " + at.get().toLocalDate() + ", " + minutes(apart) + " apart"));
            }
        }
        Optional<LocalDate> day = curve.day();
        if (day.isEmpty() || roast.day().isEmpty()) {
            return Optional.empty();
        }
        if (!day.equals(roast.day())) {
            return Optional.of(new Clue(
                    Clue.Kind.DAY,
                    OTHER_DAY,
                    "it is of " + day.get() + " and the list says "
                            + roast.day().get()));
        }
        return Optional.of(
                at.isPresent() && written.isPresent()
                        ? new Clue(
                                Clue.Kind.TIME,
                                OTHER_TIME,
                                "it was charged at " + clock(at.get()) + " and the list says " + clock(written.get()))
                        : new Clue(Clue.Kind.DAY, SAME_DAY, "both are of " + day.get()));
    }

    private static LocalTime clock(LocalDateTime at) {
        return at.toLocalTime().withNano(0).withSecond(0);
    }

    private static String minutes(long seconds) {
        return Words.count(Math.round(seconds / 60.0), "minute", "minutes");
    }

    private static Optional<Clue> length(GatheredBatch batch, Map<MarkKind, Double> marks) {
        Double drop = marks.get(MarkKind.DROP);
        if (drop == null || batch.recording().isEmpty()) {
            return Optional.empty();
        }
        double ends = batch.lastSecond();
        if (drop > ends + MISSING_SECONDS) {
            return Optional.of(new Clue(
                    Clue.Kind.LENGTH,
                    TOO_SHORT,
                    "it ends " + Elapsed.seconds(ends) + " after the charge and the list has the drop at "
                            + Elapsed.seconds(drop)));
        }
        return Math.abs(dropSeen(batch) - drop) <= SAME_LENGTH_SECONDS
                ? Optional.of(new Clue(Clue.Kind.LENGTH, SAME_LENGTH, "the drop fits, at " + Elapsed.seconds(drop)))
                : Optional.empty();
    }

    /** Returns the drop of a recording in seconds since the charge: as typed, else where the beans were hottest. */
    static double dropSeen(GatheredBatch batch) {
        double typed = batch.marks().getOrDefault(MarkKind.DROP, Double.NaN);
        return Double.isNaN(typed) ? batch.hottestSecond() : typed;
    }

    /** Returns how far the drops of a recording and of a row are apart, in seconds; NaN if one has none. */
    static double dropsApart(GatheredBatch batch, ListedRoast roast) {
        Double drop = roast.marks().get(MarkKind.DROP);
        return drop == null || batch.recording().isEmpty() ? Double.NaN : Math.abs(dropSeen(batch) - drop);
    }

    /** Returns how well names and drops of a recording and a row agree, whatever their clocks say: above 0 if they do, below 0 if they differ. */
    static int agreement(Curve curve, ListedRoast roast) {
        double apart = dropsApart(curve.batch(), roast);
        int drops = Double.isNaN(apart) ? 0 : apart <= SAME_LENGTH_SECONDS ? 1 : -1;
        boolean same = name(curve, roast.name())
                .or(() -> numberOfDay(curve, roast))
                .filter(clue -> clue.points() >= ONLY_NUMBER)
                .isPresent();
        boolean other =
                !same && roast.numberOfDay().isPresent() && curve.afterWord().isPresent();
        return drops + (same ? 1 : other ? -1 : 0);
    }
}
