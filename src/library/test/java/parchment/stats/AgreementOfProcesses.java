package parchment.stats;

import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import parchment.stats.linear.Checks;
import parchment.stats.regression.GaussianProcess;
import parchment.stats.regression.ProcessShape;

/** Gaussian processes beside scikit-learn. */
final class AgreementOfProcesses {
    private static final ReferenceFits PROCESS = ReferenceFits.of("gaussian-process");
    private static final String LEARN = "scikit-learn 1.2.1";

    private AgreementOfProcesses() {}

    /** Rows with an ozone reading only: the range of a feature is that of the rows in use. */
    private static double[] complete(ReferenceData data, String column) {
        double[] ozone = data.numbers("Ozone");
        double[] values = data.numbers(column);
        return IntStream.range(0, ozone.length)
                .filter(i -> !Double.isNaN(ozone[i]))
                .mapToDouble(i -> values[i])
                .toArray();
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
