package parchment.stats.warp;

/** Chooses what of two curves is compared. */
public enum Compared {
    /** The samples themselves. */
    VALUES,
    /**
     * Their slopes per sample, as estimated by Keogh and Pazzani: the mean of the slope to the left neighbour and the slope through
     * both neighbours. Curves then match by shape, whatever their level. The end samples take their neighbour's slope.
     *
     * @see <a href="https://doi.org/10.1137/1.9781611972719.1">Keogh and Pazzani 2001, Derivative dynamic time warping, section 3</a>
     */
    SLOPES;

    double[] of(double[] curve) {
        if (this == VALUES) {
            return curve;
        }
        int n = curve.length;
        if (n < 3) {
            throw new IllegalArgumentException(
                    "Comparing slopes needs at least 3 samples in each curve, but there are " + n + ".");
        }
        double[] slopes = new double[n];
        for (int i = 1; i < n - 1; i++) {
            slopes[i] = ((curve[i] - curve[i - 1]) + (curve[i + 1] - curve[i - 1]) / 2) / 2;
        }
        slopes[0] = slopes[1];
        slopes[n - 1] = slopes[n - 2];
        return slopes;
    }
}
