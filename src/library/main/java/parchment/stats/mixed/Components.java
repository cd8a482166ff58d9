package parchment.stats.mixed;

import java.util.ArrayList;
import java.util.List;

/** Turns the relative factor of one random term into named variances and covariances, and says what lies on a bound. */
final class Components {
    /** A variance under this share of the residual variance is as good as zero; so is an eigenvalue of a correlation matrix. */
    private static final double ZERO = 1e-8;

    private Components() {}

    static List<VarianceComponent> of(RandomBlock block, double[] theta, double sigma) {
        int size = block.size();
        double[][] factor = new double[size][size];
        int k = 0;
        for (int c = 0; c < size; c++) {
            for (int r = c; r < size; r++) {
                factor[r][c] = theta[k++];
            }
        }
        double[][] relative = new double[size][size];
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                for (int c = 0; c <= Math.min(i, j); c++) {
                    relative[i][j] += factor[i][c] * factor[j][c];
                }
            }
        }
        String singular = singular(block, factor, relative);
        List<VarianceComponent> components = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            for (int j = 0; j <= i; j++) {
                double variance = sigma * sigma * relative[i][j] / (block.scales[i] * block.scales[j]);
                String name = block.kind == RandomTerm.Kind.SMOOTH ? "smooth" : block.components.get(i);
                String other = block.kind == RandomTerm.Kind.SMOOTH ? "smooth" : block.components.get(j);
                String words = i == j && relative[i][i] < ZERO
                        ? "the variance " + (block.kind == RandomTerm.Kind.SMOOTH ? "of the smooth" : "between groups")
                                + " is estimated as zero, its lower bound"
                        : i != j ? singular : "";
                components.add(new VarianceComponent(block.name, name, other, variance, words));
            }
        }
        return components;
    }

    private static String singular(RandomBlock block, double[][] factor, double[][] relative) {
        for (int i = 1; i < block.size(); i++) {
            if (relative[i][i] >= ZERO && factor[i][i] * factor[i][i] < 1e-7 * relative[i][i]) {
                return "the correlation of the effects is estimated as complete, its bound";
            }
        }
        return "";
    }
}
