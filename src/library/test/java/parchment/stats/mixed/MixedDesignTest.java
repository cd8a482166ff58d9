package parchment.stats.mixed;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.SimpleBounds;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.BOBYQAOptimizer;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.stats.linear.SmallSolve;
import parchment.stats.linear.Vectors;

/** What a mixed model does with small, odd and damaged designs, and that its parts agree with one another. */
class MixedDesignTest {

    private static List<String> labels(String name, int... groups) {
        return Arrays.stream(groups).mapToObj(g -> name + g).toList();
    }

    /** A panel with six crossed and nested terms: batches on days, in cuppings, scored by cuppers. */
    static MixedDesign panel(long seed, int batches, int cuppers) {
        SplittableRandom random = new SplittableRandom(seed);
        int n = batches * cuppers;
        double[][] effects = new double[5][200];
        for (double[] row : effects) {
            Arrays.setAll(row, i -> random.nextGaussian());
        }
        double[] y = new double[n];
        double[] x = new double[n];
        List<List<String>> groups = new ArrayList<>();
        for (int k = 0; k < 6; k++) {
            groups.add(new ArrayList<>());
        }
        double[] byBatch = random.doubles(batches, -1, 1).toArray();
        for (int i = 0; i < n; i++) {
            int b = i / cuppers;
            int c = i % cuppers;
            int d = b / 4;
            int s = (b / 2) % Math.max(2, batches / 5);
            x[i] = byBatch[b];
            groups.get(0).add("lot" + b % 4);
            groups.get(1).add("day" + d);
            groups.get(2).add("batch" + b);
            groups.get(3).add("cupper" + c);
            groups.get(4).add("cupping" + s);
            groups.get(5).add("cupping" + s + ":cupper" + c);
            y[i] = 6
                    + 0.4 * x[i]
                    + 0.4 * effects[0][b % 4]
                    + 0.3 * effects[1][d]
                    + 0.3 * effects[2][b]
                    + 0.5 * effects[3][c]
                    + 0.2 * effects[4][s]
                    + 0.6 * random.nextGaussian();
        }
        MixedDesign design = MixedDesign.of("score", y).withCovariate("x", x);
        List<String> names = List.of("lot", "day", "batch", "cupper", "cupping", "cupping:cupper");
        for (int k = 0; k < 6; k++) {
            design = design.withRandom(RandomTerm.intercept(names.get(k), groups.get(k)));
        }
        return design;
    }

    static List<MixedDesign> designs() {
        return List.of(
                panel(1, 40, 4),
                panel(2, 60, 5),
                LinearMixedModelTest.sleepstudy(),
                LinearMixedModelTest.carrotsFull(),
                LinearMixedModelTest.pastes());
    }

    /** The gradient that the search uses, against central differences of the criterion. */
    @ParameterizedTest
    @MethodSource("designs")
    void gradientAgreesWithDifferences(MixedDesign design) {
        for (Likelihood likelihood : Likelihood.values()) {
            MixedSystem system = new MixedSystem(MixedRows.of(design), likelihood);
            double[] theta = system.start();
            SplittableRandom random = new SplittableRandom(4);
            for (int k = 0; k < theta.length; k++) {
                theta[k] += random.nextDouble(-0.5, 0.5);
            }
            double[] gradient = system.evaluate(theta, true).gradient;
            for (int k = 0; k < theta.length; k++) {
                double[] moved = theta.clone();
                moved[k] = theta[k] + 1e-5;
                double up = system.evaluate(moved, false).criterion;
                moved[k] = theta[k] - 1e-5;
                double down = system.evaluate(moved, false).criterion;
                assertEquals((up - down) / 2e-5, gradient[k], 1e-4 * (1 + Math.abs(gradient[k])));
            }
        }
    }

    /** Powell's BOBYQA (Hipparchus), which knows no gradient, finds no lower place. */
    @ParameterizedTest
    @MethodSource("designs")
    void anotherOptimiserFindsNoLowerPlace(MixedDesign design) {
        LinearMixedModel model = design.fit();
        double[] theta = model.theta();
        double[] lower = new double[theta.length];
        double[] upper = new double[theta.length];
        double[] start = new double[theta.length];
        Arrays.fill(lower, theta.length == 3 || model.randomNames().contains("Consumer") ? -10 : 0);
        Arrays.fill(upper, 10);
        Arrays.fill(start, 0.5);
        if (theta.length < 2) {
            return;
        }
        double found = new BOBYQAOptimizer(2 * theta.length + 1, 0.2, 1e-8)
                .optimize(
                        new MaxEval(20_000),
                        new ObjectiveFunction(model::criterionAt),
                        GoalType.MINIMIZE,
                        new SimpleBounds(lower, upper),
                        new InitialGuess(start))
                .getValue();
        assertTrue(model.criterion() <= found + 1e-6, model.criterion() + " is above " + found);
    }

    /** The dense textbook formulas, with V written out (Searle, Casella and McCulloch 1992, section 6). */
    @Test
    void agreesWithTheDenseFormulas() {
        MixedDesign design = panel(3, 24, 3);
        LinearMixedModel model = design.fit();
        int n = design.rows();
        double[][] v = new double[n][n];
        for (RandomTerm term : design.randomTerms()) {
            double variance = model.variance(term.name(), "(Intercept)");
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    v[i][j] += term.groups().get(i).equals(term.groups().get(j)) ? variance : 0;
                }
            }
        }
        for (int i = 0; i < n; i++) {
            v[i][i] += Math.pow(model.residualStandardDeviation(), 2);
        }
        double[] y = design.response();
        double[][] x = {
            design.fixed().get(0).columns().get(0),
            design.fixed().get(1).columns().get(0)
        };
        double[] viy = SmallSolve.solve(v, y).orElseThrow();
        double[][] information = new double[2][2];
        double[] right = new double[2];
        for (int a = 0; a < 2; a++) {
            double[] via = SmallSolve.solve(v, x[a]).orElseThrow();
            right[a] = Vectors.dot(via, y);
            for (int b = 0; b < 2; b++) {
                information[a][b] = Vectors.dot(via, x[b]);
            }
        }
        double[] beta = SmallSolve.solve(information, right).orElseThrow();
        assertArrayEquals(beta, model.coefficients(), 1e-8);
        double[][] covariance = SmallSolve.inverse(information).orElseThrow();
        assertEquals(Math.sqrt(covariance[1][1]), model.term("x").standardError(), 1e-8);
        double[] rest = y.clone();
        for (int i = 0; i < n; i++) {
            rest[i] -= beta[0] * x[0][i] + beta[1] * x[1][i];
        }
        double[][] lower = SmallSolve.cholesky(v).orElseThrow();
        double log = 0;
        for (int i = 0; i < n; i++) {
            log += 2 * Math.log(lower[i][i]);
        }
        double logInformation = Math.log(information[0][0] * information[1][1] - information[0][1] * information[1][0]);
        double criterion = log
                + logInformation
                + Vectors.dot(rest, SmallSolve.solve(v, rest).orElseThrow())
                + (n - 2) * Math.log(2 * Math.PI);
        assertEquals(criterion, model.criterion(), 1e-8 * Math.abs(criterion));
        // Predicted cupper effect: variance times the sum of V^-1 (y - X b) over the cupper's rows.
        double[] weighted = SmallSolve.solve(v, rest).orElseThrow();
        for (GroupEffect effect : model.groupEffects("cupper")) {
            double sum = 0;
            for (int i = 0; i < n; i++) {
                sum += design.randomTerms().get(3).groups().get(i).equals(effect.group()) ? weighted[i] : 0;
            }
            assertEquals(model.variance("cupper", "(Intercept)") * sum, effect.estimate(), 1e-8);
        }
        assertEquals(0, viy.length - n);
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13})
    void doesNotDependOnTheOrderOfRowsOrTheUnit(long seed) {
        MixedDesign design = panel(seed, 30, 4);
        LinearMixedModel model = design.fit();
        List<Integer> order =
                new ArrayList<>(IntStream.range(0, design.rows()).boxed().toList());
        Collections.shuffle(order, new java.util.Random(seed));
        LinearMixedModel shuffled = design.withRows(
                        order.stream().mapToInt(Integer::intValue).toArray())
                .fit();
        assertEquals(model.criterion(), shuffled.criterion(), 1e-8 * Math.abs(model.criterion()));
        assertEquals(model.term("x").estimate(), shuffled.term("x").estimate(), 1e-6);
        double[] scaled =
                Arrays.stream(design.response()).map(v -> 1000 + 10 * v).toArray();
        LinearMixedModel other = design.withResponse(scaled).fit();
        assertEquals(10 * model.term("x").estimate(), other.term("x").estimate(), 1e-5);
        assertEquals(10 * model.standardDeviation("cupper"), other.standardDeviation("cupper"), 1e-4);
    }

    @Test
    void refusesNothingWhenAVarianceIsZeroAndSaysSo() {
        LinearMixedModel model = LinearMixedModelTest.dyestuff("Dyestuff2").fit();
        assertEquals(0, model.standardDeviation("Batch"));
        assertEquals(
                List.of("Batch: the variance between groups is estimated as zero, its lower bound."), model.notes());
        // lmerTest gives 29 as well: without between-batch variance the mean is that of 30 independent rows.
        assertEquals(29, model.term("(Intercept)").degreesOfFreedom(), 1e-6);
    }

    @Test
    void dropsWhatCannotBeToldApartAndNamesIt() {
        double[] y = {1, 2, 1.5, 2.5, 3, 2, 4, 3.5};
        List<String> day = labels("day", 1, 1, 2, 2, 3, 3, 4, 4);
        LinearMixedModel model = MixedDesign.of("score", y)
                .withCovariate("x", new double[] {1, 2, 3, 4, 5, 6, 7, 9})
                .withCovariate("twice", new double[] {2, 4, 6, 8, 10, 12, 14, 18})
                .withCovariate("still", new double[] {3, 3, 3, 3, 3, 3, 3, 3})
                .withRandom(RandomTerm.intercept("day", day))
                .withRandom(RandomTerm.intercept("cupping", labels("cupping", 5, 5, 6, 6, 7, 7, 8, 8)))
                .withRandom(RandomTerm.intercept("lot", labels("lot", 1, 1, 1, 1, 1, 1, 1, 1)))
                .withRandom(RandomTerm.intercept("batch", labels("batch", 1, 2, 3, 4, 5, 6, 7, 8)))
                .fit();
        assertEquals(List.of("(Intercept)", "x"), model.columnNames());
        assertEquals(List.of("twice", "still"), model.aliasedColumns());
        assertEquals(List.of("day"), model.randomNames());
        assertEquals(
                List.of(
                        "The fixed column 'twice' was dropped: it does not vary, or the columns before it determine it.",
                        "The fixed column 'still' was dropped: it does not vary, or the columns before it determine it.",
                        "The random term 'cupping' was dropped: its groups are the same as those of 'day'.",
                        "The random term 'lot' was dropped: it has one group only, 'lot1'.",
                        "The random term 'batch' was dropped: every row has its own group, so it cannot be told from the residual."),
                model.notes().subList(0, 5));
        assertTrue(Double.isNaN(model.term("twice").estimate()));
    }

    @Test
    void dropsARandomTermWhoseGroupsAreFixedAlready() {
        double[] y = {1, 2, 1.5, 2.5, 3, 2, 4, 3.5};
        List<String> lot = labels("lot", 1, 1, 1, 1, 2, 2, 2, 2);
        LinearMixedModel model = MixedDesign.of("score", y)
                .withFactor("lot", lot)
                .withRandom(RandomTerm.intercept("lot", lot))
                .fit();
        assertEquals(
                List.of("The random term 'lot' was dropped: the fixed columns tell its groups apart already."),
                model.notes());
        // Ordinary least squares is left: two means of four.
        assertEquals(1.75, model.term("(Intercept)").estimate(), 1e-12);
        assertEquals(6, model.term("lotlot2").degreesOfFreedom(), 1e-9);
    }

    @Test
    void leavesIncompleteRowsOutAndCountsThem() {
        MixedDesign design = panel(5, 20, 3);
        double[] y = design.response();
        y[4] = Double.NaN;
        y[17] = Double.NaN;
        LinearMixedModel model = design.withResponse(y).fit();
        assertEquals(58, model.used());
        assertEquals(2, model.leftOut());
        assertTrue(Double.isNaN(model.residuals()[4]));
        assertTrue(Double.isFinite(model.fitted()[4]));
        int[] rest = IntStream.range(0, 60).filter(i -> i != 4 && i != 17).toArray();
        assertEquals(design.withRows(rest).fit().criterion(), model.criterion(), 1e-9 * Math.abs(model.criterion()));
    }

    @Test
    void oneCupperAndOneCupPerBatchStillGivesAnAnswer() {
        SplittableRandom random = new SplittableRandom(8);
        double[] x = random.doubles(40, 195, 210).toArray();
        double[] y = Arrays.stream(x)
                .map(t -> 6 + 0.05 * (t - 200) + random.nextGaussian())
                .toArray();
        List<String> cupper = labels("cupper", new int[40]);
        List<String> batch = labels("batch", IntStream.range(0, 40).toArray());
        List<String> day = labels("day", IntStream.range(0, 40).map(i -> i / 5).toArray());
        LinearMixedModel model = MixedDesign.of("score", y)
                .withCovariate("drop", x)
                .withRandom(RandomTerm.intercept("day", day))
                .withRandom(RandomTerm.intercept("batch", batch))
                .withRandom(RandomTerm.intercept("cupper", cupper))
                .withRandom(RandomTerm.intercept("cupping:cupper", RandomTerm.crossedWith(day, cupper)))
                .fit();
        assertEquals(List.of("day"), model.randomNames());
        assertTrue(model.term("drop").standardError() > 0);
    }

    @Test
    void saysWhenThereAreTooFewRows() {
        IllegalArgumentException e = assertThrows(
                IllegalArgumentException.class,
                () -> MixedDesign.of("score", new double[] {1, Double.NaN, 2})
                        .withCovariate("x", new double[] {1, 2, 3})
                        .fit());
        assertEquals(
                "A mixed model with 2 fixed columns needs at least 3 complete rows, but there are 2 of 3. Leave terms out or look for missing values.",
                e.getMessage());
    }

    @Test
    void predictsNothingForWhatItNeverSaw() {
        MixedDesign design = MixedDesign.of("score", new double[] {1, 2, 3, 4, 5, 7})
                .withFactor("lot", List.of("a", "a", "b", "b", "c", "c"))
                .withCovariate("x", new double[] {1, 2, 3, 4, 5, 7});
        LinearMixedModel model = design.withRows(0, 1, 2, 3).fit();
        double[] predicted = model.predict(design, Prediction.AVERAGE_GROUP);
        assertEquals(4, predicted[3], 1e-9);
        assertTrue(Double.isNaN(predicted[4]));
    }

    /** A design in which the truth is known: 90 % intervals of the slope over 300 small panels; Monte-Carlo error 1.7 points. */
    @Test
    @Tag("holds-for-any")
    void intervalsOfASlopeBetweenBatchesCover() {
        int covered = 0;
        for (int seed = 0; seed < 300; seed++) {
            covered += panel(1000 + seed, 24, 3).fit().term("x").interval(0.90).contains(0.4) ? 1 : 0;
        }
        assertTrue(covered > 300 * 0.865 && covered < 300 * 0.94, covered + " of 300");
    }
}
