package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.LogbookOpenTest;
import parchment.logbook.contents.LogbookException;

/** The same command again, once the folder has grown: what is new comes in, what somebody has changed by hand stays, nothing is asked again. */
class GrownFolderTest {
    @TempDir
    Path temporary;

    private Path folder;
    private Path logbook;

    @BeforeEach
    void gatheredOnce() throws IOException {
        folder = Files.createDirectories(temporary.resolve("Logger files"));
        logbook = temporary.resolve("My Roasts");
        recording("batch 1", 201);
        recording("batch 2", 203);
        list("1,2031-03-04,kela,5", "2,2031-03-05,kela,5");
        gather(question -> Optional.of(""));
    }

    private void recording(String name, int last) throws IOException {
        StringBuilder text = new StringBuilder("time [s],bean temperature [°C]\n");
        for (int i = 0; i <= 60; i++) {
            double degrees = i < 6 ? 190 - 18 * i : 90 + (last - 90) * (i - 6) / 54.0;
            text.append(String.format(Locale.ROOT, "%d,%.1f%n", 10 * i, degrees));
        }
        Files.writeString(folder.resolve(name + ".csv"), text);
    }

    private void list(String... rows) throws IOException {
        Files.writeString(
                folder.resolve("list.csv"), "batch,date,lot,green mass [kg]\n" + String.join("\n", rows) + "\n");
    }

    private String gather(Gather.Console console) {
        StringBuilder out = new StringBuilder();
        assertEquals(0, Gather.run(folder, logbook, Optional.empty(), console, out), out.toString());
        return out.toString();
    }

    private String again() {
        List<String> asked = new ArrayList<>();
        String out = gather(question -> {
            asked.add(question);
            return Optional.of("");
        });
        assertEquals(List.of(), asked, "nothing is asked again");
        return out;
    }

    private List<String> batches() {
        return Logbook.open(logbook).batches().stream()
                .map(Batch::name)
                .sorted()
                .toList();
    }

    private String read(String file) throws IOException {
        return Files.readString(logbook.resolve(file));
    }

    @Test
    void nothingNewChangesNothing() throws Exception {
        Map<String, String> before = LogbookOpenTest.state(logbook);
        String out = again();
        assertEquals(before, LogbookOpenTest.state(logbook));
        assertTrue(out.contains("Added 0 batches to "), out);
    }

    @Test
    void aNewRecordingAndNewRowsComeIn() throws Exception {
        recording("batch 3", 205);
        list("1,2031-03-04,kela,5", "2,2031-03-05,kela,5", "3,2031-03-06,house,5", "4,2031-03-07,house,5");
        Map<String, String> before = LogbookOpenTest.state(folder);
        String out = again();
        assertEquals(before, LogbookOpenTest.state(folder), "the old folder is as it was");
        assertTrue(out.contains("Added 2 batches to ") && out.contains(": '3', '4'. 1 file new"), out);
        assertEquals(List.of("1", "2", "3", "4"), batches());
        assertEquals(Optional.of("house"), Logbook.open(logbook).batch("3").lot());
        assertTrue(Logbook.open(logbook).batch("3").beanTemperature().isPresent());
    }

    @Test
    void whatAnEarlierBatchHasNewComesIn() throws IOException {
        list("1,2031-03-04,kela,5", "2,2031-03-05,low garden,5");
        again();
        assertEquals(Optional.of("low garden"), Logbook.open(logbook).batch("2").lot());
    }

    @Test
    void aTableThatWasChangedByHandKeepsEveryLineAndGetsTheNewRows() throws IOException {
        String edited = read("batches.csv").replace("kela", "kela (mine)").replaceFirst("\n$", "\n9,,mine,1");
        Files.writeString(logbook.resolve("batches.csv"), edited);
        recording("batch 3", 205);
        list("1,2031-03-04,other,5", "2,2031-03-05,other,5", "3,2031-03-06,house,5");
        String out = again();
        assertTrue(read("batches.csv").startsWith(edited + "\n"), read("batches.csv"));
        assertEquals(List.of("1", "2", "3", "9"), batches());
        assertEquals(
                Optional.of("kela (mine)"), Logbook.open(logbook).batch("1").lot());
        assertEquals(Optional.of("house"), Logbook.open(logbook).batch("3").lot());
        assertTrue(
                out.contains(
                        "'batches.csv' was changed by hand: its rows stay as they are, and the 1 row of a new batch stands at its end."),
                out);
        // And once more: the new row is not new any longer.
        String then = read("batches.csv");
        again();
        assertEquals(then, read("batches.csv"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"windows-1252", "UTF-16"})
    void aTableSavedInAnotherEncodingKeepsEveryByteAndGetsTheNewVersionAside(String encoding) throws IOException {
        byte[] edited = read("batches.csv").replace("kela", "kéla").getBytes(Charset.forName(encoding));
        Path table = Files.write(logbook.resolve("batches.csv"), edited);
        recording("batch 3", 205);
        list("1,2031-03-04,kela,5", "2,2031-03-05,kela,5", "3,2031-03-06,kela,5");
        String out = again();
        assertArrayEquals(edited, Files.readAllBytes(table));
        assertTrue(
                out.contains(
                        "'batches.csv' was changed by hand and stays as it is; the new version is in 'gathered aside'."),
                out);
        assertTrue(read("gathered aside/batches.csv").contains("\n3,"));
    }

    @Test
    void aFolderThatIsALinkIsTheFolderItLeadsTo() throws IOException {
        Path link = Files.createSymbolicLink(temporary.resolve("link"), folder);
        StringBuilder out = new StringBuilder();
        Path other = temporary.resolve("Other");
        assertEquals(0, Gather.run(link, other, Optional.empty(), Gather.NOBODY, out), out.toString());
        assertEquals(
                batches(),
                Logbook.open(other).batches().stream().map(Batch::name).sorted().toList());
    }

    @Test
    void aRowThatWasTakenOutByHandStaysOut() throws IOException {
        String without = read("batches.csv")
                .lines()
                .filter(line -> !line.startsWith("2,"))
                .reduce("", (a, b) -> a + b + "\n");
        Files.writeString(logbook.resolve("batches.csv"), without);
        again();
        assertEquals(without, read("batches.csv"));
    }

    @Test
    void aTableSavedInAnotherFormGetsTheNewVersionAside() throws IOException {
        String edited = read("batches.csv").replace(',', ';');
        Files.writeString(logbook.resolve("batches.csv"), edited);
        recording("batch 3", 205);
        String out = again();
        assertEquals(edited, read("batches.csv"));
        assertTrue(read("gathered aside/batches.csv").contains("\n3,"), out);
        assertTrue(
                out.contains(
                        "'batches.csv' was changed by hand and stays as it is; the new version is in 'gathered aside'."),
                out);
    }

    @Test
    void aCurveThatWasChangedByHandStaysAndOneThatWasTakenOutStaysOut() throws IOException {
        Files.writeString(logbook.resolve("curves/1.csv"), "mine");
        Files.delete(logbook.resolve("curves/2.csv"));
        recording("batch 1", 209);
        String out = again();
        assertEquals("mine", read("curves/1.csv"));
        assertFalse(Files.exists(logbook.resolve("curves/2.csv")));
        assertTrue(read("gathered aside/curves/1.csv").contains("209"), out);
        assertTrue(out.contains("Taken out of the logbook by hand, and not written again: 'curves/2.csv'."), out);
        assertTrue(out.contains("Changed in the folder since: 'batch 1.csv'."), out);
    }

    @Test
    void aFileThatIsGoneFromTheFolderLosesNothingInTheLogbook() throws IOException {
        Files.delete(folder.resolve("batch 2.csv"));
        list("1,2031-03-04,kela,5");
        String out = again();
        assertEquals(List.of("1", "2"), batches());
        assertEquals(Optional.of("kela"), Logbook.open(logbook).batch("2").lot());
        assertTrue(Logbook.open(logbook).batch("2").beanTemperature().isPresent());
        assertTrue(out.contains("No longer in the folder, and kept in the logbook: '2'."), out);
    }

    @Test
    void answersThatWereChangedByHandAreTakenAndStay() throws IOException {
        Path answers = logbook.resolve(GatherWriter.ANSWERS);
        String edited =
                Files.readString(answers).replaceFirst("(# )?sheet\\.a\\.column\\.3=.*", "sheet.a.column.3=operator")
                        + "# my own line\n";
        Files.writeString(answers, edited);
        recording("batch 3", 205);
        list("1,2031-03-04,kela,5", "2,2031-03-05,kela,5", "3,2031-03-06,Ida,5");
        String out = again();
        assertEquals(Optional.of("Ida"), Logbook.open(logbook).batch("3").label(Batch.Label.OPERATOR));
        assertTrue(Files.readString(answers).startsWith(edited), Files.readString(answers));
        assertTrue(out.contains("'gathered-answers.properties' was changed by hand: its answers were taken"), out);
    }

    @Test
    void aNewStyleBeforeTheOldOnesDoesNotTakeTheirAnswers() throws IOException {
        Files.writeString(
                folder.resolve("a first.csv"),
                Files.readString(folder.resolve("batch 1.csv")).replace("time [s],bean", "clock [s],bean"));
        again();
        String answers = read(GatherWriter.ANSWERS);
        assertTrue(answers.contains("style.a.headings=,time [s]"), answers);
        assertTrue(answers.contains("style.b.headings=,clock [s]"), answers);
    }

    @Test
    void aNameOnceGivenStays() throws IOException {
        // A second recording of the number 1: taken alone, neither could be called 1.
        recording("roast 1", 207);
        again();
        assertEquals(List.of("1", "2", "roast 1"), batches());
        assertEquals(
                201,
                Logbook.open(logbook).batch("1").beanTemperature().orElseThrow().valueAt(60),
                0.1);
    }

    /** What a killed run has left: new curves without a row, and the record of the run before. */
    @Test
    void whatAKilledRunHasLeftIsFinished() throws IOException {
        String record = read(GatheredBefore.FILE);
        String table = read("batches.csv");
        recording("batch 3", 205);
        list("1,2031-03-04,kela,5", "2,2031-03-05,kela,5", "3,2031-03-06,house,5");
        again();
        String whole = read("batches.csv");
        Files.writeString(logbook.resolve("batches.csv"), table);
        Files.writeString(logbook.resolve(GatheredBefore.FILE), record);
        again();
        assertEquals(whole, read("batches.csv"));
        assertEquals(List.of("1", "2", "3"), batches());
        // Killed after the table, before the record.
        Files.writeString(logbook.resolve(GatheredBefore.FILE), record);
        again();
        assertEquals(whole, read("batches.csv"));
        assertFalse(Files.exists(logbook.resolve(GrownLogbook.ASIDE)));
    }

    @Test
    void aLogbookOfOtherFilesIsRefused() throws IOException {
        Path other = Files.createDirectories(temporary.resolve("Other files"));
        Files.copy(folder.resolve("batch 1.csv"), other.resolve("roast 9.csv"));
        LogbookException refused =
                assertThrows(LogbookException.class, () -> Gather.of(other).writeTo(logbook));
        assertTrue(refused.getMessage().contains("was gathered from other files"), refused.getMessage());
        assertEquals(List.of("1", "2"), batches());
    }

    @Test
    void aFolderThatWasMovedIsTheSame() throws IOException {
        Path moved = Files.move(folder, temporary.resolve("Moved files"));
        folder = moved;
        recording("batch 3", 205);
        String out = again();
        assertEquals(List.of("1", "2", "3"), batches(), out);
    }

    @Test
    void twoCupsThatNobodyNumberedStayTwoWhenNewOnesComeIn() throws IOException {
        String scores =
                "Batch,Tasted on,Cupper,Acidity,Sweetness,Body\n1,2031-03-10,Ana,7,6,7.5\n1,2031-03-10,Ana,7.5,6.5,7\n"
                        + "2,2031-03-10,Ana,6,6.5,7\n2,2031-03-10,Ben,6.5,6,7\n1,2031-03-10,Ben,6.5,6,6\n";
        Files.writeString(folder.resolve("scores.csv"), scores);
        again();
        assertEquals(6, read("cuppings.csv").lines().count(), read("cuppings.csv"));
        Files.writeString(folder.resolve("scores.csv"), scores + "2,2031-03-17,Ana,7,7,7\n");
        again();
        assertEquals(7, read("cuppings.csv").lines().count(), read("cuppings.csv"));
        assertTrue(read("cuppings.csv").contains("Ana,1,,1,7,6,7.5,"), read("cuppings.csv"));
        assertTrue(read("cuppings.csv").contains("Ana,1,,2,7.5,6.5,7,"), read("cuppings.csv"));
    }

    @Test
    void anotherUnitAnsweredForTheSameFilesReplacesTheOldColumn() throws IOException {
        Path answers = logbook.resolve(GatherWriter.ANSWERS);
        Files.writeString(
                answers,
                Files.readString(answers)
                        .replaceFirst("(# )?sheet\\.a\\.column\\.4=.*", "sheet.a.column.4=green mass [lb]")
                        .replaceFirst("(# )?sheet\\.a\\.column\\.3=.*", "sheet.a.column.3=operator"));
        again();
        String headings = read("batches.csv").lines().findFirst().orElseThrow();
        assertTrue(headings.contains("green mass [lb]"), headings);
        assertFalse(headings.contains("green mass [kg]"), headings);
        assertTrue(headings.contains("operator"), headings);
        assertFalse(headings.contains("lot"), headings);
    }

    @Test
    void anotherUnitAnsweredForAGrownFolderReplacesTheOldOneAndARowThatIsGoneKeepsIts() throws IOException {
        Path answers = logbook.resolve(GatherWriter.ANSWERS);
        Files.writeString(
                answers,
                Files.readString(answers)
                        .replaceFirst("(# )?sheet\\.a\\.column\\.4=.*", "sheet.a.column.4=green mass [lb]"));
        recording("batch 3", 205);
        list("1,2031-03-04,kela,5", "2,2031-03-05,kela,5", "3,2031-03-06,Ida,5");
        again();
        String headings = read("batches.csv").lines().findFirst().orElseThrow();
        assertTrue(headings.contains("green mass [lb]"), headings);
        assertFalse(headings.contains("green mass [kg]"), headings);
    }

    private void scores(String... rows) throws IOException {
        Files.writeString(
                folder.resolve("scores.csv"),
                "batch,tasted on,cupper,acidity,sweetness,body\n" + String.join("\n", rows) + "\n");
    }

    private List<String> cups() throws IOException {
        return read("cuppings.csv")
                .lines()
                .skip(1)
                .map(line -> line.substring(line.indexOf("Ana")).replaceFirst(",+$", ","))
                .toList();
    }

    @Test
    void aCupThatStoodAloneIsOneOfTwoOnceTheSheetHasASecond() throws IOException {
        scores("1,2031-03-10,Ana,7,6,7.5", "2,2031-03-10,Ana,5,6,7.5");
        gather(question -> Optional.of(""));
        assertEquals(List.of("Ana,1,,,7,6,7.5,", "Ana,2,,,5,6,7.5,"), cups());
        scores("1,2031-03-10,Ana,6.5,6,7", "1,2031-03-10,Ana,7,6,7.5", "2,2031-03-10,Ana,5,6,7.5");
        gather(question -> Optional.of(""));
        assertEquals(
                List.of("Ana,1,,1,6.5,6,7,", "Ana,1,,2,7,6,7.5,", "Ana,2,,,5,6,7.5,"),
                cups().stream().sorted().toList(),
                "two cups of batch 1, not three");
    }

    @Test
    void cupsThatAnOlderGatheringDidNotNumberGetTheirNumbersAndNoTwins() {
        List<String> headings = List.of("cupping", "tasted on", "cupper", "batch", "blind code", "cup", "body");
        Map<String, String> row = Map.of("cupping", "c", "tasted on", "2031-03-10", "cupper", "Ana", "batch", "1");
        BiFunction<String, String, Map<String, String>> cup = (number, body) -> {
            Map<String, String> made = new LinkedHashMap<>(row);
            if (!number.isEmpty()) {
                made.put("cup", number);
            }
            made.put("body", body);
            return made;
        };
        KeptRows old = new KeptRows(headings, List.of(cup.apply("", "7"), cup.apply("", "6"), cup.apply("", "5")));
        KeptRows now = new KeptRows(headings, List.of(cup.apply("1", "6"), cup.apply("2", "7"), cup.apply("3", "5.5")));
        List<Map<String, String>> all = List.of(cup.apply("2", "7"), cup.apply("1", "6"), cup.apply("3", "5.5"));
        assertEquals(all, old.with(now, "cuppings.csv", Set.of()).rows());
        assertEquals(all, old.replaced(now, "cuppings.csv").rows());
        assertEquals(List.of(), now.newTo(old, "cuppings.csv", Set.of()));
        KeptRows alone = new KeptRows(headings, List.of(cup.apply("", "7")));
        assertEquals(
                List.of(cup.apply("1", "6"), cup.apply("2", "7"), cup.apply("3", "5.5")),
                now.with(alone, "cuppings.csv", Set.of()).rows(),
                "a row that is taken out of the sheet stays, and what is left is no fourth cup");
    }

    @ParameterizedTest
    @ValueSource(strings = {"old/batch 2.csv", "another name.csv", "old/another name.csv"})
    void aRecordingThatWasMovedOrRenamedStaysTheSameBatch(String place) throws IOException {
        Files.createDirectories(folder.resolve("old"));
        Files.move(folder.resolve("batch 2.csv"), folder.resolve(place));
        String table = read("batches.csv");
        again();
        assertEquals(List.of("1", "2"), batches());
        assertEquals(table, read("batches.csv"));
        // And back again.
        Files.move(folder.resolve(place), folder.resolve("batch 2.csv"));
        again();
        assertEquals(table, read("batches.csv"));
    }

    @Test
    void aRecordingInNoListThatWasRenamedStaysTheSameBatch() throws IOException {
        recording("morning", 205);
        again();
        assertEquals(List.of("1", "2", "morning"), batches());
        Files.move(folder.resolve("morning.csv"), folder.resolve("evening.csv"));
        String table = read("batches.csv");
        again();
        assertEquals(table, read("batches.csv"));
        assertEquals(List.of("1", "2", "morning"), batches());
    }

    @Test
    void aFolderWhoseFilesWereAllMovedIntoAnotherWithinItIsTheSame() throws IOException {
        Path old = Files.createDirectories(folder.resolve("old"));
        for (String file : List.of("batch 1.csv", "batch 2.csv", "list.csv")) {
            Files.move(folder.resolve(file), old.resolve(file));
        }
        again();
        assertEquals(List.of("1", "2"), batches());
    }

    private void recordingAt(String name, String clock) throws IOException {
        StringBuilder text = new StringBuilder("time,bean temperature [°C]\n");
        LocalDateTime at = LocalDateTime.parse(clock);
        for (int i = 0; i <= 66; i++) {
            double degrees = i < 6 ? 200 : i < 12 ? 200 - 18 * (i - 5) : 92 + 113 * (i - 12) / 54.0;
            text.append(String.format(Locale.ROOT, "%1$tF %1$tT,%2$.1f%n", at.plusSeconds(10L * i), degrees));
        }
        Files.writeString(folder.resolve(name + ".csv"), text);
    }

    @Test
    void whatARecordingSaidOfItsChargeStaysWhenItIsTakenOutOfTheFolder() throws IOException {
        recordingAt("batch 3", "2031-03-06T08:00:00");
        list("1,2031-03-04,kela,5", "2,2031-03-05,kela,5", "3,2031-03-06,house,5");
        again();
        String charged = read("batches.csv")
                .lines()
                .filter(line -> line.startsWith("3,"))
                .findFirst()
                .orElseThrow();
        assertTrue(charged.startsWith("3,2031-03-06T08:0"), charged);
        Files.delete(folder.resolve("batch 3.csv"));
        list("1,2031-03-04,kela,5", "2,2031-03-05,kela,5", "3,2031-03-07,house,6");
        again();
        assertEquals(
                charged.replace(",5", ",6"),
                read("batches.csv")
                        .lines()
                        .filter(line -> line.startsWith("3,"))
                        .findFirst()
                        .orElseThrow());
        String table = read("batches.csv");
        again();
        assertEquals(table, read("batches.csv"));
    }
}
