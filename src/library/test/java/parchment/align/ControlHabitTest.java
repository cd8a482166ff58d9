package parchment.align;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.stats.linear.Robust;

/** Built moves: nine batches that open the air once, between 4:58 and 5:02, and the one that is judged. */
class ControlHabitTest {
    private static Map<String, double[]> habit() {
        Map<String, double[]> moves = new LinkedHashMap<>();
        double[] at = {298, 299, 300, 301, 302, 299, 300, 301, 300};
        for (int i = 0; i < at.length; i++) {
            moves.put("b" + i, new double[] {at[i]});
        }
        return moves;
    }

    private static Map<String, List<String>> judged(Map<String, double[]> moves, double... own) {
        Map<String, List<String>> found = new LinkedHashMap<>();
        moves.put("judged", own);
        ControlHabit.judge("the air was opened", moves, found);
        return found;
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "420 | the air was opened 2 min late (at 7:00, usually at 5:00)",
                "330 | the air was opened 30 s late (at 5:30, usually at 5:00)",
                "329 | ",
                "270 | the air was opened 30 s early (at 4:30, usually at 5:00)",
                "271 | ",
            })
    void aMoveIsLateOrEarlyFromThirtySecondsOn(double at, String sentence) {
        assertEquals(sentence == null ? Map.of() : Map.of("judged", List.of(sentence)), judged(habit(), at));
    }

    @Test
    void aMoveThatNeverCameIsTold() {
        assertEquals(Map.of("judged", List.of("the air was opened at no time (usually at 5:00)")), judged(habit()));
    }

    @Test
    void aBatchThatMovedItMoreOftenHadAPlanOfItsOwn() {
        assertEquals(Map.of(), judged(habit(), 100, 420));
    }

    @Test
    void thereIsAHabitIfFourFifthsMoveItEquallyOften() {
        Map<String, double[]> eightOfTen = habit();
        eightOfTen.put("b0", new double[] {100, 300});
        eightOfTen.put("b1", new double[] {100, 300});
        assertEquals(1, judged(eightOfTen, 420).size());
        Map<String, double[]> sevenOfTen = habit();
        sevenOfTen.put("b0", new double[] {100, 300});
        sevenOfTen.put("b1", new double[] {100, 300});
        sevenOfTen.put("b2", new double[] {100, 300});
        assertEquals(Map.of(), judged(sevenOfTen, 420));
    }

    @Test
    void whereNobodyMovesItThereIsNoHabit() {
        Map<String, double[]> moves = new LinkedHashMap<>();
        for (int i = 0; i < 9; i++) {
            moves.put("b" + i, new double[0]);
        }
        assertEquals(Map.of(), judged(moves, 420));
    }

    @ParameterizedTest
    @CsvSource({
        "12, 1, true", // quartiles 1 and 3, so that the fences stand at -5 and 9
        "9.01, 1, true",
        "9, 1, false",
        "-5.01, 1, true",
        "-5, 1, false",
        "12, 10, true",
        "12, 10.01, false",
        "NaN, 0, false",
    })
    void farOutIsBeyondThreeTimesTheDistanceOfTheQuartilesAndLargeEnough(double value, double least, boolean far) {
        Robust.Fences fences = Robust.Fences.of(new double[] {0, 1, 2, 3, 4});
        assertEquals(2, fences.median());
        assertEquals(far, fences.farOut(value, least));
        assertEquals(false, Robust.Fences.of(new double[] {0, 1, 2, 3}).farOut(1e9, 0));
    }
}
