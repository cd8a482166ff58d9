package parchment.stats.regression;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import parchment.display.Showable;
import parchment.stats.CannotFitException;
import parchment.stats.linear.Checks;
import parchment.stats.resample.GroupedFolds;

/**
 * Holds the errors on left-out groups of a row of ever freer models (smaller penalties, more components), and the choice they suggest.
 *
 * <p>Index 0 is the stiffest model. The error is the root of the mean square over all rows left out; its standard error comes from the
 * differences between the parts left out.
 */
public final class HeldOutErrors implements Showable {
    private final String what;
    private final double[] settings;
    private final double[] meanSquares;
    private final double[] standardErrors;
    private final int parts;
    private final int rows;

    private HeldOutErrors(
            String what, double[] settings, double[] meanSquares, double[] standardErrors, int parts, int rows) {
        this.what = what;
        this.settings = settings;
        this.meanSquares = meanSquares;
        this.standardErrors = standardErrors;
        this.parts = parts;
        this.rows = rows;
    }

    /** Predictions of the left-out rows by each model, the stiffest first. */
    interface Predictor {
        List<double[]> predict(int[] train, int[] test);
    }

    static HeldOutErrors of(
            String what, double[] settings, double[] response, GroupedFolds folds, Predictor predictor) {
        int models = settings.length;
        double[] squares = new double[models];
        double[][] byPart = new double[models][folds.folds().size()];
        int rows = 0;
        int part = 0;
        for (GroupedFolds.Fold fold : folds.folds()) {
            int[] test = fold.test();
            List<double[]> predictions = predictor.predict(fold.train(), test);
            int known = 0;
            for (int i = 0; i < test.length; i++) {
                double y = response[test[i]];
                if (!Double.isFinite(y) || Double.isNaN(predictions.get(0)[i])) {
                    continue;
                }
                known++;
                for (int m = 0; m < models; m++) {
                    double error = y - predictions.get(m)[i];
                    byPart[m][part] += error * error;
                }
            }
            for (int m = 0; m < models && known > 0; m++) {
                squares[m] += byPart[m][part];
                byPart[m][part] /= known;
            }
            rows += known;
            part += known > 0 ? 1 : 0;
        }
        if (rows == 0) {
            throw new CannotFitException(
                    "Leaving out groups needs left-out rows without missing numbers, but there are none.");
        }
        double[] errors = new double[models];
        for (int m = 0; m < models; m++) {
            squares[m] /= rows;
            double[] used = Arrays.copyOf(byPart[m], part);
            double mean = Arrays.stream(used).average().orElse(Double.NaN);
            double spread =
                    Arrays.stream(used).map(v -> (v - mean) * (v - mean)).sum();
            errors[m] = Math.sqrt(spread / (part - 1.0) / part);
        }
        return new HeldOutErrors(what, settings.clone(), squares, errors, part, rows);
    }

    /** Returns the settings tried, the stiffest model first. */
    public double[] settings() {
        return settings.clone();
    }

    /** Returns the root mean square error on left-out rows, in units of the response. */
    public double error(int index) {
        return Math.sqrt(meanSquares[index]);
    }

    /** Returns the standard error of the mean square, across the parts left out; NaN for a single part. */
    public double standardErrorOfMeanSquare(int index) {
        return standardErrors[index];
    }

    /** Returns the index with the lowest error. */
    public int best() {
        return IntStream.range(0, meanSquares.length)
                .reduce((a, b) -> meanSquares[b] < meanSquares[a] ? b : a)
                .orElse(0);
    }

    /** Returns the stiffest model whose mean square lies within one standard error of the best. */
    public int withinOneStandardError() {
        int best = best();
        double line = meanSquares[best] + (Double.isNaN(standardErrors[best]) ? 0 : standardErrors[best]);
        return IntStream.rangeClosed(0, best)
                .filter(m -> meanSquares[m] <= line)
                .findFirst()
                .orElse(best);
    }

    /** Returns the number of rows predicted while left out. */
    public int rows() {
        return rows;
    }

    @Override
    public String toString() {
        int best = best();
        return String.format(
                Locale.ROOT,
                "%d settings on %d rows in %d parts left out: best at %s %s with error %.4g; stiffest within one standard error: %s",
                settings.length,
                rows,
                parts,
                what,
                Checks.number(settings[best]),
                error(best),
                Checks.number(settings[withinOneStandardError()]));
    }
}
