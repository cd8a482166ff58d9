package parchment.stats.local;

import java.util.List;
import java.util.Locale;
import parchment.display.Showable;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.Checks;

/**
 * Describes noise along a curve: how large it is, and how much of it a neighbouring sample shares.
 *
 * <p>The covariance of two samples at distance d (in units of x) is {@code correlated * exp(-d / length)}, plus {@code white} where
 * both are the same sample. Loggers and probes smooth what they read, so neighbouring errors are alike; standard errors that treat
 * them as independent are too small (Altman 1990, J. Am. Stat. Assoc. 85:749).
 */
public final class Autocovariance implements Showable {
    private final double white;
    private final double correlated;
    private final double length;
    private final int samples;

    private Autocovariance(double white, double correlated, double length, int samples) {
        this.white = white;
        this.correlated = correlated;
        this.length = length;
        this.samples = samples;
    }

    /** Returns noise in which no sample shares anything with its neighbours. */
    public static Autocovariance independent(double variance) {
        return of(variance, 0, 1);
    }

    /**
     * Returns noise in two parts.
     *
     * @param white variance of the part that neighbours do not share, 0 or more
     * @param correlated variance of the part that neighbours share, 0 or more
     * @param length distance in units of x over which the shared part falls to 1/e, above 0
     * @throws IllegalArgumentException if a variance is negative or missing, or the length is not above 0
     */
    public static Autocovariance of(double white, double correlated, double length) {
        if (!(white >= 0) || !(correlated >= 0)) {
            throw new IllegalArgumentException("Variances of noise must be 0 or more, but they are "
                    + Checks.number(white) + " and " + Checks.number(correlated) + ".");
        }
        Checks.positive("The length over which noise is shared", length);
        return new Autocovariance(white, correlated, length, 0);
    }

    /**
     * Returns noise whose correlation between neighbouring samples is given, and falls by that factor with every further sample.
     *
     * @param variance variance of one sample
     * @param neighbourCorrelation correlation of samples one spacing apart, from 0 to below 1
     * @param spacing distance of neighbouring samples in units of x
     */
    public static Autocovariance autoregressive(double variance, double neighbourCorrelation, double spacing) {
        if (!(neighbourCorrelation >= 0 && neighbourCorrelation < 1)) {
            throw new IllegalArgumentException(
                    "The correlation of neighbouring samples must be from 0 to below 1, but it is "
                            + Checks.number(neighbourCorrelation) + ".");
        }
        return neighbourCorrelation == 0
                ? independent(variance)
                : of(0, variance, -Checks.positive("The spacing", spacing) / Math.log(neighbourCorrelation));
    }

    /**
     * Estimates noise from what a smoother left over.
     *
     * <p>A smoother takes part of the noise with it, so the residuals' own covariances are too small and partly negative. Here the
     * two variances and the length are chosen so that the covariances which the smoother would leave over agree with those seen
     * (least squares over the first lags), the smoother being described by its weights in the middle of the curve.
     *
     * @param residuals residuals in order of x, NaN where missing
     * @param weights weights of the smoother around the middle sample; odd length
     * @param spacing usual distance of neighbouring samples
     */
    static Autocovariance ofResiduals(double[] residuals, double[] weights, double spacing) {
        return ResidualCovariance.of(residuals, weights).fit(spacing);
    }

    static Autocovariance fitted(double white, double correlated, double length, int samples) {
        return new Autocovariance(white, correlated, length, samples);
    }

    /**
     * Pools estimates from several curves of the same logger, weighting each by its number of samples.
     *
     * @throws IllegalArgumentException if the list is empty
     */
    public static Autocovariance pooled(List<Autocovariance> estimates) {
        if (estimates.isEmpty()) {
            throw new CannotFitException("Pooling noise needs at least one curve, but there is none.");
        }
        double total = 0;
        double white = 0;
        double correlated = 0;
        double reach = 0;
        int samples = 0;
        for (Autocovariance one : estimates) {
            double weight = Math.max(1, one.samples);
            total += weight;
            white += weight * one.white;
            correlated += weight * one.correlated;
            reach += weight * one.correlated * one.length;
            samples += one.samples;
        }
        // Keeps the area under the shared part, which is what a smooth of many samples feels.
        double length = correlated > 0 ? reach / correlated : 1;
        return new Autocovariance(white / total, correlated / total, length, samples);
    }

    /** Returns the variance of one sample. */
    public double variance() {
        return white + correlated;
    }

    /** Returns the covariance of two different samples at the given distance. */
    public double at(double distance) {
        return correlated == 0 ? 0 : correlated * Math.exp(-Math.abs(distance) / length);
    }

    /** Returns the correlation of two samples at the given distance. */
    public double correlation(double distance) {
        return variance() == 0 ? 0 : at(distance) / variance();
    }

    /** Returns how many residuals the estimate rests on; 0 if it was given, not estimated. */
    public int samples() {
        return samples;
    }

    double decay(double distance) {
        return correlated == 0 ? 0 : Math.exp(-distance / length);
    }

    /** Returns w' G w for weights on consecutive samples; {@code decays[i]} belongs to the step from sample i-1 to sample i. */
    double quadratic(double[] w, int count, double[] decays, int first) {
        double squares = 0;
        double cross = 0;
        double carried = 0;
        for (int i = 0; i < count; i++) {
            if (i > 0) {
                carried = (carried + w[i - 1]) * decays[first + i];
            }
            squares += w[i] * w[i];
            cross += w[i] * carried;
        }
        return Math.max(0, (white + correlated) * squares + 2 * correlated * cross);
    }

    @Override
    public String toString() {
        String start = String.format(Locale.ROOT, "noise with standard deviation %.3g", Math.sqrt(variance()));
        return correlated == 0
                ? start + ", not shared by neighbouring samples"
                : String.format(
                        Locale.ROOT,
                        "%s, of which a share of %.2f is shared over a length of %.3g",
                        start,
                        correlated / variance(),
                        length);
    }
}
