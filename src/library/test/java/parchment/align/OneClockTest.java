package parchment.align;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.contents.LogbookException;
import parchment.logbook.written.Upkeep;
import parchment.quantity.TemperatureUnit;
import parchment.stats.warp.Warp;

class OneClockTest {
    private static final double[] BENDS = {-0.5, -0.35, -0.2, -0.05, 0.05, 0.2, 0.35, 0.5};

    /** The stage, 0 to 600, that a batch has reached at a second of its own clock of 640 s. */
    private static DoubleUnaryOperator stage(double bend) {
        return t -> 600 * Math.expm1(bend * t / 640) / Math.expm1(bend);
    }

    private static double inverse(double bend, double stage) {
        return 640 / bend * Math.log1p(stage / 600 * Math.expm1(bend));
    }

    private static List<Batch> warped() {
        List<Batch> batches = new ArrayList<>();
        for (int i = 0; i < BENDS.length; i++) {
            double bend = BENDS[i];
            batches.add(InventedRoasts.onClock("w" + i, stage(bend), 640, inverse(bend, 250), inverse(bend, 430))
                    .roastedAt(InventedRoasts.at(i, 0))
                    .build());
        }
        return batches;
    }

    @Test
    void theClockOfAllMarksRecoversKnownWarps() {
        OneClock one = OneClock.of(warped(), Clock.BY_ALL_MARKS);
        // Every batch passes the stage of 340 at another second; the reference is the median of the marks.
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        double earliest = Double.POSITIVE_INFINITY;
        double latest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < BENDS.length; i++) {
            double own = inverse(BENDS[i], 340);
            double reference = one.warp("w" + i).at(own);
            low = Math.min(low, reference);
            high = Math.max(high, reference);
            earliest = Math.min(earliest, own);
            latest = Math.max(latest, own);
        }
        assertTrue(latest - earliest > 70, "the clocks differ: " + (latest - earliest));
        assertTrue(high - low < 6, "the clocks agree: " + (high - low));
    }

    @Test
    void marksLieOnEachOtherOnTheClockOfAllMarks() {
        OneClock one = OneClock.of(warped(), Clock.BY_ALL_MARKS);
        double first = one.warp("w0").at(inverse(BENDS[0], 430));
        for (int i = 1; i < BENDS.length; i++) {
            // Written marks are kept to the tenth of a second and better.
            assertEquals(first, one.warp("w" + i).at(inverse(BENDS[i], 430)), 0.1);
        }
        assertTrue(one.text().contains("first crack start (± 5 s)"), one.text());
    }

    @Test
    void theElasticClockRecoversKnownWarpsWithoutAnyMark() {
        List<Batch> batches = new ArrayList<>();
        for (int i = 0; i < BENDS.length; i++) {
            batches.add(InventedRoasts.onClock("w" + i, stage(BENDS[i]), 640)
                    .roastedAt(InventedRoasts.at(i, 0))
                    .build());
        }
        OneClock one = OneClock.of(batches, Clock.BY_RATE_OF_RISE);
        assertEquals(BENDS.length, one.batches().size());
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < BENDS.length; i++) {
            // The hump of the rate is at stage 300.
            double reference = one.warp("w" + i).at(inverse(BENDS[i], 300));
            low = Math.min(low, reference);
            high = Math.max(high, reference);
        }
        double apart = inverse(BENDS[0], 300) - inverse(BENDS[7], 300);
        assertTrue(Math.abs(apart) > 70, "the humps lie apart: " + apart);
        assertTrue(high - low < 0.4 * Math.abs(apart), "the humps come together: " + (high - low));
    }

    @Test
    void alongTheTemperatureWarpedCopiesOfOneRoastDifferInPaceOnly() {
        OneClock one = OneClock.of(warped(), Clock.BY_BEAN_TEMPERATURE);
        // A batch that runs twice as fast along the stage rises twice as fast at the same temperature.
        double[] at = one.positions();
        int middle = at.length / 2;
        double[] slow = one.values(one.laid().get(0));
        double[] fast = one.values(one.laid().get(7));
        assertFalse(Math.abs(slow[middle] - fast[middle]) < 0.05 * slow[middle] && at[middle] > 0);
        // The clock by temperature carries every batch to the same time at the same temperature.
        double stage = 200;
        Warp first = one.warp("w0");
        Warp last = one.warp("w7");
        assertEquals(first.at(inverse(BENDS[0], stage)), last.at(inverse(BENDS[7], stage)), 1.5);
    }

    @Test
    void theMeanOfEqualBatchesIsTheBatchAndItsBandIsNarrow() {
        List<Batch> batches = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            batches.add(InventedRoasts.roast("e" + i, 500, 300, 40 + i)
                    .roastedAt(InventedRoasts.at(i / 2, i % 2))
                    .build());
        }
        OneClock one = OneClock.of(batches, Clock.SINCE_CHARGE);
        int middle = 40;
        double t = one.positions()[middle];
        double truth = 260 - 185 * Math.pow(1 - 2 / 500.0, (t - 58) / 2);
        assertTrue(t < 300, "before the air is opened: " + t);
        assertEquals(truth, one.mean()[middle], 0.5);
        double[] upper = one.band().orElseThrow().upper();
        assertEquals(one.mean()[middle], upper[middle], 0.2);
        assertTrue(one.text().contains("counts the 6 roast days"), one.text());
    }

    @Test
    void fewRoastDaysGetNoBandAndTheReason() {
        List<Batch> batches = InventedRoasts.batches("f", 9, 500, "A", 0, 3);
        OneClock one = OneClock.of(batches, Clock.SINCE_CHARGE);
        assertFalse(one.band().orElseThrow().canTell());
        assertTrue(one.text().contains("how well the mean is known cannot be told"), one.text());
    }

    @Test
    void ofTwoProbesOnlyTheLatestIsLaidTogetherAndThePageSaysSo() {
        List<Batch> batches = InventedRoasts.batches("p", 60, 500, "A", 0, 3);
        Logbook logbook = InventedRoasts.logbook(
                batches,
                List.of(),
                List.of(new Upkeep("drum", InventedRoasts.day(10), "probe moved", Optional.empty())));
        OneClock one = OneClock.of(logbook, Clock.SINCE_CHARGE);
        assertEquals(30, one.batches().size());
        assertTrue(
                one.text()
                        .contains(
                                "Only the batches on the probe of drum from 2025-03-11 on are laid together (30 of 60)"),
                one.text());
    }

    @Test
    void theWarpIsDrawnAsSecondsBehindTheReference() {
        OneClock one = OneClock.of(warped(), Clock.BY_ALL_MARKS);
        WarpChart chart = WarpChart.of(one, "w0");
        double reference = one.warp("w0").at(inverse(BENDS[0], 250));
        assertEquals(inverse(BENDS[0], 250) - reference, chart.behind(reference), 1e-6);
        assertTrue(chart.text().contains("behind the reference (s)"), chart.text());
        assertTrue(chart.svg().orElseThrow().contains("first crack start"));
    }

    @Test
    void aClockThatShiftsNothingSaysSoInsteadOfDrawingItsRounding() {
        WarpChart chart = WarpChart.of(OneClock.of(warped(), Clock.SINCE_CHARGE));
        String said =
                "On the clock 'time since charge' no batch is shifted, so there is nothing to compare. Take the clock of all marks.";
        assertTrue(chart.text().contains(said), chart.text());
        assertTrue(chart.plot().isEmpty());
        assertFalse(chart.text().contains("0.00 s"), chart.text());
        assertFalse(WarpChart.of(OneClock.of(warped(), Clock.SINCE_YELLOWING))
                .plot()
                .isEmpty());
    }

    @Test
    void showsTemperaturesOnTheReadersScale() {
        String text = OneClock.of(warped(), Clock.SINCE_CHARGE)
                .in(TemperatureUnit.FAHRENHEIT)
                .text();
        assertTrue(text.contains("bean temperature (°F)"), text);
    }

    @Test
    void saysThatABatchIsNotOnTheClock() {
        OneClock one = OneClock.of(warped(), Clock.BY_ALL_MARKS);
        assertTrue(assertThrows(LogbookException.class, () -> one.warp("other"))
                .getMessage()
                .startsWith("Batch 'other' cannot be laid on the clock"));
        assertThrows(LogbookException.class, () -> one.withHighlight("other"));
    }

    @Test
    void nothingToLayIsASentenceOnEveryClock() {
        for (Clock clock : Clock.values()) {
            assertTrue(
                    OneClock.of(List.of(), clock).svg().orElseThrow().contains("No batch can be laid on this clock"),
                    clock.words());
        }
    }

    @Test
    void aBatchWithoutAMarkIsLeftOutAndCounted() {
        List<Batch> batches = new ArrayList<>(warped());
        batches.add(InventedRoasts.onClock("unmarked", t -> t, 600).build());
        OneClock one = OneClock.of(batches, Clock.BY_ALL_MARKS);
        assertEquals(8, one.batches().size());
        assertTrue(one.text().contains("8 of 9 batches are on this clock"), one.text());
        assertEquals(8, OneClock.of(batches, Clock.SINCE_YELLOWING).batches().size());
        assertEquals(Optional.of(MarkKind.YELLOWING), Clock.SINCE_YELLOWING.zero());
    }
}
