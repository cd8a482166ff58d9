package parchment.stats.series;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import parchment.display.Interruption;
import parchment.display.Showable;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.Checks;

/**
 * Splits values in order of time into stretches of constant level with the least squared error, for every number of changes at once.
 *
 * <p>Dynamic programming over all splits: the result is the best one, not an approximation (Bai and Perron 2003, J. Appl. Econom.
 * 18:1). Several series that change at the same dates are split together. Time and memory grow with the square of the number of
 * values.
 *
 * <p>It finds the best dates for a given number of changes. How many there are is another question: neighbouring values that resemble
 * each other (serial correlation) make a criterion such as BIC invent changes.
 */
public final class LevelChanges implements Showable {
    private final SegmentCost cost;
    private final int[][] lastBreak;
    private final double[] sumsOfSquares;

    private LevelChanges(SegmentCost cost, int[][] lastBreak, double[] sumsOfSquares) {
        this.cost = cost;
        this.lastBreak = lastBreak;
        this.sumsOfSquares = sumsOfSquares;
    }

    /**
     * Searches one series.
     *
     * @param values in order of time, none missing
     * @param shortest the least number of values in a stretch, at least 1
     * @param most the largest number of changes looked at; fewer if that many do not fit
     */
    public static LevelChanges exact(double[] values, int shortest, int most) {
        everyValue(values);
        return exact(List.of(values), shortest, most);
    }

    /**
     * Searches several series that change at the same dates.
     *
     * @param series of the same length, each scaled so that its squared errors count as the others'; a missing value is left out
     */
    public static LevelChanges exact(List<double[]> series, int shortest, int most) {
        SegmentCost cost = SegmentCost.of(series);
        int n = cost.length();
        Checks.atLeast(1, "The shortest stretch", shortest);
        Checks.atLeast(0, "The number of changes", most);
        if (n < shortest) {
            throw new CannotFitException("A stretch of " + shortest + " values does not fit into " + n + " values.");
        }
        int changes = Math.min(most, n / shortest - 1);
        int[][] lastBreak = new int[changes + 1][n + 1];
        double[] sums = new double[changes + 1];
        double[] before = new double[n + 1];
        for (int end = 0; end <= n; end++) {
            before[end] = end < shortest ? Double.POSITIVE_INFINITY : cost.of(0, end);
        }
        sums[0] = before[n];
        for (int k = 1; k <= changes; k++) {
            Interruption.checkHere();
            double[] now = new double[n + 1];
            Arrays.fill(now, Double.POSITIVE_INFINITY);
            for (int end = (k + 1) * shortest; end <= n; end++) {
                for (int split = k * shortest; split <= end - shortest; split++) {
                    double sum = before[split] + cost.of(split, end);
                    if (sum < now[end]) {
                        now[end] = sum;
                        lastBreak[k][end] = split;
                    }
                }
            }
            sums[k] = now[n];
            before = now;
        }
        return new LevelChanges(cost, lastBreak, sums);
    }

    private static void everyValue(double[] values) {
        if (values.length < 2) {
            throw new CannotFitException(
                    "A search for changes needs at least 2 values, but there are " + values.length + ".");
        }
        for (int i = 0; i < values.length; i++) {
            if (!Double.isFinite(values[i])) {
                throw new IllegalArgumentException("A search for changes needs every value, but value " + (i + 1)
                        + " is " + Checks.number(values[i]) + ". Leave it out first.");
            }
        }
    }

    /** Returns the largest number of changes that was looked at. */
    public int most() {
        return sumsOfSquares.length - 1;
    }

    /** Returns after which values the level changes, counted from 1, for a given number of changes. */
    public List<Integer> positions(int changes) {
        List<Integer> positions = new ArrayList<>();
        int end = cost.length();
        for (int k = within(changes); k > 0; k--) {
            end = lastBreak[k][end];
            positions.add(end);
        }
        Collections.reverse(positions);
        return List.copyOf(positions);
    }

    /** Returns the sum of squared errors around the levels, for a given number of changes. */
    public double sumOfSquares(int changes) {
        return sumsOfSquares[within(changes)];
    }

    /**
     * Returns the Bayesian information criterion, lower is better: independent normal errors of one variance, each change counted as
     * a level and a date (Zeileis et al. 2003, Comput. Stat. Data Anal. 44:109).
     */
    public double informationCriterion(int changes) {
        double n = cost.observations();
        return n * (Math.log(sumOfSquares(changes)) + 1 - Math.log(n) + Math.log(2 * Math.PI))
                + Math.log(n) * 2 * (changes + 1);
    }

    /** Returns the number of changes with the lowest information criterion. */
    public int fewest() {
        int best = 0;
        for (int k = 1; k <= most(); k++) {
            best = informationCriterion(k) < informationCriterion(best) ? k : best;
        }
        return best;
    }

    private int within(int changes) {
        if (changes < 0 || changes > most()) {
            throw new IllegalArgumentException(
                    "This search looked at 0 to " + most() + " changes, but was asked for " + changes + ".");
        }
        return changes;
    }

    @Override
    public String toString() {
        int best = fewest();
        return String.format(
                Locale.ROOT,
                "%d values: %s by the information criterion%s",
                cost.length(),
                best == 0 ? "no change of level" : best == 1 ? "1 change of level" : best + " changes of level",
                best == 0 ? "" : ", after value " + positions(best).toString().replaceAll("[\\[\\]]", ""));
    }
}
