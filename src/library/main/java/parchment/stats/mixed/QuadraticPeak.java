package parchment.stats.mixed;

import java.util.List;
import java.util.Locale;
import parchment.display.Showable;
import parchment.stats.Estimate;
import parchment.stats.Fieller;
import parchment.stats.Interval;
import parchment.stats.linear.CannotFitException;

/**
 * Where a parabola b1 x + b2 x^2 turns, with the set of places that the data do not rule out.
 *
 * <p>x is measured from a center, as polynomial columns should be; places are given on the original scale.
 */
public final class QuadraticPeak implements Showable {

    /** Says which way the parabola opens. */
    public enum Shape {
        /** The curvature's interval lies below 0. */
        MAXIMUM,
        /** The curvature's interval lies above 0. */
        MINIMUM,
        /** The curvature's interval holds 0: it may be a straight line. */
        UNDECIDED
    }

    /** Says where the turning point lies against the range that was tried. */
    public enum Place {
        /** The whole set lies in the tried range. */
        INSIDE,
        /** The whole set lies outside the tried range. */
        OUTSIDE,
        /** The set reaches beyond the tried range, but rules part of it out. */
        PARTLY,
        /** The set holds the whole tried range: nothing is ruled out. */
        ANYWHERE
    }

    private final Fieller set;
    private final Estimate curvature;
    private final double lowest;
    private final double highest;

    private QuadraticPeak(Fieller set, Estimate curvature, double lowest, double highest) {
        this.set = set;
        this.curvature = curvature;
        this.lowest = lowest;
        this.highest = highest;
    }

    /**
     * Returns the turning point.
     *
     * @param linear b1, the coefficient of (x - center)
     * @param quadratic b2, the coefficient of (x - center) squared
     * @param covariance covariance matrix of (b1, b2), two by two
     * @param degreesOfFreedom of the standard errors
     * @param level as in 0.90
     * @param center what was subtracted from x
     * @param tried ends of the range in which there are data, on the original scale
     */
    public static QuadraticPeak of(
            double linear,
            double quadratic,
            double[][] covariance,
            double degreesOfFreedom,
            double level,
            double center,
            Interval tried) {
        Fieller set = Fieller.of(
                        -linear,
                        2 * quadratic,
                        covariance[0][0],
                        -2 * covariance[0][1],
                        4 * covariance[1][1],
                        degreesOfFreedom,
                        level)
                .shifted(center);
        Estimate curvature = new Estimate("curvature", quadratic, Math.sqrt(covariance[1][1]), degreesOfFreedom);
        return new QuadraticPeak(set, curvature, tried.lower(), tried.upper());
    }

    /** Takes the two coefficients from a mixed model; the smaller of their degrees of freedom counts. */
    public static QuadraticPeak of(
            LinearMixedModel model, String linear, String quadratic, double level, double center, Interval tried) {
        Estimate b1 = model.term(linear);
        Estimate b2 = model.term(quadratic);
        int i = model.columnNames().indexOf(linear);
        int j = model.columnNames().indexOf(quadratic);
        if (i < 0 || j < 0) {
            throw new CannotFitException("A turning point needs both columns '" + linear + "' and '" + quadratic
                    + "', but one was dropped as it does not vary on its own.");
        }
        double[][] all = model.coefficientCovariance();
        double[][] covariance = {{all[i][i], all[i][j]}, {all[j][i], all[j][j]}};
        return of(
                b1.estimate(),
                b2.estimate(),
                covariance,
                Math.min(b1.degreesOfFreedom(), b2.degreesOfFreedom()),
                level,
                center,
                tried);
    }

    /** Returns the estimated turning point, on the original scale. */
    public double location() {
        return set.ratio();
    }

    /** Returns the set of places that the data do not rule out; always to be shown, bounded or not. */
    public Fieller set() {
        return set;
    }

    /** Returns the coefficient of the square with its standard error. */
    public Estimate curvature() {
        return curvature;
    }

    public Shape shape() {
        Interval interval = curvature.interval(set.level());
        return interval.upper() < 0 ? Shape.MAXIMUM : interval.lower() > 0 ? Shape.MINIMUM : Shape.UNDECIDED;
    }

    public Place place() {
        List<Interval> inside = set.within(lowest, highest);
        if (inside.isEmpty()) {
            return Place.OUTSIDE;
        }
        if (set.form() == Fieller.Form.BETWEEN && set.lower() >= lowest && set.upper() <= highest) {
            return Place.INSIDE;
        }
        boolean whole = inside.size() == 1
                && inside.get(0).lower() == lowest
                && inside.get(0).upper() == highest;
        return whole ? Place.ANYWHERE : Place.PARTLY;
    }

    /** Says whether there is a maximum whose whole set lies in the tried range. */
    public boolean isMaximumInside() {
        return shape() == Shape.MAXIMUM && place() == Place.INSIDE;
    }

    @Override
    public String toString() {
        String range = String.format(Locale.ROOT, "tried from %.4g to %.4g", lowest, highest);
        String what = switch (shape()) {
            case MAXIMUM -> "highest";
            case MINIMUM -> "lowest";
            case UNDECIDED -> "cannot tell whether there is a highest or a lowest point; turning point";
        };
        String where = switch (place()) {
            case INSIDE -> "inside the range tried";
            case OUTSIDE -> "outside the range tried";
            case PARTLY -> "reaching beyond the range tried";
            case ANYWHERE -> "nothing within the range tried is ruled out";
        };
        return what + " " + set + ", " + where + " (" + range + ")";
    }
}
