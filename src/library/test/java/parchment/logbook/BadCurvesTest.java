package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.curve.Curve;
import parchment.logbook.written.Problem;
import parchment.quantity.TemperatureUnit;

class BadCurvesTest {
    @TempDir
    Path temporary;

    private static final String HEAD = "time [s],bean temperature [°C]";

    private Logbook curve(String... lines) throws IOException {
        return new WrittenFolder(temporary).with("curves/1.csv", lines).open();
    }

    private static Curve beans(Logbook logbook) {
        return logbook.batch("1").beanTemperature().orElseThrow();
    }

    private static void says(Logbook logbook, String... parts) {
        assertTrue(
                logbook.problems().list().stream()
                        .map(Problem::toString)
                        .anyMatch(line -> List.of(parts).stream().allMatch(line::contains)),
                () -> "no problem with " + List.of(parts) + " in\n"
                        + logbook.problems().text());
    }

    private static String[] rows(IntStream times) {
        List<String> rows = new java.util.ArrayList<>(List.of(HEAD));
        times.forEach(t -> rows.add(t + "," + (100 + Math.abs(t % 1000) / 10.0)));
        return rows.toArray(String[]::new);
    }

    @Test
    void saysThatACurveFileIsEmptyOrHasOnlyAHeading() throws IOException {
        says(new WrittenFolder(temporary).withText("curves/1.csv", "").open(), "curves/1.csv: found an empty file");
        says(curve(HEAD), "a heading and no readings");
        assertTrue(Logbook.open(temporary).batch("1").beanTemperature().isEmpty());
    }

    @Test
    void keepsTheFirstOfReadingsAtTheSameTime() throws IOException {
        Logbook logbook = curve(HEAD, "0,200", "1,190", "1,191", "1,192", "2,180", "2,181");
        assertArrayEquals(new double[] {200, 190, 180}, beans(logbook).values());
        says(logbook, "line 4", "3 readings at a time that was already read", "the first of each kept");
        assertEquals(1, logbook.problems().size(), logbook.problems().text());
    }

    /** Three readings lie on a parabola; fewer show no bend. */
    @Test
    void saysThatABeanTemperatureWithFewerThanThreeReadingsIsTooShort() throws IOException {
        Logbook one = curve(HEAD, "0,200", "2,", "4,");
        assertEquals(
                "curves/1.csv, column 'bean temperature [°C]': found 1 usable reading, too few to work with; expected bean temperatures"
                        + " at three times or more; kept; no mark is looked for on this curve.",
                one.problems().list().get(0).toString());
        assertEquals(1, one.problems().size());
        assertEquals(1, beans(one).size());
        says(curve(HEAD, "0,200", "2,190"), "2 usable readings, too few");
        assertEquals(0, curve(HEAD, "0,200", "2,190", "4,180").problems().size());
    }

    @Test
    void namesABeanTemperatureThatIsAlwaysTheSame() throws IOException {
        Logbook logbook = new WrittenFolder(temporary)
                .with("curves/2.csv", HEAD, "0,180", "1,180", "2,180")
                .with("curves/3.csv", HEAD, "0,180", "1,180", "2,180.1")
                .open();
        assertEquals(3, logbook.batch("2").beanTemperature().orElseThrow().size());
        says(logbook, "curves/2.csv", "3 readings that are always the same, 180", "was the probe connected?");
        assertTrue(
                logbook.problems().list().stream().noneMatch(p -> p.file().equals("curves/3.csv")),
                logbook.problems().text());
    }

    @Test
    void sortsReadingsThatAreOutOfOrder() throws IOException {
        Logbook shuffled = curve(rows(IntStream.range(0, 200).map(i -> i * 77 % 200)));
        assertEquals(200, beans(shuffled).size());
        says(shuffled, "before the one above", "sorted by time");
        Logbook reversed = curve(rows(IntStream.range(0, 200).map(i -> 200 - i)));
        assertEquals(1, beans(reversed).secondsAt(0));
        assertEquals(100.1, beans(reversed).valueAt(0));
        says(reversed, "sorted by time");
    }

    @Test
    void keepsTheLongestStretchOfAClockThatJumps() throws IOException {
        Logbook back = curve(rows(IntStream.concat(IntStream.range(300, 400), IntStream.range(0, 250))));
        assertEquals(250, beans(back).size());
        assertEquals(0, beans(back).secondsAt(0));
        says(back, "line 102", "1 jump of the clock, the first by -399 s", "lines 102 to 351", "100 readings left out");
        Logbook forward = curve(rows(IntStream.concat(IntStream.range(0, 100), IntStream.range(4000, 4040))));
        assertEquals(100, beans(forward).size());
        says(forward, "by 3901 s", "40 readings left out");
    }

    @Test
    void waitsUntilAClockThatStepsBackHasCaughtUp() throws IOException {
        Logbook logbook = curve(rows(IntStream.concat(IntStream.range(0, 100), IntStream.range(97, 200))));
        assertEquals(200, beans(logbook).size());
        says(logbook, "line 102", "a clock that steps back, over 2 readings");
        says(logbook, "1 reading at a time that was already read");
    }

    @Test
    void treatsSignsForNoReadingAsMissing() throws IOException {
        Logbook logbook = curve(
                HEAD + ",air temperature [°C]",
                "0,200,250",
                "1,-1,999.9",
                "2,65535,252",
                "3,NaN,253",
                "4,,254",
                "5,oops,255");
        assertArrayEquals(new double[] {0}, beans(logbook).seconds());
        assertEquals(5, logbook.batch("1").airTemperature().orElseThrow().size());
        says(logbook, "line 3", "bean temperature", "3 readings of -1");
        says(logbook, "line 3", "air temperature", "1 reading of 999.9");
        says(logbook, "line 7", "1 value like 'oops'");
        says(logbook, "1 usable reading");
        assertEquals(4, logbook.problems().size(), logbook.problems().text());
    }

    @Test
    void questionsAUnitThatContradictsItsValues() throws IOException {
        Logbook hot = new WrittenFolder(temporary)
                .withText("curves/1.csv", WrittenFolder.curve("°C", 0, 560, 5, 420))
                .open();
        assertTrue(hot.batch("1").beanTemperature().isEmpty());
        says(hot, "bean temperature [°C]", "readings up to 4", "is it °F?", "left out");
        Logbook cold = new WrittenFolder(temporary)
                .withText("curves/1.csv", WrittenFolder.curve("°F", 0, 560, 5, 215))
                .open();
        assertTrue(cold.batch("1").beanTemperature().isEmpty());
        says(cold, "bean temperature [°F]", "is it °C?");
    }

    @Test
    void keepsACurveWhoseProbeSpikesOrSticks() throws IOException {
        String[] rows = rows(IntStream.range(0, 200));
        rows[50] = "49,1990";
        for (int i = 100; i < 120; i++) {
            rows[i] = (i - 1) + ",104.2";
        }
        Logbook logbook = curve(rows);
        assertEquals(200, beans(logbook).size(), "cleaning is the curve's own work, and says what it left out");
        assertEquals(1990, beans(logbook).valueAt(49));
    }

    @Test
    void skipsALineThatWasCut() throws IOException {
        Logbook cut = new WrittenFolder(temporary)
                .withText("curves/1.csv", HEAD + ",gas [%]\n0,200,50\n1,199,50\n2,19")
                .open();
        assertEquals(2, beans(cut).size());
        says(cut, "line 4", "ends in the middle of a line", "row skipped");
        Logbook lastValue = new WrittenFolder(temporary)
                .withText("curves/1.csv", HEAD + "\n0,200\n1,199\n2,19")
                .open();
        assertEquals(2, beans(lastValue).size());
        says(lastValue, "ends in the middle of a line");
        Logbook whole = new WrittenFolder(temporary)
                .withText("curves/1.csv", HEAD + "\n0,200\n1,199\n2,198")
                .open();
        assertEquals(3, beans(whole).size());
        assertEquals(0, whole.problems().size());
    }

    @Test
    void saysWhenAUnitIsNotWritten() throws IOException {
        String celsius = WrittenFolder.CURVE
                .replace("time [s],bean temperature [°C]", "Time,Bean Temperature,air temperature")
                .replaceAll("(?m)^(\\d.*)$", "$1,250");
        Logbook logbook =
                new WrittenFolder(temporary).withText("curves/1.csv", celsius).open();
        says(logbook, "Time", "no unit", "read in s");
        says(logbook, "Bean Temperature", "read in °C, which alone fits");
        says(logbook, "air temperature", "the unit of the bean temperature");
        Logbook fahrenheit = new WrittenFolder(temporary)
                .withText(
                        "curves/1.csv",
                        WrittenFolder.curve("°F", 0, 560, 5, 420).replace(" [°F]", ""))
                .open();
        assertEquals(TemperatureUnit.FAHRENHEIT, fahrenheit.readerUnit());
        assertEquals((420 - 32) / 1.8, beans(fahrenheit).valueAt(112), 1e-9);
        Logbook neither = new WrittenFolder(temporary)
                .withText(
                        "curves/1.csv",
                        WrittenFolder.curve("°F", 0, 560, 5, 310).replace(" [°F]", ""))
                .open();
        assertTrue(neither.batch("1").beanTemperature().isEmpty());
        says(neither, "left out");
        says(curve("time,bean temperature [°C]", "0:00,200", "9:19,210"), "read in min:s");
        says(curve("time,bean temperature [°C]", "0,200", "9.3,210"), "shorter than a minute: is it [min]?");
    }

    @Test
    void saysWhichColumnOfACurveIsMissing() throws IOException {
        says(curve("tiem [s],bean temperature [°C]", "0,200"), "no column 'time'", "Did you mean 'tiem'?");
        says(curve("time [s],gas [%]", "0,20"), "no bean temperature");
        assertTrue(Logbook.open(temporary).batch("1").curve(Quantity.GAS).isPresent());
        says(
                curve("time [s],bean temprature [°C]", "0,200"),
                "found a column that is not known; expected 'bean temperature', if that is meant; kept as an extra.");
    }

    @Test
    void aSecondColumnOfAQuantityIsKeptAsAnExtraAndAThirdIsNamed() throws IOException {
        Logbook logbook =
                curve("time [s],bean temperature [°C],bean temperature [°C]", "0,200,100", "1,199,99", "2,198,98");
        says(logbook, "the same column twice", "kept as an extra");
        assertArrayEquals(new double[] {200, 199, 198}, beans(logbook).values());
        assertArrayEquals(
                new double[] {100, 99, 98},
                logbook.batch("1").otherCurves().get("bean temperature [°C]").values());
        says(curve(HEAD + "," + HEAD + "," + HEAD, "0,200,0,201,0,202"), "bean temperature", "the first one read");
        String page = Files.readString(Path.of("..", "docs", "logbook-format.md"));
        assertTrue(
                page.contains(
                        "| the same heading twice | the first one read; of a quantity of a curve, the second is kept as an extra |"));
    }

    @Test
    void skipsRowsThatAreTooWideAndFillsThoseThatAreTooNarrow() throws IOException {
        Logbook logbook = curve(HEAD + ",gas [%]", "0,200,5", "1,199,5,9", "2,198", "x,197,5");
        assertArrayEquals(new double[] {200, 198}, beans(logbook).values());
        says(logbook, "line 3", "1 row with 4 values under 3 headings", "skipped");
        says(logbook, "line 4", "1 row with 2 values under 3 headings");
        says(logbook, "line 5", "1 time like 'x'", "rows skipped");
    }

    @Test
    void readsQuotedValuesAndKeepsWordsOutOfCurves() throws IOException {
        Logbook logbook =
                curve(HEAD + ",note", "\"0\",\"200.5\",\"charge, \"\"now\"\"\"", "1,199,\"two", "lines\"", "2,198,");
        assertArrayEquals(new double[] {200.5, 199, 198}, beans(logbook).values());
        says(logbook, "line 2", "words, such as 'charge, \"now\"'", "column left out");
    }

    @Test
    void namesWhatIsNoCurveFile() throws IOException {
        Logbook logbook = new WrittenFolder(temporary)
                .withText("curves/1.csv", WrittenFolder.CURVE)
                .with("curves/notes.txt", "x")
                .with("curves/.hidden", "x")
                .open();
        says(logbook, "something else, 'notes.txt'");
        assertEquals(1, logbook.problems().size());
    }
}
