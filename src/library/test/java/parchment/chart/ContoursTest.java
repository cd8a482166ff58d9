package parchment.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class ContoursTest {
    /** One square of 4 among zeros: the level 1 is crossed three quarters of the way from it to each neighbour. */
    @Test
    void aRingRunsWhereTheLevelLiesBetweenNeighbours() {
        Density.Field field = new Density.Field(new double[] {0, 0, 0, 0, 4, 0, 0, 0, 0}, 3, 3);
        List<List<Contours.Place>> rings = Contours.of(field, 1);
        assertEquals(1, rings.size());
        assertEquals(
                Set.of(
                        new Contours.Place(1, 0.25),
                        new Contours.Place(1.75, 1),
                        new Contours.Place(1, 1.75),
                        new Contours.Place(0.25, 1)),
                Set.copyOf(rings.get(0)));
    }
}
