package parchment.stats.series;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class LevelChangesTest {
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
    void agreesWithReferenceProgramsForEveryNumberOfChanges() {
        double[] values = Reference.column("three-changes.csv", "y");
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
    void noOtherSplitIsBetter() {
        Random random = new Random(20261125);
        for (int round = 0; round < 40; round++) {
            int n = 8 + random.nextInt(12);
            int shortest = 1 + random.nextInt(2);
            double[] values = random.doubles(n).toArray();
            LevelChanges exact = LevelChanges.exact(values, shortest, 2);
            double one = Double.POSITIVE_INFINITY;
            double two = Double.POSITIVE_INFINITY;
            for (int first = shortest; first <= n - shortest; first++) {
                one = Math.min(one, squares(values, 0, first) + squares(values, first, n));
                for (int second = first + shortest; second <= n - shortest; second++) {
                    double sum =
                            squares(values, 0, first) + squares(values, first, second) + squares(values, second, n);
                    two = Math.min(two, sum);
                }
            }
            assertEquals(squares(values, 0, n), exact.sumOfSquares(0), 1e-12);
            assertEquals(one, exact.sumOfSquares(1), 1e-12);
            assertEquals(two, exact.sumOfSquares(2), 1e-12);
        }
    }

    private static double squares(double[] values, int from, int to) {
        double mean = Arrays.stream(values, from, to).average().orElseThrow();
        return Arrays.stream(values, from, to).map(v -> (v - mean) * (v - mean)).sum();
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
    @Tag("says")
    void saysWhichValueIsMissing() {
        String message = assertThrows(
                        IllegalArgumentException.class, () -> LevelChanges.exact(new double[] {1, Double.NaN, 3}, 1, 1))
                .getMessage();
        assertEquals("A search for changes needs every value, but value 2 is missing. Leave it out first.", message);
    }

    @Test
    @Tag("says")
    void saysWhatItFoundInOneSentence() {
        assertEquals(
                "100 values: 1 change of level by the information criterion, after value 28",
                LevelChanges.exact(Reference.column("nile.csv", "flow"), 15, 5).toString());
        assertEquals(
                "value 29, above the usual (5.28 on the chart)", new Signal(29, 5.28, Signal.Side.ABOVE).toString());
        assertEquals("value 3, below the usual (-4 on the chart)", new Signal(3, -4, Signal.Side.BELOW).toString());
    }
}
