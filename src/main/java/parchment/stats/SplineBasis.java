package parchment.stats;

import java.util.ArrayList;
import java.util.List;
import parchment.display.Showable;

/**
 * A basis of cubic B-splines on equally spaced knots with a penalty on second differences (P-spline), split for a mixed model into a
 * straight line (fixed) and wiggles (random, one common variance).
 *
 * @see <a href="https://doi.org/10.1214/ss/1038425655">Eilers and Marx 1996, Stat. Sci. 11:89</a>; Currie and Durban 2002, Stat.
 *     Modelling 2:333 for the split. Knots as in Wood 2017, Generalized Additive Models, section 5.3.3
 */
public final class SplineBasis implements Showable {
    private static final int DEGREE = 3;
    private static final int FEWEST = 5;

    private final double first;
    private final double step;
    private final int size;
    private final double low;
    private final double high;
    /** D'(DD')^-1: turns wiggle coefficients into those of the B-splines. */
    private final double[][] wiggle;

    private SplineBasis(double low, double high, int size) {
        this.low = low;
        this.high = high;
        this.size = size;
        double margin = 0.001 * (high - low);
        int intervals = size - DEGREE;
        this.step = (high - low + 2 * margin) / intervals;
        this.first = low - margin - DEGREE * step;
        this.wiggle = wiggle(size);
    }

    /**
     * Returns the basis for a range.
     *
     * @param low lower end of the range of x
     * @param high upper end, above low
     * @param size number of B-splines, 5 or more; enough for the wiggliest curve expected, the penalty does the rest
     */
    public static SplineBasis of(double low, double high, int size) {
        if (!(high > low) || size < FEWEST) {
            throw new IllegalArgumentException(
                    "A spline needs a range and at least " + FEWEST + " functions, but it was given "
                            + Checks.number(low) + " to " + Checks.number(high) + " and " + size + ".");
        }
        return new SplineBasis(low, high, size);
    }

    private static double[][] wiggle(int size) {
        int rows = size - 2;
        double[][] d = new double[rows][size];
        for (int i = 0; i < rows; i++) {
            d[i][i] = 1;
            d[i][i + 1] = -2;
            d[i][i + 2] = 1;
        }
        double[][] gram = new double[rows][rows];
        for (int i = 0; i < rows; i++) {
            for (int j = 0; j < rows; j++) {
                gram[i][j] = FixedBasis.dot(d[i], d[j]);
            }
        }
        double[][] inverse = SmallSolve.inverse(gram).orElseThrow(); // differences of a full basis are independent
        double[][] out = new double[size][rows];
        for (int k = 0; k < size; k++) {
            for (int j = 0; j < rows; j++) {
                for (int i = 0; i < rows; i++) {
                    out[k][j] += d[i][k] * inverse[i][j];
                }
            }
        }
        return out;
    }

    /** Returns the values of all B-splines at a point; they add up to 1 within the range. */
    public double[] values(double x) {
        double[] values = new double[size];
        double place = (x - first) / step;
        int interval = Math.max(DEGREE, Math.min(size - 1, (int) Math.floor(place)));
        double u = place - interval;
        // The four cubic pieces on equally spaced knots.
        values[interval - 3] = (1 - u) * (1 - u) * (1 - u) / 6;
        values[interval - 2] = (3 * u * u * u - 6 * u * u + 4) / 6;
        values[interval - 1] = (-3 * u * u * u + 3 * u * u + 3 * u + 1) / 6;
        values[interval] = u * u * u / 6;
        return values;
    }

    /** Returns the straight-line column: x from -1 to 1 over the range. Its partner, the intercept, is not included. */
    public double[] line(double[] x) {
        double[] out = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            out[i] = (x[i] - 0.5 * (low + high)) / (0.5 * (high - low));
        }
        return out;
    }

    /** Returns the wiggle columns, whose coefficients have one common variance; NaN in rows where x is missing. */
    public List<double[]> wiggles(double[] x) {
        List<double[]> columns = new ArrayList<>();
        for (int j = 0; j < size - 2; j++) {
            columns.add(new double[x.length]);
        }
        for (int i = 0; i < x.length; i++) {
            double[] values = Double.isFinite(x[i]) ? values(x[i]) : null;
            for (int j = 0; j < size - 2; j++) {
                double sum = values == null ? Double.NaN : 0;
                for (int k = 0; values != null && k < size; k++) {
                    sum += values[k] * wiggle[k][j];
                }
                columns.get(j)[i] = sum;
            }
        }
        return columns;
    }

    /** Returns the design with this smooth of x in it: a fixed column and a random smooth term of the given name. */
    public MixedDesign addTo(MixedDesign design, String name, double[] x) {
        return design.withCovariate(name, line(x)).withRandom(RandomTerm.smooth(name, wiggles(x)));
    }

    public int size() {
        return size;
    }

    @Override
    public String toString() {
        return size + " cubic B-splines from " + Checks.number(low) + " to " + Checks.number(high);
    }
}
