package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.feature.Features;
import parchment.logbook.Logbook;

/** Holds each first sentence of a watch by built batches. */
class WatchInShortTest {
    private static final double[] QUIET = {
        0.3, -0.8, 0.5, 1.2, -0.4, -1.1, 0.9, 0.1, -0.6, 0.2, 1.0, -0.9, -0.2, 0.7, -1.3, 0.4, 0.6, -0.5, 0.8, -0.9
    };

    /** Twenty quiet batches around 2 kg, and what follows them in steps of 10 g. */
    private static InShort after(double... steps) {
        return ShortSentences.keptBy(
                Watch.of(batches(steps), Features.greenMass()).inShort());
    }

    private static Logbook batches(double... steps) {
        return BuiltBatch.logbook(DoubleStream.concat(Arrays.stream(QUIET), Arrays.stream(steps))
                .mapToObj(step -> BuiltBatch.of(2 + 0.01 * step))
                .toList());
    }

    private static double[] same(int times, double value) {
        double[] all = new double[times];
        Arrays.fill(all, value);
        return all;
    }

    @Test
    void withoutLimitsItSaysWhatIsMissing() {
        assertEquals(
                new InShort(
                        "Whether the green mass has moved cannot be told yet.",
                        "There are 9 batches, and 10 are needed.",
                        "Ask again with more batches of one lot, machine and batch size."),
                Watch.of(
                                BuiltBatch.logbook(Arrays.stream(QUIET)
                                        .limit(9)
                                        .mapToObj(step -> BuiltBatch.of(2 + 0.01 * step))
                                        .toList()),
                                Features.greenMass())
                        .inShort());
        assertEquals("No batch has been roasted after those that say what is usual.", after().howSure());
    }

    @Test
    void aShiftIsToldSinceItsBatchAndWhetherItIsStillThere() {
        InShort up = after(same(10, 6));
        assertEquals("Since batch B21 of 2025-01-21 the green mass lies above what was usual.", up.found());
        assertEquals("Look at what changed about then: beans, machine, weather, habit or probe.", up.next());
        assertEquals(
                "Since batch B21 of 2025-01-21 the green mass lies below what was usual.",
                after(same(10, -6)).found());
        double[] back = same(30, -0.3);
        Arrays.fill(back, 0, 6, 6);
        assertEquals(
                "The green mass lay above what was usual from batch B21 of 2025-01-21 on and has come back.",
                after(back).found());
    }

    @Test
    void singleBatchesAreNoMove() {
        Watch quiet = Watch.of(batches(same(12, 0)), Features.greenMass());
        double[] one = same(12, 0);
        double mean = Arrays.stream(QUIET).average().orElseThrow();
        one[0] = mean + 1.001 * 100 * quiet.limits().orElseThrow().singleLimits()[0];
        InShort words = after(one);
        assertEquals(
                "The green mass has not moved for good, but 1 of 12 batches was far from the others.", words.found());
        assertEquals("Look at the curve of batch B21 of 2025-01-21 and at what was written that day.", words.next());
    }

    @Test
    void theChanceOfLuckIsNeverASillyNumber() {
        assertEquals(
                "Luck alone hardly ever shows such a shift in a chart as long as this.",
                WatchInShort.chanceOf("such a shift", 0));
        assertEquals(
                "Luck alone hardly ever shows such a shift in a chart as long as this.",
                WatchInShort.chanceOf("such a shift", Double.NaN));
        assertEquals(
                "Luck alone shows such a shift in most charts as long as this.",
                WatchInShort.chanceOf("such a shift", 0.7));
        assertEquals(
                "Luck alone shows such a shift in one of 2 charts as long as this.",
                WatchInShort.chanceOf("such a shift", 0.6));
        assertEquals(
                "Luck alone shows such a shift in one of 20 charts as long as this.",
                WatchInShort.chanceOf("such a shift", 0.05));
    }

    /** A shift and a single batch are not equally rare; of two single batches the later one is named. */
    @Test
    void eachKindOfSignalHasItsOwnChanceAndTheLastSingleBatchIsNamed() {
        Watch shifted = Watch.of(batches(same(10, 6)), Features.greenMass());
        assertEquals(
                WatchInShort.chanceOf("such a shift", shifted.falseShifts()),
                shifted.inShort().howSure());
        double[] two = same(12, 0);
        double mean = Arrays.stream(QUIET).average().orElseThrow();
        double limit = 100
                * Watch.of(batches(two), Features.greenMass())
                        .limits()
                        .orElseThrow()
                        .singleLimits()[0];
        two[0] = mean + 1.001 * limit;
        two[6] = mean - 1.2 * limit;
        Watch watch = Watch.of(batches(two), Features.greenMass());
        InShort words = ShortSentences.keptBy(watch.inShort());
        assertEquals(
                "The green mass has not moved for good, but 2 of 12 batches were far from the others.", words.found());
        assertEquals(
                WatchInShort.chanceOf(
                        "a batch that far off", watch.limits().orElseThrow().falseSingles()),
                words.howSure());
        assertEquals("Look at the curve of batch B27 of 2025-01-27 and at what was written that day.", words.next());
    }

    @Test
    void aMoveOfAShareIsToldInPercentagePoints() {
        InShort words = ShortSentences.keptBy(Watch.of(
                        BuiltBatch.logbook(DoubleStream.concat(Arrays.stream(QUIET), Arrays.stream(same(10, 0)))
                                .mapToObj(step -> BuiltBatch.losing(0.15 + 0.002 * step))
                                .toList()),
                        Features.massLoss())
                .inShort());
        assertTrue(
                words.howSure()
                        .matches("A move of more than about [0-9.]+ percentage points would have shown soon, .*"),
                words.howSure());
    }

    @Test
    void aQuietChartSaysWhatWouldHaveShown() {
        assertEquals(
                new InShort(
                        "No move of the green mass was seen in 10 batches.",
                        "A move of more than about 0.012 kg would have shown soon, a smaller one perhaps not.",
                        "Nothing to do; look again after the next batches."),
                after(same(10, 0)));
        assertEquals("No move of the green mass was seen in 1 batch.", after(0).found());
    }
}
