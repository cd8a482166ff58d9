package parchment.align;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Built numbers: twelve batches whose four marks read -1, 0 or 1 °C off what is usual, and the one that is judged, the last. */
class ProbeOffsetsTest {
    private static List<double[]> read(double... last) {
        List<double[]> left = new ArrayList<>();
        for (int mark = 0; mark < 4; mark++) {
            double[] all = new double[13];
            for (int i = 0; i < 12; i++) {
                // The marks wander independently of each other; every combination of thirds comes as often.
                all[i] = (i / (mark % 2 == 0 ? 1 : 4) + mark / 2) % 3 - 1;
            }
            all[12] = last[mark];
            left.add(all);
        }
        return left;
    }

    @ParameterizedTest(name = "{0}, {1}, {2}, {3} °C: offset {4}")
    @CsvSource({
        "7, 7, 7, 7, 7",
        "-7, -7, -7, -7, -7",
        "4, 4, 4, 4, 4", // just large enough
        "3.9, 3.9, 3.9, 3.9, 0", // too small to matter
        "7, 7, 7, NaN, 7", // three marks are enough
        "7, 7, NaN, NaN, 0", // two are not
        "7, 7, 7, 15, 0", // one mark contradicts the others
        "0, 0, 0, 17, 0", // dropped hotter, and nothing else
        "20, 0, 0, 0, 0", // charged hotter, and nothing else
    })
    void isToldWhereTheMarksAgree(double turn, double yellowing, double crack, double drop, double expected) {
        assertEquals(
                expected, ProbeOffsets.of(read(turn, yellowing, crack, drop)).of(12), 1e-9);
    }

    /** Where batches run in two courses each mark spreads widely, so that three standard deviations forbid nothing. */
    @ParameterizedTest(name = "marks spread by {0}: {1}, {2}, {3}, {4} °C: offset {5}")
    @CsvSource({
        "6, 44, 44, 44, 44, 44",
        "6, 44, 44, 44, 28, 40", // less than half the offset away
        "6, 44, 44, 44, 16, 0", // more than half of it
        "2, 10, 10, 10, 2.1, 8.025", // less than 6 °C away, though more than half the offset
        "2, 10, 10, 10, 1, 0" // 6.75 °C away, though within three of the marks' own deviations
    })
    void aCourseOfItsOwnIsNoOffsetHoweverWideTheMarksSpread(
            double spread, double turn, double yellowing, double crack, double drop, double expected) {
        double[] last = {turn, yellowing, crack, drop};
        List<double[]> wide = new ArrayList<>();
        for (int mark = 0; mark < 4; mark++) {
            double[] all = new double[17];
            for (int i = 0; i < 16; i++) {
                all[i] = (i >> mark) % 2 == 0 ? spread : -spread;
            }
            all[16] = last[mark];
            wide.add(all);
        }
        assertEquals(expected, ProbeOffsets.of(wide).of(16), 1e-9);
    }

    @Test
    void namesTheMarks() {
        assertEquals(
                List.of("turning point", "yellowing", "drop"),
                ProbeOffsets.of(read(7, 7, Double.NaN, 7)).marks(12));
        assertEquals(List.of(), ProbeOffsets.of(read(0, 0, 0, 0)).marks(12));
    }

    @Test
    void isNotToldOfBatchesThatAreNoFartherThanOthersAre() {
        List<double[]> wide = new ArrayList<>();
        for (int mark = 0; mark < 4; mark++) {
            wide.add(new double[] {-7, -5, -3, -1, 0, 1, 3, 5, 7, 7});
        }
        ProbeOffsets offsets = ProbeOffsets.of(wide);
        IntStream.range(0, 10).forEach(i -> assertEquals(0, offsets.of(i)));
    }

    @Test
    void likeValuesTakeAwayTheGroupAndWhatGoesWithACondition() {
        double[] values = {10, 11, 12, 13, 14, 30, 31, 32, 33, 34, 50};
        List<String> groups = List.of("a", "a", "a", "a", "a", "b", "b", "b", "b", "b", "c");
        assertArrayEquals(
                new double[] {-2, -1, 0, 1, 2, -2, -1, 0, 1, 2, 0}, LikeValues.withoutGroups(values, groups), 1e-12);
        // Twice the condition, but for one batch that is seven higher: it alone keeps something.
        double[] condition = {1, 2, 3, 4, 5, 6, Double.NaN};
        double[] follows = {2, 4, 6, 15, 10, 12, 7};
        assertArrayEquals(new double[] {7, 7, 7, 14, 7, 7, 7}, LikeValues.without(follows, condition), 1e-12);
        assertArrayEquals(new double[] {3, 4}, LikeValues.without(new double[] {3, 4}, new double[] {1, 1}), 1e-12);
    }
}
