package parchment.chart;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Draws points, each with an error bar along either axis if its error is known; told in the key.
 *
 * <p>A point with a missing (NaN) position is left out and counted by {@link #leftOut()}. Defaults: no error bars, no names; colour and
 * shape follow the order of the groups in the plot.
 */
public final class Points implements Layer {
    private final String label;
    private final double[] xs;
    private final double[] ys;
    private final double[] lower;
    private final double[] upper;
    private final double[] xErrors;
    private final List<String> names;
    private final Optional<Marker> marker;
    private final Optional<Colour> colour;

    private Points(
            String label,
            double[] xs,
            double[] ys,
            double[] lower,
            double[] upper,
            double[] xErrors,
            List<String> names,
            Optional<Marker> marker,
            Optional<Colour> colour) {
        this.label = label;
        this.xs = xs;
        this.ys = ys;
        this.lower = lower;
        this.upper = upper;
        this.xErrors = xErrors;
        this.names = List.copyOf(names);
        this.marker = marker;
        this.colour = colour;
    }

    /**
     * Makes a group of points.
     *
     * @throws IllegalArgumentException if the arrays differ in length
     */
    public static Points of(String label, double[] xs, double[] ys) {
        double[] none = new double[xs.length];
        Arrays.fill(none, Double.NaN);
        double[] values = ChartChecks.sameLength("The points '" + label + "'", xs, "values", ys);
        return new Points(label, xs.clone(), values, none, none, none, List.of(), Optional.empty(), Optional.empty());
    }

    /**
     * Returns the points with intervals along the y axis; NaN leaves one out.
     *
     * @param from where each bar starts, not how long it is
     * @param to where each bar ends
     * @throws IllegalArgumentException if the arrays differ in length from the points
     */
    public Points withIntervals(double[] from, double[] to) {
        String what = "The points '" + label + "'";
        return new Points(
                label,
                xs,
                ys,
                ChartChecks.sameLength(what, xs, "lower ends", from),
                ChartChecks.sameLength(what, xs, "upper ends", to),
                xErrors,
                names,
                marker,
                colour);
    }

    /**
     * Returns the points with an error to either side along the x axis, as far as each goes; NaN leaves one out.
     *
     * @throws IllegalArgumentException if the array differs in length from the points
     */
    public Points withErrorsAlongX(double[] errors) {
        double[] copy = ChartChecks.sameLength("The points '" + label + "'", xs, "errors", errors);
        return new Points(label, xs, ys, lower, upper, copy, names, marker, colour);
    }

    /**
     * Returns the points with a name each, shown when the mouse rests on the point.
     *
     * @throws IllegalArgumentException if there is not one name per point
     */
    public Points withNames(List<String> others) {
        if (others.size() != xs.length) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "The points '%s' need one name each: %d names were given for %d points.",
                    label,
                    others.size(),
                    xs.length));
        }
        return new Points(label, xs, ys, lower, upper, xErrors, others, marker, colour);
    }

    /** Returns the points in a shape that does not follow the order of the groups. */
    public Points withMarker(Marker other) {
        return new Points(label, xs, ys, lower, upper, xErrors, names, Optional.of(other), colour);
    }

    /** Returns the points in a colour that does not follow the order of the groups. */
    public Points withColour(Colour other) {
        return new Points(label, xs, ys, lower, upper, xErrors, names, marker, Optional.of(other));
    }

    @Override
    public String label() {
        return label;
    }

    Optional<Marker> marker() {
        return marker;
    }

    Optional<Colour> colour() {
        return colour;
    }

    /** Returns how many points there are, missing ones included. */
    public int size() {
        return xs.length;
    }

    /** Returns how many points are left out because a position is missing. */
    public int leftOut() {
        int missing = 0;
        for (int i = 0; i < xs.length; i++) {
            missing += isDrawn(i) ? 0 : 1;
        }
        return missing;
    }

    boolean isDrawn(int point) {
        return Double.isFinite(xs[point]) && Double.isFinite(ys[point]);
    }

    /** Returns a point's position along the x axis; points count from 0. */
    public double x(int point) {
        return xs[point];
    }

    /** Returns a point's value along the y axis. */
    public double y(int point) {
        return ys[point];
    }

    double lower(int point) {
        return lower[point];
    }

    double upper(int point) {
        return upper[point];
    }

    double xError(int point) {
        return xErrors[point];
    }

    String name(int point) {
        return names.isEmpty() ? "" : names.get(point);
    }

    @Override
    public void reach(Reach reach) {
        for (int i = 0; i < xs.length; i++) {
            if (isDrawn(i)) {
                reach.point(xs[i], ys[i]);
                reach.y(lower[i]);
                reach.y(upper[i]);
                reach.x(xs[i] - xErrors[i]);
                reach.x(xs[i] + xErrors[i]);
            }
        }
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%d points '%s'", xs.length - leftOut(), label);
    }
}
