package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class DrawnKindsTest {
    private static final int STRETCH = ShortStretch.ROWS;

    @Test
    void aQuarterOfTheSeriesHaveNoResemblanceAndTheOtherKindsShareTheRest() {
        DrawnKinds drawn = new DrawnKinds(ShortStretch.kinds(), 440);
        assertEquals(440, drawn.series());
        assertEquals(12, drawn.kinds());
        for (int r = 0; r < 440; r++) {
            assertEquals(r < 110 ? 0 : 1 + (r - 110) / 30, drawn.kind(r), "series " + r);
        }
        DrawnKinds four = new DrawnKinds(ShortStretch.kinds(), 4);
        assertEquals(
                List.of(0, 2, 6, 10), IntStream.range(0, 4).mapToObj(four::kind).toList(), "at 1, 3, 5 and 7 eighths");
        DrawnKinds two = new DrawnKinds(ShortStretch.kinds(), 2);
        assertEquals(0, two.kind(0), "at a quarter, which is the edge");
    }

    @Test
    void valuesOfASeriesAreItsOwnAndTheSameHoweverManyAreAskedFor() {
        DrawnKinds drawn = new DrawnKinds(ShortStretch.kinds(), 4);
        double[] ten = drawn.normals(2, 10);
        assertEquals(10, ten.length);
        assertArrayEquals(ten, Arrays.copyOf(drawn.normals(2, 30), 10));
        assertFalse(Arrays.equals(ten, drawn.normals(3, 10)));
        assertFalse(Arrays.equals(ten, drawn.normals(1, 10)));
        double[] many = IntStream.range(0, 1000)
                .mapToDouble(r -> drawn.normals(r, 1)[0])
                .toArray();
        double mean = Arrays.stream(many).average().orElse(9);
        double squares = Arrays.stream(many).map(v -> v * v).average().orElse(9);
        assertTrue(Math.abs(mean) < 0.1 && Math.abs(squares - 1) < 0.15, mean + ", " + squares);
    }

    @Test
    void sharesAreThoseOfEachKindsOwnSeries() {
        DrawnKinds drawn = new DrawnKinds(ShortStretch.kinds(), 440);
        boolean[] happened = new boolean[440];
        Arrays.fill(happened, 0, 11, true);
        Arrays.fill(happened, 110, 140, true);
        Arrays.fill(happened, 437, 440, true);
        assertArrayEquals(new double[] {0.1, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0.1}, drawn.shares(happened), 1e-12);
        assertArrayEquals(
                new double[] {1, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1, 0},
                new DrawnKinds(ShortStretch.kinds(), 4).shares(new boolean[] {true, true, true, true}),
                "a kind without a series has no share");
    }

    @Test
    void whereStretchesTellNothingTheRateIsTheMeanOverKinds() {
        DrawnKinds drawn = new DrawnKinds(ShortStretch.kinds(), 440);
        boolean[] happened = new boolean[440];
        for (int r = 0; r < 440; r++) {
            // Half of the series of every kind, and each half alike.
            drawn.weigh(r, r % 2 == 0 ? ShortStretch.waves() : ShortStretch.alternating());
            happened[r] = r < 110 || r >= 437;
        }
        double[] both = new double[12];
        for (int k = 0; k < 12; k++) {
            both[k] = (drawn.likely(0)[k] + drawn.likely(1)[k]) / 2;
        }
        assertEquals(1, Arrays.stream(both).sum(), 1e-12);
        assertEquals(0.25 + 0.75 / 11 / 10, drawn.rate(happened).rate(both), 1e-9);
    }

    @Test
    void whereStretchesTellKindsApartTheRateFollowsThem() {
        DrawnKinds drawn = new DrawnKinds(ShortStretch.kinds(), 440);
        boolean[] happened = new boolean[440];
        for (int r = 0; r < 440; r++) {
            drawn.weigh(r, r < 110 ? ShortStretch.alternating() : ShortStretch.waves());
            happened[r] = r < 110 ? r % 5 == 0 : r % 10 < 4;
        }
        LikelyRate rate = drawn.rate(happened);
        assertEquals(0.2, rate.rate(drawn.likely(0)), 0.01);
        assertEquals(0.4, rate.rate(drawn.likely(439)), 0.01);
        assertArrayEquals(ShortStretch.kinds().weights(ShortStretch.alternating()), drawn.likely(0), 1e-12);
    }
}
