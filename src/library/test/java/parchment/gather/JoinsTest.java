package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static parchment.gather.MadeJoins.EIGHT;
import static parchment.gather.MadeJoins.curve;
import static parchment.gather.MadeJoins.curveAt;
import static parchment.gather.MadeJoins.row;
import static parchment.gather.MadeJoins.rowAt;
import static parchment.gather.MadeJoins.rowOn;
import static parchment.gather.MadeJoins.said;
import static parchment.gather.MadeJoins.titled;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.MarkKind;

/** Which recording is which row of a list, why, and how sure that is: a row for each rule, one on each side of each threshold. */
class JoinsTest {
    @ParameterizedTest
    @CsvSource({
        "101, 101, 'its file is named so'",
        "007, 7, 'its file is named ''007'''",
        "Wren, wren, 'its file is named ''Wren'''",
        "Batch 101 - Wren, 101, 'its file ''Batch 101 - Wren'' has the number 101'",
        "roast_0101, 101, 'its file ''roast_0101'' has the number 101'",
        "2031-06-01 Röstung 12, 12, 'its file ''2031-06-01 Röstung 12'' has the number 12'",
        "tueste nº 8 kela, 8, 'its file ''tueste nº 8 kela'' has the number 8'",
        "morning H101 kela, H101, 'its file ''morning H101 kela'' has ''h101'' in its name'"
    })
    void aNameOrNumberInTheFilesNameIsCertain(String file, String row, String because) {
        assertEquals(List.of(file + " = " + row + ", CERTAIN: " + because), said(curve(file), row(row), row("55")));
    }

    @ParameterizedTest
    @CsvSource({"r101, 101, LIKELY", "r101 7, 101, DOUBTFUL", "roast 7 101, 101, DOUBTFUL"})
    void aNumberWithoutAWordIsLikelyAndOneOfSeveralIsDoubtful(String file, String row, String sure) {
        assertEquals(
                List.of(file + " = " + row + ", " + sure + ": its file '" + file + "' has the number " + row),
                said(curve(file), row(row)));
    }

    @ParameterizedTest
    @CsvSource({
        "2031-06-01_0800, 1",
        "2031-06-01_0800, 8",
        "2031-06-01_0800, 2031",
        "roast_2031-06-01_0800, 6",
        "09h15 kela, 9"
    })
    void aDateOrTimeInTheFilesNameIsNoNumber(String file, String row) {
        assertEquals(List.of(), said(curve(file), row(row)));
    }

    @Test
    void aNameInTheFirstLinesIsCertain() {
        assertEquals(
                List.of("x = 101, CERTAIN: its first lines name batch 101"),
                said(titled("x", "Batch 101", "01/06/2031 08:00", "", ""), row("101"), row("8")));
        assertEquals(
                List.of("x = 101, CERTAIN: its first lines name batch 101"),
                said(titled("x", "Roast No.", "101"), row("101")));
        assertEquals(
                List.of("x = Wren, CERTAIN: its first lines hold 'Wren'"),
                said(titled("x", "Logger 2", "Wren"), row("Wren")));
        assertEquals(List.of(), said(titled("x", "Batch 1011"), row("101")));
    }

    /** A logger's clock and a person's: within 5 minutes, within 20, and beyond. */
    @ParameterizedTest
    @CsvSource({
        "0, 'CERTAIN: both were charged on 2031-06-01 at 08:00'",
        "300, 'CERTAIN: both were charged on 2031-06-01 at 08:05, 5 minutes apart'",
        "301, 'LIKELY: both were charged on 2031-06-01, 5 minutes apart'",
        "1200, 'LIKELY: both were charged on 2031-06-01, 20 minutes apart'"
    })
    void theTimeOfTheChargeTellsWithinMinutes(int seconds, String words) {
        assertEquals(List.of("x = 5, " + words), said(curveAt("x", EIGHT), rowAt("5", EIGHT.plusSeconds(seconds))));
    }

    @Test
    void aTimeFurtherOffSpeaksAgainst() {
        assertEquals(List.of(), said(curveAt("x", EIGHT), rowAt("5", EIGHT.plusSeconds(1201))));
        assertEquals(
                List.of(
                        "batch 5 = 5, DOUBTFUL: its file 'batch 5' has the number 5; but it was charged at 08:00 and the list says 08:20"),
                said(curveAt("batch 5", EIGHT), rowAt("5", EIGHT.plusSeconds(1201))));
    }

    @Test
    void aNameThatOneRowHasAndATimeThatAnotherHasAreDoubtful() {
        List<Join> joins = Joins.of(
                List.of(curveAt("batch 5", EIGHT)), List.of(rowAt("5", EIGHT.plusHours(2)), rowAt("6", EIGHT)));
        assertEquals(1, joins.size());
        assertEquals(Join.Sure.DOUBTFUL, joins.get(0).sure(), said(joins.get(0)));
        assertEquals(
                "batch 5 = 6, DOUBTFUL: both were charged on 2031-06-01 at 08:00; but its name says row '5' (its file 'batch 5' has the number 5)",
                said(joins.get(0)));
        assertTrue(!joins.get(0).joinedUnlessTold(), "kept apart until somebody says which");
    }

    @Test
    void theDayAloneIsLikelyWhereItHasOneOfEach() {
        LocalDate day = EIGHT.toLocalDate();
        assertEquals(List.of("x = 5, LIKELY: both are of 2031-06-01"), said(curveAt("x", EIGHT), rowOn("5", day)));
        List<Join> two = Joins.of(List.of(curveAt("x", EIGHT)), List.of(rowOn("5", day), rowOn("6", day)));
        assertEquals(Join.Sure.DOUBTFUL, two.get(0).sure(), said(two.get(0)));
        assertTrue(!two.get(0).joinedUnlessTold());
    }

    @Test
    void anotherDaySpeaksAgainst() {
        assertEquals(
                List.of(
                        "batch 5 = 5, DOUBTFUL: its file 'batch 5' has the number 5; but it is of 2031-06-01 and the list says 2031-06-02"),
                said(curveAt("batch 5", EIGHT), rowOn("5", EIGHT.toLocalDate().plusDays(1))));
    }

    @Test
    void theOrderOfTheDayAloneIsDoubtful() {
        LocalDate day = EIGHT.toLocalDate();
        List<GatheredBatch> curves =
                List.of(curveAt("a", EIGHT.plusMinutes(20)), curveAt("b", EIGHT), curveAt("c", EIGHT.plusMinutes(40)));
        List<ListedRoast> rows = List.of(rowOn("1", day), rowOn("2", day), rowOn("3", day));
        assertEquals(
                List.of(
                        "a = 2, DOUBTFUL: both are of 2031-06-01, it is number 2 of 3 on 2031-06-01 in both; but it could be row '1' (both are of 2031-06-01)",
                        "b = 1, DOUBTFUL: both are of 2031-06-01, it is number 1 of 3 on 2031-06-01 in both; but it could be row '2' (both are of 2031-06-01)",
                        "c = 3, DOUBTFUL: both are of 2031-06-01, it is number 3 of 3 on 2031-06-01 in both; but it could be row '1' (both are of 2031-06-01)"),
                said(curves, rows));
        Joins.of(curves, rows.subList(0, 2)).forEach(join -> assertEquals(Join.Sure.DOUBTFUL, join.sure(), said(join)));
    }

    /** The drop within 20 s, and a list whose drop comes a minute after the end of the recording. */
    @ParameterizedTest
    @CsvSource({"580, true", "579, false", "620, true", "621, false"})
    void theDropSpeaksForARowWithinTwentySeconds(double drop, boolean fits) {
        String said = said(curve("r5"), row("5", Optional.empty(), Optional.empty(), Map.of(MarkKind.DROP, drop)))
                .get(0);
        assertEquals(fits, said.contains("the drop fits"), said);
        assertEquals(fits ? "CERTAIN" : "LIKELY", said.replaceAll(".*, (\\w+):.*", "$1"), said);
    }

    @ParameterizedTest
    @CsvSource({"680, false", "681, true"})
    void aRecordingThatEndsAMinuteBeforeTheDropIsDoubted(double drop, boolean doubted) {
        String said = said(curve("batch 5"), row("5", Optional.empty(), Optional.empty(), Map.of(MarkKind.DROP, drop)))
                .get(0);
        assertEquals(
                doubted, said.contains("but it ends 10:20 after the charge and the list has the drop at 11:21"), said);
        assertEquals(doubted, said.contains("DOUBTFUL"), said);
    }

    /** Every drop of the day has to fit within 20 s; one that does not leaves all of its day doubtful. */
    @ParameterizedTest
    @CsvSource({"580, LIKELY", "579, DOUBTFUL", "620, LIKELY", "621, DOUBTFUL"})
    void theOrderOfTheDayIsLikelyWhereEveryDropFits(double drop, String sure) {
        Optional<LocalDate> day = Optional.of(EIGHT.toLocalDate());
        List<Join> joins = Joins.of(
                List.of(curveAt("a", EIGHT), curveAt("b", EIGHT.plusMinutes(20))),
                List.of(
                        row("1", Optional.empty(), day, Map.of(MarkKind.DROP, 600.0)),
                        row("2", Optional.empty(), day, Map.of(MarkKind.DROP, drop))));
        assertEquals(
                List.of("a = 1 " + sure, "b = 2 " + sure),
                joins.stream()
                        .map(join -> join.curve().name() + " = " + join.roast().name() + " " + join.sure())
                        .toList());
        assertEquals(
                sure.equals("LIKELY"),
                said(joins.get(0))
                        .contains("it is number 1 of 2 on 2031-06-01 in both, and every drop of that day fits so"),
                said(joins.get(0)));
    }

    @Test
    void theDropAloneJoinsNothing() {
        assertEquals(
                List.of(),
                said(curve("x"), row("5", Optional.empty(), Optional.empty(), Map.of(MarkKind.DROP, 600.0))));
    }

    @Test
    void oneNumberInTwoRecordingsIsDoubtfulUnlessTheDayTells() {
        List<ListedRoast> rows = List.of(rowOn("5", EIGHT.toLocalDate()));
        List<Join> joins = Joins.of(List.of(curve("north 5"), curve("south 5")), rows);
        assertEquals(1, joins.size());
        assertEquals("DOUBTFUL", joins.get(0).sure().toString());
        assertEquals("so could be 'south 5'", joins.get(0).but());
        assertEquals(
                List.of("south 5 = 5, CERTAIN: its file 'south 5' has the number 5, both are of 2031-06-01"),
                said(List.of(curve("north 5"), curveAt("south 5", EIGHT)), rows));
    }

    @Test
    void allPairsTogetherWeighMost() {
        // Taken one after the other, 'roast 1 2' would take row 1 and leave 'r1' nothing.
        assertEquals(
                List.of("1 2 = 2", "r1 = 1"),
                Joins.of(List.of(curve("1 2"), curve("r1")), List.of(row("1"), row("2"))).stream()
                        .map(join -> join.curve().name() + " = " + join.roast().name())
                        .sorted()
                        .toList());
    }

    @Test
    void doubtfulOnesComeFirst() {
        List<Join> joins =
                Joins.of(List.of(curve("batch 1"), curve("r2"), curve("3 4")), List.of(row("1"), row("2"), row("3")));
        assertEquals(
                List.of(Join.Sure.DOUBTFUL, Join.Sure.LIKELY, Join.Sure.CERTAIN),
                joins.stream().map(Join::sure).toList());
    }

    @Test
    void aHundredAndTwentyCurvesAreJoinedInOneGo() {
        List<GatheredBatch> curves = new ArrayList<>();
        List<ListedRoast> rows = new ArrayList<>();
        for (int i = 0; i < 120; i++) {
            curves.add(titled("roast_" + i, "Batch " + (101 + i)));
            rows.add(0, row(Integer.toString(101 + i)));
        }
        List<Join> joins = Joins.of(curves, rows);
        assertEquals(120, joins.size());
        for (Join join : joins) {
            assertEquals(Join.Sure.CERTAIN, join.sure(), said(join));
            assertEquals(
                    Integer.toString(101 + Integer.parseInt(join.curve().name().substring(6))),
                    join.roast().name());
        }
    }

    /** The parts of one recording are numbered by us: such a number names no row, and what stands before it may. */
    @Test
    void theNumberOfAPartOfARecordingIsNoName() {
        GatheredBatch cut = part("log 2031-03-05-2", 2);
        assertEquals(List.of(), said(cut, row("2"), row("3")));
        assertEquals(List.of(), said(part("2031-03-05-2", 2), row("2031-03-05-2"), row("3")));
        assertEquals(
                List.of("batch 7-2 = 7, CERTAIN: its file 'batch 7' has the number 7"),
                said(part("batch 7-2", 2), row("2"), row("7")));
        assertEquals(
                List.of("log 2031-03-05-2 = 2, LIKELY: its file 'log 2031-03-05-2' has the number 2"),
                said(curve("log 2031-03-05-2"), row("2"), row("3")));
    }

    private static GatheredBatch part(String name, int part) {
        GatheredBatch whole = curve(name);
        return new GatheredBatch(
                name,
                part,
                whole.roastedAt(),
                whole.day(),
                whole.recording(),
                whole.zero(),
                whole.from(),
                whole.to(),
                whole.marks(),
                whole.written(),
                whole.notes());
    }

    /** Two clocks keep their difference for a day: a pair that differs otherwise is in doubt, where nothing but times speak for it. */
    @ParameterizedTest
    @CsvSource({"420, 3, LIKELY", "720, 3, LIKELY", "721, 3, DOUBTFUL", "-360, 3, DOUBTFUL", "-360, 2, LIKELY"})
    void aPairWhoseClocksDifferOtherwiseThanThatDaysOthersIsDoubtful(int ahead, int others, String sure) {
        List<GatheredBatch> curves = new ArrayList<>();
        List<ListedRoast> rows = new ArrayList<>();
        for (int i = 0; i <= others; i++) {
            LocalDateTime listed = EIGHT.plusHours(i);
            char letter = "abcd".charAt(i);
            curves.add(curveAt("x" + letter, listed.plusSeconds(i == others ? ahead : 420)));
            rows.add(row("T" + letter, Optional.of(listed), Optional.empty(), Map.of(MarkKind.DROP, 610.0)));
        }
        rows.add(rowAt("late", EIGHT.plusHours(9)));
        String last = "x" + "abcd".charAt(others) + " = T" + "abcd".charAt(others) + ", ";
        String said = said(curves, rows).stream()
                .filter(line -> line.startsWith(last))
                .findFirst()
                .orElseThrow();
        assertTrue(said.startsWith(last + sure), said);
        if (ahead < 0 && others == 3) {
            assertTrue(
                    said.endsWith(
                            "but in 3 others of that day whose drops fit, the recording is 7 minutes after the list, and"
                                    + " here 6 minutes before it"),
                    said);
        }
    }
}
