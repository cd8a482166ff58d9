package parchment.calendar.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.logbook.Logbook;
import parchment.logbook.WrittenFolder;

class WrittenPeriodsTest {
    @TempDir
    Path temporary;

    private Logbook logbook() throws IOException {
        return new WrittenFolder(temporary)
                .with(
                        "batches.csv",
                        "batch,roasted at,machine",
                        "a1,2031-03-01T09:00,drum A",
                        "a2,2031-03-10T09:00,drum A",
                        "a3,2031-03-20T09:00,drum A",
                        "b1,2031-03-01T09:00,drum B",
                        "b2,2031-03-10T09:00,drum B",
                        "n1,2031-03-05T09:00,",
                        "n2,2031-03-20T09:00,",
                        "u,,drum A",
                        "v,,drum B")
                .with(
                        "upkeep.csv",
                        "machine,done on,what",
                        "drum A,2031-03-10,bean probe moved",
                        "drum A,2031-03-12,probe cleaned",
                        "drum A,2031-03-15,air probe replaced",
                        "drum C,2031-03-15,new bean probe")
                .open();
    }

    private static OptionalInt number(Logbook logbook, String batch) {
        return WrittenPeriods.of(logbook).number(logbook.batch(batch));
    }

    @Test
    void aChangeOfTheBeanProbeBeginsANewPeriodOnItsDayAndOnItsMachineOnly() throws IOException {
        Logbook logbook = logbook();
        assertEquals(OptionalInt.of(1), number(logbook, "a1"));
        assertEquals(OptionalInt.of(2), number(logbook, "a2"), "the day of the change is the first of the new period");
        assertEquals(OptionalInt.of(2), number(logbook, "a3"), "a cleaned probe and an air probe change nothing");
        assertEquals(OptionalInt.of(1), number(logbook, "b1"));
        assertEquals(OptionalInt.of(1), number(logbook, "b2"), "another machine's probe");
        assertEquals(
                List.of(LocalDate.of(2031, 3, 10)), WrittenPeriods.of(logbook).firstDays("drum A"));
        assertEquals(List.of(), WrittenPeriods.of(logbook).firstDays("drum B"));
    }

    @Test
    void aBatchOfAnUnwrittenMachineFollowsEveryChange() throws IOException {
        Logbook logbook = logbook();
        assertEquals(OptionalInt.of(1), number(logbook, "n1"));
        assertEquals(OptionalInt.of(3), number(logbook, "n2"));
    }

    @Test
    void aBatchWithoutADateIsOfNoKnownPeriodWhereThereAreSeveral() throws IOException {
        Logbook logbook = logbook();
        assertTrue(number(logbook, "u").isEmpty());
        assertEquals(OptionalInt.of(1), number(logbook, "v"));
    }
}
