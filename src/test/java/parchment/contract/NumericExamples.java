package parchment.contract;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Function;
import parchment.logbook.Logbook;
import parchment.stats.AddedFeatures;
import parchment.stats.Autocovariance;
import parchment.stats.CubicCurve;
import parchment.stats.ElasticNet;
import parchment.stats.ElasticNetChoice;
import parchment.stats.Estimate;
import parchment.stats.Fieller;
import parchment.stats.GaussianProcess;
import parchment.stats.GroupBootstrap;
import parchment.stats.GroupedConformal;
import parchment.stats.GroupedFolds;
import parchment.stats.HampelFilter;
import parchment.stats.HiddenCause;
import parchment.stats.Interval;
import parchment.stats.Likelihood;
import parchment.stats.LikelihoodRatio;
import parchment.stats.LinearMixedModel;
import parchment.stats.LinearModel;
import parchment.stats.LocalRegression;
import parchment.stats.MeasurementError;
import parchment.stats.MixedDesign;
import parchment.stats.NewGroupForecast;
import parchment.stats.NonlinearModel;
import parchment.stats.OrdinalMixedModel;
import parchment.stats.ParametricBootstrap;
import parchment.stats.PartialLeastSquares;
import parchment.stats.PenalizedSpline;
import parchment.stats.PenalizedSurface;
import parchment.stats.Permutation;
import parchment.stats.PermutationTest;
import parchment.stats.ProcessShape;
import parchment.stats.QuadraticPeak;
import parchment.stats.RandomTerm;
import parchment.stats.SplineBasis;
import parchment.stats.process.CusumChart;
import parchment.stats.process.EwmaChart;
import parchment.stats.process.IndividualsChart;
import parchment.stats.process.LevelChanges;
import parchment.stats.process.PenalizedChanges;
import parchment.stats.process.RunLength;

/** Results of the numerics, on random numbers with a fixed seed. */
final class NumericExamples {
    private static final int ROWS = 40;

    private NumericExamples() {}

    static void addTo(Map<String, Function<Logbook, Object>> roots) {
        double[] x = new double[ROWS];
        double[] y = new double[ROWS];
        List<String> day = new ArrayList<>();
        Random random = new Random(7);
        for (int i = 0; i < ROWS; i++) {
            x[i] = i / 3.0;
            y[i] = Math.sin(x[i]) + random.nextGaussian() / 3 + i % 8 / 5.0;
            day.add("day " + i % 8);
        }
        MixedDesign plain = MixedDesign.of("score", y).withCovariate("x", x);
        MixedDesign mixed = plain.withRandom(RandomTerm.intercept("day", day));
        LinearMixedModel model = LinearMixedModel.fit(mixed, Likelihood.FULL);
        Estimate slope = new Estimate("slope", 1.0 / 3, 0.1, 17);
        Interval tried = new Interval(0, 13, 0.9);
        roots.put("MixedDesign", logbook -> mixed);
        roots.put("LinearMixedModel", logbook -> model);
        roots.put("LinearModel", logbook -> LinearModel.fit(plain));
        roots.put("FTest", logbook -> LinearModel.fit(plain).overall());
        roots.put("LikelihoodRatio", logbook -> {
            MixedDesign smaller = MixedDesign.of("score", y).withRandom(RandomTerm.intercept("day", day));
            return LikelihoodRatio.of(LinearMixedModel.fit(smaller, Likelihood.FULL), model);
        });
        roots.put("AddedFeatures", logbook -> AddedFeatures.to(model, day));
        roots.put("Autocovariance", logbook -> Autocovariance.of(1.0 / 3, 0.2, 5));
        roots.put("CubicCurve", logbook -> CubicCurve.natural(x, y));
        roots.put("Fieller", logbook -> Fieller.of(2, 3, 0.1, 0, 0.1, 20, 0.9));
        roots.put("GroupBootstrap", logbook -> GroupBootstrap.of(day, 1));
        roots.put("GroupedFolds", logbook -> GroupedFolds.of(day, 4, 1));
        roots.put("HampelFilter.Result", logbook -> HampelFilter.of(3).apply(x, y));
        roots.put("HiddenCause", logbook -> HiddenCause.of(slope));
        roots.put("Interval", logbook -> slope.interval(0.9));
        roots.put("LocalFit", logbook -> LocalRegression.of(3).fit(x, y));
        roots.put("MeasurementError", logbook -> MeasurementError.of(y, 0.1));
        roots.put("PenalizedSpline", logbook -> PenalizedSpline.fit(x, y, 8));
        roots.put("Permutation", logbook -> Permutation.withinBlocks(day, 1));
        roots.put(
                "PermutationTest",
                logbook -> PermutationTest.run(
                        Permutation.withinBlocks(day, 1), 19, order -> new double[] {y[order[0]], y[order[9]]}));
        roots.put(
                "QuadraticPeak",
                logbook -> QuadraticPeak.of(0.1, -0.2, new double[][] {{0.01, 0}, {0, 0.01}}, 20, 0.9, 5, tried));
        roots.put("ElasticNet", logbook -> ElasticNet.fit(List.of("x"), List.of(x), y, 0.5, 0.1));
        roots.put("PartialLeastSquares", logbook -> PartialLeastSquares.fit(List.of("x"), List.of(x), y, 1));
        roots.put(
                "HeldOutErrors",
                logbook -> PartialLeastSquares.heldOut(List.of("x"), List.of(x), y, 1, GroupedFolds.of(day, 4, 1)));
        roots.put("IndividualsChart", logbook -> IndividualsChart.of(y));
        roots.put("EwmaChart", logbook -> EwmaChart.of(y, 1.0 / 3, 1));
        roots.put("CusumChart", logbook -> CusumChart.of(y, 1.0 / 3, 1));
        roots.put("LevelChanges", logbook -> LevelChanges.exact(y, 3, 3));
        roots.put("PenalizedChanges", logbook -> PenalizedChanges.of(y, 3, 2));
        roots.put("RunLength", logbook -> RunLength.ofIndividuals(3));
        GroupedFolds folds = GroupedFolds.of(day, 4, 1);
        double[] other = new double[ROWS];
        double[] grades = new double[ROWS];
        double[][] columns = new double[ROWS][];
        for (int i = 0; i < ROWS; i++) {
            other[i] = i % 5;
            grades[i] = 1 + random.nextInt(3);
            columns[i] = new double[] {1, x[i]};
        }
        roots.put("ElasticNetChoice", logbook -> ElasticNetChoice.of(List.of("x"), List.of(x), y, 0.5, folds));
        roots.put("GaussianProcess", logbook -> GaussianProcess.fit(List.of(x), y, ProcessShape.SQUARED_EXPONENTIAL));
        roots.put("GroupedConformal", logbook -> GroupedConformal.of(y, day));
        roots.put(
                "NewGroupForecast",
                logbook -> NewGroupForecast.of(y, columns, List.of(day), day, new double[] {0.1}, 0.1, 1.0 / 3));
        roots.put(
                "NonlinearModel",
                logbook -> NonlinearModel.fit(x, y, List.of("a"), new double[] {1}, (at, b) -> b[0] * Math.sin(at[0])));
        roots.put(
                "OrdinalMixedModel",
                logbook -> OrdinalMixedModel.fit(MixedDesign.of("grade", grades)
                        .withCovariate("x", x)
                        .withRandom(RandomTerm.intercept("day", day))));
        roots.put("ParametricBootstrap", logbook -> {
            MixedDesign smaller = MixedDesign.of("score", y).withRandom(RandomTerm.intercept("day", day));
            return ParametricBootstrap.of(LinearMixedModel.fit(smaller, Likelihood.FULL), model, 19, 1);
        });
        roots.put("PenalizedSurface", logbook -> PenalizedSurface.fit(x, other, y, 5));
        roots.put("SplineBasis", logbook -> SplineBasis.of(0, 13, 8));
    }
}
