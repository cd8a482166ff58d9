package parchment.phase;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.contents.EmptyLogbook;
import parchment.phase.found.Mark;
import parchment.quantity.TemperatureUnit;
import parchment.stats.mixed.LinearMixedModel;
import parchment.stats.mixed.NewGroupForecast.Forecast;

/**
 * Learns from the written marks of a logbook where this roaster writes yellowing and the start of first crack, and predicts them for any
 * batch with a curve.
 *
 * <p>The bean temperature at the written mark is modelled on the rate of rise just before it and on the green mass, with random lot, probe
 * period, roaster and roast day, partially pooled; the time is when the curve passes there. A prediction always counts as one of a new
 * roast day: marks of the batch's own day are left out, so that a written mark can be compared with it. From 20 roast days on the intervals
 * are calibrated on left-out days (conformal); with fewer they rest on the normal model, widened where left-out days lay further off. With
 * fewer than 6 marks or 4 roast days the habit is {@linkplain MarkPrediction.Basis#ASSUMED assumed}: common practice, no source.
 *
 * <p>What is predicted is what would have been written. How late the pen is cannot be learnt from a logbook: lateness, the lag of the probe
 * and a true effect of the rate all show in the same way.
 *
 * <pre>{@code
 * var habit = LearntHabit.of(logbook);                                   // how many marks it rests on, and where they lie
 * habit.predict(logbook.lastWithCurve(), MarkKind.YELLOWING)             // when this roaster would have written it
 * habit.withPredictions(logbook.lastWithCurve())                         // the missing marks filled in and marked so
 * }</pre>
 *
 * @see parchment.stats.mixed.LinearMixedModel
 * @see parchment.stats.resample.GroupedConformal
 */
public final class LearntHabit implements ShownAs {
    /** The marks that are learnt. */
    public static final List<MarkKind> KINDS = List.of(MarkKind.YELLOWING, MarkKind.FIRST_CRACK_START);

    /** A curve slower than this at a mark is called flat, °C/min; common practice, no source. */
    static final double FLAT_RATE = 2;

    static final double NORMAL_90 = 1.6449;

    private final String name;
    private final TemperatureUnit reader;
    private final Map<String, HabitRow> rows = new LinkedHashMap<>();
    private final Map<MarkKind, HabitModel> models = new EnumMap<>(MarkKind.class);

    private LearntHabit(Logbook logbook, List<Phases> phases) {
        name = logbook.name();
        reader = logbook.readerUnit();
        HabitRow.of(logbook, phases).forEach(row -> rows.put(row.name(), row));
        for (MarkKind kind : KINDS) {
            models.put(kind, new HabitModel(kind, List.copyOf(rows.values())));
        }
    }

    /** Learns the habit from a logbook. */
    public static LearntHabit of(Logbook logbook) {
        return of(logbook, Phases.of(logbook));
    }

    /** Learns the habit from a logbook whose marks and phases were found before. */
    public static LearntHabit of(Logbook logbook, List<Phases> phases) {
        return new LearntHabit(logbook, phases);
    }

    HabitModel model(MarkKind kind) {
        HabitModel model = models.get(kind);
        if (model == null) {
            throw new IllegalArgumentException("The habit is learnt for "
                    + String.join(" and ", KINDS.stream().map(MarkKind::words).toList()) + ", not for '" + kind.words()
                    + "'.");
        }
        return model;
    }

    List<HabitRow> rows() {
        return List.copyOf(rows.values());
    }

    TemperatureUnit reader() {
        return reader;
    }

    String name() {
        return name;
    }

    /**
     * Predicts when this roaster would have written a mark of a batch, written or not, from the other roast days.
     *
     * @throws IllegalArgumentException if the batch is not in the logbook, or the mark is neither yellowing nor first crack start
     */
    public MarkPrediction predict(Batch batch, MarkKind kind) {
        return predict(row(batch), kind);
    }

    private HabitRow row(Batch batch) {
        HabitRow row = rows.get(batch.name());
        if (row == null && rows.isEmpty()) {
            return HabitRow.of(Phases.of(batch), "");
        }
        if (row == null) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "The habit was learnt from %s, which has no batch '%s'. Learn it from the logbook that holds the batch:"
                            + " LearntHabit.of(logbook).",
                    name,
                    batch.name()));
        }
        return row;
    }

    MarkPrediction predict(HabitRow row, MarkKind kind) {
        HabitModel model = model(kind);
        MarkPrediction.Basis basis = model.isLearnt() ? MarkPrediction.Basis.HABIT : MarkPrediction.Basis.ASSUMED;
        Forecast expected = model.expected(row);
        // The error that a normal one would need for the same 9 in 10, so that the calibration is in it.
        double celsiusError = model.factor(row, 0.9) * expected.standardDeviation() / NORMAL_90;
        MarkPrediction.Passing nothing = new MarkPrediction.Passing(Double.NaN, Double.NaN);
        if (row.climb().isEmpty()) {
            return new MarkPrediction(
                    row.name(),
                    kind,
                    basis,
                    Double.NaN,
                    Double.NaN,
                    nothing,
                    nothing,
                    expected.value(),
                    celsiusError,
                    MarkPrediction.Shape.NO_CURVE,
                    reader);
        }
        RisingPart climb = row.climb().get();
        MarkPrediction.Passing half = passing(climb, expected, model.factor(row, 0.5));
        MarkPrediction.Passing most = passing(climb, expected, model.factor(row, 0.9));
        double at = climb.secondsAt(expected.value());
        boolean reached = Double.isFinite(at);
        MarkPrediction.Shape shape = !reached
                ? MarkPrediction.Shape.NEVER_REACHED
                : isFlat(climb, at, expected, most) ? MarkPrediction.Shape.FLAT : MarkPrediction.Shape.RISING;
        double error = (most.to() - most.from()) / (2 * NORMAL_90);
        return new MarkPrediction(
                row.name(),
                kind,
                basis,
                reached ? at : Double.NaN,
                shape == MarkPrediction.Shape.RISING ? error : Double.NaN,
                half,
                most,
                expected.value(),
                celsiusError,
                shape,
                reader);
    }

    private static MarkPrediction.Passing passing(RisingPart climb, Forecast expected, double factor) {
        double reach = factor * expected.standardDeviation();
        double from = climb.secondsAt(expected.value() - reach);
        double to = climb.secondsAt(expected.value() + reach);
        if (from == Double.POSITIVE_INFINITY) {
            return new MarkPrediction.Passing(Double.NaN, Double.NaN);
        }
        return new MarkPrediction.Passing(Math.max(from, climb.start()), Math.min(to, climb.end()));
    }

    /** Flat: slower than a stated rate, or so bent that one side of the interval is three times the other. */
    private static boolean isFlat(RisingPart climb, double at, Forecast expected, MarkPrediction.Passing most) {
        double before = at - most.from();
        double after = most.to() - at;
        double longer = Math.max(before, after);
        double shorter = Math.min(before, after);
        boolean whole = most.to() < climb.end() && most.from() > climb.start();
        return climb.rateAt(at) < FLAT_RATE || (whole && longer > 3 * shorter);
    }

    /**
     * Returns marks and phases of a batch with the marks that lack filled in from the habit; each says that it was predicted or assumed, with
     * its seconds of error. What was written stays. Where the curve is flat, or never gets there, a mark stays missing.
     *
     * @throws IllegalArgumentException if the batch is not in the logbook
     */
    public Phases withPredictions(Batch batch) {
        HabitRow row = row(batch);
        List<Mark> more = new ArrayList<>();
        for (MarkKind kind : KINDS) {
            MarkPrediction predicted = predict(row, kind);
            if (row.phases().mark(kind).isEmpty() && predicted.shape() == MarkPrediction.Shape.RISING) {
                more.add(PredictedMark.of(predicted, row.phases()));
            }
        }
        return row.phases().with(more);
    }

    /** Returns marks and phases of all batches, as {@link #withPredictions(Batch)} does for one, in the logbook's order. */
    public List<Phases> withPredictions() {
        return rows.values().stream()
                .map(row -> withPredictions(row.phases().batch()))
                .toList();
    }

    /**
     * Returns the newest batch with a rising curve on which a mark was not written; the newest with a curve if it was written on all, and
     * the newest of all if none has one. With no batch yet it is one of which nothing is known.
     */
    public Batch newestWithout(MarkKind kind) {
        List<HabitRow> curves =
                rows.values().stream().filter(row -> row.climb().isPresent()).toList();
        return curves.stream()
                .filter(row -> row.phases().mark(kind).isEmpty())
                .reduce((earlier, later) -> later)
                .or(() -> curves.stream().reduce((earlier, later) -> later))
                .or(() -> rows.values().stream().reduce((earlier, later) -> later))
                .map(row -> row.phases().batch())
                .orElseGet(() -> EmptyLogbook.batch(reader));
    }

    /** Returns the answer in three sentences: where marks are written, how steadily, what to do next. */
    public InShort inShort() {
        return HabitInShort.of(KINDS.stream().map(kind -> written(model(kind))).toList(), reader);
    }

    private static HabitInShort.Written written(HabitModel model) {
        OptionalDouble spread = model.isLearnt()
                ? model.model().stream()
                        .mapToDouble(LinearMixedModel::residualStandardDeviation)
                        .findFirst()
                : OptionalDouble.empty();
        return new HabitInShort.Written(model.kind, spread.isPresent() ? HabitWords.usual(model) : Double.NaN, spread);
    }

    private Report page() {
        Report folded = Report.titled("How this was worked out");
        for (MarkKind kind : KINDS) {
            folded = folded.say(HabitWords.of(model(kind), reader));
        }
        return Report.titled("Where the marks of " + name + " are written")
                .add(inShort())
                .add(HabitWords.table(List.copyOf(models.values()), reader))
                .fold(folded);
    }

    @Override
    public Showable shownAs() {
        return page();
    }

    @Override
    public String toString() {
        List<String> sentences = new ArrayList<>();
        for (MarkKind kind : KINDS) {
            sentences.add(HabitWords.of(model(kind), reader));
        }
        return String.join(" ", sentences);
    }
}
