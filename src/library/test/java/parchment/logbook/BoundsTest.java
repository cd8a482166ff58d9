package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.logbook.written.Problem;
import parchment.quantity.MassUnit;
import parchment.sheet.BoundedReader;

/** What lies beyond the bounds of the possible is a problem in words; what lies just within them is read. */
class BoundsTest {
    @TempDir
    Path temporary;

    private WrittenFolder folder() {
        return new WrittenFolder(temporary);
    }

    private static boolean says(Logbook logbook, String... parts) {
        return logbook.problems().list().stream()
                .map(Problem::toString)
                .anyMatch(line -> List.of(parts).stream().allMatch(line::contains));
    }

    private static void assertSays(Logbook logbook, String... parts) {
        assertTrue(
                says(logbook, parts),
                () -> "no problem with " + List.of(parts) + " in\n"
                        + logbook.problems().text());
    }

    private static String letters(int count) {
        return "n".repeat(count);
    }

    @ParameterizedTest
    @CsvSource({
        "bean temperature [°C], 2000, 2001, a temperature from -100 to 2000 °C",
        "bean temperature [°C], -100, -101, a temperature from -100 to 2000 °C",
        "bean temperature [°F], 3632, 3633, a temperature from -148 to 3632 °F",
        "air temperature [°C], 2000, 1e155, a temperature from -100 to 2000 °C",
        "gas [%], 1000000, 1000001, 'a number from -1,000,000 to 1,000,000'",
        "airflow [%], -1000000, -1000001, 'a number from -1,000,000 to 1,000,000'",
        "my own, 1e15, 1.1e15, a number of at most 15 digits before the decimal point",
    })
    void aReadingBeyondWhatItsColumnCanHoldIsMissingAndNamed(String heading, String within, String beyond, String words)
            throws IOException {
        for (String reading : List.of(within, beyond)) {
            String other = heading.startsWith("bean") ? "x" : "bean temperature [°C]";
            StringBuilder text = new StringBuilder("time [s]," + heading + "," + other + "\n");
            for (int t = 0; t < 300; t++) {
                text.append(t).append(',').append(t == 150 ? reading : "210").append(",205\n");
            }
            Logbook logbook = folder().withText("curves/1.csv", text.toString()).open();
            assertEquals(
                    reading.equals(beyond),
                    says(logbook, "1 reading of", words, "treated as missing"),
                    logbook.problems().text());
        }
    }

    @ParameterizedTest
    @CsvSource({"10000000000, 299", "10000000001, 298", "5e300, 298", "-10000000001, 298"})
    void aTimeBeyondAnyClockIsLeftOutAndNamed(String time, int kept) throws IOException {
        StringBuilder text = new StringBuilder("time [s],bean temperature [°C]\n");
        for (int t = 0; t < 298; t++) {
            text.append(9_999_999_700L + t).append(",205\n");
        }
        Logbook logbook =
                folder().withText("curves/1.csv", text + time + ",206\n").open();
        assertEquals(kept, logbook.batch("1").beanTemperature().orElseThrow().size());
        assertEquals(
                kept == 298,
                says(logbook, "1 time like", "a time within 10,000,000,000 s of 0", "rows skipped"),
                logbook.problems().text());
    }

    @Test
    void aCurveKeepsTheFullestMillionSecondsAndSaysSo() throws IOException {
        for (int last : new int[] {1_000_000, 1_000_001}) {
            String text = IntStream.of(0, 250_000, 500_000, 750_000, last)
                    .mapToObj(t -> t + "," + (190 + t / 250_000) + "\n")
                    .collect(Collectors.joining("", "time [s],bean temperature [°C]\n", ""));
            Logbook logbook = folder().withText("curves/1.csv", text).open();
            assertEquals(
                    last == 1_000_000 ? 5 : 4,
                    logbook.batch("1").beanTemperature().orElseThrow().size());
            assertEquals(
                    last > 1_000_000,
                    says(logbook, "line 6", "readings over 1,000,001 s", "at most 1,000,000 s", "1 reading left out"),
                    logbook.problems().text());
        }
    }

    @Test
    void ofMoreReadingsThanARoastNeedsEverySecondIsKeptWithAWord() throws IOException {
        for (int count : new int[] {20_000, 20_001}) {
            String text = IntStream.range(0, count)
                    .mapToObj(t -> t / 10.0 + "," + (150 + t % 50) + "\n")
                    .collect(Collectors.joining("", "time [s],bean temperature [°C]\n", ""));
            Logbook logbook = folder().withText("curves/1.csv", text).open();
            assertEquals(
                    count == 20_000 ? 20_000 : 10_001,
                    logbook.batch("1").beanTemperature().orElseThrow().size());
            assertEquals(
                    count > 20_000,
                    says(logbook, "20001 readings", "at most 20000", "one of every 2 kept"),
                    logbook.problems().text());
        }
    }

    @ParameterizedTest
    @CsvSource({
        "green mass [kg], 300, 300.1, 'a batch of green coffee from 10 g to 300 kg (another unit in the heading, or a slip?)'",
        "green mass [kg], 0.01, 0.0099, 'a batch of green coffee from 10 g to 300 kg (another unit in the heading, or a slip?)'",
        "green mass [kg], 0.01, 0.001, 'a batch of green coffee from 10 g to 300 kg (another unit in the heading, or a slip?)'",
        "green mass [kg], 300, 500, 'a batch of green coffee from 10 g to 300 kg (another unit in the heading, or a slip?)'",
        "green mass [g], 300000, 1e300, 'a batch of green coffee from 10 g to 300 kg (another unit in the heading, or a slip?)'",
        "green mass [g], 10, 9.9, 'a batch of green coffee from 10 g to 300 kg (another unit in the heading, or a slip?)'",
        "green mass [lb], 661.3, 661.5, 'a batch of green coffee from 10 g to 300 kg (another unit in the heading, or a slip?)'",
        "roasted mass [g], 6, 5.9, 'a batch of roasted coffee from 6 g to 300 kg (another unit in the heading, or a slip?)'",
        "roasted mass [kg], 300, 301, 'a batch of roasted coffee from 6 g to 300 kg (another unit in the heading, or a slip?)'",
        "ground colour [meter], 1000000, 1000001, 'a number from -1,000,000 to 1,000,000'",
    })
    void aNumberOfABatchBeyondItsBoundIsMissingAndNamed(String heading, String within, String beyond, String words)
            throws IOException {
        for (String number : List.of(within, beyond)) {
            Logbook logbook = folder().with(
                            "batches.csv", "batch,roasted at," + heading, "1,2025-03-04T09:15," + number)
                    .open();
            assertEquals(
                    number.equals(beyond),
                    says(logbook, heading, "'" + number + "'", words, "value treated as missing"),
                    logbook.problems().text());
            assertFalse(logbook.batch("1").extras().containsKey(heading));
        }
    }

    @ParameterizedTest
    @CsvSource({
        "chaff [g], 1e15, 1e15, false",
        "chaff [g], 1.1e15, NaN, true",
        "chaff [g], -1.1e15, NaN, true",
        "barcode, 12345678901234567, NaN, false",
        "logger clock, 1764476828000000, NaN, false",
        "barcode, 123456789012345, 123456789012345, false",
    })
    void aLongNumberInAnExtraColumnStaysAsTextAndIsNoNumber(String heading, String written, double number, boolean told)
            throws IOException {
        Logbook logbook = folder().with("batches.csv", "batch,roasted at," + heading, "1,2025-03-04T09:15," + written)
                .open();
        assertEquals(written, logbook.batch("1").extras().get(heading));
        assertEquals(number, logbook.batch("1").extraNumber(heading));
        assertEquals(
                told,
                says(
                        logbook,
                        heading,
                        "'" + written + "'",
                        "a number of at most 15 digits before the decimal point",
                        "kept as text, not used as a number"),
                logbook.problems().text());
        assertFalse(says(logbook, "treated as missing"), logbook.problems().text());
    }

    @ParameterizedTest
    @CsvSource({"1000000, true", "1000001, false", "1e300, false", "-1000000, true", "-1000001, false"})
    void aScoreBeyondAMillionIsMissingAndNamed(String score, boolean read) throws IOException {
        Logbook logbook = folder().with(
                        "cuppings.csv", "cupping,tasted on,cupper,batch,body", "a,2025-03-08,Ana,1," + score)
                .open();
        assertEquals(read, logbook.cups().get(0).scores().containsKey("body"));
        assertEquals(
                !read,
                says(logbook, "body", "a number from -1,000,000 to 1,000,000", "value treated as missing"),
                logbook.problems().text());
    }

    @ParameterizedTest
    @ValueSource(ints = {250, 251, 200_000})
    void aLongNameMakesItsRowAProblem(int length) throws IOException {
        String name = letters(length);
        Logbook logbook = assertTimeoutPreemptively(
                Duration.ofSeconds(5),
                () -> folder().with(
                                "batches.csv",
                                "batch,roasted at,lot",
                                name + ",2025-03-04T09:15,x",
                                "2,2025-03-04T09:55," + name)
                        .with("lots.csv", "lot", name, "x")
                        .with("machines.csv", "machine", name)
                        .with("cuppings.csv", "cupping,tasted on,cupper,batch,body", "a,2025-03-08," + name + ",2,5")
                        .open());
        boolean read = length <= 250;
        assertEquals(read, logbook.find(name).isPresent());
        assertEquals(read, logbook.batch("2").lot().isPresent());
        assertEquals(read ? 2 : 1, logbook.lots().size());
        assertEquals(read ? 1 : 0, logbook.machines().size());
        assertEquals(read ? 1 : 0, logbook.cups().size());
        String words = length > 10_000 ? "a name of 200000 letters" : "a name of 251 letters";
        for (String file :
                List.of("batches.csv, line 2", "batches.csv, line 3", "lots.csv", "machines.csv", "cuppings.csv")) {
            assertEquals(
                    !read,
                    says(logbook, file, words, "expected a name of at most 250 letters"),
                    logbook.problems().text());
        }
    }

    @Test
    void aLongHeadingLeavesItsColumnOutWithACount() throws IOException {
        for (int length : new int[] {250, 251}) {
            Logbook logbook = folder().with(
                            "batches.csv", "batch,roasted at," + letters(length), "1,2025-03-04T09:15,7")
                    .with(
                            "curves/1.csv",
                            "time [s],bean temperature [°C]," + letters(length),
                            "0,200,1",
                            "1,201,2",
                            "2,202,")
                    .open();
            String words = "under a heading of 251 letters";
            assertEquals(length == 250, logbook.batch("1").extras().containsKey(letters(length)));
            assertEquals(
                    length > 250, says(logbook, "batches.csv", "'column 3'", "1 value " + words, "column left out"));
            assertEquals(
                    length > 250, says(logbook, "curves/1.csv", "'column 3'", "2 values " + words, "column left out"));
        }
    }

    @Test
    void aLongTextIsMissingAndNamed() throws IOException {
        for (int length : new int[] {10_000, 10_001}) {
            Logbook logbook = folder().with(
                            "batches.csv", "batch,roasted at,note", "1,2025-03-04T09:15," + letters(length))
                    .open();
            assertEquals(
                    length == 10_000, logbook.batch("1").label(Batch.Label.NOTE).isPresent());
            assertEquals(
                    length > 10_000,
                    says(logbook, "'note'", "a text of 10001 letters", "at most 10000 letters", "missing"));
        }
    }

    @Test
    void aTableOfMoreThanAThousandColumnsIsLeftOutWithAWord() throws IOException {
        for (int count : new int[] {1000, 1001}) {
            String more = IntStream.range(0, count - 2).mapToObj(i -> ",x" + i).collect(Collectors.joining());
            String cells = ",1".repeat(count - 2);
            Logbook logbook = folder().with("batches.csv", "batch,roasted at" + more, "1,2025-03-04T09:15" + cells)
                    .with("curves/2.csv", "time [s],bean temperature [°C]" + more, "0,200" + cells, "1,201" + cells)
                    .with(
                            "curves/3.csv",
                            "time [s],bean temperature [°C]" + more,
                            "0,200" + cells,
                            "\"1\",201" + cells + ",9".repeat(50))
                    .open();
            assertEquals(count == 1000, logbook.find("1").isPresent());
            assertEquals(count == 1000, logbook.batch("2").beanTemperature().isPresent());
            assertEquals(count > 1000, says(logbook, "batches.csv", "1001 columns", "at most 1000", "file left out"));
            assertEquals(count > 1000, says(logbook, "curves/2.csv", "more than 1000 columns", "file left out"));
            assertEquals(
                    count == 1000,
                    says(logbook, "curves/3.csv", "values under 1000 headings", "skipped"),
                    logbook.problems().text());
        }
    }

    @Test
    void aLongSettingIsLeftOutWithAWord() throws IOException {
        for (int beyond = 0; beyond < 2; beyond++) {
            Logbook logbook = folder().with(
                            "logbook.properties",
                            "name=" + letters(250 + beyond),
                            letters(400 + beyond) + "=1",
                            "missing.readings=" + "1".repeat(1000 + beyond))
                    .with("batches.csv", "batch,roasted at", "1,2025-03-04T09:15")
                    .open();
            assertEquals(beyond == 0, logbook.name().length() == 250);
            boolean told = beyond == 1;
            assertEquals(
                    told, says(logbook, "'name'", "a name of 251 letters", "at most 250 letters", "setting left out"));
            assertEquals(told, says(logbook, "a setting of 401 letters", "at most 400 letters", "setting left out"));
            assertEquals(told, says(logbook, "'missing.readings'", "a value of 1001 letters", "at most 1000 letters"));
        }
    }

    @Test
    void aFileOfSettingsOfMoreThanAMillionLettersIsLeftOutWithAWord() throws IOException {
        for (int length : new int[] {1_000_000, 1_000_001}) {
            String start = "name=Harbour\n#";
            Logbook logbook = folder().withText("logbook.properties", start + letters(length - start.length()))
                    .with("batches.csv", "batch,roasted at", "1,2025-03-04T09:15")
                    .open();
            assertEquals(length == 1_000_000, logbook.name().equals("Harbour"));
            assertEquals(
                    length > 1_000_000,
                    says(logbook, "logbook.properties", "more than 1 million characters", "settings left out"),
                    logbook.problems().text());
        }
    }

    @Test
    void aKeyOfTenMillionLettersFillsNoMemory() throws IOException {
        Logbook logbook = folder().withText("logbook.properties", letters(10_000_000) + "=1\n")
                .withText("curves/layout.properties", letters(10_000_000) + "=1\n")
                .withText("curves/1.csv", WrittenFolder.CURVE)
                .open();
        assertSays(logbook, "logbook.properties", "more than 1 million characters");
        assertSays(logbook, "curves/layout.properties", "more than 1 million characters");
    }

    @Test
    void aScaleBeyondAMillionIsLeftOutWithAWord() throws IOException {
        for (String high : List.of("1000000", "1000001")) {
            Logbook logbook = folder().with("logbook.properties", "scale.body=0.." + high)
                    .with("cuppings.csv", "cupping,tasted on,cupper,batch,body", "a,2025-03-08,Ana,1,5")
                    .open();
            assertEquals(high.endsWith("1"), says(logbook, "scale.body", "setting left out"));
        }
    }

    @Test
    void whatIsNoFileIsRefusedInWordsAndNeverWaitedFor() throws Exception {
        Path outside = Files.createDirectories(temporary.resolve("outside"));
        Files.writeString(outside.resolve("lots.csv"), "lot\nkela\n");
        Path inside = Files.createDirectories(temporary.resolve("logbook/curves"));
        Path logbookFolder = inside.getParent();
        for (String pipe : List.of("batches.csv", "logbook.properties", "curves/layout.properties", "curves/9.csv")) {
            Process made =
                    new ProcessBuilder("mkfifo", logbookFolder.resolve(pipe).toString()).start();
            assertEquals(0, made.waitFor(), "this test needs mkfifo");
        }
        Files.createSymbolicLink(logbookFolder.resolve("machines.csv"), Path.of("/dev/zero"));
        Files.createSymbolicLink(logbookFolder.resolve("lots.csv"), outside.resolve("lots.csv"));
        Files.createSymbolicLink(logbookFolder.resolve("upkeep.csv"), temporary.resolve("gone.csv"));
        Files.writeString(logbookFolder.resolve("real.txt"), "cupping\nspring\n");
        Files.createSymbolicLink(logbookFolder.resolve("sessions.csv"), logbookFolder.resolve("real.txt"));
        Files.createDirectory(logbookFolder.resolve("blends.csv"));
        Files.writeString(inside.resolve("1.csv"), WrittenFolder.CURVE);
        Logbook logbook = assertTimeoutPreemptively(Duration.ofSeconds(10), () -> Logbook.open(logbookFolder));
        String pipe = "no file but a pipe or a device";
        assertSays(logbook, "batches.csv: ", pipe, "file left out");
        assertSays(logbook, "logbook.properties: ", pipe, "settings left out");
        assertSays(logbook, "curves/layout.properties: ", pipe, "settings left out");
        assertSays(logbook, "curves/9.csv: ", pipe, "file left out");
        assertSays(logbook, "machines.csv: ", "a link out of the folder, which is not followed", "file left out");
        assertSays(logbook, "lots.csv: ", "a link out of the folder, which is not followed", "file left out");
        assertSays(logbook, "upkeep.csv: ", "a link that leads nowhere", "file left out");
        assertSays(logbook, "blends.csv: ", "a folder of that name", "file left out");
        assertTrue(logbook.lots().isEmpty());
        assertTrue(logbook.cupping("spring").isPresent(), "a link inside the folder is followed");
        assertTrue(logbook.batch("1").beanTemperature().isPresent());
    }

    @Test
    void aColumnWithoutAHeadingIsAProblemWithItsValuesCounted() throws IOException {
        Logbook logbook = folder().with(
                        "batches.csv",
                        "batch,roasted at,,",
                        "1,2025-03-04T09:15,4.2,",
                        "2,2025-03-04T09:55,4.3,",
                        "3,2025-03-04T10:55,,")
                .with("curves/1.csv", "time [s],,bean temperature [°C],", "0,7,200,", "1,,201,", "2,8,202,")
                .open();
        assertSays(logbook, "batches.csv", "line 1", "'column 3'", "2 values under no heading", "column left out");
        assertSays(logbook, "curves/1.csv", "'column 2'", "2 values under no heading", "column left out");
        assertFalse(says(logbook, "column 4"), "a column in which nothing stands is none");
    }

    /** Written as 0 and 1 it would otherwise be an attribute that somebody scored. */
    @Test
    void whatBelongsToTheWholeCuppingIsNamedAmongTheCups() throws IOException {
        Logbook logbook = folder().with("batches.csv", "batch,roasted at", "1,2025-03-04T09:15")
                .with(
                        "cuppings.csv",
                        "cupping,tasted on,cupper,batch,Blind,scored-before discussion,body",
                        "spring,2025-03-08,Ana,1,1,yes,6")
                .open();
        assertSays(
                logbook,
                "cuppings.csv",
                "line 1",
                "'Blind'",
                "1 value in a column that this file has no place for",
                "'blind' in sessions.csv, a row for each cupping",
                "kept as an extra, not used: write it there");
        assertSays(logbook, "cuppings.csv", "'scored-before discussion'", "in sessions.csv");
        assertEquals(List.of("body"), List.copyOf(logbook.attributes()));
    }

    @Test
    void anEmptyColumnOfTheWholeCuppingIsNotNamed() throws IOException {
        Logbook logbook = folder().with("batches.csv", "batch,roasted at", "1,2025-03-04T09:15")
                .with("cuppings.csv", "cupping,tasted on,cupper,batch,blind,body", "spring,2025-03-08,Ana,1,,6")
                .open();
        assertFalse(says(logbook, "sessions.csv, a row for each cupping"));
    }

    @Test
    void theSameHeadingTwiceAndAColumnWithoutAPlaceAreProblems() throws IOException {
        Logbook logbook = folder().with("batches.csv", "batch,roasted at,chaff [g],chaff [g]", "1,2025-03-04T09:15,,35")
                .with("curves/1.csv", "time [s],bean temperature [°C],x,x", "0,200,1,2", "1,201,1,2", "2,202,1,2")
                .with("upkeep.csv", "machine,done on,what,cost", "drum,2025-03-04,drum cleaned,12")
                .with("lot-checks.csv", "lot,measured on,by", "kela,2025-03-04,Ana")
                .with("blends.csv", "blend,lot,by", "house,kela,Ana", "house,low,")
                .open();
        assertSays(logbook, "batches.csv", "'chaff [g]'", "the same column twice", "the first one read");
        assertFalse(logbook.batch("1").extras().containsKey("chaff [g]"));
        assertSays(logbook, "curves/1.csv", "'x'", "the same column twice", "the first one read");
        assertSays(logbook, "upkeep.csv", "'cost'", "1 value in a column that this file has no place for", "left out");
        assertSays(logbook, "lot-checks.csv", "'by'", "1 value in a column that this file has no place for");
        assertSays(logbook, "blends.csv", "'by'", "1 value in a column that this file has no place for");
    }

    private static double lowest(Bounds.Weighed what) {
        return Math.round(what.in(MassUnit.GRAM).low());
    }

    private static double most(Bounds.Weighed what) {
        return Math.round(what.in(MassUnit.KILOGRAM).high());
    }

    @ParameterizedTest
    @CsvSource({
        "capacity [kg], 10000, 10001",
        "largest batch [kg], 500, 10001",
        "smallest batch [g], 1, 0.9",
    })
    void whatAMachineHoldsHasAWiderBound(String heading, String within, String beyond) throws IOException {
        for (String number : List.of(within, beyond)) {
            Logbook logbook = folder().with("batches.csv", "batch,roasted at", "1,2025-03-04T09:15")
                    .with("machines.csv", "machine," + heading, "drum," + number)
                    .open();
            assertEquals(
                    number.equals(beyond),
                    says(logbook, heading, "'" + number + "'", "one gram or more, up to 10,000 kg"),
                    logbook.problems().text());
        }
    }

    @Test
    void thePageOfTheFormatStatesTheBounds() throws IOException {
        String page =
                Files.readString(Path.of("..", "docs", "logbook-format.md")).replaceAll("\\s+", " ");
        for (String row : List.of(
                "a name, or a heading | %,d letters".formatted(Bounds.LONGEST_NAME),
                "any other text | %,d letters".formatted(Bounds.LONGEST_CELL),
                "a row | %,d characters".formatted(BoundedReader.LONGEST_ROW),
                "a table | %,d columns".formatted(Bounds.MOST_COLUMNS),
                "a file of settings | %,d letters".formatted(Bounds.LONGEST_SETTINGS),
                "a key of a setting | %,d letters".formatted(Bounds.LONGEST_KEY),
                "a value of a setting | %,d letters".formatted(Bounds.LONGEST_SETTING),
                "a reading of a probe | from %.0f to %,.0f °C"
                        .formatted(Bounds.COLDEST_READING, Bounds.HOTTEST_READING),
                "gas, heater power, airflow, drum speed, colour, a score | from %,.0f to %,.0f"
                        .formatted(-Bounds.LARGEST_ON_A_SCALE, Bounds.LARGEST_ON_A_SCALE),
                "a green mass | from %.0f g to %.0f kg"
                        .formatted(lowest(Bounds.Weighed.GREEN), most(Bounds.Weighed.GREEN)),
                "a roasted mass | from %.0f g to %.0f kg"
                        .formatted(lowest(Bounds.Weighed.ROASTED), most(Bounds.Weighed.ROASTED)),
                "what a machine holds | from one gram to %,.0f kg".formatted(most(Bounds.Weighed.MACHINE)),
                "the time of a reading | within %,.0f s of 0".formatted(Bounds.LATEST_SECONDS),
                "first to last reading of a curve | %,.0f s".formatted(Bounds.LONGEST_RECORDING),
                "readings of a curve | %,d are read, and %,d of each quantity kept"
                        .formatted(CurveFile.MOST_READINGS, Bounds.MOST_READINGS_KEPT),
                "a number of any other column | %.0f digits before the decimal point"
                        .formatted(Math.log10(Bounds.LARGEST_NUMBER)))) {
            assertTrue(page.contains("| " + row.formatted(Locale.ROOT)), row);
        }
    }
}
