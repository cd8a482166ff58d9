package parchment.stats.mixed;

import java.util.Arrays;
import parchment.display.Interruption;

/**
 * Evaluates the profiled criterion of a linear mixed model and its gradient at given relative covariance factors (theta).
 *
 * <p>With Lambda(theta) the block-diagonal relative factor, M = [Lambda'Z'Z Lambda + I, Lambda'Z'X; X'Z Lambda, X'X] is factored with the
 * response as a last row, which gives log determinants, the penalised residual sum of squares and all effects in one sweep (Bates
 * et al. 2015, J. Stat. Softw. 67(1), section 3). The gradient needs only those entries of the inverse that the factor has
 * (Takahashi, Fagan and Chin 1973, from memory). One thread at a time.
 */
final class MixedSystem {
    final CrossProducts products;
    final MixedLayout layout;
    final Likelihood likelihood;
    final int rows;
    final double logDeterminantOfBasis;
    final int parameters;
    final int[] firstParameter;

    private final double[] factor;
    final double[] inverse;
    private final double[] work;
    final double[] solution;
    final double[][] lambda;
    boolean inverseHasFixed;

    /** The parts of the criterion at one theta. */
    static final class Value {
        double criterion;
        double logDeterminant;
        double squares;
        double[] gradient = new double[0];
        double[] gradientOfLog = new double[0];
        double[] gradientOfSquares = new double[0];

        /** Says whether the factor broke down at this theta (nothing of the response is left, or numbers ran out of range): no gradient then. */
        boolean brokeDown() {
            return !(criterion < Double.POSITIVE_INFINITY);
        }
    }

    MixedSystem(MixedRows data, Likelihood likelihood) {
        this(new CrossProducts(data), likelihood, data.rows.length, data.basis.logDeterminant());
    }

    private MixedSystem(CrossProducts products, Likelihood likelihood, int rows, double logDeterminantOfBasis) {
        this.products = products;
        this.layout = new MixedLayout(products);
        this.likelihood = likelihood;
        this.rows = rows;
        this.logDeterminantOfBasis = logDeterminantOfBasis;
        this.firstParameter = new int[products.terms + 1];
        this.lambda = new double[products.terms][];
        for (int t = 0; t < products.terms; t++) {
            int size = products.sizeOfTerm[t];
            firstParameter[t + 1] = firstParameter[t] + size * (size + 1) / 2;
            lambda[t] = new double[size * size];
        }
        this.parameters = firstParameter[products.terms];
        this.factor = new double[layout.length];
        this.inverse = new double[layout.length];
        this.work = new double[layout.denseSize * layout.denseSize];
        this.solution = new double[layout.sparseColumns + layout.denseSize];
    }

    /** Degrees of freedom that the residual variance is divided by. */
    int divisor() {
        return likelihood == Likelihood.RESTRICTED ? rows - products.fixed : rows;
    }

    double[] start() {
        double[] theta = new double[parameters];
        for (int t = 0; t < products.terms; t++) {
            int size = products.sizeOfTerm[t];
            for (int c = 0, k = firstParameter[t]; c < size; c++) {
                theta[k] = 1;
                k += size - c;
            }
        }
        return theta;
    }

    /** Writes theta (lower triangles by columns) as matrices by rows. */
    private void setLambda(double[] theta) {
        for (int t = 0; t < products.terms; t++) {
            int size = products.sizeOfTerm[t];
            int k = firstParameter[t];
            for (int c = 0; c < size; c++) {
                for (int r = c; r < size; r++) {
                    lambda[t][r * size + c] = theta[k++];
                }
            }
        }
    }

    double[] lambda(int term) {
        return lambda[term];
    }

    /** Evaluates the criterion; with the gradient if asked. Look at {@link Value#brokeDown()} before the gradient. */
    Value evaluate(double[] theta, boolean withGradient) {
        Interruption.checkHere();
        setLambda(theta);
        assemble();
        Value value = new Value();
        if (!eliminate()) {
            value.criterion = Double.POSITIVE_INFINITY;
            return value;
        }
        int size = layout.denseSize;
        double last = factor[layout.place(layout.sparseColumns + size - 1, layout.sparseColumns + size - 1)];
        value.squares = last * last;
        double log = 0;
        for (int c = 0; c < layout.sparseColumns; c++) {
            log += Math.log(factor[layout.start[c]]);
        }
        int counted = likelihood == Likelihood.RESTRICTED ? size - 1 : layout.denseRandom;
        for (int c = 0; c < counted; c++) {
            log += Math.log(factor[layout.denseOffset + c * size + c]);
        }
        value.logDeterminant = 2 * log + (likelihood == Likelihood.RESTRICTED ? logDeterminantOfBasis : 0);
        int n = divisor();
        value.criterion = value.logDeterminant + n * (1 + Math.log(2 * Math.PI * value.squares / n));
        if (!Double.isFinite(value.criterion)) {
            value.criterion = Double.POSITIVE_INFINITY;
            return value;
        }
        solve();
        if (withGradient) {
            invert(likelihood == Likelihood.RESTRICTED);
            MixedGradient.of(this, value);
        }
        return value;
    }

    private void assemble() {
        Arrays.fill(factor, 0);
        CrossProducts p = products;
        for (int pair = 0; pair < p.pairs.length; pair++) {
            int low = (int) (p.pairs[pair] >>> 32);
            int high = (int) p.pairs[pair];
            int s = p.termOfNode[low];
            int t = p.termOfNode[high];
            double[] block = p.values[pair];
            int[] target = layout.pairTargets[pair];
            int ns = p.sizeOfTerm[s];
            int nt = p.sizeOfTerm[t];
            if (ns == 1 && nt == 1) {
                factor[target[0]] += block[0] * lambda[s][0] * lambda[t][0];
                continue;
            }
            for (int ct = 0; ct < nt; ct++) {
                for (int cs = 0; cs < ns; cs++) {
                    if (low == high && ct < cs) {
                        continue;
                    }
                    double sum = 0;
                    for (int r = ct; r < nt; r++) {
                        for (int a = cs; a < ns; a++) {
                            sum += lambda[t][r * nt + ct] * block[r * ns + a] * lambda[s][a * ns + cs];
                        }
                    }
                    factor[layout.swapped[pair] ? target[cs * nt + ct] : target[ct * ns + cs]] += sum;
                }
            }
        }
        for (int node = 0; node < p.nodes; node++) {
            int t = p.termOfNode[node];
            int nt = p.sizeOfTerm[t];
            for (int c = 0; c < nt; c++) {
                int column = layout.columnOfNode[node] + c;
                factor[layout.place(column, column)] += 1;
                int place = layout.placeOfFixed(column);
                for (int r = c; r < nt; r++) {
                    double l = lambda[t][r * nt + c];
                    double[] cross = p.withFixed[p.firstComponent[node] + r];
                    for (int k = 0; k <= p.fixed; k++) {
                        factor[place + k] += l * cross[k];
                    }
                }
            }
        }
        for (int k = 0; k < p.fixed; k++) {
            factor[layout.denseOffset + (layout.denseRandom + k) * (layout.denseSize + 1)] += 1;
        }
        factor[layout.denseOffset + (layout.denseSize - 1) * (layout.denseSize + 1)] += p.responseSquares;
    }

    private boolean eliminate() {
        for (int c = 0; c < layout.sparseColumns; c++) {
            int at = layout.start[c];
            double pivot = factor[at];
            if (!(pivot > 0)) {
                return false;
            }
            double scale = Math.sqrt(pivot);
            factor[at] = scale;
            int count = layout.rowsBelow[c].length;
            double inverseScale = 1 / scale;
            for (int i = 1; i <= count; i++) {
                factor[at + i] *= inverseScale;
            }
            int[] target = layout.targets[c];
            int t = 0;
            for (int j = 1; j <= count; j++) {
                double l = factor[at + j];
                for (int i = j; i <= count; i++) {
                    factor[target[t++]] -= l * factor[at + i];
                }
            }
        }
        return DenseFactor.factor(factor, layout.denseOffset, layout.denseSize, layout.denseSize, layout.denseSize);
    }

    /** Scaled random effects (u), then coefficients of the orthonormal columns: the response's row, solved backwards. */
    private void solve() {
        int size = layout.denseSize;
        int dense = layout.sparseColumns;
        for (int c = 0; c < size - 1; c++) {
            solution[dense + c] = factor[layout.denseOffset + c * size + size - 1];
        }
        for (int c = 0; c < dense; c++) {
            solution[c] = factor[layout.start[c] + layout.rowsBelow[c].length];
        }
        backward(solution);
    }

    private void backward(double[] x) {
        int size = layout.denseSize;
        int dense = layout.sparseColumns;
        for (int c = size - 2; c >= 0; c--) {
            int column = layout.denseOffset + c * size;
            double sum = x[dense + c];
            for (int r = c + 1; r < size - 1; r++) {
                sum -= factor[column + r] * x[dense + r];
            }
            x[dense + c] = sum / factor[column + c];
        }
        for (int c = dense - 1; c >= 0; c--) {
            int at = layout.start[c];
            int[] below = layout.rowsBelow[c];
            double sum = x[c];
            for (int i = 0; i < below.length - 1; i++) {
                sum -= factor[at + 1 + i] * x[below[i]];
            }
            x[c] = sum / factor[at];
        }
    }

    /** Entries of the inverse of M (or of its random part alone) wherever the factor has entries. */
    void invert(boolean withFixed) {
        inverseHasFixed = withFixed;
        int kept = layout.denseRandom + (withFixed ? layout.fixed : 0);
        DenseFactor.inverse(
                factor,
                layout.denseOffset,
                layout.denseSize,
                kept,
                inverse,
                layout.denseOffset,
                layout.denseSize,
                work);
        int leave = withFixed ? 1 : 1 + layout.fixed;
        double[] sums = new double[layout.sparseColumns + layout.denseSize];
        for (int c = layout.sparseColumns - 1; c >= 0; c--) {
            int at = layout.start[c];
            int all = layout.rowsBelow[c].length;
            int count = all - leave;
            double d = 1 / factor[at];
            Arrays.fill(sums, 0, count, 0);
            int[] target = layout.targets[c];
            int t = 0;
            for (int j = 0; j < count; j++) {
                double lj = factor[at + 1 + j];
                double own = inverse[target[t]] * lj;
                for (int i = j + 1; i < count; i++) {
                    double z = inverse[target[t + i - j]];
                    sums[i] += z * lj;
                    own += z * factor[at + 1 + i];
                }
                sums[j] += own;
                t += all - j;
            }
            double diagonal = d * d;
            for (int i = 0; i < count; i++) {
                double z = -d * sums[i];
                inverse[at + 1 + i] = z;
                diagonal -= d * factor[at + 1 + i] * z;
            }
            inverse[at] = diagonal;
        }
    }

    /** Random effects b = Lambda u in the order of nodes and components, for the scaled columns. */
    double[] effects() {
        return effects(solution);
    }

    private double[] effects(double[] u) {
        CrossProducts p = products;
        double[] b = new double[p.firstComponent[p.nodes]];
        for (int node = 0; node < p.nodes; node++) {
            int t = p.termOfNode[node];
            int nt = p.sizeOfTerm[t];
            for (int r = 0; r < nt; r++) {
                for (int c = 0; c <= r; c++) {
                    b[p.firstComponent[node] + r] += lambda[t][r * nt + c] * u[layout.columnOfNode[node] + c];
                }
            }
        }
        return b;
    }

    /** Relative prediction variances of the random effects, from the inverse in force (with or without the fixed terms' part). */
    double[] effectVariances() {
        CrossProducts p = products;
        double[] variances = new double[p.firstComponent[p.nodes]];
        for (int node = 0; node < p.nodes; node++) {
            int t = p.termOfNode[node];
            int nt = p.sizeOfTerm[t];
            int column = layout.columnOfNode[node];
            for (int r = 0; r < nt; r++) {
                double sum = 0;
                for (int a = 0; a <= r; a++) {
                    for (int c = 0; c <= r; c++) {
                        double z = inverse[layout.place(column + Math.max(a, c), column + Math.min(a, c))];
                        sum += lambda[t][r * nt + a] * z * lambda[t][r * nt + c];
                    }
                }
                variances[p.firstComponent[node] + r] = sum;
            }
        }
        return variances;
    }

    /** Coefficients of the orthonormal fixed columns. */
    double[] coefficients() {
        int first = layout.sparseColumns + layout.denseRandom;
        return Arrays.copyOfRange(solution, first, first + layout.fixed);
    }

    /** Relative covariance of those coefficients: the inverse of the fixed part's factor times its transpose. */
    double[][] coefficientCovariance() {
        int p = layout.fixed;
        int size = layout.denseSize;
        int base = layout.denseOffset + layout.denseRandom * (size + 1);
        double[] out = new double[p * p];
        DenseFactor.inverse(factor, base, size, p, out, 0, p, new double[p * p]);
        double[][] covariance = new double[p][p];
        for (int c = 0; c < p; c++) {
            for (int r = c; r < p; r++) {
                covariance[r][c] = out[c * p + r];
                covariance[c][r] = covariance[r][c];
            }
        }
        return covariance;
    }

    /**
     * Solves for another right side at the theta last evaluated.
     *
     * @param cross Z'v in the order of nodes and components, for the scaled columns
     * @param fixedCross X'v for the orthonormal columns; replaced by their coefficients
     * @return random effects in the order of nodes and components
     */
    double[] solveFor(double[] cross, double[] fixedCross) {
        CrossProducts p = products;
        int random = layout.sparseColumns + layout.denseRandom;
        double[] x = new double[random + p.fixed];
        for (int node = 0; node < p.nodes; node++) {
            int t = p.termOfNode[node];
            int nt = p.sizeOfTerm[t];
            for (int c = 0; c < nt; c++) {
                for (int r = c; r < nt; r++) {
                    x[layout.columnOfNode[node] + c] += lambda[t][r * nt + c] * cross[p.firstComponent[node] + r];
                }
            }
        }
        System.arraycopy(fixedCross, 0, x, random, p.fixed);
        forward(x);
        backward(x);
        System.arraycopy(x, random, fixedCross, 0, p.fixed);
        return effects(x);
    }

    private void forward(double[] x) {
        for (int c = 0; c < layout.sparseColumns; c++) {
            x[c] /= factor[layout.start[c]];
            int[] below = layout.rowsBelow[c];
            for (int i = 0; i < below.length - 1; i++) {
                x[below[i]] -= factor[layout.start[c] + 1 + i] * x[c];
            }
        }
        int size = layout.denseSize;
        int dense = layout.sparseColumns;
        for (int c = 0; c < size - 1; c++) {
            int column = layout.denseOffset + c * size;
            x[dense + c] /= factor[column + c];
            for (int r = c + 1; r < size - 1; r++) {
                x[dense + r] -= factor[column + r] * x[dense + c];
            }
        }
    }
}
