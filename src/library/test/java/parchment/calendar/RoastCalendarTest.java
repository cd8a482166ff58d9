package parchment.calendar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.calendar.machine.MachineDays;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.WrittenFolder;
import parchment.quantity.Elapsed;
import parchment.quantity.TemperatureUnit;

class RoastCalendarTest {
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
        RoastCalendar facts = RoastCalendar.of(logbook);
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
        RoastCalendar facts = RoastCalendar.of(logbook);
        assertEquals(Optional.of(Elapsed.of(15, 41)), facts.sinceLastDrop(logbook.batch("b")));
        assertTrue(facts.sinceLastDrop(logbook.batch("a")).isEmpty(), "the first of its day");
        assertTrue(facts.sinceLastDrop(logbook.batch("c")).isEmpty(), "the drop before is not written");
        assertTrue(facts.sinceLastDrop(logbook.batch("overlap")).isEmpty());
        assertTrue(facts.sinceLastDrop(logbook.batch("day 2")).isEmpty(), "no time of day");
        RoastCalendar found = RoastCalendar.of(logbook, batch -> Optional.of(Elapsed.of(8, 0)));
        assertEquals(Optional.of(Elapsed.of(12, 0)), found.sinceLastDrop(logbook.batch("c")));
    }

    @Test
    void countsDaysFromHarvestArrivalAndToTheCupping() throws IOException {
        Logbook logbook = logbook();
        RoastCalendar facts = RoastCalendar.of(logbook);
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
        assertEquals(OptionalInt.of(3), RoastCalendar.of(logbook).batchOfTheDay(logbook.batch("c")));
    }

    @Test
    void aStampInUniversalTimeIsOfTheDayThatTheRoasterSaw() throws IOException {
        Logbook logbook = new WrittenFolder(temporary)
                .with("logbook.properties", "time.zone=America/Los_Angeles")
                .with(
                        "batches.csv",
                        "batch,roasted at,machine,drop [min:s]",
                        "first,2025-01-06T17:00Z,drum,10:00",
                        "evening,2025-01-07T02:00Z,drum,10:00",
                        "next,2025-01-07T17:00Z,drum,10:00")
                .open();
        RoastCalendar calendar = RoastCalendar.of(logbook);
        assertEquals(
                Optional.of(LocalDate.of(2025, 1, 6)), logbook.batch("evening").roastDay());
        assertEquals(
                "batch evening, roasted 2025-01-06, no curve",
                logbook.batch("evening").toString());
        assertEquals(OptionalInt.of(2), calendar.batchOfTheDay(logbook.batch("evening")));
        assertEquals(Optional.of(Elapsed.of(530, 0)), calendar.sinceLastDrop(logbook.batch("evening")));
        assertEquals(OptionalInt.of(1), calendar.batchOfTheDay(logbook.batch("next")));
        assertEquals(
                2,
                logbook.between(LocalDate.of(2025, 1, 6), LocalDate.of(2025, 1, 6))
                        .batches()
                        .size());
        MachineDays days = MachineDays.of(logbook).get(0);
        assertEquals(List.of(LocalDate.of(2025, 1, 6), LocalDate.of(2025, 1, 7)), days.dates());
        assertEquals(List.of(0, 0, 1), days.dayOfBatch());
    }

    @Test
    void whatAFilterLeavesOutHeatedTheMachineAllTheSame() throws IOException {
        Logbook all = logbook();
        Logbook kela = all.ofLot("kela");
        for (Batch batch : kela.batches()) {
            assertEquals(
                    RoastCalendar.of(all).batchOfTheDay(batch),
                    RoastCalendar.of(kela).batchOfTheDay(batch),
                    batch.name());
            assertEquals(
                    RoastCalendar.of(all).sinceLastDrop(batch),
                    RoastCalendar.of(kela).sinceLastDrop(batch),
                    batch.name());
        }
        assertEquals(
                Optional.of("b"),
                RoastCalendar.of(kela).before(kela.batch("c")).map(Batch::name),
                "a batch of another lot");
        Logbook fahrenheit = kela.in(TemperatureUnit.FAHRENHEIT);
        assertEquals(kela.batches().size(), fahrenheit.batches().size(), "a filter outlives a change of unit");
        assertEquals(OptionalInt.of(3), RoastCalendar.of(fahrenheit).batchOfTheDay(fahrenheit.batch("c")));
    }

    @Test
    void twoMachinesHaveDaysOfTheirOwn() throws IOException {
        Logbook logbook = logbook();
        List<MachineDays> machines = MachineDays.of(logbook);
        assertEquals(
                List.of("drum", "little"),
                machines.stream().map(MachineDays::machine).sorted().toList());
        assertEquals(OptionalInt.of(1), RoastCalendar.of(logbook).batchOfTheDay(logbook.batch("small")));
    }

    @Test
    void knowsWhenWasTasted() throws IOException {
        Logbook logbook = logbook();
        RoastCalendar calendar = RoastCalendar.of(logbook);
        assertEquals(List.of(LocalDate.of(2025, 7, 1), LocalDate.of(2025, 7, 8)), calendar.cuppingDays());
        assertEquals(Optional.of(LocalDate.of(2025, 7, 1)), calendar.firstTasted(logbook.batch("a")));
        assertTrue(calendar.firstTasted(logbook.batch("b")).isEmpty());
    }
}
