package parchment.chart;

import java.util.Locale;

/**
 * Draws the area between a lower and an upper value at each position, such as a pointwise interval; told in the key.
 *
 * <p>The default colour is blue, as that of the first line. Where either edge is missing (NaN) the band has a gap.
 */
public final class Band implements Layer {
    private final String label;
    private final double[] xs;
    private final double[] lower;
    private final double[] upper;
    private final Colour colour;

    private Band(String label, double[] xs, double[] lower, double[] upper, Colour colour) {
        this.label = label;
        this.xs = xs;
        this.lower = lower;
        this.upper = upper;
        this.colour = colour;
    }

    /**
     * Makes a band.
     *
     * @throws IllegalArgumentException if the arrays differ in length
     */
    public static Band of(String label, double[] xs, double[] lower, double[] upper) {
        String what = "The band '" + label + "'";
        return new Band(
                label,
                xs.clone(),
                ChartChecks.sameLength(what, xs, "lower values", lower),
                ChartChecks.sameLength(what, xs, "upper values", upper),
                Colour.BLUE);
    }

    /** Returns the band in another colour. */
    public Band withColour(Colour other) {
        return new Band(label, xs, lower, upper, other);
    }

    @Override
    public String label() {
        return label;
    }

    Colour colour() {
        return colour;
    }

    /** Returns how many positions there are. */
    public int size() {
        return xs.length;
    }

    /** Returns a position along the x axis; positions count from 0. */
    public double x(int position) {
        return xs[position];
    }

    /** Returns the lower edge at a position; NaN if it is missing. */
    public double lower(int position) {
        return lower[position];
    }

    /** Returns the upper edge at a position; NaN if it is missing. */
    public double upper(int position) {
        return upper[position];
    }

    @Override
    public void reach(Reach reach) {
        for (int i = 0; i < xs.length; i++) {
            if (Double.isFinite(lower[i]) && Double.isFinite(upper[i])) {
                reach.point(xs[i], lower[i]);
                reach.point(xs[i], upper[i]);
            }
        }
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "band '%s' over %d positions", label, xs.length);
    }
}
