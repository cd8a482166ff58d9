package parchment.evidence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import parchment.logbook.written.CupScores;

/**
 * Sums of products of a cupping's scores, from which two covariances of the attributes follow.
 *
 * <p>Scores of one cupper are counted from that cupper's mean in the cupping. The covariance of one cupper's own scores is what cuppers
 * agree on plus what is in one cupper alone; the covariance of one cupper's with another's of the same batches is only what they agree
 * on. Means of a cupper's cups of one batch are taken first. Divided by batches less one, both are free of bias.
 */
final class HaloMoments {
    private final int attributes;
    private final double[][] same;
    private final double[][] across;
    private double sameDegrees;
    private double acrossDegrees;

    private HaloMoments(int attributes) {
        this.attributes = attributes;
        this.same = new double[attributes][attributes];
        this.across = new double[attributes][attributes];
    }

    /** Returns the sums of each cupping that has a cupper with two batches or more, by the cupping's name. */
    static Map<String, HaloMoments> of(List<CupScores> cups, List<String> attributes) {
        Map<String, Map<String, Map<String, List<double[]>>>> rows = new TreeMap<>();
        for (CupScores cup : cups) {
            double[] row = attributes.stream().mapToDouble(cup::score).toArray();
            if (Arrays.stream(row).noneMatch(Double::isNaN)) {
                rows.computeIfAbsent(cup.cupping(), key -> new TreeMap<>())
                        .computeIfAbsent(cup.cupper(), key -> new TreeMap<>())
                        .computeIfAbsent(cup.batch(), key -> new ArrayList<>())
                        .add(row);
            }
        }
        Map<String, HaloMoments> moments = new LinkedHashMap<>();
        rows.forEach((cupping, cuppers) -> {
            HaloMoments sums = new HaloMoments(attributes.size());
            List<Map<String, double[]>> means = new ArrayList<>();
            cuppers.values().forEach(batches -> {
                Map<String, double[]> mean = new TreeMap<>();
                batches.forEach((batch, own) -> mean.put(batch, mean(own)));
                means.add(mean);
            });
            for (int j = 0; j < means.size(); j++) {
                sums.add(means.get(j), means.get(j), sums.same);
                for (int k = j + 1; k < means.size(); k++) {
                    sums.add(means.get(j), means.get(k), sums.across);
                }
            }
            if (sums.sameDegrees > 0) {
                moments.put(cupping, sums);
            }
        });
        return moments;
    }

    private static double[] mean(List<double[]> rows) {
        double[] mean = new double[rows.get(0).length];
        for (double[] row : rows) {
            for (int a = 0; a < mean.length; a++) {
                mean[a] += row[a] / rows.size();
            }
        }
        return mean;
    }

    private void add(Map<String, double[]> first, Map<String, double[]> second, double[][] into) {
        List<String> shared =
                first.keySet().stream().filter(second::containsKey).toList();
        if (shared.size() < 2) {
            return;
        }
        List<double[]> left = shared.stream()
                .map(batch -> first.getOrDefault(batch, new double[0]))
                .toList();
        List<double[]> right = shared.stream()
                .map(batch -> second.getOrDefault(batch, new double[0]))
                .toList();
        double[] leftMean = mean(left);
        double[] rightMean = mean(right);
        for (int i = 0; i < shared.size(); i++) {
            for (int a = 0; a < attributes; a++) {
                for (int b = 0; b < attributes; b++) {
                    double one = (left.get(i)[a] - leftMean[a]) * (right.get(i)[b] - rightMean[b]);
                    double other = (left.get(i)[b] - leftMean[b]) * (right.get(i)[a] - rightMean[a]);
                    into[a][b] += (one + other) / 2;
                }
            }
        }
        if (into == same) {
            sameDegrees += shared.size() - 1.0;
        } else {
            acrossDegrees += shared.size() - 1.0;
        }
    }

    /** Adds sums up. */
    static HaloMoments sum(List<HaloMoments> all, int attributes) {
        HaloMoments sum = new HaloMoments(attributes);
        for (HaloMoments one : all) {
            for (int a = 0; a < attributes; a++) {
                for (int b = 0; b < attributes; b++) {
                    sum.same[a][b] += one.same[a][b];
                    sum.across[a][b] += one.across[a][b];
                }
            }
            sum.sameDegrees += one.sameDegrees;
            sum.acrossDegrees += one.acrossDegrees;
        }
        return sum;
    }

    boolean severalCuppers() {
        return acrossDegrees > 0;
    }

    /** Returns the covariance of what cuppers agree on; all 0 if no two cuppers scored the same batches. */
    double[][] agreed() {
        double[][] agreed = new double[attributes][attributes];
        for (int a = 0; a < attributes && severalCuppers(); a++) {
            for (int b = 0; b < attributes; b++) {
                agreed[a][b] = across[a][b] / acrossDegrees;
            }
        }
        return agreed;
    }

    /** Returns the covariance of what is in one cupper's scores alone; with one cupper, of everything in them. */
    double[][] alone() {
        double[][] agreed = agreed();
        double[][] alone = new double[attributes][attributes];
        for (int a = 0; a < attributes; a++) {
            for (int b = 0; b < attributes; b++) {
                alone[a][b] = same[a][b] / sameDegrees - agreed[a][b];
            }
        }
        return alone;
    }
}
