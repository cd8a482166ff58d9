package parchment.chart;

/** Something that a {@link Plot} draws. Positions are as the library keeps numbers; the axis shows them in the reader's unit. */
public sealed interface Layer permits Line, Band, Points, Boundary, Span {

    /** Returns the words that name it in the picture; empty if it has none. */
    String label();

    /** Calls the reach with every position along the x axis and the y axis that has to be seen. */
    void reach(Reach reach);

    /** Collects the lowest and the highest position along both axes. */
    final class Reach {
        private double lowX = Double.POSITIVE_INFINITY;
        private double highX = Double.NEGATIVE_INFINITY;
        private double lowY = Double.POSITIVE_INFINITY;
        private double highY = Double.NEGATIVE_INFINITY;

        Reach() {}

        void x(double x) {
            if (Double.isFinite(x)) {
                lowX = Math.min(lowX, x);
                highX = Math.max(highX, x);
            }
        }

        void y(double y) {
            if (Double.isFinite(y)) {
                lowY = Math.min(lowY, y);
                highY = Math.max(highY, y);
            }
        }

        void point(double x, double y) {
            if (Double.isFinite(x) && Double.isFinite(y)) {
                x(x);
                y(y);
            }
        }

        boolean isEmpty() {
            return lowX > highX || lowY > highY;
        }

        double lowX() {
            return lowX;
        }

        double highX() {
            return highX;
        }

        double lowY() {
            return lowY;
        }

        double highY() {
            return highY;
        }
    }
}
