package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import parchment.drift.found.OneScale;
import parchment.feature.BatchTable;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.period.ProbePeriods;

class ProbeShiftsTest {
    private static final Logbook HARBOUR = Logbook.open(Path.of("..", "datasets", "harbour"));

    @Test
    void reportsThePeriodsThatWereFoundAndNoOthers() {
        ProbeShifts shifts = ProbeShifts.of(HARBOUR);
        assertEquals(ProbePeriods.of(HARBOUR).changes(), shifts.changes());
        String page = shifts.shownAs().html().orElseThrow();
        assertTrue(page.contains("2024-10-07"), page);
        assertEquals(1, shifts.pictures().size());
    }

    @Test
    void putsReadingsOnTheScaleOfTheLatestProbeAndLeavesTimesAlone() {
        OneScale scale = ProbeShifts.of(HARBOUR).onOneScale();
        Batch old = HARBOUR.batch("H001");
        BatchTable table = BatchTable.of(HARBOUR, Features.dropTemperature(), Features.dropTime());
        double[] drops = table.values(Features.dropTemperature());
        double[] even = scale.values(table, Features.dropTemperature());
        assertEquals(drops[0] + scale.added(old, drops[0]).estimate(), even[0], 1e-12);
        assertEquals(drops[239], even[239], 0);
        assertEquals(
                table.values(Features.dropTime())[0],
                scale.values(table, Features.dropTime())[0],
                "times are not moved");
    }

    @Test
    void barsThatAreSmallerThanTheirDotsAreSaidWithTheirSize() {
        String text = ProbeShifts.of(HARBOUR)
                .onOneScale()
                .drawn(Features.dropTemperature())
                .text();
        assertTrue(
                text.matches(
                        "(?s).*Bars: 90 % interval of what was added, at most [0-9]\\.[0-9] °C to either side; where none is seen"
                                + " it is shorter than its dot is high\\. .*"),
                text);
    }
}
