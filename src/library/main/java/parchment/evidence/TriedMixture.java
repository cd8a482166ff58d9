package parchment.evidence;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import parchment.stats.linear.Matrices;
import parchment.stats.linear.Robust;

/**
 * Keeps an answer from speaking of mixtures that nobody tried: whether a mixture of several measures was tried, not only each of them by
 * itself.
 *
 * <p>Two conditions: each value lies between the lowest and the highest batch, and the mixture is no stranger than the batches
 * themselves: its Mahalanobis distance from their mean, by their covariance inside lots, is at most that of 95 in 100 of them.
 */
final class TriedMixture {
    private static final double SHARE = 0.95;

    private final JointFit fit;
    private final double[] center;
    private final Optional<double[][]> inverse;
    private final double limit;

    private TriedMixture(JointFit fit, double[] center, Optional<double[][]> inverse) {
        this.fit = fit;
        this.center = center;
        this.inverse = inverse;
        this.limit = Robust.quantile(
                IntStream.range(0, fit.within().get(0).length)
                        .mapToDouble(batch -> squared(row(batch)))
                        .toArray(),
                SHARE);
    }

    static TriedMixture of(JointFit fit) {
        List<double[]> within = fit.within();
        double[][] covariance = new double[within.size()][within.size()];
        double[] center = new double[within.size()];
        for (int k = 0; k < center.length; k++) {
            center[k] = fit.joint().center(k);
            for (int l = 0; l < center.length; l++) {
                for (int i = 0; i < within.get(0).length; i++) {
                    covariance[k][l] += within.get(k)[i] * within.get(l)[i] / (within.get(0).length - 1.0);
                }
            }
        }
        return new TriedMixture(fit, center, Matrices.inverse(covariance));
    }

    private double[] row(int batch) {
        return fit.within().stream().mapToDouble(measure -> measure[batch]).toArray();
    }

    /** Returns the mixture as distances from the batches' means. */
    double[] fromCenter(double[] mixture) {
        double[] from = mixture.clone();
        for (int k = 0; k < from.length; k++) {
            from[k] -= center[k];
        }
        return from;
    }

    private double squared(double[] from) {
        return inverse.map(found -> Matrices.form(from, found, from)).orElse(Double.POSITIVE_INFINITY);
    }

    /** Returns why a mixture was not tried, in words; empty if it was. */
    String whyNot(double[] mixture) {
        double[] from = fromCenter(mixture);
        for (int k = 0; k < from.length; k++) {
            double[] within = fit.within().get(k);
            double low = center[k] + Robust.quantile(within, 0);
            double high = center[k] + Robust.quantile(within, 1);
            Measure measure = fit.joint().measures().get(k);
            if (!(mixture[k] >= low && mixture[k] <= high)) {
                return "a " + measure.name() + " of " + measure.value(mixture[k])
                        + " was not tried: the batches reach from " + measure.range(low, high);
            }
        }
        return squared(from) <= limit * (1 + 1e-9)
                ? ""
                : "each of these was tried, but not in this mixture: it lies further from the batches' mean than 95 in 100 of them";
    }

    /** Returns the names of the batches whose mixture was nearest, the nearest first. */
    List<String> nearest(double[] mixture, int count) {
        double[] from = fromCenter(mixture);
        return fit.joint().material().batches().stream()
                .sorted(Comparator.comparingDouble(batch -> {
                    double[] apart = row(batch.position());
                    for (int k = 0; k < apart.length; k++) {
                        apart[k] -= from[k];
                    }
                    return inverse.isPresent() ? squared(apart) : Math.abs(apart[0]);
                }))
                .limit(count)
                .map(TastedBatch::name)
                .toList();
    }
}
