package parchment.stats.mixed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.stats.Estimate;
import parchment.stats.ReferenceData;

/** NIST StRD certified values; the digits reached are the smallest over coefficients, or over standard errors and residual deviation. */
@Tag("agrees-with")
class LinearModelTest {

    private static double digits(double certified, double found) {
        if (certified == found) {
            return 15;
        }
        double error = certified == 0 ? Math.abs(found) : Math.abs(found - certified) / Math.abs(certified);
        return Math.min(15, -Math.log10(error));
    }

    static MixedDesign polynomial(String set, int degree) {
        ReferenceData data = ReferenceData.table("nist-strd/nist_" + set + ".csv");
        MixedDesign design = MixedDesign.of("y", data.numbers("y"));
        double[] x = data.numbers("x");
        for (int power = 1; power <= degree; power++) {
            double[] column = new double[x.length];
            for (int i = 0; i < x.length; i++) {
                column[i] = 1;
                for (int k = 0; k < power; k++) {
                    column[i] *= x[i];
                }
            }
            design = design.withCovariate("x^" + power, column);
        }
        return design;
    }

    static MixedDesign longley() {
        ReferenceData data = ReferenceData.table("nist-strd/nist_Longley.csv");
        MixedDesign design = MixedDesign.of("y", data.numbers("y"));
        for (int k = 1; k <= 6; k++) {
            design = design.withCovariate("x" + k, data.numbers("x" + k));
        }
        return design;
    }

    @ParameterizedTest
    @CsvSource({
        "Norris, 1, 12, 12",
        "Pontius, 2, 11, 12",
        "Longley, 6, 10, 10",
        "Wampler1, 5, 8, 0",
        "Wampler2, 5, 10, 0",
        "Wampler4, 5, 6, 12",
        "Filip, 10, 6, 6"
    })
    void reachesTheseCertifiedDigits(String set, int degree, double coefficientDigits, double errorDigits) {
        JsonObject expected =
                ReferenceData.expected("nist-strd", "nist_lin_" + set).getAsJsonObject("expected");
        double[] b = ReferenceData.numbers(expected.get("b"));
        double[] se = ReferenceData.numbers(expected.get("se"));
        LinearModel model = LinearModel.fit(set.equals("Longley") ? longley() : polynomial(set, degree));
        double worst = 15;
        double worstError = digits(expected.get("rsd").getAsDouble(), model.residualStandardDeviation());
        List<Estimate> terms = model.terms();
        assertEquals(b.length, terms.size());
        for (int k = 0; k < b.length; k++) {
            worst = Math.min(worst, digits(b[k], terms.get(k).estimate()));
            worstError = Math.min(worstError, digits(se[k], terms.get(k).standardError()));
        }
        assertTrue(worst >= coefficientDigits, set + " coefficients to " + worst + " digits");
        // Wampler1 and 2 fit exactly: their certified errors are 0, and only rounding is left.
        assertTrue(errorDigits == 0 || worstError >= errorDigits, set + " errors to " + worstError + " digits");
        assertEquals(expected.get("r2").getAsDouble(), model.rSquared(), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"SiRstv, 9", "SmLs01, 12", "AtmWtAg, 7", "SmLs07, 2"})
    void reachesTheseCertifiedDigitsOfTheVarianceRatio(String set, double wanted) {
        ReferenceData data = ReferenceData.table("nist-strd/nist_" + set + ".csv");
        JsonObject expected =
                ReferenceData.expected("nist-strd", "nist_anova_" + set).getAsJsonObject("expected");
        MixedDesign design = MixedDesign.of("y", data.numbers("y")).withFactor("group", data.words("group"));
        FTest test = LinearModel.fit(design).overall();
        double found = digits(expected.get("F").getAsDouble(), test.statistic());
        assertTrue(found >= wanted, set + " to " + found + " digits");
        assertEquals(expected.get("df_between").getAsInt(), test.numerator());
        assertEquals(expected.get("df_within").getAsInt(), test.denominator());
    }

    /** A mixed model without random terms is the same fit. */
    @Test
    void agreesWithAMixedModelWithoutRandomTerms() {
        LinearModel model = LinearModel.fit(longley());
        LinearMixedModel mixed = longley().fit();
        for (Estimate term : model.terms()) {
            assertEquals(term.estimate(), mixed.term(term.name()).estimate(), 1e-6 * Math.abs(term.estimate()));
            assertEquals(term.standardError(), mixed.term(term.name()).standardError(), 1e-6 * term.standardError());
            assertEquals(9, mixed.term(term.name()).degreesOfFreedom(), 1e-9);
        }
    }

    @Test
    void leveragesAddUpToTheNumberOfColumns() {
        double sum = 0;
        for (double leverage : LinearModel.fit(longley()).leverages()) {
            sum += leverage;
        }
        assertEquals(7, sum, 1e-9);
    }
}
