package parchment.stats.mixed;

import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import parchment.stats.AgreementRow;
import parchment.stats.Estimate;
import parchment.stats.ReferenceData;
import parchment.stats.regression.NonlinearModel;
import parchment.stats.regression.ResponseCurve;

/** Certified digits reached on NIST's Statistical Reference Datasets. */
public final class AgreementOfNist {
    private static final String NIST = "NIST StRD, certified";

    private AgreementOfNist() {}

    private static JsonObject certified(String check) {
        return ReferenceData.expected("nist-strd", check).getAsJsonObject("expected");
    }

    public static List<AgreementRow> linear() {
        List<AgreementRow> rows = new ArrayList<>();
        // Digits that plain double arithmetic reaches; Filip's columns have a condition of 1e15 and so lose about that
        // many.
        rows.addAll(linear("Norris", LinearModelTest.polynomial("Norris", 1), 12, 12));
        rows.addAll(linear("Pontius", LinearModelTest.polynomial("Pontius", 2), 11, 12));
        rows.addAll(linear("Longley", LinearModelTest.longley(), 10, 10));
        rows.addAll(linear("Wampler1", LinearModelTest.polynomial("Wampler1", 5), 8, 0));
        rows.addAll(linear("Wampler2", LinearModelTest.polynomial("Wampler2", 5), 10, 0));
        rows.addAll(linear("Wampler4", LinearModelTest.polynomial("Wampler4", 5), 6, 12));
        rows.addAll(linear("Filip", LinearModelTest.polynomial("Filip", 10), 6, 6));
        return rows;
    }

    private static List<AgreementRow> linear(String set, MixedDesign design, double least, double leastErrors) {
        JsonObject certified = certified("nist_lin_" + set);
        double[] b = ReferenceData.numbers(certified.get("b"));
        double[] se = ReferenceData.numbers(certified.get("se"));
        LinearModel model = LinearModel.fit(design);
        AgreementRow.Collector coefficients = AgreementRow.collect(set + " (linear): coefficients", NIST, least, 0);
        // Wampler1 and 2 fit exactly: NIST certifies errors of 0, where our 60 digits leave a last trace; counted on
        // the scale of
        // the coefficients.
        boolean exact = certified.get("rsd").getAsDouble() < 1e-20;
        AgreementRow.Collector errors = AgreementRow.collect(
                set + " (linear): standard errors" + (exact ? " (absolute)" : ""), NIST, leastErrors, exact ? 1 : 0);
        List<Estimate> terms = model.terms();
        for (int k = 0; k < b.length; k++) {
            coefficients.add(terms.get(k).estimate(), b[k]);
            errors.add(terms.get(k).standardError(), exact ? 0 : se[k]);
        }
        errors.add(
                model.residualStandardDeviation(),
                exact ? 0 : certified.get("rsd").getAsDouble());
        return List.of(coefficients.row(), errors.row());
    }

    public static List<AgreementRow> variance() {
        List<AgreementRow> rows = new ArrayList<>();
        // The response's constant leading digits (7 in AtmWtAg, 13 in SmLs07 and SmLs09) are lost before any
        // arithmetic.
        rows.add(variance("SiRstv", "nist_SiRstv.csv", 9));
        rows.add(variance("SmLs01", "nist_SmLs01.csv", 12));
        rows.add(variance("AtmWtAg", "nist_AtmWtAg.csv", 7));
        rows.add(variance("SmLs07", "nist_SmLs07.csv", 2));
        rows.add(variance("SmLs09", "nist_SmLs09.csv.gz", 2));
        return rows;
    }

    private static AgreementRow variance(String set, String file, double least) {
        ReferenceData data = ReferenceData.table("nist-strd/" + file);
        MixedDesign design = MixedDesign.of("y", data.numbers("y")).withFactor("group", data.words("group"));
        return AgreementRow.of(
                set + " (analysis of variance): F",
                NIST,
                least,
                LinearModel.fit(design).overall().statistic(),
                certified("nist_anova_" + set).get("F").getAsDouble());
    }

    static Map<String, ResponseCurve> curves() {
        Map<String, ResponseCurve> curves = new LinkedHashMap<>();
        curves.put("Misra1a", (x, b) -> b[0] * -Math.expm1(-b[1] * x[0]));
        curves.put("Chwirut2", (x, b) -> Math.exp(-b[0] * x[0]) / (b[1] + b[2] * x[0]));
        curves.put("DanielWood", (x, b) -> b[0] * Math.pow(x[0], b[1]));
        curves.put(
                "Gauss1",
                (x, b) -> b[0] * Math.exp(-b[1] * x[0])
                        + b[2] * Math.exp(-Math.pow(x[0] - b[3], 2) / (b[4] * b[4]))
                        + b[5] * Math.exp(-Math.pow(x[0] - b[6], 2) / (b[7] * b[7])));
        curves.put("Kirby2", (x, b) -> (b[0] + x[0] * (b[1] + x[0] * b[2])) / (1 + x[0] * (b[3] + x[0] * b[4])));
        curves.put("Hahn1", AgreementOfNist::cubicRatio);
        curves.put("MGH17", (x, b) -> b[0] + b[1] * Math.exp(-x[0] * b[3]) + b[2] * Math.exp(-x[0] * b[4]));
        curves.put("MGH09", (x, b) -> b[0] * (x[0] * x[0] + x[0] * b[1]) / (x[0] * x[0] + x[0] * b[2] + b[3]));
        curves.put("MGH10", (x, b) -> b[0] * Math.exp(b[1] / (x[0] + b[2])));
        curves.put("Thurber", AgreementOfNist::cubicRatio);
        curves.put("Ratkowsky2", (x, b) -> b[0] / (1 + Math.exp(b[1] - b[2] * x[0])));
        curves.put("Ratkowsky3", (x, b) -> b[0] / Math.pow(1 + Math.exp(b[1] - b[2] * x[0]), 1 / b[3]));
        curves.put("Eckerle4", (x, b) -> b[0] / b[1] * Math.exp(-0.5 * Math.pow((x[0] - b[2]) / b[1], 2)));
        curves.put("Bennett5", (x, b) -> b[0] * Math.pow(b[1] + x[0], -1 / b[2]));
        return curves;
    }

    private static double cubicRatio(double[] x, double[] b) {
        double t = x[0];
        return (b[0] + t * (b[1] + t * (b[2] + t * b[3]))) / (1 + t * (b[4] + t * (b[5] + t * b[6])));
    }

    public static List<AgreementRow> nonlinear() {
        List<AgreementRow> rows = new ArrayList<>();
        curves().forEach((set, curve) -> {
            rows.addAll(nonlinear(set, curve, 1));
            rows.addAll(nonlinear(set, curve, 2));
        });
        return rows;
    }

    private static List<AgreementRow> nonlinear(String set, ResponseCurve curve, int start) {
        JsonObject certified = certified("nist_nls_" + set);
        double[] b = ReferenceData.numbers(certified.get("b"));
        double[] se = ReferenceData.numbers(certified.get("se"));
        ReferenceData data = ReferenceData.table("nist-strd/nist_" + set + ".csv");
        NonlinearModel model = NonlinearModel.fit(
                data.numbers("x"),
                data.numbers("y"),
                IntStream.rangeClosed(1, b.length).mapToObj(k -> "b" + k).toList(),
                ReferenceData.numbers(certified.get("start" + start)),
                curve);
        String name = set + " (nonlinear, start " + start + ")";
        AgreementRow.Collector parameters = AgreementRow.collect(name + ": parameters", NIST, 7, 0);
        AgreementRow.Collector errors = AgreementRow.collect(name + ": standard errors", NIST, 7, 0);
        List<Estimate> terms = model.terms();
        for (int k = 0; k < b.length; k++) {
            parameters.add(terms.get(k).estimate(), b[k]);
            errors.add(terms.get(k).standardError(), se[k]);
        }
        errors.add(model.residualStandardDeviation(), certified.get("rsd").getAsDouble());
        return List.of(parameters.row(), errors.row());
    }
}
