package parchment.stats.warp;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class DynamicTimeWarpingTest {
    private static final double[] X = grid(100, 6.28);
    private static final double[] SINE = Arrays.stream(X).map(Math::sin).toArray();
    private static final double[] COSINE = Arrays.stream(X).map(Math::cos).toArray();

    /** The table of local costs printed with the R package dtw (Giorgino 2009), whose results the next tests quote. */
    private static final double[][] SIX = {
        {1, 1, 2, 2, 3, 3},
        {1, 1, 1, 2, 2, 2},
        {3, 1, 2, 2, 3, 3},
        {3, 1, 2, 1, 1, 2},
        {3, 2, 1, 2, 1, 2},
        {3, 3, 3, 2, 1, 2}
    };

    @Test
    @Tag("agrees-with")
    void agreesWithThePrintedTableOfCosts() {
        WarpingPath symmetric2 = DynamicTimeWarping.of(StepPattern.SYMMETRIC2).alignCosts(SIX);
        assertEquals(13, symmetric2.distance());
        assertEquals(13.0 / 12, symmetric2.normalisedDistance(), 1e-15);
        WarpingPath symmetric1 = DynamicTimeWarping.of(StepPattern.SYMMETRIC1).alignCosts(SIX);
        assertEquals(8, symmetric1.distance());
        assertArrayEquals(new int[] {0, 1, 2, 3, 4, 5}, symmetric1.queries());
        assertArrayEquals(new int[] {0, 1, 2, 3, 4, 5}, symmetric1.references());
        WarpingPath asymmetric = DynamicTimeWarping.of(StepPattern.ASYMMETRIC).alignCosts(SIX);
        assertEquals(7, asymmetric.distance());
        assertArrayEquals(new int[] {0, 1, 2, 3, 4, 5}, asymmetric.queries());
        assertArrayEquals(new int[] {0, 1, 1, 3, 4, 5}, asymmetric.references());
    }

    @Test
    @Tag("agrees-with")
    void agreesWithAnIntegerExampleWorkedByHand() {
        double[] query = {1, 2, 3, 4, 3, 2, 1, 1, 2, 1};
        double[] reference = {1, 1, 2, 3, 4, 3, 2, 1, 2, 2};
        for (StepPattern pattern : List.of(StepPattern.SYMMETRIC1, StepPattern.SYMMETRIC2)) {
            assertEquals(1, DynamicTimeWarping.of(pattern).distance(query, reference));
            assertEquals(
                    1, DynamicTimeWarping.of(pattern).align(query, reference).distance());
        }
        assertEquals(
                0.05,
                DynamicTimeWarping.of(StepPattern.SYMMETRIC2)
                        .align(query, reference)
                        .normalisedDistance(),
                1e-15);
    }

    @Test
    @Tag("agrees-with")
    void agreesWithSevenPublishedVariantsOfSineAgainstCosine() throws IOException {
        DynamicTimeWarping symmetric2 = DynamicTimeWarping.of(StepPattern.SYMMETRIC2);
        DynamicTimeWarping asymmetric = DynamicTimeWarping.of(StepPattern.ASYMMETRIC);
        Map<String, DynamicTimeWarping> ours = new LinkedHashMap<>();
        ours.put("symmetric2", symmetric2);
        ours.put("asymmetric", asymmetric);
        ours.put("sakoechiba10", symmetric2.withWindow(Window.band(10)));
        ours.put("asym_open", asymmetric.withEndpoints(Endpoints.OPEN_BOTH));
        ours.put("rj4c", DynamicTimeWarping.of(StepPattern.RABINER_JUANG_4C));
        ours.put("itakura", symmetric2.withWindow(Window.parallelogram()));
        ours.put("symmetricP1", DynamicTimeWarping.of(StepPattern.SYMMETRIC_P1));
        Map<String, String[]> theirs = reference();
        assertEquals(ours.keySet(), theirs.keySet());
        ours.forEach((name, warping) -> {
            String[] row = Objects.requireNonNull(theirs.get(name));
            double distance = Double.parseDouble(row[1]);
            WarpingPath path = warping.align(SINE, COSINE);
            assertEquals(distance, path.distance(), 1e-10 * distance, name);
            assertEquals(Double.parseDouble(row[2]), path.normalisedDistance(), 1e-10, name);
            assertEquals(distance, warping.distance(SINE, COSINE), 1e-10 * distance, name);
            int[] query = positions(row[3]);
            int[] reference = positions(row[4]);
            assertEquals(
                    costAlong(query, reference, SINE, COSINE),
                    costAlong(path.queries(), path.references(), SINE, COSINE),
                    1e-9,
                    name);
        });
    }

    @RepeatedTest(30)
    @Tag("holds-for-any")
    void theQuickSweepGivesTheDistanceOfThePath(RepetitionInfo repetition) {
        SplittableRandom random = new SplittableRandom(repetition.getCurrentRepetition());
        double[] a = walk(random, 2 + random.nextInt(60));
        double[] b = walk(random, 2 + random.nextInt(60));
        int gap = Math.abs(a.length - b.length);
        for (Window window :
                List.of(Window.full(), Window.band(gap + random.nextInt(6)), Window.slantedBand(gap + 2))) {
            for (StepPattern pattern : List.of(StepPattern.SYMMETRIC1, StepPattern.SYMMETRIC2)) {
                for (LocalCost cost : LocalCost.values()) {
                    for (Compared compared :
                            a.length > 2 && b.length > 2 ? Compared.values() : new Compared[] {Compared.VALUES}) {
                        DynamicTimeWarping warping = DynamicTimeWarping.of(pattern)
                                .withWindow(window)
                                .withCost(cost)
                                .withCompared(compared);
                        double[] x = compared.of(a);
                        double[] y = compared.of(b);
                        double path = warping.align(a, b).distance();
                        // The table of costs goes through the general search: another route to the same distance.
                        double[][] costs = new double[x.length][y.length];
                        for (int i = 0; i < x.length; i++) {
                            for (int j = 0; j < y.length; j++) {
                                costs[i][j] = cost.of(x[i], y[j]);
                            }
                        }
                        assertEquals(warping.alignCosts(costs).distance(), path, 1e-12 * (1 + path));
                        assertEquals(path, warping.distance(a, b), 1e-12 * (1 + path));
                        assertEquals(
                                path,
                                warping.withPruning(Pruning.UPPER_BOUND).distance(a, b),
                                1e-12 * (1 + path),
                                "pruned, " + warping);
                    }
                }
            }
        }
    }

    @RepeatedTest(10)
    @Tag("holds-for-any")
    void symmetricPatternsDoNotCareWhichCurveComesFirst(RepetitionInfo repetition) {
        SplittableRandom random = new SplittableRandom(100 + repetition.getCurrentRepetition());
        double[] a = walk(random, 40);
        double[] b = walk(random, 50);
        for (StepPattern pattern : List.of(StepPattern.SYMMETRIC1, StepPattern.SYMMETRIC2, StepPattern.SYMMETRIC_P1)) {
            DynamicTimeWarping warping = DynamicTimeWarping.of(pattern);
            assertEquals(warping.distance(a, b), warping.distance(b, a), 1e-10);
            assertEquals(0, warping.distance(a, a));
        }
    }

    @Test
    @Tag("holds-for-any")
    void everyPatternInEveryWindowLeavesACurveAtNoDistanceFromItself() {
        double[] curve = walk(new SplittableRandom(17), 40);
        for (StepPattern pattern : StepPattern.values()) {
            for (Window window :
                    List.of(Window.full(), Window.band(3), Window.slantedBand(3), Window.parallelogram())) {
                assertEquals(
                        0,
                        DynamicTimeWarping.of(pattern).withWindow(window).distance(curve, curve),
                        pattern + " in a " + window);
            }
        }
    }

    @Test
    void slopesFollowTheFormulaOfKeoghAndPazzani() {
        // ((4-1) + (9-1)/2)/2 = 3.5, ((9-4) + (16-4)/2)/2 = 5.5, as in their section 3.
        assertArrayEquals(new double[] {3.5, 3.5, 5.5, 5.5}, Compared.SLOPES.of(new double[] {1, 4, 9, 16}));
    }

    @Test
    void comparingSlopesIgnoresTheLevel() {
        double[] raised = Arrays.stream(SINE).map(v -> v + 40).toArray();
        DynamicTimeWarping slopes =
                DynamicTimeWarping.of(StepPattern.SYMMETRIC1).withCompared(Compared.SLOPES);
        assertEquals(0, slopes.distance(SINE, raised), 1e-10);
        assertTrue(DynamicTimeWarping.of(StepPattern.SYMMETRIC1).distance(SINE, raised) > 1000);
    }

    @Test
    void allPairsAreTheSinglePairs() {
        SplittableRandom random = new SplittableRandom(7);
        List<double[]> curves = List.of(walk(random, 30), walk(random, 41), walk(random, 25), walk(random, 33));
        for (StepPattern pattern : List.of(StepPattern.SYMMETRIC2, StepPattern.SYMMETRIC_P1)) {
            DynamicTimeWarping warping = DynamicTimeWarping.of(pattern).withPruning(Pruning.UPPER_BOUND);
            DistanceTable table = warping.distances(curves);
            for (int i = 0; i < 4; i++) {
                for (int j = 0; j < 4; j++) {
                    assertEquals(
                            i == j ? 0 : warping.distance(curves.get(i), curves.get(j)), table.distance(i, j), 1e-9);
                }
            }
        }
    }

    @Test
    void aPathBecomesAWarpThatCanBeTurnedRound() {
        double[] late = Arrays.stream(X).map(x -> Math.sin(x * x / 6.28)).toArray();
        Warp warp =
                DynamicTimeWarping.of(StepPattern.SYMMETRIC2).align(late, SINE).warp(X, X);
        assertEquals(0, warp.at(0), 1e-12);
        assertEquals(6.28, warp.at(6.28), 1e-12);
        for (double t : new double[] {2, 3, 4, 5, 6}) {
            assertEquals(t * t / 6.28, warp.at(t), 0.12);
            assertEquals(t, warp.inverse().at(warp.at(t)), 1e-9);
        }
    }

    @Test
    void saysWhichSampleIsMissing() {
        assertEquals(
                "Dynamic time warping needs every sample of the reference, but sample 2 is missing."
                        + " Fill the gap or cut the curve there first.",
                message(() -> DynamicTimeWarping.of(StepPattern.SYMMETRIC2)
                        .distance(new double[] {1, 2}, new double[] {1, Double.NaN})));
    }

    @Test
    void saysThatNoPathFitsTheWindow() {
        DynamicTimeWarping narrow =
                DynamicTimeWarping.of(StepPattern.SYMMETRIC2).withWindow(Window.band(1));
        double[] three = {1, 2, 3};
        double[] nine = new double[9];
        assertTrue(message(() -> narrow.distance(three, nine)).startsWith("No warping path leads"));
        assertEquals(message(() -> narrow.distance(three, nine)), message(() -> narrow.align(three, nine)));
        assertEquals(
                message(() -> narrow.distance(three, nine)),
                message(() -> narrow.withPruning(Pruning.UPPER_BOUND).distance(three, nine)));
    }

    @Test
    void refusesAnOpenBeginningUnderASymmetricPattern() {
        assertTrue(message(() -> DynamicTimeWarping.of(StepPattern.SYMMETRIC2).withEndpoints(Endpoints.OPEN_BOTH))
                .contains("favour short stretches"));
        assertTrue(message(() -> DynamicTimeWarping.of(StepPattern.SYMMETRIC1).withEndpoints(Endpoints.OPEN_END))
                .contains("symmetric1"));
    }

    private static double costAlong(int[] query, int[] reference, double[] a, double[] b) {
        double sum = 0;
        for (int k = 0; k < query.length; k++) {
            double d = Math.abs(a[query[k]] - b[reference[k]]);
            int moved = k == 0 ? 1 : query[k] - query[k - 1] + reference[k] - reference[k - 1];
            sum += d * Math.min(2, moved);
        }
        return sum;
    }

    private static double[] walk(SplittableRandom random, int length) {
        double[] values = new double[length];
        double level = 0;
        for (int i = 0; i < length; i++) {
            level += random.nextDouble() - 0.45;
            values[i] = level;
        }
        return values;
    }

    private static double[] grid(int points, double end) {
        double[] x = new double[points];
        for (int i = 0; i < points; i++) {
            x[i] = i * end / (points - 1);
        }
        return x;
    }

    private static Map<String, String[]> reference() throws IOException {
        Map<String, String[]> rows = new LinkedHashMap<>();
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(
                        DynamicTimeWarpingTest.class.getResourceAsStream("/reference/dtw/sine-against-cosine.csv")),
                StandardCharsets.UTF_8))) {
            reader.lines()
                    .filter(line -> !line.startsWith("#") && !line.startsWith("case,"))
                    .map(line -> line.split(",", -1))
                    .forEach(row -> rows.put(row[0], row));
        }
        return rows;
    }

    private static int[] positions(String text) {
        return Arrays.stream(text.split(" ", -1))
                .mapToInt(s -> Integer.parseInt(s) - 1)
                .toArray();
    }

    private static String message(org.junit.jupiter.api.function.Executable job) {
        return Objects.requireNonNull(
                assertThrows(IllegalArgumentException.class, job).getMessage());
    }
}
