package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Upkeep;

class CalendarStripTest {
    private static Logbook logbook(List<Batch> batches, List<CupScores> cups, List<Upkeep> upkeep) {
        return Logbook.of(LogbookContents.ofBatches("harbour town", batches).toBuilder()
                .cups(cups)
                .upkeep(upkeep)
                .build());
    }

    static Logbook season(int batches, int lots) {
        List<Batch> all = new ArrayList<>();
        List<CupScores> cups = new ArrayList<>();
        for (int i = 0; i < batches; i++) {
            all.add(Batch.named("b" + i)
                    .lot("lot " + (char) ('A' + i * lots / batches))
                    .roastedAt(OffsetDateTime.parse("2025-09-01T08:00:00Z").plusHours(29L * i))
                    .build());
        }
        return logbook(all, cups, upkeep(3));
    }

    private static List<Upkeep> upkeep(int pieces) {
        List<Upkeep> work = new ArrayList<>();
        for (int i = 0; i < pieces; i++) {
            work.add(new Upkeep(
                    "drum one",
                    LocalDate.of(2025, 10, 1).plusDays(17L * i),
                    i == 0 ? "probe moved" : "burner cleaned",
                    Optional.empty()));
        }
        return work;
    }

    @Test
    void hasARowPerLotInTheOrderTheyWereFirstRoasted() {
        String text = CalendarStrip.of(season(30, 3)).text();
        assertTrue(text.contains("4 rows"), text); // three lots and the upkeep
        assertTrue(text.contains("30 points (one batch)"), text);
        assertTrue(text.contains("Probe moved 2025-10-01") || text.contains("probe moved 2025-10-01"), text);
        assertTrue(text.contains("30 of 30 batches, 2025-09-01 to 2025-10-06 (36 days)."), text);
        String svg = CalendarStrip.of(season(30, 3)).svg().orElseThrow();
        assertTrue(svg.indexOf(">lot A (10)<") < svg.indexOf(">lot C (10)<"), svg);
    }

    @Test
    void givesTheLotsWithTheFewestBatchesOneRow() {
        String svg = CalendarStrip.of(season(300, 25)).svg().orElseThrow();
        assertTrue(svg.contains(">8 other lots (96)<"), svg); // 25 lots of 12, 17 rows of their own
    }

    @Test
    void givesALineToChangesOfTheProbeFirst() {
        String text = CalendarStrip.of(logbook(season(10, 1).batches(), List.of(), upkeep(12)))
                .text();
        assertTrue(text.contains("robe moved 2025-10-01"), text);
        assertEquals(8, text.split("(burner cleaned|robe moved) 20", -1).length - 1, text);
        assertTrue(text.contains("Of 12 pieces of work on the machines the 8 most telling have a line"), text);
    }

    @Test
    void countsBatchesWithoutADate() {
        List<Batch> batches = new ArrayList<>(season(3, 1).batches());
        batches.add(Batch.named("undated").build());
        String text = CalendarStrip.of(logbook(batches, List.of(), List.of())).text();
        assertTrue(text.contains("3 of 4 batches") && text.contains("1 has no date and is left out."), text);
        assertTrue(text.contains("No work on the machines is written down"), text);
        assertTrue(text.contains("No cupping is written down."), text);
    }

    @Test
    void saysThatThereIsNothingToDraw() {
        String svg =
                CalendarStrip.of(logbook(List.of(), List.of(), List.of())).svg().orElseThrow();
        assertTrue(svg.contains("No batch of this logbook has a date, so there is no calendar to draw."), svg);
    }

    @Test
    void escapesNames() {
        Batch batch = Batch.named("<script>")
                .lot("\"><script>")
                .roastedAt(OffsetDateTime.parse("2025-09-01T08:00:00Z"))
                .build();
        String html = CalendarStrip.of(logbook(List.of(batch), List.of(), List.of()))
                .html()
                .orElseThrow();
        assertFalse(html.contains("<script>"), html);
    }
}
