package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static parchment.gather.MadeJoins.EIGHT;
import static parchment.gather.MadeJoins.LIST;
import static parchment.gather.MadeJoins.curve;
import static parchment.gather.MadeJoins.curveAt;
import static parchment.gather.MadeJoins.row;
import static parchment.gather.MadeJoins.rowAt;
import static parchment.gather.MadeJoins.rowOn;
import static parchment.gather.MadeJoins.said;
import static parchment.gather.MadeJoins.titled;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.MarkKind;

/** What else tells recordings of a day apart: machines, lots and people that are named, numbers of the day, times that are minutes off. */
class JoinCluesTest {
    private static ListedRoast rowOf(String name, String heading, String value) {
        return new ListedRoast(
                name,
                List.of(new ListedBatch(
                        name,
                        Optional.empty(),
                        Optional.of(EIGHT.toLocalDate()),
                        Map.of(heading, value),
                        Map.of(),
                        List.of(),
                        LIST,
                        2)));
    }

    /** The first of the day is the small machine's in the list, and the large one's among the recordings. */
    @ParameterizedTest
    @CsvSource({"machine, Small, Large", "lot, Kela washed, Kela", "operator, Ida, Leo"})
    void aMachineALotOrAPersonTellsAgainstThePlaceInTheDay(String heading, String first, String second) {
        List<GatheredBatch> curves =
                List.of(curveAt("1 " + second, EIGHT), titledAt(EIGHT.plusMinutes(20), "2", "by: " + first));
        List<ListedRoast> rows = List.of(rowOf("A", heading, first), rowOf("B", heading, second));
        assertEquals(
                List.of(
                        "1 " + second + " = B, LIKELY: both are of 2031-06-01, it names the " + heading + " '" + second
                                + "'",
                        "2 = A, LIKELY: both are of 2031-06-01, it names the " + heading + " '" + first + "'"),
                said(curves, rows));
    }

    @Test
    void aMachineThatIsNotTheRowsSpeaksAgainst() {
        assertEquals(
                List.of(
                        "batch 5 Large = 5, DOUBTFUL: its file 'batch 5 Large' has the number 5, both are of 2031-06-01; but it names the machine 'Large' and the list says 'Small'; it could be row '6' (both are of 2031-06-01)"),
                said(
                        List.of(curveAt("batch 5 Large", EIGHT)),
                        List.of(rowOf("5", "machine", "Small"), rowOf("6", "machine", "Large"))));
    }

    @Test
    void aRecordingThatNamesTwoMachinesOrTheOnlyOneSaysNothing() {
        assertEquals(
                List.of(
                        "batch 5 Large Small = 5, CERTAIN: its file 'batch 5 Large Small' has the number 5, both are of 2031-06-01"),
                said(
                        List.of(curveAt("batch 5 Large Small", EIGHT)),
                        List.of(rowOf("5", "machine", "Small"), rowOf("6", "machine", "Large"))));
        assertEquals(
                List.of(
                        "batch 5 Large = 5, CERTAIN: its file 'batch 5 Large' has the number 5, both are of 2031-06-01"),
                said(
                        List.of(curveAt("batch 5 Large", EIGHT)),
                        List.of(rowOf("5", "machine", "Large"), rowOf("6", "machine", "Large"))));
    }

    private static GatheredBatch titledAt(LocalDateTime at, String name, String... cells) {
        return curve(name, List.of(List.of(cells)), Optional.of(at), Optional.empty());
    }

    /** A word for a batch makes it certain; any other word leaves a code likely; a number needs a sign for a number. */
    @ParameterizedTest
    @CsvSource({
        "Batch G204, G204, CERTAIN",
        "Lot n° G204, G204, LIKELY",
        "Lot n° 204, 204, DOUBTFUL",
        "Lot 204, 204, none",
        "Lot n° G2041, G204, none"
    })
    void aNameInTheFirstLinesIsAClueWhateverStandsBeforeIt(String line, String row, String sure) {
        List<Join> joins = Joins.of(List.of(titled("x", line)), List.of(row(row)));
        assertEquals(
                sure,
                joins.stream().map(join -> join.sure().toString()).findFirst().orElse("none"));
    }

    @Test
    void aCodeInTheFirstLinesWeighsMoreThanThePlaceInTheDay() {
        LocalDate day = EIGHT.toLocalDate();
        assertEquals(
                List.of(
                        "1 = G2, CERTAIN: its first lines hold 'G2', both are of 2031-06-01",
                        "2 = G1, CERTAIN: its first lines hold 'G1', both are of 2031-06-01"),
                said(
                        List.of(titledAt(EIGHT, "1", "Lot n° G2"), titledAt(EIGHT.plusMinutes(20), "2", "Lot n° G1")),
                        List.of(rowOn("G1", day), rowOn("G2", day))));
    }

    @Test
    void aNumberThatBeginsAgainEveryDayTellsWithItsDay() {
        LocalDate day = EIGHT.toLocalDate();
        List<ListedRoast> rows =
                List.of(rowOn("2031-06-01-1", day), rowOn("2031-06-01-2", day), rowOn("2031-06-02-2", day.plusDays(1)));
        assertEquals(
                List.of(
                        "Batch 2 = 2031-06-01-2, CERTAIN: its file 'Batch 2' has the number 2 of the day, both are of 2031-06-01"),
                said(List.of(curveAt("Batch 2", EIGHT)), rows));
        assertEquals(
                List.of("x = 2031-06-01-2, CERTAIN: its first lines name batch 2 of the day, both are of 2031-06-01"),
                said(List.of(titledAt(EIGHT, "x", "Batch", "2")), rows));
    }

    /** A time within 20 minutes, with the drop within 20 s of the list's, and beyond. */
    @ParameterizedTest
    @CsvSource({"660, 620, LIKELY", "660, 621, DOUBTFUL", "300, 621, CERTAIN"})
    void aTimeMinutesOffIsDoubtfulWhereTheDropDoesNotFit(int seconds, double drop, String sure) {
        Join join = Joins.of(
                        List.of(curveAt("x", EIGHT)),
                        List.of(row(
                                "5",
                                Optional.of(EIGHT.plusSeconds(seconds)),
                                Optional.empty(),
                                Map.of(MarkKind.DROP, drop))))
                .get(0);
        assertEquals(sure, join.sure().toString(), said(join));
        assertEquals(sure.equals("DOUBTFUL") ? "the drops are 21 s apart" : "", join.but());
    }

    @Test
    void aTimeMinutesOffAgainstANumberOfTheDayIsDoubtful() {
        List<ListedRoast> rows =
                List.of(rowAt("2031-06-01-3", EIGHT.plusMinutes(11)), rowAt("2031-06-01-4", EIGHT.plusMinutes(70)));
        assertEquals(
                List.of(
                        "Charge 4 = 2031-06-01-3, DOUBTFUL: both were charged on 2031-06-01, 11 minutes apart; but its name says row '2031-06-01-4' (its file 'Charge 4' has the number 4 of the day)"),
                said(List.of(curveAt("Charge 4", EIGHT)), rows));
    }

    @Test
    void aNameAgainstATimeIsDoubtfulHoweverWellItIsWritten() {
        assertEquals(
                List.of(
                        "Wren = Wren, DOUBTFUL: its file is named so, both are of 2031-06-01; but its time says row '6' (both were charged on 2031-06-01 at 08:00)"),
                said(List.of(curveAt("Wren", EIGHT)), List.of(rowOn("Wren", EIGHT.toLocalDate()), rowAt("6", EIGHT))));
    }

    @Test
    void aRowThatIsNearerInTimeMakesTheOtherDoubtful() {
        // The nearer row's drop comes minutes after the recording's end, so that the farther one weighs more.
        List<ListedRoast> rows = List.of(
                row("5", Optional.of(EIGHT.plusMinutes(4)), Optional.empty(), Map.of(MarkKind.DROP, 600.0)),
                row("6", Optional.of(EIGHT), Optional.empty(), Map.of(MarkKind.DROP, 900.0)));
        Join join = Joins.of(List.of(curveAt("x", EIGHT)), rows).get(0);
        assertEquals("5", join.roast().name());
        assertEquals(Join.Sure.DOUBTFUL, join.sure(), said(join));
        assertEquals("nearer in time is row '6' (both were charged on 2031-06-01 at 08:00)", join.but());
    }
}
