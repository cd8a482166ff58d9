package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class ForetoldTest {
    @Test
    void rowsAreForetoldByTheMeanOfTheFirst() {
        Foretold foretold = new Foretold(List.of(new double[] {1, 1, 1, 1, 1}), 4);
        Foretold.Deviations of = foretold.of(new double[] {1, 3, 2, 6, 5});
        assertArrayEquals(new double[] {-2, 0, -1, 3, 2}, of.raw(), 1e-12);
        assertEquals(Math.sqrt(14.0 / 3), of.spread(), 1e-12);
        assertEquals(Math.sqrt(1 + 1.0 / 4), foretold.error(0), 1e-12);
        assertArrayEquals(new double[] {2 / Math.sqrt(14.0 / 3 * 1.25)}, of.watched(4), 1e-12);
    }

    @Test
    void rowsAreForetoldByTheLineThroughTheFirst() {
        Foretold foretold = new Foretold(List.of(new double[] {1, 1, 1, 1, 1}, new double[] {4, 5, 6, 7, 3}), 3);
        Foretold.Deviations of = foretold.of(new double[] {1, 2, 6, 10, -2});
        // The line rises by 2.5 and passes 3 at 5: 0.5, 3, 5.5, then 8 and -2.
        assertArrayEquals(new double[] {0.5, -1, 0.5, 2, 0}, of.raw(), 1e-9);
        assertEquals(Math.sqrt(1.5), of.spread(), 1e-9);
        // Textbook's standard error of a prediction: 1 + 1 / n + squared distance from the mean over their sum in the
        // first rows.
        assertEquals(Math.sqrt(1 + 1.0 / 3 + 4.0 / 2), foretold.error(0), 1e-9);
        assertEquals(Math.sqrt(1 + 1.0 / 3 + 4.0 / 2), foretold.error(1), 1e-9);
        assertArrayEquals(new double[] {2 / Math.sqrt(1.5 * 10 / 3), 0}, of.watched(3), 1e-9);
    }

    @Test
    void rowsGivenStayAsTheyWere() {
        double[] y = {1, 3, 2, 6, 5};
        new Foretold(List.of(new double[] {1, 1, 1, 1, 1}), 4).of(y);
        assertArrayEquals(new double[] {1, 3, 2, 6, 5}, y);
    }
}
