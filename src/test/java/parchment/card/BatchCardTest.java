package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import parchment.display.ShortSentences;
import parchment.drift.Usual;
import parchment.logbook.Batch;
import parchment.logbook.Cautions;
import parchment.logbook.Logbook;
import parchment.logbook.LogbookException;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.phase.ExampleRoast;
import parchment.quantity.Elapsed;

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
        CardLogbook built = CardLogbook.of(2).change("B2", b -> b.curve(
                        Quantity.BEAN_TEMPERATURE, ExampleRoast.bean(-40, 740))
                .writtenMark(MarkKind.DROP, Elapsed.seconds(740)));
        String page = BatchCard.of("B2", built.logbook()).text();
        assertTrue(page.contains("Bean temperature of one batch, time since charge."), page);
        assertTrue(page.contains("1 more batch has no bean temperature, or none that is known on today's probe."), page);
        assertTrue(page.contains("No other batch with a bean temperature was read by the same probe."), page);
        // A card of a batch without a curve draws nothing, though its lot has a curve.
        String without = BatchCard.of("B1", built.logbook()).text();
        assertFalse(without.contains("Bean temperature of"), without);
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
