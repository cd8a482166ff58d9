package parchment.learning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import parchment.curve.Curve;
import parchment.feature.BatchTable;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.BatchConditions;
import parchment.logbook.written.CupScores;
import parchment.quantity.Elapsed;
import parchment.quantity.Mass;
import parchment.quantity.Unit;

/** Holds how much must be known before something is learnt of it, by a row on each side of every threshold. */
class LearntRowsThresholdsTest {
    private static OffsetDateTime day(int number) {
        return OffsetDateTime.of(2025, 3, 1, 9, 0, 0, 0, ZoneOffset.UTC).plusDays(number);
    }

    private static CentredRows withoutMass(int missing) {
        List<Batch> batches = IntStream.range(0, 20)
                .mapToObj(i -> Batch.named("b" + i)
                        .roastedAt(day(i))
                        .conditions(
                                i < missing
                                        ? BatchConditions.NOT_WRITTEN
                                        : BatchConditions.NOT_WRITTEN.withGreenMass(Mass.kilograms(2 + 0.01 * i)))
                        .build())
                .toList();
        return CentredRows.of(
                BatchTable.of(Logbook.of(LogbookContents.ofBatches("Masses", batches)), Features.greenMass()),
                List.of(Features.greenMass()),
                batches.stream().map(Batch::name).collect(Collectors.toSet()));
    }

    @Test
    void aFeatureThatIsMissingInMoreThanAFifthIsLeftOut() {
        assertEquals(List.of("green mass"), withoutMass(4).names());
        assertEquals(4, withoutMass(4).filled());
        assertEquals(List.of("green mass"), withoutMass(5).leftOut());
    }

    private static Map<String, Double> levels(int scores) {
        List<Batch> batches = IntStream.range(0, 4)
                .mapToObj(i -> Batch.named("b" + i).roastedAt(day(i)).build())
                .toList();
        List<CupScores> cups = IntStream.range(0, scores)
                .mapToObj(i -> new CupScores(
                        "Friday",
                        LocalDate.of(2025, 4, 1),
                        "cupper " + i / 4,
                        "b" + i % 4,
                        Optional.empty(),
                        Optional.empty(),
                        OptionalInt.empty(),
                        Map.of("sweetness", 6 + 0.25 * (i * i % 5)),
                        Optional.empty()))
                .toList();
        return BatchLevels.of(
                Logbook.of(LogbookContents.ofBatches("Scores", batches).toBuilder()
                        .cups(cups)
                        .build()),
                "sweetness");
    }

    @Test
    void cuppersAreToldFromBatchesFromTwelveScoresOn() {
        assertEquals(4, levels(12).size());
        assertEquals(Map.of(), levels(11));
    }

    /** Batches of a known straight truth on so many roast days. */
    private static Yardstick asked(int size, int days) {
        SplittableRandom random = new SplittableRandom(7);
        List<Batch> batches = new ArrayList<>();
        List<double[]> rows = new ArrayList<>();
        List<Double> levels = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            double[] row = {random.nextGaussian(), random.nextGaussian()};
            rows.add(row);
            batches.add(Batch.named("b" + i).lot("A").roastedAt(day(i % days)).build());
            levels.add(6 + 0.5 * row[0] + 0.3 * random.nextGaussian());
        }
        return Yardstick.of(
                "sweetness",
                new ScoredRows(new CentredRows(batches, List.of("one", "two"), rows, 0, List.of()), levels, 0));
    }

    @Test
    void daysAreLeftOutFromSixtyBatchesOnTwentyDaysOn() {
        assertTrue(Double.isFinite(asked(60, 20).gain()));
        assertTrue(Double.isNaN(asked(59, 20).gain()));
        assertTrue(Double.isNaN(asked(60, 19).gain()));
    }

    /** A roast that is logged every second, without readings where the log has a gap. */
    private static int ratesOf(int drop, int lastReading, int gapFrom, int gapTo) {
        double[] seconds = IntStream.rangeClosed(0, lastReading)
                .filter(t -> t <= gapFrom || t >= gapTo)
                .asDoubleStream()
                .toArray();
        double[] celsius = Arrays.stream(seconds)
                .map(t -> 240 - 160 * Math.exp(-t / 300) + 105 * Math.exp(-t / 14))
                .toArray();
        Batch batch = Batch.named("b")
                .machine("drum")
                .roastedAt(day(0))
                .curve(Quantity.BEAN_TEMPERATURE, Curve.of("bean temperature", Unit.TEMPERATURE, seconds, celsius))
                .writtenMark(MarkKind.DROP, Elapsed.seconds(drop))
                .build();
        return RatePaths.of(Logbook.of(LogbookContents.ofBatches("Rates", List.of(batch))))
                .rates()
                .size();
    }

    /** From 1:30 on every five seconds: the thirtieth sample is at 3:55. */
    @Test
    void aWayHasThirtySamples() {
        assertEquals(1, ratesOf(235, 240, 0, 0));
        assertEquals(0, ratesOf(234, 240, 0, 0));
    }

    @Test
    void aLogMayEndHalfAMinuteBeforeTheDrop() {
        assertEquals(1, ratesOf(630, 600, 0, 0));
        assertEquals(0, ratesOf(632, 600, 0, 0));
    }

    /** Between 5:00 and 5:35 six samples have no reading, between 5:00 and 5:40 seven. */
    @Test
    void aGapOfSixSamplesIsBridged() {
        assertEquals(1, ratesOf(600, 610, 300, 335));
        assertEquals(0, ratesOf(600, 610, 300, 340));
    }
}
