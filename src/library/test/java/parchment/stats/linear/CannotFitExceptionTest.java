package parchment.stats.linear;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import parchment.stats.Estimate;
import parchment.stats.RobustnessValue;
import parchment.stats.local.Autocovariance;
import parchment.stats.mixed.Likelihood;
import parchment.stats.mixed.LinearMixedModel;
import parchment.stats.mixed.LinearModel;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.mixed.Prediction;
import parchment.stats.mixed.RandomTerm;
import parchment.stats.ordinal.OrdinalMixedModel;
import parchment.stats.regression.NonlinearModel;
import parchment.stats.resample.GroupBootstrap;
import parchment.stats.resample.GroupedFolds;
import parchment.stats.series.LevelChanges;

/** Data that are too few are told apart from arguments that are wrong. */
class CannotFitExceptionTest {
    private static final double NONE = Double.NaN;
    private static final double[] TWO = {1, NONE, 2};
    private static final double[] LINE = {1, 2, 3, 4, 5, 6, 7, 8};
    private static final double[] FLAT = {4, 4, 4, 4, 4, 4, 4, 4};
    private static final double[] OTHER = {3, 1, 4, 1, 5, 9, 2, 6};

    private static Arguments of(String what, Executable fit) {
        return Arguments.of(what, fit);
    }

    static Stream<Arguments> tooFew() {
        MixedDesign two = MixedDesign.of("y", TWO).withCovariate("x", TWO);
        return Stream.of(
                of("two rows for a level and a slope with chance", two::fit),
                of("no complete row at all", MixedDesign.of("y", new double[] {NONE, NONE})::fit),
                of("by full likelihood", () -> two.fit(Likelihood.FULL)),
                of(
                        "no complete row for least squares",
                        () -> LinearModel.fit(MixedDesign.of("y", new double[] {1, NONE})
                                .withCovariate("x", new double[] {NONE, 2}))),
                of("one score only", () -> OrdinalMixedModel.fit(MixedDesign.of("y", FLAT))),
                of(
                        "one row for two parameters",
                        () -> NonlinearModel.fit(
                                new double[] {1},
                                new double[] {1},
                                List.of("a", "b"),
                                new double[] {0, 1},
                                (x, p) -> p[0] + p[1] * x[0])),
                of("one group left out", () -> GroupedFolds.leaveOneOut(List.of("a", "a"))),
                of("no group left out", () -> GroupedFolds.leaveOneOut(List.of("", ""))),
                of("one group in parts", () -> GroupedFolds.of(List.of("a", "a"), 5, 1)),
                of("no group to draw from", () -> GroupBootstrap.of(List.of(""), 1)),
                of("no curve to pool", () -> Autocovariance.pooled(List.of())),
                of("an estimate without an error", () -> RobustnessValue.of(new Estimate("x", 1, NONE, 5))),
                of("changes in too short a series", () -> LevelChanges.exact(new double[] {1, 2, 3}, 5, 1)));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource
    void tooFew(String what, Executable fit) {
        assertEquals(
                CannotFitException.class,
                assertThrows(RuntimeException.class, fit).getClass(),
                what);
    }

    static Stream<Arguments> wrongArguments() {
        MixedDesign design = MixedDesign.of("y", OTHER).withCovariate("x", LINE);
        LinearMixedModel model = design.fit();
        return Stream.of(
                of("a column of another length", () -> design.withCovariate("z", TWO)),
                of("a term that is not there", () -> model.term("z")),
                of("a contrast of a column that is not there", () -> model.contrast("z", java.util.Map.of("z", 1.0))),
                of("a test of a term that is not there", () -> model.test("z")),
                of(
                        "rows without the model's column",
                        () -> model.predict(MixedDesign.of("y", LINE), Prediction.AVERAGE_GROUP)),
                of(
                        "least squares of a random term",
                        () -> LinearModel.fit(design.withRandom(
                                RandomTerm.intercept("g", List.of("a", "a", "a", "a", "b", "b", "b", "b"))))),
                of("one part", () -> GroupedFolds.of(List.of("a", "b"), 1, 1)),
                of(
                        "a missing value in a search for changes",
                        () -> LevelChanges.exact(new double[] {1, 2, NONE}, 1, 1)));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource
    void wrongArguments(String what, Executable fit) {
        assertEquals(
                IllegalArgumentException.class,
                assertThrows(RuntimeException.class, fit).getClass(),
                what);
    }
}
