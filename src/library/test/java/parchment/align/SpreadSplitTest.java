package parchment.align;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import parchment.logbook.Batch;
import parchment.logbook.MarkKind;

class SpreadSplitTest {
    private static SpreadSplit.OfMark drop(SpreadSplit split) {
        return split.marks().stream()
                .filter(one -> one.kind() == MarkKind.DROP)
                .findFirst()
                .orElseThrow();
    }

    /** Roasts that are cut off at a stage; a larger stretch runs slower. */
    private static List<Batch> roasts(double[] stretch, double[] lastStage) {
        List<Batch> batches = new ArrayList<>();
        for (int i = 0; i < stretch.length; i++) {
            double times = stretch[i];
            batches.add(InventedRoasts.onClock("s" + i, t -> t / times, lastStage[i] * times, 250 * times, 430 * times)
                    .roastedAt(InventedRoasts.at(i, 0))
                    .build());
        }
        return batches;
    }

    @Test
    void batchesOfOneShapeThatRunSlowOrFastDifferByPaceAlone() {
        double[] stretch = {0.9, 0.94, 0.98, 1.0, 1.02, 1.06, 1.1};
        double[] same = {600, 600, 600, 600, 600, 600, 600};
        SpreadSplit split = SpreadSplit.of(InventedRoasts.logbook(roasts(stretch, same)));
        assertEquals(1, drop(split).paceShare(), 0.03);
        assertTrue(drop(split).paceInterval().lower() > 0.9);
        assertTrue(split.timingShare() > 0.9, "timing " + split.timingShare());
    }

    @Test
    void batchesOfOnePaceThatWereDroppedHotterOrColderDifferByTheDropAlone() {
        double[] one = {1, 1, 1, 1, 1, 1, 1};
        double[] last = {570, 580, 590, 600, 610, 620, 630};
        SpreadSplit split = SpreadSplit.of(InventedRoasts.logbook(roasts(one, last)));
        assertEquals(0, drop(split).paceShare(), 0.03);
        assertEquals(1, drop(split).markShare(), 0.03);
        assertEquals(21.6, drop(split).standardDeviation(), 0.1);
    }

    @Test
    void theSharesOfTheStretchesSumToTheWhole() {
        SpreadSplit split = SpreadSplit.of(InventedRoasts.logbook(InventedRoasts.batches("b", 20, 500, "A", 0, 5)));
        assertEquals(
                1, split.steps().stream().mapToDouble(SpreadSplit.OfStep::share).sum(), 1e-9);
        assertTrue(split.text().contains("from charge to"), split.text());
    }

    @Test
    void nothingToSplitIsASentence() {
        String text = SpreadSplit.of(InventedRoasts.logbook(List.of())).text();
        assertTrue(text.contains("Cannot tell how much of the spread is timing"), text);
    }
}
