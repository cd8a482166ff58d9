package parchment.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import parchment.curve.measured.CurveEstimate;
import parchment.curve.measured.Gap;
import parchment.curve.measured.Smoothed;
import parchment.display.Showable;
import parchment.quantity.Elapsed;
import parchment.stats.local.Autocovariance;
import parchment.stats.local.KernelShape;
import parchment.stats.local.LocalFit;
import parchment.stats.local.LocalRegression;

/**
 * Smooths a curve: value and slope at any time, with standard errors that know that neighbouring readings share noise.
 *
 * <p>Local quadratic regression, {@value #BANDWIDTH_SECONDS} seconds to either side unless told otherwise. That is common practice,
 * no source, for this reason: a rate of rise changes over a minute or so, which the window still follows, and it holds twenty readings
 * of a logger that reads every two seconds, which brings the standard error of the rate to a few tenths of a degree per minute where a
 * reading is off by a tenth or two. A slower logger gets three intervals. Each piece between gaps is smoothed alone; inside a gap, and
 * outside the readings, there is no value.
 *
 * @see LocalRegression
 */
public final class SmoothCurve implements Showable {
    /** Seconds to either side of a time whose readings are used, unless told otherwise. */
    public static final double BANDWIDTH_SECONDS = 20;

    /** Fewest readings that a parabola can be laid through: with fewer a curve shows no bend, and so no mark of a roast. */
    public static final int FEWEST_READINGS = 3;

    private final CleanCurve clean;
    private final double bandwidth;
    private final Autocovariance noise;
    private final LocalRegression regression;
    private final List<double[][]> pieces;
    /** Worked out when first asked for: many a smooth is asked at a few times only. */
    private volatile @Nullable List<Smoothed> atReadings;

    private SmoothCurve(CleanCurve clean, double bandwidth, @Nullable Autocovariance known) {
        this.clean = clean;
        this.bandwidth = bandwidth;
        this.pieces = clean.pieces().stream()
                .map(piece -> new double[][] {piece.seconds(), piece.values()})
                .toList();
        LocalRegression unscaled =
                LocalRegression.of(bandwidth).withKernel(KernelShape.TRICUBE).withResolution(clean.step());
        this.noise = known == null ? estimateNoise(clean.kept(), unscaled, 2 * bandwidth) : known;
        this.regression = unscaled.withAutocovariance(noise);
    }

    /** Smooths a cleaned curve over {@value #BANDWIDTH_SECONDS} seconds to either side, or three intervals of a slower logger. */
    public static SmoothCurve of(CleanCurve clean) {
        return of(clean, Math.max(BANDWIDTH_SECONDS, Double.isNaN(clean.interval()) ? 0 : 3 * clean.interval()));
    }

    /**
     * Smooths a cleaned curve over the given number of seconds to either side.
     *
     * @throws IllegalArgumentException if the bandwidth is not above 0
     */
    public static SmoothCurve of(CleanCurve clean, double bandwidthSeconds) {
        return new SmoothCurve(clean, bandwidthSeconds, null);
    }

    /** Smooths a cleaned curve over the given number of seconds to either side, with standard errors from the given noise. */
    public static SmoothCurve of(CleanCurve clean, double bandwidthSeconds, Autocovariance noise) {
        return new SmoothCurve(clean, bandwidthSeconds, noise);
    }

    /** Cleans a curve with the usual settings and smooths it. */
    public static SmoothCurve of(Curve curve) {
        return of(CleanCurve.of(curve));
    }

    /** Returns the same readings smoothed over another number of seconds to either side, the noise as it was estimated. */
    public SmoothCurve withBandwidth(double seconds) {
        return new SmoothCurve(clean, seconds, noise);
    }

    /** Returns the same smooth with standard errors from the given noise, such as one pooled over the curves of a logger. */
    public SmoothCurve withNoise(Autocovariance known) {
        return new SmoothCurve(clean, bandwidth, known);
    }

    /** Noise is estimated where a roast's curve bends little: well after its lowest reading, if that leaves half the readings. */
    private static Autocovariance estimateNoise(Curve curve, LocalRegression regression, double margin) {
        int lowest = 0;
        for (int i = 1; i < curve.size(); i++) {
            if (curve.valueAt(i) < curve.valueAt(lowest)) {
                lowest = i;
            }
        }
        int from = curve.isEmpty() ? 0 : curve.position(curve.secondsAt(lowest) + margin);
        if (from > curve.size() / 2) {
            from = 0;
        }
        double[] x = Arrays.copyOfRange(curve.seconds(), from, curve.size());
        double[] y = Arrays.copyOfRange(curve.values(), from, curve.size());
        return regression.fit(x, y, new double[0]).autocovariance();
    }

    private Smoothed row(LocalFit.Point point) {
        if (Double.isNaN(point.value())) {
            return Smoothed.missing(
                    point.x(),
                    String.format(
                            Locale.ROOT,
                            "too few readings of the %s around %s (%d).",
                            clean.kept().name(),
                            Elapsed.seconds(point.x()),
                            point.samples()));
        }
        double slopeError = point.slopeStandardError();
        if (point.quality() == LocalFit.SlopeQuality.BELOW_RESOLUTION) {
            // One step over the window, spread evenly, has this standard deviation.
            slopeError = Math.max(slopeError, clean.step() / (bandwidth * Math.sqrt(12)));
        }
        return new Smoothed(
                point.x(),
                point.value(),
                point.valueStandardError(),
                60 * point.slope(),
                60 * slopeError,
                point.quality(),
                "");
    }

    /** Returns value and slope at a time. */
    public Smoothed at(double seconds) {
        for (double[][] piece : pieces) {
            double[] x = piece[0];
            if (seconds >= x[0] && seconds <= x[x.length - 1]) {
                // Readings beyond twice the half-window cannot count, even near an end.
                double reach = 2 * bandwidth + 1e-6;
                int from = firstAtOrAfter(x, seconds - reach);
                int to = firstAtOrAfter(x, seconds + reach);
                LocalFit fit = regression.fit(
                        Arrays.copyOfRange(x, from, to), Arrays.copyOfRange(piece[1], from, to), new double[] {seconds
                        });
                return row(fit.point(0));
            }
        }
        return Smoothed.missing(seconds, whyNothingAt(seconds));
    }

    private static int firstAtOrAfter(double[] x, double at) {
        int found = Arrays.binarySearch(x, at);
        return found >= 0 ? found : -found - 1;
    }

    private String whyNothingAt(double seconds) {
        Curve kept = clean.kept();
        if (kept.isEmpty()) {
            return "the " + kept.name() + " has no readings.";
        }
        for (Gap gap : clean.gaps()) {
            if (gap.contains(seconds)) {
                return String.format(
                        Locale.ROOT, "%s lies in a gap of the %s (%s).", Elapsed.seconds(seconds), kept.name(), gap);
            }
        }
        return String.format(
                Locale.ROOT,
                "%s lies outside the readings of the %s (%s to %s).",
                Elapsed.seconds(seconds),
                kept.name(),
                Elapsed.seconds(kept.secondsAt(0)),
                Elapsed.seconds(kept.secondsAt(kept.size() - 1)));
    }

    /** Returns the height at a time, in the curve's unit. */
    public CurveEstimate valueAt(double seconds) {
        Smoothed here = at(seconds);
        return new CurveEstimate(here.value(), here.valueStandardError(), here.whyMissing());
    }

    /** Returns the slope at a time, in the curve's unit per minute: the rate of rise of a bean-temperature curve. */
    public CurveEstimate slopeAt(double seconds) {
        Smoothed here = at(seconds);
        return new CurveEstimate(here.slope(), here.slopeStandardError(), here.whyMissing());
    }

    /** Returns value and slope at every kept reading, in order of time. */
    public List<Smoothed> atReadings() {
        List<Smoothed> known = atReadings;
        if (known == null) {
            known = smoothReadings();
            atReadings = known;
        }
        return known;
    }

    private List<Smoothed> smoothReadings() {
        List<Smoothed> rows = new ArrayList<>(clean.kept().size());
        for (double[][] piece : pieces) {
            LocalFit fit = regression.fit(piece[0], piece[1]);
            for (int i = 0; i < fit.size(); i++) {
                rows.add(row(fit.point(i)));
            }
        }
        return List.copyOf(rows);
    }

    /** Returns the cleaned readings behind the smooth. */
    public CleanCurve clean() {
        return clean;
    }

    /** Returns the seconds to either side of a time whose readings are used. */
    public double bandwidthSeconds() {
        return bandwidth;
    }

    /** Returns the noise behind the standard errors. */
    public Autocovariance noise() {
        return noise;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%s smoothed over %.0f s to either side: %d readings in %d %s, %s.",
                clean.kept().name(),
                bandwidth,
                clean.kept().size(),
                pieces.size(),
                pieces.size() == 1 ? "piece" : "pieces",
                noise);
    }

    @Override
    public String text() {
        return this + " " + clean.text();
    }
}
