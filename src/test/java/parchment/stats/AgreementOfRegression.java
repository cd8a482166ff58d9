package parchment.stats;

import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/** Smooths, surfaces and regression on many features beside mgcv, glmnet, pls and scikit-learn. */
final class AgreementOfRegression {
    private static final ReferenceFits SURFACE = ReferenceFits.of("surface");
    private static final ReferenceFits PENALISED = ReferenceFits.of("penalised");

    private static final ReferenceFits PROCESS = ReferenceFits.of("gaussian-process");
    private static final String LEARN = "scikit-learn 1.2.1";
    private static final String PARTIAL = "pls 2.8-1";

    private AgreementOfRegression() {}

    static List<AgreementRow> smooth() {
        List<AgreementRow> rows = new ArrayList<>();
        ReferenceData data = ReferenceData.table("r-datasets/mcycle.csv");
        PenalizedSpline spline = PenalizedSpline.fit(data.numbers("times"), data.numbers("accel"), 20);
        JsonObject expected = ReferenceData.expected("r-datasets", "gam_mcycle").getAsJsonObject("expected");
        double[] at = ReferenceData.numbers(expected.get("times"));
        JsonObject ps = expected.getAsJsonObject("ps20_reml");
        double[] fit = ReferenceData.numbers(ps.get("fit"));
        double[] se = ReferenceData.numbers(ps.get("se"));
        AgreementRow.Collector heights =
                AgreementRow.collect("motorcycle, P-spline by REML: heights", "mgcv 1.8-41", 4, 10);
        AgreementRow.Collector errors =
                AgreementRow.collect("motorcycle, P-spline by REML: standard errors", "mgcv 1.8-41", 3, 0);
        for (int i = 0; i < at.length; i++) {
            heights.add(spline.value(at[i]), fit[i]);
            errors.add(spline.standardError(at[i]), se[i]);
        }
        rows.add(heights.row());
        rows.add(errors.row());
        rows.add(AgreementRow.of(
                "motorcycle: effective degrees of freedom",
                "mgcv 1.8-41",
                4,
                spline.effectiveDegreesOfFreedom(),
                ps.get("edf").getAsDouble()));
        rows.addAll(surface());
        return rows;
    }

    static PenalizedSurface airSurface() {
        ReferenceData data = ReferenceData.table("r-datasets/airquality.csv");
        return PenalizedSurface.fit(complete(data, "Temp"), complete(data, "Wind"), complete(data, "Ozone"), 7);
    }

    /** Rows with an ozone reading only: the range of a feature is that of the rows in use. */
    private static double[] complete(ReferenceData data, String column) {
        double[] ozone = data.numbers("Ozone");
        double[] values = data.numbers(column);
        return IntStream.range(0, ozone.length)
                .filter(i -> !Double.isNaN(ozone[i]))
                .mapToDouble(i -> values[i])
                .toArray();
    }

    private static List<AgreementRow> surface() {
        String source = "our R script: bases of mgcv 1.8-41, its REML (paraPen)";
        PenalizedSurface surface = airSurface();
        AgreementRow.Collector heights =
                AgreementRow.collect("air quality, ozone by temperature and wind: heights", source, 4, 0);
        AgreementRow.Collector errors =
                AgreementRow.collect("air quality: standard errors of the heights", source, 3, 0);
        double[] temperatures = {60, 70, 80, 90, 75, 85, 95};
        double[] winds = {12, 14, 8, 7, 10, 12, 6};
        for (int i = 0; i < winds.length; i++) {
            String point = Checks.number(temperatures[i]) + " " + Checks.number(winds[i]);
            heights.add(surface.value(temperatures[i], winds[i]), SURFACE.value("surface", "height " + point));
            errors.add(surface.standardError(temperatures[i], winds[i]), SURFACE.value("surface", "error " + point));
        }
        return List.of(
                heights.row(),
                errors.row(),
                AgreementRow.of(
                        "air quality: effective degrees of freedom",
                        source,
                        4,
                        surface.effectiveDegreesOfFreedom(),
                        SURFACE.value("surface", "effective degrees of freedom")),
                AgreementRow.of(
                        "air quality: residual variance",
                        source,
                        4,
                        surface.residualVariance(),
                        SURFACE.value("surface", "scale")));
    }

    static final List<String> CAR_FEATURES =
            List.of("cyl", "disp", "hp", "drat", "wt", "qsec", "vs", "am", "gear", "carb");

    static List<double[]> carFeatures() {
        ReferenceData data = ReferenceData.table("r-datasets/mtcars.csv");
        return CAR_FEATURES.stream().map(data::numbers).toList();
    }

    static double[] carResponse() {
        return ReferenceData.table("r-datasets/mtcars.csv").numbers("mpg");
    }

    static List<AgreementRow> penalised() {
        List<AgreementRow> rows = new ArrayList<>();
        for (double mixing : new double[] {0, 0.5, 1}) {
            String name = mixing == 0 ? "ridge" : mixing == 1 ? "lasso" : "elastic net, half and half";
            AgreementRow.Collector slopes = AgreementRow.collect(
                    "cars, " + name + ": slopes at three penalties",
                    mixing == 0 ? "our R script: closed form with glmnet's scaling" : "glmnet 4.1-6",
                    7,
                    1e-3);
            for (double penalty : new double[] {2, 0.5, 0.1}) {
                ElasticNet fit = ElasticNet.fit(CAR_FEATURES, carFeatures(), carResponse(), mixing, penalty);
                String check = "mixing " + shortest(mixing) + " penalty " + shortest(penalty);
                slopes.add(fit.intercept(), PENALISED.value(check, "(Intercept)"));
                for (String feature : CAR_FEATURES) {
                    slopes.add(fit.slope(feature), PENALISED.value(check, feature));
                }
            }
            rows.add(slopes.row());
        }
        rows.add(AgreementRow.of(
                "cars, ridge: slope of weight",
                "glmnet 4.1-6",
                7,
                ElasticNet.fit(CAR_FEATURES, carFeatures(), carResponse(), ElasticNet.RIDGE, 2)
                        .slope("wt"),
                PENALISED.value("ridge by glmnet penalty 2", "wt")));
        rows.addAll(partial());
        return rows;
    }

    private static String shortest(double value) {
        return value == Math.rint(value) ? Long.toString(Math.round(value)) : Double.toString(value);
    }

    private static List<AgreementRow> partial() {
        List<double[]> cars = carFeatures();
        double[] miles = carResponse();
        int[] first = IntStream.range(0, 24).toArray();
        int[] last = IntStream.range(24, miles.length).toArray();
        List<String> eachItsOwn =
                IntStream.range(0, miles.length).mapToObj(Integer::toString).toList();
        HeldOutErrors left =
                PartialLeastSquares.heldOut(CAR_FEATURES, cars, miles, 10, GroupedFolds.leaveOneOut(eachItsOwn));
        PartialLeastSquares fit = PartialLeastSquares.fit(CAR_FEATURES, cars, miles, 10);
        AgreementRow.Collector errors =
                AgreementRow.collect("cars, 0 to 10 components: error of left-out rows", PARTIAL, 8, 0);
        AgreementRow.Collector explained =
                AgreementRow.collect("cars: variation held by each component", PARTIAL, 8, 0);
        for (int c = 0; c <= 10; c++) {
            errors.add(left.error(c), PENALISED.value("partial", "left one out " + c));
            if (c > 0) {
                explained.add(100 * fit.explained(c), PENALISED.value("partial", "explained " + c));
            }
        }
        AgreementRow.Collector slopes = AgreementRow.collect("cars, 3 components: slopes", PARTIAL, 8, 0);
        for (int k = 0; k < CAR_FEATURES.size(); k++) {
            slopes.add(fit.slopes(3)[k], PENALISED.value("partial", "slope of 3 " + CAR_FEATURES.get(k)));
        }
        double[] predicted = PartialLeastSquares.fit(
                        CAR_FEATURES, FeatureRows.pick(cars, first), MixedDesign.pick(miles, first), 2)
                .predict(FeatureRows.pick(cars, last), 2);
        double squares = 0;
        for (int i = 0; i < last.length; i++) {
            squares += Math.pow(predicted[i] - miles[last[i]], 2);
        }
        return List.of(
                errors.row(),
                explained.row(),
                slopes.row(),
                AgreementRow.of(
                        "cars, 2 components from 24 cars: error on the other eight",
                        PARTIAL,
                        8,
                        Math.sqrt(squares / last.length),
                        PENALISED.value("partial", "test error 2")));
    }

    static List<AgreementRow> process() {
        JsonObject expected =
                ReferenceData.expected("gaussian-process", "gp_small").getAsJsonObject("expected");
        double[] x = ReferenceData.numbers(expected.get("X"));
        double[] y = ReferenceData.numbers(expected.get("y"));
        double[] at = ReferenceData.numbers(expected.get("Xs"));
        List<AgreementRow> rows = new ArrayList<>();
        for (ProcessShape shape : ProcessShape.values()) {
            JsonObject one = expected.getAsJsonObject(
                    switch (shape) {
                        case SQUARED_EXPONENTIAL -> "rbf";
                        case MATERN_FIVE_HALVES -> "matern52";
                        case MATERN_THREE_HALVES -> "matern32";
                    });
            GaussianProcess process =
                    GaussianProcess.of(List.of(x), y, shape, new double[] {0.8}, 1, Math.sqrt(0.01), 0);
            AgreementRow.Collector numbers = AgreementRow.collect(
                    "eight points, " + words(shape) + ": means, errors, log likelihood", LEARN, 9, 0);
            double[] means = ReferenceData.numbers(one.get("mean"));
            double[] errors = ReferenceData.numbers(one.get("sd_latent"));
            for (int i = 0; i < at.length; i++) {
                numbers.add(process.value(at[i]), means[i]);
                numbers.add(process.standardError(at[i]), errors[i]);
            }
            numbers.add(process.logLikelihood(), one.get("lml").getAsDouble());
            rows.add(numbers.row());
        }
        for (ProcessShape shape : ProcessShape.values()) {
            rows.addAll(air(shape));
        }
        return rows;
    }

    private static List<AgreementRow> air(ProcessShape shape) {
        ReferenceData data = ReferenceData.table("r-datasets/airquality.csv");
        GaussianProcess process = GaussianProcess.fit(
                List.of(complete(data, "Temp"), complete(data, "Wind")), complete(data, "Ozone"), shape);
        String name = words(shape);
        // Their search stops at about four digits of the lengths.
        AgreementRow.Collector sizes = AgreementRow.collect(
                "air quality, " + name + ": lengths, size and noise by maximum likelihood", LEARN, 3, 0);
        sizes.add(process.surfaceStandardDeviation(), PROCESS.value(name, "surface"));
        sizes.add(process.noiseStandardDeviation(), PROCESS.value(name, "noise"));
        sizes.add(process.lengths()[0], PROCESS.value(name, "length 1"));
        sizes.add(process.lengths()[1], PROCESS.value(name, "length 2"));
        AgreementRow.Collector heights =
                AgreementRow.collect("air quality, " + name + ": heights and their errors", LEARN, 3, 0);
        double[][] points = {{60, 12}, {80, 8}, {90, 7}, {75, 10}, {95, 6}, {85, 15}};
        for (double[] point : points) {
            String at = Checks.number(point[0]) + " " + Checks.number(point[1]);
            heights.add(process.value(point), PROCESS.value(name, "height " + at));
            heights.add(process.standardError(point), PROCESS.value(name, "error " + at));
        }
        return List.of(
                AgreementRow.of(
                        "air quality, " + name + ": log likelihood at the optimum",
                        LEARN,
                        8,
                        process.logLikelihood(),
                        PROCESS.value(name, "log likelihood")),
                sizes.row(),
                heights.row());
    }

    private static String words(ProcessShape shape) {
        return shape.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
