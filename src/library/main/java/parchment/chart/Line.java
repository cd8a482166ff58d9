package parchment.chart;

import java.util.Locale;
import java.util.Optional;

/**
 * Draws values in their order, joined by straight pieces or by steps; a missing value (NaN) leaves a gap.
 *
 * <p>Defaults: normal weight; the colour and the dash follow the order of the lines in the plot.
 */
public final class Line implements Layer {
    private enum Join {
        STRAIGHT,
        STEP
    }

    private final String label;
    private final double[] xs;
    private final double[] ys;
    private final Join join;
    private final Weight weight;
    private final Optional<Colour> colour;
    private final String name;

    private Line(
            String label, double[] xs, double[] ys, Join join, Weight weight, Optional<Colour> colour, String name) {
        this.name = name;
        this.label = label;
        this.xs = xs;
        this.ys = ys;
        this.join = join;
        this.weight = weight;
        this.colour = colour;
    }

    /**
     * Makes a line through points.
     *
     * @throws IllegalArgumentException if the arrays differ in length
     */
    public static Line of(String label, double[] xs, double[] ys) {
        String what = "The line '" + label + "'";
        return new Line(
                label,
                xs.clone(),
                ChartChecks.sameLength(what, xs, "values", ys),
                Join.STRAIGHT,
                Weight.NORMAL,
                Optional.empty(),
                "");
    }

    /**
     * Makes a line of steps: each value holds until the next position, as the setting of a control does.
     *
     * @throws IllegalArgumentException if the arrays differ in length
     */
    public static Line steps(String label, double[] xs, double[] ys) {
        Line line = of(label, xs, ys);
        return new Line(label, line.xs, line.ys, Join.STEP, Weight.NORMAL, Optional.empty(), "");
    }

    /** Returns the line with another weight. */
    public Line withWeight(Weight other) {
        return new Line(label, xs, ys, join, other, colour, name);
    }

    /** Returns the line in a colour that does not follow the order of the lines. */
    public Line withColour(Colour other) {
        return new Line(label, xs, ys, join, weight, Optional.of(other), name);
    }

    /** Returns the line with a name of its own, as one of a crowd needs that shares its label; said where it runs past the picture's edge. */
    public Line withName(String other) {
        return new Line(label, xs, ys, join, weight, colour, other);
    }

    @Override
    public String label() {
        return label;
    }

    /** Returns the weight. */
    public Weight weight() {
        return weight;
    }

    /** Returns the line's own name, empty if it has none beside its label. */
    String name() {
        return name;
    }

    Optional<Colour> colour() {
        return colour;
    }

    boolean isSteps() {
        return join == Join.STEP;
    }

    /** Returns how many points there are, missing ones included. */
    public int size() {
        return xs.length;
    }

    /** Returns a point's position along the x axis; points count from 0. */
    public double x(int point) {
        return xs[point];
    }

    /** Returns a point's value along the y axis; NaN if it is missing. */
    public double y(int point) {
        return ys[point];
    }

    @Override
    public void reach(Reach reach) {
        for (int i = 0; i < xs.length; i++) {
            reach.point(xs[i], ys[i]);
        }
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "line '%s' through %d points", label, xs.length);
    }
}
