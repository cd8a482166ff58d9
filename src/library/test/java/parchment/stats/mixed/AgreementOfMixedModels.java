package parchment.stats.mixed;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import parchment.stats.AgreementRow;
import parchment.stats.Estimate;
import parchment.stats.ReferenceData;
import parchment.stats.ReferenceFits;
import parchment.stats.ordinal.OrdinalMixedModel;

/** Linear mixed models beside lme4 1.1-31 and lmerTest 3.1-3 (src/library/test/r/mixed-models.R), ordinal ones beside ordinal 2022.11-16. */
public final class AgreementOfMixedModels {
    private static final String LME4 = "lme4";
    private static final ReferenceFits FITS = ReferenceFits.of("mixed-models");
    private static final ReferenceFits ORDINAL = ReferenceFits.of("ordinal");

    private AgreementOfMixedModels() {}

    public static MixedDesign panel() {
        ReferenceData data = ReferenceData.table("panel/panel.csv.gz");
        return MixedDesign.of("score", data.numbers("score"))
                .withCovariate("x1", data.numbers("x1"))
                .withCovariate("x2", data.numbers("x2"))
                .withCovariate("x3", data.numbers("x3"))
                .withRandom(RandomTerm.intercept("taster", data.words("taster")))
                .withRandom(RandomTerm.intercept("session", data.words("session")))
                .withRandom(RandomTerm.intercept("batch", data.words("batch")));
    }

    public static List<AgreementRow> linear() {
        Map<String, Supplier<MixedDesign>> designs = new LinkedHashMap<>();
        designs.put("sleepstudy", LinearMixedModelTest::sleepstudy);
        designs.put("Dyestuff", () -> LinearMixedModelTest.dyestuff("Dyestuff"));
        designs.put("Dyestuff2", () -> LinearMixedModelTest.dyestuff("Dyestuff2"));
        designs.put("Penicillin", LinearMixedModelTest::penicillin);
        designs.put("Pastes", LinearMixedModelTest::pastes);
        designs.put("cake", LinearMixedModelTest::cake);
        designs.put("panel", AgreementOfMixedModels::panel);
        List<AgreementRow> rows = new ArrayList<>();
        designs.forEach((name, design) -> rows.addAll(one(name, design.get())));
        rows.addAll(predictions());
        return rows;
    }

    private static List<AgreementRow> one(String name, MixedDesign design) {
        LinearMixedModel model = design.fit();
        double sigma = FITS.value(name, "residual");
        List<AgreementRow> rows = new ArrayList<>();
        rows.add(AgreementRow.of(
                name + ": criterion (REML)", LME4, 9, model.criterion(), FITS.value(name, "criterion")));
        AgreementRow.Collector fixed = AgreementRow.collect(name + ": fixed terms", LME4, 6, 0);
        // With ten tasters lme4's search, which sees the panel's criterion only, stops short of the taster variance's
        // sixth digit.
        AgreementRow.Collector errors =
                AgreementRow.collect(name + ": their standard errors", LME4, name.equals("panel") ? 5 : 6, 0);
        // lmerTest takes its second derivatives by differences of the criterion, which limits its digits.
        AgreementRow.Collector degrees =
                AgreementRow.collect(name + ": Satterthwaite's degrees of freedom", "lmerTest", 3, 0);
        for (Estimate term : model.terms()) {
            fixed.add(term.estimate(), FITS.value(name, "fixed " + term.name()));
            errors.add(term.standardError(), FITS.value(name, "error " + term.name()));
            degrees.add(term.degreesOfFreedom(), FITS.value(name, "degrees " + term.name()));
        }
        rows.add(fixed.row());
        rows.add(errors.row());
        rows.add(degrees.row());
        AgreementRow.Collector deviations = AgreementRow.collect(name + ": standard deviations", LME4, 5, 1e-2 * sigma);
        deviations.add(model.residualStandardDeviation(), sigma);
        for (VarianceComponent component : model.varianceComponents()) {
            if (!component.isCovariance() && !component.term().equals("Residual")) {
                deviations.add(
                        component.standardDeviation(),
                        FITS.value(name, "deviation " + component.term() + " " + component.effect()));
            }
        }
        rows.add(deviations.row());
        if (FITS.all(name).keySet().stream().anyMatch(key -> key.startsWith("effect "))) {
            rows.addAll(effects(name, model));
        }
        return rows;
    }

    private static AgreementRow panelAtTheirVariances() {
        LinearMixedModel model = panel().fit();
        double[] theirs = model.randomNames().stream()
                .mapToDouble(term ->
                        FITS.value("panel", "deviation " + term + " (Intercept)") / FITS.value("panel", "residual"))
                .toArray();
        return AgreementRow.of(
                "panel: criterion at lme4's variances",
                LME4,
                9,
                model.criterionAt(theirs),
                FITS.value("panel", "criterion"));
    }

    private static List<AgreementRow> effects(String name, LinearMixedModel model) {
        double size = FITS.all(name).entrySet().stream()
                .filter(e -> e.getKey().startsWith("effect ") && !e.getKey().startsWith("effect error"))
                .mapToDouble(e -> Math.abs(e.getValue()))
                .max()
                .orElseThrow();
        double floor = Math.max(size, 1e-2 * FITS.value(name, "residual"));
        AgreementRow.Collector effects =
                AgreementRow.collect(name + ": predicted effects of groups", LME4, 5, 1e-2 * floor);
        AgreementRow.Collector errors = AgreementRow.collect(
                name + ": their errors, fixed terms estimated",
                "Henderson's equations with lme4's matrices",
                5,
                1e-2 * floor);
        for (String term : model.randomNames()) {
            for (GroupEffect effect : model.groupEffects(term)) {
                String key = term + " " + effect.group() + " " + effect.effect();
                effects.add(effect.estimate(), FITS.value(name, "effect " + key));
                errors.add(effect.standardError(), FITS.value(name, "effect error " + key));
            }
        }
        return List.of(effects.row(), errors.row());
    }

    private static List<AgreementRow> predictions() {
        MixedDesign design = LinearMixedModelTest.sleepstudy();
        LinearMixedModel model = design.fit();
        double[] average = model.predict(design, Prediction.AVERAGE_GROUP);
        double[] withGroups = model.predict(design, Prediction.WITH_GROUPS);
        AgreementRow.Collector predictions =
                AgreementRow.collect("sleepstudy: predictions for an average and for a known group", LME4, 6, 0);
        for (int row : new int[] {1, 57, 180}) {
            predictions.add(average[row - 1], FITS.value("sleepstudy", "predicted for an average group row " + row));
            predictions.add(withGroups[row - 1], FITS.value("sleepstudy", "predicted with groups row " + row));
        }
        LikelihoodRatio batches = LikelihoodRatio.of(
                LinearMixedModelTest.pastes().withoutRandom("batch").fit(),
                LinearMixedModelTest.pastes().fit());
        return List.of(
                panelAtTheirVariances(),
                predictions.row(),
                AgreementRow.of(
                        "Pastes: likelihood ratio of the batches",
                        LME4,
                        6,
                        batches.statistic(),
                        FITS.value("Pastes without batch", "likelihood ratio")));
    }

    public static MixedDesign wine() {
        ReferenceData data = ReferenceData.table("ordinal/wine.csv");
        return MixedDesign.of("rating", data.numbers("rating"))
                .withFactor("temp", data.words("temp"))
                .withFactor("contact", data.words("contact"));
    }

    public static MixedDesign wineWithJudges() {
        ReferenceData data = ReferenceData.table("ordinal/wine.csv");
        return wine().withRandom(RandomTerm.intercept("judge", data.words("judge")));
    }

    public static MixedDesign wineWithBottles() {
        ReferenceData data = ReferenceData.table("ordinal/wine.csv");
        return wineWithJudges()
                .withoutFixed("contact")
                .withRandom(RandomTerm.intercept("bottle", data.words("bottle")));
    }

    public static List<AgreementRow> ordinal() {
        List<AgreementRow> rows = new ArrayList<>();
        rows.addAll(ordinal("wine without judges", wine()));
        rows.addAll(ordinal("wine", wineWithJudges()));
        rows.addAll(ordinal("wine with bottles", wineWithBottles()));
        return rows;
    }

    private static List<AgreementRow> ordinal(String name, MixedDesign design) {
        String source = "ordinal";
        OrdinalMixedModel model = OrdinalMixedModel.fit(design);
        List<AgreementRow> rows = new ArrayList<>();
        rows.add(AgreementRow.of(
                name + ": log likelihood", source, 9, model.logLikelihood(), ORDINAL.value(name, "log likelihood")));
        AgreementRow.Collector estimates = AgreementRow.collect(name + ": thresholds and terms", source, 5, 0);
        AgreementRow.Collector errors = AgreementRow.collect(name + ": their standard errors", source, 4, 0);
        for (Estimate threshold : model.thresholds()) {
            estimates.add(threshold.estimate(), ORDINAL.value(name, "threshold " + threshold.name()));
            errors.add(threshold.standardError(), ORDINAL.value(name, "error " + threshold.name()));
        }
        for (Estimate term : model.terms()) {
            estimates.add(term.estimate(), ORDINAL.value(name, "fixed " + term.name()));
            errors.add(term.standardError(), ORDINAL.value(name, "error " + term.name()));
        }
        rows.add(estimates.row());
        rows.add(errors.row());
        if (design.randomTerms().isEmpty()) {
            return rows;
        }
        AgreementRow.Collector deviations = AgreementRow.collect(name + ": standard deviations", source, 5, 0);
        AgreementRow.Collector effects =
                AgreementRow.collect(name + ": predicted effects and their errors", source, 4, 0.1);
        for (RandomTerm term : design.randomTerms()) {
            deviations.add(model.standardDeviation(term.name()), ORDINAL.value(name, "deviation " + term.name()));
            for (GroupEffect effect : model.groupEffects(term.name())) {
                String key = term.name() + " " + effect.group();
                effects.add(effect.estimate(), ORDINAL.value(name, "effect " + key));
                effects.add(effect.standardError(), ORDINAL.value(name, "effect error " + key));
            }
        }
        rows.add(deviations.row());
        rows.add(effects.row());
        return rows;
    }
}
