package parchment.stats.warp;

import java.util.Arrays;
import parchment.display.Interruption;

/** Finds the cheapest path through a table of local costs for any step pattern, window and ends, and walks it back. */
final class StepTable {
    /** Gives the local cost of pairing a query sample with a reference sample. */
    @FunctionalInterface
    interface Costs {
        double at(int query, int reference);
    }

    private static final byte START = -1;
    private static final byte CLOSED = -2;

    private final StepPattern pattern;
    private final Endpoints ends;
    private final int rows;
    private final int columns;
    private final byte[][] moved;
    private final int[] firsts;
    private final double[] lastRow;

    private StepTable(StepPattern pattern, Window window, Endpoints ends, int rows, int columns, Costs costs) {
        this.pattern = pattern;
        this.ends = ends;
        this.rows = rows;
        this.columns = columns;
        this.moved = new byte[rows][];
        this.firsts = new int[rows];
        this.lastRow = fill(window, costs);
    }

    static WarpingPath best(StepPattern pattern, Window window, Endpoints ends, int rows, int columns, Costs costs) {
        return new StepTable(pattern, window, ends, rows, columns, costs).walkBack();
    }

    private double[] fill(Window window, Costs costs) {
        int[][] moves = pattern.moves();
        int kept = pattern.reach() + 1;
        double[][] total = new double[kept][columns];
        double[][] local = new double[kept][columns];
        for (int i = 0; i < rows; i++) {
            Interruption.checkHere();
            double[] row = total[i % kept];
            double[] cost = local[i % kept];
            Arrays.fill(row, Double.POSITIVE_INFINITY);
            Arrays.fill(cost, Double.POSITIVE_INFINITY);
            int first = window.first(i, rows, columns);
            int last = window.last(i, rows, columns);
            firsts[i] = first;
            byte[] move = new byte[Math.max(0, last - first + 1)];
            moved[i] = move;
            for (int j = first; j <= last; j++) {
                cost[j] = costs.at(i, j);
                if (i == 0 && (j == 0 || ends.opensBegin())) {
                    row[j] = cost[j];
                    move[j - first] = START;
                    continue;
                }
                double best = Double.POSITIVE_INFINITY;
                byte chosen = CLOSED;
                for (byte k = 0; k < moves.length; k++) {
                    int[] m = moves[k];
                    int fromRow = i + m[0];
                    int fromColumn = j + m[1];
                    if (fromRow < 0 || fromColumn < 0) {
                        continue;
                    }
                    double sum = total[fromRow % kept][fromColumn];
                    for (int c = 2; c < m.length; c += 3) {
                        sum += m[c + 2] * local[(i + m[c]) % kept][j + m[c + 1]];
                    }
                    if (sum < best) {
                        best = sum;
                        chosen = k;
                    }
                }
                row[j] = best;
                move[j - first] = chosen;
            }
        }
        return total[(rows - 1) % kept];
    }

    private WarpingPath walkBack() {
        int end = columns - 1;
        double distance = lastRow[end];
        if (ends.opensEnd()) {
            double best = Double.POSITIVE_INFINITY;
            for (int j = 0; j < columns; j++) {
                double value = pattern.norm() == StepPattern.Norm.BOTH ? lastRow[j] / (rows + j + 1) : lastRow[j];
                if (value < best) {
                    best = value;
                    end = j;
                }
            }
            distance = lastRow[end];
        }
        if (Double.isInfinite(distance)) {
            throw noPath(pattern, rows, columns);
        }
        int most = 2 * (rows + columns) + 2;
        int[] query = new int[most];
        int[] reference = new int[most];
        int at = most;
        int i = rows - 1;
        int j = end;
        while (true) {
            byte move = moved[i][j - firsts[i]];
            if (move == START) {
                query[--at] = i;
                reference[at] = j;
                break;
            }
            int[] m = pattern.moves()[move];
            for (int c = m.length - 3; c >= 2; c -= 3) {
                query[--at] = i + m[c];
                reference[at] = j + m[c + 1];
            }
            i += m[0];
            j += m[1];
        }
        return new WarpingPath(
                distance,
                pattern.normalised(distance, rows, reference[most - 1] + (ends.opensBegin() ? 1 - reference[at] : 1)),
                Arrays.copyOfRange(query, at, most),
                Arrays.copyOfRange(reference, at, most));
    }

    static IllegalArgumentException noPath(StepPattern pattern, int rows, int columns) {
        return new IllegalArgumentException("No warping path leads from the first to the last samples of curves of "
                + rows + " and " + columns + " samples under the step pattern " + pattern
                + " inside its window. Widen the window, open an end, or choose a pattern with gentler slope limits.");
    }
}
