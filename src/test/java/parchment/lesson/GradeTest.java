package parchment.lesson;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import parchment.lesson.Grade.Telling;

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

    /** Gneiting and Raftery (2007), section 6.2: the score is best, on average, for the true 5 % and 95 % quantiles. */
    @Test
    void honestIntervalsEarnMostInTheLongRun() {
        double honest = meanPoints(1.645);
        assertTrue(honest > meanPoints(1.0), "narrower earns more");
        assertTrue(honest > meanPoints(2.5), "wider earns more");
    }

    private static double meanPoints(double half) {
        SplittableRandom random = new SplittableRandom(11);
        double sum = 0;
        for (int i = 0; i < 20_000; i++) {
            double truth = random.nextGaussian();
            sum += Grade.of(StatedClaim.between(-half, half), truth, 20, Telling.CAN_TELL)
                    .points();
        }
        return sum / 20_000;
    }

    @Test
    void saysWhenTheEndsAreTheWrongWayRound() {
        assertTrue(assertThrows(IllegalArgumentException.class, () -> StatedClaim.between(2, 1))
                .getMessage()
                .contains("from its lower to its upper end"));
    }
}
