package parchment.chart;

import java.util.Locale;

/**
 * Draws an upright line at a position along the x axis, named above the plot, with its uncertainty as a narrow band.
 *
 * @param label the words above the line; the axis adds the position and, if known, the uncertainty ("8:30 ± 5 s")
 * @param x the position
 * @param uncertainty how far the position is uncertain to either side, in the axis's kept unit; NaN if that is not known
 */
public record Boundary(String label, double x, double uncertainty) implements Layer {

    /** @throws IllegalArgumentException if the position is missing or infinite, or the uncertainty negative or infinite */
    public Boundary {
        ChartChecks.finite("The boundary '" + label + "'", x);
        if (uncertainty < 0 || Double.isInfinite(uncertainty)) {
            throw new IllegalArgumentException("The boundary '" + label
                    + "' needs an uncertainty of 0 or more, or NaN where it is not known; it was given " + uncertainty
                    + ".");
        }
    }

    /** Makes a boundary whose uncertainty is not known. */
    public static Boundary at(String label, double x) {
        return new Boundary(label, x, Double.NaN);
    }

    /** Returns the boundary with an uncertainty to either side. */
    public Boundary withUncertainty(double plusOrMinus) {
        return new Boundary(label, x, plusOrMinus);
    }

    @Override
    public void reach(Reach reach) {
        reach.x(x);
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "boundary '%s' at %s", label, x);
    }
}
