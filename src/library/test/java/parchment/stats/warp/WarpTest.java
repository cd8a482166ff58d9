package parchment.stats.warp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Objects;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class WarpTest {
    @Test
    @Tag("agrees-with")
    void agreesWithFritschAndCarlsonAsComputedByR() {
        // Fritsch and Carlson 1980; values of R 4.2.2, splinefun(method = "monoH.FC"), printed to 10 digits.
        Warp warp = Warp.monotoneCubic(new double[] {0, 1, 2, 3, 4, 5}, new double[] {0, 1, 1.5, 1.6, 3, 3.1});
        assertEquals(0.53125, warp.at(0.5), 1e-9);
        assertEquals(1.32982285, warp.at(1.5), 1e-9);
        assertEquals(1.529109274, warp.at(2.5), 1e-9);
        assertEquals(2.29764683, warp.at(3.5), 1e-9);
        assertEquals(3.082214907, warp.at(4.5), 1e-9);
    }

    @Test
    @Tag("agrees-with")
    void phaseDistancesMeetTheirClosedForms() {
        // Srivastava and Klassen 2016, Functional and Shape Data Analysis, section 4: the angle is acos of the integral
        // of sqrt(slope).
        assertEquals(Math.acos(2 * Math.sqrt(2) / 3), through(4000, t -> t * t).phaseDistance(), 1e-4);
        assertEquals(
                0.143054428679061,
                through(2000, t -> Math.expm1(t) / Math.expm1(1)).phaseDistance(),
                1e-7);
        assertEquals(
                0.278855638417920,
                through(2000, t -> Math.expm1(2 * t) / Math.expm1(2)).phaseDistance(),
                1e-7);
        // Integral of sqrt(5 t^4 3 t^2) is sqrt(15)/4.
        assertEquals(
                Math.acos(Math.sqrt(15) / 4),
                through(4000, t -> Math.pow(t, 5)).phaseDistance(through(4000, t -> t * t * t)),
                1e-4);
    }

    @Test
    void aSmoothWarpComesCloserToAClosedFormThanAStraightOne() {
        double exact = 0.278855638417920;
        DoubleUnaryOperator curve = t -> Math.expm1(2 * t) / Math.expm1(2);
        double straight = Math.abs(through(10, curve).phaseDistance() - exact);
        double[] x = new double[11];
        double[] y = new double[11];
        for (int i = 0; i <= 10; i++) {
            x[i] = i / 10.0;
            y[i] = curve.applyAsDouble(x[i]);
        }
        double smooth = Math.abs(Warp.monotoneCubic(x, y).phaseDistance() - exact);
        assertTrue(smooth < straight, smooth + " against " + straight);
    }

    @RepeatedTest(40)
    @Tag("holds-for-any")
    void anyWarpRisesAndCanBeTurnedRound(RepetitionInfo repetition) {
        SplittableRandom random = new SplittableRandom(repetition.getCurrentRepetition());
        double[] x = rising(random, 3 + random.nextInt(6));
        double[] y = rising(random, x.length);
        for (Warp warp : new Warp[] {Warp.linear(x, y), Warp.monotoneCubic(x, y)}) {
            Warp back = warp.inverse();
            double before = Double.NEGATIVE_INFINITY;
            double length = warp.to() - warp.from();
            for (int i = 0; i <= 200; i++) {
                double t = warp.from() + length * i / 200;
                double image = warp.at(t);
                assertTrue(image > before);
                assertTrue(warp.slope(t) > 0);
                before = image;
                assertEquals(t, back.at(image), 1e-9 * length);
                assertEquals(image, back.inverse().at(t), 1e-12 * Math.abs(image) + 1e-12);
                assertEquals(
                        image,
                        warp.then(Warp.identity(warp.imageFrom(), warp.imageTo()))
                                .at(t),
                        1e-9);
                assertEquals(t, warp.then(back).at(t), 1e-9 * length);
            }
            for (int i = 0; i < x.length; i++) {
                assertEquals(y[i], warp.at(x[i]), 1e-12 * (1 + Math.abs(y[i])));
            }
            assertEquals(warp.phaseDistance(), back.phaseDistance(), 1e-9);
        }
    }

    @RepeatedTest(20)
    @Tag("holds-for-any")
    void chainingIsApplyingOneAfterTheOther(RepetitionInfo repetition) {
        SplittableRandom random = new SplittableRandom(50 + repetition.getCurrentRepetition());
        double[] x = rising(random, 5);
        double[] y = rising(random, 5);
        double[] z = rising(random, 5);
        Warp[] first = {Warp.linear(x, y), Warp.monotoneCubic(x, y)};
        Warp[] second = {Warp.linear(y, z), Warp.monotoneCubic(y, z)};
        double step = (x[4] - x[0]) / 997;
        for (Warp a : first) {
            for (Warp b : second) {
                Warp both = a.then(b);
                for (double t = x[0]; t < x[4]; t += step) {
                    assertEquals(b.at(a.at(t)), both.at(t), 1e-9 * (1 + z[4]));
                    assertEquals(b.slope(a.at(t)) * a.slope(t), both.slope(t), 1e-6 * both.slope(t));
                }
                assertEquals(both.at(x[2]), z[2], 1e-9);
            }
        }
    }

    @Test
    void theSlopeIsTheDerivative() {
        Warp warp = Warp.monotoneCubic(new double[] {0, 2, 5, 9}, new double[] {1, 2, 8, 9});
        for (double t : new double[] {0.5, 1.9, 2.1, 4.4, 7}) {
            double h = 1e-5;
            assertEquals((warp.at(t + h) - warp.at(t - h)) / (2 * h), warp.slope(t), 1e-6);
            double image = warp.at(t);
            assertEquals(1 / warp.slope(t), warp.inverse().slope(image), 1e-9);
        }
    }

    @Test
    void equalSpeedHasNoPhaseDistance() {
        assertEquals(0, Warp.identity(3, 8).phaseDistance(), 1e-12);
        assertEquals(0, Warp.linear(new double[] {0, 1}, new double[] {10, 60}).phaseDistance(), 1e-12);
    }

    @Test
    void saysWhatIsWrongWithLandmarks() {
        assertEquals(
                "Landmarks on the second clock must increase at every step, but position 3 holds 4 after 5.",
                message(() -> Warp.linear(new double[] {0, 1, 2}, new double[] {0, 5, 4})));
        assertEquals(
                "A warp through landmarks needs as many samples in the first clock as in the second clock,"
                        + " but there are 2 and 3.",
                message(() -> Warp.monotoneCubic(new double[] {0, 1}, new double[] {0, 1, 2})));
        assertEquals(
                "A warp needs at least 2 landmarks, its two ends, but there are 1.",
                message(() -> Warp.linear(new double[] {0}, new double[] {0})));
        assertEquals(
                "The warp runs from 0 to 10, but was asked for 11. It does not guess beyond its landmarks:"
                        + " ask inside, or add a landmark there.",
                message(() -> Warp.identity(0, 10).at(11)));
        assertEquals(
                "The first warp leads to 0 to 12, but the second one only knows 0 to 10."
                        + " Cut the first warp, or give the second one landmarks at both ends.",
                message(() -> Warp.identity(0, 12).then(Warp.identity(0, 10))));
    }

    @Test
    void aMissingInstantStaysMissing() {
        assertTrue(Double.isNaN(Warp.identity(0, 1).at(Double.NaN)));
    }

    private static Warp through(int pieces, DoubleUnaryOperator curve) {
        double[] x = new double[pieces + 1];
        double[] y = new double[pieces + 1];
        for (int i = 0; i <= pieces; i++) {
            x[i] = (double) i / pieces;
            y[i] = curve.applyAsDouble(x[i]);
        }
        return Warp.linear(x, y);
    }

    private static double[] rising(SplittableRandom random, int count) {
        double[] x = new double[count];
        double at = 10 * random.nextDouble();
        for (int i = 0; i < count; i++) {
            x[i] = at;
            at += 0.05 + Math.pow(random.nextDouble(), 3) * 20;
        }
        return x;
    }

    private static String message(org.junit.jupiter.api.function.Executable job) {
        return Objects.requireNonNull(
                assertThrows(IllegalArgumentException.class, job).getMessage());
    }
}
