package parchment.stats.warp;

/** Chooses what pairing two samples costs. */
public enum LocalCost {
    /** The absolute difference, in the unit of the curves. */
    ABSOLUTE,
    /** The squared difference. */
    SQUARED;

    double of(double a, double b) {
        double d = a - b;
        return this == ABSOLUTE ? Math.abs(d) : d * d;
    }
}
