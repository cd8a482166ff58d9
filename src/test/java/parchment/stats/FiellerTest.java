package parchment.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;

/** No printed example was at hand: the check is the direct inversion of the t test, value by value. */
class FiellerTest {

    @RepeatedTest(60)
    void holdsExactlyTheValuesThatATTestDoesNotReject(RepetitionInfo info) {
        SplittableRandom random = new SplittableRandom(info.getCurrentRepetition());
        double a = random.nextDouble(-3, 3);
        double b = random.nextDouble(-3, 3);
        double va = random.nextDouble(0.05, 2);
        double vb = random.nextDouble(0.05, 2);
        double cab = random.nextDouble(-0.95, 0.95) * Math.sqrt(va * vb);
        double df = random.nextDouble(3, 40);
        Fieller set = Fieller.of(a, b, va, cab, vb, df, 0.90);
        for (double r = -50; r <= 50; r += 0.413) {
            double t = (a - r * b) / Math.sqrt(va - 2 * r * cab + r * r * vb);
            boolean kept = Quantiles.tProbability(t, df) >= 0.10;
            assertEquals(kept, set.contains(r), "r = " + r + " in " + set);
        }
        assertTrue(set.contains(set.ratio()));
    }

    @Test
    void takesAllThreeForms() {
        assertEquals(Fieller.Form.BETWEEN, Fieller.of(2, 10, 1, 0, 1, 20, 0.95).form());
        assertEquals(Fieller.Form.OUTSIDE, Fieller.of(10, 1, 1, 0, 1, 20, 0.95).form());
        assertEquals(
                Fieller.Form.EVERYTHING, Fieller.of(0.5, 1, 1, 0, 1, 20, 0.95).form());
    }

    /** With a denominator known without error the set is the plain t interval divided by it. */
    @Test
    void becomesThePlainIntervalWhenTheDenominatorIsKnown() {
        Fieller set = Fieller.of(3, 2, 0.25, 0, 0, 12, 0.95);
        // 2.1788 is the 97.5 % point of t with 12 degrees of freedom in every table.
        assertEquals(1.5 - 2.178812829667229 * 0.5 / 2, set.lower(), 1e-9);
        assertEquals(1.5 + 2.178812829667229 * 0.5 / 2, set.upper(), 1e-9);
    }

    @Test
    void cutsItselfToARange() {
        Fieller outside = Fieller.of(10, 1, 1, 0, 1, 20, 0.95);
        List<Interval> parts = outside.within(outside.lower() - 1, outside.upper() + 1);
        assertEquals(2, parts.size());
        assertEquals(outside.lower(), parts.get(0).upper());
        assertTrue(
                outside.within(outside.lower() + 1e-6, outside.upper() - 1e-6).isEmpty());
    }

    @Test
    void saysWhatACovarianceMustBe() {
        assertThrows(IllegalArgumentException.class, () -> Fieller.of(1, 1, 1, 2, 1, 10, 0.9));
        assertThrows(IllegalArgumentException.class, () -> Fieller.of(1, Double.NaN, 1, 0, 1, 10, 0.9));
        assertThrows(IllegalArgumentException.class, () -> Fieller.of(1, 1, 1, 0, 1, 0, 0.9));
    }

    @Test
    void findsThePeakOfAParabolaOnTheOriginalScale() {
        // 3 - (x - 204)^2 / 8 around the center 200: b1 = 1, b2 = -1/8.
        double[][] covariance = {{1e-4, 0}, {0, 1e-6}};
        QuadraticPeak peak = QuadraticPeak.of(1, -0.125, covariance, 30, 0.90, 200, new Interval(195, 212, 1));
        assertEquals(204, peak.location(), 1e-12);
        assertTrue(peak.set().contains(204));
        assertEquals(QuadraticPeak.Shape.MAXIMUM, peak.shape());
        assertEquals(QuadraticPeak.Place.INSIDE, peak.place());
        assertEquals(
                QuadraticPeak.Place.OUTSIDE,
                QuadraticPeak.of(1, -0.125, covariance, 30, 0.90, 200, new Interval(195, 202, 1))
                        .place());
    }

    @Test
    void admitsThatAStraightLineHasNoPeak() {
        double[][] covariance = {{0.04, 0}, {0, 0.01}};
        QuadraticPeak peak = QuadraticPeak.of(0.05, -0.01, covariance, 30, 0.90, 200, new Interval(195, 205, 1));
        assertEquals(QuadraticPeak.Shape.UNDECIDED, peak.shape());
        assertEquals(QuadraticPeak.Place.ANYWHERE, peak.place());
        assertTrue(peak.toString().contains("cannot tell whether there is a highest or a lowest point"));
    }

    /** Every repetition counts, also those whose set has no end: 90 % within Monte-Carlo error (0.7 points at 2,000). */
    @Test
    void setsOfPeaksCoverAsStatedBoundedOrNot() {
        SplittableRandom random = new SplittableRandom(31);
        int covered = 0;
        int unbounded = 0;
        for (int i = 0; i < 2000; i++) {
            double b1 = 0.4 + 0.2 * random.nextGaussian();
            double b2 = -0.1 + 0.06 * random.nextGaussian();
            Fieller set = QuadraticPeak.of(
                            b1,
                            b2,
                            new double[][] {{0.04, 0}, {0, 0.0036}},
                            Double.POSITIVE_INFINITY,
                            0.90,
                            0,
                            new Interval(-5, 5, 1))
                    .set();
            covered += set.contains(2) ? 1 : 0;
            unbounded += set.form() == Fieller.Form.BETWEEN ? 0 : 1;
        }
        assertEquals(0.90, covered / 2000.0, 0.014);
        assertTrue(unbounded > 200);
    }
}
