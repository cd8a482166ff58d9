package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.feature.Features;
import parchment.logbook.Logbook;

/** Watches over a whole logbook, and over drawn series. */
class WatchedLogbooksTest {
    private static final Logbook HARBOUR = Logbook.open(Path.of("..", "datasets", "harbour"));

    @Test
    void watchesProbeReadingsSinceTheProbeOfTheirOwnMachineWasMoved() {
        Logbook low = HARBOUR.ofLot("Low Orchard");
        Watch watch = Watch.of(low, Features.firstCrackTemperature());
        assertTrue(watch.batches().stream()
                .allMatch(b -> !b.roastDay().orElseThrow().isBefore(LocalDate.of(2024, 10, 7))));
        Watch times = Watch.of(low, Features.browningTime());
        assertTrue(times.batches().size() > watch.batches().size());
        Logbook nothingWritten =
                Logbook.of(HARBOUR.contents().toBuilder().upkeep(List.of()).build());
        Watch found = Watch.of(nothingWritten.ofLot("Low Orchard"), Features.firstCrackTemperature());
        assertEquals(
                watch.batches().size(), found.batches().size(), found.rows().leftOutWords());
        assertTrue(
                watch.rows()
                        .leftOutWords()
                        .contains(" read before its machine's probe last changed, as written or found"),
                watch.rows().leftOutWords());
    }

    /** Short version of the table in docs/measurements/drift.md: 1 - 0.99^14 is stated, give or take two Monte-Carlo errors. */
    @ParameterizedTest
    @CsvSource({"INDEPENDENT", "NEIGHBOURS_05"})
    void unchangedSeriesSignalAsOftenAsIsStatedWhetherNeighboursResembleEachOtherOrNot(WatchStudy.Kind kind) {
        WatchStudy.Counts counts = WatchStudy.run(new WatchStudy.Cell(kind, 20, 140, 1, 2), 200, 5);
        assertEquals(0.131, counts.stated(), 0.002);
        assertEquals(0.131 * 200, counts.shift(), 2 * Math.sqrt(0.131 * 0.869 * 200), counts.toString());
        assertEquals(0.131 * 200, counts.single(), 2 * Math.sqrt(0.131 * 0.869 * 200), counts.toString());
        assertEquals(counts.promised(), counts.seen() / 200.0, 0.08, counts.toString());
    }
}
