package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import parchment.curve.Curve;
import parchment.logbook.contents.EmptyLogbook;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.contents.LogbookException;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Says which batch is looked at first, also where there is none with a curve or none at all. */
class LastWithCurveTest {
    private static Logbook logbook(Batch... batches) {
        return Logbook.of(LogbookContents.ofBatches("harbour", List.of(batches)));
    }

    private static Batch curved(String name) {
        return Batch.named(name)
                .curve(
                        Quantity.BEAN_TEMPERATURE,
                        Curve.of("bean temperature", Unit.TEMPERATURE, new double[] {0, 10}, new double[] {150, 151}))
                .build();
    }

    private static Batch bare(String name) {
        return Batch.named(name).build();
    }

    @Test
    void isTheNewestWithACurveElseTheNewest() {
        assertEquals(
                "b",
                logbook(curved("a"), curved("b"), bare("c")).lastWithCurve().name());
        assertEquals("c", logbook(bare("a"), bare("c")).lastWithCurve().name());
    }

    @Test
    void ofAnEmptyLogbookIsABatchOfWhichNothingIsKnown() {
        Logbook empty = logbook().in(TemperatureUnit.FAHRENHEIT);
        Batch none = empty.lastWithCurve();
        assertEquals("(none yet)", none.name());
        assertEquals(TemperatureUnit.FAHRENHEIT, none.readerUnit());
        assertTrue(none.lot().isEmpty()
                && none.roastDay().isEmpty()
                && none.logged().isEmpty());
        assertTrue(EmptyLogbook.isStandIn(none));
        assertFalse(EmptyLogbook.isStandIn(bare("a")));
        assertEquals(none.name(), empty.batch(none.name()).name());
        assertEquals(List.of(), empty.batches());
        assertEquals(List.of(), empty.only(none.name()).batches());
    }

    @Test
    void aNameThatIsNotThereIsStillRefused() {
        assertThrows(LogbookException.class, () -> logbook().batch("a"));
        assertThrows(LogbookException.class, () -> logbook(bare("a")).batch("(none yet)"));
    }

    @Test
    void aChoiceThatLeavesNothingIsRefused() {
        Logbook chosen = logbook(bare("a"), bare("b")).only(batch -> false);
        assertEquals(
                "Of the 2 batches of 'harbour' none was chosen, so there is no newest. Choose others.",
                assertThrows(LogbookException.class, chosen::lastWithCurve).getMessage());
    }
}
