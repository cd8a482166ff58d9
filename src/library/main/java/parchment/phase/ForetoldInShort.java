package parchment.phase;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import parchment.display.answer.InShort;
import parchment.logbook.MarkKind;
import parchment.quantity.Elapsed;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Puts what is foretold of marks into three sentences: how well it was done before, and when one mark of one batch is expected. */
final class ForetoldInShort {
    private static final String KEEP =
            "Go on writing what you hear and see: this foretells your pen and not the beans.";

    private ForetoldInShort() {}

    /**
     * Says how well marks can be foretold.
     *
     * @param all one for each kind of mark
     * @param questions how many written marks lie far from what curve and habit say
     */
    static InShort of(List<MarkReport.Summary> all, int questions) {
        List<MarkReport.Summary> told =
                all.stream().filter(one -> !one.cannotTell()).toList();
        List<MarkReport.Summary> lacking =
                all.stream().filter(MarkReport.Summary::cannotTell).toList();
        if (told.isEmpty()) {
            boolean written = lacking.stream().anyMatch(one -> one.leftOut() >= HabitModel.FEWEST_MARKS);
            return new InShort(
                    "How well your marks can be foretold cannot be told yet.",
                    "Each kind needs " + HabitModel.FEWEST_MARKS + " written marks on " + HabitModel.FEWEST_DAYS
                            + " roast days, of batches with a bean temperature.",
                    written
                            ? "The marks are written: log the bean temperature too, then ask again."
                            : "Write " + words(lacking) + " of every batch, then ask again.");
        }
        return new InShort(
                "Half of your marks lie this near to what your other days foretell: "
                        + told.stream()
                                .map(one -> one.kind().words() + " " + seconds(one.medianSeconds()))
                                .collect(Collectors.joining(", "))
                        + ".",
                "Ranges meant to hold 90 marks in 100 held "
                        + told.stream()
                                .map(one -> String.format(
                                        Locale.ROOT,
                                        "%.0f (%s, %d marks)",
                                        100 * one.within90(),
                                        one.kind().words(),
                                        one.compared()))
                                .collect(Collectors.joining(" and "))
                        + ".",
                next(lacking, questions));
    }

    private static String next(List<MarkReport.Summary> lacking, int questions) {
        if (questions > 0) {
            return questions == 1
                    ? "One written mark lies far off: look below whether it was mistyped."
                    : questions + " written marks lie far off: look below whether they were mistyped.";
        }
        return lacking.isEmpty()
                ? "Nothing to do: no written mark lies far off."
                : "Write " + words(lacking) + " of more batches too.";
    }

    private static String words(List<MarkReport.Summary> kinds) {
        return kinds.stream().map(one -> one.kind().words()).collect(Collectors.joining(" and "));
    }

    private static String seconds(double seconds) {
        return Unit.SECONDS.format(seconds, TemperatureUnit.CELSIUS);
    }

    /** Says when a mark of a batch would have been written. */
    static InShort of(MarkPrediction mark) {
        String where = Unit.TEMPERATURE
                .withDigits(mark.temperatureStandardError() < 1 ? 1 : 0)
                .format(mark.celsius(), mark.reader());
        String of = mark.kind().words() + " of batch " + mark.batch();
        boolean habit = mark.basis() == MarkPrediction.Basis.HABIT;
        return switch (mark.shape()) {
            case NO_CURVE ->
                new InShort(
                        "When you would have written " + of + " cannot be told.",
                        "It has no bean temperature that rises for a minute.",
                        "Log the bean temperature of the next batches, then ask about one of them.");
            case NEVER_REACHED ->
                new InShort(
                        "When you would have written " + of + " cannot be told.",
                        "Its bean temperature never reached " + where + ", where it is expected.",
                        habit ? "Nothing to do: the batch may have been dropped before it." : more(mark.kind()));
            case FLAT ->
                new InShort(
                        "You would have written " + of + " between " + ends(mark.most())
                                + ", and no nearer can be told.",
                        "The curve is flat there, at about " + where + ".",
                        habit ? KEEP : more(mark.kind()));
            case RISING ->
                new InShort(
                        "You would have written " + of + " at about " + Elapsed.seconds(mark.seconds())
                                + ", when the bean probe read " + where + ".",
                        (habit
                                        ? "By your marks of other days, 9 of 10 are written between "
                                        : "By common practice it lies between ")
                                + ends(mark.most())
                                + (habit ? "." : "; too few marks are written to know your habit."),
                        habit ? KEEP : more(mark.kind()));
        };
    }

    private static String more(MarkKind kind) {
        return "Write " + kind.words() + " of every batch, then your own habit takes its place.";
    }

    private static String ends(MarkPrediction.Passing range) {
        return Elapsed.seconds(range.from()) + " and " + Elapsed.seconds(range.to());
    }
}
