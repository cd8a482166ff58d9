package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class LikelyRateTest {
    /** Of two kinds the first is held to be likely by 0.8 where it is, the second by 0.7. */
    private static final double[][] TAKEN = {{0.8, 0.2}, {0.3, 0.7}};

    private static LikelyRate rate(double first, double second) {
        return new LikelyRate(new double[] {first, second}, TAKEN, new double[] {0.4, 0.6});
    }

    @Test
    void aRateIsCorrectedForKindsTakenForEachOther() {
        // 0.8 a + 0.2 b = 0.18 and 0.3 a + 0.7 b = 0.38: a = 0.1, b = 0.5.
        LikelyRate rate = rate(0.18, 0.38);
        assertEquals(0.1, rate.rate(new double[] {1, 0}), 1e-3);
        assertEquals(0.5, rate.rate(new double[] {0, 1}), 1e-3);
        assertEquals(0.18, rate.rate(TAKEN[0]), 1e-3);
        assertEquals(0.38, rate.rate(TAKEN[1]), 1e-3);
    }

    @Test
    void whatNeverOrAlwaysHappensDoesSoInEveryKind() {
        assertEquals(0, rate(0, 0).rate(new double[] {0.5, 0.5}));
        assertEquals(1, rate(1, 1).rate(new double[] {0.5, 0.5}), 1e-9);
        assertEquals(1, rate(1, 1).rate(new double[] {1, 0}), 1e-9);
    }

    /** The repeated step climbs to the highest Poisson likelihood (Vardi, Shepp and Kaufman 1985, J. Amer. Statist. Assoc. 80:8; from memory). */
    @Test
    void whereTheKindsWouldNeedARateBelowZeroItIsZero() {
        // 0.8 a + 0.2 b = 0.1 and 0.3 a + 0.7 b = 0.9 would make a = -0.22. At a = 0: b = (0.4 * 0.1 + 0.6 * 0.9) /
        // (0.4 * 0.2 + 0.6 * 0.7).
        LikelyRate clear = rate(0.1, 0.9);
        assertEquals(0, clear.rate(new double[] {1, 0}), 1e-6);
        assertEquals(0.58, clear.rate(new double[] {0, 0.5}), 1e-6);
        assertEquals(1, clear.rate(new double[] {0, 1}), "no rate is above one");
    }

    @Test
    void whereStretchesTellNothingEveryKindHasTheMean() {
        double[][] taken = {{0.5, 0.5}, {0.5, 0.5}};
        LikelyRate rate = new LikelyRate(new double[] {0, 0.5}, taken, new double[] {0.4, 0.6});
        assertEquals(0.3, rate.rate(new double[] {0, 1}), 1e-12);
        assertEquals(0.3, rate.rate(new double[] {1, 0}), 1e-12);
    }
}
