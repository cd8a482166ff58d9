package parchment.stats.warp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class CurveLibraryTest {
    @RepeatedTest(20)
    @Tag("holds-for-any")
    void findsWhatBruteForceFinds(RepetitionInfo repetition) {
        SplittableRandom random = new SplittableRandom(repetition.getCurrentRepetition());
        int length = 5 + random.nextInt(40);
        int radius = random.nextInt(length + 3);
        List<double[]> curves = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            curves.add(walk(random, length));
        }
        double[] query = walk(random, length);
        DynamicTimeWarping warping =
                DynamicTimeWarping.of(StepPattern.SYMMETRIC1).withWindow(Window.band(radius));
        List<CurveLibrary.Neighbour> brute = IntStream.range(0, 60)
                .mapToObj(i -> new CurveLibrary.Neighbour(i, warping.distance(query, curves.get(i))))
                .sorted(Comparator.comparingDouble(CurveLibrary.Neighbour::distance))
                .limit(5)
                .toList();
        assertEquals(brute, CurveLibrary.of(curves, radius).nearest(query, 5));
    }

    @Test
    void givesAllWhenAskedForMoreThanThereAre() {
        CurveLibrary library = CurveLibrary.of(List.of(new double[] {1, 2, 3}, new double[] {2, 2, 2}), 1);
        assertEquals(2, library.nearest(new double[] {1, 2, 3}, 9).size());
        assertEquals(
                new CurveLibrary.Neighbour(0, 0),
                library.nearest(new double[] {1, 2, 3}, 1).get(0));
    }

    @Test
    void saysThatTheQueryIsTooShort() {
        CurveLibrary library = CurveLibrary.of(List.of(new double[] {1, 2, 3}), 1);
        assertEquals(
                "A search for the nearest curves needs as many samples in the query as in the curves of the library,"
                        + " but there are 2 and 3.",
                assertThrows(IllegalArgumentException.class, () -> library.nearest(new double[] {1, 2}, 1))
                        .getMessage());
    }

    private static double[] walk(SplittableRandom random, int length) {
        double[] values = new double[length];
        double level = 3 * random.nextDouble();
        for (int i = 0; i < length; i++) {
            level += random.nextDouble() - 0.5;
            values[i] = level;
        }
        return values;
    }
}
