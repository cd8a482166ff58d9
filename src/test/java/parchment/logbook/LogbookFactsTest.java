package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.quantity.Elapsed;

class LogbookFactsTest {
    @TempDir
    Path temporary;

    private Logbook logbook() throws IOException {
        return new WrittenFolder(temporary)
                .with("logbook.properties", "time.zone=Europe/Lisbon")
                .with(
                        "batches.csv",
                        "batch,roasted at,lot,machine,drop [min:s]",
                        "c,2025-07-04T10:00,kela,drum,10:00",
                        "a,2025-07-04T09:15,kela,drum,9:19",
                        "b,2025-07-04T09:40,other,drum,",
                        "small,2025-07-04T09:20,kela,little,5:00",
                        "night,2025-07-05T00:30+01:00,kela,drum,9:00",
                        "day,2025-07-06,kela,drum,9:00",
                        "day 2,2025-07-06,kela,drum,9:00",
                        "overlap,2025-07-04T10:05,kela,drum,9:00",
                        "never,,kela,drum,9:00")
                .with("lots.csv", "lot,harvested on,arrived on", "kela,2025-01-05,2025-06-04", "other,,2025-08-01")
                .with(
                        "cuppings.csv",
                        "cupping,tasted on,cupper,batch,body",
                        "x,2025-07-08,Ana,a,5",
                        "x,2025-07-01,Ana,a,5",
                        "x,2025-07-01,Ana,never,5")
                .open();
    }

    @Test
    void countsTheBatchesOfADayOnAMachineInTheLogbooksTimeZone() throws IOException {
        Logbook logbook = logbook();
        LogbookFacts facts = LogbookFacts.of(logbook);
        assertEquals(OptionalInt.of(1), facts.batchOfTheDay(logbook.batch("a")));
        assertEquals(OptionalInt.of(2), facts.batchOfTheDay(logbook.batch("b")));
        assertEquals(OptionalInt.of(3), facts.batchOfTheDay(logbook.batch("c")));
        assertEquals(OptionalInt.of(1), facts.batchOfTheDay(logbook.batch("small")));
        assertEquals(OptionalInt.of(1), facts.batchOfTheDay(logbook.batch("night")));
        assertEquals(OptionalInt.of(2), facts.batchOfTheDay(logbook.batch("day 2")));
        assertTrue(facts.batchOfTheDay(logbook.batch("never")).isEmpty());
    }

    @Test
    void tellsHowLongTheDrumStoodEmpty() throws IOException {
        Logbook logbook = logbook();
        LogbookFacts facts = LogbookFacts.of(logbook);
        assertEquals(Optional.of(Elapsed.of(15, 41)), facts.sinceLastDrop(logbook.batch("b")));
        assertTrue(facts.sinceLastDrop(logbook.batch("a")).isEmpty(), "the first of its day");
        assertTrue(facts.sinceLastDrop(logbook.batch("c")).isEmpty(), "the drop before is not written");
        assertTrue(facts.sinceLastDrop(logbook.batch("overlap")).isEmpty());
        assertTrue(facts.sinceLastDrop(logbook.batch("day 2")).isEmpty(), "no time of day");
        LogbookFacts found = LogbookFacts.of(logbook, batch -> Optional.of(Elapsed.of(8, 0)));
        assertEquals(Optional.of(Elapsed.of(12, 0)), found.sinceLastDrop(logbook.batch("c")));
    }

    @Test
    void countsDaysFromHarvestArrivalAndToTheCupping() throws IOException {
        Logbook logbook = logbook();
        LogbookFacts facts = LogbookFacts.of(logbook);
        assertEquals(OptionalInt.of(180), facts.daysSinceHarvest(logbook.batch("a")));
        assertEquals(OptionalInt.of(30), facts.daysSinceArrival(logbook.batch("a")));
        assertTrue(facts.daysSinceArrival(logbook.batch("b")).isEmpty(), "the lot arrived after the roast");
        assertEquals(OptionalInt.of(4), facts.restDays(logbook.cups().get(0)));
        assertTrue(facts.restDays(logbook.cups().get(1)).isEmpty());
        assertTrue(facts.restDays(logbook.cups().get(2)).isEmpty());
        assertEquals("8 dated batches on 3 days; 1 without a date left out", facts.toString());
    }

    @Test
    void countsBatchesThatAFilterLeftOut() throws IOException {
        Logbook logbook = logbook().ofLot("kela");
        assertEquals(OptionalInt.of(3), LogbookFacts.of(logbook).batchOfTheDay(logbook.batch("c")));
    }
}
