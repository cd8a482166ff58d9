package parchment.chart;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;

class LabelsTest {
    @Test
    void stayWhereTheyAreIfThereIsRoom() {
        assertArrayEquals(new double[] {10, 40, 90}, EndLabels.spread(new double[] {10, 40, 90}, 16, 0, 100), 1e-9);
    }

    @Test
    void movePairsApartEvenly() {
        assertArrayEquals(new double[] {42, 58}, EndLabels.spread(new double[] {50, 50}, 16, 0, 100), 1e-9);
    }

    @RepeatedTest(30)
    void neverCoverEachOtherAndStayInside(RepetitionInfo info) {
        Random random = new Random(info.getCurrentRepetition());
        int n = 1 + random.nextInt(19);
        double[] wanted = random.doubles(n, -20, 320)
                .map(y -> Math.max(0, Math.min(300, y)))
                .sorted()
                .toArray();
        double[] places = EndLabels.spread(wanted, 16, 0, 300);
        for (int i = 0; i < n; i++) {
            assertTrue(places[i] >= -1e-9 && places[i] <= 300 + 1e-9, Arrays.toString(places));
            assertTrue(i == 0 || places[i] - places[i - 1] >= 16 - 1e-9, Arrays.toString(places));
        }
    }

    @RepeatedTest(30)
    void ofBoundariesCoverNeitherAnotherNorItsLine(RepetitionInfo info) {
        Random random = new Random(info.getCurrentRepetition());
        Scale x = Scale.around(Axis.clock("t"), 0, 600, Scale.Room.NONE).over(60, 600);
        List<Boundary> boundaries = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            boundaries.add(Boundary.at("mark " + "x".repeat(random.nextInt(20)), random.nextInt(600)));
        }
        List<Lanes.Placed> placed = Lanes.place(boundaries, x, Layout.WIDE);
        assertEquals(8, placed.size());
        for (Lanes.Placed a : placed) {
            for (Lanes.Placed b : placed) {
                boolean behind = a != b && b.x() > a.x() && b.x() < a.x() + Lanes.width(a.words());
                assertTrue(!behind || a.lane() > b.lane(), a + " and " + b);
            }
        }
    }

    @Test
    void areShortenedByWidthNotByLetters() {
        assertEquals("iiiiiiiiii", TextWidth.fit("iiiiiiiiii", 10, 30));
        assertTrue(TextWidth.fit("WWWWWWWWWW", 10, 30).endsWith("…"));
        assertEquals(List.of("one two", "three f…"), TextWidth.wrap("one two three four five", 10, 45, 2));
    }
}
