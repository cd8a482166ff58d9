package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Holds when scores are looked at as steps too, one row on each side of each threshold, and how rare steps are joined. */
class ScoreStepsTest {
    /** Returns so many scores of 1, of 2 and so on. */
    private static double[] scores(int... counts) {
        List<Double> scores = new ArrayList<>();
        for (int i = 0; i < counts.length; i++) {
            for (int k = 0; k < counts[i]; k++) {
                scores.add(i + 1.0);
            }
        }
        return scores.stream().mapToDouble(Double::doubleValue).toArray();
    }

    @Test
    void sevenValuesAreFewAndEightAreNot() {
        assertTrue(ScoreSteps.of(scores(10, 15, 15, 20, 15, 15, 10)).asked());
        assertFalse(ScoreSteps.of(scores(10, 10, 15, 15, 15, 15, 10, 10)).asked());
    }

    @Test
    void fiveOddScoresInAHundredMakeNoFineScaleAndSixDo() {
        assertTrue(ScoreSteps.of(scores(5, 13, 15, 18, 17, 15, 12, 5)).asked());
        assertFalse(ScoreSteps.of(scores(6, 12, 15, 18, 17, 15, 11, 6)).asked());
    }

    @Test
    void anEndIsPressedByMoreThanFifteenInAHundred() {
        assertFalse(ScoreSteps.of(scores(7, 8, 8, 8, 8, 8, 8, 10, 10, 10, 15)).asked());
        assertTrue(ScoreSteps.of(scores(7, 8, 8, 8, 8, 8, 8, 10, 10, 9, 16)).asked());
        assertFalse(ScoreSteps.of(scores(15, 8, 8, 8, 8, 8, 8, 10, 10, 10, 7)).asked());
        assertTrue(ScoreSteps.of(scores(16, 8, 8, 8, 8, 8, 8, 10, 10, 9, 7)).asked());
    }

    @Test
    void saysWhy() {
        assertEquals(
                "100 % of the scores take one of 7 values.",
                ScoreSteps.of(scores(10, 15, 15, 20, 15, 15, 10)).words());
        assertEquals(
                "16 % stand on 11, the highest given.",
                ScoreSteps.of(scores(7, 8, 8, 8, 8, 8, 8, 10, 10, 9, 16)).words());
        assertEquals(
                "100 % of the scores take one of 3 values, 40 % stand on 3, the highest given and 20 % stand on 1, the lowest given.",
                ScoreSteps.of(scores(20, 40, 40)).words());
        assertEquals("", ScoreSteps.of(scores(10, 10, 15, 15, 15, 15, 10, 10)).words());
        assertEquals("", ScoreSteps.of(new double[0]).words());
    }

    @Test
    void aStepWithFewerThanFiveScoresJoinsItsNearerNeighbour() {
        double[] four = ScoreSteps.joined(new double[] {1, 1, 1, 1, 1, 2, 2, 2, 2, 4, 4, 4, 4, 4});
        assertArrayEquals(
                new double[] {
                    13 / 9.0, 13 / 9.0, 13 / 9.0, 13 / 9.0, 13 / 9.0, 13 / 9.0, 13 / 9.0, 13 / 9.0, 13 / 9.0, 4, 4, 4,
                    4, 4
                },
                four,
                1e-12);
        double[] five = {1, 1, 1, 1, 1, 2, 2, 2, 2, 2, 4, 4, 4, 4, 4};
        assertArrayEquals(five, ScoreSteps.joined(five));
        assertArrayEquals(
                new double[] {1, 1, 1, 1, 1, 3.8, 3.8, 3.8, 3.8, 3.8},
                ScoreSteps.joined(new double[] {1, 1, 1, 1, 1, 3, 4, 4, 4, 4}),
                1e-12);
    }

    @Test
    void atMostTwelveStepsAreToldApartAndTheMeanOfAllScoresStays() {
        double[] thirteen = scores(6, 6, 6, 6, 5, 6, 6, 6, 6, 6, 6, 6, 6);
        double[] joined = ScoreSteps.joined(thirteen);
        assertEquals(12, ScoreSteps.of(joined).usual());
        assertEquals(mean(thirteen), mean(joined), 1e-12);
        double[] twelve = scores(6, 6, 6, 6, 5, 6, 6, 6, 6, 6, 6, 6);
        assertArrayEquals(twelve, ScoreSteps.joined(twelve));
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }
}
