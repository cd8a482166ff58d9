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
        name(curve, roast.name()).ifPresent(clues::add);
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
        return inFileName(curve, own, plain);
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
                        Clue.Kind.TIME,
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
        double typed = batch.marks().getOrDefault(MarkKind.DROP, Double.NaN);
        double ends = batch.lastSecond();
        if (drop > ends + MISSING_SECONDS) {
            return Optional.of(new Clue(
                    Clue.Kind.LENGTH,
                    TOO_SHORT,
                    "it ends " + Elapsed.seconds(ends) + " after the charge and the list has the drop at "
                            + Elapsed.seconds(drop)));
        }
        double seen = Double.isNaN(typed) ? batch.hottestSecond() : typed;
        return Math.abs(seen - drop) <= SAME_LENGTH_SECONDS
                ? Optional.of(new Clue(Clue.Kind.LENGTH, SAME_LENGTH, "the drop fits, at " + Elapsed.seconds(drop)))
                : Optional.empty();
    }
}
