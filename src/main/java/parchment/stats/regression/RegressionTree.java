package parchment.stats.regression;

import java.util.Arrays;
import java.util.SplittableRandom;

/** A regression tree: splits rows in two, by the feature and place that lower the sum of squares most, until nodes are small. */
final class RegressionTree {
    private final double[][] columns;
    private final int[][] ranks;
    private final double[] response;
    private final int tried;
    private final int smallest;
    private final SplittableRandom random;

    private int size;
    private int[] feature = new int[64];
    private double[] threshold = new double[64];
    private int[] left = new int[64];
    private int[] right = new int[64];
    private double[] mean = new double[64];
    /** Sum of squares that each feature's splits took away. */
    final double[] gains;

    private RegressionTree(
            double[][] columns, int[][] ranks, double[] response, int tried, int smallest, SplittableRandom random) {
        this.columns = columns;
        this.ranks = ranks;
        this.response = response;
        this.tried = tried;
        this.smallest = smallest;
        this.random = random;
        this.gains = new double[columns.length];
    }

    /**
     * Grows a tree on rows drawn with replacement.
     *
     * @param ranks places of the rows in each column's order, from {@link #ranks}
     * @param tried features looked at per split, drawn anew each time
     * @param smallest nodes of this many rows or fewer are not split
     */
    static RegressionTree grow(
            double[][] columns, int[][] ranks, double[] response, int tried, int smallest, SplittableRandom random) {
        RegressionTree tree = new RegressionTree(columns, ranks, response, tried, smallest, random);
        int[] rows = new int[response.length];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = random.nextInt(rows.length);
        }
        tree.grow(rows);
        return tree;
    }

    /** Returns each row's place in the order of each column; ties in any order. */
    static int[][] ranks(double[][] columns) {
        int[][] ranks = new int[columns.length][];
        for (int k = 0; k < columns.length; k++) {
            double[] column = columns[k];
            Integer[] order = new Integer[column.length];
            Arrays.setAll(order, i -> i);
            Arrays.sort(order, (a, b) -> Double.compare(column[a], column[b]));
            ranks[k] = new int[column.length];
            for (int place = 0; place < order.length; place++) {
                ranks[k][order[place]] = place;
            }
        }
        return ranks;
    }

    private int grow(int[] rows) {
        int node = add();
        double sum = 0;
        for (int row : rows) {
            sum += response[row];
        }
        mean[node] = sum / rows.length;
        feature[node] = -1;
        if (rows.length <= smallest) {
            return node;
        }
        Split best = new Split();
        int[] order = new int[columns.length];
        Arrays.setAll(order, k -> k);
        for (int k = 0; k < tried; k++) {
            int swap = k + random.nextInt(order.length - k);
            int held = order[k];
            order[k] = order[swap];
            order[swap] = held;
            look(order[k], rows, mean[node], best);
        }
        if (best.feature < 0) {
            return node;
        }
        double[] column = columns[best.feature];
        int below = (int)
                Arrays.stream(rows).filter(row -> column[row] <= best.threshold).count();
        int[] low = new int[below];
        int[] high = new int[rows.length - below];
        int atLow = 0;
        int atHigh = 0;
        for (int row : rows) {
            if (column[row] <= best.threshold) {
                low[atLow++] = row;
            } else {
                high[atHigh++] = row;
            }
        }
        gains[best.feature] += best.gain;
        feature[node] = best.feature;
        threshold[node] = best.threshold;
        // The arrays may be replaced while the branches grow, so the numbers are kept first.
        int lower = grow(low);
        left[node] = lower;
        int upper = grow(high);
        right[node] = upper;
        return node;
    }

    private static final class Split {
        private int feature = -1;
        private double threshold;
        private double gain;
    }

    private void look(int k, int[] rows, double center, Split best) {
        long[] sorted = new long[rows.length];
        for (int i = 0; i < sorted.length; i++) {
            sorted[i] = ((long) ranks[k][rows[i]] << 32) | rows[i];
        }
        Arrays.sort(sorted);
        double[] column = columns[k];
        double sum = 0;
        int n = sorted.length;
        for (int i = 1; i < n; i++) {
            int before = (int) sorted[i - 1];
            sum += response[before] - center;
            double a = column[before];
            double b = column[(int) sorted[i]];
            if (!(b > a)) {
                continue;
            }
            // Around the node's mean the two sums are opposite, so this is the whole loss of squares.
            double gain = sum * sum / i + sum * sum / (n - i);
            if (gain > best.gain) {
                double middle = a + 0.5 * (b - a);
                best.feature = k;
                best.threshold = middle < b ? middle : a;
                best.gain = gain;
            }
        }
    }

    private int add() {
        if (size == mean.length) {
            feature = Arrays.copyOf(feature, 2 * size);
            threshold = Arrays.copyOf(threshold, 2 * size);
            left = Arrays.copyOf(left, 2 * size);
            right = Arrays.copyOf(right, 2 * size);
            mean = Arrays.copyOf(mean, 2 * size);
        }
        return size++;
    }

    double predict(double[] row) {
        int node = 0;
        while (feature[node] >= 0) {
            node = row[feature[node]] <= threshold[node] ? left[node] : right[node];
        }
        return mean[node];
    }
}
