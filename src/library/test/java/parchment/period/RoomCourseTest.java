package parchment.period;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.stats.linear.Robust;

class RoomCourseTest {
    private static final int DAYS = 60;
    private static final double[] DATES = each(DAYS, day -> 1000 + 6 * day);
    /** Two batches a day. */
    private static final int[] DAY_OF_ROW =
            IntStream.range(0, 2 * DAYS).map(row -> row / 2).toArray();

    private static double[] each(int size, IntToDoubleFunction of) {
        return IntStream.range(0, size).mapToDouble(of).toArray();
    }

    private static RoomCourse of(double... room) {
        return RoomCourse.of(DATES, DAY_OF_ROW, room);
    }

    private static double wave(int day) {
        return 20 + 5 * Math.cos(2 * Math.PI * (DATES[day] - 1030) / 365.25) + 0.01 * day;
    }

    @Test
    void aWaveOfTheYearWithALineIsTakenOutWhole() {
        double[] room = each(2 * DAYS, row -> wave(row / 2) + (row % 2 == 0 ? 0.5 : -0.5));
        RoomCourse course = of(room);
        assertArrayEquals(each(2 * DAYS, row -> wave(row / 2)), course.slow().orElseThrow(), 1e-9);
        assertArrayEquals(each(2 * DAYS, row -> row % 2 == 0 ? 0.5 : -0.5), course.rest(), 1e-9);
    }

    @Test
    void aRoomThatOnlyJittersHasNoSlowCourseAndIsComparedWhole() {
        Random random = new Random(5);
        double[] jitter = each(DAYS, day -> 20 + random.nextGaussian());
        double[] room = each(2 * DAYS, row -> jitter[row / 2]);
        assertTrue(of(room).slow().isEmpty());
        assertArrayEquals(room, of(room).rest(), 0);
        assertEquals(
                2,
                SlowChange.all(DATES, DAY_OF_ROW, room, DATES[0], DATES[DAYS - 1])
                        .size());
    }

    @Test
    void theSlowCourseIsHeldAgainstAStepByItsFittedValuesAlone() {
        Random random = new Random(6);
        double[] jitter = each(DAYS, day -> random.nextGaussian());
        double[] room = each(2 * DAYS, row -> wave(row / 2) + jitter[row / 2]);
        List<SlowChange> all = SlowChange.all(DATES, DAY_OF_ROW, room, DATES[0], DATES[DAYS - 1]);
        assertEquals(
                List.of("a slow, steady change", "the time of year", "the room's temperature"),
                all.stream().map(SlowChange::words).toList());
        double[] column = all.get(2).columns().get(0);
        assertArrayEquals(of(room).slow().orElseThrow(), column, 0);
        assertTrue(Math.abs(column[20] - wave(10)) < 0.7, "near the wave, not the day's own jitter");
        // A sum of four smooth columns turns slowly: neighbouring days never differ as jitter does.
        assertTrue(IntStream.range(1, DAYS).allMatch(d -> Math.abs(column[2 * d] - column[2 * d - 2]) < 0.6));
    }

    /**
     * Days that lie by a size above or below, in a pattern that no line follows, a line of 0.1 a day: of the variance 3.05 + size² 60/59 the line leaves size² 60/56, one half at a
     * size of 1.65, by hand. Without reckoning degrees of freedom the edge would lie at 1.73.
     */
    @ParameterizedTest
    @CsvSource({"1.60,true", "1.63,true", "1.67,false", "2.5,false"})
    void halfOfTheVarianceOfTheDayMeansMustBeSlow(double size, boolean slow) {
        double[] room = each(2 * DAYS, row -> 20 + 0.1 * (row / 2) + (row / 2 % 4 % 3 == 0 ? size : -size));
        assertEquals(slow, of(room).slow().isPresent());
    }

    @Test
    void fourColumnsOnTenDaysExplainNothingByThemselves() {
        // Ten days of jitter: plain shares of variance reach one half in a third of them, with degrees of freedom
        // seldom.
        double[] dates = each(10, day -> 5 * day);
        int[] rows = IntStream.range(0, 10).toArray();
        int slow = 0;
        for (int s = 0; s < 200; s++) {
            Random random = new Random(900 + s);
            slow += RoomCourse.of(dates, rows, each(10, day -> random.nextGaussian()))
                            .slow()
                            .isPresent()
                    ? 1
                    : 0;
        }
        assertTrue(slow < 24, slow + " of 200");
    }

    @Test
    void fourDaysAreTooFewAndFiveAreEnough() {
        double[] room = {10, 11, 12, 13, 14};
        double[] dates = {0, 30, 60, 90, 120};
        int[] rows = {0, 1, 2, 3, 4};
        assertTrue(RoomCourse.of(dates, rows, room).slow().isPresent());
        assertTrue(RoomCourse.of(Arrays.copyOf(dates, 4), Arrays.copyOf(rows, 4), Arrays.copyOf(room, 4))
                .slow()
                .isEmpty());
    }

    @Test
    void aRoomThatStandsStillIsNoSlowChange() {
        assertTrue(of(each(2 * DAYS, row -> 20)).slow().isEmpty());
    }

    /** 102 of 120 batches are 85 in 100. */
    @ParameterizedTest
    @CsvSource({"0,true", "18,true", "19,false", "120,false"})
    void theRoomMustBeWrittenInEightyFiveOfAHundredBatches(int missing, boolean used) {
        double[] room = each(2 * DAYS, row -> row < missing ? Double.NaN : wave(row / 2));
        RoomCourse course = of(room);
        assertEquals(used, course.slow().isPresent());
        if (used) {
            assertEquals(wave(0), course.slow().orElseThrow()[0], 1e-6, "known on days without a reading too");
            assertEquals(
                    missing, Arrays.stream(course.rest()).filter(Double::isNaN).count());
            assertEquals(
                    0,
                    Robust.median(Arrays.stream(course.rest())
                            .filter(Double::isFinite)
                            .toArray()),
                    1e-9);
        } else {
            assertArrayEquals(room, course.rest(), 0);
        }
    }

    @Test
    void whatIsGivenAndReturnedIsTheReadersOwn() {
        double[] room = each(2 * DAYS, row -> wave(row / 2));
        RoomCourse course = of(room);
        room[3] = 99;
        course.rest()[4] = 99;
        course.slow().orElseThrow()[5] = 99;
        assertTrue(Arrays.stream(course.rest()).allMatch(r -> Math.abs(r) < 1e-6));
        assertTrue(Math.abs(course.slow().orElseThrow()[5] - wave(2)) < 1e-6);
        assertFalse(Double.isNaN(course.rest()[0]));
    }
}
