package parchment.curve;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import parchment.curve.measured.Cleaning;
import parchment.curve.measured.Gap;
import parchment.curve.measured.LeftOut;
import parchment.display.Showable;
import parchment.quantity.TemperatureUnit;
import parchment.stats.linear.Robust;

/**
 * The readings of a curve that can be relied on, with which were left out and why.
 *
 * <p>Nothing is replaced, filled in or moved: spikes and stuck readings are left out, and a stretch without readings stays a gap that
 * splits the curve into pieces. Shorter holes do not split it, but are counted.
 */
public final class CleanCurve implements Showable {

    /** Says whether the readings look as if they had been smoothed before they were saved. */
    public enum Smoothing {
        /** Neighbouring readings share little of their noise. */
        AS_READ,
        /** Readings share their noise as after a moving mean or an exponential smooth; the rate of rise lags and looks calmer than it was. */
        LOOKS_SMOOTHED,
        /** Rounding hides the noise, or there are too few readings. */
        CANNOT_TELL
    }

    /** Correlation of neighbouring noise from which a log looks smoothed; a probe's own inertia gives less. Common practice, no source. */
    static final double LOOKS_SMOOTHED_FROM = 0.75;

    private final Curve kept;
    private final List<LeftOut> leftOut;
    private final List<Gap> gaps;
    private final List<Gap> holes;
    private final double step;
    private final double interval;
    private final SharedNoise noise;
    private final TemperatureUnit reader;

    private CleanCurve(
            Curve kept,
            List<LeftOut> leftOut,
            List<Gap> gaps,
            List<Gap> holes,
            double step,
            double interval,
            SharedNoise noise,
            TemperatureUnit reader) {
        this.kept = kept;
        this.leftOut = List.copyOf(leftOut);
        this.gaps = List.copyOf(gaps);
        this.holes = List.copyOf(holes);
        this.step = step;
        this.interval = interval;
        this.noise = noise;
        this.reader = reader;
    }

    /** Cleans a curve with the usual settings, {@link Cleaning#STANDARD}. */
    public static CleanCurve of(Curve curve) {
        return of(curve, Cleaning.STANDARD);
    }

    /** Cleans a curve. */
    public static CleanCurve of(Curve curve, Cleaning cleaning) {
        double step = LoggerStep.of(curve.values());
        List<LeftOut> out = new ArrayList<>();
        Curve noSpikes =
                without(curve, Spikes.find(curve.seconds(), curve.values(), step, cleaning), LeftOut.Reason.SPIKE, out);
        Curve kept = without(
                noSpikes,
                StuckRuns.find(noSpikes.seconds(), noSpikes.values(), step, cleaning),
                LeftOut.Reason.STUCK,
                out);
        out.sort((a, b) -> Double.compare(a.seconds(), b.seconds()));
        double interval = usualInterval(curve.seconds());
        List<Gap> gaps = new ArrayList<>();
        List<Gap> holes = new ArrayList<>();
        for (int i = 1; i < kept.size(); i++) {
            Gap between = new Gap(kept.secondsAt(i - 1), kept.secondsAt(i));
            if (between.seconds() > Math.max(cleaning.longestHole(), 3 * interval)) {
                gaps.add(between);
            } else if (between.seconds() > 1.5 * interval) {
                holes.add(between);
            }
        }
        return new CleanCurve(
                kept, out, gaps, holes, step, interval, SharedNoise.of(kept.values()), TemperatureUnit.CELSIUS);
    }

    private static Curve without(Curve curve, boolean[] out, LeftOut.Reason reason, List<LeftOut> list) {
        int size = 0;
        double[] x = new double[curve.size()];
        double[] y = new double[curve.size()];
        for (int i = 0; i < curve.size(); i++) {
            if (out[i]) {
                list.add(new LeftOut(curve.secondsAt(i), curve.valueAt(i), reason));
            } else {
                x[size] = curve.secondsAt(i);
                y[size++] = curve.valueAt(i);
            }
        }
        return size == curve.size()
                ? curve
                : Curve.of(
                        curve.name(), curve.unit(), java.util.Arrays.copyOf(x, size), java.util.Arrays.copyOf(y, size));
    }

    private static double usualInterval(double[] x) {
        double[] steps = new double[Math.max(0, x.length - 1)];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = x[i + 1] - x[i];
        }
        return Robust.median(steps);
    }

    /** Returns the readings that were kept. */
    public Curve kept() {
        return kept;
    }

    /** Returns the readings that were left out, in order of time. */
    public List<LeftOut> leftOut() {
        return leftOut;
    }

    /** Returns the stretches without readings that split the curve, in order of time. */
    public List<Gap> gaps() {
        return gaps;
    }

    /** Returns the shorter stretches without readings, which a smooth passes over. */
    public List<Gap> holes() {
        return holes;
    }

    /** Returns the step that the logger rounds to, in the curve's unit; 0 if none is seen. */
    public double step() {
        return step;
    }

    /** Returns the usual time between readings in seconds; NaN if there are fewer than two. */
    public double interval() {
        return interval;
    }

    /** Returns the standard deviation of one reading's noise, in the curve's unit; NaN if there are too few readings to tell. */
    public double noise() {
        return noise.standardDeviation();
    }

    /** Returns the correlation of the noise of neighbouring readings, from 0 to 1; NaN if there are too few readings to tell. */
    public double noiseCorrelation() {
        return noise.correlation();
    }

    /** Returns whether the log looks as if it had been smoothed before it was saved. */
    public Smoothing smoothing() {
        if (Double.isNaN(noise.correlation()) || noise.standardDeviation() < 0.7 * step) {
            return Smoothing.CANNOT_TELL;
        }
        return noise.movingMean() > 0 || noise.correlation() >= LOOKS_SMOOTHED_FROM
                ? Smoothing.LOOKS_SMOOTHED
                : Smoothing.AS_READ;
    }

    /** Returns the parts between the gaps, in order of time; each has at least one reading. */
    public List<Curve> pieces() {
        List<Curve> pieces = new ArrayList<>();
        double from = Double.NEGATIVE_INFINITY;
        for (Gap gap : gaps) {
            pieces.add(kept.between(from, gap.fromSeconds()));
            from = gap.toSeconds();
        }
        if (!kept.isEmpty()) {
            pieces.add(kept.between(from, Double.POSITIVE_INFINITY));
        }
        return pieces;
    }

    /** Returns the part from one time to another, both included; what is known of the logger stays. */
    public CleanCurve between(double fromSeconds, double toSeconds) {
        return new CleanCurve(
                kept.between(fromSeconds, toSeconds),
                leftOut.stream()
                        .filter(l -> l.seconds() >= fromSeconds && l.seconds() <= toSeconds)
                        .toList(),
                within(gaps, fromSeconds, toSeconds),
                within(holes, fromSeconds, toSeconds),
                step,
                interval,
                noise,
                reader);
    }

    private static List<Gap> within(List<Gap> gaps, double from, double to) {
        return gaps.stream()
                .filter(g -> g.fromSeconds() >= from && g.toSeconds() <= to)
                .toList();
    }

    /** Returns the same readings on a clock that starts the given number of seconds later. */
    public CleanCurve withZeroAt(double zeroSeconds) {
        return new CleanCurve(
                kept.withZeroAt(zeroSeconds),
                leftOut.stream()
                        .map(l -> new LeftOut(l.seconds() - zeroSeconds, l.value(), l.reason()))
                        .toList(),
                moved(gaps, zeroSeconds),
                moved(holes, zeroSeconds),
                step,
                interval,
                noise,
                reader);
    }

    private static List<Gap> moved(List<Gap> gaps, double zero) {
        return gaps.stream()
                .map(g -> new Gap(g.fromSeconds() - zero, g.toSeconds() - zero))
                .toList();
    }

    /** Returns the same readings, told on the given temperature scale. */
    public CleanCurve in(TemperatureUnit unit) {
        return new CleanCurve(kept, leftOut, gaps, holes, step, interval, noise, unit);
    }

    /** Returns how many readings were left out for one reason. */
    public int leftOut(LeftOut.Reason reason) {
        return (int) leftOut.stream().filter(l -> l.reason() == reason).count();
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT, "%s: %d of %d readings kept", kept.name(), kept.size(), kept.size() + leftOut.size()));
        for (LeftOut.Reason reason : LeftOut.Reason.values()) {
            int count = leftOut(reason);
            if (count > 0) {
                text.append(
                        String.format(Locale.ROOT, ", %d %s%s left out", count, reason.words(), count == 1 ? "" : "s"));
            }
        }
        if (!Double.isNaN(interval)) {
            text.append("; a reading every ").append(number(interval)).append(" s");
        }
        String unit = kept.unit().symbol(reader);
        text.append(
                step > 0
                        ? (", rounded to " + number(kept.unit().shownStep(step, reader)) + " " + unit).stripTrailing()
                        : ", no rounding seen");
        return text.append('.').toString();
    }

    /** Prints three figures without zeros that say nothing. */
    private static String number(double value) {
        return new BigDecimal(value)
                .round(new MathContext(3))
                .stripTrailingZeros()
                .toPlainString();
    }

    @Override
    public String text() {
        StringBuilder text = new StringBuilder(toString());
        if (!gaps.isEmpty()) {
            text.append(gaps.size() == 1 ? " Gap of " : " Gaps of ")
                    .append(gaps.stream().map(Gap::toString).collect(Collectors.joining(", ")))
                    .append("; nothing is said inside.");
        }
        if (!holes.isEmpty()) {
            double longest = holes.stream().mapToDouble(Gap::seconds).max().orElse(0);
            text.append(String.format(
                    Locale.ROOT,
                    " %d shorter %s of up to %.0f s, which a smooth passes over.",
                    holes.size(),
                    holes.size() == 1 ? "hole" : "holes",
                    longest));
        }
        switch (smoothing()) {
            case LOOKS_SMOOTHED ->
                text.append(" The log looks as if it had been smoothed before it was saved:"
                        + " rates of rise lag, and look calmer than they were.");
            case CANNOT_TELL -> text.append(" Whether the log was smoothed before it was saved cannot be told.");
            case AS_READ -> {
                // The usual case needs no sentence.
            }
        }
        return text.toString();
    }
}
