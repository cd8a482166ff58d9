package parchment.gather;

import java.util.Arrays;

/**
 * Pairs rows with columns of a table of gains, each at most once, so that the sum of the gains is greatest.
 *
 * <p>The method of shortest augmenting paths with prices (Kuhn 1955, Naval Research Logistics Quarterly 2, 83-97; Munkres 1957, Journal of the Society for
 * Industrial and Applied Mathematics 5, 32-38), whose work grows with the cube of the size.
 */
final class Assignment {
    private Assignment() {}

    /** Returns the column of each row; -1 for a row that got none. Gains are not negative. */
    static int[] of(double[][] gains) {
        int rows = gains.length;
        int columns = rows == 0 ? 0 : gains[0].length;
        // As many columns without a gain as there are rows: a row may always stay alone.
        int all = columns + rows;
        double[] rowPrice = new double[rows + 1];
        double[] columnPrice = new double[all + 1];
        int[] rowOf = new int[all + 1];
        int[] before = new int[all + 1];
        for (int row = 1; row <= rows; row++) {
            rowOf[0] = row;
            int column = 0;
            double[] least = new double[all + 1];
            Arrays.fill(least, Double.POSITIVE_INFINITY);
            boolean[] used = new boolean[all + 1];
            do {
                used[column] = true;
                int current = rowOf[column];
                int next = 0;
                double step = Double.POSITIVE_INFINITY;
                for (int k = 1; k <= all; k++) {
                    if (used[k]) {
                        continue;
                    }
                    double cost = (k <= columns ? -gains[current - 1][k - 1] : 0) - rowPrice[current] - columnPrice[k];
                    if (cost < least[k]) {
                        least[k] = cost;
                        before[k] = column;
                    }
                    if (least[k] < step) {
                        step = least[k];
                        next = k;
                    }
                }
                for (int k = 0; k <= all; k++) {
                    if (used[k]) {
                        rowPrice[rowOf[k]] += step;
                        columnPrice[k] -= step;
                    } else {
                        least[k] -= step;
                    }
                }
                column = next;
            } while (rowOf[column] != 0);
            while (column != 0) {
                int earlier = before[column];
                rowOf[column] = rowOf[earlier];
                column = earlier;
            }
        }
        int[] chosen = new int[rows];
        Arrays.fill(chosen, -1);
        for (int k = 1; k <= columns; k++) {
            if (rowOf[k] > 0) {
                chosen[rowOf[k] - 1] = k - 1;
            }
        }
        return chosen;
    }
}
