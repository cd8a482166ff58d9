package parchment.phase;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.curve.CleanCurve;
import parchment.logbook.MarkKind;
import parchment.phase.found.Mark;
import parchment.phase.found.Source;
import parchment.quantity.Elapsed;
import parchment.quantity.Unit;

/** Which marks stand in an impossible order, and what is said of them. */
class MarkOrderTest {
    private static Mark mark(MarkKind kind, double seconds, double error) {
        return new Mark(kind, Elapsed.seconds(seconds), error, Source.WRITTEN, Optional.empty(), "");
    }

    private static Map<MarkKind, Mark> marks(Mark... marks) {
        Map<MarkKind, Mark> map = new EnumMap<>(MarkKind.class);
        for (Mark mark : marks) {
            map.put(mark.kind(), mark);
        }
        return map;
    }

    private static List<String> said(Map<MarkKind, Mark> marks, Map<MarkKind, Mark> aside) {
        return MarkDoubts.about(marks, aside, Optional.empty()).stream()
                .map(MarkDoubts.Doubt::why)
                .toList();
    }

    @ParameterizedTest
    @CsvSource({
        "YELLOWING, FIRST_CRACK_START, true",
        "CHARGE, TURNING_POINT, true",
        "YELLOWING, DROP, true",
        "FIRST_CRACK_START, SECOND_CRACK_START, true",
        "SECOND_CRACK_START, DROP, true",
        "FIRST_CRACK_END, DROP, true",
        "FIRST_CRACK_END, SECOND_CRACK_START, false",
    })
    void theFirstOfTwoMarksMustNotLieAfterTheSecond(MarkKind first, MarkKind second, boolean isWrong) {
        Mark late = mark(first, 500.1, 5);
        Mark early = mark(second, 500, 5);
        assertEquals(isWrong ? List.of(List.of(late, early)) : List.of(), MarkOrder.wrong(marks(late, early)));
        assertEquals(List.of(), MarkOrder.wrong(marks(mark(first, 500, 5), early)));
        assertEquals(List.of(), MarkOrder.wrong(marks(late)));
    }

    /** Errors of 3 and 4 s make 5 s together, and three times that is 15 s. */
    @ParameterizedTest
    @CsvSource({"514.9, false", "515.1, true", "400, false"})
    void threeJointErrorsAreBeyondThem(double seconds, boolean isBeyond) {
        Mark first = mark(MarkKind.YELLOWING, seconds, 3);
        Mark second = mark(MarkKind.DROP, 500, 4);
        assertEquals(5, MarkOrder.joint(first, second), 1e-12);
        assertEquals(isBeyond, MarkOrder.isBeyondErrors(first, second));
    }

    @Test
    void marksInOrderRaiseNoDoubt() {
        assertEquals(
                List.of(),
                said(marks(mark(MarkKind.YELLOWING, 300, 5), mark(MarkKind.FIRST_CRACK_START, 300, 5)), marks()));
    }

    @Test
    void aDropThatTheCurveContradictsIsQuestioned() {
        Mark written = mark(MarkKind.DROP, 770, 2);
        assertEquals(
                List.of(
                        "The drop is written at 12:50, but the curve falls from 12:20 on (30 s earlier), further off than both may be."
                                + " The curve's drop is used; please check the row: the two clocks may differ."),
                said(marks(mark(MarkKind.DROP, 740, 1)), marks(written)));
        assertEquals(
                List.of(
                        "The drop is written at 12:50, but the curve falls from 13:20 on (30 s later), further off than both may be."
                                + " The curve's drop is used; please check the row: the two clocks may differ."),
                said(marks(mark(MarkKind.DROP, 800, 1)), marks(written)));
        assertEquals(
                List.of(
                        "The drop is written at 12:50, but the curve falls from elsewhere on (0 s earlier), further off than both may"
                                + " be. The curve's drop is used; please check the row: the two clocks may differ."),
                said(marks(), marks(written)));
    }

    /** A mark set aside beside a drop is put down to the drop only if it lies after it by more than both may be off. */
    @Test
    void saysWhichMarkTheOneSetAsideContradicts() {
        Mark drop = mark(MarkKind.DROP, 700, 1);
        assertEquals(
                List.of(
                        "Yellowing is written at 12:00, 20 s after the drop at 11:40 (written by the roaster): more than both may be"
                                + " off. It is set aside; please check the batch's row."),
                said(marks(drop), marks(mark(MarkKind.YELLOWING, 720, 1))));
        assertEquals(
                List.of(
                        "Yellowing is written at 9:00, in the wrong order with first crack start at 8:10 by more than both may be off."
                                + " Which is right cannot be told: they are set aside; please check the batch's row.",
                        "First crack start is written at 8:10, in the wrong order with yellowing at 9:00 by more than both may be off."
                                + " Which is right cannot be told: they are set aside; please check the batch's row."),
                said(marks(drop), marks(mark(MarkKind.YELLOWING, 540, 1), mark(MarkKind.FIRST_CRACK_START, 490, 1))));
    }

    private static String wrongOrder(String mark, String others) {
        return mark + ", in the wrong order with " + others
                + " by more than both may be off. Which is right cannot be told: they are"
                + " set aside; please check the batch's row.";
    }

    /** What lies after the drop is put down to the drop alone, and is none of the others that stand in the wrong order. */
    @Test
    void aMarkAfterTheDropIsNoneOfTheOthers() {
        assertEquals(
                List.of(
                        "Yellowing is written at 12:00, 20 s after the drop at 11:40 (written by the roaster): more than both may be"
                                + " off. It is set aside; please check the batch's row.",
                        wrongOrder("First crack start is written at 10:00", "first crack end at 9:10"),
                        wrongOrder("First crack end is written at 9:10", "first crack start at 10:00")),
                said(
                        marks(mark(MarkKind.DROP, 700, 1)),
                        marks(
                                mark(MarkKind.YELLOWING, 720, 1),
                                mark(MarkKind.FIRST_CRACK_START, 600, 1),
                                mark(MarkKind.FIRST_CRACK_END, 550, 1))));
    }

    /** Only the marks that one of them contradicts are named: here two pairs that agree with each other, and one mark against two. */
    @Test
    void onlyWhatContradictsAMarkIsNamed() {
        assertEquals(
                List.of(
                        wrongOrder("Turning point is written at 5:00", "yellowing at 4:10"),
                        wrongOrder("Yellowing is written at 4:10", "turning point at 5:00"),
                        wrongOrder("First crack start is written at 10:00", "first crack end at 9:10"),
                        wrongOrder("First crack end is written at 9:10", "first crack start at 10:00")),
                said(
                        marks(),
                        marks(
                                mark(MarkKind.TURNING_POINT, 300, 1),
                                mark(MarkKind.YELLOWING, 250, 1),
                                mark(MarkKind.FIRST_CRACK_START, 600, 1),
                                mark(MarkKind.FIRST_CRACK_END, 550, 1))));
        assertEquals(
                wrongOrder("Yellowing is written at 10:50", "first crack start at 9:10 and first crack end at 10:00"),
                said(
                                marks(),
                                marks(
                                        mark(MarkKind.YELLOWING, 650, 1),
                                        mark(MarkKind.FIRST_CRACK_START, 550, 1),
                                        mark(MarkKind.FIRST_CRACK_END, 600, 1)))
                        .get(0));
        // First crack end lies 10 s before yellowing, no more than both may be off.
        assertEquals(
                wrongOrder("Yellowing is written at 10:00", "first crack start at 9:10"),
                said(
                                marks(),
                                marks(
                                        mark(MarkKind.YELLOWING, 600, 3),
                                        mark(MarkKind.FIRST_CRACK_START, 550, 1),
                                        mark(MarkKind.FIRST_CRACK_END, 590, 3)))
                        .get(0));
    }

    /** When the log ends is no drop that could contradict a mark: what stands in the wrong order there is put down to that. */
    @Test
    void anAssumedDropIsNotWhatAMarkContradicts() {
        Mark assumed = new Mark(MarkKind.DROP, Elapsed.seconds(700), 1, Source.ASSUMED, Optional.empty(), "");
        assertEquals(
                List.of(
                        wrongOrder("Yellowing is written at 12:00", "first crack start at 11:50"),
                        wrongOrder("First crack start is written at 11:50", "yellowing at 12:00")),
                said(
                        marks(assumed),
                        marks(mark(MarkKind.YELLOWING, 720, 1), mark(MarkKind.FIRST_CRACK_START, 710, 1))));
    }

    /** Beside a drop that is set aside itself, marks in the wrong order do not name it. */
    @Test
    void aDropThatIsSetAsideIsNoneOfTheOthers() {
        List<String> said = said(
                marks(mark(MarkKind.DROP, 700, 1)),
                marks(
                        mark(MarkKind.YELLOWING, 540, 1),
                        mark(MarkKind.FIRST_CRACK_START, 490, 1),
                        mark(MarkKind.DROP, 760, 1)));
        assertEquals(
                "Yellowing is written at 9:00, in the wrong order with first crack start at 8:10 by more than both may be off."
                        + " Which is right cannot be told: they are set aside; please check the batch's row.",
                said.get(0));
        assertEquals(3, said.size());
    }

    @Test
    void marksThatAreKeptAreQuestionedWithTheirErrors() {
        assertEquals(
                List.of(
                        "Yellowing at 8:20 (written by the roaster) lies 10 s after first crack start at 8:10 (written by the"
                                + " roaster), no more than both may be off (10 s and 5 s). Both are kept; please check yellowing."),
                said(marks(mark(MarkKind.YELLOWING, 500, 10), mark(MarkKind.FIRST_CRACK_START, 490, 5)), marks()));
    }

    /** The log ends at 600 s: 5 s, or three standard errors, later there is no reading. */
    @ParameterizedTest
    @CsvSource({
        "604.9, 1, WRITTEN, false",
        "605.1, 1, WRITTEN, true",
        "611.9, 4, WRITTEN, false",
        "612.1, 4, WRITTEN, true",
        "700, 1, ASSUMED, false",
    })
    void aWrittenMarkAfterTheEndOfTheLogIsQuestioned(double seconds, double error, Source source, boolean isAsked) {
        CleanCurve curve =
                CleanCurve.of(ExampleRoast.curve("bean temperature", Unit.TEMPERATURE, t -> 100 + t / 6, 0, 600, 2));
        Mark drop = new Mark(MarkKind.DROP, Elapsed.seconds(seconds), error, source, Optional.empty(), "");
        List<MarkDoubts.Doubt> doubts = MarkDoubts.about(marks(drop), marks(), Optional.of(curve));
        assertEquals(
                isAsked
                        ? List.of(new MarkDoubts.Doubt(
                                MarkKind.DROP,
                                "Drop is written at " + drop.at()
                                        + ", but the log ends at 10:00: there is no reading then."))
                        : List.of(),
                doubts);
    }
}
