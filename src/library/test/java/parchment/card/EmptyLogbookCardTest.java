package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import org.junit.jupiter.api.Test;
import parchment.drift.Usual;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookContents;

/** A logbook without batches answers what is asked about its newest with what is missing. */
class EmptyLogbookCardTest {
    private static final Logbook EMPTY = Logbook.of(LogbookContents.ofBatches("harbour", List.of()));

    @Test
    void itsBatchCardSaysThatThereIsNoBatchYet() {
        BatchCard card = BatchCard.of(EMPTY.lastWithCurve(), EMPTY);
        assertEquals("The logbook has no batch yet.", card.inShort().found());
        assertEquals("The newest batch", card.text().lines().findFirst().orElse(""));
        assertFalse(card.text().contains("none yet"), card.text());
    }

    @Test
    void theQuestionOfItsNewestIsAnsweredWithoutANameThatStandsIn() {
        Usual usual = Usual.of(EMPTY.lastWithCurve(), EMPTY);
        assertEquals(
                "The logbook has no batch yet.\nSo there is none to hold against others.\nWrite a line for each batch into batches.csv and"
                        + " open the logbook again.",
                usual.inShort().text());
        assertEquals("The logbook has no batch yet", usual.toString());
        String page = usual.text();
        assertEquals(
                "Is the newest batch like the others?", page.lines().findFirst().orElse(""));
        assertFalse(page.contains("none yet"), page);
    }
}
