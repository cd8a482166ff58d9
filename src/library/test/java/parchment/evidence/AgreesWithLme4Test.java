package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Checks that the columns and groups of the model are put together as an outside program puts them together.
 *
 * <p>R (lme4 1.1-31 with lmerTest 3.1-3, and nlme 3.1-162 for the course over the date) reads the raw table and works out every column
 * itself: {@code src/library/test/resources/reference/evidence-model/fit.R}. The data are invented; the numbers compared are R's.
 */
@Tag("agrees-with")
class AgreesWithLme4Test {
    /** The criterion is minus twice a restricted log likelihood. R works with raw columns as we do, so nothing has to be converted. */
    private static final double CRITERION = 1e-6;

    /** R's search stops within about this share of the optimum's variances. */
    private static final double ESTIMATE = 1e-5;

    static KnownTruth elevenDays() {
        KnownTruth truth = new KnownTruth();
        truth.days = 11;
        truth.batchesPerDay = 5;
        truth.lots = 4;
        truth.cuppers = 4;
        truth.cupsEach = 2;
        truth.cuppingSpread = 0.5;
        truth.sittingSpread = 0.3;
        truth.batchSpread = 0.3;
        truth.lotSpreadOfDrop = 1;
        return truth;
    }

    static KnownTruth withBends() {
        KnownTruth truth = elevenDays();
        truth.days = 24;
        truth.batchesPerDay = 4;
        truth.cupsEach = 1;
        truth.drift = 1.5;
        truth.season = 2;
        truth.cuppingSpread = 0.2;
        truth.cuppers = 3;
        return truth;
    }

    private final Map<String, Double> r = reference();

    @Test
    void drawsTheTableThatTheReferenceProgramRead() {
        assertEquals(
                resource("eleven-days.csv"), ReferenceScores.csv(elevenDays().draw(11)));
        assertEquals(resource("bends.csv"), ReferenceScores.csv(withBends().draw(24)));
    }

    @Test
    void agreesOnTheLine() {
        FittedScores fitted = FittedScores.of(KnownTruth.material(elevenDays().draw(11)), ModelForm.STANDARD);
        near("line reml", fitted.model().criterion(), CRITERION);
        near("line slope", fitted.slope().estimate(), ESTIMATE);
        near("line standard error", fitted.model().term(ScoreDesign.FEATURE).standardError(), ESTIMATE);
        near("line degrees of freedom", fitted.model().term(ScoreDesign.FEATURE).degreesOfFreedom(), 1e-3);
        near("line spread lot", fitted.spread("lot"), 1e-3);
        near("line spread day", fitted.spread("roast day"), 1e-3);
        near("line spread batch", fitted.spread("batch"), 1e-3);
        near("line spread cupper", fitted.spread("cupper"), 1e-3);
        near("line spread cupping", fitted.spread("cupping"), 1e-3);
        near("line spread sitting", fitted.spread("cupper within a cupping"), 1e-3);
        near("line spread Residual", fitted.cupToCup(), 1e-3);
    }

    @Test
    void agreesOnTheBend() {
        FittedScores fitted = FittedScores.of(
                KnownTruth.material(elevenDays().draw(11)), ModelForm.STANDARD.with(ModelForm.Shape.BEND));
        near("bend reml", fitted.model().criterion(), CRITERION);
        near("bend slope", fitted.slope().estimate(), 1e-4);
        near("bend square", fitted.slope(ScoreDesign.SQUARE).estimate(), 1e-4);
        near(
                "bend square standard error",
                fitted.model().term(ScoreDesign.SQUARE).standardError(),
                1e-4);
    }

    @Test
    void agreesOnTheCourseOverTheDate() {
        FittedScores fitted = FittedScores.of(KnownTruth.material(withBends().draw(24)), ModelForm.STANDARD);
        near("smooth reml", fitted.model().criterion(), CRITERION);
        near("smooth slope", fitted.slope().estimate(), 1e-4);
        near("smooth standard error", fitted.model().term(ScoreDesign.FEATURE).standardError(), 1e-4);
        near("smooth spread Residual", fitted.cupToCup(), 1e-3);
    }

    private void near(String name, double found, double relative) {
        double expected = Objects.requireNonNull(r.get(name), name);
        assertEquals(expected, found, relative * Math.abs(expected), name);
    }

    private static Map<String, Double> reference() {
        Map<String, Double> values = new HashMap<>();
        for (String line : resource("fits.csv").split("\n")) {
            String[] cells = line.split(",");
            if (!cells[0].equals("set")) {
                values.put(cells[0] + " " + cells[1], Double.parseDouble(cells[2]));
            }
        }
        return values;
    }

    private static String resource(String name) {
        try (InputStream in = AgreesWithLme4Test.class.getResourceAsStream("/reference/evidence-model/" + name)) {
            return new String(Objects.requireNonNull(in, name).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }
}
