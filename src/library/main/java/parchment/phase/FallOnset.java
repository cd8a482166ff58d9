package parchment.phase;

import java.util.Arrays;
import java.util.Optional;
import parchment.curve.CleanCurve;
import parchment.curve.Curve;
import parchment.stats.linear.Vectors;

/**
 * Tells when a probe began to fall, and how exactly the readings tell it.
 *
 * <p>Before the onset the curve is a straight line. From the onset on a probe that suddenly meets something colder adds to that line
 *
 * <p>-D (1 - (p exp(-u/p) - q exp(-u/q)) / (p - q)), u = seconds since the onset,
 *
 * <p>the response of two lags p and q one after the other: a bare probe has q = 0 and a corner at the onset, a probe in a sheath leaves the
 * line gently. What the lags are is not known, so every pair of a grid is tried with every onset; depth and line are fitted by least squares.
 * Each onset then weighs as much as the readings make it likely, over all lags. Depth, line and the noise's standard deviation are not known
 * and are integrated out, the noise with the density 1 / σ beforehand: that leaves |X'X|^(-1/2) (sum of squares)^(-(n - p) / 2) for n readings
 * and a matrix X of p columns, times what is held of depth and line beforehand. The line is flat. Of the fall, flat is what the readings see of
 * it: the depth times the length of its column of X off the line. That is the root of what |X'X| has beyond the line, and the two cancel. A
 * flat depth would not do: a slow lag of which the log shows only the beginning could then have any depth, and the more weight the deeper
 * (known falls lay in 78 % of 90 % intervals then). Neighbouring noise is whitened first. The onset is the mean of that distribution and its
 * standard error the standard deviation: the logger's interval, its noise, and not knowing how the probe lags are all in it.
 *
 * <p>The posterior of a change of regime in a regression: Ferreira 1975, J. Am. Stat. Assoc. 70:370; Smith and Cook 1980, Applied
 * Statistics 29:180 (both from memory).
 */
final class FallOnset {
    /** Says what makes the probe fall, and so what else the curve does around the onset. */
    enum Cause {
        /** Cold beans: the reading was level before, and what the probe sees warms from then on. */
        CHARGE,
        /** The beans leave: the reading rose along a bent line before. */
        DROP
    }

    /** Shortest and longest lag tried, in seconds: from a bare wire to a thick sheath in a full drum. Common practice, no source. */
    private static final double SHORTEST_LAG = 2;

    private static final double LONGEST_LAG = 75;

    /** Time constant with which charged beans take the drum's heat: it bends the fall upwards. Common practice, no source. */
    private static final double WARMING_SECONDS = 240;

    private static final int FEWEST = 7;

    /**
     * What is left of the error where readings are so calm that the shape of the fall decides, in seconds: no probe has exactly two lags, nor
     * a straight course before. Chosen, not measured: of 0, 0.08 and 0.1 s the one with which the 90 % intervals of charge and drop
     * held nearest to 90 % of roasts of two kinds logged every 1 or 2 s with noise of 0.1 °C (first seed 3000). What it comes to on other
     * roasts stands in docs/measurements/marks.md.
     */
    private static final double SHAPE_SECONDS = 0.08;

    /** What is known of the noise from the whole curve counts as much as this many readings. */
    private static final double PRIOR_READINGS = 4;

    /** Lags, shares of the second lag and onsets that are tried at a time. */
    private static final int[] TRIED = {7, 6, 20};

    /** Times the grid is drawn closer around what is likely. */
    private static final int CLOSER = 3;

    /** What weighs less than exp(-7), a thousandth of the best, is left out of the closer grid. */
    private static final double UNLIKELY = 7;

    /** Share of the tried that is always kept: on a wide grid a narrow peak may fall between the points. */
    private static final double KEPT = 0.04;

    private final double[] t;
    private final double[] keep;
    private final double[] fresh;
    private final double[] y;
    private final double[][] line;
    private final double prior;
    private final double warming;
    private final double yy;

    private FallOnset(CleanCurve clean, double from, double to, int columns, double warming) {
        Curve part = clean.kept().between(from, to);
        t = part.seconds();
        int n = t.length;
        double correlation = Double.isNaN(clean.noiseCorrelation()) ? 0 : Math.min(0.9, clean.noiseCorrelation());
        keep = new double[n];
        fresh = new double[n];
        for (int i = 0; i < n; i++) {
            keep[i] = i == 0 || correlation == 0 ? 0 : Math.pow(correlation, (t[i] - t[i - 1]) / clean.interval());
            fresh[i] = 1 / Math.sqrt(1 - keep[i] * keep[i]);
        }
        double[] constant = new double[n];
        double[] slope = new double[n];
        double[] bend = new double[n];
        for (int i = 0; i < n; i++) {
            constant[i] = 1;
            slope[i] = (t[i] - t[0]) / 60;
            bend[i] = slope[i] * slope[i];
        }
        line = columns == 2
                ? new double[][] {white(constant), white(slope)}
                : new double[][] {white(constant), white(slope), white(bend)};
        y = white(part.values());
        for (int k = 0; k < line.length; k++) {
            for (int j = 0; j < k; j++) {
                without(line[k], line[j]);
            }
            unit(line[k]);
            without(y, line[k]);
        }
        this.warming = warming;
        double noise = Double.isNaN(clean.noise()) ? 0 : clean.noise();
        // A step of the logger is noise of step / √12; a hundredth of a degree keeps an invented curve without noise
        // from being taken as exact.
        yy = Vectors.dot(y, y);
        prior = PRIOR_READINGS * (noise * noise + clean.step() * clean.step() / 12 + 1e-4);
    }

    /**
     * Returns the onset of a fall that begins between two times; empty if no fall there fits, or there are too few readings.
     *
     * @param clean the curve
     * @param from earliest onset, in seconds on the curve's clock
     * @param to latest onset
     * @param before seconds of readings before the earliest onset that show where the curve was going
     * @param after seconds of readings after the latest onset that show the fall
     */
    static Optional<OnCurve.Found> between(
            CleanCurve clean, Cause cause, double from, double to, double before, double after) {
        if (!(to > from) || clean.kept().between(from - before, to + after).size() < FEWEST) {
            return Optional.empty();
        }
        Optional<OnCurve.Found> one = new FallOnset(clean, from - before, to + after, 2, 0).onset(from, to);
        Optional<OnCurve.Found> other = (cause == Cause.CHARGE
                        ? new FallOnset(clean, from - before, to + after, 2, 2 / WARMING_SECONDS)
                        : new FallOnset(clean, from - before, to + after, 3, 0))
                .onset(from, to);
        if (one.isEmpty() || other.isEmpty()) {
            return one.or(() -> other);
        }
        // The truth may lie anywhere between the two descriptions: an even spread over twice this has a standard
        // deviation of half / √3.
        double half = 0.5 * (one.get().seconds() - other.get().seconds());
        double within = Math.hypot(one.get().standardError(), other.get().standardError()) / Math.sqrt(2);
        return Optional.of(new OnCurve.Found(
                other.get().seconds() + half, Math.hypot(SHAPE_SECONDS, Math.hypot(within, half / Math.sqrt(3)))));
    }

    /** What is tried: logarithm of the first lag, share of the second, onset, each from and to. */
    private record Box(double[] low, double[] high) {
        double at(int axis, int k) {
            return low[axis] + (k + (axis == 1 ? -0.5 : 0.5)) * width(axis);
        }

        double width(int axis) {
            return (high[axis] - low[axis]) / (axis == 1 ? TRIED[axis] - 1 : TRIED[axis]);
        }
    }

    private Optional<OnCurve.Found> onset(double from, double to) {
        Box box = new Box(new double[] {Math.log(SHORTEST_LAG), 0, from}, new double[] {Math.log(LONGEST_LAG), 1, to});
        double[][][] weights = weights(box);
        for (int closer = 0; closer < CLOSER; closer++) {
            Optional<Box> likely = likely(box, weights);
            if (likely.isEmpty()) {
                return Optional.empty();
            }
            box = likely.get();
            weights = weights(box);
        }
        return mean(box, weights);
    }

    private double[][][] weights(Box box) {
        double[][][] weights = new double[TRIED[0]][TRIED[1]][TRIED[2]];
        for (int i = 0; i < TRIED[0]; i++) {
            double lag = Math.exp(box.at(0, i));
            double[] first = decay(lag);
            for (int j = 0; j < TRIED[1]; j++) {
                // A corner, without a second lag, is as likely beforehand as all second lags together.
                double share = j == 0 ? 0 : box.at(1, j);
                double mass = j == 0 ? 0 : Math.log(box.width(1));
                for (int k = 0; k < TRIED[2]; k++) {
                    weights[i][j][k] = mass + logWeight(lag, share, first, box.at(2, k));
                }
            }
        }
        return weights;
    }

    private static Optional<Box> likely(Box box, double[][][] weights) {
        double[] sorted = Arrays.stream(weights)
                .flatMap(Arrays::stream)
                .flatMapToDouble(Arrays::stream)
                .sorted()
                .toArray();
        double best = sorted[sorted.length - 1];
        if (best == Double.NEGATIVE_INFINITY) {
            return Optional.empty();
        }
        double least = Math.min(best - UNLIKELY, sorted[(int) ((1 - KEPT) * sorted.length)]);
        double[] low = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
        double[] high = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
        for (int i = 0; i < TRIED[0]; i++) {
            for (int j = 0; j < TRIED[1]; j++) {
                for (int k = 0; k < TRIED[2]; k++) {
                    if (weights[i][j][k] >= least) {
                        int[] place = {i, j, k};
                        for (int axis = 0; axis < 3; axis++) {
                            if (axis == 1 && j == 0) {
                                continue;
                            }
                            low[axis] = Math.min(low[axis], box.at(axis, place[axis]));
                            high[axis] = Math.max(high[axis], box.at(axis, place[axis]));
                        }
                    }
                }
            }
        }
        if (low[1] > high[1]) {
            // Only the corner is likely; the second lags nearest to it are kept in sight.
            low[1] = box.low()[1];
            high[1] = box.at(1, 1);
        }
        for (int axis = 0; axis < 3; axis++) {
            low[axis] = Math.max(box.low()[axis], low[axis] - box.width(axis));
            high[axis] = Math.min(box.high()[axis], high[axis] + box.width(axis));
        }
        return Optional.of(new Box(low, high));
    }

    private static Optional<OnCurve.Found> mean(Box box, double[][][] weights) {
        double best = Arrays.stream(weights)
                .flatMap(Arrays::stream)
                .flatMapToDouble(Arrays::stream)
                .max()
                .orElse(Double.NEGATIVE_INFINITY);
        if (best == Double.NEGATIVE_INFINITY) {
            return Optional.empty();
        }
        double sum = 0;
        double mean = 0;
        double squares = 0;
        for (double[][] ofLag : weights) {
            for (double[] ofShare : ofLag) {
                for (int k = 0; k < TRIED[2]; k++) {
                    double weight = Math.exp(ofShare[k] - best);
                    double at = (k + 0.5) * box.width(2);
                    sum += weight;
                    mean += weight * at;
                    squares += weight * at * at;
                }
            }
        }
        mean /= sum;
        double grid = box.width(2) * box.width(2) / 12;
        double variance = Math.max(0, squares / sum - mean * mean) + grid;
        return Optional.of(new OnCurve.Found(box.low()[2] + mean, Math.sqrt(variance)));
    }

    private double[] decay(double lag) {
        double[] decay = new double[t.length];
        for (int i = 0; i < t.length; i++) {
            decay[i] = Math.exp(-(t[i] - t[0]) / lag);
        }
        return decay;
    }

    /** The logarithm of what an onset and a pair of lags weigh; minus infinity where the curve would have to rise. */
    private double logWeight(double lag, double share, double[] first, double onset) {
        int n = t.length;
        double upFirst = Math.exp((onset - t[0]) / lag);
        double squares = 0;
        double with = 0;
        double before = 0;
        double[] along = new double[line.length];
        int i = n;
        while (i > 0 && t[i - 1] > onset) {
            i--;
        }
        for (; i < n; i++) {
            double one = first[i] * upFirst;
            double u = t[i] - onset;
            double two = u < 30 * share * lag ? share * Math.exp(-u / (share * lag)) : 0;
            double fallen = 1 - (one - two) / (1 - share);
            if (warming > 0) {
                // The ramp of what warms, through the same two lags.
                fallen -= warming * (u - lag * (1 + share) + lag * (one - share * two) / (1 - share));
            }
            double white = (fallen - keep[i] * before) * fresh[i];
            before = fallen;
            squares += white * white;
            with += white * y[i];
            for (int k = 0; k < along.length; k++) {
                along[k] += white * line[k][i];
            }
        }
        for (double one : along) {
            squares -= one * one;
        }
        if (with >= 0 || squares < 1e-9) {
            return Double.NEGATIVE_INFINITY;
        }
        double left = Math.max(0, yy - with * with / squares);
        // No determinant: it cancels with what is held of the depth beforehand, as the class comment says.
        return -0.5 * (n - line.length - 1 + PRIOR_READINGS) * Math.log(left + prior);
    }

    private double[] white(double[] column) {
        double[] white = new double[column.length];
        for (int i = 0; i < column.length; i++) {
            white[i] = (i == 0 ? column[0] : column[i] - keep[i] * column[i - 1]) * fresh[i];
        }
        return white;
    }

    private static void without(double[] column, double[] unit) {
        double share = Vectors.dot(column, unit);
        for (int i = 0; i < column.length; i++) {
            column[i] -= share * unit[i];
        }
    }

    private static double[] unit(double[] column) {
        double length = Math.sqrt(Vectors.dot(column, column));
        for (int i = 0; i < column.length; i++) {
            column[i] /= length;
        }
        return column;
    }
}
