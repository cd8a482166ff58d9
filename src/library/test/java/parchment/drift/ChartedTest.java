package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChartedTest {
    @Test
    void theWeightedMeanTakesAFifthOfTheNewestRow() {
        assertArrayEquals(new double[] {0.2, 0.16, -0.272}, Charted.weightedMeans(new double[] {1, 0, -2}), 1e-12);
    }

    @Test
    void aSumGrowsByWhatIsBeyondHalfAStandardDeviationAndNeverFallsBelowNone() {
        double[] u = {1, 2, -0.5, -3, 0.75};
        assertArrayEquals(new double[] {0.5, 2, 1, 0, 0.25}, Charted.sums(u, 1), 1e-12);
        assertArrayEquals(new double[] {0, 0, 0, 2.5, 1.25}, Charted.sums(u, -1), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({"0,0", "1,1", "9,1", "10,1", "11,2", "20,2", "21,3"})
    void everyTenRowsAreABlockAndTheRestIsOne(int rows, int blocks) {
        assertEquals(blocks, Charted.blocks(rows));
    }

    @Test
    void theHighestOfABlockIsTheOneFarthestFromNone() {
        double[] u = {1, -3, 2, 0, 0, 0, 0, 0, 0, 0.5, 1.5, -1, 0};
        assertArrayEquals(new double[] {Math.log(3), Math.log(1.5)}, Charted.highest(u), 1e-12);
        assertArrayEquals(new double[][] {{Math.log(3), Math.log(1.5)}}, Charted.single(u));
        assertArrayEquals(new double[] {Math.log(1e-9)}, Charted.highest(new double[3]), "finite where nothing was");
    }

    @Test
    void aShiftIsLookedForInTheWeightedMeanAndInTheSumOfTheFartherSide() {
        double[] u = {2, 0, 0, 0, 0, 0, 0, 0, 0, 0, -4, 0};
        double[][] charts = Charted.shift(u);
        assertEquals(2, charts.length);
        assertArrayEquals(new double[] {Math.log(0.4), Math.log(0.8 - 0.4 * Math.pow(0.8, 10))}, charts[0], 1e-12);
        assertArrayEquals(new double[] {Math.log(1.5), Math.log(3.5)}, charts[1], 1e-12);
    }
}
