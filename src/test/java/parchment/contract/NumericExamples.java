package parchment.contract;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Function;
import parchment.logbook.Logbook;
import parchment.stats.Estimate;
import parchment.stats.Fieller;
import parchment.stats.Interval;
import parchment.stats.MeasurementError;
import parchment.stats.RobustnessValue;
import parchment.stats.local.Autocovariance;
import parchment.stats.local.LocalRegression;
import parchment.stats.mixed.AddedFeatures;
import parchment.stats.mixed.Likelihood;
import parchment.stats.mixed.LikelihoodRatio;
import parchment.stats.mixed.LinearMixedModel;
import parchment.stats.mixed.LinearModel;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.mixed.NewGroupForecast;
import parchment.stats.mixed.QuadraticPeak;
import parchment.stats.mixed.RandomTerm;
import parchment.stats.ordinal.OrdinalMixedModel;
import parchment.stats.regression.GaussianProcess;
import parchment.stats.regression.NonlinearModel;
import parchment.stats.regression.ProcessShape;
import parchment.stats.resample.FisherExactTest;
import parchment.stats.resample.GroupBootstrap;
import parchment.stats.resample.GroupedConformal;
import parchment.stats.resample.GroupedFolds;
import parchment.stats.resample.Permutation;
import parchment.stats.resample.PermutationTest;
import parchment.stats.resample.SetShuffle;
import parchment.stats.series.LevelChanges;
import parchment.stats.series.Signal;

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
        roots.put("Fieller", logbook -> Fieller.of(2, 3, 0.1, 0, 0.1, 20, 0.9));
        SetShuffle shuffle = SetShuffle.of(day.subList(0, 16), Arrays.copyOf(x, 16), 1);
        roots.put("SetShuffle", logbook -> shuffle);
        roots.put("ShuffledSlope", logbook -> shuffle.slope(Arrays.copyOf(y, 16)));
        roots.put("ShuffledRatio", logbook -> shuffle.ratio(Arrays.copyOf(y, 16), Arrays.copyOf(x, 16), 0.9));
        roots.put("FisherExactTest", logbook -> FisherExactTest.of(List.of(3, 1), List.of(1, 3)));
        roots.put("GroupBootstrap", logbook -> GroupBootstrap.of(day, 1));
        roots.put("GroupedFolds", logbook -> GroupedFolds.of(day, 4, 1));
        roots.put("RobustnessValue", logbook -> RobustnessValue.of(slope));
        roots.put("Interval", logbook -> slope.interval(0.9));
        roots.put("LocalFit", logbook -> LocalRegression.of(3).fit(x, y));
        roots.put("MeasurementError", logbook -> MeasurementError.of(y, 0.1));
        roots.put("Permutation", logbook -> Permutation.withinBlocks(day, 1));
        roots.put(
                "PermutationTest",
                logbook -> PermutationTest.run(
                        Permutation.withinBlocks(day, 1), 19, order -> new double[] {y[order[0]], y[order[9]]}));
        roots.put(
                "QuadraticPeak",
                logbook -> QuadraticPeak.of(0.1, -0.2, new double[][] {{0.01, 0}, {0, 0.01}}, 20, 0.9, 5, tried));
        roots.put("Signal", logbook -> new Signal(29, 5.28, Signal.Side.ABOVE));
        roots.put("LevelChanges", logbook -> LevelChanges.exact(y, 3, 3));
        double[] grades = new double[ROWS];
        double[][] columns = new double[ROWS][];
        for (int i = 0; i < ROWS; i++) {
            grades[i] = 1 + random.nextInt(3);
            columns[i] = new double[] {1, x[i]};
        }
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
    }
}
