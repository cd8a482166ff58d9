package parchment.stats.process;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChartsOfAProcessTest {
    /** NIST/SEMATECH e-Handbook of Statistical Methods 6.3.2.4, values and printed results from memory. */
    private static final double[] EWMA_VALUES = {
        52, 47, 53, 49.3, 50.1, 47, 51, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1
    };

    /** e-Handbook 6.3.2.3, values from memory. */
    private static final double[] CUSUM_VALUES = {
        324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600, 324.625, 325.150,
        328.325, 327.250, 327.825, 328.500, 326.675, 327.775, 326.875, 328.350
    };

    @Test
    @Tag("agrees-with")
    void agreesWithNistFlowRates() {
        // e-Handbook 6.3.2.2, values from memory: mean 50.81, mean moving range 1.8778, limits 45.8159 and 55.8041 with
        // d2 = 1.128.
        IndividualsChart chart = IndividualsChart.of(Arrays.copyOfRange(EWMA_VALUES, 10, 20));
        assertEquals(50.81, chart.center(), 1e-9);
        assertEquals(1.8778 / 1.128, chart.standardDeviation(), 1e-3);
        assertEquals(55.8041, chart.upperLimit(), 2e-3);
        assertEquals(45.8159, chart.lowerLimit(), 2e-3);
        assertTrue(chart.signals().isEmpty());
    }

    @Test
    @Tag("agrees-with")
    void weightedMeansAgreeWithTheNistExample() {
        double[] printed = {
            50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38,
            49.92, 50.73, 51.23, 51.94, 51.99
        };
        EwmaChart chart = EwmaChart.of(EWMA_VALUES, 50, 2.0539).with(0.3, 3).with(EwmaChart.Limits.SETTLED);
        assertArrays(printed, chart.charted(), 0.005);
        assertEquals(52.5884 - 50, chart.halfWidth(20), 1e-4);
        assertTrue(chart.signals().isEmpty());
    }

    @Test
    @Tag("agrees-with")
    void sumsAgreeWithTheNistExample() {
        CusumChart chart = CusumChart.of(CUSUM_VALUES, 325, 1).with(0.3175, 4.1959);
        double[] up = {3.0075, 4.9400, 7.4475, 10.6300, 11.9875, 14.4450, 16.0025, 19.0350};
        double[] down = {0, 0.0075, 0, 0.3325, 0, 0, 0.5575, 0.7150, 0.1725, 0.2550, 0.3125, 0};
        assertArrays(up, Arrays.copyOfRange(chart.above(), 12, 20), 1e-9);
        assertArrays(down, Arrays.copyOf(chart.below(), 12), 1e-9);
        assertEquals(14, chart.signals().get(0).position());
        assertEquals(13, chart.began(chart.signals().get(0)));
    }

    @Test
    @Tag("agrees-with")
    void agreesWithTheWorkedExampleOfMontgomery() {
        double[] values = Reference.column("montgomery.csv", "x");
        CusumChart sums = CusumChart.of(values, 10, 1);
        assertArrays(new double[] {4.47, 5.28, 5.30}, Arrays.copyOfRange(sums.above(), 27, 30), 1e-9);
        assertEquals(29, sums.signals().get(0).position());
        assertEquals(23, sums.began(sums.signals().get(0)));
        EwmaChart means = EwmaChart.of(values, 10, 1).with(0.1, 2.7);
        assertArrays(
                new double[] {10.57313717, 10.64682345, 10.63414111},
                Arrays.copyOfRange(means.charted(), 27, 30),
                5e-9);
        assertEquals(0.6188656769, means.halfWidth(30), 5e-11);
        assertEquals(29, means.signals().get(0).position());
    }

    /** R package spc 0.6.7; the sums also stand in Montgomery's table 9.3, the means in Lucas and Saccucci 1990. */
    @ParameterizedTest
    @Tag("agrees-with")
    @CsvSource({"4, 167.68379, 26.630203, 8.3831319, 3.3427701", "5, 465.44351, 37.996143, 10.37597, 4.0088711"})
    void runLengthsOfSumsAgreeWithPublishedTables(double h, double at0, double atHalf, double at1, double at2) {
        RunLength length = RunLength.ofCusum(0.5, h);
        assertEquals(at0, length.at(0), at0 * 1e-6);
        assertEquals(atHalf, length.at(0.5), atHalf * 1e-6);
        assertEquals(at1, length.at(1), at1 * 1e-6);
        assertEquals(at2, length.at(-2), at2 * 1e-6);
    }

    @ParameterizedTest
    @Tag("agrees-with")
    @CsvSource({
        "0.1, 2.814, 499.57955, 31.297435, 10.330665, 4.3622534",
        "0.2, 2.962, 499.73512, 41.764396, 10.541666, 3.7434391"
    })
    void runLengthsOfWeightedMeansAgreeWithPublishedTables(
            double weight, double width, double at0, double atHalf, double at1, double at2) {
        RunLength length = RunLength.ofEwma(weight, width);
        assertEquals(at0, length.at(0), at0 * 1e-6);
        assertEquals(atHalf, length.at(-0.5), atHalf * 1e-6);
        assertEquals(at1, length.at(1), at1 * 1e-6);
        assertEquals(at2, length.at(2), at2 * 1e-6);
    }

    @Test
    @Tag("agrees-with")
    void limitsAtThreeSigmaGiveAFalseAlarmInThreeHundredAndSeventy() {
        assertEquals(370.398, RunLength.ofIndividuals(3).at(0), 5e-4); // 1 / 0.0027, in every textbook
        assertEquals(43.89, RunLength.ofIndividuals(3).at(1), 5e-3); // Montgomery, from memory
    }

    @Test
    @Tag("agrees-with")
    void theNileFellAfter1898() {
        double[] flows = Reference.column("nile.csv", "flow");
        LevelChanges changes = LevelChanges.exact(flows, 15, 5);
        double[] squares = {
            2835156.75, 1597457.19444444, 1552923.6157754, 1538096.5127451, 1507888.47591645, 1659993.50042626
        };
        double[] criteria = {
            1318.24180687618, 1270.08373573957, 1276.46670075535, 1284.71766744891, 1291.94447688727, 1310.7651547659
        };
        for (int k = 0; k < 6; k++) {
            assertEquals(squares[k], changes.sumOfSquares(k), squares[k] * 1e-12);
            assertEquals(criteria[k], changes.informationCriterion(k), 1e-9);
        }
        assertEquals(1, changes.fewest());
        assertEquals(List.of(28), changes.positions(1));
        assertEquals(1898, (int) Reference.column("nile.csv", "year")[27]);
    }

    @Test
    @Tag("agrees-with")
    void searchesWithAndWithoutPenaltyAgreeWithReferencePrograms() {
        double[] values = Reference.column("three-changes.csv", "y");
        PenalizedChanges penalized = PenalizedChanges.of(values, 1, 3 * Math.log(400));
        assertEquals(List.of(100, 203, 260), penalized.positions());
        assertEquals(368.857617990149, penalized.sumOfSquares(), 1e-8);
        LevelChanges exact = LevelChanges.exact(values, 10, 8);
        double[] squares = {
            501.9676208324,
            456.4615565624,
            405.93605046528,
            368.857617990149,
            365.369807388206,
            359.602932892945,
            354.114126944203,
            352.090682755095,
            347.46813791711
        };
        for (int k = 0; k < squares.length; k++) {
            assertEquals(squares[k], exact.sumOfSquares(k), 1e-8);
        }
        assertEquals(List.of(100, 203, 260), exact.positions(3));
    }

    @Test
    @Tag("holds-for-any")
    void penaltyAndCountLeadToTheSameSplits() {
        Random random = new Random(20261125);
        for (int round = 0; round < 60; round++) {
            int n = 30 + random.nextInt(60);
            int shortest = 1 + random.nextInt(6);
            double penalty = 0.5 + 6 * random.nextDouble();
            double level = 0;
            double[] values = new double[n];
            for (int i = 0; i < n; i++) {
                level = random.nextInt(15) == 0 ? 3 * random.nextGaussian() : level;
                values[i] = level + random.nextGaussian();
            }
            LevelChanges exact = LevelChanges.exact(values, shortest, n);
            double best = IntStream.rangeClosed(0, exact.most())
                    .mapToDouble(k -> exact.sumOfSquares(k) + k * penalty)
                    .min()
                    .orElseThrow();
            PenalizedChanges penalized = PenalizedChanges.of(values, shortest, penalty);
            assertEquals(best, penalized.sumOfSquares() + penalized.positions().size() * penalty, 1e-8);
        }
    }

    @Test
    @Tag("holds-for-any")
    void seriesThatChangeTogetherAreSplitTogetherDespiteMissingValues() {
        Random random = new Random(7);
        double[] first = new double[80];
        double[] second = new double[80];
        for (int i = 0; i < 80; i++) {
            first[i] = (i < 33 ? 0 : 1.6) + random.nextGaussian();
            second[i] = random.nextInt(3) == 0 ? Double.NaN : (i < 33 ? 0 : -1.6) + random.nextGaussian();
        }
        int found =
                LevelChanges.exact(List.of(first, second), 5, 1).positions(1).get(0);
        assertEquals(33, found, 2);
    }

    @Test
    @Tag("holds-for-any")
    void simulatedRunLengthsAreWhatTheChartsPromise() {
        Random random = new Random(11);
        double runs = 0;
        int repeats = 2000;
        for (int r = 0; r < repeats; r++) {
            double mean = 0;
            int n = 0;
            do {
                mean = 0.2 * (random.nextGaussian() + 1) + 0.8 * mean;
                n++;
            } while (Math.abs(mean) <= 2.962 * Math.sqrt(0.2 / 1.8));
            runs += n;
        }
        // The run length after a shift of 1 has a standard deviation of about 7, so the mean of 2,000 runs one of 0.16.
        assertEquals(RunLength.ofEwma(0.2, 2.962).at(1), runs / repeats, 0.5);
    }

    @Test
    @Tag("says")
    void saysWhichValueIsMissing() {
        String message = assertThrows(
                        IllegalArgumentException.class, () -> IndividualsChart.of(new double[] {1, Double.NaN, 3}))
                .getMessage();
        assertEquals("An individuals chart needs every value, but value 2 is missing. Leave it out first.", message);
    }

    @Test
    @Tag("says")
    void everyResultSaysWhatItIsInOneSentence() {
        double[] values = Reference.column("montgomery.csv", "x");
        assertEquals(
                "30 values, center 10.32, limits 6.717 to 13.91, 0 outside",
                IndividualsChart.of(values).toString());
        assertEquals(
                "30 values, sums of what is more than 0.5 from 10, limit 5, 2 outside",
                CusumChart.of(values, 10, 1).toString());
        assertEquals(
                "sums, allowance 0.5, decision interval 5: a false alarm every 465 values; a shift of one standard"
                        + " deviation is noticed after 10.4",
                RunLength.ofCusum(0.5, 5).toString());
        assertEquals(
                "value 29, above the usual (5.28 on the chart)",
                CusumChart.of(values, 10, 1).signals().get(0).toString());
    }

    private static void assertArrays(double[] expected, double[] found, double tolerance) {
        org.junit.jupiter.api.Assertions.assertArrayEquals(expected, found, tolerance);
    }
}
