package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;
import parchment.stats.Estimate;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.mixed.RandomTerm;
import parchment.stats.ordinal.OrdinalMixedModel;

/**
 * Real scores of real food, from a folder to the answer, beside what R fits to the same tables.
 *
 * <p>Numbers: R 4.2.2 with lme4, nlme and ordinal; {@code src/library/test/r/food-logbooks.R} puts every column together by itself.
 */
@Tag("agrees-with")
class FoodLogbooksTest {
    /** R's search stops within about this share of the optimum's variances, which the weights of uneven tables feel. */
    private static final double RELATIVE = 2e-4;

    @TempDir
    Path folder;

    private static Evidence asked(Logbook logbook, String attribute, String feature) {
        assertTrue(
                logbook.problems().list().isEmpty(), logbook.problems().list().toString());
        return Evidence.of(attribute, Features.column(feature), logbook);
    }

    private static void agrees(String name, Evidence evidence, double mostWidened) throws IOException {
        Estimate slope = evidence.analysis().orElseThrow().fitted().model().term(ScoreDesign.FEATURE);
        double expected = FoodLogbooks.reference(name, "slope");
        double error = FoodLogbooks.reference(name, "standard error");
        assertEquals(expected, slope.estimate(), RELATIVE * error, name + ", slope");
        assertEquals(error, slope.standardError(), RELATIVE * error, name + ", standard error");
        assertEquals(expected, evidence.association().slope().estimate(), RELATIVE * error, name + ", slope as told");
        // What is told allows besides for the weights of days, which were estimated: the fewer the days, the more
        // (Meier 1953).
        double told = evidence.association().slope().standardError() / error;
        assertTrue(told > 1 - RELATIVE && told < mostWidened, name + ", error as told is " + told + " times R's");
    }

    @Test
    void cakeAgreesWithAPenalisedSplineOverTheDate() throws IOException {
        Evidence cake = asked(FoodLogbooks.cake(folder, FoodLogbooks.Order.TURNING), "angle", "oven");
        assertEquals(270, cake.scores());
        assertEquals(45, cake.roastDays());
        agrees("cake", cake, 1.01);
        // The split plot of the textbooks knows nothing of days in a row; the logbook's order hardly moves its answer.
        double published = FoodLogbooks.reference("cake as a split plot", "slope");
        assertEquals(published, cake.association().slope().estimate(), 0.01 * published);
    }

    @Test
    void carrotsAgreeWithConsumersWhoHaveSlopesOfTheirOwn() throws IOException {
        Evidence carrots = asked(FoodLogbooks.carrots(folder), "preference", "second sensory axis");
        assertEquals(103, carrots.cuppers());
        agrees("carrots", carrots, 1.25);
    }

    @Test
    void hamAgreesWithProductsAsLots() throws IOException {
        Evidence ham = asked(FoodLogbooks.ham(folder), "liking", "information");
        assertEquals(648, ham.scores());
        agrees("ham", ham, 1.01);
    }

    @Test
    void wineAgreesWithTheRatingsTakenAsNumbers() throws IOException {
        agrees("wine", asked(FoodLogbooks.wine(folder), "bitterness", "warm"), 1.01);
    }

    /** Evidence has no model of steps; the ratings, as the logbook gives them back, are fitted in steps here. */
    @Test
    void wineInStepsHasTheSameSignAndSize() throws IOException {
        Logbook logbook = FoodLogbooks.wine(folder);
        List<CupScores> cups = logbook.cups();
        MixedDesign design = MixedDesign.of(
                        "rating",
                        cups.stream()
                                .mapToDouble(cup -> cup.score("bitterness"))
                                .toArray())
                .withCovariate("warm", column(logbook, "warm"))
                .withCovariate(
                        "contact",
                        cups.stream()
                                .mapToDouble(cup -> logbook.batch(cup.batch())
                                                .lot()
                                                .orElseThrow()
                                                .equals("contact yes")
                                        ? 1
                                        : 0)
                                .toArray())
                .withRandom(RandomTerm.intercept(
                        "judge", cups.stream().map(CupScores::cupper).toList()));
        double inSteps = OrdinalMixedModel.fit(design).term("warm").estimate();
        assertEquals(FoodLogbooks.reference("wine in steps", "slope"), inSteps, 1e-4 * inSteps);

        Evidence evidence = asked(logbook, "bitterness", "warm");
        double asNumbers = evidence.association().slope().estimate()
                / evidence.analysis().orElseThrow().fitted().cupToCup();
        // A step of the logistic scale is π/√3 of its standard deviation: both in spreads from cup to cup.
        double steps = inSteps / (Math.PI / Math.sqrt(3));
        assertTrue(asNumbers > 0.7 * steps && asNumbers < 1.4 * steps, asNumbers + " beside " + steps);
    }

    private static double[] column(Logbook logbook, String header) {
        return logbook.cups().stream()
                .mapToDouble(cup -> logbook.batch(cup.batch()).extraNumber(header))
                .toArray();
    }
}
