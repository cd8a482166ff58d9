package parchment.curve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import parchment.quantity.Unit;

class ControlStepsTest {
    private static Curve gas(DoubleUnaryOperator level) {
        Curve sampled = CleanCurveTest.sampled(level, 0, 600, 2, 0);
        return Curve.of("gas", Unit.labelled("%"), sampled.seconds(), sampled.values());
    }

    @Test
    void listsEachMoveWithItsLevels() {
        ControlSteps steps = ControlSteps.of(gas(t -> t < 300 ? 100 : t < 420 ? 70 : 80));
        assertEquals(
                List.of(new ControlSteps.Step(300, 300, 100, 70), new ControlSteps.Step(420, 420, 70, 80)),
                steps.list());
        assertEquals("gas: moved 2 times", steps.toString());
        assertEquals(-30, steps.list().get(0).change());
    }

    @Test
    void takesASlowTurnForOneMove() {
        // From 100 to 40 within 30 s, as a valve is turned.
        ControlSteps steps = ControlSteps.of(gas(t -> t < 300 ? 100 : t > 330 ? 40 : 100 - 2 * (t - 300)));
        assertEquals(1, steps.list().size());
        assertEquals(100, steps.list().get(0).from());
        assertEquals(40, steps.list().get(0).to(), 4);
        assertEquals(302, steps.list().get(0).atSeconds());
    }

    @Test
    void doesNotCountAChangeThatComesBack() {
        assertTrue(
                ControlSteps.of(gas(t -> t == 300 || t == 304 ? 41 : 40)).list().isEmpty());
    }

    @Test
    void doesNotCountTheNoiseOfAGauge() {
        Random random = new Random(1);
        ControlSteps steps = ControlSteps.of(gas(t -> (t < 300 ? 20 : 14) + 0.2 * random.nextGaussian()));
        assertEquals(1, steps.list().size(), steps.text());
        assertEquals(300, steps.list().get(0).atSeconds());
        assertEquals(-6, steps.list().get(0).change(), 0.5);
    }

    @Test
    void readsALogThatHoldsOnlyTheChanges() {
        Curve sparse =
                Curve.of("gas", Unit.labelled("%"), new double[] {0, 372, 388, 500}, new double[] {100, 80, 60, 60});
        assertEquals(
                List.of(new ControlSteps.Step(372, 372, 100, 80), new ControlSteps.Step(388, 388, 80, 60)),
                ControlSteps.of(sparse).list());
    }

    @Test
    void countsOnlyChangesAboveTheSmallestAskedFor() {
        Curve twice = gas(t -> t < 200 ? 100 : t < 400 ? 95 : 60);
        assertEquals(2, ControlSteps.of(twice).list().size());
        assertEquals(1, ControlSteps.of(twice, 10).list().size());
        assertThrows(IllegalArgumentException.class, () -> ControlSteps.of(twice, -1));
    }

    @Test
    void meetsAControlThatWasNeverMovedOrReadOnce() {
        assertTrue(ControlSteps.of(gas(t -> 50)).list().isEmpty());
        Curve once = Curve.of("gas", Unit.labelled("%"), new double[] {3}, new double[] {50});
        assertEquals("gas: moved 0 times", ControlSteps.of(once).text());
    }
}
