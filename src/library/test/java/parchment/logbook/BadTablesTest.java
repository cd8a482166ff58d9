package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.io.StringReader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.logbook.written.Problem;
import parchment.quantity.Elapsed;

class BadTablesTest {
    @TempDir
    Path temporary;

    private static final String HEAD = "batch,roasted at";
    private static final String ONE = "1,2025-03-04T09:15";

    private Logbook batches(String... lines) throws IOException {
        return new WrittenFolder(temporary).with("batches.csv", lines).open();
    }

    private static void says(Logbook logbook, String... parts) {
        assertTrue(
                logbook.problems().list().stream()
                        .map(Problem::toString)
                        .anyMatch(line -> List.of(parts).stream().allMatch(line::contains)),
                () -> "no problem with " + List.of(parts) + " in\n"
                        + logbook.problems().text());
    }

    @Test
    void saysThatAFileIsEmpty() throws IOException {
        says(new WrittenFolder(temporary).withText("batches.csv", "").open(), "batches.csv: found an empty file");
    }

    @Test
    void saysThatAFileHasOnlyAHeading() throws IOException {
        says(batches(HEAD), "found a heading and no rows");
    }

    @Test
    void readsPastAByteOrderMarkAndWindowsLineEnds() throws IOException {
        Logbook logbook = new WrittenFolder(temporary)
                .withText("batches.csv", "\uFEFF" + HEAD + "\r\n" + ONE + "\r\n\r\n")
                .withText("curves/1.csv", "\uFEFFtime [s],bean temperature [°C]\r\n0,200\r\n1,201\r\n2,202\r\n")
                .open();
        assertEquals(0, logbook.problems().size(), logbook.problems().text());
        assertEquals(3, logbook.batch("1").beanTemperature().orElseThrow().size());
    }

    @Test
    void readsUtf16AndOldEncodingsOfTheDegreeSign() throws IOException {
        Files.write(
                temporary.resolve("batches.csv"),
                ("\uFEFF" + HEAD + "\tcharge temperature [°C]\n1\t2025-03-04T09:15\t200\n".replace(",", "\t"))
                        .replace(',', '\t')
                        .getBytes(StandardCharsets.UTF_16LE));
        Files.createDirectory(temporary.resolve("curves"));
        Files.write(
                temporary.resolve("curves/1.csv"),
                "time [s],bean temperature [°C]\n0,200\n1,201\n".getBytes(Charset.forName("windows-1252")));
        Logbook logbook = Logbook.open(temporary);
        assertEquals(
                200,
                logbook.batch("1")
                        .conditions()
                        .chargeTemperature()
                        .orElseThrow()
                        .celsius());
        assertEquals(2, logbook.batch("1").beanTemperature().orElseThrow().size());
    }

    @Test
    void setsASecondBatchOfTheSameNameAside() throws IOException {
        Logbook logbook = batches(HEAD + ",lot", ONE + ",a", ONE + ",b");
        assertEquals(Optional.of("a"), logbook.batch("1").lot());
        says(logbook, "line 3", "the batch '1' again", "line 2", "the first one kept");
    }

    @Test
    void questionsTimesThatASpreadsheetChanged() throws IOException {
        Logbook logbook = batches(HEAD + ",drop [min:s]", ONE + ",9:19:00");
        assertTrue(logbook.batch("1").writtenMark(MarkKind.DROP).isEmpty());
        says(logbook, "line 2", "drop [min:s]", "'9:19:00'", "spreadsheet.times=min:s", "treated as missing");
        new WrittenFolder(temporary).with("logbook.properties", "spreadsheet.times=min:s");
        assertEquals(
                Optional.of(Elapsed.of(9, 19)),
                Logbook.open(temporary).batch("1").writtenMark(MarkKind.DROP));
    }

    @Test
    void questionsABatchNumberThatLostItsZeros() throws IOException {
        WrittenFolder folder = new WrittenFolder(temporary)
                .with("batches.csv", HEAD, "7,2025-03-04T09:15")
                .withText("curves/007.csv", WrittenFolder.CURVE);
        Logbook logbook = folder.open();
        assertEquals(2, logbook.batches().size());
        assertTrue(logbook.batch("7").beanTemperature().isEmpty());
        says(logbook, "curves/007.csv", "is it '7'?", "batch.digits=3");
        folder.with("logbook.properties", "batch.digits=3");
        assertTrue(folder.open().batch("007").beanTemperature().isPresent());
        assertEquals(1, folder.open().batches().size());
    }

    @Test
    void questionsADateThatCouldBeTwoAndNeverGuesses() throws IOException {
        WrittenFolder folder = new WrittenFolder(temporary).with("batches.csv", HEAD, "1,3/4/24 9:15", "2,25/4/2024");
        Logbook logbook = folder.open();
        assertTrue(logbook.batch("1").roastedAt().isEmpty());
        assertTrue(logbook.batch("2").roastedAt().isEmpty());
        says(logbook, "'3/4/24 9:15'", "which part is the day?", "date.order");
        folder.with("logbook.properties", "date.order=day/month/year", "time.zone=UTC");
        assertEquals(
                "2024-04-03T09:15Z",
                folder.open().batch("1").roastedAt().orElseThrow().toString());
        folder.with("logbook.properties", "date.order=month/day/year", "time.zone=UTC");
        assertEquals(
                "2024-03-04T09:15Z",
                folder.open().batch("1").roastedAt().orElseThrow().toString());
        assertTrue(folder.open().batch("2").roastedAt().isEmpty(), "there is no month 25");
    }

    @Test
    void readsADateWithoutATimeAndSaysSo() throws IOException {
        Logbook logbook = batches(HEAD, "b,2025-03-04", "a,2025-03-04", "z,2025-03-03", "y,2025-02-30", "x,0025-03-04");
        assertEquals(
                List.of("z", "b", "a", "y", "x"),
                logbook.batches().stream().map(Batch::name).toList());
        says(logbook, "line 2", "a date and a time", "the day is used");
        says(logbook, "'2025-02-30'", "ISO 8601");
        says(logbook, "'0025-03-04'", "ISO 8601");
    }

    @Test
    void questionsAnHourThatTheClocksSkipped() throws IOException {
        new WrittenFolder(temporary).with("logbook.properties", "time.zone=Europe/Berlin");
        says(batches(HEAD, "1,2025-03-30T02:30"), "clocks were changed");
    }

    @Test
    void keepsMarksOutOfOrderAndQuestionsTheOneBeforeTheDrop() throws IOException {
        Logbook logbook =
                batches(HEAD + ",yellowing [min:s],first crack start [min:s],drop [min:s]", ONE + ",4:30,7:30,7:28");
        assertEquals(Optional.of(Elapsed.of(4, 30)), logbook.batch("1").writtenMark(MarkKind.YELLOWING));
        assertEquals(Optional.of(Elapsed.of(7, 30)), logbook.batch("1").writtenMark(MarkKind.FIRST_CRACK_START));
        assertEquals(Optional.of(Elapsed.of(7, 28)), logbook.batch("1").writtenMark(MarkKind.DROP));
        assertEquals(
                List.of(
                        "batches.csv, line 2, column 'first crack start [min:s]': found first crack start at 7:30 and drop at 7:28;"
                                + " expected first crack start before drop; both kept; first crack start is questioned: check it."),
                logbook.problems().list().stream()
                        .map(Problem::toString)
                        .filter(line -> line.contains("crack"))
                        .toList());
    }

    @Test
    void questionsBothOfTwoMarksBeforeTheDropThatAreOutOfOrder() throws IOException {
        Logbook logbook =
                batches(HEAD + ",yellowing [min:s],first crack start [min:s],drop [min:s]", ONE + ",8:30,8:10,9:19");
        assertEquals(Optional.of(Elapsed.of(8, 30)), logbook.batch("1").writtenMark(MarkKind.YELLOWING));
        assertEquals(Optional.of(Elapsed.of(8, 10)), logbook.batch("1").writtenMark(MarkKind.FIRST_CRACK_START));
        says(
                logbook,
                "found yellowing at 8:30 and first crack start at 8:10; expected yellowing before first crack start; both kept and"
                        + " questioned: check them.");
    }

    @Test
    void marksAtTheSameSecondAndSecondCrackBeforeTheEndOfTheFirstAreNoProblem() throws IOException {
        Logbook logbook = batches(
                HEAD + ",first crack start [min:s],first crack end [min:s],second crack start [min:s],drop [min:s]",
                ONE + ",8:10,9:10,9:00,9:10");
        assertEquals(
                0,
                logbook.problems().list().stream()
                        .filter(problem -> problem.column().contains("crack"))
                        .count(),
                logbook.problems().text());
    }

    @Test
    void takesARoastedMassDownToSixTenthsOfTheGreenMass() throws IOException {
        Logbook logbook = batches(
                HEAD + ",green mass [kg],roasted mass [kg]",
                ONE + ",5,3.01",
                "2,2025-03-04T10:15,5,2.99",
                "3,2025-03-04T11:15,5,5",
                "4,2025-03-04T12:15,5,5.01");
        assertTrue(logbook.batch("1").conditions().roastedMass().isPresent());
        assertTrue(logbook.batch("2").conditions().roastedMass().isEmpty());
        assertTrue(logbook.batch("3").conditions().roastedMass().isPresent());
        assertTrue(logbook.batch("4").conditions().roastedMass().isEmpty());
        says(logbook, "line 3", "'2.99'", "more than 60 % of the green mass, 5", "value treated as missing");
        says(logbook, "line 5", "'5.01'", "less than the green mass, 5", "value treated as missing");
    }

    @Test
    void treatsARoastedMassAboveTheGreenMassAsMissing() throws IOException {
        Logbook logbook = batches(
                HEAD + ",green mass [kg],roasted mass [kg]",
                ONE + ",5,5.2",
                "2,2025-03-04T10:00,5,1.5",
                "3,2025-03-04T11:00,0,4",
                "4,2025-03-04T12:00,-5,4");
        logbook.batches()
                .forEach(batch -> assertTrue(batch.conditions().massLoss().isEmpty(), batch.name()));
        says(logbook, "line 2", "roasted mass", "'5.2'", "less than the green mass");
        says(logbook, "line 3", "more than 60 %");
        says(logbook, "line 4", "a batch of green coffee from 10 g to 300 kg");
    }

    @Test
    void treatsScoresOffTheirScaleAndWordsAmongScoresAsMissing() throws IOException {
        Logbook logbook = new WrittenFolder(temporary)
                .with("logbook.properties", "scale.after-taste=0..10", "scale.bodi=0..5")
                .with("batches.csv", HEAD, ONE)
                .with(
                        "cuppings.csv",
                        "cupping,tasted on,cupper,batch,after taste,body",
                        "c,2025-03-06,Ana,1,11,3",
                        "c,2025-03-06,Ben,1,7,three",
                        "c,2025-03-06,Eva,1,8,\"3,5\"",
                        "c,2025-03-06,Uwe,1,9,4",
                        "c,2025-03-06,Ida,1,9,4")
                .open();
        assertTrue(Double.isNaN(logbook.cups().get(0).score("after taste")));
        assertTrue(Double.isNaN(logbook.cups().get(1).score("body")));
        assertTrue(Double.isNaN(logbook.cups().get(2).score("body")));
        says(logbook, "line 2", "after taste", "'11'", "from 0.0 to 10.0");
        says(logbook, "line 3", "'three'", "a number");
        says(logbook, "scale.bodi", "Did you mean 'body'?");
    }

    @Test
    void keepsWhatLeadsNowhereAndListsIt() throws IOException {
        Logbook logbook = new WrittenFolder(temporary)
                .with("batches.csv", HEAD + ",lot,machine", ONE + ",kella,drum", "2,2025-03-04T10:00,,")
                .with("lots.csv", "lot", "kela")
                .with("machines.csv", "machine", "drumm")
                .with("upkeep.csv", "machine,done on,what", "drun,2025-03-01,burner cleaned")
                .with(
                        "cuppings.csv",
                        "cupping,tasted on,cupper,batch,body",
                        "c,2025-03-06,Ana,unknown,3",
                        "c,2025-03-01,Ana,1,3")
                .with("sessions.csv", "cupping,blind", "d,maybe")
                .with("blends.csv", "blend,lot,share [%]", "house,kela,60", "house,other,30")
                .withText("curves/extra.csv", WrittenFolder.CURVE)
                .open();
        assertEquals(2, logbook.cups().size());
        says(logbook, "batches.csv", "'kella'", "Did you mean 'kela'?");
        says(logbook, "batches.csv", "machine 'drum'", "Did you mean 'drumm'?");
        says(logbook, "upkeep.csv", "'drun'");
        says(logbook, "cuppings.csv, line 2", "'unknown'", "joined to no batch");
        says(logbook, "cuppings.csv, line 3", "roasted later");
        says(logbook, "sessions.csv", "'maybe'", "'yes' or 'no'");
        says(logbook, "blends.csv", "90 %");
        says(logbook, "blends.csv", "'other'");
        says(logbook, "curves/extra.csv", "a curve of no batch");
        says(logbook, "batches.csv, line 3", "the batch '2' without a curve", "'curves/2.csv'");
    }

    @Test
    void aSettingThatIsWrittenTwiceIsAProblemAndTheFirstIsRead() throws IOException {
        new WrittenFolder(temporary)
                .with(
                        "logbook.properties",
                        "Name=First",
                        "name=Second",
                        "batch.digits=3",
                        "batch.digits=4",
                        "scale.after-taste=0..10",
                        "scale.After_taste=0..5",
                        "crack.habit=first pop");
        Logbook logbook = batches(HEAD, ONE);
        assertEquals("First", logbook.name());
        says(logbook, "logbook.properties", "the setting 'name' again, as 'Second'", "the first one read");
        says(logbook, "the setting 'batch.digits' again, as '4'");
        says(logbook, "the setting 'scale.After_taste' again, as '0..5'");
        assertEquals(
                3,
                logbook.problems().in("logbook.properties").list().stream()
                        .filter(problem -> problem.done().equals("the first one read"))
                        .count());
        assertEquals(List.of("001"), logbook.batches().stream().map(Batch::name).toList());
    }

    @ParameterizedTest
    @ValueSource(ints = {100, 101, 137})
    void ofCurvesAndRowsWithoutTheOtherTheFirstHundredAreNamedAndTheRestCounted(int number) throws IOException {
        StringBuilder rows = new StringBuilder(HEAD).append('\n');
        WrittenFolder folder = new WrittenFolder(temporary);
        for (int i = 1; i <= number; i++) {
            rows.append('r').append(i).append(",2025-03-04T09:15\n");
            folder.withText("curves/c" + i + ".csv", "time [s]\n");
        }
        Logbook logbook = folder.withText("batches.csv", rows.toString()).open();
        for (String done : List.of("kept as a batch of which only the curve is known", "kept without a curve")) {
            List<Problem> alike = logbook.problems().list().stream()
                    .filter(problem -> problem.done().equals(done))
                    .toList();
            assertEquals(Math.min(number, 101), alike.size(), done);
            assertEquals(
                    number > 100
                            ? number - 100 + " more like the 100 before"
                            : alike.get(99).found(),
                    alike.get(alike.size() - 1).found());
        }
    }

    @Test
    void saysWhichColumnIsMissingAndWhichWasMeant() throws IOException {
        says(batches("bacth,roasted at", "1,2025-03-04T09:15"), "no column 'batch'", "Did you mean 'bacth'?");
        says(
                batches(HEAD + ",first crack strat [min:s]", ONE + ",8:00"),
                "column 'first crack strat [min:s]': found a column that is not known; expected 'first crack start', if that is"
                        + " meant; kept as an extra.");
        says(batches(HEAD + ",drop [minutes]", ONE + ",8"), "the unit 'minutes'", "[min:s]", "kept as an extra");
        says(batches(HEAD + ",drop", ONE + ",8"), "found no unit", "kept as an extra");
        says(batches(HEAD + ",drop (min),drop [min]", ONE + ",8,9"), "square brackets");
        says(batches(HEAD + ",drop (min),drop [min]", ONE + ",8,9"), "the same column twice");
        new WrittenFolder(temporary).with("batchs.csv", HEAD, ONE);
        says(Logbook.open(temporary), "'batchs.csv'", "Did you mean 'batches.csv'?");
    }

    @Test
    void skipsRowsThatAreTooWideOrNameNothing() throws IOException {
        Logbook logbook = batches(HEAD + ",note", "1,2025-03-04T09:15,good, sweet", ",2025-03-04T09:15,x", "3", ",,");
        assertEquals(List.of("3"), logbook.batches().stream().map(Batch::name).toList());
        says(logbook, "line 2", "4 values", "row skipped");
        says(logbook, "line 3", "the batch", "row skipped");
        says(logbook, "line 4", "1 value", "treated as missing");
        says(logbook, "line 4", "kept without a date");
    }

    @Test
    void tellsTheLineWhereANoteRunsOverSeveral() throws IOException {
        Logbook logbook = batches(HEAD + ",note,drop [s]", ONE + ",\"two\nlines\",500", "2,2025-03-04T10:00,,never");
        assertEquals(Optional.of("two\nlines"), logbook.batch("1").label(Batch.Label.NOTE));
        says(logbook, "batches.csv, line 4", "'never'");
    }

    @Test
    void stopsAtAQuotationMarkThatIsNeverClosed() throws IOException {
        Logbook logbook =
                batches(HEAD + ",note", ONE + ",good", "2,2025-03-04T10:00,\"never closed", "3,2025-03-04T11:00,x");
        assertEquals(List.of("1"), logbook.batches().stream().map(Batch::name).toList());
        says(logbook, "line 3", "a quotation mark that is never closed", "all after it left out");
    }

    @Test
    void saysThatAFileCannotBeRead() throws IOException {
        Files.createDirectories(temporary.resolve("lots.csv"));
        Files.createDirectories(temporary.resolve("curves/2.csv"));
        Files.createSymbolicLink(temporary.resolve("curves/1.csv"), temporary.resolve("gone.csv"));
        Logbook logbook = batches(HEAD, ONE);
        says(logbook, "lots.csv", "a folder of that name", "file left out");
        says(logbook, "curves/1.csv", "no file (a link that leads nowhere?)");
        says(logbook, "curves/2.csv", "a folder of that name", "file left out");
        assertFalse(
                logbook.problems().text().contains("Exception"),
                logbook.problems().text());
    }

    @Test
    void showsHarmfulNamesHarmlessly() throws IOException {
        String name = "<script>alert('x')</script>";
        String turned = "\u202Eabc\u0007";
        String hebrew = "קפה";
        Logbook logbook = batches(
                HEAD + ",lot,note",
                "\"" + name + "\",2025-03-04T09:15,☕ \"\"bean\"\" lot,x",
                "\"" + name + "\",2025-03-04T09:15,,x",
                "a,2025-03-04T09:15," + hebrew + ",\"one, \"\"two\"\"\"",
                turned + ",never," + turned + ",x");
        assertEquals(Optional.of("one, \"two\""), logbook.batch("a").label(Batch.Label.NOTE));
        assertEquals(Optional.of(hebrew), logbook.batch("a").lot());
        String html = logbook.html().orElseThrow() + logbook.problems().html().orElseThrow();
        assertFalse(html.contains("<script"), html);
        assertFalse(html.contains("\u0007"));
        assertTrue(html.contains("☕"), html);
        says(logbook, "the batch '" + name + "' again");
        assertFalse(logbook.problems().text().contains("\u202E"));
    }

    @Test
    void readsNoFileOutsideTheCurvesFolderWhateverABatchIsCalled() throws IOException {
        WrittenFolder folder = new WrittenFolder(temporary.resolve("in"));
        new WrittenFolder(temporary).withText("secret.csv", WrittenFolder.CURVE);
        Path secret = temporary.resolve("secret.csv").toAbsolutePath();
        String absolute = secret.toString().replace(".csv", "");
        folder.with(
                        "batches.csv",
                        HEAD,
                        "../../secret,2025-03-04T09:15",
                        absolute + ",2025-03-04T09:15",
                        "a/b,2025-03-04T09:15",
                        "link,2025-03-04T09:15")
                .withText("curves/a%2Fb.csv", WrittenFolder.CURVE)
                .withText("curves/" + CurveNames.fileName("../../secret"), WrittenFolder.curve("°C", 0, 100, 50, 200));
        Files.createSymbolicLink(folder.path().resolve("curves/link.csv"), secret);
        Logbook logbook = folder.open();
        assertEquals(
                3, logbook.batch("../../secret").beanTemperature().orElseThrow().size(), "the file inside the folder");
        assertTrue(logbook.batch(absolute).beanTemperature().isEmpty());
        assertTrue(logbook.batch("a/b").beanTemperature().isPresent());
        assertTrue(logbook.batch("link").beanTemperature().isEmpty());
        says(logbook, "a link out of the folder, 'link.csv'");
    }

    @Test
    void questionsSettingsItDoesNotKnow() throws IOException {
        new WrittenFolder(temporary)
                .with(
                        "logbook.properties",
                        "time.zome=UTC",
                        "time.zone=Europe/Berlim",
                        "crack.habit=loud",
                        "scale.body=high",
                        "missing.readings=x");
        Logbook logbook = batches(HEAD, ONE);
        says(logbook, "'time.zome'", "Did you mean 'time.zone'?");
        says(logbook, "'Europe/Berlim'", "Did you mean 'Europe/Berlin'?");
        says(logbook, "'loud'", "'first pop' or 'steady popping'");
        says(logbook, "'high'", "scale.acidity=0..10");
        says(logbook, "'x'", "numbers with commas");
    }

    @Test
    void oneSettingThatCannotBeReadTakesNoOtherWithIt() throws IOException {
        Logbook logbook = new WrittenFolder(temporary)
                .with(
                        "logbook.properties",
                        "# From C:\\users",
                        "provenance=invented machine",
                        "name=\\u00zz",
                        "scale.body=C:\\\\users",
                        "",
                        "missing.readings=C:\\",
                        "  \\users",
                        "batch.digits=\\u0033",
                        "time.zone=\\u12")
                .with("batches.csv", HEAD, ONE)
                .open();
        assertEquals(Logbook.Provenance.INVENTED, logbook.provenance());
        assertEquals("001", logbook.batches().get(0).name());
        says(
                logbook,
                "logbook.properties, line 3: found 'name=\\u00zz', with a backslash and 'u' that are no character");
        says(logbook, "column 'scale.body': found 'C:\\users'");
        says(logbook, "logbook.properties, line 6: found 'missing.readings=C:\\   \\users'");
        says(
                logbook,
                "logbook.properties, line 9: found 'time.zone=\\u12'",
                "write a backslash twice",
                "setting left out");
    }

    /** The settings that are left are those that Java itself reads, line for line. */
    @Test
    void takesOutWhatJavaCannotReadAndNothingElse() throws IOException {
        Random random = new Random(20250304);
        String signs = "\\\\\\uu0aF=#! x\n\r";
        for (int i = 0; i < 20_000; i++) {
            String text = random.ints(random.nextInt(1, 14), 0, signs.length())
                    .mapToObj(at -> signs.substring(at, at + 1))
                    .collect(Collectors.joining("", "", "\nend=1"));
            ProblemLog problems = new ProblemLog("logbook.properties");
            Properties read = new Properties();
            read.load(new StringReader(SettingLines.readable(new StringReader(text), problems)));
            try {
                Properties whole = new Properties();
                whole.load(new StringReader(text));
                if (problems.toList().isEmpty()) {
                    assertEquals(whole, read, text);
                }
            } catch (IllegalArgumentException e) {
                assertFalse(problems.toList().isEmpty(), text);
            }
        }
    }

    @Test
    void countsProblemsThatAreAlikeRatherThanListingAMillion() throws IOException {
        StringBuilder text = new StringBuilder(HEAD + ",drop [s]\n");
        for (int i = 0; i < 5000; i++) {
            text.append(i).append(",2025-03-04T09:15,never\n");
        }
        Logbook logbook = new WrittenFolder(temporary)
                .withText("batches.csv", text.toString())
                .open();
        assertEquals(102, logbook.problems().size(), "100 values, a count of the others, and no folder of curves");
        says(logbook, "4900 more like the 100 before");
        assertEquals(2, logbook.problems().kinds().rowCount());
    }

    @Test
    void doesNotFillTheMemoryWithATableOfAGigabyte() throws IOException {
        new WrittenFolder(temporary).with("batches.csv", HEAD, ONE);
        try (RandomAccessFile file =
                new RandomAccessFile(temporary.resolve("batches.csv").toFile(), "rw")) {
            file.seek(file.length());
            file.write('"');
            file.setLength(1L << 30); // A gigabyte of zeros that takes no place on the disk.
        }
        Logbook logbook = Logbook.open(temporary);
        assertEquals(1, logbook.batches().size());
        says(logbook, "batches.csv", "line 3", "more than 1048576 characters", "left out");
    }
}
