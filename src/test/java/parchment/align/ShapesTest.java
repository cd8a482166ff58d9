package parchment.align;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
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
}
