package parchment.evidence;

import java.util.Arrays;
import java.util.List;
import parchment.evidence.finding.Slope;
import parchment.stats.mixed.FTest;

/**
 * Takes the slopes of lots as draws from one distribution.
 *
 * <p>The variance between lots is that of DerSimonian and Laird (1986, Control. Clin. Trials 7:177), never below 0. For
 * weights and that variance the slopes' errors are taken as independent; what they share through the common bend and the probe is small
 * beside their own.
 */
record RandomSlopes(List<Double> weights, double mean, double betweenVariance, FTest difference) {

    static RandomSlopes of(List<Slope> slopes) {
        int k = slopes.size();
        double sum = 0;
        double squares = 0;
        double weighted = 0;
        for (Slope slope : slopes) {
            double w = 1 / (slope.standardError() * slope.standardError());
            sum += w;
            squares += w * w;
            weighted += w * slope.estimate();
        }
        double q = 0;
        for (Slope slope : slopes) {
            double off = (slope.estimate() - weighted / sum) / slope.standardError();
            q += off * off;
        }
        double between = k < 2 ? 0 : Math.max(0, (q - (k - 1)) / (sum - squares / sum));
        double[] inverse = new double[k];
        double total = 0;
        double mean = 0;
        for (int i = 0; i < k; i++) {
            double error = slopes.get(i).standardError();
            inverse[i] = 1 / (error * error + between);
            total += inverse[i];
            mean += inverse[i] * slopes.get(i).estimate();
        }
        double all = total;
        List<Double> weights = Arrays.stream(inverse).map(w -> w / all).boxed().toList();
        double degrees =
                slopes.stream().mapToDouble(Slope::degreesOfFreedom).min().orElse(0);
        return new RandomSlopes(
                weights,
                k == 0 ? Double.NaN : mean / total,
                between,
                new FTest("slopes of lots", k < 2 ? Double.NaN : q / (k - 1), k - 1.0, degrees));
    }

    double weight(int i) {
        return weights.get(i);
    }

    double between() {
        return Math.sqrt(betweenVariance);
    }

    /** Returns the chance of slopes that differ as much if all were one, by Cochran's Q over its degrees of freedom as F; 1 with fewer than two. */
    double chanceOfDifference() {
        return weights.size() < 2 ? 1 : difference.probability();
    }
}
