package parchment.stats.warp;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * Counts how often the band for a difference of mean curves holds the whole true difference, on simulated curves whose clusters
 * wander together. Prints the table that stands in {@code src/benchmarks/parchment/stats/warp/band-coverage.md}.
 *
 * <pre>
 * java -cp src/library/target/classes src/benchmarks/parchment/stats/warp/BandCoverage.java
 * </pre>
 */
final class BandCoverage {
    private static final int SETS = 2000;
    private static final int DRAWS = 399;
    private static final int POINTS = 30;
    private static final double LEVEL = 0.90;

    private BandCoverage() {}

    public static void main(String[] arguments) {
        System.out.println(
                "| clusters per group | curves per cluster | clusters | memory between points | held | Monte-Carlo error |");
        System.out.println("| --- | --- | --- | --- | --- | --- |");
        for (int clusters : new int[] {5, 8, 12, 20}) {
            for (boolean shared : new boolean[] {false, true}) {
                for (double memory : new double[] {0.8, 0.98}) {
                    long held = IntStream.range(0, SETS)
                            .parallel()
                            .filter(set -> holds(set, clusters, shared, memory))
                            .count();
                    double share = (double) held / SETS;
                    System.out.printf(
                            Locale.ROOT,
                            "| %d | 1 to 4 | %s | %.2f | %.3f | %.3f |%n",
                            clusters,
                            shared ? "hold both groups" : "hold one group",
                            memory,
                            share,
                            Math.sqrt(share * (1 - share) / SETS));
                }
            }
        }
    }

    private static boolean holds(int set, int clusters, boolean shared, double memory) {
        SplittableRandom random = new SplittableRandom(1000L * clusters + set);
        List<double[]> first = new ArrayList<>();
        List<double[]> second = new ArrayList<>();
        List<String> firstLabels = new ArrayList<>();
        List<String> secondLabels = new ArrayList<>();
        for (int g = 0; g < clusters; g++) {
            double[] common = wander(random, memory);
            fill(random, memory, common, 1, first, firstLabels, "a" + g);
            double[] other = shared ? common : wander(random, memory);
            fill(random, memory, other, 0, second, secondLabels, (shared ? "a" : "b") + g);
        }
        SimultaneousBand band = SimultaneousBand.of(
                CurveGroup.of(first, firstLabels), CurveGroup.of(second, secondLabels), LEVEL, DRAWS, set);
        double[] lower = band.lower();
        double[] upper = band.upper();
        for (int k = 0; k < POINTS; k++) {
            if (truth(k) < lower[k] || truth(k) > upper[k]) {
                return false;
            }
        }
        return true;
    }

    private static double truth(int k) {
        return Math.sin(3.0 * k / POINTS);
    }

    private static void fill(
            SplittableRandom random,
            double memory,
            double[] common,
            double times,
            List<double[]> curves,
            List<String> labels,
            String label) {
        int count = 1 + random.nextInt(4);
        for (int i = 0; i < count; i++) {
            double[] curve = wander(random, memory);
            for (int k = 0; k < POINTS; k++) {
                curve[k] = common[k] + 0.7 * curve[k] + times * truth(k);
            }
            curves.add(curve);
            labels.add(label);
        }
    }

    private static double[] wander(SplittableRandom random, double memory) {
        double[] values = new double[POINTS];
        double at = random.nextGaussian();
        for (int k = 0; k < POINTS; k++) {
            at = memory * at + Math.sqrt(1 - memory * memory) * random.nextGaussian();
            values[k] = at;
        }
        return values;
    }
}
