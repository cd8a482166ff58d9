package parchment.stats.warp;

import parchment.stats.linear.Checks;

/**
 * Limits which pairs of samples a warping path may visit at all.
 *
 * @see <a href="https://doi.org/10.1109/TASSP.1978.1163055">Sakoe and Chiba 1978</a>; <a
 *     href="https://doi.org/10.1109/TASSP.1975.1162641">Itakura 1975, IEEE Trans. ASSP 23:67</a>
 */
public final class Window {
    private enum Shape {
        FULL,
        BAND,
        SLANTED_BAND,
        PARALLELOGRAM
    }

    private static final Window WHOLE = new Window(Shape.FULL, 0);
    private static final Window PARALLEL = new Window(Shape.PARALLELOGRAM, 0);

    private final Shape shape;
    private final int radius;

    private Window(Shape shape, int radius) {
        this.shape = shape;
        this.radius = radius;
    }

    /** Returns the window that leaves every pair open. */
    public static Window full() {
        return WHOLE;
    }

    /**
     * Returns Sakoe and Chiba's band: positions differ by at most the radius.
     *
     * @param radius in samples, 0 or more
     * @throws IllegalArgumentException if the radius is negative
     */
    public static Window band(int radius) {
        return new Window(Shape.BAND, Checks.atLeast(0, "The radius of a band", radius));
    }

    /**
     * Returns a band around the straight line from the first pair to the last, for curves of different length.
     *
     * @param radius in samples of the reference, 1 or more
     * @throws IllegalArgumentException if the radius is below 1
     */
    public static Window slantedBand(int radius) {
        return new Window(Shape.SLANTED_BAND, Checks.atLeast(1, "The radius of a slanted band", radius));
    }

    /**
     * Returns Itakura's parallelogram: from either end a path runs at slopes between 1/2 and 2. The corners lie one step outside
     * the first and the last pair.
     */
    public static Window parallelogram() {
        return PARALLEL;
    }

    boolean isFull() {
        return shape == Shape.FULL;
    }

    /** Returns the first column open in a row; columns and rows count from 0. */
    int first(int row, int rows, int columns) {
        int i = row + 1;
        int j = switch (shape) {
            case FULL -> 1;
            case BAND -> i - radius;
            case SLANTED_BAND -> (int) Math.ceil(onLine(row, rows, columns) - radius);
            // i <= 2 j from the first corner; columns + 1 - j <= 2 (rows + 1 - i) - 1 from the last.
            case PARALLELOGRAM -> Math.max((i + 1) / 2, columns + 2 - 2 * (rows + 1 - i));
        };
        return Math.max(0, j - 1);
    }

    /** Returns the last column open in a row. */
    int last(int row, int rows, int columns) {
        int i = row + 1;
        int j = switch (shape) {
            case FULL -> columns;
            case BAND -> i + radius;
            case SLANTED_BAND -> (int) Math.floor(onLine(row, rows, columns) + radius);
            case PARALLELOGRAM -> Math.min(2 * i - 1, columns + 1 - (rows + 2 - i) / 2);
        };
        return Math.min(columns - 1, j - 1);
    }

    private static double onLine(int row, int rows, int columns) {
        return 1 + (double) row * (columns - 1) / Math.max(1, rows - 1);
    }

    @Override
    public String toString() {
        return switch (shape) {
            case FULL -> "full window";
            case BAND -> "band of radius " + radius;
            case SLANTED_BAND -> "slanted band of radius " + radius;
            case PARALLELOGRAM -> "parallelogram of slopes 1/2 to 2";
        };
    }
}
