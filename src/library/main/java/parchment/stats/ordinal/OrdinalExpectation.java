package parchment.stats.ordinal;

import java.util.Arrays;
import parchment.stats.Estimate;
import parchment.stats.linear.OrthonormalBasis;
import parchment.stats.linear.Vectors;
import parchment.stats.mixed.FixedPrediction;
import parchment.stats.mixed.MixedDesign;

/**
 * Works out expected scores from an ordinal fit: each score times its chance, over the normal distributions of the groups.
 *
 * <p>With steps s between neighbouring scores the expectation is the lowest score plus the sum of s (1 - F(threshold - predictor)); its
 * derivatives follow from those of F.
 */
final class OrdinalExpectation {
    /** The normal distribution is summed at these distances of standard deviations, to 5.6: so the trapezoidal rule is off by less than 1e-7. */
    private static final double STEP = 0.4;

    private static final int EACH_SIDE = 14;

    private final double[] steps;
    private final double[] thresholds;
    private final double[] coefficients;
    private final double[] deviations;
    private final double spread;
    private final FixedPrediction fixed;

    OrdinalExpectation(
            double[] categories,
            double[] thresholds,
            double[] coefficients,
            double[] deviations,
            OrthonormalBasis basis,
            MixedDesign design) {
        this.steps = new double[thresholds.length];
        Arrays.setAll(steps, j -> categories[j + 1] - categories[j]);
        this.thresholds = thresholds;
        this.coefficients = coefficients;
        this.deviations = deviations;
        this.spread = Math.sqrt(Vectors.dot(deviations, deviations));
        double[] padded = new double[basis.size()];
        System.arraycopy(coefficients, 0, padded, 1, coefficients.length);
        this.fixed = new FixedPrediction(basis, padded, design);
    }

    Estimate difference(MixedDesign from, MixedDesign to, double[][] covariance) {
        double[] gradient = new double[covariance.length];
        double difference = mean(to, 1, gradient) - mean(from, -1, gradient);
        double variance = 0;
        for (int i = 0; i < gradient.length; i++) {
            variance += gradient[i] * Vectors.dot(covariance[i], gradient);
        }
        return new Estimate("difference of expected scores", difference, Math.sqrt(variance), Double.POSITIVE_INFINITY);
    }

    /** Returns the mean expectation above the lowest score and adds its derivatives, with a sign, to the gradient. */
    private double mean(MixedDesign rows, int sign, double[] gradient) {
        double[] eta = fixed.predict(rows);
        double[][] columns = fixed.columns(rows);
        double sum = 0;
        double bySpread = 0;
        int first = thresholds.length;
        for (int i = 0; i < eta.length; i++) {
            double byEta = 0;
            for (int k = -EACH_SIDE; k <= EACH_SIDE; k++) {
                double z = STEP * k;
                double weight = STEP * Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI) / eta.length;
                for (int j = 0; j < steps.length; j++) {
                    double above = OrdinalLikelihood.logistic(eta[i] + spread * z - thresholds[j]);
                    double density = weight * steps[j] * above * (1 - above);
                    sum += weight * steps[j] * above;
                    byEta += density;
                    bySpread += density * z;
                    gradient[j] -= sign * density;
                }
            }
            for (int c = 0; c < coefficients.length; c++) {
                gradient[first + c] += sign * byEta * columns[c + 1][i];
            }
        }
        for (int t = 0; spread > 0 && t < deviations.length; t++) {
            gradient[first + coefficients.length + t] += sign * bySpread * deviations[t] / spread;
        }
        return sum;
    }
}
