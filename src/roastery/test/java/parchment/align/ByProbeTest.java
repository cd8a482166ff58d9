package parchment.align;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.Upkeep;
import parchment.virtual.VirtualRoastery;

/** What one probe read is held together, and what it did not is kept apart, whether the change was written or not. */
class ByProbeTest {
    /** The first roast day after the harbour's probe was moved, which was on 7 October; see docs/virtual-roastery.md. */
    private static final LocalDate MOVED = LocalDate.of(2024, 10, 8);

    @Test
    void aMoveThatNobodyWroteParts() {
        Logbook written = VirtualRoastery.harbour().run().opened();
        Logbook silent =
                Logbook.of(written.contents().toBuilder().upkeep(List.of()).build());
        Batch last = silent.lastWithCurve();

        Nearest nearest = Nearest.to(last, silent);
        assertTrue(
                nearest.list().stream().noneMatch(one -> day(one.batch()).isBefore(MOVED)),
                "a batch from before the move is called near");
        long before = silent.batches().stream()
                .filter(batch -> batch.roastDay().isPresent() && day(batch).isBefore(MOVED))
                .count();
        assertTrue(before > 100, before + " batches from before the move");
        String left =
                before + " batches were read by another probe, or before or after it was moved, and are not searched";
        assertTrue(nearest.text().contains(left), left + "\n" + nearest.text());
        assertTrue(
                nearest.text()
                        .contains("That the probe was moved before the roasts of " + MOVED
                                + " was written nowhere; it shows in the readings."),
                nearest.text());

        assertTrue(OneClock.of(silent, Clock.BY_BEAN_TEMPERATURE).averaged().stream()
                .noneMatch(batch -> day(batch).isBefore(MOVED)));
        List<String> kinds = Peers.of(silent).stream().map(Peers::words).toList();
        assertTrue(
                kinds.stream()
                        .allMatch(words -> words.endsWith("until " + MOVED) || words.endsWith("from " + MOVED + " on")),
                kinds.toString());
        assertEquals(
                List.of("A probe was changed within these batches (" + MOVED
                        + ", as the readings show): readings before and after it are not on one scale."),
                ProbeChanges.sentences(silent));

        // Where it was written the same batches are parted, and nothing is said of its being found.
        Nearest known = Nearest.to(written.lastWithCurve(), written);
        assertEquals(names(nearest), names(known));
        assertFalse(known.text().contains("written nowhere"), known.text());
    }

    private static List<String> names(Nearest nearest) {
        return nearest.list().stream().map(one -> one.batch().name()).toList();
    }

    private static LocalDate day(Batch batch) {
        return batch.roastDay().orElseThrow();
    }

    @Test
    void workOnAnotherMachineOrTheProbeInTheAirPartsNothing() {
        List<Batch> batches = InventedRoasts.batches("b", 12, 500, "A", 0, 7);
        for (Upkeep work : List.of(
                new Upkeep("other drum", InventedRoasts.day(2), "probe moved", Optional.empty()),
                new Upkeep("drum", InventedRoasts.day(2), "environment probe replaced", Optional.empty()),
                new Upkeep("drum", InventedRoasts.day(2), "probe cleaned", Optional.empty()))) {
            Logbook logbook = InventedRoasts.logbook(batches, List.of(), List.of(work));
            assertEquals(1, ByProbe.of(logbook).periods().size(), work.toString());
            assertEquals(List.of(), ProbeChanges.sentences(logbook), work.toString());
        }
        Logbook moved = InventedRoasts.logbook(
                batches,
                List.of(),
                List.of(new Upkeep("drum", InventedRoasts.day(2), "probe moved", Optional.empty())));
        assertEquals(2, ByProbe.of(moved).periods().size());
        assertEquals(1, ProbeChanges.sentences(moved).size());
    }

    /** Two in the morning of the 7th in Greenwich is the evening of the 6th on the west coast. */
    @Test
    void aRoastDayIsADayWhereTheLogbookIs() {
        List<Batch> batches = new ArrayList<>();
        for (Batch batch : InventedRoasts.batches("b", 12, 500, "A", 0, 7)) {
            batches.add(batch.toBuilder()
                    .roastedAt(OffsetDateTime.parse("2025-01-07T02:00Z").plusMinutes(20L * batches.size()))
                    .build());
        }
        Logbook logbook = Logbook.of(LogbookContents.ofBatches("invented", batches).toBuilder()
                .zone(ZoneId.of("America/Los_Angeles"))
                .build());
        Batch first = logbook.batches().get(0);
        assertEquals("2025-01-06", OneClock.day(first));
        assertEquals("2025-01-06 to 2025-01-06", GroupNames.of(unlabelled(logbook.batches()), "otherwise"));
        String page = Nearest.to(first, logbook).text();
        assertTrue(page.contains("2025-01-06") && !page.contains("2025-01-07"), page);
    }

    /** The same batches of two lots, so that they share their days only. */
    private static List<Batch> unlabelled(List<Batch> batches) {
        List<Batch> mixed = new ArrayList<>(batches);
        mixed.set(0, batches.get(0).toBuilder().lot("B").build());
        return mixed;
    }
}
