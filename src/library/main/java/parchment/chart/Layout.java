package parchment.chart;

/**
 * Sets how wide a picture is laid out, so that its text stays readable on a wide page and on a narrow one.
 *
 * <p>A picture shrinks with the page, and its text with it. Laid out for a narrow page it has the same text on half the width: lines are named
 * in the key and not at their ends, and the names above it are moved inwards.
 */
enum Layout {
    /** For pages from about 600 pixels on. */
    WIDE(800, 360, 210, 320, 240),
    /** For phones and narrow columns. */
    NARROW(420, 150, 0, 290, 225);

    private final double width;
    private final double leastArea;
    private final double widestEnd;
    private final double widestBoundary;
    private final double widestRow;

    Layout(double width, double leastArea, double widestEnd, double widestBoundary, double widestRow) {
        this.width = width;
        this.leastArea = leastArea;
        this.widestEnd = widestEnd;
        this.widestBoundary = widestBoundary;
        this.widestRow = widestRow;
    }

    /** Returns the width of the whole picture in its own units. */
    double width() {
        return width;
    }

    /** Returns how much of the width the drawing area keeps at least, whatever the labels want. */
    double leastArea() {
        return leastArea;
    }

    /** Tells whether lines are named at their right ends, and otherwise in the key. */
    boolean namesEnds() {
        return widestEnd > 0;
    }

    /** Returns the room for a name at the end of a line. */
    double widestEnd() {
        return widestEnd;
    }

    /** Returns the room for the name of a boundary, of several words with a date and its uncertainty. */
    double widestBoundary() {
        return widestBoundary;
    }

    /** Returns the room for the name of a row; the longest names of features fit a wide picture, a longer name is cut. */
    double widestRow() {
        return widestRow;
    }
}
