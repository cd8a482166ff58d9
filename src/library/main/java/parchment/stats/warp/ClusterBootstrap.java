package parchment.stats.warp;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import parchment.display.Interruption;

/**
 * Turns the pull of whole clusters on the difference of two mean curves round at random, to see how far the difference strays from
 * itself in standard errors: the wild cluster bootstrap, each draw measured by its own standard errors.
 *
 * <p>A cluster's pull is how much the difference changes when the cluster is left out (the jackknife), which allows for clusters of
 * unequal size. If any cluster holds curves of both groups all clusters share one pot; otherwise each group has its own.
 */
final class ClusterBootstrap {
    private final int points;
    private final int pots;
    private final int[] pot;
    private final int[] potSize;
    /** Per side and cluster: the sum of its curves, and how many. */
    private final double[][][] sums = new double[2][][];

    private final int[][] counts = new int[2][];

    /** Takes one group, for its mean; or two, for the difference of their means. */
    ClusterBootstrap(CurveGroup... groups) {
        List<CurveGroup> sides = List.of(groups);
        this.points = sides.get(0).points();
        Map<String, Integer> index = new LinkedHashMap<>();
        sides.forEach(group -> group.clusters().forEach(label -> index.putIfAbsent(label, index.size())));
        int clusters = index.size();
        for (int side = 0; side < 2; side++) {
            sums[side] = new double[clusters][points];
            counts[side] = new int[clusters];
        }
        for (int side = 0; side < sides.size(); side++) {
            CurveGroup group = sides.get(side);
            for (int i = 0; i < group.size(); i++) {
                int g = index.getOrDefault(group.clusters().get(i), 0);
                counts[side][g]++;
                add(sums[side][g], group.curve(i), 1);
            }
        }
        boolean shared = false;
        for (int g = 0; g < clusters; g++) {
            shared |= counts[0][g] > 0 && counts[1][g] > 0;
        }
        this.pots = shared || sides.size() == 1 ? 1 : 2;
        this.pot = new int[clusters];
        this.potSize = new int[pots];
        for (int g = 0; g < clusters; g++) {
            pot[g] = shared || counts[0][g] > 0 ? 0 : 1;
            potSize[pot[g]]++;
        }
    }

    private static void add(double[] into, double[] values, double times) {
        for (int k = 0; k < into.length; k++) {
            into[k] += times * values[k];
        }
    }

    /** The difference of the means and its standard error between clusters, at each point. */
    record Estimate(double[] difference, double[] standardError) {}

    Estimate observed() {
        double[] difference = new double[points];
        double[] error = new double[points];
        for (double[] pull : pulls()) {
            for (int k = 0; k < points; k++) {
                error[k] += pull[k] * pull[k];
            }
        }
        for (int k = 0; k < points; k++) {
            difference[k] = mean(0, k) - mean(1, k);
            error[k] = Math.sqrt(error[k]);
        }
        return new Estimate(difference, error);
    }

    private double mean(int side, int k) {
        double sum = 0;
        double total = 0;
        for (int g = 0; g < pot.length; g++) {
            sum += sums[side][g][k];
            total += counts[side][g];
        }
        // A side that is not there leaves the mean of the other as it is.
        return total == 0 ? 0 : sum / total;
    }

    /** How far the difference changes without each cluster, scaled so that the squares sum to its squared standard error. */
    private double[][] pulls() {
        double[] total = new double[2];
        double[][] mean = new double[2][points];
        for (int side = 0; side < 2; side++) {
            for (int g = 0; g < pot.length; g++) {
                total[side] += counts[side][g];
            }
            for (int k = 0; k < points; k++) {
                mean[side][k] = mean(side, k);
            }
        }
        double[][] pulls = new double[pot.length][points];
        for (int g = 0; g < pot.length; g++) {
            double size = potSize[pot[g]];
            double scale = Math.sqrt((size - 1) / size);
            for (int k = 0; k < points; k++) {
                pulls[g][k] = scale * (without(0, g, k, mean, total) - without(1, g, k, mean, total));
            }
        }
        return pulls;
    }

    /** How far a side's mean moves when a cluster is left out; 0 for a side that is not there. */
    private double without(int side, int g, int k, double[][] mean, double[] total) {
        return total[side] == 0
                ? 0
                : (sums[side][g][k] - counts[side][g] * mean[side][k]) / (total[side] - counts[side][g]);
    }

    /** Returns, in increasing order, the farthest stray of each draw in standard errors. */
    double[] strays(Estimate observed, int draws, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[][] pulls = pulls();
        double largest = Arrays.stream(observed.standardError).max().orElse(0);
        double[] inverse = new double[points];
        for (int k = 0; k < points; k++) {
            // A point where the curves do not differ at all has no error to measure by.
            inverse[k] = observed.standardError[k] > 1e-12 * largest ? 1 / observed.standardError[k] : 0;
        }
        double[] strays = new double[draws];
        for (int draw = 0; draw < draws; draw++) {
            Interruption.checkHere();
            double[][] moved = new double[pots][points];
            double[] squares = new double[points];
            for (int g = 0; g < pulls.length; g++) {
                double weight = random.nextBoolean() ? 1 : -1;
                double times = (double) potSize[pot[g]] / (potSize[pot[g]] - 1);
                double[] into = moved[pot[g]];
                for (int k = 0; k < points; k++) {
                    double pull = weight * pulls[g][k];
                    into[k] += pull;
                    squares[k] += times * pull * pull;
                }
            }
            double farthest = 0;
            for (int k = 0; k < points; k++) {
                double away = 0;
                double left = squares[k];
                for (int p = 0; p < pots; p++) {
                    away += moved[p][k];
                    left -= moved[p][k] * moved[p][k] / (potSize[p] - 1);
                }
                if (inverse[k] > 0 && away != 0) {
                    farthest = Math.max(farthest, Math.abs(away) / Math.sqrt(Math.max(0, left)));
                }
            }
            strays[draw] = farthest;
        }
        Arrays.sort(strays);
        return strays;
    }
}
