package parchment.stats.local;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import parchment.stats.linear.Checks;
import parchment.stats.linear.Robust;

/**
 * Fits a low polynomial around each point of a curve, weighted by nearness; gives value and slope with their standard errors.
 *
 * <p>Defaults: degree 2, {@link KernelShape#TRICUBE}, {@link Ends#KEEP_WIDTH}, noise estimated from the residuals, no known resolution.
 * The estimate at a point is a weighted sum of the samples in its window, so its variance is w'Gw with G the covariance of the
 * noise: neighbouring samples of a logger share their errors, and standard errors that ignore this are far too small. Distances and
 * slopes are in the units of x and y. The work grows with samples times window.
 *
 * @see <a href="https://doi.org/10.1080/01621459.1979.10481038">Cleveland 1979, J. Am. Stat. Assoc. 74:829</a>; Fan and Gijbels
 *     1996, Local Polynomial Modelling, section 3; Savitzky and Golay 1964, Anal. Chem. 36:1627 for the uniform kernel
 */
public final class LocalRegression {
    private final double bandwidth;
    private final int degree;
    private final KernelShape kernel;
    private final Ends ends;
    private final double resolution;
    private final @Nullable Autocovariance noise;

    private LocalRegression(
            double bandwidth,
            int degree,
            KernelShape kernel,
            Ends ends,
            double resolution,
            @Nullable Autocovariance noise) {
        this.bandwidth = bandwidth;
        this.degree = degree;
        this.kernel = kernel;
        this.ends = ends;
        this.resolution = resolution;
        this.noise = noise;
    }

    /**
     * Returns a local quadratic regression.
     *
     * @param bandwidth half the width of the window, in units of x, above 0
     */
    public static LocalRegression of(double bandwidth) {
        Checks.positive("The bandwidth", bandwidth);
        return new LocalRegression(bandwidth, 2, KernelShape.TRICUBE, Ends.KEEP_WIDTH, 0, null);
    }

    /** Returns the same regression with another half-window. */
    public LocalRegression withBandwidth(double halfWindow) {
        Checks.positive("The bandwidth", halfWindow);
        return new LocalRegression(halfWindow, degree, kernel, ends, resolution, noise);
    }

    /** Returns the same regression with a polynomial of degree 1, 2 or 3. */
    public LocalRegression withDegree(int polynomial) {
        if (polynomial < 1 || polynomial > 3) {
            throw new IllegalArgumentException(
                    "The degree of a local regression must be 1, 2 or 3, but it is " + polynomial + ".");
        }
        return new LocalRegression(bandwidth, polynomial, kernel, ends, resolution, noise);
    }

    /** Returns the same regression with another kernel. */
    public LocalRegression withKernel(KernelShape shape) {
        return new LocalRegression(bandwidth, degree, shape, ends, resolution, noise);
    }

    /** Returns the same regression with another treatment of the two ends. */
    public LocalRegression withEnds(Ends treatment) {
        return new LocalRegression(bandwidth, degree, kernel, treatment, resolution, noise);
    }

    /** Returns the same regression with a known noise (for one logger, pooled over its curves) in place of an estimate per curve. */
    public LocalRegression withAutocovariance(Autocovariance known) {
        return new LocalRegression(bandwidth, degree, kernel, ends, resolution, known);
    }

    /** Returns the same regression for readings rounded to a step, in units of y; 0 says that the step is not known. */
    public LocalRegression withResolution(double step) {
        if (!(step >= 0)) {
            throw new IllegalArgumentException(
                    "The step of the readings must be 0 or more, but it is " + Checks.number(step) + ".");
        }
        return new LocalRegression(bandwidth, degree, kernel, ends, step, noise);
    }

    public double bandwidth() {
        return bandwidth;
    }

    public int degree() {
        return degree;
    }

    double resolution() {
        return resolution;
    }

    /**
     * Fits at the samples themselves.
     *
     * @param x positions in increasing order, none missing
     * @param y readings, NaN where missing
     * @throws IllegalArgumentException if the lengths differ or x is not in order
     */
    public LocalFit fit(double[] x, double[] y) {
        return fit(x, y, x);
    }

    /**
     * Fits at any points. A point outside the samples, or with too few samples in its window for the polynomial, gets NaN.
     *
     * @param at points in any order
     * @throws IllegalArgumentException if the lengths differ or x is not in order
     */
    public LocalFit fit(double[] x, double[] y, double[] at) {
        Checks.sameLength("Local regression", x.length, "y", y.length);
        Checks.increasing("Positions for a local regression", x);
        int used = 0;
        double[] keptX = new double[x.length];
        double[] keptY = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            if (Double.isFinite(y[i])) {
                keptX[used] = x[i];
                keptY[used++] = y[i];
            }
        }
        keptX = Arrays.copyOf(keptX, used);
        keptY = Arrays.copyOf(keptY, used);
        Autocovariance covariance = noise == null ? estimateNoise(keptX, keptY) : noise;
        LocalWindow window = window(keptX, keptY, covariance);
        double[][] rows = new double[at.length][];
        for (int i = 0; i < at.length; i++) {
            rows[i] = window.estimate(at[i]);
        }
        return new LocalFit(this, keptX, keptY, at.clone(), rows, covariance, x.length - used);
    }

    private Autocovariance estimateNoise(double[] x, double[] y) {
        if (x.length < 2 * (degree + 1)) {
            return Autocovariance.independent(0);
        }
        LocalWindow window = window(x, y, Autocovariance.independent(0));
        double[] residuals = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            residuals[i] = y[i] - window.estimate(x[i])[LocalWindow.VALUE];
        }
        double[] gaps = new double[x.length - 1];
        for (int i = 0; i < gaps.length; i++) {
            gaps[i] = x[i + 1] - x[i];
        }
        double spacing = Robust.median(gaps);
        if (!(spacing > 0)) {
            spacing = Math.max((x[x.length - 1] - x[0]) / (x.length - 1), 1e-12);
        }
        return Autocovariance.ofResiduals(residuals, middleWeights(spacing, x.length), spacing);
    }

    /** The smoother's weights at the middle of equally spaced samples, which describe what it leaves over. */
    private double[] middleWeights(double spacing, int samples) {
        int half = (int) Math.max(degree, Math.min(Math.floor(bandwidth / spacing + 1e-9), (samples - 1) / 2.0));
        double[] grid = new double[2 * half + 1];
        for (int i = 0; i < grid.length; i++) {
            grid[i] = (i - half) * spacing;
        }
        // A window too narrow for the polynomial passes through every sample and leaves nothing over.
        LocalRegression inside =
                withBandwidth(Math.max(bandwidth, half * spacing)).withEnds(Ends.KEEP_REACH);
        return inside.window(grid, new double[grid.length], Autocovariance.independent(0))
                .weights(0, LocalWindow.VALUE);
    }

    LocalWindow window(double[] x, double[] y, Autocovariance covariance) {
        return new LocalWindow(x, y, bandwidth, degree, kernel, ends, covariance);
    }
}
