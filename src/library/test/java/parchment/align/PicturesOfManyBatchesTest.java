package parchment.align;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import parchment.chart.Band;
import parchment.chart.Line;
import parchment.chart.Plot;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.contents.LogbookException;
import parchment.quantity.Elapsed;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

class PicturesOfManyBatchesTest {
    private static final double END = 230;

    /** An invented curve that falls to about 80 °C and then rises towards {@link #END} with a known time constant. */
    private static Batch.Builder batch(String name, double timeConstant) {
        double[] seconds =
                IntStream.rangeClosed(0, 300).mapToDouble(i -> 2.0 * i).toArray();
        double[] celsius = new double[seconds.length];
        for (int i = 0; i < seconds.length; i++) {
            celsius[i] = END - 160 * Math.exp(-seconds[i] / timeConstant) + 120 * Math.exp(-seconds[i] / 15);
        }
        return Batch.named(name)
                .curve(Quantity.BEAN_TEMPERATURE, Curve.of("bean temperature", Unit.TEMPERATURE, seconds, celsius))
                .writtenMark(MarkKind.DROP, Elapsed.seconds(600));
    }

    private static List<Batch> batches(int n) {
        List<Batch> batches = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            batches.add(batch("b" + i, 300 + i).build());
        }
        return batches;
    }

    private static Line line(Plot plot, String label) {
        return plot.layers().stream()
                .filter(layer -> layer instanceof Line && layer.label().startsWith(label))
                .map(Line.class::cast)
                .findFirst()
                .orElseThrow();
    }

    private static double at(Line line, double x) {
        for (int i = 0; i < line.size(); i++) {
            if (Math.abs(line.x(i) - x) < 1e-9) {
                return line.y(i);
            }
        }
        throw new AssertionError("no position " + x);
    }

    @Test
    void paceIsTheSlopeOfTheCurveAtEachTemperature() {
        // Once the first term is gone, the slope of END - a exp(-t / T) is (END - temperature) / T, here per minute.
        Line line = line(PaceChart.of(batches(1)).plot(), "batch b0");
        for (double celsius : new double[] {140, 160, 180, 200}) {
            assertEquals(60 * (END - celsius) / 300, at(line, celsius), 0.05, "at " + celsius);
        }
    }

    @Test
    void paceCanBeToldInSecondsForEachDegree() {
        Plot plot = PaceChart.of(batches(1))
                .with(PaceChart.Speed.SECONDS_PER_DEGREE)
                .plot();
        assertEquals("time for each degree (s per °C)", plot.y().fullLabel());
        assertEquals(300 / (END - 160), at(line(plot, "batch b0"), 160), 0.02);
        Plot fahrenheit = PaceChart.of(batches(1))
                .with(PaceChart.Speed.SECONDS_PER_DEGREE)
                .in(TemperatureUnit.FAHRENHEIT)
                .plot();
        assertEquals(300 / (END - 160) / 1.8, at(line(fahrenheit, "batch b0"), 160), 0.02);
    }

    @Test
    void manyBatchesAreACrowdWithAMedianAndAMiddleHalf() {
        Plot plot = PaceChart.of(batches(21)).plot();
        assertTrue(plot.text().contains("20 thin lines (one batch each)"), plot.text());
        assertEquals(
                60 * (END - 160) / 310, at(line(plot, "middle of 21 batches"), 160), 0.05); // b10 lies in the middle
        Band band = (Band) plot.layers().stream()
                .filter(Band.class::isInstance)
                .findFirst()
                .orElseThrow();
        for (int i = 0; i < band.size(); i++) {
            if (band.x(i) == 160) {
                assertEquals(60 * (END - 160) / 315, band.lower(i), 0.05);
                assertEquals(60 * (END - 160) / 305, band.upper(i), 0.05);
            }
        }
        assertEquals(60 * (END - 160) / 320, at(line(plot, "batch b20"), 160), 0.05); // the last one is set off
    }

    @Test
    void fewBatchesAreNamedAtTheirEnds() {
        String svg = PaceChart.of(batches(4)).svg().orElseThrow();
        for (int i = 0; i < 4; i++) {
            assertTrue(svg.contains(">batch b" + i + "<"), svg);
        }
        assertFalse(svg.contains("middle half"), svg);
    }

    @Test
    void countsBatchesThatCannotBeDrawn() {
        List<Batch> batches = new ArrayList<>(batches(7));
        batches.add(Batch.named("no curve").build());
        String text = PaceChart.of(batches).text();
        assertTrue(text.contains("7 of 8 batches"), text);
        assertTrue(text.contains("1 has no bean temperature whose rate of rise could be told, and is left out."), text);
    }

    @Test
    void saysThatThereIsNothingToDraw() {
        assertTrue(PaceChart.of(List.of(Batch.named("a").build()))
                .svg()
                .orElseThrow()
                .contains("No batch has a bean temperature whose rate of rise could be told"));
        for (Clock clock : Clock.values()) {
            assertTrue(OverlayChart.of(List.of(), clock).svg().orElseThrow().contains("No batch has both"));
        }
    }

    @Test
    void saysWhichBatchItDoesNotHave() {
        var failure = assertThrows(
                LogbookException.class, () -> PaceChart.of(batches(7)).withHighlight("b77"));
        assertEquals(
                "The picture has no batch 'b77' to set off. It has 7 batches: b0, b1, b2, b3, b4, ….",
                failure.getMessage());
    }

    @Test
    void overlayStartsTheClockAtTheMarkAndLeavesOutBatchesWithoutIt() {
        List<Batch> batches = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            Batch.Builder builder = batch("b" + i, 300);
            batches.add(
                    i == 3
                            ? builder.build()
                            : builder.writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(480))
                                    .build());
        }
        Plot plot = OverlayChart.of(batches, Clock.SINCE_FIRST_CRACK_START).plot();
        assertEquals("time since first crack start (min:s)", plot.x().fullLabel());
        assertTrue(
                plot.text()
                        .contains(
                                "7 of 8 batches, from charge to drop; 1 lacks a bean temperature or the first crack start"),
                plot.text());
        assertEquals(END - 160 * Math.exp(-480 / 300.0), at(line(plot, "batch b7"), 0), 0.05);
        assertEquals(END - 160 * Math.exp(-540 / 300.0), at(line(plot, "batch b7"), 60), 0.05);
    }

    @Test
    void overlayByTemperatureSaysWhenItWasFirstReached() {
        Plot plot = OverlayChart.of(batches(1), Clock.BY_BEAN_TEMPERATURE).plot();
        assertEquals("bean temperature (°C)", plot.x().fullLabel());
        assertEquals(300 * Math.log(160.0 / (END - 180)), at(line(plot, "batch b0"), 180), 0.3);
    }

    @Test
    void medianStopsWhereTheCrowdThinsOut() {
        List<Batch> batches = new ArrayList<>(batches(8));
        List<Batch> shorter = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            Batch.Builder builder = batches.get(i).toBuilder();
            shorter.add(
                    i < 4
                            ? builder.writtenMark(MarkKind.DROP, Elapsed.seconds(400))
                                    .build()
                            : builder.build());
        }
        Line median = line(OverlayChart.of(shorter, Clock.SINCE_CHARGE).plot(), "middle");
        assertTrue(Double.isFinite(at(median, 395)));
        assertTrue(Double.isNaN(at(median, 410)));
    }
}
