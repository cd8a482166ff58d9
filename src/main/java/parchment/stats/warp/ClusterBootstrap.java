package parchment.stats.warp;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * Draws whole clusters again and again to see how far the difference of two mean curves strays from itself, in standard errors.
 *
 * <p>If any cluster holds curves of both groups all clusters are drawn from one pot; otherwise each group's from its own.
 */
final class ClusterBootstrap {
    private final int points;
    private final int pots;
    private final int[] pot;
    private final int[] potSize;
    /** Per side and cluster: the sum of its curves, and how many. */
    private final double[][][] sums = new double[2][][];

    private final int[][] counts = new int[2][];

    ClusterBootstrap(CurveGroup first, CurveGroup second) {
        this.points = first.points();
        Map<String, Integer> index = new LinkedHashMap<>();
        first.clusters().forEach(label -> index.putIfAbsent(label, index.size()));
        second.clusters().forEach(label -> index.putIfAbsent(label, index.size()));
        int clusters = index.size();
        List<CurveGroup> sides = List.of(first, second);
        for (int side = 0; side < 2; side++) {
            sums[side] = new double[clusters][points];
            counts[side] = new int[clusters];
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
        this.pots = shared ? 1 : 2;
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

    /** The difference of the means and its standard error, at each point, when each cluster counts so many times. */
    record Estimate(double[] difference, double[] standardError) {}

    Estimate estimate(int[] times) {
        double[][] mean = new double[2][points];
        double[] total = new double[2];
        int clusters = pot.length;
        for (int side = 0; side < 2; side++) {
            for (int g = 0; g < clusters; g++) {
                if (times[g] > 0 && counts[side][g] > 0) {
                    add(mean[side], sums[side][g], times[g]);
                    total[side] += (double) times[g] * counts[side][g];
                }
            }
            for (int k = 0; k < points; k++) {
                mean[side][k] /= total[side];
            }
        }
        double[] difference = new double[points];
        double[] error = new double[points];
        for (int g = 0; g < clusters; g++) {
            if (times[g] > 0) {
                double weight = times[g] * (double) potSize[pot[g]] / (potSize[pot[g]] - 1);
                double shareFirst = 1 / total[0];
                double shareSecond = 1 / total[1];
                for (int k = 0; k < points; k++) {
                    double pull = (sums[0][g][k] - counts[0][g] * mean[0][k]) * shareFirst
                            - (sums[1][g][k] - counts[1][g] * mean[1][k]) * shareSecond;
                    error[k] += weight * pull * pull;
                }
            }
        }
        for (int k = 0; k < points; k++) {
            difference[k] = mean[0][k] - mean[1][k];
            error[k] = Math.sqrt(error[k]);
        }
        return new Estimate(difference, error);
    }

    Estimate observed() {
        int[] once = new int[pot.length];
        Arrays.fill(once, 1);
        return estimate(once);
    }

    /** Returns, in increasing order, the farthest stray of each draw in its own standard errors. */
    double[] strays(Estimate observed, int draws, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<List<Integer>> members = new ArrayList<>();
        for (int p = 0; p < pots; p++) {
            members.add(new ArrayList<>());
        }
        for (int g = 0; g < pot.length; g++) {
            members.get(pot[g]).add(g);
        }
        double largest = 0;
        for (double error : observed.standardError) {
            largest = Math.max(largest, error);
        }
        double[] strays = new double[draws];
        for (int draw = 0; draw < draws; draw++) {
            int[] times = draw(members, random);
            Estimate drawn = estimate(times);
            double farthest = 0;
            for (int k = 0; k < points; k++) {
                // A point where the curves do not differ at all has no error to measure by.
                if (observed.standardError[k] > 1e-12 * largest) {
                    double away = Math.abs(drawn.difference[k] - observed.difference[k]);
                    double stray = away == 0 ? 0 : away / drawn.standardError[k];
                    farthest = Math.max(farthest, stray);
                }
            }
            strays[draw] = farthest;
        }
        Arrays.sort(strays);
        return strays;
    }

    /** A draw without a curve on either side says nothing of their difference and is drawn again. */
    private int[] draw(List<List<Integer>> members, SplittableRandom random) {
        while (true) {
            int[] times = new int[pot.length];
            for (List<Integer> own : members) {
                for (int i = 0; i < own.size(); i++) {
                    times[own.get(random.nextInt(own.size()))]++;
                }
            }
            boolean[] present = new boolean[2];
            for (int g = 0; g < times.length; g++) {
                present[0] |= times[g] > 0 && counts[0][g] > 0;
                present[1] |= times[g] > 0 && counts[1][g] > 0;
            }
            if (present[0] && present[1]) {
                return times;
            }
        }
    }
}
