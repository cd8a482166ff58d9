package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookException;
import parchment.logbook.written.BatchConditions;
import parchment.quantity.Mass;

/** A record for each ground on which batches are called good, and one on each side of each rule of which are looked at. */
class GoodBatchesTest {
    private static GoodBatches good(CardLogbook built) {
        return GoodBatches.of("one", built.logbook());
    }

    private static List<String> names(GoodBatches good) {
        return good.batches().stream().map(Batch::name).toList();
    }

    /** Ten batches of which the first five scored high and the others low, far beyond what twelve cups of each leave open. */
    private static CardLogbook scored(String cupping) {
        CardLogbook built = CardLogbook.of(10);
        for (int batch = 1; batch <= 10; batch++) {
            for (int times = 0; times < 6; times++) {
                built = built.cup(cupping, "B" + batch, "liking", batch <= 5 ? 8 : 3);
            }
        }
        return built;
    }

    @ParameterizedTest
    @CsvSource({"blind,BLIND_SCORES", "open,OTHER_SCORES"})
    void scoresSayWhichWentWellAndBlindOnesGoBefore(String cupping, GoodBatches.Ground ground) {
        GoodBatches good = good(scored(cupping));
        assertEquals(ground, good.ground());
        assertEquals(List.of("B1", "B2", "B3", "B4", "B5"), names(good));
        assertEquals(10, good.held());
        assertEquals(5, good.good());
    }

    /** A batch that was not scored is neither among the good ones nor among those they were chosen from. */
    @Test
    void theyAreChosenFromThoseThatWereScored() {
        GoodBatches good = good(scored("blind").with("A", "one", 1, true));
        assertEquals(10, good.held());
        assertEquals(List.of("B1", "B2", "B3", "B4", "B5"), names(good));
    }

    @Test
    void ofManyGoodOnesTheLastFiveAreShown() {
        CardLogbook built = scored("blind");
        for (int times = 0; times < 6; times++) {
            for (String late : List.of("B9", "B10")) {
                built = built.cup("blind", late, "overall", 8);
            }
        }
        for (int batch = 1; batch <= 8; batch++) {
            for (int times = 0; times < 6; times++) {
                built = built.cup("blind", "B" + batch, "overall", batch == 1 ? 3 : 8);
            }
        }
        GoodBatches good = good(built);
        assertEquals("overall", good.scored().orElseThrow().attribute());
        assertEquals(List.of("B6", "B7", "B8", "B9", "B10"), names(good));
        assertEquals(9, good.good());
    }

    @Test
    void withoutScoresUsualOnesGoBeforeOthers() {
        CardLogbook built = CardLogbook.of(12).change("B11", b -> b.conditions(CardLogbook.conditions(2, 260)));
        GoodBatches good = good(built);
        assertEquals(GoodBatches.Ground.AS_USUAL, good.ground());
        assertEquals(List.of("B7", "B8", "B9", "B10", "B12"), names(good));
    }

    /** Nine batches hold each other: with eight there are seven others of each, and nothing is usual. */
    @ParameterizedTest
    @CsvSource({"9,AS_USUAL", "8,THE_LAST", "1,THE_LAST"})
    void whereNothingIsUsualTheLastAreShown(int batches, GoodBatches.Ground ground) {
        GoodBatches good = good(CardLogbook.of(batches));
        assertEquals(ground, good.ground());
        assertEquals(Math.min(5, batches), good.batches().size());
        assertEquals(
                "B" + batches, good.batches().get(good.batches().size() - 1).name());
    }

    /** Two batches of 3 kg, two of 2 kg, and one that is or is not within a tenth of those. */
    @ParameterizedTest
    @CsvSource({"2.199,3", "2.201,2", "1.801,3", "1.799,2"})
    void onlyThoseOfTheNewestsChargeAreShownHoweverFew(double mass, int shown) {
        CardLogbook built = CardLogbook.of(5)
                .change("B1", b -> b.conditions(CardLogbook.conditions(3, 180)))
                .change("B2", b -> b.conditions(CardLogbook.conditions(3, 180)))
                .change("B3", b -> b.conditions(CardLogbook.conditions(mass, 180)));
        GoodBatches good = good(built);
        assertEquals(shown, good.batches().size());
        assertEquals("with about 2 kg of green coffee", good.among());
        assertEquals(2.0, good.charge().orElseThrow().kilograms());
    }

    /** Scores part the batches of one charge only: those of the other neither raise nor lower the best. */
    @Test
    void scoresOfAnotherChargeAreNotLookedAt() {
        CardLogbook built = scored("blind");
        for (int batch = 1; batch <= 5; batch++) {
            built = built.change("B" + batch, b -> b.conditions(CardLogbook.conditions(4, 180)));
        }
        GoodBatches good = good(built);
        assertEquals(List.of("B6", "B7", "B8", "B9", "B10"), names(good));
        assertEquals(5, good.held());
        GoodBatches other = GoodBatches.of("one", built.logbook(), Optional.of(Mass.kilograms(4)));
        assertEquals(List.of("B1", "B2", "B3", "B4", "B5"), names(other));
    }

    /** The newest batch has no green mass: its charge is that of the newest on its machine and by its recipe, not that of another. */
    @Test
    void theChargeIsThatOfTheNewestOfThoseLikeIt() {
        CardLogbook built = CardLogbook.of(6);
        for (int batch = 1; batch <= 6; batch++) {
            String recipe = batch == 2 || batch == 5 ? "espresso" : "filter";
            double mass = batch == 1 ? 4 : batch == 5 ? 3 : 2;
            built = built.change(
                    "B" + batch,
                    b -> b.label(Batch.Label.RECIPE, recipe).conditions(CardLogbook.conditions(mass, 180)));
        }
        built = built.change("B6", b -> b.conditions(BatchConditions.NOT_WRITTEN));
        GoodBatches good = good(built);
        assertEquals(
                List.of("B3", "B4"),
                names(good),
                "B1 was twice the charge, B2 another recipe, of B6 no mass is written");
        assertEquals("by the recipe filter, with about 2 kg of green coffee", good.among());
        assertEquals(2.0, good.charge().orElseThrow().kilograms());
    }

    /** Another charge of another recipe does not part those of the newest's recipe, which are all of one. */
    @Test
    void aChargeOfAnotherRecipePartsNothing() {
        CardLogbook built = CardLogbook.of(4);
        for (int batch = 1; batch <= 4; batch++) {
            String recipe = batch == 1 ? "espresso" : "filter";
            double mass = batch == 1 ? 4 : 2;
            built = built.change(
                    "B" + batch,
                    b -> b.label(Batch.Label.RECIPE, recipe).conditions(CardLogbook.conditions(mass, 180)));
        }
        assertEquals(List.of("B2", "B3", "B4"), names(good(built)));
        assertTrue(good(built).charge().isEmpty());
        assertEquals("by the recipe filter", good(built).among());
        GoodBatches other = GoodBatches.of("one", built.logbook(), Optional.of(Mass.kilograms(4)));
        assertEquals(List.of("B1"), names(other), "the charge that is asked for brings its recipe");
        assertEquals("by the recipe espresso, with about 4 kg of green coffee", other.among());
    }

    /** Eleven batches with numbers, the later of them among the last thirty or not; of those since nothing was written. */
    @ParameterizedTest
    @CsvSource({"27,AS_USUAL,3", "28,THE_LAST,5", "25,AS_USUAL,5", "24,AS_USUAL,5"})
    void usualOnesAreLookedForAmongTheLastThirtyAndShownFromThreeOn(int since, GoodBatches.Ground ground, int shown) {
        CardLogbook built = CardLogbook.of(11).with("A", "one", since, false);
        for (int batch = 1; batch <= since; batch++) {
            built = built.change("A" + batch, b -> b.conditions(BatchConditions.NOT_WRITTEN));
        }
        GoodBatches good = good(built);
        assertEquals(ground, good.ground());
        assertEquals(shown, good.batches().size());
        assertEquals(11 + since, good.held());
        assertEquals(ground == GoodBatches.Ground.THE_LAST ? 11 + since : shown, good.good());
        assertEquals(
                ground == GoodBatches.Ground.THE_LAST ? "A" + since : "B11",
                good.batches().get(shown - 1).name());
    }

    /** One charge throughout, or none written: nothing is left out and nothing is said of a charge. */
    @Test
    void aLotOfOneChargeSaysNothingOfIt() {
        assertTrue(good(CardLogbook.of(5)).charge().isEmpty());
        CardLogbook built = CardLogbook.of(2)
                .change("B1", b -> b.conditions(BatchConditions.NOT_WRITTEN))
                .change("B2", b -> b.conditions(BatchConditions.NOT_WRITTEN));
        assertEquals(2, good(built).batches().size());
        assertTrue(good(built).charge().isEmpty());
    }

    @Test
    void aChargeThatWasNeverUsedIsAnsweredWithThoseThatWere() {
        Logbook logbook = CardLogbook.of(4)
                .change("B1", b -> b.conditions(CardLogbook.conditions(4, 180)))
                .logbook();
        LogbookException thrown = assertThrows(
                LogbookException.class, () -> GoodBatches.of("one", logbook, Optional.of(Mass.kilograms(3))));
        assertEquals(
                "No batch of lot 'one' was charged with about 3 kg. Charges used for it: 2 kg (3 batches). Name one of these.",
                thrown.getMessage());
    }

    @Test
    void onlyBatchesOnTheNewestsMachineAndByItsRecipeAreLookedAt() {
        CardLogbook built = CardLogbook.of(6);
        for (int batch = 1; batch <= 6; batch++) {
            String machine = batch == 2 ? "small drum" : "drum";
            String recipe = batch == 3 ? "espresso" : "filter";
            built = built.change("B" + batch, b -> b.machine(machine).label(Batch.Label.RECIPE, recipe));
        }
        GoodBatches good = good(built);
        assertEquals(List.of("B1", "B4", "B5", "B6"), names(good));
        assertEquals("on drum, by the recipe filter", good.among());
    }

    @Test
    void whatAllHaveInCommonIsNotSaidToPartThem() {
        CardLogbook built = CardLogbook.of(3);
        for (int batch = 1; batch <= 3; batch++) {
            built = built.change("B" + batch, b -> b.machine("drum").label(Batch.Label.RECIPE, "filter"));
        }
        assertEquals("", good(built).among());
        assertEquals(
                "on drum, by the recipe filter",
                good(built.change("B1", b -> b.machine("other drum"))).among());
    }

    @Test
    void aBatchWithoutADateIsNotTheNewest() {
        CardLogbook dated = CardLogbook.of(2);
        List<Batch> batches = List.of(
                dated.batches().get(0),
                dated.batches().get(1),
                Batch.named("B9").lot("one").machine("elsewhere").build());
        assertEquals(List.of("B1", "B2"), names(good(new CardLogbook(batches, List.of()))));
    }

    @Test
    void aLotThatIsNotThereIsAnsweredWithTheNearestName() {
        Logbook logbook = CardLogbook.of(2).logbook();
        LogbookException thrown = assertThrows(LogbookException.class, () -> GoodBatches.of("onee", logbook));
        assertTrue(thrown.getMessage().contains("Did you mean 'one'?"), thrown.getMessage());
    }
}
