package parchment.align;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import parchment.logbook.Batch;

class UnusualTest {
    private static List<Batch> withLateOpening() {
        List<Batch> batches = new ArrayList<>(InventedRoasts.batches("b", 29, 500, "A", 0, 7));
        batches.add(InventedRoasts.roast("late", 500, InventedRoasts.USUAL_OPENING + 120, 99)
                .lot("A")
                .roastedAt(InventedRoasts.at(9, 2))
                .build());
        return batches;
    }

    @Test
    void aLateOpeningOfTheAirIsFoundAndNamed() {
        Unusual unusual = Unusual.of(InventedRoasts.logbook(withLateOpening()));
        Unusual.Found found = unusual.find("late").orElseThrow();
        String reasons = String.join("; ", found.reasons());
        assertTrue(
                reasons.matches(
                        ".*the air was opened (1 min 5\\d s|2 min|2 min \\d s) late \\(at 7:0\\d, usually at .*"),
                reasons);
        // Between 300 and 420 s it took heat up at the slower constant: from 146 °C, 120 s against 120 s / 1.3 for the
        // same rise.
        Matcher slower =
                Pattern.compile("(\\d+) s slower between (\\d+) and (\\d+) °C").matcher(reasons);
        assertTrue(slower.find(), reasons);
        assertEquals(27.7, Double.parseDouble(slower.group(1)), 8);
        assertTrue(Math.abs(Double.parseDouble(slower.group(2)) - 146) < 10, reasons);
        assertTrue(Math.abs(Double.parseDouble(slower.group(3)) - 170) < 12, reasons);
        assertEquals("late", unusual.list().get(0).batch().name());
        assertTrue(found.comparedWith().startsWith("29 others: lot A"), found.comparedWith());
        assertTrue(found.depth() > 0 && found.depth() < 0.55, "depth " + found.depth());
    }

    @Test
    void batchesThatOnlyWanderAreNotCalledUnusual() {
        Unusual unusual = Unusual.of(InventedRoasts.logbook(InventedRoasts.batches("b", 60, 500, "A", 0, 11)));
        assertTrue(unusual.list().size() <= 3, unusual.list().toString());
    }

    @Test
    void anOpeningThatNeverCameIsNamed() {
        List<Batch> batches = new ArrayList<>(InventedRoasts.batches("b", 29, 500, "A", 0, 7));
        batches.add(InventedRoasts.roast("never", 500, 9999, 99)
                .lot("A")
                .roastedAt(InventedRoasts.at(9, 2))
                .build());
        String reasons = Unusual.of(InventedRoasts.logbook(batches))
                .find("never")
                .orElseThrow()
                .toString();
        assertTrue(reasons.contains("the air was opened at no time (usually at "), reasons);
    }

    @Test
    void tooFewBatchesCannotTell() {
        Unusual unusual = Unusual.of(InventedRoasts.logbook(InventedRoasts.batches("b", 6, 500, "A", 0, 7)));
        assertTrue(unusual.list().isEmpty());
        assertEquals(
                "Cannot tell which batches are unusual: no 10 batches with a bean temperature are of one probe",
                unusual.toString());
        assertTrue(unusual.text().contains("Too few batches to say what is usual (10 are needed)"), unusual.text());
    }

    @Test
    void saysLengthsOfTimeInWords() {
        assertEquals("24 s", Stretches.length(-24));
        assertEquals("2 min", Stretches.length(120));
        assertEquals("2 min 5 s", Stretches.length(125));
    }
}
