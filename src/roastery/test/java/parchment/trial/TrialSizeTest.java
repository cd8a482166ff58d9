package parchment.trial;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.logbook.Logbook;
import parchment.quantity.TemperatureUnit;
import parchment.stats.ReferenceData;
import parchment.trial.sealed.TrialControl;
import parchment.trial.sealed.TrialTerms;

class TrialSizeTest {
    private static Logbook harbour;

    @BeforeAll
    static void roast() {
        harbour = DrawnHarbour.of(1, 60);
    }

    /** A spread so well known that its upper limit is itself, of means of as many scores as are planned. */
    private static TrialSize size(double deviation, double smallestDifference) {
        return TrialSize.of(
                TrialTables.terms(smallestDifference, 1),
                new TrialSpread(deviation * deviation, 100_000_000, Double.NaN, 6, 1000, 300));
    }

    private static TrialTerms terms(double smallest, int cuppers) {
        return new TrialTerms(
                "quay",
                "sweetness",
                TrialControl.DROP_TEMPERATURE,
                List.of(201.5, 203.0, 204.5),
                smallest,
                1,
                1,
                List.of("Ana", "Bo", "Cy", "Di", "Ed").subList(0, cuppers),
                2,
                TemperatureUnit.CELSIUS);
    }

    /** Batches for slopes of 1/6, 1/3 and 0.1 points per degree over three degrees, where the formula reaches: six sets and more. */
    @Test
    @Tag("agrees-with")
    void agreesWithTheSizesByTheSpreadInsideSets() {
        JsonObject expected =
                ReferenceData.expected("coin-flip", "coin_flip_size_by_sd").getAsJsonObject("expected");
        double[] ends = {0.5, 1, 0.3};
        for (String deviation : expected.keySet()) {
            double[] wanted = ReferenceData.numbers(expected.get(deviation));
            for (int i = 0; i < ends.length; i++) {
                TrialSize size = size(Double.parseDouble(deviation), ends[i]);
                if (wanted[i] >= 3 * TrialSize.FEW_SETS) {
                    assertEquals(wanted[i], size.batches().orElseThrow(), deviation + " " + ends[i]);
                    assertEquals(wanted[i] / 3, size.days().orElseThrow());
                } else {
                    // By simulation with shuffles: a set more at most.
                    assertEquals(wanted[i], size.batches().orElseThrow(), 3.01, deviation + " " + ends[i]);
                }
            }
        }
    }

    /** Twelve sets of two have 4,096 ways of dealing: shuffles ask for a set more than Student's t, and never for fewer. */
    @Test
    @Tag("holds-for-any")
    void fewSetsOfTwoAreSizedByShuffles() {
        TrialTerms ends = new TrialTerms(
                "quay",
                "sweetness",
                TrialControl.DROP_TEMPERATURE,
                List.of(201.5, 204.5),
                0.75,
                1,
                1,
                List.of("Ana"),
                2,
                TemperatureUnit.CELSIUS);
        int formula = 2 * new TrialPower(0.25, 0.42 * 0.42, 2, 4.5, 0.05).sets().orElseThrow();
        int found = TrialSize.of(ends, new TrialSpread(0.42 * 0.42, 100_000_000, Double.NaN, 6, 1000, 300))
                .batches()
                .orElseThrow();
        assertTrue(formula < 2 * TrialSize.FEW_SETS_OF_TWO, "formula " + formula);
        assertTrue(found >= formula && found <= formula + 4, found + " batches, formula " + formula);
    }

    @Test
    @Tag("holds-for-any")
    void missedTargetsAndLostBatchesMakeItLarger() {
        int plain = size(0.42, 0.5).batches().orElseThrow();
        int lost = size(0.42, 0.5).withLost(0.1).batches().orElseThrow();
        int missed = size(0.42, 0.5).withFollowed(0.8).batches().orElseThrow();
        assertEquals(39, plain);
        assertTrue(lost > 40 && lost < 55, "lost " + lost);
        assertTrue(missed > 54 && missed < 80, "missed " + missed);
        assertTrue(size(0.42, 0.5).withFollowed(0.3).batches().isEmpty());
        assertThrows(IllegalArgumentException.class, () -> size(0.42, 0.5).withLost(1.1));
    }

    /** 66 sets of spread 0.6 show 0.30 points four times in five, and not 0.27. */
    @Test
    @Tag("says")
    void saysThatATrialIsNotWorthStarting() {
        InShort words = ShortSentences.keptBy(size(0.6, 0.2).inShort());
        assertEquals(
                "This trial is not worth starting: 200 batches would show 0.20 points less often than four times in five.",
                words.found());
        assertEquals("Batches of one lot and day differ by about 0.60 points for other reasons.", words.howSure());
        assertEquals("State a larger difference, targets further apart, or more cuppers and cups.", words.next());
        assertTrue(size(0.6, 0.2).kilograms().isEmpty());
        TrialPower power = new TrialPower(0.09, 0.36, 3, 4.5, 0.05);
        assertTrue(power.at(66) < 0.8 && new TrialPower(0.1, 0.36, 3, 4.5, 0.05).at(66) > 0.8);
        assertTrue(power.sets().isEmpty());
        assertEquals(0, power.at(0));
    }

    @Test
    @Tag("says")
    void sizesByTheLogbookInBatchesDaysCuppingsAndKilograms() {
        TrialSize size = TrialSize.of(terms(0.5, 3), harbour);
        int batches = size.batches().orElseThrow();
        assertTrue(batches >= 39 && batches <= 90, size.toString());
        assertEquals(batches / 3, size.days().orElseThrow());
        double kilograms = size.kilograms().orElseThrow();
        InShort words = ShortSentences.keptBy(size.inShort());
        assertEquals(
                "This trial takes " + batches + " batches: " + batches / 3 + " roast days, as many cuppings and "
                        + parchment.quantity.Mass.kilograms(kilograms).words(harbour.massUnit()) + " of green coffee.",
                words.found());
        assertTrue(
                size.page().text().contains("the upper 80 % limit is "),
                size.page().text());
        assertTrue(
                TrialSize.of(terms(0.5, 1), harbour).batches().orElseThrow() > batches,
                "fewer cuppers need more batches");
    }

    /** The project's own roastery at an earlier state: 0.41 to 0.48 pooled, single logbooks 0.31 to 0.58. */
    @ParameterizedTest
    @CsvSource({"acidity", "sweetness"})
    @Tag("agrees-with")
    void agreesWithTheSpreadInsideSetsOfSingleLogbooks(String score) {
        TrialSpread found =
                TrialSpread.of(score, TrialControl.DROP_TEMPERATURE, harbour).orElseThrow();
        double deviation = Math.sqrt(found.variance());
        assertTrue(deviation > 0.31 && deviation < 0.58, score + " " + found);
        assertTrue(found.degreesOfFreedom() >= 10, found.toString());
    }

    /** One cup more or less is told from the single scores; without two cuppers it is taken as it was seen. */
    @Test
    @Tag("holds-for-any")
    void theSpreadOfAMeanFollowsHowManyScoresItHas() {
        TrialSpread spread = new TrialSpread(0.20, 40, 0.36, 6, 60, 20);
        assertEquals(0.20, spread.varianceAt(6), 1e-12);
        assertEquals(0.20 - 0.06 + 0.18, spread.varianceAt(2), 1e-12);
        assertEquals(0.20, new TrialSpread(0.20, 40, Double.NaN, 6, 60, 20).varianceAt(2), 1e-12);
        assertEquals(0.02, new TrialSpread(0.20, 40, 1.2, 6, 60, 20).varianceAt(100_000), 1e-4);
        // qchisq(.2, 40) is 32.34495 by R 4.2.2.
        assertEquals(40 / 32.34495, spread.upperFactor(), 1e-5);
    }

    @Test
    @Tag("says")
    void saysThatALogbookCannotSizeIt() {
        for (int degrees : new int[] {4, 5}) {
            TrialSize size =
                    TrialSize.of(TrialTables.terms(0.5, 1), new TrialSpread(0.01, degrees, Double.NaN, 6, 20, 10));
            assertEquals(degrees == 5, size.batches().isPresent(), "degrees " + degrees);
        }
        TrialSize none = TrialSize.of(
                TrialTables.terms(0.5, 1), harbour.only(batch -> false).whole().only(b -> false));
        assertTrue(none.batches().isPresent(), "a filter does not make the logbook smaller");
        InShort words = ShortSentences.keptBy(
                TrialSize.of(TrialTables.terms(0.5, 1), new TrialSpread(0.01, 4, Double.NaN, 6, 20, 10))
                        .inShort());
        assertEquals("This logbook cannot say how large the trial has to be.", words.found());
    }
}
