package parchment.align;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;

class WhereTimeWentTest {
    @Test
    void theSecondsOfEachStepFollowTheKnownPace() {
        List<Batch> batches = new ArrayList<>(InventedRoasts.batches("b", 15, 500, "A", 0, 7));
        batches.add(InventedRoasts.roast("slow", 550, 300, 9).lot("A").build());
        Logbook logbook = InventedRoasts.logbook(batches);
        WhereTimeWent where = WhereTimeWent.of(logbook.batch("slow"), logbook);
        WhereTimeWent.Step step = where.steps().stream()
                .filter(one -> Math.abs(one.from() - 110) < 1e-9)
                .findFirst()
                .orElseThrow();
        // From 110 to 120 °C under air of 260 °C: constant times ln(150 / 140).
        assertEquals(550 * Math.log(150 / 140.0), step.seconds(), 1.5);
        assertEquals(500 * Math.log(150 / 140.0), step.usual(), 1.5);
        assertTrue(step.low() <= step.usual() && step.usual() <= step.high());
        assertTrue(where.text().contains("more than usual"), where.text());
    }

    @Test
    void tooFewOthersIsASentence() {
        Logbook logbook = InventedRoasts.logbook(InventedRoasts.batches("b", 3, 500, "A", 0, 7));
        assertTrue(WhereTimeWent.of(logbook.batch("b0"), logbook)
                .text()
                .contains("There are too few other batches of its kind"));
    }
}
