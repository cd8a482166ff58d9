package parchment.phase;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.phase.found.Mark;
import parchment.phase.found.Source;
import parchment.quantity.TemperatureUnit;
import parchment.stats.linear.Robust;

/**
 * Measures how well a logbook's own marks can be foretold: each roast day is left out in turn, and what was written on it is compared with
 * what the other days foretell.
 *
 * <p>Answers with the median distance in seconds and in degrees, and with the share of written marks that lie within the intervals that are
 * meant to hold 1 in 2 and 9 in 10. A written mark that lies far from what its curve and the habit say is questioned in words, and stays as
 * it is. With fewer than 4 roast days the report says that it cannot tell.
 *
 * <pre>{@code
 * var report = MarkReport.of(logbook);
 * report                                            // how far off, in seconds and degrees
 * report.of(MarkKind.FIRST_CRACK_START).within90()  // share of written marks within the 9-in-10 interval
 * report.questions()                                // written marks to look at again
 * report.picture(MarkKind.YELLOWING)               // written against foretold
 * }</pre>
 */
public final class MarkReport implements Showable {
    /** A mark this many calibrated 9-in-10 half-widths off is questioned: 3.6 standard deviations of a normal error, once in 3,000. */
    private static final double QUESTIONED = 2.2;

    /**
     * Holds one written mark beside what the other days foretold.
     *
     * @param prediction what was foretold
     * @param writtenSeconds when it was written, in seconds since charge
     * @param writtenCelsius the bean temperature then, in °C; NaN outside the curve
     * @param day the roast day
     */
    public record Comparison(MarkPrediction prediction, double writtenSeconds, double writtenCelsius, String day) {
        /** Returns how much later it was written than foretold, in seconds; NaN where no time could be told. */
        public double secondsOff() {
            return writtenSeconds - prediction.seconds();
        }

        /** Returns how much hotter it was written than foretold, in °C. */
        public double celsiusOff() {
            return writtenCelsius - prediction.celsius();
        }

        boolean isQuestioned() {
            if (prediction.most().contains(writtenSeconds)) {
                return false;
            }
            return Double.isNaN(celsiusOff())
                    || Math.abs(celsiusOff())
                            > QUESTIONED * LearntHabit.NORMAL_90 * prediction.temperatureStandardError();
        }
    }

    /**
     * Sums up one kind of mark.
     *
     * @param kind which mark
     * @param basis what the predictions rest on
     * @param compared written marks that could be compared
     * @param days roast days they come from
     * @param leftOut written marks without a curve to foretell them from
     * @param medianSeconds median distance in seconds, without its sign; NaN with none
     * @param medianCelsius median distance in °C, without its sign; NaN with none
     * @param within50 share of the written marks within the 1-in-2 interval, 0 to 1
     * @param within90 share within the 9-in-10 interval
     * @param error50 standard error of the first share, days as the units
     * @param error90 standard error of the second share, days as the units
     */
    public record Summary(
            MarkKind kind,
            MarkPrediction.Basis basis,
            int compared,
            int days,
            int leftOut,
            double medianSeconds,
            double medianCelsius,
            double within50,
            double within90,
            double error50,
            double error90) {
        /** Returns whether there are too few marks or days for any of this to be said. */
        public boolean cannotTell() {
            return compared < HabitModel.FEWEST_MARKS || days < HabitModel.FEWEST_DAYS;
        }
    }

    private final LearntHabit habit;
    private final Map<MarkKind, List<Comparison>> comparisons = new EnumMap<>(MarkKind.class);
    private final Map<MarkKind, Summary> summaries = new EnumMap<>(MarkKind.class);

    private MarkReport(LearntHabit habit) {
        this.habit = habit;
        for (MarkKind kind : LearntHabit.KINDS) {
            List<Comparison> list = new ArrayList<>();
            int leftOut = 0;
            for (HabitRow row : habit.rows()) {
                Optional<Mark> written = row.phases().mark(kind).filter(mark -> mark.source() == Source.WRITTEN);
                if (written.isEmpty()) {
                    continue;
                }
                MarkPrediction prediction = habit.predict(row, kind);
                if (row.climb().isEmpty() || Double.isNaN(prediction.most().from())) {
                    leftOut++;
                    continue;
                }
                list.add(new Comparison(
                        prediction,
                        written.get().seconds(),
                        row.climb().get().celsiusAt(written.get().seconds()),
                        row.day()));
            }
            comparisons.put(kind, List.copyOf(list));
            summaries.put(kind, summary(kind, list, leftOut));
        }
    }

    /** Compares every written yellowing and first crack start of a logbook with what the other roast days foretell. */
    public static MarkReport of(Logbook logbook) {
        return of(LearntHabit.of(logbook));
    }

    /** Compares the written marks that a habit was learnt from with what the other roast days foretell. */
    public static MarkReport of(LearntHabit habit) {
        return new MarkReport(habit);
    }

    private Summary summary(MarkKind kind, List<Comparison> list, int leftOut) {
        double[] within50 = DayShare.of(list, c -> c.prediction().half().contains(c.writtenSeconds()));
        double[] within90 = DayShare.of(list, c -> c.prediction().most().contains(c.writtenSeconds()));
        return new Summary(
                kind,
                habit.model(kind).isLearnt() ? MarkPrediction.Basis.HABIT : MarkPrediction.Basis.ASSUMED,
                list.size(),
                (int) list.stream().map(Comparison::day).distinct().count(),
                leftOut,
                Robust.median(list.stream()
                        .mapToDouble(Comparison::secondsOff)
                        .map(Math::abs)
                        .toArray()),
                Robust.median(list.stream()
                        .mapToDouble(Comparison::celsiusOff)
                        .map(Math::abs)
                        .toArray()),
                within50[0],
                within90[0],
                within50[1],
                within90[1]);
    }

    /** Returns the habit behind the predictions. */
    public LearntHabit habit() {
        return habit;
    }

    /** Returns the summary of one kind of mark. */
    public Summary of(MarkKind kind) {
        habit.model(kind);
        return summaries.getOrDefault(kind, summary(kind, List.of(), 0));
    }

    /** Returns every written mark of a kind beside what was foretold, in the logbook's order. */
    public List<Comparison> comparisons(MarkKind kind) {
        habit.model(kind);
        return comparisons.getOrDefault(kind, List.of());
    }

    /** Returns the written marks that lie far from what curve and habit say, each in a sentence; they are kept as written. */
    public List<String> questions() {
        List<String> questions = new ArrayList<>();
        for (MarkKind kind : LearntHabit.KINDS) {
            if (of(kind).cannotTell()) {
                continue;
            }
            for (Comparison comparison : comparisons(kind)) {
                if (comparison.isQuestioned()) {
                    questions.add(MarkReportPage.question(comparison, reader()));
                }
            }
        }
        return questions;
    }

    /** Returns the answer in three sentences: how near to the written marks the foretold ones come, how sure that is, what to do next. */
    public InShort inShort() {
        return ForetoldInShort.of(
                LearntHabit.KINDS.stream().map(this::of).toList(), questions().size());
    }

    TemperatureUnit reader() {
        return habit.reader();
    }

    /** Returns the picture of written against foretold times of one kind of mark. */
    public Showable picture(MarkKind kind) {
        return MarkReportPage.picture(this, kind);
    }

    @Override
    public String toString() {
        List<String> sentences = new ArrayList<>();
        for (MarkKind kind : LearntHabit.KINDS) {
            sentences.add(MarkReportPage.sentence(of(kind), reader()));
        }
        int questioned = questions().size();
        if (questioned > 0) {
            sentences.add(String.format(
                    Locale.ROOT,
                    "%d written %s please check.",
                    questioned,
                    questioned == 1 ? "mark is questioned;" : "marks are questioned;"));
        }
        return String.join(" ", sentences);
    }

    @Override
    public String text() {
        return MarkReportPage.of(this).text();
    }

    @Override
    public Optional<String> html() {
        return MarkReportPage.of(this).html();
    }
}
