package parchment.stats.ordinal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.stats.Estimate;
import parchment.stats.mixed.AgreementOfMixedModels;
import parchment.stats.mixed.LinearMixedModelTest;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.mixed.Prediction;
import parchment.stats.mixed.RandomTerm;

/** Numbers beside R's ordinal package are in {@link AgreementTest}; here what holds by itself. */
class OrdinalMixedModelTest {

    @Test
    void gradientAgreesWithDifferences() {
        OrdinalLikelihood likelihood = new OrdinalLikelihood(OrdinalRows.of(AgreementOfMixedModels.wineWithBottles()));
        double[] at = {-2.1, 0.4, 2.9, 4.4, 1.2, 0.9, 0.6};
        double[] gradient = new double[at.length];
        likelihood.value(at, gradient);
        for (int k = 0; k < at.length; k++) {
            double[] up = at.clone();
            double[] down = at.clone();
            up[k] += 1e-5;
            down[k] -= 1e-5;
            double slope = (likelihood.value(up, new double[at.length]) - likelihood.value(down, new double[at.length]))
                    / 2e-5;
            assertEquals(slope, gradient[k], 1e-6 * (1 + Math.abs(slope)), "parameter " + k);
        }
    }

    /** With two categories and no groups this is logistic regression: the estimate of a 2 by 2 table is its log odds ratio. */
    @Test
    void isLogisticRegressionForTwoScores() {
        double[] y = new double[40];
        double[] x = new double[40];
        for (int i = 0; i < 40; i++) {
            x[i] = i < 20 ? 0 : 1;
            y[i] = i < 6 || (i >= 20 && i < 35) ? 2 : 1;
        }
        Estimate slope = OrdinalMixedModel.fit(MixedDesign.of("y", y).withCovariate("x", x))
                .term("x");
        assertEquals(Math.log((15.0 / 5) / (6.0 / 14)), slope.estimate(), 1e-8);
        assertEquals(Math.sqrt(1.0 / 15 + 1.0 / 5 + 1.0 / 6 + 1.0 / 14), slope.standardError(), 1e-6);
    }

    @Test
    @Tag("holds-for-any")
    void doesNotDependOnTheUnitOfAColumnNorOnTheNumbersGivenToTheSteps() {
        MixedDesign design = AgreementOfMixedModels.wineWithJudges();
        double[] squared = design.response();
        double[] x = new double[squared.length];
        for (int i = 0; i < squared.length; i++) {
            squared[i] *= squared[i];
            x[i] = i % 7;
        }
        OrdinalMixedModel one = OrdinalMixedModel.fit(design.withCovariate("x", x));
        for (int i = 0; i < x.length; i++) {
            x[i] = 1000 * x[i] + 30_000;
        }
        OrdinalMixedModel other =
                OrdinalMixedModel.fit(design.withResponse(squared).withCovariate("x", x));
        assertEquals(one.logLikelihood(), other.logLikelihood(), 1e-8);
        assertEquals(one.term("x").estimate(), 1000 * other.term("x").estimate(), 1e-6);
        assertEquals(one.term("x").standardError(), 1000 * other.term("x").standardError(), 1e-5);
        assertEquals(one.term("tempwarm").estimate(), other.term("tempwarm").estimate(), 1e-6);
    }

    @Test
    void chancesAddUpToOneAndRiseWithThePredictor() {
        MixedDesign design = AgreementOfMixedModels.wineWithJudges();
        OrdinalMixedModel model = OrdinalMixedModel.fit(design);
        double[][] chances = model.probabilities(design, Prediction.WITH_GROUPS);
        for (double[] row : chances) {
            double sum = 0;
            for (double chance : row) {
                sum += chance;
            }
            assertEquals(1, sum, 1e-12);
        }
        // Judge 1, cold without contact against warm with contact: the top score becomes likelier.
        assertTrue(chances[7][4] > chances[0][4]);
    }

    @Test
    void likelihoodRatioAgainstASmallerModelIsTheDifferenceOfTheLogLikelihoods() {
        OrdinalMixedModel large = OrdinalMixedModel.fit(AgreementOfMixedModels.wineWithJudges());
        OrdinalMixedModel small = OrdinalMixedModel.fit(AgreementOfMixedModels.wine());
        // 2 (-81.5654 + 86.4919), the log likelihoods of R's ordinal.
        assertEquals(9.853, large.against(small).statistic(), 1e-3);
        assertThrows(IllegalArgumentException.class, () -> small.against(large));
    }

    /** Known truth: 40 batches, 8 cuppers, slope 1 per unit, batch and cupper deviations 0.8; average of 40 fits within Monte Carlo error. */
    @Test
    void findsTheSlopeThatWasPutIn() {
        double sum = 0;
        int covered = 0;
        int fits = 40;
        for (int fit = 0; fit < fits; fit++) {
            SplittableRandom random = new SplittableRandom(100 + fit);
            List<String> batches = new ArrayList<>();
            List<String> cuppers = new ArrayList<>();
            double[] y = new double[320];
            double[] x = new double[320];
            double[] cupper = random.doubles(8).map(v -> 0).toArray();
            for (int c = 0; c < 8; c++) {
                cupper[c] = 0.8 * random.nextGaussian();
            }
            for (int b = 0; b < 40; b++) {
                double feature = random.nextGaussian();
                double batch = 0.8 * random.nextGaussian();
                for (int c = 0; c < 8; c++) {
                    int i = 8 * b + c;
                    double u = random.nextDouble();
                    double latent = feature + batch + cupper[c] + Math.log(u / (1 - u));
                    x[i] = feature;
                    y[i] = latent < -1.5 ? 6 : latent < 0 ? 6.5 : latent < 1.5 ? 7 : 7.5;
                    batches.add("b" + b);
                    cuppers.add("c" + c);
                }
            }
            Estimate slope = OrdinalMixedModel.fit(MixedDesign.of("score", y)
                            .withCovariate("x", x)
                            .withRandom(RandomTerm.intercept("batch", batches))
                            .withRandom(RandomTerm.intercept("cupper", cuppers)))
                    .term("x");
            sum += slope.estimate();
            covered += slope.interval(0.90).contains(1) ? 1 : 0;
        }
        // Standard error of a fit about 0.2, of the average about 0.03.
        assertEquals(1, sum / fits, 0.1);
        assertTrue(covered >= 32, covered + " of " + fits);
    }

    /** Two shares of 20, 0.30 and 0.75: their difference and its error are those of any first course (Agresti 2013, 3.1; from memory). */
    @Test
    void theDifferenceOfExpectedScoresIsThatOfTheSharesForTwoScores() {
        double[] y = new double[40];
        double[] x = new double[40];
        for (int i = 0; i < 40; i++) {
            x[i] = i < 20 ? 0 : 1;
            y[i] = i < 6 || (i >= 20 && i < 35) ? 7 : 5;
        }
        MixedDesign design = MixedDesign.of("y", y).withCovariate("x", x);
        double[] ones = new double[40];
        Arrays.fill(ones, 1);
        MixedDesign at0 = MixedDesign.of("y", y).withCovariate("x", new double[40]);
        MixedDesign at1 = MixedDesign.of("y", y).withCovariate("x", ones);
        Estimate difference = OrdinalMixedModel.fit(design).expectedDifference(at0, at1);
        assertEquals(2 * (0.75 - 0.30), difference.estimate(), 1e-6);
        assertEquals(2 * Math.sqrt(0.75 * 0.25 / 20 + 0.30 * 0.70 / 20), difference.standardError(), 1e-5);
        Estimate back = OrdinalMixedModel.fit(design).expectedDifference(at1, at0);
        assertEquals(-difference.estimate(), back.estimate(), 1e-12);
    }

    /** Groups are taken over their normal distributions; here summed over a fine grid instead. */
    @Test
    void expectedScoresHoldTheSpreadOfTheGroups() {
        MixedDesign design = AgreementOfMixedModels.wineWithJudges();
        double[] x = new double[design.rows()];
        for (int i = 0; i < x.length; i++) {
            x[i] = i % 5;
        }
        MixedDesign with = design.withCovariate("x", x);
        OrdinalMixedModel model = OrdinalMixedModel.fit(with);
        assertTrue(model.settled());
        MixedDesign lifted =
                design.withCovariate("x", Arrays.stream(x).map(v -> v + 2).toArray());
        double spread = model.standardDeviation(design.randomTerms().get(0).name());
        assertTrue(spread > 0.5, "the judges differ: " + spread);
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            sum += expected(model, with, i, spread, 2 * model.term("x").estimate())
                    - expected(model, with, i, spread, 0);
        }
        assertEquals(sum / x.length, model.expectedDifference(with, lifted).estimate(), 1e-6);
    }

    private static double expected(OrdinalMixedModel model, MixedDesign rows, int row, double spread, double more) {
        double[] chances = model.probabilities(rows, Prediction.AVERAGE_GROUP)[row];
        double sum = 0;
        double weights = 0;
        for (int k = -600; k <= 600; k++) {
            double z = 0.01 * k;
            double weight = Math.exp(-z * z / 2);
            double below = 0;
            double score = model.categories().get(0);
            for (int j = 0; j + 1 < chances.length; j++) {
                below += chances[j];
                double logit = Math.log(below / (1 - below)) - spread * z - more;
                score += (model.categories().get(j + 1) - model.categories().get(j)) / (1 + Math.exp(logit));
            }
            sum += weight * score;
            weights += weight;
        }
        return sum / weights;
    }

    @Test
    void aCoefficientIsLargeWhereItsUnitIsAndNotBecauseScoresAreToldApart() {
        MixedDesign design = AgreementOfMixedModels.wineWithJudges();
        double[] x = new double[design.rows()];
        for (int i = 0; i < x.length; i++) {
            x[i] = 0.001 * (i % 7) + (design.response()[i] > 3 ? 0.001 : 0);
        }
        OrdinalMixedModel model = OrdinalMixedModel.fit(design.withCovariate("x", x));
        assertTrue(model.term("x").estimate() > 25);
        assertEquals(List.of(), model.notes());
        assertTrue(model.settled());
        double[] apart = new double[design.rows()];
        for (int i = 0; i < apart.length; i++) {
            apart[i] = design.response()[i] > 3 ? 1 : 0;
        }
        OrdinalMixedModel told = OrdinalMixedModel.fit(design.withCovariate("x", apart));
        assertTrue(
                told.notes()
                        .contains(
                                "Some scores are told apart completely, so that a coefficient or threshold has no finite best value."),
                told.notes().toString());
        assertEquals(false, told.settled());
    }

    @Test
    @Tag("says")
    void saysWhatItCannotTake() {
        MixedDesign flat = MixedDesign.of("score", new double[] {7, 7, 7});
        assertEquals(
                "An ordinal model needs at least 2 different scores, but the complete rows have 1.",
                assertThrows(IllegalArgumentException.class, () -> OrdinalMixedModel.fit(flat))
                        .getMessage());
        MixedDesign slopes = LinearMixedModelTest.sleepstudy();
        assertTrue(assertThrows(IllegalArgumentException.class, () -> OrdinalMixedModel.fit(slopes))
                .getMessage()
                .contains("random intercepts only"));
    }

    @Test
    void saysWhenScoresAreToldApartCompletely() {
        double[] x = new double[30];
        double[] y = new double[30];
        for (int i = 0; i < 30; i++) {
            x[i] = i;
            y[i] = i < 15 ? 1 : 2;
        }
        OrdinalMixedModel model = OrdinalMixedModel.fit(MixedDesign.of("y", y).withCovariate("x", x));
        assertTrue(model.toString().contains("no finite best value"), model.toString());
    }
}
