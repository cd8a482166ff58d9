package parchment.stats.warp;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class SimultaneousBandTest {
    /** Curves that share a day's wandering and add their own. */
    static CurveGroup simulated(
            SplittableRandom random, String prefix, int days, int perDay, int points, double shift) {
        List<double[]> curves = new ArrayList<>();
        List<String> labels = new ArrayList<>();
        for (int day = 0; day < days; day++) {
            double[] common = wander(random, points);
            for (int i = 0; i < perDay; i++) {
                double[] own = wander(random, points);
                double[] curve = new double[points];
                for (int k = 0; k < points; k++) {
                    curve[k] = common[k] + 0.7 * own[k] + shift * Math.sin(3.0 * k / points);
                }
                curves.add(curve);
                labels.add(prefix + day);
            }
        }
        return CurveGroup.of(curves, labels);
    }

    private static double[] wander(SplittableRandom random, int points) {
        double[] values = new double[points];
        double at = random.nextGaussian();
        for (int k = 0; k < points; k++) {
            at = 0.95 * at + Math.sqrt(1 - 0.95 * 0.95) * random.nextGaussian();
            values[k] = at;
        }
        return values;
    }

    @Test
    @Tag("holds-for-any")
    void holdsTheWholeTruthAboutAsOftenAsItSays() {
        int held = 0;
        int sets = 300;
        SplittableRandom random = new SplittableRandom(11);
        for (int set = 0; set < sets; set++) {
            CurveGroup first = simulated(random, "a", 10, 3, 30, 1);
            CurveGroup second = simulated(random, "b", 12, 2, 30, 0);
            SimultaneousBand band = SimultaneousBand.of(first, second, 0.90, 299, set);
            held += holds(band, 1) ? 1 : 0;
        }
        double share = (double) held / sets;
        // 0.90 give or take two and a half Monte-Carlo errors of 0.017.
        assertTrue(share > 0.857 && share < 0.943, "held in " + share);
    }

    @Test
    @Tag("holds-for-any")
    void theBandOfAMeanHoldsTheWholeTruthAboutAsOftenAsItSays() {
        int held = 0;
        int sets = 300;
        SplittableRandom random = new SplittableRandom(21);
        for (int set = 0; set < sets; set++) {
            SimultaneousBand band = SimultaneousBand.ofMean(simulated(random, "a", 12, 3, 30, 1), 0.90, 299, set);
            held += holds(band, 1) ? 1 : 0;
        }
        double share = (double) held / sets;
        // 0.90 give or take two and a half Monte-Carlo errors of 0.017.
        assertTrue(share > 0.857 && share < 0.943, "held in " + share);
    }

    @Test
    @Tag("agrees-with")
    void theErrorOfAMeanOfSingleCurvesIsTheTextbookOne() {
        // One curve per cluster: standard deviation over the root of n, here of 1 to 5; t of 4 degrees at 0.95 is
        // 2.131847
        // (tables of Student's t).
        SimultaneousBand band =
                SimultaneousBand.ofMean(CurveGroup.of(constant(1, 2, 3, 4, 5), List.of("a", "b", "c", "d", "e")));
        assertEquals(3, band.difference()[0], 1e-12);
        assertEquals(Math.sqrt(2.5 / 5), band.standardError()[0], 1e-12);
        assertEquals(2.131847, band.pointwiseCritical(), 1e-6);
        assertTrue(band.toString().startsWith("mean curve of 5 curves in 5 clusters"), band.toString());
    }

    @Test
    @Tag("holds-for-any")
    void daysSharedByBothGroupsMakeTheBandNarrower() {
        SplittableRandom random = new SplittableRandom(12);
        CurveGroup first = simulated(random, "d", 15, 2, 20, 1);
        List<double[]> shifted = new ArrayList<>();
        for (int i = 0; i < first.size(); i++) {
            double[] noise = wander(random, 20);
            double[] curve = first.curve(i).clone();
            for (int k = 0; k < 20; k++) {
                curve[k] += 0.1 * noise[k];
            }
            shifted.add(curve);
        }
        SimultaneousBand shared = SimultaneousBand.of(first, CurveGroup.of(shifted, first.clusters()));
        List<String> others = first.clusters().stream().map(d -> "other " + d).toList();
        SimultaneousBand apart = SimultaneousBand.of(first, CurveGroup.of(shifted, others));
        assertTrue(shared.standardError()[10] < 0.3 * apart.standardError()[10]);
        assertArrayEquals(shared.difference(), apart.difference(), 1e-12);
    }

    @Test
    @Tag("agrees-with")
    void standardErrorsOfSingleCurvesAreTheTwoSampleOnes() {
        // One curve per cluster: the squared error is s1^2/n1 + s2^2/n2. First point by hand: 2.5/5 + 10/5.
        CurveGroup first = CurveGroup.of(constant(1, 2, 3, 4, 5), List.of("a", "b", "c", "d", "e"));
        CurveGroup second = CurveGroup.of(constant(2, 4, 6, 8, 10), List.of("f", "g", "h", "i", "j"));
        SimultaneousBand band = SimultaneousBand.of(first, second);
        assertEquals(-3, band.difference()[0], 1e-12);
        assertEquals(Math.sqrt(2.5 / 5 + 10.0 / 5), band.standardError()[0], 1e-12);
    }

    @Test
    void sameSeedSameBand() {
        CurveGroup first = simulated(new SplittableRandom(1), "a", 8, 2, 10, 1);
        CurveGroup second = simulated(new SplittableRandom(2), "b", 8, 2, 10, 0);
        assertArrayEquals(
                SimultaneousBand.of(first, second, 0.9, 199, 5).lower(),
                SimultaneousBand.of(first, second, 0.9, 199, 5).lower());
    }

    @Test
    void tooFewDaysCannotTell() {
        CurveGroup first = simulated(new SplittableRandom(1), "a", 4, 5, 10, 9);
        CurveGroup second = simulated(new SplittableRandom(2), "b", 8, 2, 10, 0);
        SimultaneousBand band = SimultaneousBand.of(first, second);
        assertEquals(Double.POSITIVE_INFINITY, band.upper()[3]);
        assertEquals(
                "difference of mean curves, 20 curves in 4 clusters against 16 curves in 8 clusters: cannot tell,"
                        + " as a band needs 5 clusters or more in each group",
                band.toString());
        for (boolean point : band.apart()) {
            assertTrue(!point);
        }
    }

    @Test
    void saysThatGridsDiffer() {
        CurveGroup first = simulated(new SplittableRandom(1), "a", 5, 1, 10, 1);
        CurveGroup second = simulated(new SplittableRandom(2), "b", 5, 1, 11, 0);
        assertEquals(
                "The difference of two groups of curves needs as many samples in the curves of the first as in those of the"
                        + " second, but there are 10 and 11.",
                assertThrows(IllegalArgumentException.class, () -> SimultaneousBand.of(first, second))
                        .getMessage());
    }

    static boolean holds(SimultaneousBand band, double shift) {
        double[] lower = band.lower();
        double[] upper = band.upper();
        for (int k = 0; k < lower.length; k++) {
            double truth = shift * Math.sin(3.0 * k / lower.length);
            if (truth < lower[k] || truth > upper[k]) {
                return false;
            }
        }
        return true;
    }

    private static List<double[]> constant(double... levels) {
        List<double[]> curves = new ArrayList<>();
        for (double level : levels) {
            curves.add(new double[] {level, 2 * level});
        }
        return curves;
    }
}
