package parchment.stats.mixed;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import parchment.stats.linear.OrthonormalBasis;
import parchment.stats.linear.Vectors;

/**
 * Degrees of freedom of contrasts in a mixed model, after Satterthwaite 1946 as worked out by Fai and Cornelius 1996 (J. Stat.
 * Comput. Simul. 54:363) and Kuznetsova et al. 2017 (J. Stat. Softw. 82(13)): the variance of a contrast's variance comes from the
 * second derivatives of the criterion in (theta, sigma). Parameters at 0, where all first derivatives vanish, carry none.
 */
final class Satterthwaite {
    private final double[][] covariance;
    private final List<double[][]> derivatives = new ArrayList<>();
    private final double[][] parameterCovariance;

    Satterthwaite(MixedSystem system, OrthonormalBasis basis, double[] theta, double sigma, double[][] covariance) {
        this.covariance = covariance;
        List<Integer> free = new ArrayList<>();
        for (int k = 0; k < theta.length; k++) {
            if (theta[k] != 0) {
                free.add(k);
            }
        }
        int q = free.size();
        boolean complete = true;
        double[][] hessian = new double[q + 1][q + 1];
        MixedSystem.Value center = system.evaluate(theta, true);
        double s2 = sigma * sigma;
        for (int i = 0; i < q; i++) {
            int k = free.get(i);
            double step = 1e-4 * Math.max(0.1, Math.abs(theta[k]));
            double[] moved = theta.clone();
            moved[k] = theta[k] + step;
            MixedSystem.Value up = system.evaluate(moved, true);
            double[][] covarianceUp = basis.sandwich(system.coefficientCovariance());
            moved[k] = theta[k] - step;
            MixedSystem.Value down = system.evaluate(moved, true);
            double[][] covarianceDown = basis.sandwich(system.coefficientCovariance());
            if (center.brokeDown() || up.brokeDown() || down.brokeDown()) {
                complete = false;
                break;
            }
            for (int j = 0; j < q; j++) {
                int l = free.get(j);
                double log = up.gradientOfLog[l] - down.gradientOfLog[l];
                double squares = up.gradientOfSquares[l] - down.gradientOfSquares[l];
                hessian[i][j] = (log + squares / s2) / (2 * step);
            }
            hessian[i][q] = -2 * center.gradientOfSquares[k] / (s2 * sigma);
            hessian[q][i] = hessian[i][q];
            double[][] derivative = new double[covariance.length][covariance.length];
            for (int r = 0; r < derivative.length; r++) {
                for (int c = 0; c < derivative.length; c++) {
                    derivative[r][c] = s2 * (covarianceUp[r][c] - covarianceDown[r][c]) / (2 * step);
                }
            }
            derivatives.add(derivative);
        }
        hessian[q][q] = 4 * system.divisor() / s2;
        double[][] bySigma = new double[covariance.length][covariance.length];
        for (int r = 0; r < bySigma.length; r++) {
            for (int c = 0; c < bySigma.length; c++) {
                bySigma[r][c] = 2 * covariance[r][c] / sigma;
            }
        }
        derivatives.add(bySigma);
        this.parameterCovariance = complete && sigma > 0 ? pseudoInverse(hessian) : new double[0][];
        system.evaluate(theta, true);
    }

    /** Twice the inverse over the directions in which the criterion bends upwards. */
    private static double[][] pseudoInverse(double[][] hessian) {
        int n = hessian.length;
        // Parameters of very different scale: judge bending after scaling the diagonal to 1.
        double[] scale = new double[n];
        double[][] scaled = new double[n][n];
        for (int i = 0; i < n; i++) {
            scale[i] = hessian[i][i] > 0 ? 1 / Math.sqrt(hessian[i][i]) : 0;
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                scaled[i][j] = 0.5 * (hessian[i][j] + hessian[j][i]) * scale[i] * scale[j];
            }
        }
        EigenDecompositionSymmetric eigen = new EigenDecompositionSymmetric(new Array2DRowRealMatrix(scaled, false));
        double[][] inverse = new double[n][n];
        for (int e = 0; e < n; e++) {
            double bend = eigen.getEigenvalue(e);
            if (bend > 1e-8) {
                double[] v = eigen.getEigenvector(e).toArray();
                for (int i = 0; i < n; i++) {
                    for (int j = 0; j < n; j++) {
                        inverse[i][j] += 2 * v[i] * v[j] / bend * scale[i] * scale[j];
                    }
                }
            }
        }
        return inverse;
    }

    /** Returns the degrees of freedom of a contrast; NaN if the criterion cannot be had beside the optimum, or no residual is left. */
    double degreesOfFreedom(double[] contrast) {
        if (parameterCovariance.length == 0) {
            return Double.NaN;
        }
        double variance = Vectors.quadratic(covariance, contrast);
        double[] gradient = new double[derivatives.size()];
        for (int k = 0; k < gradient.length; k++) {
            gradient[k] = Vectors.quadratic(derivatives.get(k), contrast);
        }
        double spread = Vectors.quadratic(parameterCovariance, gradient);
        return spread > 0 ? 2 * variance * variance / spread : Double.POSITIVE_INFINITY;
    }

    /** Joint test of several contrasts, which need not be independent. */
    FTest test(String name, double[][] contrasts, double[] coefficients) {
        int rows = contrasts.length;
        double[][] middle = new double[rows][rows];
        for (int i = 0; i < rows; i++) {
            double[] half = Vectors.times(covariance, contrasts[i]);
            for (int j = 0; j < rows; j++) {
                middle[i][j] = Vectors.dot(half, contrasts[j]);
            }
        }
        if (rows == 0) {
            return new FTest(name, Double.NaN, 0, Double.NaN);
        }
        EigenDecompositionSymmetric eigen = new EigenDecompositionSymmetric(new Array2DRowRealMatrix(middle, false));
        double largest = 0;
        for (int e = 0; e < rows; e++) {
            largest = Math.max(largest, eigen.getEigenvalue(e));
        }
        double sum = 0;
        double expected = 0;
        double lowest = Double.POSITIVE_INFINITY;
        double highest = 0;
        int rank = 0;
        for (int e = 0; e < rows; e++) {
            double variance = eigen.getEigenvalue(e);
            if (!(variance > 1e-9 * largest)) {
                continue;
            }
            rank++;
            double[] direction = new double[coefficients.length];
            double[] v = eigen.getEigenvector(e).toArray();
            for (int i = 0; i < rows; i++) {
                for (int c = 0; c < direction.length; c++) {
                    direction[c] += v[i] * contrasts[i][c];
                }
            }
            double value = Vectors.dot(direction, coefficients);
            sum += value * value / variance;
            double df = degreesOfFreedom(direction);
            lowest = Math.min(lowest, df);
            highest = Math.max(highest, df);
            expected += df > 2 ? df / (df - 2) : 0;
        }
        if (rank == 0) {
            return new FTest(name, Double.NaN, 0, Double.NaN);
        }
        double denominator = rank == 1 || highest - lowest < 1e-6 * lowest
                ? lowest
                : expected > rank ? 2 * expected / (expected - rank) : Double.NaN;
        // With two degrees of freedom or fewer in a direction the moments do not exist; the smallest is on the safe
        // side.
        return new FTest(name, sum / rank, rank, lowest <= 2 || Double.isNaN(denominator) ? lowest : denominator);
    }
}
