package parchment.stats.warp;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;
import parchment.stats.linear.Checks;

/**
 * Finds the shapes along which curves on one grid vary most: functional principal components.
 *
 * <p>A curve is the mean plus its scores times the component shapes. A shape has length 1 under the integral over the grid
 * (trapezoid rule), so that a score is in the unit of the curves times the root of the unit of the grid; the sign is chosen so that
 * the shape's largest value is positive. Variances divide by n - 1. Components follow in order of falling variance.
 *
 * @see <a href="https://doi.org/10.1007/b98888">Ramsay and Silverman 2005, Functional Data Analysis, chapter 8</a>
 */
public final class FunctionalComponents {
    private final double[] grid;
    private final double[] mean;
    private final double[][] shapes;
    private final double[][] scores;
    private final double[] variances;
    private final double total;

    private FunctionalComponents(double[] grid, List<double[]> curves) {
        int n = curves.size();
        int p = grid.length;
        this.grid = grid.clone();
        this.mean = new double[p];
        for (double[] curve : curves) {
            for (int k = 0; k < p; k++) {
                mean[k] += curve[k] / n;
            }
        }
        double[] root = new double[p];
        for (int k = 0; k < p; k++) {
            double left = k == 0 ? 0 : grid[k] - grid[k - 1];
            double right = k == p - 1 ? 0 : grid[k + 1] - grid[k];
            root[k] = Math.sqrt(0.5 * (left + right));
        }
        double[][] centred = new double[n][p];
        double squares = 0;
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < p; k++) {
                centred[i][k] = (curves.get(i)[k] - mean[k]) * root[k];
                squares += centred[i][k] * centred[i][k];
            }
        }
        this.total = squares / (n - 1);
        SingularValueDecomposition parts = new SingularValueDecomposition(MatrixUtils.createRealMatrix(centred));
        double[] sizes = parts.getSingularValues();
        int kept = 0;
        // Centring takes one dimension; what lies below rounding is not a shape.
        while (kept < Math.min(n - 1, p) && sizes[kept] > 1e-12 * sizes[0] && sizes[kept] > 0) {
            kept++;
        }
        this.shapes = new double[kept][];
        this.scores = new double[kept][];
        this.variances = new double[kept];
        RealMatrix left = parts.getU();
        RealMatrix right = parts.getV();
        for (int c = 0; c < kept; c++) {
            double[] shape = right.getColumn(c);
            double[] score = left.getColumn(c);
            for (int k = 0; k < p; k++) {
                shape[k] /= root[k];
            }
            double sign = Math.signum(shape[largest(shape)]);
            for (int k = 0; k < p; k++) {
                shape[k] *= sign;
            }
            for (int i = 0; i < n; i++) {
                score[i] *= sign * sizes[c];
            }
            shapes[c] = shape;
            scores[c] = score;
            variances[c] = sizes[c] * sizes[c] / (n - 1);
        }
    }

    /**
     * Returns the components of curves on one grid.
     *
     * @param grid points in increasing order
     * @param curves values at those points, none missing
     * @throws IllegalArgumentException if there are fewer than two curves or points, they differ in length, or a value is missing
     */
    public static FunctionalComponents of(double[] grid, List<double[]> curves) {
        Checks.atLeast(2, "The number of grid points of functional components", grid.length);
        Checks.rising("The grid of functional components", grid);
        Checks.sameGrid("Functional components", 2, grid.length, curves);
        for (int i = 0; i < curves.size(); i++) {
            Checks.curve("Functional components", "curve " + (i + 1), curves.get(i));
        }
        return new FunctionalComponents(grid, curves);
    }

    private static int largest(double[] shape) {
        int largest = 0;
        for (int k = 1; k < shape.length; k++) {
            // A margin keeps the choice from hanging on rounding between two equal peaks.
            if (Math.abs(shape[k]) > Math.abs(shape[largest]) * (1 + 1e-9)) {
                largest = k;
            }
        }
        return largest;
    }

    /** Returns the number of components: at most one less than the curves. */
    public int size() {
        return shapes.length;
    }

    public double[] grid() {
        return grid.clone();
    }

    public double[] mean() {
        return mean.clone();
    }

    /** Returns the shape of a component on the grid; components count from 0. */
    public double[] shape(int component) {
        return shapes[component].clone();
    }

    /** Returns the score of a curve on a component. */
    public double score(int curve, int component) {
        return scores[component][curve];
    }

    /** Returns the variance of the scores on a component. */
    public double variance(int component) {
        return variances[component];
    }

    /** Returns the share of the whole variance that a component holds, 0 to 1. */
    public double share(int component) {
        return variances[component] / total;
    }

    /** Returns the curve rebuilt from the mean and its first few components. */
    public double[] rebuilt(int curve, int components) {
        double[] rebuilt = mean.clone();
        for (int c = 0; c < Math.min(components, size()); c++) {
            for (int k = 0; k < rebuilt.length; k++) {
                rebuilt[k] += scores[c][curve] * shapes[c][k];
            }
        }
        return rebuilt;
    }

    @Override
    public String toString() {
        if (size() == 0) {
            return "functional components: the curves do not differ";
        }
        String shares = String.join(
                ", ",
                Arrays.stream(variances)
                        .limit(3)
                        .mapToObj(v -> String.format(Locale.ROOT, "%.1f %%", 100 * v / total))
                        .toList());
        return "functional components of " + scores[0].length + " curves, the first hold " + shares
                + " of the variance";
    }
}
