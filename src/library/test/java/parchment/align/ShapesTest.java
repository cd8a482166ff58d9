package parchment.align;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import parchment.chart.Line;
import parchment.chart.Plot;
import parchment.logbook.Logbook;

class ShapesTest {
    @Test
    void batchesThatDifferInOneConstantDifferAlongOneShapeWithoutAChangeOfSide() {
        Logbook logbook = InventedRoasts.logbook(InventedRoasts.batches("b", 24, 500, "A", 0, 13));
        Shapes shapes = Shapes.of(OneClock.of(logbook, Clock.BY_BEAN_TEMPERATURE));
        assertTrue(shapes.count() >= 1);
        String words = shapes.words(1);
        assertTrue(
                words.matches(
                        "Shape 1 holds \\d+ % of the spread. A batch one standard deviation up on it runs up to .*"),
                words);
        assertTrue(words.contains("faster from"), words);
    }

    @Test
    void fewBatchesCannotTell() {
        Logbook logbook = InventedRoasts.logbook(InventedRoasts.batches("b", 6, 500, "A", 0, 13));
        Shapes shapes = Shapes.of(OneClock.of(logbook, Clock.BY_BEAN_TEMPERATURE));
        assertEquals(0, shapes.count());
        assertTrue(shapes.text().contains("Cannot tell the shapes"), shapes.text());
    }

    @Test
    void aShapeIsDrawnAsDifferencesFromTheMean() {
        Logbook logbook = InventedRoasts.logbook(InventedRoasts.batches("b", 24, 500, "A", 0, 13));
        Shapes shapes = Shapes.of(OneClock.of(logbook, Clock.BY_BEAN_TEMPERATURE));
        Plot plot = shapes.plot(1);
        assertEquals("rate of rise above the mean (°C/min)", plot.y().fullLabel());
        List<Line> lines = plot.layers().stream().map(Line.class::cast).toList();
        assertEquals(
                List.of("the mean", "one batch in six lies above this", "one batch in six lies below this"),
                lines.stream().map(Line::label).toList());
        double[] shape = shapes.components().orElseThrow().shape(0);
        double deviation = Math.sqrt(shapes.components().orElseThrow().variance(0));
        for (int i = 0; i < shape.length; i++) {
            assertEquals(0, lines.get(0).y(i));
            assertEquals(deviation * shape[i], lines.get(1).y(i), 1e-12);
            assertEquals(-deviation * shape[i], lines.get(2).y(i), 1e-12);
        }
        assertTrue(plot.notes().contains("About two of three batches lie between the two coloured lines."));
    }
}
