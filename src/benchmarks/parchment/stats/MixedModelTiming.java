package parchment.stats;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * Times mixed models of two sizes; prints the median of repeated fits after warming up.
 *
 * <p>Run from the folder of the root pom after compiling: {@code java -cp src/target/classes:HIPPARCHUS_JARS
 * src/benchmarks/parchment/stats/MixedModelTiming.java}.
 */
public final class MixedModelTiming {
    private MixedModelTiming() {}

    public static void main(String[] arguments) {
        time("300 rows, 6 random terms, restricted fit", small(1), 200);
        time("300 rows, 6 random terms, slope off zero", small(7), 200);
        time("12,000 rows, batches x sessions x tasters", large(), 7);
        LinearMixedModel model = small(1).fit();
        System.out.println(model.text());
    }

    private static void time(String name, MixedDesign design, int repeats) {
        double[] seconds = new double[repeats];
        int evaluations = 0;
        for (int i = 0; i < repeats; i++) {
            long start = System.nanoTime();
            LinearMixedModel model = design.fit();
            seconds[i] = 1e-9 * (System.nanoTime() - start);
            evaluations = model.evaluations();
        }
        Arrays.sort(seconds);
        System.out.printf(
                Locale.ROOT,
                "%s: median %.1f ms, best %.1f ms, %d evaluations%n",
                name,
                1e3 * seconds[repeats / 2],
                1e3 * seconds[0],
                evaluations);
    }

    /** 60 batches in 15 cuppings and 14 roast days, 5 cuppers, 3 lots; 12 fixed columns. */
    static MixedDesign small(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int n = 300;
        List<String> lot = new ArrayList<>();
        List<String> day = new ArrayList<>();
        List<String> batch = new ArrayList<>();
        List<String> cupper = new ArrayList<>();
        List<String> cupping = new ArrayList<>();
        double[][] effects = new double[5][100];
        for (double[] row : effects) {
            for (int i = 0; i < row.length; i++) {
                row[i] = random.nextGaussian();
            }
        }
        double[] y = new double[n];
        double[][] x = new double[11][n];
        double[][] byBatch = new double[11][60];
        for (double[] row : byBatch) {
            for (int b = 0; b < 60; b++) {
                row[b] = random.nextGaussian();
            }
        }
        for (int i = 0; i < n; i++) {
            int b = i / 5;
            int c = i % 5;
            int d = b * 14 / 60;
            int s = (b / 2) % 15;
            lot.add("lot " + b % 3);
            day.add("day " + d);
            batch.add("batch " + b);
            cupper.add("cupper " + c);
            cupping.add("cupping " + s);
            y[i] = 6
                    + 0.3 * effects[0][b % 3]
                    + 0.3 * effects[1][d]
                    + 0.3 * effects[2][b]
                    + 0.5 * effects[3][c]
                    + 0.2 * effects[4][s]
                    + 0.6 * random.nextGaussian();
            for (int k = 0; k < 11; k++) {
                x[k][i] = byBatch[k][b];
            }
        }
        MixedDesign design = MixedDesign.of("score", y);
        for (int k = 0; k < 11; k++) {
            design = design.withCovariate("x" + k, x[k]);
        }
        return design.withRandom(RandomTerm.intercept("lot", lot))
                .withRandom(RandomTerm.intercept("day", day))
                .withRandom(RandomTerm.intercept("batch", batch))
                .withRandom(RandomTerm.intercept("cupper", cupper))
                .withRandom(RandomTerm.intercept("cupping", cupping))
                .withRandom(RandomTerm.intercept("cupping:cupper", RandomTerm.crossedWith(cupping, cupper)));
    }

    /** 2,000 batches each in 2 of 300 sessions, all 10 tasters used, 3 per batch and session. */
    static MixedDesign large() {
        SplittableRandom random = new SplittableRandom(3);
        int n = 12_000;
        double[] y = new double[n];
        double[] x = new double[n];
        List<String> batch = new ArrayList<>();
        List<String> session = new ArrayList<>();
        List<String> taster = new ArrayList<>();
        double[] b = random.doubles(2_000).toArray();
        double[] s = random.doubles(300).toArray();
        double[] t = random.doubles(10).toArray();
        int row = 0;
        for (int i = 0; i < 2_000; i++) {
            double feature = random.nextGaussian();
            for (int k = 0; k < 2; k++) {
                int at = random.nextInt(300);
                int first = random.nextInt(10);
                for (int c = 0; c < 3; c++) {
                    int who = (first + 3 * c) % 10;
                    x[row] = feature;
                    y[row] = 0.2 * feature + 2 * b[i] + s[at] + 2 * t[who] + random.nextGaussian();
                    batch.add("b" + i);
                    session.add("s" + at);
                    taster.add("t" + who);
                    row++;
                }
            }
        }
        return MixedDesign.of("score", y)
                .withCovariate("x", x)
                .withRandom(RandomTerm.intercept("batch", batch))
                .withRandom(RandomTerm.intercept("session", session))
                .withRandom(RandomTerm.intercept("taster", taster));
    }
}
