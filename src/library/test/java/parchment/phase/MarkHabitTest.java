package parchment.phase;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.contents.LogbookContents;
import parchment.quantity.Elapsed;

class MarkHabitTest {
    private static Logbook logbook(List<Batch> batches) {
        return Logbook.of(LogbookContents.ofBatches("example", batches));
    }

    private static Batch batch(int i, String operator, double yellowing) {
        return Batch.named("b" + operator + i)
                .label(Batch.Label.OPERATOR, operator)
                .writtenMark(MarkKind.YELLOWING, Elapsed.seconds(yellowing))
                .build();
    }

    @Test
    void readsTheRoundingOfEachRoasterOffTheLogbook() {
        List<Batch> batches = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            batches.add(batch(i, "Ida", 350 + 10 * i));
            batches.add(batch(i, "Ole", 351 + 7 * i));
        }
        MarkHabit habit = MarkHabit.of(logbook(batches));
        assertEquals(10, habit.roundingSeconds(MarkKind.YELLOWING, batches.get(0)));
        assertEquals(1, habit.roundingSeconds(MarkKind.YELLOWING, batches.get(1)));
        // 10 s of reaction and 10/√12 s of rounding.
        assertEquals(Math.sqrt(100 + 100.0 / 12), habit.standardError(MarkKind.YELLOWING, batches.get(0)), 1e-12);
        assertEquals(
                "All 9 times of yellowing written by Ida are multiples of 10 s, so they are taken as rounded to that.",
                habit.toString());
    }

    @Test
    void doesNotReadAHabitOffAHandfulOfMarks() {
        List<Batch> batches = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            batches.add(batch(i, "Ida", 350 + 10 * i));
        }
        assertEquals(1, MarkHabit.of(logbook(batches)).roundingSeconds(MarkKind.YELLOWING, batches.get(0)));
    }

    @Test
    void takesAnotherReaction() {
        Batch batch = batch(0, "Ida", 360);
        MarkHabit habit = MarkHabit.STANDARD.withReaction(MarkKind.YELLOWING, 20);
        assertEquals(Math.sqrt(400 + 1.0 / 12), habit.standardError(MarkKind.YELLOWING, batch), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> MarkHabit.STANDARD.withReaction(MarkKind.DROP, Double.NaN));
    }
}
