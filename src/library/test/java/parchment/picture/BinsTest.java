package parchment.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import parchment.quantity.Unit;

class BinsTest {
    private static DrawnNumbers measure(DrawnNumbers.Clock clock, double... values) {
        return new DrawnNumbers(
                "drop", "", Unit.labelled(""), new DrawnNumbers.Numbers(values), DrawnNumbers.Named.ROWS, clock, "");
    }

    private static DrawnNumbers numbers(double... values) {
        return measure(DrawnNumbers.Clock.NO_TIME, values);
    }

    /**
     * The width that Freedman and Diaconis advise, 2 IQR / n^(1/3), for 1 to 8 in eighths: IQR 3.5 of R's type 7, so 2 * 3.5 / 2 = 3.5, rounded up to 5.
     * R: nclass.FD(c(1.1,2.1,...)) uses the same rule; the value here is worked out by hand.
     */
    @Test
    void areAsWideAsAdvisedRoundedUp() {
        Bins bins = Bins.of(numbers(1.1, 2.1, 3.1, 4.1, 5.1, 6.1, 7.1, 8.1), 40);
        assertEquals(new Bins(0, 5, 2), bins);
        assertEquals(List.of(4, 4), bins.counts(new double[] {1.1, 2.1, 3.1, 4.1, 5.1, 6.1, 7.1, 8.1}));
    }

    @Test
    void putANumberOnABorderIntoTheFieldAbove() {
        Bins bins = new Bins(200, 2, 3);
        assertEquals(List.of(1, 2, 0), bins.counts(new double[] {201.999, 202, 203.9}));
        assertEquals(0, bins.place(200));
    }

    @Test
    void standAroundWholeNumbersOneApart() {
        Bins bins = Bins.of(numbers(1, 1, 2, 2, 2, 3, 3, 4), 40);
        assertTrue(bins.isOfWholeNumbers());
        assertEquals(List.of("1", "2", "3", "4"), bins.names(numbers()));
        assertEquals(List.of(2, 3, 2, 1), bins.counts(new double[] {1, 1, 2, 2, 2, 3, 3, 4}));
        double[] twenty = IntStream.rangeClosed(1, 20).mapToDouble(i -> i).toArray();
        assertTrue(Bins.of(numbers(twenty), 40).isOfWholeNumbers());
        double[] more = IntStream.rangeClosed(1, 21).mapToDouble(i -> i).toArray();
        assertEquals(new Bins(0, 10, 3), Bins.of(numbers(more), 40));
    }

    @Test
    void haveBordersAsAClockHasThem() {
        double[] minutes =
                IntStream.range(0, 64).mapToDouble(i -> (90 + i) / 60.0).toArray();
        Bins bins = Bins.of(measure(DrawnNumbers.Clock.MINUTES_AND_SECONDS, minutes), 40);
        // Half of 64 evenly spread seconds is 31.5 wide: 2 * 31.5 / 4 = 15.75 s, and the next on a clock is 30.
        assertEquals(0.5, bins.width(), 1e-12);
        assertEquals(
                List.of("1:30–2:00", "2:00–2:30", "2:30–3:00"),
                bins.names(measure(DrawnNumbers.Clock.MINUTES_AND_SECONDS)));
    }

    @Test
    void areNoMoreThanThereIsRoomFor() {
        double[] values = IntStream.range(0, 1000)
                .mapToDouble(i -> i == 999 ? 1e6 : i * 0.01)
                .toArray();
        Bins bins = Bins.of(numbers(values), 40);
        assertTrue(bins.count() <= 40 && bins.count() > 10, bins.toString());
    }

    @Test
    void nameNoMoreDecimalsThanABorderHas() {
        assertEquals(List.of("0.2–0.4", "0.4–0.6"), new Bins(0.2, 0.2, 2).names(numbers()));
        assertEquals(List.of("-5–0", "0–5"), new Bins(-5, 5, 2).names(numbers()));
    }

    @RepeatedTest(30)
    void holdEveryNumberOnce(RepetitionInfo run) {
        Random random = new Random(run.getCurrentRepetition());
        double scale = Math.pow(10, random.nextInt(8) - 3);
        double[] values = random.doubles(2 + random.nextInt(200))
                .map(x -> (x - 0.3) * scale)
                .toArray();
        int most = 5 + random.nextInt(36);
        Bins bins = Bins.of(numbers(values), most);
        assertEquals(
                values.length,
                bins.counts(values).stream().mapToInt(count -> count).sum());
        assertTrue(bins.count() <= most, bins.toString());
        for (double value : values) {
            int place = bins.place(value);
            assertTrue(
                    value >= bins.edge(place) - 1e-9 * scale && value <= bins.edge(place + 1) + 1e-9 * scale,
                    value + " in " + bins);
        }
        assertTrue(bins.edge(0) <= Arrays.stream(values).min().orElseThrow() + 1e-9 * scale);
    }
}
