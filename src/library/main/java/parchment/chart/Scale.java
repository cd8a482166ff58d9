package parchment.chart;

/** Maps positions along one axis to places on the page. */
final class Scale {
    private final Axis axis;
    private final double low;
    private final double high;
    private final double start;
    private final double end;

    private Scale(Axis axis, double low, double high, double start, double end) {
        this.axis = axis;
        this.low = low;
        this.high = high;
        this.start = start;
        this.end = end;
    }

    /** How an axis without fixed limits is set around its data. */
    enum Room {
        /** Ends at the first and the last position. */
        NONE,
        /** A little room on both sides, so that points do not sit on the frame. */
        LITTLE,
        /** Ends at round numbers beyond the data. */
        ROUND
    }

    /** Sets an axis around the kept positions from low to high; both NaN or infinite if there are none. */
    static Scale around(Axis axis, double lowKept, double highKept, Room room) {
        if (axis.kind() == Axis.Kind.ROWS) {
            return new Scale(axis, axis.rows().size() - 0.5, -0.5, 0, 1);
        }
        double low = axis.shown(axis.fixedLow().orElse(lowKept <= highKept ? lowKept : Double.NaN));
        double high = axis.shown(axis.fixedHigh().orElse(lowKept <= highKept ? highKept : Double.NaN));
        if (Double.isNaN(low)) {
            low = Double.isNaN(high) ? 0 : high - 1;
        }
        if (Double.isNaN(high)) {
            high = low + 1;
        }
        if (axis.kind() == Axis.Kind.DATE && high - low < 1) {
            // Within one day no date would stand on the axis: the whole day is shown.
            low = axis.fixedLow().isPresent() ? low : Math.floor(low);
            high = axis.fixedHigh().isPresent() ? high : Math.floor(high) + 1;
        }
        if (!(high > low)) {
            double half = Math.max(1e-6, Math.abs(low) * 0.02);
            high = Math.max(low, high) + half;
            low = axis.fixedLow().isPresent() ? low : low - half;
        }
        double slack = room == Room.NONE ? 0 : 0.03 * (high - low);
        double lower = axis.fixedLow().isPresent() ? low : low - slack;
        double upper = axis.fixedHigh().isPresent() ? high : high + slack;
        if (room == Room.ROUND && axis.kind() == Axis.Kind.NUMBER) {
            // Nothing but the room itself may push the axis below zero where no number is.
            lower = low >= 0 ? Math.max(lower, 0) : lower;
            double step = Ticks.roundStep((upper - lower) / 6);
            lower = axis.fixedLow().isPresent() ? lower : step * Math.floor(lower / step + 1e-9);
            upper = axis.fixedHigh().isPresent() ? upper : step * Math.ceil(upper / step - 1e-9);
        }
        return new Scale(axis, lower, upper, 0, 1);
    }

    /** Returns the scale laid out from one place to another. */
    Scale over(double from, double to) {
        return new Scale(axis, low, high, from, to);
    }

    Axis axis() {
        return axis;
    }

    double low() {
        return low;
    }

    double high() {
        return high;
    }

    double start() {
        return start;
    }

    double end() {
        return end;
    }

    /** Returns the place of a kept position. */
    double place(double kept) {
        return placeShown(axis.shown(kept));
    }

    double placeShown(double shown) {
        return start + (shown - low) / (high - low) * (end - start);
    }

    /** Returns the place of a kept position, or the nearest end if it lies outside. */
    double placeInside(double kept) {
        double place = place(kept);
        return Math.max(Math.min(start, end), Math.min(Math.max(start, end), place));
    }

    boolean contains(double kept) {
        double shown = axis.shown(kept);
        return shown >= Math.min(low, high) && shown <= Math.max(low, high);
    }

    Ticks ticks(int most) {
        return Ticks.of(axis, Math.min(low, high), Math.max(low, high), most);
    }
}
