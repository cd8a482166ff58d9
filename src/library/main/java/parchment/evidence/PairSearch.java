package parchment.evidence;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.stats.linear.Matrices;

/**
 * Chooses pairs of mixtures one by one, each time the pair that most reduces what is furthest from its aim, until every comparison is
 * known well enough or as many pairs are chosen as are allowed.
 *
 * <p>A pair adds d d' / (2 s^2) to the information on the slopes, with d the difference of its two mixtures and s^2 the variance of a
 * batch's mean score inside a day. A comparison c has the error sqrt(c'M^-1c), with M the information, and the variance inflation
 * c'M^-1c / sum of c_k^2 / M_kk. Both have to reach their aim: a comparison that is known well enough but moved together with the
 * rest is still not told.
 *
 * @param information what is known before
 * @param points the mixtures offered
 * @param wanted the comparisons, as weights of the measures
 * @param errors the error that each comparison may have
 * @param noise s^2
 */
record PairSearch(double[][] information, List<double[]> points, List<double[]> wanted, double[] errors, double noise) {

    /**
     * Holds the pairs.
     *
     * @param pairs how often each two points, by their places among those offered, in the order in which they were chosen first
     * @param rounds how many pairs in all
     * @param enough whether every aim is reached
     */
    record Chosen(Map<List<Integer>, Integer> pairs, int rounds, Reached enough) {}

    /** Says whether every aim is reached. */
    enum Reached {
        ALL,
        NOT_ALL
    }

    /** Says how far the worst comparison is from its aim before any pair is chosen: at most 1 if all are reached. */
    double before() {
        return worst(information);
    }

    /** Rounding must not cost another pair. */
    private static boolean reached(double worst) {
        return worst <= 1 + 1e-9;
    }

    /** Chooses at most so many pairs. */
    Chosen choose(int most) {
        Map<List<Integer>, Integer> pairs = new LinkedHashMap<>();
        double[][] known = information;
        int rounds = 0;
        while (!reached(worst(known)) && rounds < most) {
            List<Integer> best = best(known);
            if (best.isEmpty()) {
                break;
            }
            known = plus(known, best);
            pairs.merge(best, 1, Integer::sum);
            rounds++;
        }
        return new Chosen(pairs, rounds, reached(worst(known)) ? Reached.ALL : Reached.NOT_ALL);
    }

    /** Returns the pair that helps most; empty if none is offered. */
    private List<Integer> best(double[][] known) {
        List<Integer> best = List.of();
        double least = Double.POSITIVE_INFINITY;
        for (int a = 0; a < points.size(); a++) {
            for (int b = a + 1; b < points.size(); b++) {
                List<Integer> pair = List.of(a, b);
                double ratio = worst(plus(known, pair));
                if (ratio < least) {
                    least = ratio;
                    best = pair;
                }
            }
        }
        return best;
    }

    private double worst(double[][] known) {
        Optional<double[][]> covariance = Matrices.inverse(known);
        if (covariance.isEmpty()) {
            return Double.MAX_VALUE;
        }
        double worst = 0;
        for (int c = 0; c < errors.length; c++) {
            double[] weights = wanted.get(c);
            double variance = Matrices.form(weights, covariance.get(), weights);
            double separate = 0;
            for (int k = 0; k < weights.length; k++) {
                separate += weights[k] * weights[k] / known[k][k];
            }
            double inflation = variance / separate;
            worst = Math.max(
                    worst, Math.max(Math.sqrt(variance) / errors[c], Math.sqrt(inflation / PathRules.MOST_INFLATION)));
        }
        return worst;
    }

    private double[][] plus(double[][] known, List<Integer> pair) {
        double[] first = points.get(pair.get(0));
        double[] second = points.get(pair.get(1));
        double[][] sum = new double[known.length][];
        for (int k = 0; k < sum.length; k++) {
            sum[k] = known[k].clone();
            for (int l = 0; l < sum.length; l++) {
                sum[k][l] += (first[k] - second[k]) * (first[l] - second[l]) / (2 * noise);
            }
        }
        return sum;
    }
}
