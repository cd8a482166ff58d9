package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What each column of a strange file is taken for: a row for each rule, and one on each side of each edge. */
class MeaningProposalTest {
    private record Written(String heading, List<String> cells) {}

    private static Written column(String heading, String... cells) {
        return new Written(heading, List.of(cells));
    }

    private static Written column(String heading, int rows, IntFunction<Object> cell) {
        return new Written(
                heading,
                IntStream.range(0, rows)
                        .mapToObj(i -> String.valueOf(cell.apply(i)))
                        .toList());
    }

    /** Values that rise in even steps, so that they look like what a probe reads. */
    private static Written even(String heading, double low, double high, int rows) {
        return column(heading, rows, i -> low + (high - low) * i / (rows - 1));
    }

    private static List<MeaningProposal> proposals(Written... written) {
        int rows = 0;
        for (Written one : written) {
            rows = Math.max(rows, one.cells().size());
        }
        List<List<String>> lines = new ArrayList<>();
        for (int r = 0; r < rows; r++) {
            List<String> line = new ArrayList<>();
            for (Written one : written) {
                line.add(r < one.cells().size() ? one.cells().get(r) : "");
            }
            lines.add(line);
        }
        List<String> headings = new ArrayList<>();
        List.of(written).forEach(one -> headings.add(one.heading()));
        FoundTable file = Tables.of(headings, lines);
        return MeaningProposal.of(IntStream.range(0, written.length)
                .mapToObj(i -> StrangeColumn.of(file, i))
                .toList());
    }

    private static String said(Written... written) {
        return said(proposals(written).get(0));
    }

    private static String said(MeaningProposal proposal) {
        return proposal.meaning() + ": " + proposal.reason();
    }

    private static List<String> meanings(Written... written) {
        return proposals(written).stream().map(one -> one.meaning().toString()).toList();
    }

    // Times.

    @Test
    void datesWithTimesAreTimes() {
        assertEquals(
                "time [date and time]: its values are dates with times",
                said(column("when", "2025-03-04 09:15:00", "2025-03-04 09:15:01")));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0:00|time [min:s]: its values are times such as 0:00",
                "12:30|time [min:s]: its values are times such as 12:30",
                "0:00:01|time [h:min:s]: its values are times such as 0:00:01",
                "00:00:01|time [h:min:s]: its values are times such as 00:00:01",
                "0:10:01|time [time of day]: its values are times such as 0:10:01, too late for the start of a roast",
                "09:15:00|time [time of day]: its values are times such as 09:15:00, too late for the start of a roast",
            })
    void clocksAreTakenByTheirFormAndTheirFirstValue(String first, String said) {
        assertEquals(said, said(column("when", first, first, first)));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "t [s]|1|time [s]: it rises from row to row, by 10 in all, and its heading has the unit",
                "t [min]|1|time [min]: it rises from row to row, by 10 in all, and its heading has the unit",
                "t (ms)|1|time [ms]: it rises from row to row, by 10 in all, and its heading has the unit",
                "t|3.9|time [min]: it rises from row to row, by 39 in all: too few for seconds",
                "t|4|time [s]: it rises from row to row, by 40 in all",
                "t|10000|time [s]: it rises from row to row, by 100000 in all",
                "t|10001|time [ms]: it rises from row to row, by 100010 in all: too many for seconds",
            })
    void risingNumbersAreTimesInTheUnitThatTheirSpanFits(String heading, double step, String said) {
        assertEquals(said, said(column(heading, 11, i -> 7 + i * step)));
    }

    @Test
    void fewerThanTenNumbersOrNumbersThatDoNotRiseAreNoTime() {
        assertEquals("extra", meanings(column("t", 9, i -> i)).get(0));
        assertEquals("time [min]", meanings(column("t", 10, i -> i)).get(0));
        assertEquals("extra", meanings(column("t", 20, i -> i % 3)).get(0));
    }

    @Test
    void ofTwoTimesTheFirstIsTakenUnlessOnlyALaterOneIsNamedSo() {
        Written rows = column("row", 50, i -> i);
        Written seconds = column("Elapsed", 50, i -> 2 * i);
        Written named = column("Time", 50, i -> 2.2 * i);
        assertEquals(List.of("time [s]", "extra"), meanings(rows, column("other", 50, i -> 2 * i)));
        assertEquals(List.of("extra", "time [s]"), meanings(rows, seconds));
        assertEquals(List.of("extra", "time [s]", "extra"), meanings(rows, seconds, named));
        assertEquals(List.of("time [s]", "extra"), meanings(seconds, rows));
        assertEquals(List.of("extra", "extra"), meanings(column("Time", 50, i -> i % 2), column("q", 50, i -> i % 3)));
    }

    // What looks like a temperature.

    @ParameterizedTest
    @CsvSource({
        "20, 120, 20, extra",
        "20, 121, 20, bean temperature [°C]",
        "500, 999, 20, bean temperature [°F]",
        "500, 1000, 20, extra",
        "150, 189, 20, extra",
        "150, 190, 20, bean temperature [°C]",
        "150, 190, 9, extra",
        "150, 190, 10, bean temperature [°C]",
    })
    void aTemperatureLiesInItsRangeAndMoves(double low, double high, int rows, String meaning) {
        assertEquals(
                meaning, meanings(minutes(rows), even("a", low, high, rows)).get(1));
    }

    /** Ten steps over a range of 100, the two largest as given: the second largest is held against the range. */
    @ParameterizedTest
    @CsvSource({"30, extra", "29, bean temperature [°C]"})
    void aTemperatureMovesInSmallSteps(double large, String meaning) {
        Written written =
                column("a", 11, i -> i <= 2 ? 100 + i * large : 100 + 2 * large + (i - 2) * (100 - 2 * large) / 8);
        assertEquals(meaning, meanings(minutes(11), written).get(1));
    }

    @ParameterizedTest
    @CsvSource({"61, 40, bean temperature [°C]", "61, 39, extra", "60, 40, extra"})
    void aTemperatureThatJumpsTakesManyValuesAndIsNeverCold(double low, int distinct, String meaning) {
        Written jumps =
                column("a", distinct + 4, i -> i < 5 ? low : i % 2 == 0 ? low + 0.1 * (i - 3) : 200 - 0.1 * (i - 4));
        assertEquals(meaning, meanings(minutes(distinct + 4), jumps).get(1));
    }

    @ParameterizedTest
    @CsvSource({
        "Temp 3, bean temperature [°C]",
        "probe [C], bean temperature [°C]",
        "probe [%], extra",
        "C, extra",
        "setting, extra"
    })
    void aTemperatureThatHardlyMovesIsKnownByItsHeading(String heading, String meaning) {
        assertEquals(
                meaning,
                meanings(minutes(20), column(heading, 20, i -> 150 + i % 2)).get(1));
    }

    private static Written minutes(int rows) {
        return column("Time [s]", Math.max(rows, 10), i -> i);
    }

    // Which temperature is which, and on what scale.

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "300|bean temperature [°C]: it is the only temperature; the unit is not written; values up to 300 fit a drop in °C, and too"
                        + " few for °F",
                "301|bean temperature [°F]: it is the only temperature; the unit is not written; values up to 301 fit a drop in °F, and no"
                        + " bean stands that many °C",
            })
    void theScaleFollowsFromTheHighestReadings(double high, String said) {
        assertEquals(said, said(proposals(minutes(20), even("a", 90, high, 20)).get(1)));
    }

    @Test
    void aScaleInTheHeadingIsTaken() {
        assertEquals(
                "bean temperature [°F]: it is the only temperature; its heading has the unit",
                said(proposals(minutes(60), even("a [F]", 90, 200, 60)).get(1)));
    }

    @Test
    void aNamedBeanTemperatureIsTakenHoweverHotItIs() {
        List<MeaningProposal> found = proposals(minutes(60), even("a", 90, 200, 60), even("Bean", 120, 250, 60));
        assertEquals(
                "air temperature [°C]: it is the other temperature; it is in the unit of the bean temperature",
                said(found.get(1)));
        assertEquals(
                "bean temperature [°C]: its heading says so; the unit is not written; values up to 248 fit a drop in °C, and too few for"
                        + " °F",
                said(found.get(2)));
    }

    @Test
    void ofUnnamedTemperaturesTheOneThatFallsLowestIsTheBeans() {
        for (boolean beansFirst : new boolean[] {true, false}) {
            Written low = even("a", 90, 200, 60);
            Written high = even("b", 120, 250, 60);
            List<MeaningProposal> found =
                    new ArrayList<>(beansFirst ? proposals(minutes(60), low, high) : proposals(minutes(60), high, low));
            found.remove(0);
            if (!beansFirst) {
                Collections.reverse(found);
            }
            assertEquals(
                    "bean temperature [°C]: of the temperatures it falls lowest, to 92, as cold beans make it; the unit is not written;"
                            + " values up to 198 fit a drop in °C, and too few for °F",
                    said(found.get(0)));
            assertEquals("air temperature [°C]", found.get(1).meaning().toString());
        }
    }

    @Test
    void whatIsNamedAfterTheAirIsNotTheBeansHoweverLowItFalls() {
        Written air = even("Exhaust", 60, 200, 60);
        Written other = even("b", 90, 210, 60);
        assertEquals(
                List.of("time [s]", "air temperature [°C]", "bean temperature [°C]"),
                meanings(minutes(60), air, other));
        assertEquals(
                List.of("time [s]", "bean temperature [°C]", "air temperature [°C]"),
                meanings(minutes(60), other, air));
        assertEquals(
                "air temperature [°C]: its heading says so; it is in the unit of the bean temperature",
                said(proposals(minutes(60), other, air).get(2)));
    }

    @Test
    void ofTwoNamedAfterTheAirTheLowerOneIsTheBeans() {
        Written low = even("air 1", 80, 200, 60);
        Written high = even("air 2", 100, 250, 60);
        assertEquals("bean temperature [°C]", meanings(minutes(60), high, low).get(2));
        assertEquals("bean temperature [°C]", meanings(minutes(60), low, high).get(1));
    }

    @Test
    void aThirdTemperatureIsKeptAsAnExtra() {
        List<MeaningProposal> found =
                proposals(minutes(60), even("a", 90, 200, 60), even("b", 120, 250, 60), even("c", 130, 260, 60));
        assertEquals("extra: a third temperature has no place of its own", said(found.get(3)));
    }

    @Test
    void theAirsOwnScaleIsTakenWhereItIsWritten() {
        assertEquals(
                "air temperature [°F]: its heading says so; its heading has the unit",
                said(proposals(minutes(60), even("Bean [C]", 90, 200, 60), even("Air [F]", 300, 480, 60))
                        .get(2)));
        assertEquals(
                "air temperature [K]: its heading says so; it is in the unit of the bean temperature",
                said(proposals(minutes(60), even("Bean [K]", 360, 480, 60), even("Air", 400, 500, 60))
                        .get(2)));
    }

    // Everything else.

    @Test
    void anEmptyColumnIsLeftOut() {
        assertEquals("leave out: it is empty", said(column("x", "", "")));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "hello|world|events: it holds words such as 'hello', 'world'",
                "hello|first crack|events: it holds words such as 'hello', 'first crack', of which 1 names a mark",
                "drop|first crack|events: it holds words such as 'drop', 'first crack', of which 2 name a mark",
            })
    void wordsAreEventsAndSomeNameAMark(String one, String other, String said) {
        assertEquals(said, said(column("x", one, other, "")));
    }

    @Test
    void aMixtureIsLeftOut() {
        assertEquals(
                "leave out: it is neither numbers nor words throughout", said(column("x", "1", "2", "one", "two")));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Gas [kPa]|gas [kPa]: its heading speaks of it, and it takes 3 values",
                "Burner|gas: its heading speaks of it, and it takes 3 values",
                "Air flow [%]|airflow [%]: its heading speaks of it, and it takes 3 values",
                "Fan|airflow: its heading speaks of it, and it takes 3 values",
                "Heater [%]|heater power [%]: its heading speaks of it, and it takes 3 values",
                "Drum [rpm]|drum speed [rpm]: its heading speaks of it, and it takes 3 values",
                "Colour|extra: its heading says nothing that is known; kept under its own name",
            })
    void aControlIsKnownByItsHeading(String heading, String said) {
        assertEquals(said, said(column(heading, 12, i -> i % 3 * 10)));
    }

    @Test
    void aRecordingHasTimesAndABeanTemperature() {
        Written beans = even("a", 90, 200, 60);
        assertTrue(MeaningProposal.isRecording(proposals(minutes(60), beans)));
        assertFalse(MeaningProposal.isRecording(proposals(minutes(60))));
        assertFalse(MeaningProposal.isRecording(proposals(column("x", 60, i -> 90 + (i % 30) * 4))));
    }

    @Test
    void headingsAreReadInAnyCase() {
        assertEquals(
                "time [s]",
                meanings(column("row", 50, i -> i), column("ELAPSED".toLowerCase(Locale.ROOT), 50, i -> 2 * i))
                        .get(1));
        assertEquals(
                "bean temperature [°C]",
                meanings(minutes(60), even("a", 90, 200, 60), even("BEANS", 120, 250, 60))
                        .get(2));
    }

    @ParameterizedTest
    @CsvSource({
        "Bohne °C,°C,its heading has the unit",
        "°C Bohne,°C,its heading has the unit",
        "Bean C,°C,its heading has the unit",
        "Temp (F),°F,its heading has the unit",
        "Bean °F,°F,its heading has the unit",
        "Bean,°C,the unit is not written; values up to 213 fit a drop in °C and too few for °F",
        "BeanC,°C,the unit is not written; values up to 213 fit a drop in °C and too few for °F",
        "C bean,°C,the unit is not written; values up to 213 fit a drop in °C and too few for °F"
    })
    void aUnitWithoutBracketsIsRead(String heading, String unit, String reason) {
        MeaningProposal proposal = proposals(even("time [s]", 0, 600, 60), even(heading, 80, 215, 60))
                .get(1);
        assertEquals("bean temperature [" + unit + "]", proposal.meaning().toString());
        assertTrue(proposal.reason().replace(",", "").endsWith(reason), proposal.reason());
    }
}
