package parchment.stats.warp;

import java.util.List;
import java.util.stream.IntStream;
import parchment.display.Progress;
import parchment.stats.linear.Checks;

/**
 * Pairs the samples of two curves so that the sum of their differences is least: dynamic time warping.
 *
 * <p>Defaults: full window, both ends fixed, absolute differences of the samples themselves, no pruning. Curves are sampled in equal
 * steps, without missing samples; they may differ in length. A distance is in the unit of the curves (times samples). The work
 * grows with the product of the two lengths, inside the window.
 *
 * @see <a href="https://doi.org/10.1109/TASSP.1978.1163055">Sakoe and Chiba 1978, IEEE Trans. ASSP 26:43</a>; checked against
 *     results of Giorgino 2009, J. Stat. Softw. 31(7)
 */
public final class DynamicTimeWarping {
    private static final String JOB = "Dynamic time warping";

    private final StepPattern pattern;
    private final Window window;
    private final Endpoints ends;
    private final LocalCost cost;
    private final Compared compared;
    private final Pruning pruning;

    private DynamicTimeWarping(
            StepPattern pattern, Window window, Endpoints ends, LocalCost cost, Compared compared, Pruning pruning) {
        this.pattern = pattern;
        this.window = window;
        this.ends = ends;
        this.cost = cost;
        this.compared = compared;
        this.pruning = pruning;
        if (ends.opensBegin() && pattern.norm() != StepPattern.Norm.QUERY) {
            throw new IllegalArgumentException(
                    "A path may begin late on the reference only under a pattern that uses each"
                            + " query sample once (asymmetric, rabiner juang 4c), but the pattern is " + pattern
                            + ": its distances would favour short stretches.");
        }
        if (ends.opensEnd() && pattern.norm() == StepPattern.Norm.NONE) {
            throw new IllegalArgumentException(
                    "An open end needs a step pattern whose distances can be normalised, but " + pattern
                            + " cannot. Use symmetric2 or asymmetric.");
        }
    }

    /** Returns dynamic time warping with a step pattern and the defaults named above. */
    public static DynamicTimeWarping of(StepPattern pattern) {
        return new DynamicTimeWarping(
                pattern, Window.full(), Endpoints.FIXED, LocalCost.ABSOLUTE, Compared.VALUES, Pruning.NONE);
    }

    /** Returns a copy that visits only the pairs inside a window. */
    public DynamicTimeWarping withWindow(Window open) {
        return new DynamicTimeWarping(pattern, open, ends, cost, compared, pruning);
    }

    /**
     * Returns a copy with other ends.
     *
     * @throws IllegalArgumentException if the step pattern cannot compare paths of different extent
     */
    public DynamicTimeWarping withEndpoints(Endpoints where) {
        return new DynamicTimeWarping(pattern, window, where, cost, compared, pruning);
    }

    /** Returns a copy with another cost of a pair. */
    public DynamicTimeWarping withCost(LocalCost perPair) {
        return new DynamicTimeWarping(pattern, window, ends, perPair, compared, pruning);
    }

    /** Returns a copy that compares samples or slopes. */
    public DynamicTimeWarping withCompared(Compared what) {
        return new DynamicTimeWarping(pattern, window, ends, cost, what, pruning);
    }

    /** Returns a copy that skips pairs no best path can visit, or visits them; distances are the same. */
    public DynamicTimeWarping withPruning(Pruning skip) {
        return new DynamicTimeWarping(pattern, window, ends, cost, compared, skip);
    }

    /**
     * Returns the distance of two curves, without the path.
     *
     * @throws IllegalArgumentException if a sample is missing, or no path is possible inside the window
     */
    public double distance(double[] query, double[] reference) {
        check(query, reference);
        double[] a = compared.of(query);
        double[] b = compared.of(reference);
        return plain() ? swept(a, b) : align(query, reference).distance();
    }

    /**
     * Returns the cheapest path and its distance.
     *
     * @throws IllegalArgumentException if a sample is missing, or no path is possible inside the window
     */
    public WarpingPath align(double[] query, double[] reference) {
        check(query, reference);
        double[] a = compared.of(query);
        double[] b = compared.of(reference);
        return plain()
                ? PathSweep.best(pattern, window, cost, a, b)
                : StepTable.best(pattern, window, ends, a.length, b.length, (i, j) -> cost.of(a[i], b[j]));
    }

    /**
     * Returns the cheapest path through a table of local costs that is given in place of two curves.
     *
     * @param costs one row per query sample, one column per reference sample, none missing
     * @throws IllegalArgumentException if the rows differ in length or a cost is missing, or no path is possible inside the window
     */
    public WarpingPath alignCosts(double[][] costs) {
        Checks.atLeast(1, "The number of rows of a table of costs", costs.length);
        int columns = Checks.atLeast(1, "The number of columns of a table of costs", costs[0].length);
        for (int i = 0; i < costs.length; i++) {
            if (costs[i].length != columns) {
                throw new IllegalArgumentException("A table of costs needs " + columns
                        + " columns in every row, but row " + (i + 1) + " has " + costs[i].length + ".");
            }
            for (double value : costs[i]) {
                if (Double.isNaN(value)) {
                    throw new IllegalArgumentException("A table of costs has a missing cost in row " + (i + 1) + ".");
                }
            }
        }
        return StepTable.best(pattern, window, ends, costs.length, columns, (i, j) -> costs[i][j]);
    }

    /**
     * Returns the distances of all pairs of curves, worked out on all processors.
     *
     * @throws IllegalArgumentException if there are fewer than two curves, a sample is missing, or the distance depends on which of
     *     two curves is the query
     */
    public DistanceTable distances(List<double[]> curves) {
        if (pattern.norm() == StepPattern.Norm.QUERY || ends != Endpoints.FIXED) {
            throw new IllegalArgumentException(
                    "Distances of all pairs need a symmetric step pattern and fixed ends, but the" + " pattern is "
                            + pattern + ". Use symmetric1, symmetric2 or symmetric p1.");
        }
        Checks.atLeast(2, "The number of curves to compare", curves.size());
        for (int i = 0; i < curves.size(); i++) {
            Checks.curve(JOB, "curve " + (i + 1), curves.get(i));
        }
        List<double[]> shapes = curves.stream().map(compared::of).toList();
        double[][] table = new double[curves.size()][curves.size()];
        // A long row of the triangle goes with a short one, so that every processor has as much to do.
        int count = curves.size();
        try (Progress progress = Progress.of(count * (count - 1L) / 2, "comparing curves")) {
            IntStream.range(0, (count + 1) / 2).parallel().forEach(i -> {
                fillRow(table, i, shapes, progress);
                if (count - 1 - i != i) {
                    fillRow(table, count - 1 - i, shapes, progress);
                }
            });
        }
        return new DistanceTable(table);
    }

    private void fillRow(double[][] table, int i, List<double[]> shapes, Progress progress) {
        double[] a = shapes.get(i);
        for (int j = 0; j < i; j++) {
            double[] b = shapes.get(j);
            table[i][j] = plain()
                    ? swept(a, b)
                    : StepTable.best(pattern, window, ends, a.length, b.length, (p, q) -> cost.of(a[p], b[q]))
                            .distance();
            progress.step();
        }
    }

    /** Says whether the quick sweep, without a table of all pairs, applies. */
    private boolean plain() {
        return ends == Endpoints.FIXED && (pattern == StepPattern.SYMMETRIC1 || pattern == StepPattern.SYMMETRIC2);
    }

    private double swept(double[] a, double[] b) {
        int diagonal = pattern == StepPattern.SYMMETRIC2 ? 2 : 1;
        double distance =
                DiagonalSweep.of(Math.max(a.length, b.length)).distance(a, b, window, cost, diagonal, pruning);
        if (Double.isInfinite(distance)) {
            throw StepTable.noPath(pattern, a.length, b.length);
        }
        return distance;
    }

    private static void check(double[] query, double[] reference) {
        Checks.curve(JOB, "the query", query);
        Checks.curve(JOB, "the reference", reference);
    }

    @Override
    public String toString() {
        return "dynamic time warping, step pattern " + pattern + ", " + window;
    }
}
