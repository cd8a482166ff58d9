package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static parchment.gather.MadeJoins.EIGHT;
import static parchment.gather.MadeJoins.curveAt;
import static parchment.gather.MadeJoins.row;
import static parchment.gather.MadeJoins.rowAt;
import static parchment.gather.MadeJoins.rowOn;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.MarkKind;

/** What of a row has no place in its batch, because the recording says something else: a row on each side of each threshold. */
class JoinedBatchesTest {
    private final GatherQuestions questions = new GatherQuestions(Map.of());

    private GatheredBatch joined(GatheredBatch curve, ListedRoast roast) {
        Join join = new Join(curve, roast, Join.Sure.CERTAIN, List.of(), "");
        return new JoinedBatches(questions)
                .of(List.of(curve), List.of(roast), List.of(join), Map.of())
                .get(0);
    }

    @ParameterizedTest
    @CsvSource({
        "615, ''",
        "585, ''",
        "616, 'Batch ''5'': the drop was typed beside the readings 16 s away from where the sheet has it, 10:16; the typed one is kept.'",
        "584, 'Batch ''5'': the drop was typed beside the readings 16 s away from where the sheet has it, 9:44; the typed one is kept.'"
    })
    void aMarkThatIsTypedStaysAndOneFurtherOffIsNamed(double listed, String said) {
        GatheredBatch batch = joined(
                curveAt("x", EIGHT).withMarks(Map.of(MarkKind.DROP, 600.0)),
                row("5", Optional.empty(), Optional.empty(), Map.of(MarkKind.DROP, listed)));
        assertEquals(600.0, batch.marks().get(MarkKind.DROP));
        assertEquals(said.isEmpty() ? List.of() : List.of(said), questions.leftOut());
    }

    @ParameterizedTest
    @CsvSource({"300, ''", "-300, ''", "301, 2031-06-01T08:05:41", "-301, 2031-06-01T07:55:39"})
    void anotherTimeIsNamedFromFiveMinutesOn(int seconds, String named) {
        // A time with seconds is the recording's own.
        GatheredBatch batch = joined(curveAt("x", EIGHT.plusSeconds(40)), rowAt("5", EIGHT.plusSeconds(40 + seconds)));
        assertEquals(Optional.of(EIGHT.plusSeconds(40)), batch.roastedAt());
        assertEquals(
                named == null || named.isEmpty()
                        ? List.of()
                        : List.of("1 row or cell with another date or time than is known already, left out: '5: "
                                + named + "'."),
                questions.leftOut());
    }

    @ParameterizedTest
    @CsvSource({"2031-06-01, ''", "2031-06-02, '5: 2031-06-02'"})
    void anotherDayIsNamed(LocalDate day, String named) {
        joined(curveAt("x", EIGHT), rowOn("5", day));
        assertEquals(
                named.isEmpty()
                        ? List.of()
                        : List.of("1 row or cell with another date or time than is known already, left out: '" + named
                                + "'."),
                questions.leftOut());
    }

    /** A day has to have as many recordings as rows, two at least; names are in the order of their numbers. */
    @ParameterizedTest
    @CsvSource({
        "1, 1, ''",
        "2, 2, 'run 2x = A, run 10x = B'",
        "3, 3, 'run 2x = A, run 10x = B, run 100x = C'",
        "2, 3, ''",
        "3, 2, ''"
    })
    void thePlaceInTheDayIsThatOfTheNumbersInTheNames(int recordings, int rows, String placed) {
        LocalDate day = EIGHT.toLocalDate();
        List<GatheredBatch> curves = List.of("run 100x", "run 10x", "run 2x").subList(3 - recordings, 3).stream()
                .map(name -> MadeJoins.curve(name, List.of(), Optional.empty(), Optional.of(day)))
                .toList();
        List<ListedRoast> listed = List.of("A", "B", "C").subList(0, rows).stream()
                .map(name -> rowOn(name, day))
                .toList();
        List<String> found = Joins.of(curves, listed).stream()
                .filter(join -> join.because().contains("it is number"))
                .map(join -> join.curve().name() + " = " + join.roast().name())
                .sorted(java.util.Comparator.comparing(said -> said.substring(said.length() - 1)))
                .toList();
        assertEquals(placed, String.join(", ", found));
    }
}
