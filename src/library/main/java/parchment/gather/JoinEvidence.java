package parchment.gather;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
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

    /** Holds a name that the first lines give, as it is compared, and the number in it. */
    record Title(String written, String plain, Optional<String> number) {}

    /**
     * Holds what of a recording is compared, worked out once.
     *
     * @param batch the recording
     * @param plain its file's name as two writings of it are compared
     * @param inName its file's name in words, with a blank at each end
     * @param above the lines above its readings
     * @param titles the names that these lines give
     * @param cells what in them could be a name
     * @param afterWord the number that stands after a word for a batch in its file's name
     * @param numbers the numbers in its file's name
     * @param lastSecond the last second since the charge
     * @param drop the drop in seconds since the charge: as typed, else where the beans were hottest; NaN without a recording
     * @param folders the folders around it that others do not lie in
     * @param aliases its folder and its number as a list may write them together
     */
    record Curve(
            GatheredBatch batch,
            String plain,
            String inName,
            List<List<String>> above,
            List<Title> titles,
            Set<String> cells,
            Optional<String> afterWord,
            List<String> numbers,
            double lastSecond,
            double drop,
            List<String> folders,
            List<String> aliases) {
        static Curve of(GatheredBatch batch) {
            return of(batch, FolderNames.of(List.of(batch)));
        }

        /** Returns a recording that lies in one of several folders. */
        static Curve of(GatheredBatch batch, FolderNames folders) {
            List<List<String>> above =
                    batch.recording().map(recording -> recording.file().above()).orElse(List.of());
            String name = batch.nameOfItsFile();
            double typed = batch.marks().getOrDefault(MarkKind.DROP, Double.NaN);
            return new Curve(
                    batch,
                    BatchNumbers.plain(GatherNames.plain(name)),
                    " " + BatchNumbers.spaced(BatchNumbers.plain(name)) + " ",
                    above,
                    BatchNumbers.titles(above).stream()
                            .map(title -> new Title(
                                    title,
                                    BatchNumbers.plain(title),
                                    BatchNumbers.afterWord("batch " + title).map(BatchNumbers::plain)))
                            .toList(),
                    BatchNumbers.cells(above),
                    BatchNumbers.afterWord(name).map(BatchNumbers::plain),
                    BatchNumbers.all(name),
                    batch.lastSecond(),
                    batch.recording().isEmpty() || !Double.isNaN(typed) ? typed : batch.hottestSecond(),
                    folders.around(batch),
                    folders.aliases(batch).stream().map(BatchNumbers::plain).toList());
        }

        Optional<LocalDate> day() {
            return batch.roastedAt().map(LocalDateTime::toLocalDate).or(batch::day);
        }
    }

    private JoinEvidence() {}

    /** Returns the clues, the heaviest kind first; none if nothing connects the two. */
    static List<Clue> of(Curve curve, JoinRow row) {
        List<Clue> clues = new ArrayList<>();
        name(curve, row).or(() -> numberOfDay(curve, row)).ifPresent(clues::add);
        time(curve, row).ifPresent(clues::add);
        if (clues.stream().anyMatch(clue -> !clue.against())) {
            length(curve, row).ifPresent(clues::add);
        }
        return clues;
    }

    private static Optional<Clue> name(Curve curve, JoinRow row) {
        String name = row.name();
        if (name.isEmpty()) {
            return Optional.empty();
        }
        String own = curve.batch().nameOfItsFile();
        if (own.equals(name)) {
            return named(SAME_WRITING, "its file is named so");
        }
        if (curve.plain().equals(row.plain())) {
            return named(SAME_NAME, "its file is named " + Words.quote(own));
        }
        if (curve.aliases().contains(row.plain())) {
            return named(
                    SAME_NAME,
                    "its file is " + Words.quote(own) + " in the folder "
                            + Words.quote(String.join("/", curve.folders())));
        }
        for (Title title : curve.titles()) {
            if (title.plain().equals(row.plain())
                    || name.matches("\\d+") && title.number().equals(Optional.of(row.plain()))) {
                return named(SAME_NAME, "its first lines name batch " + title.written());
            }
        }
        if (curve.titles().isEmpty() && curve.cells().contains(row.plain())) {
            return named(NUMBER_AFTER_WORD, "its first lines hold " + Words.quote(name));
        }
        return inFileName(curve, row).or(() -> inFirstLines(curve, name));
    }

    /** A name that stands in the first lines is a clue whatever word stands before it; a bare number only behind a sign for a number. */
    private static Optional<Clue> inFirstLines(Curve curve, String name) {
        return curve.above().stream().anyMatch(cells -> BatchNumbers.hold(cells, name))
                ? named(
                        name.matches(".*\\p{L}.*") && name.matches(".*\\d.*") ? ONLY_NUMBER : ONE_OF_THE_NUMBERS,
                        "its first lines hold " + Words.quote(name))
                : Optional.empty();
    }

    /** A number that begins again every day tells among the recordings of its day. */
    private static Optional<Clue> numberOfDay(Curve curve, JoinRow row) {
        Optional<String> running = row.numberOfDay();
        if (running.isEmpty() || curve.day().isEmpty() || !curve.day().equals(row.day())) {
            return Optional.empty();
        }
        String plain = BatchNumbers.plain(running.get());
        if (curve.titles().stream().anyMatch(title -> title.plain().equals(plain))) {
            return named(NUMBER_AFTER_WORD, "its first lines name batch " + running.get() + " of the day");
        }
        if (curve.plain().equals(plain)) {
            return named(
                    ONLY_NUMBER,
                    "its file is called " + Words.quote(curve.batch().name()) + ", the number of the day");
        }
        return curve.afterWord().equals(Optional.of(plain))
                ? named(
                        NUMBER_AFTER_WORD,
                        "its file " + Words.quote(curve.batch().nameOfItsFile()) + " has the number " + plain
                                + " of the day")
                : Optional.empty();
    }

    private static Optional<Clue> inFileName(Curve curve, JoinRow row) {
        String own = curve.batch().nameOfItsFile();
        if (curve.afterWord().equals(Optional.of(row.plain()))) {
            return named(NUMBER_AFTER_WORD, "its file " + Words.quote(own) + " has the number " + row.plain());
        }
        Optional<String> last = row.number();
        if (row.isNumber() && last.isPresent() && curve.numbers().contains(last.get())) {
            boolean only = curve.numbers().stream().distinct().count() == 1
                    && curve.afterWord().isEmpty();
            return named(
                    only ? ONLY_NUMBER : ONE_OF_THE_NUMBERS,
                    "its file " + Words.quote(own) + " has the number " + last.get());
        }
        boolean inside =
                !row.isNumber() && row.plain().length() >= 2 && curve.inName().contains(" " + row.inName() + " ");
        return inside
                ? named(
                        last.isPresent() ? NUMBER_AFTER_WORD : ONE_OF_THE_NUMBERS,
                        "its file " + Words.quote(own) + " has " + Words.quote(row.plain()) + " in its name")
                : Optional.empty();
    }

    private static Optional<Clue> named(int points, String words) {
        return Optional.of(new Clue(Clue.Kind.NAME, points, words));
    }

    private static Optional<Clue> time(Curve curve, JoinRow row) {
        Optional<LocalDateTime> at = curve.batch().roastedAt();
        Optional<LocalDateTime> written = row.roastedAt();
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
        if (day.isEmpty() || row.day().isEmpty()) {
            return Optional.empty();
        }
        if (!day.equals(row.day())) {
            return Optional.of(new Clue(
                    Clue.Kind.DAY,
                    OTHER_DAY,
                    "it is of " + day.get() + " and the list says " + row.day().get()));
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

    private static Optional<Clue> length(Curve curve, JoinRow row) {
        double drop = row.drop();
        if (Double.isNaN(drop) || curve.batch().recording().isEmpty()) {
            return Optional.empty();
        }
        double ends = curve.lastSecond();
        if (drop > ends + MISSING_SECONDS) {
            return Optional.of(new Clue(
                    Clue.Kind.LENGTH,
                    TOO_SHORT,
                    "it ends " + Elapsed.seconds(ends) + " after the charge and the list has the drop at "
                            + Elapsed.seconds(drop)));
        }
        return Math.abs(curve.drop() - drop) <= SAME_LENGTH_SECONDS
                ? Optional.of(new Clue(Clue.Kind.LENGTH, SAME_LENGTH, "the drop fits, at " + Elapsed.seconds(drop)))
                : Optional.empty();
    }

    /** Returns how far the drops of a recording and of a row are apart, in seconds; NaN if one has none. */
    static double dropsApart(Curve curve, JoinRow row) {
        return curve.batch().recording().isEmpty() ? Double.NaN : Math.abs(curve.drop() - row.drop());
    }

    /** Returns how well names and drops of a recording and a row agree, whatever their clocks say: above 0 if they do, below 0 if they differ. */
    static int agreement(Curve curve, JoinRow row) {
        double apart = dropsApart(curve, row);
        int drops = Double.isNaN(apart) ? 0 : apart <= SAME_LENGTH_SECONDS ? 1 : -1;
        boolean same = name(curve, row)
                .or(() -> numberOfDay(curve, row))
                .filter(clue -> clue.points() >= ONLY_NUMBER)
                .isPresent();
        boolean other =
                !same && row.numberOfDay().isPresent() && curve.afterWord().isPresent();
        return drops + (same ? 1 : other ? -1 : 0);
    }
}
