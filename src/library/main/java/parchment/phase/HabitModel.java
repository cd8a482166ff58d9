package parchment.phase;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import parchment.logbook.MarkKind;
import parchment.phase.found.Source;
import parchment.stats.Estimate;
import parchment.stats.linear.Robust;
import parchment.stats.mixed.LinearMixedModel;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.mixed.NewGroupForecast;
import parchment.stats.mixed.NewGroupForecast.Forecast;
import parchment.stats.mixed.RandomTerm;
import parchment.stats.resample.GroupedConformal;

/**
 * Learns at which bean temperature one kind of mark is written: a mixed model on the rate of rise before it and on the green mass, with
 * random lot, probe period, roaster and roast day.
 *
 * <p>The rate is the mean rate over the {@value #APPROACH_CELSIUS} °C below the usual temperature of the mark, so that a late pen does not
 * change it. Every prediction is made as if the batch's own roast day had not been seen.
 */
final class HabitModel {
    static final double APPROACH_CELSIUS = 20;
    static final int FEWEST_MARKS = 6;
    static final int FEWEST_DAYS = 4;
    static final int DAYS_TO_CALIBRATE = 20;

    /** The rate before the mark counts from so many marks and days on, the mass from so many marks; common practice, no source. */
    static final int MARKS_FOR_RATE = 12;

    static final int DAYS_FOR_RATE = 8;
    static final int MARKS_FOR_MASS = 20;

    /** Masses that differ from the usual one by no more than this share of it are the scale's own scatter. */
    static final double MASS_VARIED = 0.02;

    /** A mark this many robust standard deviations off the others teaches nothing; a normal error gets there once in a billion. */
    static final double SET_ASIDE = 6;

    /** Rates that differ by less, in °C/min, teach nothing: all are alike, or none is known. */
    private static final double SAME_RATE = 1e-6;

    private static final String DAY = "roast day";

    final MarkKind kind;
    final List<HabitRow> learnt = new ArrayList<>();
    final List<HabitRow> setAside = new ArrayList<>();
    final GroupedConformal calibration;
    final SignatureGain gain;

    private final double reference;
    private final double usualRate;
    private final double usualMass;
    private final Fixed fixed;
    private final double widening;
    private final List<LinearMixedModel> model = new ArrayList<>();
    private final Map<String, NewGroupForecast> withoutDay = new HashMap<>();
    private final List<NewGroupForecast> whole = new ArrayList<>();

    /** How many of constant, rate and mass the model has. */
    private enum Fixed {
        NONE,
        RATE,
        RATE_AND_MASS
    }

    HabitModel(MarkKind kind, List<HabitRow> rows) {
        this.kind = kind;
        List<HabitRow> written = rows.stream()
                .filter(row -> !Double.isNaN(writtenCelsius(row, kind)))
                .toList();
        double[] all =
                written.stream().mapToDouble(row -> writtenCelsius(row, kind)).toArray();
        double middle = Robust.median(all);
        double spread = Math.max(1, Robust.medianAbsoluteDeviation(all));
        for (HabitRow row : written) {
            boolean far = Math.abs(writtenCelsius(row, kind) - middle) > SET_ASIDE * spread;
            (far && written.size() >= FEWEST_MARKS ? setAside : learnt).add(row);
        }
        double[] celsius = writtenCelsius();
        reference = celsius.length == 0 ? StatedPractice.celsius(kind) : Robust.median(celsius);
        usualRate = Robust.median(learnt.stream().mapToDouble(this::rawRate).toArray());
        double[] masses = learnt.stream().mapToDouble(HabitRow::kilograms).toArray();
        usualMass = Robust.median(masses);
        long days = days();
        boolean varied = Arrays.stream(masses)
                .anyMatch(mass -> !Double.isNaN(mass) && Math.abs(mass / usualMass - 1) > MASS_VARIED);
        boolean paced = learnt.stream().anyMatch(row -> Math.abs(rate(row)) > SAME_RATE);
        fixed = days < DAYS_FOR_RATE || learnt.size() < MARKS_FOR_RATE || !paced
                ? Fixed.NONE
                : varied && learnt.size() >= MARKS_FOR_MASS ? Fixed.RATE_AND_MASS : Fixed.RATE;
        if (isLearnt()) {
            fit(celsius);
        }
        double[] errors = new double[learnt.size()];
        double[] deviations = new double[learnt.size()];
        double[] signs = new double[learnt.size()];
        List<String> dayOf = learnt.stream().map(HabitRow::day).toList();
        for (int i = 0; i < errors.length; i++) {
            Forecast expected = plain(learnt.get(i));
            errors[i] = celsius[i] - expected.value();
            deviations[i] = expected.standardDeviation();
            signs[i] = sign(learnt.get(i), expected.value());
        }
        gain = SignatureGain.of(errors, signs, dayOf);
        double[] scores = new double[errors.length];
        double squares = 0;
        for (int i = 0; i < errors.length; i++) {
            scores[i] = Math.abs(gain.left(dayOf.get(i), errors[i], signs[i]))
                    / (deviations[i] * gain.use(dayOf.get(i)).spread());
            squares += scores[i] * scores[i] / errors.length;
        }
        calibration = GroupedConformal.of(scores, dayOf);
        widening = Math.max(1, Math.sqrt(squares));
    }

    /** Returns the bean temperature at a written mark in °C; NaN if it was not written or the curve does not reach it. */
    static double writtenCelsius(HabitRow row, MarkKind kind) {
        return row.phases()
                .mark(kind)
                .filter(mark -> mark.source() == Source.WRITTEN)
                .flatMap(mark -> row.climb().map(climb -> climb.celsiusAt(mark.seconds())))
                .orElse(Double.NaN);
    }

    private double[] writtenCelsius() {
        return learnt.stream().mapToDouble(row -> writtenCelsius(row, kind)).toArray();
    }

    /** Returns how many roast days the marks come from. */
    int days() {
        return (int) learnt.stream().map(HabitRow::day).distinct().count();
    }

    boolean isLearnt() {
        return learnt.size() >= FEWEST_MARKS && days() >= FEWEST_DAYS;
    }

    boolean isCalibrated() {
        return isLearnt() && days() >= DAYS_TO_CALIBRATE;
    }

    /** Returns the fitted model; empty if the habit is assumed. */
    List<LinearMixedModel> model() {
        return List.copyOf(model);
    }

    private double rawRate(HabitRow row) {
        return row.climb()
                .map(climb -> climb.meanRate(reference - APPROACH_CELSIUS, reference))
                .orElse(Double.NaN);
    }

    private double rate(HabitRow row) {
        double rate = rawRate(row) - usualRate;
        return Double.isNaN(rate) ? 0 : rate;
    }

    private double mass(HabitRow row) {
        double mass = row.kilograms() - usualMass;
        return Double.isNaN(mass) ? 0 : mass;
    }

    private double[] columns(HabitRow row) {
        return switch (fixed) {
            case NONE -> new double[] {1};
            case RATE -> new double[] {1, rate(row)};
            case RATE_AND_MASS -> new double[] {1, rate(row), mass(row)};
        };
    }

    private void fit(double[] celsius) {
        MixedDesign design = MixedDesign.of("bean temperature at " + kind.words(), celsius);
        double[] rates = learnt.stream().mapToDouble(this::rate).toArray();
        double[] masses = learnt.stream().mapToDouble(this::mass).toArray();
        if (fixed != Fixed.NONE) {
            design = design.withCovariate("rate of rise before it", rates);
        }
        if (fixed == Fixed.RATE_AND_MASS) {
            design = design.withCovariate("green mass", masses);
        }
        List<List<String>> labels = new ArrayList<>();
        for (int k = 0; k < HabitRow.TERMS.size(); k++) {
            int term = k;
            List<String> label =
                    learnt.stream().map(row -> row.surroundings().get(term)).toList();
            labels.add(label);
            if (label.stream().distinct().count() > 1) {
                design = design.withRandom(RandomTerm.intercept(HabitRow.TERMS.get(k), label));
            }
        }
        List<String> days = learnt.stream().map(HabitRow::day).toList();
        if (days() < learnt.size()) {
            design = design.withRandom(RandomTerm.intercept(DAY, days));
        }
        LinearMixedModel fitted = design.fit();
        model.add(fitted);
        double[] variances = new double[labels.size()];
        for (int k = 0; k < variances.length; k++) {
            variances[k] = Math.pow(fitted.standardDeviation(HabitRow.TERMS.get(k)), 2);
        }
        double rest = Math.max(1e-4, Math.pow(fitted.residualStandardDeviation(), 2));
        NewGroupForecast forecast = NewGroupForecast.of(
                celsius,
                learnt.stream().map(this::columns).toArray(double[][]::new),
                labels,
                days,
                variances,
                Math.pow(fitted.standardDeviation(DAY), 2),
                rest);
        whole.add(forecast);
        forecast.groups().forEach(day -> withoutDay.put(day, forecast.without(day)));
    }

    /** The habit alone, before the curve's own sign, as if the batch's roast day had not been seen. */
    private Forecast plain(HabitRow row) {
        if (isLearnt()) {
            Forecast forecast = withoutDay.getOrDefault(row.day(), whole.get(0)).at(columns(row), row.surroundings());
            if (!Double.isNaN(forecast.value())) {
                return forecast;
            }
        }
        return StatedPractice.after(
                kind,
                learnt.stream()
                        .filter(other -> !other.day().equals(row.day()))
                        .mapToDouble(other -> writtenCelsius(other, kind))
                        .toArray());
    }

    private double sign(HabitRow row, double expected) {
        return kind == MarkKind.FIRST_CRACK_START && row.climb().isPresent()
                ? CrackSignature.celsius(row.climb().get(), expected) - expected
                : Double.NaN;
    }

    /** Returns what bean temperature to expect at the mark of a batch, from the other roast days. */
    Forecast expected(HabitRow row) {
        Forecast plain = plain(row);
        if (!isCalibrated()) {
            return plain;
        }
        double off = sign(row, plain.value());
        return new Forecast(
                plain.value() + gain.moves(row.day(), off),
                plain.standardDeviation() * gain.use(row.day()).spread());
    }

    /** Returns by how many standard deviations an interval of temperatures reaches to either side. */
    double factor(HabitRow row, double level) {
        if (isCalibrated()) {
            double factor = calibration.without(row.day()).factor(level);
            if (Double.isFinite(factor)) {
                return factor;
            }
        }
        double degrees = isLearnt() ? Math.max(2, days() - 2) : 1e6;
        Estimate one = new Estimate("", 0, 1, degrees);
        return one.interval(level).upper() * (isLearnt() ? widening : 1);
    }
}
