package parchment.chart;

/** Names the shape of a point, so that groups of points are told apart without colour. */
public enum Marker {
    /** A filled circle. */
    CIRCLE,
    /** A filled square. */
    SQUARE,
    /** A filled triangle, point up. */
    TRIANGLE,
    /** A filled diamond. */
    DIAMOND,
    /** An open circle. */
    RING,
    /** A cross of two strokes. */
    CROSS,
    /** A short upright stroke, as on a ruler; for dates on a row. */
    TICK;

    /** Returns the shape of the n-th group of points, counted from 0. */
    static Marker ofSeries(int n) {
        return values()[n % TICK.ordinal()];
    }
}
