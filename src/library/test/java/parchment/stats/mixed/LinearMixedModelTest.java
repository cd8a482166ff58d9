package parchment.stats.mixed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import parchment.stats.Estimate;
import parchment.stats.ReferenceData;
import parchment.stats.linear.SmallSolve;

/** Agrees with lme4 1.1-31 and lmerTest 3.1-3; data, licences and tolerances in reference/lme4. */
@Tag("agrees-with")
public class LinearMixedModelTest {

    record Case(String check, String fit, Likelihood likelihood, Supplier<MixedDesign> design) {
        JsonObject expected() {
            return ReferenceData.expected("lme4", check)
                    .getAsJsonObject("expected")
                    .getAsJsonObject(fit);
        }

        @Override
        public String toString() {
            return check + " " + fit;
        }
    }

    static final Likelihood REML = Likelihood.RESTRICTED;
    static final Likelihood ML = Likelihood.FULL;

    static List<Case> cases() {
        return List.of(
                new Case("lmm_sleepstudy", "reml_corr", REML, LinearMixedModelTest::sleepstudy),
                new Case("lmm_sleepstudy", "ml_corr", ML, LinearMixedModelTest::sleepstudy),
                new Case("lmm_sleepstudy", "reml_uncorr", REML, LinearMixedModelTest::sleepstudyUncorrelated),
                new Case("lmm_sleepstudy", "reml_intercept", REML, LinearMixedModelTest::sleepstudyIntercept),
                new Case("lmm_dyestuff", "reml", REML, () -> dyestuff("Dyestuff")),
                new Case("lmm_dyestuff", "ml", ML, () -> dyestuff("Dyestuff")),
                new Case("lmm_dyestuff2", "reml", REML, () -> dyestuff("Dyestuff2")),
                new Case("lmm_pastes", "reml", REML, LinearMixedModelTest::pastes),
                new Case("lmm_pastes", "ml", ML, LinearMixedModelTest::pastes),
                new Case("lmm_penicillin", "reml", REML, LinearMixedModelTest::penicillin),
                new Case("lmm_penicillin", "ml", ML, LinearMixedModelTest::penicillin),
                new Case("lmm_machines", "reml", REML, LinearMixedModelTest::machines),
                new Case("lmm_cake", "reml", REML, LinearMixedModelTest::cake),
                new Case("lmm_carrots", "full", REML, LinearMixedModelTest::carrotsFull),
                new Case("lmm_carrots", "doc_model", REML, LinearMixedModelTest::carrots),
                new Case("lmm_ham", "m1", REML, LinearMixedModelTest::ham),
                new Case("lmm_ham", "m2", REML, LinearMixedModelTest::hamWithGender),
                new Case("lmm_TVbo", "colour", REML, LinearMixedModelTest::screens),
                new Case("lmm_TVbo", "sharp", REML, LinearMixedModelTest::screensSharpness));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void criterionAtTheirVariancesIsTheSame(Case one) {
        LinearMixedModel model = one.design().get().fit(one.likelihood());
        JsonObject expected = one.expected();
        double criterion = expected.get("criterion").getAsDouble();
        assertEquals(criterion, model.criterionAt(theirTheta(model, expected)), 1e-9 * criterion);
    }

    @ParameterizedTest
    @MethodSource("cases")
    void optimumIsNoHigherThanTheirs(Case one) {
        LinearMixedModel model = one.design().get().fit(one.likelihood());
        double criterion = one.expected().get("criterion").getAsDouble();
        assertTrue(model.criterion() <= criterion + 1e-6, model.criterion() + " is above " + criterion);
        assertTrue(model.criterion() >= criterion - 1e-5, model.criterion() + " is far below " + criterion);
        assertEquals(model.criterion(), model.criterionAt(model.theta()), 1e-9 * criterion);
    }

    @ParameterizedTest
    @MethodSource("cases")
    void fixedTermsAndTheirDegreesOfFreedomAgree(Case one) {
        LinearMixedModel model = one.design().get().fit(one.likelihood());
        JsonObject expected = one.expected();
        int number = 0;
        for (JsonElement element : expected.getAsJsonArray("summary_coef")) {
            JsonObject row = element.getAsJsonObject();
            Estimate estimate = model.term(row.get("_row").getAsString());
            double standardError = row.get("Std. Error").getAsDouble();
            assertEquals(row.get("Estimate").getAsDouble(), estimate.estimate(), 1e-4 * standardError, row.toString());
            assertEquals(standardError, estimate.standardError(), 1e-4 * standardError, row.toString());
            double df = row.get("df").getAsDouble();
            assertEquals(df, estimate.degreesOfFreedom(), 1e-3 * df, row.toString());
            number++;
        }
        assertEquals(model.columnNames().size(), number);
    }

    @ParameterizedTest
    @MethodSource("cases")
    void variancesAgree(Case one) {
        LinearMixedModel model = one.design().get().fit(one.likelihood());
        double total = 0;
        for (VarianceComponent component : model.varianceComponents()) {
            total += component.isCovariance() ? 0 : component.variance();
        }
        for (JsonElement element : one.expected().getAsJsonArray("varcorr")) {
            JsonObject row = element.getAsJsonObject();
            String term = row.get("grp").getAsString();
            if (term.equals("Residual")) {
                double sigma = row.get("sdcor").getAsDouble();
                assertEquals(sigma, model.residualStandardDeviation(), 1e-5 * sigma);
                continue;
            }
            String effect = row.get("var1").getAsString();
            String other =
                    row.get("var2").isJsonNull() ? effect : row.get("var2").getAsString();
            double variance = row.get("vcov").getAsDouble();
            double ours = covariance(model, term, effect, other);
            assertEquals(variance, ours, 2e-4 * Math.abs(variance) + 1e-7 * total, term + " " + effect + " " + other);
        }
    }

    @Test
    void predictedSubjectsAgree() {
        LinearMixedModel model = sleepstudy().fit();
        List<GroupEffect> effects = model.groupEffects("Subject");
        int at = 0;
        for (JsonElement row : ReferenceData.expected("lme4", "lmm_sleepstudy")
                .getAsJsonObject("expected")
                .getAsJsonArray("ranef_reml_corr")) {
            assertEquals(
                    row.getAsJsonObject().get("(Intercept)").getAsDouble(),
                    effects.get(at++).estimate(),
                    2e-3);
            assertEquals(
                    row.getAsJsonObject().get("Days").getAsDouble(),
                    effects.get(at++).estimate(),
                    2e-4);
        }
        assertEquals(36, at);
    }

    @Test
    void jointTestsOfHamAgree() {
        LinearMixedModel model = ham().fit();
        FTest product = model.test(
                "Product",
                rows(
                        model,
                        List.of(
                                Map.of("Product2", 1.0, "Product2:Information2", 0.5),
                                Map.of("Product3", 1.0, "Product3:Information2", 0.5),
                                Map.of("Product4", 1.0, "Product4:Information2", 0.5))));
        assertEquals(6.99008902206102, product.statistic(), 1e-6);
        assertEquals(560, product.denominator(), 1e-3);
        assertEquals(0.000127124576390723, product.probability(), 1e-9);
        FTest information = model.test(
                "Information",
                rows(
                        model,
                        List.of(Map.of(
                                "Information2", 1.0,
                                "Product2:Information2", 0.25,
                                "Product3:Information2", 0.25,
                                "Product4:Information2", 0.25))));
        assertEquals(1.4892904532555, information.statistic(), 1e-6);
        FTest interaction = model.test("Product:Information");
        assertEquals(0.790880792178527, interaction.statistic(), 1e-6);
        assertEquals(3, interaction.numerator());
    }

    @Test
    void jointTestsOfScreensAgree() {
        LinearMixedModel model = screens().fit();
        List<Map<String, Double>> contrasts = new ArrayList<>();
        for (String set : List.of("TV2", "TV3")) {
            Map<String, Double> weights = new LinkedHashMap<>(Map.of("TVset" + set, 1.0));
            for (String picture : List.of("2", "3", "4")) {
                weights.put("TVset" + set + ":Picture" + picture, 0.25);
            }
            contrasts.add(weights);
        }
        FTest sets = model.test("TVset", rows(model, contrasts));
        // The balanced table's ratio of mean squares: 110.756875 / 6.42997024.
        assertEquals(17.2250991682365, sets.statistic(), 2e-4);
        assertEquals(14, sets.denominator(), 1e-2);
        List<Map<String, Double>> pictures = new ArrayList<>();
        for (String picture : List.of("2", "3", "4")) {
            pictures.add(Map.of(
                    "Picture" + picture, 1.0,
                    "TVsetTV2:Picture" + picture, 1.0 / 3,
                    "TVsetTV3:Picture" + picture, 1.0 / 3));
        }
        FTest picture = model.test("Picture", rows(model, pictures));
        assertEquals(4.231946268, picture.statistic(), 2e-4);
        assertEquals(21, picture.denominator(), 0.02);
        FTest interaction = model.test("TVset:Picture");
        assertEquals(2.68753815, interaction.statistic(), 1e-4);
        assertEquals(138, interaction.denominator(), 0.05);
    }

    @Test
    void daysTestOfSleepstudyAgrees() {
        FTest days = sleepstudy().fit().test("Days");
        assertEquals(45.8530037651082, days.statistic(), 1e-4);
        assertEquals(17, days.denominator(), 1e-4);
        assertEquals(3.263789e-06, days.probability(), 1e-10);
    }

    @Test
    void likelihoodRatioAgrees() {
        LikelihoodRatio ratio = LikelihoodRatio.of(
                sleepstudyUncorrelated().fit(ML), sleepstudy().fit(ML));
        JsonElement row = ReferenceData.expected("lme4", "lmm_sleepstudy")
                .getAsJsonObject("expected")
                .getAsJsonArray("lrt_corr_vs_uncorr_ML")
                .get(1);
        assertEquals(row.getAsJsonObject().get("Chisq").getAsDouble(), ratio.statistic(), 1e-5);
        assertEquals(row.getAsJsonObject().get("Pr(>Chisq)").getAsDouble(), ratio.probability(), 1e-5);
    }

    /** lmerTest's ranova: 44.78640 for leaving out the assessors' own view of each set. */
    @Test
    void likelihoodRatioOfARandomTermAgrees() {
        LikelihoodRatio ratio = LikelihoodRatio.of(
                screens().withoutRandom("Assessor:TVset").fit(), screens().fit());
        assertEquals(44.78640, ratio.statistic(), 1e-4);
        assertEquals(1, ratio.degreesOfFreedom());
    }

    static double covariance(LinearMixedModel model, String term, String effect, String other) {
        for (VarianceComponent c : model.varianceComponents()) {
            boolean same = c.effect().equals(effect) && c.otherEffect().equals(other);
            boolean mirrored = c.effect().equals(other) && c.otherEffect().equals(effect);
            if (c.term().equals(term) && (same || mirrored)) {
                return c.variance();
            }
        }
        throw new AssertionError("no component " + term + " " + effect + " " + other);
    }

    /** Relative Cholesky factors from their printed variances and covariances. */
    static double[] theirTheta(LinearMixedModel model, JsonObject expected) {
        double sigma = expected.get("sigma").getAsDouble();
        List<Double> theta = new ArrayList<>();
        for (RandomBlock block : model.data().blocks) {
            int size = block.size();
            double[][] relative = new double[size][size];
            for (JsonElement element : expected.getAsJsonArray("varcorr")) {
                JsonObject row = element.getAsJsonObject();
                if (row.get("grp").getAsString().equals(block.name)) {
                    int i = block.components.indexOf(row.get("var1").getAsString());
                    int j = row.get("var2").isJsonNull()
                            ? i
                            : block.components.indexOf(row.get("var2").getAsString());
                    relative[i][j] = row.get("vcov").getAsDouble() / (sigma * sigma);
                    relative[j][i] = relative[i][j];
                }
            }
            double[][] lower = size == 1
                    ? new double[][] {{Math.sqrt(relative[0][0])}}
                    : SmallSolve.cholesky(relative).orElseThrow();
            for (int c = 0; c < size; c++) {
                for (int r = c; r < size; r++) {
                    theta.add(lower[r][c]);
                }
            }
        }
        return theta.stream().mapToDouble(Double::doubleValue).toArray();
    }

    static double[][] rows(LinearMixedModel model, List<Map<String, Double>> contrasts) {
        double[][] rows = new double[contrasts.size()][model.columnNames().size()];
        for (int i = 0; i < rows.length; i++) {
            double[] row = rows[i];
            contrasts.get(i).forEach((name, weight) -> row[model.columnNames().indexOf(name)] = weight);
        }
        return rows;
    }

    public static MixedDesign sleepstudy() {
        ReferenceData data = ReferenceData.table("lme4/sleepstudy.csv");
        return MixedDesign.of("Reaction", data.numbers("Reaction"))
                .withCovariate("Days", data.numbers("Days"))
                .withRandom(
                        RandomTerm.intercept("Subject", data.words("Subject")).withSlope("Days", data.numbers("Days")));
    }

    static MixedDesign sleepstudyUncorrelated() {
        ReferenceData data = ReferenceData.table("lme4/sleepstudy.csv");
        return sleepstudyIntercept()
                .withRandom(RandomTerm.slope("Subject.1", data.words("Subject"), "Days", data.numbers("Days")));
    }

    public static MixedDesign sleepstudyIntercept() {
        ReferenceData data = ReferenceData.table("lme4/sleepstudy.csv");
        return sleepstudy().withoutRandom("Subject").withRandom(RandomTerm.intercept("Subject", data.words("Subject")));
    }

    static MixedDesign dyestuff(String file) {
        ReferenceData data = ReferenceData.table("lme4/" + file + ".csv");
        return MixedDesign.of("Yield", data.numbers("Yield"))
                .withRandom(RandomTerm.intercept("Batch", data.words("Batch")));
    }

    static MixedDesign pastes() {
        ReferenceData data = ReferenceData.table("lme4/Pastes.csv");
        return MixedDesign.of("strength", data.numbers("strength"))
                .withRandom(RandomTerm.intercept("sample", data.words("sample")))
                .withRandom(RandomTerm.intercept("batch", data.words("batch")));
    }

    static MixedDesign penicillin() {
        ReferenceData data = ReferenceData.table("lme4/Penicillin.csv");
        return MixedDesign.of("diameter", data.numbers("diameter"))
                .withRandom(RandomTerm.intercept("plate", data.words("plate")))
                .withRandom(RandomTerm.intercept("sample", data.words("sample")));
    }

    static MixedDesign machines() {
        ReferenceData data = ReferenceData.table("lme4/Machines.csv");
        return MixedDesign.of("score", data.numbers("score"))
                .withFactor("Machine", data.words("Machine"))
                .withRandom(RandomTerm.intercept("Worker", data.words("Worker")))
                .withRandom(RandomTerm.intercept(
                        "Worker:Machine", RandomTerm.crossedWith(data.words("Worker"), data.words("Machine"))));
    }

    static MixedDesign cake() {
        ReferenceData data = ReferenceData.table("lme4/cake.csv");
        return MixedDesign.of("angle", data.numbers("angle"))
                .withFactor("recipe", data.words("recipe"))
                .withFactor("temperature", data.words("temperature"))
                .withInteraction("recipe", "temperature")
                .withRandom(RandomTerm.intercept(
                        "recipe:replicate", RandomTerm.crossedWith(data.words("recipe"), data.words("replicate"))));
    }

    static MixedDesign carrots() {
        ReferenceData data = ReferenceData.table("lme4/carrots.csv");
        return MixedDesign.of("Preference", data.numbers("Preference"))
                .withCovariate("sens2", data.numbers("sens2"))
                .withFactor("Homesize", data.words("Homesize"))
                .withRandom(RandomTerm.intercept("Consumer", data.words("Consumer"))
                        .withSlope("sens2", data.numbers("sens2")));
    }

    static MixedDesign carrotsFull() {
        ReferenceData data = ReferenceData.table("lme4/carrots.csv");
        return MixedDesign.of("Preference", data.numbers("Preference"))
                .withCovariate("sens1", data.numbers("sens1"))
                .withCovariate("sens2", data.numbers("sens2"))
                .withFactor("Homesize", data.words("Homesize"))
                .withFactor("Age", data.words("Age"))
                .withRandom(RandomTerm.intercept("Consumer", data.words("Consumer"))
                        .withSlope("sens2", data.numbers("sens2")))
                .withRandom(RandomTerm.intercept("Product", data.words("Product")));
    }

    static MixedDesign ham() {
        ReferenceData data = ReferenceData.table("lme4/ham.csv");
        return MixedDesign.of("Informed.liking", data.numbers("Informed.liking"))
                .withFactor("Product", data.words("Product"))
                .withFactor("Information", data.words("Information"))
                .withInteraction("Product", "Information")
                .withRandom(RandomTerm.intercept("Consumer", data.words("Consumer")));
    }

    static MixedDesign hamWithGender() {
        ReferenceData data = ReferenceData.table("lme4/ham.csv");
        return MixedDesign.of("Informed.liking", data.numbers("Informed.liking"))
                .withFactor("Product", data.words("Product"))
                .withFactor("Information", data.words("Information"))
                .withFactor("Gender", data.words("Gender"))
                .withInteraction("Product", "Information")
                .withInteraction("Product", "Gender")
                .withInteraction("Information", "Gender")
                .withInteraction("Product:Information", "Gender")
                .withRandom(RandomTerm.intercept("Consumer", data.words("Consumer")))
                .withRandom(RandomTerm.intercept(
                        "Consumer:Product", RandomTerm.crossedWith(data.words("Consumer"), data.words("Product"))));
    }

    static MixedDesign screens() {
        ReferenceData data = ReferenceData.table("lme4/TVbo.csv");
        return screens(data, "Coloursaturation")
                .withRandom(RandomTerm.intercept(
                        "Assessor:TVset", RandomTerm.crossedWith(data.words("Assessor"), data.words("TVset"))))
                .withRandom(RandomTerm.intercept(
                        "Assessor:Picture", RandomTerm.crossedWith(data.words("Assessor"), data.words("Picture"))));
    }

    static MixedDesign screensSharpness() {
        ReferenceData data = ReferenceData.table("lme4/TVbo.csv");
        return screens(data, "Sharpnessofmovement")
                .withRandom(RandomTerm.intercept(
                        "Assessor:TVset", RandomTerm.crossedWith(data.words("Assessor"), data.words("TVset"))))
                .withRandom(RandomTerm.intercept(
                        "Repeat:Picture", RandomTerm.crossedWith(data.words("Repeat"), data.words("Picture"))));
    }

    private static MixedDesign screens(ReferenceData data, String response) {
        return MixedDesign.of(response, data.numbers(response))
                .withFactor("TVset", data.words("TVset"))
                .withFactor("Picture", data.words("Picture"))
                .withInteraction("TVset", "Picture")
                .withRandom(RandomTerm.intercept("Assessor", data.words("Assessor")));
    }
}
