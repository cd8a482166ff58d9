package parchment.stats.mixed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.stats.Estimate;

/**
 * Agrees with lmerTest 3.1-3 on lme4 1.1-31 (R 4.2.2) where directions of a joint test have different degrees of freedom. The data are
 * Machines with ten rows left out, as Pinheiro and Bates 2000 do in section 1.3 (which rows: from memory). Printed by
 *
 * <pre>
 * u <- Machines[-c(2,3,6,8,9,12,19,20,27,33), ]
 * f <- lmer(score ~ Machine + (1|Worker) + (1|Worker:Machine), u, control = lmerControl("bobyqa", optCtrl = list(rhoend = 1e-11)))
 * coef(summary(f)); contestMD(f, L)
 * </pre>
 */
@Tag("agrees-with")
class SatterthwaiteTest {
    private static final Set<Integer> LEFT_OUT = Set.of(1, 2, 5, 7, 8, 11, 18, 19, 26, 32);

    private static MixedDesign uneven(Set<String> workers) {
        MixedDesign all = LinearMixedModelTest.machines();
        List<String> worker = all.randomTerms().get(0).groups();
        return all.withRows(IntStream.range(0, all.rows())
                .filter(i -> !LEFT_OUT.contains(i) && workers.contains(worker.get(i)))
                .toArray());
    }

    private static LinearMixedModel uneven() {
        return uneven(Set.of("1", "2", "3", "4", "5", "6")).fit();
    }

    /** One column of the workers beside the machines: its degrees of freedom are those of the few workers. */
    private static LinearMixedModel someWorkers(Set<String> workers, Set<String> old) {
        MixedDesign design = uneven(workers).withoutRandom("Worker:Machine");
        double[] column = design.randomTerms().get(0).groups().stream()
                .mapToDouble(worker -> old.contains(worker) ? 1 : 0)
                .toArray();
        return design.withCovariate("old", column).fit();
    }

    private static void agrees(double statistic, double rank, double denominator, FTest test) {
        assertEquals(statistic, test.statistic(), 2e-5 * statistic, test.toString());
        assertEquals(rank, test.numerator(), test.toString());
        assertEquals(denominator, test.denominator(), 2e-4 * denominator, test.toString());
    }

    @Test
    void termsOfAnUnevenTableAgree() {
        LinearMixedModel model = uneven();
        assertEquals(181.87149942981, model.criterion(), 1e-6);
        double[][] theirs = {
            {52.35400009331, 2.49061541747, 8.72000137564},
            {7.96244533517, 2.21469726394, 10.19808073255},
            {13.91822212891, 2.20935457462, 10.10280272666}
        };
        for (int k = 0; k < 3; k++) {
            Estimate term = model.terms().get(k);
            assertEquals(theirs[k][0], term.estimate(), 1e-4);
            assertEquals(theirs[k][1], term.standardError(), 1e-4);
            assertEquals(theirs[k][2], term.degreesOfFreedom(), 2e-3);
        }
    }

    @Test
    void aJointTestOfDirectionsThatDifferAgrees() {
        agrees(19.96529376, 2, 10.1119871383, uneven().test("Machine"));
        agrees(374.958978936, 2, 13.4223144107, uneven().test("first and third", new double[][] {{1, 0, 0}, {0, 0, 1}
        }));
    }

    /** A contrast that others determine adds nothing: the rank is 2 (theirs: 10.11181, by another eigenvector of the same test). */
    @Test
    void aContrastThatOthersDetermineIsNotCountedTwice() {
        agrees(19.96529376, 2, 10.1118, uneven().test("three contrasts of rank two", new double[][] {
            {0, 1, 0}, {0, 0, 1}, {0, 1, -1}
        }));
    }

    @Test
    void fewWorkersLeaveFewDegreesOfFreedom() {
        LinearMixedModel model = someWorkers(Set.of("1", "2", "3", "4", "5"), Set.of("1", "2"));
        assertEquals(2.99972698353, model.term("old").degreesOfFreedom(), 3e-3);
        assertEquals(28.07550235633, model.term("MachineB").degreesOfFreedom(), 3e-2);
        agrees(71.9289394205, 2, 3.92566020958, model.test("MachineB and old", new double[][] {
            {0, 1, 0, 0}, {0, 0, 0, 1}
        }));
    }

    /** With 2 degrees of freedom or fewer in a direction theirs says 2; ours is the smallest, which claims less. */
    @Test
    void aDirectionWithoutMomentsTakesTheSmallestDegreesOfFreedom() {
        LinearMixedModel model = someWorkers(Set.of("1", "2", "3"), Set.of("1"));
        double lowest = model.term("old").degreesOfFreedom();
        assertEquals(1.00371685006, lowest, 2e-3);
        FTest test = model.test("MachineB and old", new double[][] {{0, 1, 0, 0}, {0, 0, 0, 1}});
        assertEquals(52.888597192, test.statistic(), 1e-3);
        assertEquals(lowest, test.denominator(), 0.02);
    }

    @Test
    void oneContrastIsTestedAsItsT() {
        LinearMixedModel model = uneven();
        Estimate term = model.term("MachineB");
        FTest test = model.test("MachineB", new double[][] {{0, 1, 0}});
        assertEquals(term.t() * term.t(), test.statistic(), 1e-9);
        assertEquals(term.degreesOfFreedom(), test.denominator(), 1e-9);
        assertEquals(1, test.numerator());
        // Twice the same contrast, and three times its size, is the same question.
        FTest again = model.test("MachineB", new double[][] {{0, 1, 0}, {0, 3, 0}});
        assertEquals(test.statistic(), again.statistic(), 1e-7);
        assertEquals(1, again.numerator());
        assertEquals(test.denominator(), again.denominator(), 1e-6);
    }

    @Test
    void noContrastCannotBeTested() {
        for (double[][] none : List.of(new double[0][], new double[][] {{0, 0, 0}})) {
            FTest test = uneven().test("nothing", none);
            assertEquals("nothing: cannot be tested", test.toString());
            assertTrue(Double.isNaN(test.denominator()));
            assertEquals(0, test.numerator());
        }
    }

    /** Four groups of five: the mean rests on the 3 degrees of freedom between groups, as in any analysis of variance. */
    @Test
    void aBalancedMeanHasTheDegreesOfFreedomOfItsGroups() {
        double[] y = {5, 6, 7, 5, 6, 9, 8, 9, 10, 9, 2, 3, 1, 2, 2, 6, 6, 7, 5, 7};
        List<String> group = IntStream.range(0, 20).mapToObj(i -> "g" + i / 5).toList();
        LinearMixedModel model = MixedDesign.of("y", y)
                .withRandom(RandomTerm.intercept("g", group))
                .fit();
        assertEquals(3, model.term("(Intercept)").degreesOfFreedom(), 1e-4);
    }
}
