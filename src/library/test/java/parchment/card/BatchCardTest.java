package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import parchment.curve.Curve;
import parchment.display.ShortSentences;
import parchment.drift.Usual;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.contents.Cautions;
import parchment.logbook.contents.LogbookException;
import parchment.logbook.written.BatchConditions;
import parchment.phase.ExampleRoast;
import parchment.quantity.Elapsed;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;
import parchment.quantity.Unit;

/** A batch that lacks something has a card of what is left. */
class BatchCardTest {
    private static final String ALL = "The drum stood empty";

    @Test
    void aBatchWithNothingButANameHasACardThatSaysWhatIsMissing() {
        Logbook logbook = Logbook.of(CardLogbook.of(1).contents().toBuilder()
                .batches(List.of(Batch.named("bare").build()))
                .build());
        BatchCard card = BatchCard.of("bare", logbook);
        ShortSentences.keptBy(card.inShort());
        assertEquals(
                "Batch bare\n\nWhether batch bare is like the others cannot be told.\nNo lot was written for it.\nWrite its lot into the list"
                        + " of batches and ask again.\n\nIt has no bean temperature to draw, or none that is known on today's"
                        + " probe.\n\nIts day\n\nNo date was written for it, so nothing can be said of its day.\n\nWhat was"
                        + " written\n\nNothing beyond its row was written about it.\n\nIts cups\n\nIt was not cupped.\n\nBatches most"
                        + " like it\n\nIt has no path of bean temperature to hold against others.\n\nHow this was worked"
                        + " out\n\nCannot tell whether batch bare is like the others: no lot was written for it.\n\nWhat differed went"
                        + " with this batch; it need not be what made the cup. Unlike is not bad: the cup decides.\n\nBefore you"
                        + " roast\n\n" + String.join("\n\n", Cautions.forAPage()),
                card.text());
        assertFalse(card.text().contains(ALL), card.text());
    }

    @Test
    void theOnlyCurveHasNoneToBeHeldAgainst() {
        CardLogbook built = CardLogbook.of(2)
                .change(
                        "B2",
                        b -> b.curve(Quantity.BEAN_TEMPERATURE, ExampleRoast.bean(-40, 740))
                                .writtenMark(MarkKind.DROP, Elapsed.seconds(740)));
        String page = BatchCard.of("B2", built.logbook()).text();
        assertTrue(page.contains("Bean temperature of one batch, time since charge."), page);
        assertTrue(
                page.contains("1 more batch has no bean temperature, or none that is known on today's probe."), page);
        assertTrue(page.contains("No other batch with a bean temperature was read by the same probe."), page);
        // A card of a batch without a curve draws nothing, though its lot has a curve.
        String without = BatchCard.of("B1", built.logbook()).text();
        assertFalse(without.contains("Bean temperature of"), without);
    }

    /** Twelve batches with curves of the same shape; of the last one the curve is missing, or it was logged as given. */
    private static BatchCard last(Optional<Curve> bean, double loss) {
        CardLogbook built = CardLogbook.of(12);
        for (int i = 1; i <= 12; i++) {
            int number = i;
            built = built.change("B" + i, b -> {
                b.conditions(new BatchConditions(
                                Optional.of(Mass.kilograms(2)),
                                Optional.of(
                                        Mass.kilograms(2 * (1 - (number == 12 ? loss : 0.15 + 0.001 * (number % 3))))),
                                Optional.of(Temperature.celsius(180 + number % 3)),
                                Optional.empty(),
                                Optional.empty(),
                                OptionalDouble.empty(),
                                OptionalDouble.empty(),
                                Optional.empty()))
                        .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(560 + number % 4))
                        .writtenMark(MarkKind.DROP, Elapsed.seconds(700 + number % 5));
                return number < 12
                        ? b.curve(Quantity.BEAN_TEMPERATURE, ExampleRoast.bean(-40, 740))
                        : bean.isPresent() ? b.curve(Quantity.BEAN_TEMPERATURE, bean.get()) : b;
            });
        }
        return BatchCard.of("B12", built.logbook());
    }

    @Test
    void aBatchWhoseCurveCannotBeReadIsNotCalledUsualAndNoOtherIsDrawnInItsPlace() {
        BatchCard card = last(Optional.empty(), 0.151);
        assertEquals(Usual.Verdict.CANNOT_TELL, card.usual().verdict());
        assertEquals(
                "Batch B12 has no curve that can be read.\nSo whether it is like the others of its lot cannot be told.\nLook at its file in"
                        + " the folder 'curves' and at what the logbook's problems say of it.",
                ShortSentences.keptBy(card.inShort()).text());
        assertFalse(card.text().contains("Bean temperature of"), card.text());
        assertTrue(card.text().contains("It has no bean temperature to draw"), card.text());
        BatchCard whole = last(Optional.of(ExampleRoast.bean(-40, 740)), 0.151);
        assertEquals(Usual.Verdict.LIKE_THE_OTHERS, whole.usual().verdict());
        assertTrue(whole.text().contains("Bean temperature of"), whole.text());
        // What is far off is said still, after what is missing.
        BatchCard off = last(Optional.empty(), 0.25);
        assertEquals(
                "Batch B12 has no curve that can be read.\nStill it is unlike the others: mass loss 25.0 %, 9.9 % above the usual.\nLook"
                        + " at its file in the folder 'curves', and cup it beside a usual batch.",
                ShortSentences.keptBy(off.inShort()).text());
    }

    @Test
    void aCurveOfWhichTooLittleIsLeftIsNotDrawnForAnother() {
        BatchCard card = last(
                Optional.of(ExampleRoast.curve("bean temperature", Unit.TEMPERATURE, t -> 180, -40, -20, 10)), 0.151);
        assertEquals(Usual.Verdict.CANNOT_TELL, card.usual().verdict());
        assertFalse(card.text().contains("Bean temperature of"), card.text());
    }

    @Test
    void aBatchIsHeldBesideTheSameOthersInWordsAndInThePicture() {
        CardLogbook built = CardLogbook.of(10).change("B10", b -> b.conditions(CardLogbook.conditions(2, 184)));
        BatchCard card = BatchCard.of("B10", built.logbook());
        assertEquals(9, card.usual().others().size());
        assertEquals("B10", card.batch().name());
        assertEquals("Card of batch B10: " + card.usual(), card.toString());
        Usual.Verdict verdict = card.usual().verdict();
        assertEquals(Usual.of(card.batch(), built.logbook()).verdict(), verdict);
    }

    @Test
    void aFilteredLogbookHasTheCardOfTheWhole() {
        Logbook logbook = CardLogbook.of(10).logbook();
        assertEquals(
                BatchCard.of("B10", logbook).text(),
                BatchCard.of("B10", logbook.only("B10")).text());
    }

    @Test
    void aBatchThatIsNotThereIsAnsweredWithTheNearestName() {
        Logbook logbook = CardLogbook.of(12).logbook();
        LogbookException thrown = assertThrows(LogbookException.class, () -> BatchCard.of("B011", logbook));
        assertTrue(thrown.getMessage().contains("Did you mean 'B11'?"), thrown.getMessage());
    }
}
