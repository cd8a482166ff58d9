package parchment.stats.mixed;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import parchment.stats.Estimate;

/** What a fitted mixed model answers, on a balanced table worked by hand: three days of four scores, y = day + up and down. */
class MixedModelAnswersTest {
    private static final double[] Y = {4, 6, 4, 6, 8, 10, 8, 10, 6, 8, 6, 8};
    private static final double[] X = {0, 1, 0, 1, 0, 1, 0, 1, 0, 1, 0, 1};
    private static final double[] ODD = {-1, 1, 1, -1, 1, -1, -1, 1, 1, 1, -1, -1};

    private static MixedDesign table() {
        return MixedDesign.of("score", Y)
                .withCovariate("x", X)
                .withCovariate("z", ODD)
                .withRandom(RandomTerm.intercept(
                        "day", IntStream.range(0, 12).mapToObj(i -> "d" + i / 4).toList()));
    }

    /** Scores with chance in them: residual mean square 0.4583 on 8 degrees of freedom, as by an analysis of variance. */
    private static LinearMixedModel plain() {
        double[] y = {4, 7, 5, 6, 8, 10, 7, 11, 6, 8, 6, 7};
        return MixedDesign.of("score", y)
                .withCovariate("x", X)
                .withRandom(RandomTerm.intercept(
                        "day", IntStream.range(0, 12).mapToObj(i -> "d" + i / 4).toList()))
                .fit();
    }

    /**
     * By hand: day means 5.5, 9, 6.75; x doubles 6 means of 2.1667; residual squares after days and x; the variance between days is
     * (mean square of days - residual mean square) / 4.
     */
    @Test
    void agreesWithTheAnalysisOfVarianceOfABalancedTable() {
        double[] y = {4, 7, 5, 6, 8, 10, 7, 11, 6, 8, 6, 7};
        double[] dayMeans = {5.5, 9, 6.75};
        double grand = 85 / 12.0;
        double slope = (7 + 6 + 10 + 11 + 8 + 7 - (4 + 5 + 8 + 7 + 6 + 6)) / 6.0;
        double days = 0;
        for (double mean : dayMeans) {
            days += 4 * (mean - grand) * (mean - grand);
        }
        double rest = 0;
        for (int i = 0; i < 12; i++) {
            double fitted = dayMeans[i / 4] + slope * (X[i] - 0.5);
            rest += (y[i] - fitted) * (y[i] - fitted);
        }
        double residual = rest / 8;
        double between = (days / 2 - residual) / 4;
        LinearMixedModel model = plain();
        assertEquals(Math.sqrt(residual), model.residualStandardDeviation(), 1e-6);
        assertEquals(between, model.variance("day", "(Intercept)"), 1e-5);
        assertEquals(Math.sqrt(between), model.standardDeviation("day"), 1e-5);
        Estimate x = model.term("x");
        assertEquals(slope, x.estimate(), 1e-9);
        assertEquals(Math.sqrt(residual / 3), x.standardError(), 1e-6);
        assertEquals(8, x.degreesOfFreedom(), 1e-4);
        assertEquals(Math.sqrt(between / residual), model.theta()[0], 1e-5);
        // Shrunken day effects: (mean - grand) times between / (between + residual / 4).
        double shrink = between / (between + residual / 4);
        List<GroupEffect> effects = model.groupEffects("day");
        for (int d = 0; d < 3; d++) {
            assertEquals("d" + d, effects.get(d).group());
            assertEquals(shrink * (dayMeans[d] - grand), effects.get(d).estimate(), 1e-5);
        }
        double[] fitted = model.fitted();
        double[] residuals = model.residuals();
        for (int i = 0; i < 12; i++) {
            double expected = grand + slope * (X[i] - 0.5) + shrink * (dayMeans[i / 4] - grand);
            assertEquals(expected, fitted[i], 1e-5);
            assertEquals(y[i] - expected, residuals[i], 1e-5);
        }
        // Minus twice the restricted likelihood in closed form: days and the rest fall apart.
        double perDay = residual + 4 * between;
        double criterion = 10 * Math.log(2 * Math.PI)
                + 8 * Math.log(residual)
                + 2 * Math.log(perDay)
                + days / perDay
                + rest / residual
                + Math.log(12)
                + Math.log(3);
        assertEquals(criterion, model.criterion(), 1e-6);
        assertEquals(criterion, model.criterionAt(model.theta()), 1e-6);
        assertTrue(model.criterionAt(2 * model.theta()[0]) > criterion + 1e-3);
    }

    @Test
    void contrastsAreWeightedSums() {
        LinearMixedModel model = plain();
        Estimate sum = model.contrast("at one", Map.of("(Intercept)", 1.0, "x", 1.0));
        Estimate same = model.contrast("at one", 1, 1);
        assertEquals(model.coefficients()[0] + model.coefficients()[1], sum.estimate(), 1e-12);
        double[][] v = model.coefficientCovariance();
        assertEquals(Math.sqrt(v[0][0] + 2 * v[0][1] + v[1][1]), sum.standardError(), 1e-12);
        assertEquals(sum, same);
        assertEquals("at one", sum.name());
        Estimate twice = model.contrast("twice", Map.of("x", 2.0));
        assertEquals(2 * model.term("x").estimate(), twice.estimate(), 1e-12);
        assertEquals(2 * model.term("x").standardError(), twice.standardError(), 1e-12);
        assertEquals(model.term("x"), model.terms().get(1));
        assertEquals(
                List.of("(Intercept)", "x"),
                model.terms().stream().map(Estimate::name).toList());
    }

    @Test
    void saysWhichNameItDoesNotKnow() {
        LinearMixedModel model = plain();
        Map<String, org.junit.jupiter.api.function.Executable> asked = Map.of(
                "The model has no fixed column 'y'. Columns: (Intercept), x.",
                () -> model.term("y"),
                "The contrast 'c' asks for the column 'y', which the model does not have. Columns: (Intercept), x.",
                () -> model.contrast("c", Map.of("y", 1.0)),
                "The model has no fixed term 'y'. Fixed terms: (Intercept), x.",
                () -> model.test("y"),
                "The contrast 'c' needs one value of weights per row: there are 2 rows but 3 values of weights.",
                () -> model.contrast("c", 1, 2, 3),
                "The test 't' needs one value of weights per row: there are 2 rows but 1 values of weights.",
                () -> model.test("t", new double[][] {{1}}),
                "The criterion needs one value of theta per row: there are 1 rows but 2 values of theta.",
                () -> model.criterionAt(1, 2));
        asked.forEach((message, question) -> assertEquals(
                message, assertThrows(IllegalArgumentException.class, question).getMessage()));
    }

    @Test
    void aTestOfATermTakesItsColumns() {
        LinearMixedModel model = plain();
        FTest test = model.test("x");
        assertEquals(1, test.numerator());
        assertEquals(Math.pow(model.term("x").t(), 2), test.statistic(), 1e-9);
        assertEquals(model.term("x").probability(), test.probability(), 1e-9);
        LinearMixedModel factor = MixedDesign.of("score", Y)
                .withFactor(
                        "day", IntStream.range(0, 12).mapToObj(i -> "d" + i / 4).toList())
                .withCovariate("still", new double[12])
                .withCovariate("odd", ODD)
                .fit();
        assertEquals(2, factor.test("day").numerator());
        assertEquals(List.of("still"), factor.aliasedColumns());
        assertEquals("still: cannot be tested", factor.test("still").toString());
        assertTrue(Double.isNaN(factor.term("still").estimate()));
        assertTrue(Double.isNaN(factor.term("still").standardError()));
    }

    @Test
    void aTermThatIsNotInTheModelHasNoVariance() {
        LinearMixedModel model = plain();
        assertEquals(0, model.variance("lot", "(Intercept)"));
        assertEquals(0, model.variance("day", "x"));
        assertEquals(0, model.standardDeviation("lot"));
        assertEquals(List.of(), model.groupEffects("lot"));
        assertEquals(List.of("day"), model.randomNames());
        List<VarianceComponent> components = model.varianceComponents();
        assertEquals(2, components.size());
        assertEquals("Residual", components.get(1).term());
        assertEquals(
                Math.pow(model.residualStandardDeviation(), 2),
                components.get(1).variance(),
                1e-12);
    }

    /** Sleepstudy's published variances of intercept and slope differ 17-fold: the one is never taken for the other. */
    @Test
    void tellsTheVariancesOfATermsEffectsApart() {
        LinearMixedModel model = LinearMixedModelTest.sleepstudy().fit();
        assertEquals(612.1, model.variance("Subject", "(Intercept)"), 0.1);
        assertEquals(35.07, model.variance("Subject", "Days"), 0.01);
        assertEquals(3, model.theta().length);
        assertEquals(Likelihood.RESTRICTED, model.likelihood());
        assertEquals(6, model.parameterCount());
        assertTrue(model.evaluations() > 1);
    }

    @Test
    void handsOutCopies() {
        LinearMixedModel model = plain();
        model.coefficients()[0] = 99;
        model.coefficientCovariance()[0][0] = 99;
        model.theta()[0] = 99;
        model.innerTheta()[0] = 99;
        assertEquals(plain().coefficients()[0], model.coefficients()[0]);
        assertEquals(plain().coefficientCovariance()[0][0], model.coefficientCovariance()[0][0]);
        assertEquals(plain().theta()[0], model.theta()[0]);
    }

    @Test
    void saysWhatWasFitted() {
        LinearMixedModel model = plain();
        String sentence =
                "mixed model of score: 12 rows used, 0 left out, 2 fixed columns, random day; residual standard "
                        + "deviation 0.6770";
        assertEquals(sentence, model.toString());
        List<String> lines = model.text().lines().toList();
        assertEquals(sentence, lines.get(0));
        assertEquals(5, lines.size());
        assertTrue(lines.get(1).startsWith("  (Intercept)"), lines.get(1));
        assertTrue(lines.get(2).startsWith("  x"), lines.get(2));
        assertEquals("  day (Intercept): standard deviation 1.741", lines.get(3));
        assertEquals("  Residual: standard deviation 0.6770", lines.get(4));
        double[] gap = Y.clone();
        gap[3] = Double.NaN;
        gap[4] = 9;
        assertEquals(
                "mixed model of score: 11 rows used, 1 left out, 1 fixed columns, random none; residual standard deviation "
                        + "2.136",
                MixedDesign.of("score", gap).fit().toString());
    }

    @Test
    void aPerfectFitIsSaidAtTheEndOfTheSentence() {
        LinearMixedModel model = table().fit();
        assertTrue(
                model.toString()
                        .endsWith(
                                ". The residual variance is estimated as nearly zero: the terms reproduce the response."),
                model.toString());
    }

    @Test
    void predictsWithAndWithoutTheGroupAndForNewOnes() {
        LinearMixedModel model = plain();
        MixedDesign rows = MixedDesign.of("score", new double[3])
                .withCovariate("x", new double[] {0, 1, 1})
                .withRandom(RandomTerm.intercept("day", List.of("d1", "d1", "new")));
        double[] average = model.predict(rows, Prediction.AVERAGE_GROUP);
        double[] own = model.predict(rows, Prediction.WITH_GROUPS);
        double effect = model.groupEffects("day").get(1).estimate();
        double[] c = model.coefficients();
        assertArrayEquals(new double[] {c[0], c[0] + c[1], c[0] + c[1]}, average, 1e-9);
        assertArrayEquals(new double[] {c[0] + effect, c[0] + c[1] + effect, c[0] + c[1]}, own, 1e-9);
    }

    /** 400 draws: means as fitted, variances of one row and of two rows of a day as estimated, within 4 Monte-Carlo errors. */
    @Test
    void drawsResponsesWithTheVariancesItEstimated() {
        LinearMixedModel model = plain();
        double[] first = new double[400];
        double[] second = new double[400];
        double[] other = new double[400];
        for (int s = 0; s < 400; s++) {
            double[] y = model.simulate(s);
            first[s] = y[0];
            second[s] = y[2];
            other[s] = y[4];
        }
        double day = model.variance("day", "(Intercept)");
        double whole = day + Math.pow(model.residualStandardDeviation(), 2);
        assertEquals(model.coefficients()[0], mean(first), 4 * Math.sqrt(whole / 400));
        assertEquals(whole, covariance(first, first), 4 * whole * Math.sqrt(2 / 400.0));
        assertEquals(day, covariance(first, second), 4 * whole * Math.sqrt(2 / 400.0));
        assertEquals(0, covariance(first, other), 4 * whole * Math.sqrt(1 / 400.0));
        assertArrayEquals(model.simulate(5), model.simulate(5));
        assertNotEquals(model.simulate(5)[0], model.simulate(6)[0]);
    }

    private static double mean(double[] v) {
        return Arrays.stream(v).average().orElseThrow();
    }

    private static double covariance(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += (a[i] - mean(a)) * (b[i] - mean(b));
        }
        return sum / (a.length - 1);
    }
}
