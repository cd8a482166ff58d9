package parchment.lesson.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.lesson.sheet.Grade.Telling;

class GradeTest {
    @Test
    void aNarrowerIntervalThatHoldsTheTruthEarnsMore() {
        double wide = Grade.of(StatedClaim.between(-0.3, 0.3), 0.1, 1, Telling.CAN_TELL)
                .points();
        double narrow =
                Grade.of(StatedClaim.between(0, 0.2), 0.1, 1, Telling.CAN_TELL).points();
        assertEquals(4, wide, 1e-12);
        assertEquals(8, narrow, 1e-12);
    }

    @Test
    void aMissCostsTwentyTimesItsDistance() {
        double missed =
                Grade.of(StatedClaim.between(0, 0.2), 0.21, 1, Telling.CAN_TELL).points();
        assertEquals(10 * (1 - 0.2 - 20 * 0.01), missed, 1e-9);
        assertEquals(
                0, Grade.of(StatedClaim.between(0, 0.2), 5, 1, Telling.CAN_TELL).points());
    }

    @Test
    void rightlySayingCannotTellEarnsFullMarks() {
        assertEquals(
                10,
                Grade.of(StatedClaim.cannotTell(), 3, 1, Telling.CANNOT_TELL).points());
        assertEquals(
                2, Grade.of(StatedClaim.cannotTell(), 3, 1, Telling.CAN_TELL).points());
    }

    @Test
    void anIntervalThatSaysNothingEarnsNothing() {
        Grade grade = Grade.of(StatedClaim.between(-1, 1), 0, 2, Telling.CAN_TELL);
        assertEquals(0, grade.points());
        assertTrue(grade.words().contains("says nothing"));
    }

    /**
     * Gneiting and Raftery (2007), section 6.2: without a cut the score is best, on average, for the true 5 % and 95 % quantiles, 1.645
     * standard deviations to either side. Far from the cut that is so.
     */
    @Test
    void honestIntervalsEarnMostWhereTheCutIsFar() {
        double honest = meanPoints(1.645, 20);
        assertTrue(honest > meanPoints(1.0, 20), "narrower earns more");
        assertTrue(honest > meanPoints(2.5, 20), "wider earns more");
    }

    /** The table of docs/class.md: best half-width in standard deviations of the belief, what it earns, what the honest one earns. */
    @ParameterizedTest
    @CsvSource({"4, 0.81, 3.7, 1.6", "8, 1.23, 5.7, 5.4", "12, 1.43, 6.9, 6.8", "20, 1.58, 8.0, 8.0"})
    void theCutAtZeroFavoursNarrowerGuessesOfThoseWhoKnowLittle(
            double sayingNothing, double best, double bestEarns, double honestEarns) {
        assertEquals(bestEarns, meanPoints(best, sayingNothing), 0.06);
        assertEquals(honestEarns, meanPoints(1.645, sayingNothing), 0.06);
        assertTrue(meanPoints(best, sayingNothing) > meanPoints(best - 0.15, sayingNothing));
        assertTrue(meanPoints(best, sayingNothing) > meanPoints(best + 0.15, sayingNothing));
    }

    /** Points that a normal belief earns on average, by the midpoints of narrow steps of its quantiles. */
    private static double meanPoints(double half, double sayingNothing) {
        int steps = 20_000;
        NormalDistribution belief = new NormalDistribution();
        double sum = 0;
        for (int i = 0; i < steps; i++) {
            double truth = belief.inverseCumulativeProbability((i + 0.5) / steps);
            sum += Grade.of(StatedClaim.between(-half, half), truth, sayingNothing, Telling.CAN_TELL)
                    .points();
        }
        return sum / steps;
    }

    @Test
    void saysWhenTheEndsAreTheWrongWayRound() {
        assertTrue(assertThrows(IllegalArgumentException.class, () -> StatedClaim.between(2, 1))
                .getMessage()
                .contains("from its lower to its upper end"));
    }
}
