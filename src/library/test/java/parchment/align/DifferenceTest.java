package parchment.align;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.Upkeep;
import parchment.stats.warp.SimultaneousBand;

class DifferenceTest {
    private static Logbook twoLots(double first, double second) {
        List<Batch> batches = new ArrayList<>(InventedRoasts.batches("a", 24, first, "A", 0, 100));
        batches.addAll(InventedRoasts.batches("b", 21, second, "B", 20, 200));
        return InventedRoasts.logbook(batches);
    }

    @Test
    void aKnownDifferenceInRateLiesInsideTheBandAndIsTold() {
        Logbook logbook = twoLots(460, 540);
        Difference difference = Difference.betweenLots(logbook);
        SimultaneousBand band = difference.band().orElseThrow();
        double[] at = difference.positions();
        for (int k = 0; k < at.length; k++) {
            if (at[k] >= 105 && at[k] <= 135) {
                // Before the air is opened the rate at a temperature is (260 - temperature) / constant, here per
                // minute.
                double truth = 60 * (InventedRoasts.AIR - at[k]) * (1 / 460.0 - 1 / 540.0);
                assertTrue(band.lower()[k] < truth + 0.05 && truth - 0.05 < band.upper()[k], "at " + at[k]);
                assertTrue(band.apart()[k], "at " + at[k]);
            }
        }
        assertTrue(
                difference.toString().startsWith("lot A minus lot B: lot A is faster between"), difference.toString());
        assertTrue(difference.text().contains("what differs goes with the group, and need not come from it"));
    }

    @Test
    void lotsThatDoNotDifferAreNotToldApart() {
        Difference difference = Difference.betweenLots(twoLots(500, 500));
        int apart = 0;
        for (boolean point : difference.band().orElseThrow().apart()) {
            apart += point ? 1 : 0;
        }
        assertTrue(apart <= 3, apart + " places");
    }

    @Test
    void anotherClockComparesTemperatures() {
        Difference difference = Difference.betweenLots(twoLots(460, 540)).on(Clock.SINCE_CHARGE);
        assertTrue(difference.text().contains("difference in bean temperature (°C)"), difference.text());
        assertTrue(difference.toString().contains("hotter"), difference.toString());
    }

    @Test
    void groupsOfDifferentProbesAreNotComparedInSilence() {
        Logbook plain = twoLots(500, 500);
        Logbook logbook = InventedRoasts.logbook(
                plain.batches(),
                List.of(),
                List.of(new Upkeep("drum", InventedRoasts.day(15), "probe moved", Optional.empty())));
        String text = Difference.of(
                        logbook.only(b -> b.name().startsWith("a")),
                        logbook.only(b -> b.name().startsWith("b")))
                .text();
        assertTrue(text.contains("were not all read by one probe"), text);
        assertFalse(Difference.of(
                        plain.only(b -> b.name().startsWith("a")),
                        plain.only(b -> b.name().startsWith("b")))
                .text()
                .contains("were not all read by one probe"));
    }

    @Test
    void oneLotAloneCannotTell() {
        Logbook logbook = InventedRoasts.logbook(InventedRoasts.batches("a", 12, 500, "A", 0, 1));
        assertTrue(Difference.betweenLots(logbook).toString().contains("cannot tell"));
        assertTrue(Difference.betweenLots(logbook).svg().orElseThrow().contains("Cannot tell"));
        assertEquals(
                Optional.empty(),
                Difference.betweenLots(InventedRoasts.logbook(List.of())).band());
        assertTrue(Difference.betweenHalves(InventedRoasts.logbook(List.of()))
                .toString()
                .contains("cannot tell"));
    }

    @Test
    void halvesOfTheCalendarAreNamedByTheirDay() {
        Difference halves = Difference.betweenHalves(twoLots(460, 540));
        assertTrue(halves.toString().startsWith("from 2025-03-08 on minus before 2025-03-08"), halves.toString());
        assertTrue(halves.named("later", "earlier").toString().startsWith("later minus earlier: later is slower"));
    }
}
