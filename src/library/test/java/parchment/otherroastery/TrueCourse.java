package parchment.otherroastery;

/**
 * Says how good one attribute of a lot truly is, as an explicit function of what the beans went through.
 *
 * @param kind what it follows
 * @param level points at the center
 * @param center bean temperature at the drop at which the level is reached: the best one where there is a peak, °C
 * @param perDegree points per °C of bean temperature at the drop
 * @param bend points per °C² (negative where there is a peak)
 * @param perTenSeconds points per ten seconds of development beyond 90
 */
public record TrueCourse(Kind kind, double level, double center, double perDegree, double bend, double perTenSeconds) {
    /** What an attribute follows. */
    public enum Kind {
        /** A best drop inside what is tried. */
        PEAK,
        /** A straight line. */
        SLOPE,
        /** Nothing that the roast does. */
        NONE,
        /** Nothing at all: the cups of this lot are all over the scale. */
        NOISE_ONLY
    }

    /** How far the batches of a lot of pure noise differ, points. */
    static final double NOISE = 1.5;

    public static TrueCourse peak(double level, double best, double bend) {
        return new TrueCourse(Kind.PEAK, level, best, 0, bend, 0);
    }

    public static TrueCourse slope(double level, double perDegree) {
        return new TrueCourse(Kind.SLOPE, level, 207.5, perDegree, 0, 0);
    }

    public static TrueCourse none(double level) {
        return new TrueCourse(Kind.NONE, level, 207.5, 0, 0, 0);
    }

    public static TrueCourse noiseOnly(double level) {
        return new TrueCourse(Kind.NOISE_ONLY, level, 207.5, 0, 0, 0);
    }

    public TrueCourse withDevelopment(double pointsPerTenSeconds) {
        return new TrueCourse(kind, level, center, perDegree, bend, pointsPerTenSeconds);
    }

    /** Returns the points of beans dropped at this temperature of their own after so long a development. */
    public double points(double bean, double development) {
        double x = bean - center;
        return level + perDegree * x + bend * x * x + perTenSeconds * (development - 90) / 10;
    }
}
