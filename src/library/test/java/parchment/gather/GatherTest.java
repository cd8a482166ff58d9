package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.LogbookOpenTest;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.WrittenFolder;
import parchment.quantity.MassUnit;
import parchment.quantity.Unit;

class GatherTest {
    @TempDir
    Path temporary;

    private Path old() {
        return temporary.resolve("old");
    }

    private Path made() {
        return temporary.resolve("made");
    }

    /** Takes every proposal, and says what cannot be proposed: the order of the laptop's dates. */
    private static Optional<String> person(String question) {
        return Optional.of(question.contains("None of them shows it") ? "day/month/year" : "");
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void makesALogbookOfSixtyStrangeFilesThatAgreesWithTheTruth(long seed) throws Exception {
        Map<String, StrangeMess.Truth> truths = StrangeMess.write(old(), seed);
        try (Stream<Path> files = Files.walk(old())) {
            assertEquals(60, files.filter(Files::isRegularFile).count());
        }
        Map<String, String> before = LogbookOpenTest.state(old());
        StringBuilder out = new StringBuilder();
        // The list shows month/day/year, and the laptop's files, which show nothing, are of another hand.
        new WrittenFolder(temporary).with("answers.properties", "style.d.date.order=day/month/year");
        Optional<Path> answers = Optional.of(temporary.resolve("answers.properties"));
        assertEquals(0, Gather.run(old(), made(), answers, Gather.NOBODY, out), out.toString());
        assertEquals(before, LogbookOpenTest.state(old()), "the old folder is as it was");

        Logbook logbook = Logbook.open(made());
        assertEquals(truths.size() + 1, logbook.batches().size(), "one batch is in the sheet alone\n" + out);
        for (StrangeMess.Truth truth : truths.values()) {
            agrees(truth, logbook.batch(truth.name()));
        }
        for (int i = 1; i <= 12; i++) {
            StrangeMess.Truth truth = truths.get(Integer.toString(i));
            Batch batch = logbook.batch(truth.name());
            assertEquals(
                    truth.greenKilograms(),
                    batch.conditions().greenMass().orElseThrow().in(MassUnit.KILOGRAM),
                    0.05);
            assertEquals(0.15, batch.conditions().massLoss().orElseThrow(), 0.01);
            assertEquals(
                    (int) truth.crack(),
                    batch.writtenMark(MarkKind.FIRST_CRACK_START).orElseThrow().seconds());
            assertEquals(
                    (int) truth.drop(),
                    batch.writtenMark(MarkKind.DROP).orElseThrow().seconds());
            assertEquals(Optional.of(i % 2 == 0 ? "Kela, washed" : "Harbour blend"), batch.lot());
            Batch typed = logbook.batch(String.format("log_%02d", i));
            StrangeMess.Truth typedTruth = truths.get(typed.name());
            assertEquals(
                    typedTruth.crack(),
                    typed.writtenMark(MarkKind.FIRST_CRACK_START).orElseThrow().seconds(),
                    1);
            assertEquals(
                    typedTruth.drop(),
                    typed.writtenMark(MarkKind.DROP).orElseThrow().seconds(),
                    1);
            assertEquals(Optional.of("5:00 smoke"), typed.label(Batch.Label.NOTE));
        }
        for (String day : List.of("day 20250501-", "day 20250502-")) {
            for (int k = 1; k <= 5; k++) {
                Batch batch = logbook.batch(day + k);
                assertEquals(
                        truths.get(day + k).drop(),
                        batch.writtenMark(MarkKind.DROP).orElseThrow().seconds(),
                        12,
                        day + k);
            }
        }
        assertEquals(
                Unit.labelled("mbar"),
                logbook.batch("r1").curve(Quantity.GAS).orElseThrow().unit());
        assertTrue(logbook.batch("13").beanTemperature().isEmpty());
        assertEquals(Optional.of("recorder was off"), logbook.batch("13").label(Batch.Label.NOTE));
        assertTrue(out.toString().contains("How to go on"), out.toString());
    }

    /** The charge within 12 s, and every reading that both have within a degree and the noise that was put on it. */
    private static void agrees(StrangeMess.Truth truth, Batch batch) {
        Curve beans = batch.beanTemperature().orElseThrow(() -> new AssertionError(truth.name() + " has no curve"));
        double best = Double.POSITIVE_INFINITY;
        double bestShift = 0;
        for (double shift = -15; shift <= 15; shift++) {
            double sum = 0;
            int count = 0;
            for (int i = 0; i < beans.size(); i++) {
                int second = (int) Math.round(beans.secondsAt(i) + 90 + shift);
                if (second >= 90 && second < 90 + truth.drop()) {
                    sum += Math.abs(beans.valueAt(i) - truth.beans()[second]);
                    count++;
                }
            }
            if (count > 100 && sum / count < best) {
                best = sum / count;
                bestShift = shift;
            }
        }
        assertTrue(best < 0.6, truth.name() + ": mean difference of " + best + " °C at a shift of " + bestShift + " s");
        assertTrue(Math.abs(bestShift) <= 12, truth.name() + ": the charge is " + bestShift + " s off");
        if (!truth.name().startsWith("x") && !truth.name().startsWith("log_")) {
            double off = java.time.Duration.between(
                            truth.chargedAt(), batch.roastedAt().orElseThrow().toLocalDateTime())
                    .toSeconds();
            assertTrue(Math.abs(off) <= 12, truth.name() + ": charged " + off + " s off");
        }
    }

    @Test
    void looksAndProposesWithoutWriting() throws Exception {
        StrangeMess.write(old(), 2);
        Map<String, String> before = LogbookOpenTest.state(temporary);
        StringBuilder out = new StringBuilder();
        assertEquals(0, Gather.look(old(), Optional.empty(), out), out.toString());
        assertEquals(before, LogbookOpenTest.state(temporary));
        String text = out.toString();
        assertTrue(text.contains("Nothing was written"), text);
        assertTrue(text.contains("bean temperature [°F]"), text);
        assertTrue(text.contains("no bean stands that many °C"), text);
        assertTrue(text.contains("9999 stands"), text);
        assertTrue(text.contains("shows 5 charges, at 08:10:"), text);
        assertTrue(
                text.contains(
                        "Dates are read so, because '1/28/25' in 'Roasts this winter.csv' can only be month/day/year: month/day/year"),
                text);
    }

    @Test
    void takesItsAnswersFromTheFileOfAnEarlierGathering() throws Exception {
        StrangeMess.write(old(), 3);
        Gather.run(old(), made(), Optional.empty(), GatherTest::person, new StringBuilder());
        List<String> asked = new ArrayList<>();
        StringBuilder out = new StringBuilder();
        Path again = temporary.resolve("again");
        int code = Gather.run(
                old(),
                again,
                Optional.of(made().resolve(GatherWriter.ANSWERS)),
                question -> {
                    asked.add(question);
                    return Optional.empty();
                },
                out);
        assertEquals(0, code, out.toString());
        assertEquals(List.of(), asked);
        assertEquals(-1, Files.mismatch(made().resolve("batches.csv"), again.resolve("batches.csv")));
    }

    @Test
    void refusesToWriteIntoTheOldFolderOrOverAnything() throws IOException {
        new WrittenFolder(old()).withText("a.csv", WrittenFolder.CURVE);
        StringBuilder out = new StringBuilder();
        assertEquals(1, Gather.run(old(), old().resolve("new"), Optional.empty(), Gather.NOBODY, out));
        assertTrue(out.toString().contains("where nothing is ever written"), out.toString());
        Files.createSymbolicLink(temporary.resolve("door"), old());
        assertEquals(1, Gather.run(old(), temporary.resolve("door/new"), Optional.empty(), Gather.NOBODY, out));
        new WrittenFolder(made()).withText("mine.txt", "x");
        assertEquals(1, Gather.run(old(), made(), Optional.empty(), Gather.NOBODY, out));
        assertTrue(out.toString().contains("is not empty"), out.toString());
        assertEquals(
                1,
                Gather.run(temporary.resolve("nowhere"), temporary.resolve("n"), Optional.empty(), Gather.NOBODY, out));
        assertTrue(out.toString().contains("There is no folder"), out.toString());
        Path empty = Files.createDirectory(temporary.resolve("empty"));
        assertEquals(1, Gather.run(empty, temporary.resolve("n"), Optional.empty(), Gather.NOBODY, out));
        assertTrue(out.toString().contains("holds no table of readings, batches or scores: 0 files"), out.toString());
        assertFalse(Files.exists(temporary.resolve("n")));
    }

    @Test
    void asksAgainWhenAnAnswerIsNoneOfTheChoices() throws IOException {
        recording("one.csv", 201);
        Files.writeString(old().resolve("list.csv"), "batch,date,lot\none,3/4/25,first\n");
        StringBuilder out = new StringBuilder();
        List<String> answers = new ArrayList<>(List.of("d/m/y", "?", "day first", "no", "day/month/year"));
        assertEquals(
                0,
                Gather.run(
                        old(),
                        made(),
                        Optional.empty(),
                        question -> Optional.of(answers.isEmpty() ? "" : answers.remove(0)),
                        out));
        assertTrue(
                out.toString().contains("That is none of: day/month/year, month/day/year, as written"), out.toString());
        assertTrue(out.toString().contains("It can be: day/month/year"), out.toString());
        assertEquals(List.of(), answers, "refused as often as it is none of the choices, and asked again");
        assertTrue(Files.readString(made().resolve("batches.csv")).contains("one,2025-04-03,first"), out.toString());
    }

    /** Files and answers may still say environment temperature. */
    @ParameterizedTest
    @ValueSource(strings = {"air", "environment"})
    void aColumnIsWhatAnAnswerSaysItIs(String words) throws IOException {
        new WrittenFolder(old()).withText("a.csv", WrittenFolder.CURVE.replace("bean temperature [°C]", "probe"));
        Logbook logbook = Gather.of(old())
                .answer("style.a.column.2", words + " temperature [F]")
                .writeTo(made());
        assertTrue(logbook.batch("a").airTemperature().isPresent());
        assertTrue(logbook.batch("a").beanTemperature().isEmpty());
    }

    @Test
    void refusesAnAnswerInTheFileThatIsNoneOfTheChoices() throws IOException {
        new WrittenFolder(old()).withText("a.csv", WrittenFolder.CURVE);
        new WrittenFolder(temporary).with("answers.properties", "style.a.column.2=bean", "style.a.colunm.1=time [s]");
        StringBuilder out = new StringBuilder();
        Optional<Path> answers = Optional.of(temporary.resolve("answers.properties"));
        assertEquals(1, Gather.run(old(), made(), answers, Gather.NOBODY, out));
        assertTrue(
                out.toString().contains("The answer 'bean' to style.a.column.2 is none of: time [s]"), out.toString());
        assertFalse(Files.exists(made()));
        new WrittenFolder(temporary).with("answers.properties", "style.a.colunm.1=time [s]");
        assertEquals(0, Gather.run(old(), made(), answers, Gather.NOBODY, out));
        assertTrue(out.toString().contains("Did you mean 'style.a.column.1'?"), out.toString());
    }

    @Test
    void splitsADayAtTheTimesThatAPersonGives() throws Exception {
        StrangeMess.write(temporary.resolve("mess"), 4);
        Files.createDirectories(old());
        Files.copy(temporary.resolve("mess/day 20250501.csv"), old().resolve("day 20250501.csv"));
        Logbook logbook = Gather.of(old())
                .answer("file.day-20250501.split", "08:10:30, 08:27:00")
                .writeTo(made());
        assertEquals(
                List.of("2025-05-01T08:10:30", "2025-05-01T08:27"),
                logbook.batches().stream()
                        .map(b -> b.roastedAt().orElseThrow().toLocalDateTime().toString())
                        .toList());
    }

    /** Writes a recording that begins at its charge and whose last reading is at the given temperature. */
    private void recording(String fileName, int last) throws IOException {
        StringBuilder text = new StringBuilder("time [s],bean temperature [°C]\n");
        for (int i = 0; i <= 60; i++) {
            double degrees = i < 6 ? 190 - 18 * i : 90 + (last - 90) * (i - 6) / 54.0;
            text.append(10 * i)
                    .append(',')
                    .append(String.format("%.1f", degrees))
                    .append('\n');
        }
        Files.createDirectories(old().resolve(fileName).getParent());
        Files.writeString(old().resolve(fileName), text);
    }

    private static double lastReading(Logbook logbook, String batch) {
        Curve beans = logbook.batch(batch).beanTemperature().orElseThrow();
        return beans.valueAt(beans.size() - 1);
    }

    private String gathered() {
        StringBuilder out = new StringBuilder();
        assertEquals(0, Gather.run(old(), made(), Optional.empty(), GatherTest::person, out), out.toString());
        return out.toString();
    }

    @Test
    void twoNamesThatDifferInUnicodeFormOnlyStayTwo() throws IOException {
        recording("Cafe\u0301.csv", 201);
        recording("Caf\u00E9.csv", 205);
        Files.writeString(
                old().resolve("list.csv"),
                "batch,lot,green mass [kg]\nCaf\u00E9,one,5\nCafe\u0301,two,5\nOle\u0301,three,5\nOl\u00E9,four,5\n");
        String out = gathered();
        Logbook logbook = Logbook.open(made());
        assertEquals(
                List.of("Caf\u00E9", "Caf\u00E9 (2)", "Ol\u00E9", "Ol\u00E9 (2)"),
                logbook.batches().stream().map(Batch::name).sorted().toList(),
                out);
        assertEquals(201, lastReading(logbook, "Caf\u00E9"), 0.1);
        assertEquals(205, lastReading(logbook, "Caf\u00E9 (2)"), 0.1);
        assertEquals(
                List.of("two", "one", "three", "four"),
                Stream.of("Caf\u00E9", "Caf\u00E9 (2)", "Ol\u00E9", "Ol\u00E9 (2)")
                        .map(name -> logbook.batch(name).lot().orElseThrow())
                        .toList(),
                out);
        assertTrue(out.contains("Two recordings are called 'Caf\u00E9'; the second becomes 'Caf\u00E9 (2)'."), out);
        assertTrue(
                out.contains("Two batches look as if both were called 'Ol\u00E9' but are written with other signs;"
                        + " the second becomes 'Ol\u00E9 (2)'."),
                out);
    }

    /** A computer may take an accent apart when it copies a file; the list keeps it as it was typed. */
    @Test
    void aRowFindsItsRecordingInAnotherUnicodeForm() throws IOException {
        recording("Cafe\u0301.csv", 201);
        Files.writeString(old().resolve("list.csv"), "batch,lot,green mass [kg]\nCaf\u00E9,one,5\n");
        String out = gathered();
        Logbook logbook = Logbook.open(made());
        assertEquals(1, logbook.batches().size(), out);
        assertEquals(Optional.of("one"), logbook.batch("Caf\u00E9").lot());
        assertEquals(201, lastReading(logbook, "Caf\u00E9"), 0.1);
    }

    private List<String> filesOfCurves() throws IOException {
        try (Stream<Path> files = Files.list(made().resolve("curves"))) {
            return files.map(file -> String.valueOf(file.getFileName()))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void twoRecordingsOfOneNameThatFillsAFilesNameStayTwo() throws IOException {
        String longest = "\u7126".repeat(83);
        recording("one/" + longest + ".csv", 201);
        recording("one/" + longest + ".txt", 205);
        String out = gathered();
        Logbook logbook = Logbook.open(made());
        String second = "\u7126".repeat(82) + " (2)";
        assertEquals(201, lastReading(logbook, longest), 0.1);
        assertEquals(205, lastReading(logbook, second), 0.1);
        assertTrue(out.contains("\u2026', the first 82 letters of 83 with (2): no file can have a longer name."), out);
    }

    @Test
    void namesThatDifferInCaseAloneGetFilesThatAnyComputerTellsApart() throws IOException {
        recording("one/A.csv", 201);
        recording("two/a.csv", 205);
        Files.writeString(old().resolve("list.csv"), "batch,lot,green mass [kg]\nA,first,5\na,second,5\n");
        String out = gathered();
        Logbook logbook = Logbook.open(made());
        assertEquals(List.of("A.csv", "a (2).csv"), filesOfCurves());
        assertEquals(201, lastReading(logbook, "A"), 0.1);
        assertEquals(205, lastReading(logbook, "a (2)"), 0.1);
        assertEquals(Optional.of("first"), logbook.batch("A").lot(), out);
        assertEquals(Optional.of("second"), logbook.batch("a (2)").lot());
        assertTrue(
                out.contains("Two recordings are called 'A' and 'a', which not every computer tells apart in names of"
                        + " files; the second becomes 'a (2)'."),
                out);
    }

    @ParameterizedTest
    @CsvSource({"CON, %43ON.csv", "aux, %61ux.csv", "com1.old, %63om1.old.csv", "cone, cone.csv"})
    void aBatchThatIsNamedAsAWordOfWindowsHasAFileThatWindowsCanHold(String name, String file) throws IOException {
        recording(name + ".csv", 201);
        gathered();
        assertEquals(List.of(file), filesOfCurves());
        assertEquals(201, lastReading(Logbook.open(made()), name), 0.1);
    }

    @Test
    void everyColumnOfARecordingIsKeptAndANewHeadingIsSaid() throws IOException {
        StringBuilder text = new StringBuilder("Time,Bean temperature,,Ref,Ref\n");
        for (int i = 0; i <= 60; i++) {
            text.append(10 * i)
                    .append(',')
                    .append(i < 6 ? 190 - 18 * i : 90 + 2 * (i - 6))
                    .append(",7.")
                    .append(i)
                    .append(",8.")
                    .append(i)
                    .append(",9.")
                    .append(i)
                    .append('\n');
        }
        Files.createDirectories(old());
        Files.writeString(old().resolve("one.csv"), text);
        String out = gathered();
        String head = Files.readAllLines(made().resolve("curves/one.csv")).get(0);
        assertTrue(head.startsWith("time [s],bean temperature [°C],"), head + out);
        assertTrue(head.endsWith(",\"#3\",Ref,Ref 2"), head + out);
        Map<String, Curve> others = Logbook.open(made()).batch("one").otherCurves();
        assertEquals(List.of("#3", "Ref", "Ref 2"), new ArrayList<>(others.keySet()));
        assertTrue(
                out.contains("Column 3 '#3', because its heading says nothing that is known; kept under its own name"),
                out);
        assertTrue(out.contains("Column 5 'Ref' is kept as 'Ref 2'."), out);
        assertTrue(Files.readString(made().resolve(GatherWriter.REPORT)).contains("Column 5 'Ref' is kept"));
    }

    @Test
    void filesThatAreNotLookedAtAreNamed() throws IOException {
        recording("1/2/3/4/5/six.csv", 201);
        recording("1/2/3/4/5/6/seven.csv", 203);
        recording("1/2/3/4/5/6/7/eight.csv", 203);
        Files.writeString(old().resolve("plan.pdf"), "x");
        Files.writeString(old().resolve("READ ME"), "x");
        Path elsewhere = Files.createDirectories(temporary.resolve("elsewhere"));
        Files.createSymbolicLink(old().resolve("door"), elsewhere);
        String out = gathered();
        assertTrue(
                out.contains("Left out, because they lie in more than 6 folders within each other: 2 files,"
                        + " '1/2/3/4/5/6/7/eight.csv', '1/2/3/4/5/6/seven.csv'."),
                out);
        assertTrue(out.contains("a link to a folder is not followed, and what is no file is not read: 'door'."), out);
        assertTrue(
                out.contains("Not looked at, because no table is kept in such: 2 files, whose names end in '.pdf',"
                        + " 'none'."),
                out);
        assertTrue(out.contains("Looked at 1 file in"), out);
    }

    private String ofAList(String... lines) throws IOException {
        recording("one.csv", 201);
        Files.writeString(old().resolve("list.csv"), String.join("\n", lines) + "\n");
        return gathered();
    }

    @Test
    void rowsOfAListThatAreLeftOutAreCountedAndNamed() throws IOException {
        String out = ofAList(
                "batch,date,lot,green mass [kg]",
                "one,2025-03-04,first,5",
                ",2025-03-04,nobody,6",
                ",,,",
                "two,2025-03-04,second,5,more",
                "three,2025-03-04,third,5",
                "one,2025-03-04,other,5",
                "three,2025-03-04,third,5");
        assertTrue(out.contains("Batch 'one' stands on lines 2 and 7; they differ in lot 'first' and 'other'."), out);
        assertTrue(out.contains("Batch 'three' stands on lines 6 and 8, without a difference."), out);
        assertEquals(
                Optional.of("nobody"),
                Logbook.open(made()).batch("2025-03-04-a").lot(),
                "a row without a name is kept");
        assertEquals(4, Logbook.open(made()).batches().size(), out);
        assertEquals(
                "more",
                Logbook.open(made()).batch("two").extras().get("#5"),
                "what stands beyond the headings is kept");
        assertEquals(Optional.of("first"), Logbook.open(made()).batch("one").lot());
    }

    @Test
    void datesAndTimesThatAreLeftOutAreCountedAndNamed() throws IOException {
        String out = ofAList(
                "batch,date,charge time,lot",
                "one,2025-03-04,09:15,first",
                "two,2025-13-40,09:30,second",
                "three,2025-03-04,25:99,third",
                "four,,10:15,fourth",
                "one,2025-03-05,,first");
        assertTrue(
                out.contains(
                        "Line 3: '2025-13-40' under 'date' is no date that can be read, so the row stays without one; it is kept in the note."),
                out);
        assertTrue(
                out.contains(
                        "Line 4: '25:99' under 'charge time' is no time of day that can be read; it is kept in the note."),
                out);
        assertTrue(out.contains("1 row has no date of its own and got the one above."), out);
        assertTrue(
                out.contains("1 row or cell with another date or time than is known already, left out:"
                        + " 'one: 2025-03-05'."),
                out);
    }

    @Test
    void aSecondColumnOfOneMeaningAndExtrasWithoutAHeadingOfTheirOwnAreSaid() throws IOException {
        new WrittenFolder(temporary)
                .with("answers.properties", "sheet.a.column.3=lot", "sheet.a.column.4=extra", "sheet.a.column.5=extra");
        recording("one.csv", 201);
        Files.writeString(old().resolve("list.csv"), "batch,lot,lot,,lot\none,first,second,3,fourth\n");
        StringBuilder said = new StringBuilder();
        Optional<Path> answers = Optional.of(temporary.resolve("answers.properties"));
        assertEquals(0, Gather.run(old(), made(), answers, Gather.NOBODY, said), said.toString());
        String out = said.toString();
        Batch batch = Logbook.open(made()).batch("one");
        assertEquals(Optional.of("second"), batch.lot(), "the column that was answered");
        assertEquals(Map.of("lot 2", "first", "#4", "3", "lot 3", "fourth"), batch.extras(), out);
    }

    @Test
    void aNameWithTheEndOfALineIsTakenAndOneWithADotIsNamed() throws IOException {
        recording("morning\nfirst.csv", 201);
        recording(" blanks \t.csv", 203);
        recording(".hidden.csv", 205);
        recording("=cmd|1.csv", 207);
        recording("+1.csv", 209);
        recording("@SUM.csv", 211);
        String out = gathered();
        Logbook logbook = Logbook.open(made());
        assertEquals(
                Map.of("morning\nfirst", 201.0, "blanks", 203.0, "=cmd|1", 207.0, "+1", 209.0, "@SUM", 211.0),
                logbook.batches().stream()
                        .collect(java.util.stream.Collectors.toMap(Batch::name, b -> lastReading(logbook, b.name()))),
                out);
        assertEquals(
                List.of(),
                logbook.problems().list().stream()
                        .filter(problem -> problem.toString().contains("curve"))
                        .toList());
        assertTrue(
                out.contains("Left out, because a computer hides files whose names begin with a dot: '.hidden.csv'."),
                out);
        String table = Files.readString(made().resolve("batches.csv"));
        for (String cell : List.of("'=cmd|1,", "'+1,", "'@SUM,")) {
            assertTrue(table.contains("\n" + cell), table);
        }
    }

    /** The settings lie beside a folder of curves, in the folder itself, or deeper. */
    @ParameterizedTest
    @ValueSource(strings = {".", "old", "old/day one"})
    void whatIsGatheredFromAnInventedLogbookIsInvented(String place) throws IOException {
        recording("one.csv", 201);
        Path settings = Files.createDirectories(temporary.resolve(place)).resolve("logbook.properties");
        gathered();
        assertEquals(Logbook.Provenance.ROASTED, Logbook.open(made()).provenance());

        Files.writeString(settings, "provenance=invented machine\n");
        Path again = temporary.resolve("made again");
        Gather.of(old()).writeTo(again);
        assertEquals(Logbook.Provenance.INVENTED, Logbook.open(again).provenance());
    }
}
