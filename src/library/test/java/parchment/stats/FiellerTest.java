package parchment.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import parchment.stats.linear.Quantiles;
import parchment.stats.mixed.QuadraticPeak;

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

    /**
     * A denominator exactly t standard errors from 0 sends one end to infinity. By hand, with t of a known error at 90 %:
     * (n - r t)^2 <= t^2 (v + r^2) is r >= (n^2 - t^2 v) / (2 n t) for n above 0.
     */
    @Test
    void becomesAHalfLineOnTheSideOfTheRatio() {
        double t = Quantiles.tTwoSided(0.90, Double.POSITIVE_INFINITY);
        double end = (9 - t * t) / (6 * t);
        Fieller up = Fieller.of(3, t, 1, 0, 1, Double.POSITIVE_INFINITY, 0.90);
        assertEquals(Fieller.Form.BETWEEN, up.form());
        assertEquals(end, up.lower(), 1e-12);
        assertEquals(Double.POSITIVE_INFINITY, up.upper());
        assertTrue(up.contains(3 / t) && up.contains(1e9) && !up.contains(end - 1e-6) && !up.contains(-1e9));
        assertEquals("at least 0.6378 (90 %)", up.toString());
        Fieller down = Fieller.of(-3, t, 1, 0, 1, Double.POSITIVE_INFINITY, 0.90);
        assertEquals(Double.NEGATIVE_INFINITY, down.lower());
        assertEquals(-end, down.upper(), 1e-12);
        assertTrue(down.contains(-3 / t) && down.contains(-1e9) && !down.contains(1e9));
        assertEquals("at most -0.6378 (90 %)", down.toString());
        Fieller all = Fieller.of(0, t, 1, 0, 1, Double.POSITIVE_INFINITY, 0.90);
        assertEquals(Fieller.Form.EVERYTHING, all.form());
        assertEquals(Double.NEGATIVE_INFINITY, all.lower());
        assertEquals(Double.POSITIVE_INFINITY, all.upper());
    }

    /** By hand with t = 2.085963, the 97.5 % point for 20 degrees of freedom: roots of (d^2 - t^2) r^2 - 2 n d r + n^2 - t^2. */
    @Test
    void saysEachFormInWords() {
        assertEquals(
                "between -0.008604 and 0.4268 (95 %)",
                Fieller.of(2, 10, 1, 0, 1, 20, 0.95).toString());
        assertEquals(
                "below -9.103 or above 3.135 (95 %): no end on either side",
                Fieller.of(10, 1, 1, 0, 1, 20, 0.95).toString());
        assertEquals(
                "anywhere (95 %): the data rule nothing out",
                Fieller.of(0.5, 1, 1, 0, 1, 20, 0.95).toString());
    }

    @Test
    void keepsItsEndsAndItsLevel() {
        Fieller between = Fieller.of(3, 2, 0.25, 0, 0, 12, 0.95);
        assertTrue(between.contains(between.lower()) && between.contains(between.upper()));
        assertTrue(!between.contains(between.lower() - 1e-9) && !between.contains(between.upper() + 1e-9));
        assertEquals(0.95, between.level());
        assertEquals(1.5, between.ratio());
        Fieller outside = Fieller.of(10, 1, 1, 0, 1, 20, 0.95);
        assertTrue(outside.contains(outside.lower()) && outside.contains(outside.upper()));
        assertTrue(!outside.contains(outside.lower() + 1e-9) && !outside.contains(outside.upper() - 1e-9));
    }

    @Test
    void movesWithItsScale() {
        Fieller set = Fieller.of(3, 2, 0.25, 0, 0, 12, 0.95);
        Fieller moved = set.shifted(200);
        assertEquals(set.ratio() + 200, moved.ratio());
        assertEquals(set.lower() + 200, moved.lower());
        assertEquals(set.upper() + 200, moved.upper());
        assertEquals(set.level(), moved.level());
        assertEquals(set.form(), moved.form());
    }

    @Test
    void cutsEachFormToARange() {
        Fieller between = Fieller.of(3, 2, 0.25, 0, 0, 12, 0.95);
        assertEquals(List.of(new Interval(between.lower(), 1.5, 0.95)), between.within(0, 1.5));
        assertEquals(List.of(new Interval(1.5, between.upper(), 0.95)), between.within(1.5, 9));
        assertEquals(List.of(), between.within(5, 9));
        assertEquals(List.of(new Interval(between.upper(), between.upper(), 0.95)), between.within(between.upper(), 9));
        assertEquals(
                List.of(new Interval(-2, 7, 0.95)),
                Fieller.of(0.5, 1, 1, 0, 1, 20, 0.95).within(-2, 7));
        Fieller outside = Fieller.of(10, 1, 1, 0, 1, 20, 0.95);
        assertEquals(List.of(new Interval(outside.upper(), 90, 0.95)), outside.within(0, 90));
        assertEquals(List.of(new Interval(-90, outside.lower(), 0.95)), outside.within(-90, 0));
    }

    @Test
    void takesACompleteCorrelationAndAnErrorOfZero() {
        // Numerator and denominator move as one: (2 - 2r)^2 <= t^2 (1 - r)^2 holds at r = 1 only while t < 2.
        Fieller one = Fieller.of(2, 2, 1, 1, 1, Double.POSITIVE_INFINITY, 0.90);
        assertEquals(1, one.lower(), 1e-7);
        assertEquals(1, one.upper(), 1e-7);
        Fieller exact = Fieller.of(3, 2, 0, 0, 0, 12, 0.95);
        assertEquals(1.5, exact.lower());
        assertEquals(1.5, exact.upper());
    }

    @Test
    void saysWhatItWasGiven() {
        assertEquals(
                "The set for a ratio needs two estimates with a possible covariance matrix, but it was given 1 and 2 with "
                        + "variances 3, -4 and covariance 0.5000.",
                assertThrows(IllegalArgumentException.class, () -> Fieller.of(1, 2, 3, 0.5, -4, 10, 0.9))
                        .getMessage());
        assertEquals(
                "The set for a ratio needs degrees of freedom above 0, but they are 0.",
                assertThrows(IllegalArgumentException.class, () -> Fieller.of(1, 1, 1, 0, 1, 0, 0.9))
                        .getMessage());
        for (double[] wrong : new double[][] {
            {Double.NaN, 1, 1, 0, 1},
            {1, Double.POSITIVE_INFINITY, 1, 0, 1},
            {1, 1, -1, 0, 1},
            {1, 1, 1, 1.001, 1},
            {1, 1, 1, -1.001, 1}
        }) {
            assertThrows(
                    IllegalArgumentException.class,
                    () -> Fieller.of(wrong[0], wrong[1], wrong[2], wrong[3], wrong[4], 10, 0.9));
        }
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
