package parchment.stats.mixed;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.stats.Estimate;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.QuasiNewton;
import parchment.stats.linear.Vectors;
import parchment.stats.ordinal.OrdinalMixedModel;

/** What a fit says of responses so large, so small or so regular that arithmetic runs out, and that its search ends on them. */
class MixedSearchTest {
    private static final double NONE = Double.NaN;
    private static final Duration SOON = Duration.ofSeconds(20);
    private static final String REPRODUCED =
            "The residual variance is estimated as nearly zero: the terms reproduce the response.";

    private static MixedDesign panel(double center, double spread) {
        SplittableRandom random = new SplittableRandom(41);
        double[] day = random.doubles(8, -1, 1).toArray();
        double[] x = random.doubles(40, 195, 210).toArray();
        double[] y = IntStream.range(0, 40)
                .mapToDouble(i -> center + spread * (day[i / 5] + random.nextGaussian()))
                .toArray();
        return MixedDesign.of("score", y)
                .withCovariate("x", x)
                .withRandom(RandomTerm.intercept(
                        "day",
                        IntStream.range(0, 40).mapToObj(i -> "day " + i / 5).toList()));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1e3, 1e6, 1e9})
    void aLevelFarFromZeroIsNotTakenForAPerfectFit(double center) {
        LinearMixedModel model = panel(center, 1).fit();
        assertEquals(panel(0, 1).fit().residualStandardDeviation(), model.residualStandardDeviation(), 1e-5);
        assertFalse(model.notes().contains(REPRODUCED), model.notes().toString());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 7, 1e9})
    void aResponseThatTheTermsGiveExactlyIsCalledSo(double center) {
        double[] x = IntStream.range(0, 12).mapToDouble(i -> i * i / 8.0).toArray();
        double[] y = Arrays.stream(x).map(v -> center + 2 * v).toArray();
        LinearMixedModel model =
                MixedDesign.of("score", y).withCovariate("x", x).fit();
        assertEquals(2, model.term("x").estimate(), 1e-6);
        assertTrue(model.notes().contains(REPRODUCED), model.notes().toString());
    }

    @ParameterizedTest
    @CsvSource({"0, false", "1e-4, false", "1e-5, false", "1e-7, true"})
    void aResidualUnderAMillionthOfTheSpreadCountsAsNone(double noise, boolean nothingLeft) {
        SplittableRandom random = new SplittableRandom(3);
        double[] x = random.doubles(50, 0, 10).toArray();
        double[] y = Arrays.stream(x)
                .map(v -> 5 + v + (noise == 0 ? 1 : noise) * random.nextGaussian())
                .toArray();
        LinearMixedModel model =
                MixedDesign.of("score", y).withCovariate("x", x).fit();
        assertEquals(
                nothingLeft, model.notes().contains(REPRODUCED), model.notes().toString());
    }

    @ParameterizedTest
    @CsvSource({"1e160, the response goes up to ", "1e300, the response goes up to ", "1e-200, the response goes up to "
    })
    void refusesNumbersWhoseSquaresADoubleCannotHold(double spread, String words) {
        CannotFitException e =
                assertTimeoutPreemptively(SOON, () -> assertThrows(CannotFitException.class, panel(0, spread)::fit));
        assertTrue(
                e.getMessage().startsWith("A mixed model needs numbers between 1e-30 and 1e30 in size, but " + words),
                e.getMessage());
    }

    @Test
    void fitsUpToTheSizeThatItRefuses() {
        LinearMixedModel usual = panel(0, 1).fit();
        for (double spread : new double[] {1e-29, 1e29}) {
            LinearMixedModel model = panel(0, spread).fit();
            assertEquals(
                    usual.residualStandardDeviation(),
                    model.residualStandardDeviation() / spread,
                    1e-6 * usual.residualStandardDeviation());
            Estimate term = model.term("x");
            assertEquals(usual.term("x").t(), term.t(), 1e-5);
            assertEquals(usual.term("x").degreesOfFreedom(), term.degreesOfFreedom(), 1e-3);
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e154, 1e300})
    void refusesAColumnOfSuchNumbersByItsName(double size) {
        MixedDesign design = panel(5, 1);
        double[] large =
                IntStream.range(0, 40).mapToDouble(i -> size * (i % 7 - 3)).toArray();
        List<String> two = IntStream.range(0, 40).mapToObj(i -> "" + i % 2).toList();
        assertTimeoutPreemptively(SOON, () -> {
            String fixed = assertThrows(CannotFitException.class, design.withCovariate("mass", large)::fit)
                    .getMessage();
            assertTrue(fixed.contains("but the fixed column 'mass' goes up to "), fixed);
            String random = assertThrows(
                            CannotFitException.class,
                            design.withRandom(RandomTerm.slope("two", two, "mass", large))::fit)
                    .getMessage();
            assertTrue(random.contains("but the random term 'two' goes up to "), random);
            String squares = assertThrows(
                            CannotFitException.class,
                            () -> LinearModel.fit(
                                    MixedDesign.of("score", design.response()).withCovariate("mass", large)))
                    .getMessage();
            assertTrue(squares.startsWith("Least squares needs numbers"), squares);
            String ordinal = assertThrows(
                            CannotFitException.class,
                            () -> OrdinalMixedModel.fit(MixedDesign.of(
                                            "score",
                                            IntStream.range(0, 40)
                                                    .mapToDouble(i -> i % 3)
                                                    .toArray())
                                    .withCovariate("mass", large)))
                    .getMessage();
            assertTrue(ordinal.startsWith("An ordinal model needs numbers"), ordinal);
        });
    }

    @Test
    void saysThatEqualScoresCannotTellGroupsApart() {
        double[] same = new double[8];
        MixedDesign design = MixedDesign.of("score", same)
                .withRandom(RandomTerm.intercept("day", List.of("a", "a", "b", "b", "c", "c", "d", "d")));
        CannotFitException e = assertThrows(CannotFitException.class, design::fit);
        assertEquals(
                "A mixed model needs a response that differs from row to row by more than its fixed columns give, but in "
                        + "these 8 rows they give it exactly.",
                e.getMessage());
        LinearMixedModel alone = design.withoutRandom("day").fit();
        assertEquals(0, alone.residualStandardDeviation());
        assertEquals(List.of(REPRODUCED), alone.notes());
        assertTrue(Double.isNaN(alone.term("(Intercept)").degreesOfFreedom()));
    }

    /** Twice (x - 1)^2 + (y + 2)^2 + xy, whose second derivatives are 4, 4 and 2. */
    @Test
    void stepsToTheLowestPointOfAParabola() {
        double[][] bend = {{4, 2}, {2, 4}};
        assertArrayEquals(
                new double[] {8 / 3.0, -10 / 3.0},
                QuasiNewton.newtonStep(bend, new double[] {-4, 8}).orElseThrow(),
                1e-12);
    }

    @Test
    void goesDownhillWhereTheCriterionBendsDownwards() {
        double[][] saddle = {{1, 5}, {5, 1}};
        double[] gradient = {1, -2};
        double[] step = QuasiNewton.newtonStep(saddle, gradient).orElseThrow();
        assertTrue(Vectors.dot(step, gradient) < 0, Arrays.toString(step));
        double[][] flat = {{0, 1e6}, {1e6, 0}};
        assertTrue(Vectors.dot(QuasiNewton.newtonStep(flat, gradient).orElseThrow(), gradient) < 0);
    }

    @Test
    void findsNoStepWhereSecondDerivativesAreMissing() {
        double[] gradient = {1, 1};
        for (double[][] broken :
                List.of(new double[][] {{NONE, 0}, {0, 1}}, new double[][] {{1, NONE}, {NONE, 1}}, new double[][] {
                    {Double.POSITIVE_INFINITY, 0}, {0, 1}
                })) {
            assertTimeoutPreemptively(
                    SOON,
                    () -> assertTrue(QuasiNewton.newtonStep(broken, gradient).isEmpty()));
        }
    }

    /** With two rows and a fitted mean, at a relative factor of 1e200 the factor's pivots are infinite: it breaks down there. */
    @Test
    void hasNoSecondDerivativesWhereTheFactorBreaksDown() {
        MixedDesign design = panel(5, 1);
        MixedSystem system = new MixedSystem(MixedRows.of(design), Likelihood.RESTRICTED);
        assertTrue(system.evaluate(new double[] {1e200}, true).brokeDown());
        assertTrue(QuasiNewton.hessian(MixedSearch.criterion(system), new double[] {1e200})
                .isEmpty());
        assertFalse(system.evaluate(new double[] {1}, true).brokeDown());
        assertTrue(QuasiNewton.hessian(MixedSearch.criterion(system), new double[] {1})
                .isPresent());
    }
}
