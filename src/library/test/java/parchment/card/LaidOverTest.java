package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.chart.Plot;
import parchment.chart.Points;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.written.Upkeep;
import parchment.period.BuiltProbe;
import parchment.phase.ExampleRoast;
import parchment.quantity.Elapsed;
import parchment.quantity.Unit;

/** Which paths and marks are laid over one another. */
class LaidOverTest {
    private static final String NONE = "No bean temperature was logged of these batches, so there is no path to draw.";

    /** Batches of which the first so many are the example roast with its marks, and the others have no curve. */
    private static CardLogbook roasts(int batches, int drawn) {
        CardLogbook built = CardLogbook.of(batches);
        for (int batch = 1; batch <= drawn; batch++) {
            built = built.change(
                    "B" + batch,
                    b -> b.machine("drum")
                            .curve(Quantity.BEAN_TEMPERATURE, ExampleRoast.bean(-40, 740))
                            .writtenMark(MarkKind.YELLOWING, Elapsed.seconds(360))
                            .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(600))
                            .writtenMark(MarkKind.DROP, Elapsed.seconds(740)));
        }
        return built;
    }

    private static List<Points> points(Plot plot) {
        return plot.layers().stream()
                .filter(Points.class::isInstance)
                .map(Points.class::cast)
                .toList();
    }

    private static List<String> left(Plot plot) {
        return plot.notes().stream()
                .filter(note -> note.contains("on today's probe"))
                .toList();
    }

    private static Plot of(CardLogbook built) {
        return LaidOver.of(built.batches(), built.batches(), built.logbook());
    }

    @ParameterizedTest
    @CsvSource({
        "3,3,",
        "3,2,'1 more batch has no bean temperature, or none that is known on today''s probe.'",
        "3,1,'2 more batches have no bean temperature, or none that is known on today''s probe.'",
        "3,0,"
    })
    void batchesWithoutAPathAreCounted(int batches, int drawn, String note) {
        Plot plot = of(roasts(batches, drawn));
        assertEquals(note == null ? List.of() : List.of(note), left(plot));
        assertEquals(drawn == 0, plot.isEmpty());
        assertEquals(NONE, plot.emptySentence());
    }

    @Test
    void theMarksStandWhereTheyWereHeardAndRead() {
        List<Points> points = points(of(roasts(3, 2)));
        assertEquals(
                List.of("yellowing", "first crack start", "drop"),
                points.stream().map(Points::label).toList());
        double[][] places = {{360, 152}, {600, 200}, {740, 228}};
        for (int i = 0; i < 3; i++) {
            assertEquals(2, points.get(i).size());
            assertEquals(places[i][0], points.get(i).x(0));
            assertEquals(places[i][1], points.get(i).y(0), 0.2);
        }
        assertEquals(List.of(), points(of(roasts(3, 0))), "no mark stands without a temperature");
    }

    /** Of B2 nothing was logged for two minutes about its yellowing, so its time is known and its temperature is not. */
    @Test
    void aMarkInAGapOfTheReadingsIsNotDrawn() {
        double[] seconds = IntStream.rangeClosed(-20, 370)
                .mapToDouble(i -> 2.0 * i)
                .filter(t -> t < 300 || t > 420)
                .toArray();
        Curve gap = Curve.of(
                "bean temperature",
                Unit.TEMPERATURE,
                seconds,
                Arrays.stream(seconds).map(ExampleRoast.BEAN).toArray());
        List<Points> points = points(of(roasts(2, 2).change("B2", b -> b.curve(Quantity.BEAN_TEMPERATURE, gap))));
        assertEquals(List.of(1, 2, 2), points.stream().map(Points::size).toList());
    }

    @Test
    void onlyTheMarksOfTheBatchesNamedAreDrawn() {
        CardLogbook built = roasts(3, 3);
        Plot plot = LaidOver.of(built.batches(), built.batches().subList(0, 1), built.logbook());
        assertEquals(List.of(1, 1, 1), points(plot).stream().map(Points::size).toList());
        Plot others = LaidOver.of(built.batches().subList(0, 2), built.batches().subList(1, 3), built.logbook());
        assertEquals(
                List.of(1, 1, 1),
                points(others).stream().map(Points::size).toList(),
                "B3 is not drawn, so its marks would stand alone");
    }

    /** The probe reads 3 °C less from the seventh day on: a mark of before stands 3 °C lower than it was read. */
    @Test
    void marksOfBeforeAChangeOfTheProbeAreOnTodays() {
        BuiltProbe probe = new BuiltProbe(14).step(7, -3);
        probe.noise = 0.001;
        Logbook logbook = probe.logbook();
        List<Batch> batches = Stream.of("B1", "B22").map(logbook::batch).toList();
        Points drop = points(LaidOver.of(batches, batches, logbook)).stream()
                .filter(one -> one.label().equals("drop"))
                .findFirst()
                .orElseThrow();
        assertEquals(drop.y(1), drop.y(0), 0.2);
    }

    @Test
    void aBatchIsDrawnWhereItsPathIsKnownOnTodaysProbe() {
        CardLogbook built = roasts(3, 2);
        Logbook logbook = built.logbook();
        assertTrue(LaidOver.isDrawn(logbook.batch("B1"), logbook));
        assertFalse(LaidOver.isDrawn(logbook.batch("B3"), logbook));
        Logbook moved = Logbook.of(built.contents().toBuilder()
                .upkeep(List.of(new Upkeep("drum", LocalDate.of(2025, 1, 2), "bean probe moved", Optional.empty())))
                .build());
        assertFalse(LaidOver.isDrawn(moved.batch("B1"), moved));
        assertTrue(LaidOver.isDrawn(moved.batch("B2"), moved));
        Plot plot = LaidOver.of(moved.batches(), moved.batches(), moved);
        assertEquals(
                List.of("2 more batches have no bean temperature, or none that is known on today's probe."),
                left(plot));
        assertEquals(List.of(1, 1, 1), points(plot).stream().map(Points::size).toList());
    }
}
