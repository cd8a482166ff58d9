package parchment.chart;

import java.util.Arrays;

/**
 * Counts how close together lines run: at each place of a picture, how many of them pass through ten units across their own direction.
 *
 * <p>The length of line in small squares is added up and smoothed a little, so that a steep stretch counts as much as a flat one.
 */
final class Density {
    /** Side of a square, in units of the picture. */
    static final double SQUARE = 3;

    private static final double ACROSS = 10;
    /** Times the smoothing is done; more would wipe out bundles that lie apart. */
    private static final int PASSES = 2;

    /** Weights of a square and its neighbours (binomial), which add up to one. */
    private static final double[] WEIGHTS = {1 / 16.0, 4 / 16.0, 6 / 16.0, 4 / 16.0, 1 / 16.0};
    /** Empty squares around the picture, so that every stretch of shading is closed. */
    private static final int BORDER = 3;

    private final double left;
    private final double top;
    private final int columns;
    private final int rows;
    private final double[] length;

    Density(double left, double top, double right, double bottom) {
        this.left = left;
        this.top = top;
        this.columns = (int) Math.ceil((right - left) / SQUARE) + 2 * BORDER;
        this.rows = (int) Math.ceil((bottom - top) / SQUARE) + 2 * BORDER;
        this.length = new double[columns * rows];
    }

    /** Adds a straight piece of a line. */
    void add(double fromX, double fromY, double toX, double toY) {
        double whole = Math.hypot(toX - fromX, toY - fromY);
        int steps = (int) Math.ceil(Math.min(whole, 1e5));
        for (int i = 0; i < steps; i++) {
            double share = (i + 0.5) / steps;
            int column = column(fromX + share * (toX - fromX));
            int row = row(fromY + share * (toY - fromY));
            if (column >= 0 && column < columns && row >= 0 && row < rows) {
                length[row * columns + column] += whole / steps;
            }
        }
    }

    private int column(double x) {
        return (int) Math.floor((x - left) / SQUARE) + BORDER;
    }

    private int row(double y) {
        return (int) Math.floor((y - top) / SQUARE) + BORDER;
    }

    /** Returns the density at the middle of each square. */
    Field field() {
        double[] both = length;
        for (int i = 0; i < PASSES; i++) {
            both = smoothed(smoothed(both, 1, columns), columns, rows);
        }
        double perSquare = ACROSS / (SQUARE * SQUARE);
        // The outermost squares stay empty: the shading is cut at the frame anyway.
        for (int i = 0; i < both.length; i++) {
            int column = i % columns;
            int row = i / columns;
            boolean outermost = column == 0 || row == 0 || column == columns - 1 || row == rows - 1;
            both[i] = outermost ? 0 : both[i] * perSquare;
        }
        return new Field(both, columns, rows);
    }

    private double[] smoothed(double[] values, int step, int count) {
        double[] out = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            int place = (i / step) % count;
            for (int k = 0; k < WEIGHTS.length; k++) {
                // At an edge the neighbour that is missing is taken to be like the last one.
                int other = Math.max(0, Math.min(count - 1, place + k - 2));
                out[i] += WEIGHTS[k] * values[i + (other - place) * step];
            }
        }
        return out;
    }

    /** Returns the density at a place, 0 outside the picture. */
    double at(Field field, double x, double y) {
        int column = column(x);
        int row = row(y);
        return column < 0 || column >= columns || row < 0 || row >= rows ? 0 : field.at(column, row);
    }

    /** Returns the place of a column's middle, which may lie between two. */
    double x(double column) {
        return left + (column - BORDER + 0.5) * SQUARE;
    }

    /** Returns the place of a row's middle, which may lie between two. */
    double y(double row) {
        return top + (row - BORDER + 0.5) * SQUARE;
    }

    /** Holds one number for each square, row by row. */
    static final class Field {
        private final double[] values;
        private final int columns;
        private final int rows;

        Field(double[] values, int columns, int rows) {
            this.values = values;
            this.columns = columns;
            this.rows = rows;
        }

        int columns() {
            return columns;
        }

        int rows() {
            return rows;
        }

        double at(int column, int row) {
            return values[row * columns + column];
        }

        /** Returns the number that a share of the squares above a level stay below; the level itself where there are none. */
        double quantileAbove(double level, double share) {
            double[] above =
                    Arrays.stream(values).filter(v -> v >= level).sorted().toArray();
            return above.length == 0 ? level : above[(int) Math.floor(share * (above.length - 1))];
        }
    }
}
