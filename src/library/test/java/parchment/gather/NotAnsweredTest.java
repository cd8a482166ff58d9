package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookException;
import parchment.quantity.MassUnit;

/** What nobody answers stands for now, is said to be in doubt, and stays open. */
class NotAnsweredTest {
    @TempDir
    Path temporary;

    private Path folder;
    private Path logbook;
    private final StringBuilder out = new StringBuilder();

    @BeforeEach
    void aListWhoseMassesHaveNoUnit() throws IOException {
        folder = Files.createDirectories(temporary.resolve("old"));
        logbook = temporary.resolve("new");
        StringBuilder list = new StringBuilder("Batch,Date,Coffee,Green weight,Roasted weight,Drop\n");
        for (int i = 0; i < 14; i++) {
            double green = 10 + i % 3;
            list.append(String.format(
                    Locale.ROOT,
                    "%d,2031-03-%02d,%s,%.1f,%.2f,9:%02d\n",
                    101 + i,
                    3 + i,
                    i % 2 == 0 ? "Wren" : "Kela",
                    green,
                    green * (0.85 - i / 1000.0),
                    10 + i));
        }
        Files.writeString(folder.resolve("list.csv"), list);
    }

    private String run(String... typed) {
        Deque<String> lines = new ArrayDeque<>(List.of(typed));
        int from = out.length();
        int code = Gather.run(
                folder,
                logbook,
                Optional.empty(),
                question -> {
                    out.append(question).append('\n');
                    return Optional.ofNullable(lines.poll());
                },
                out);
        assertEquals(0, code, out.toString());
        return out.substring(from);
    }

    private double pounds() {
        return Logbook.open(logbook)
                .batch("101")
                .conditions()
                .greenMass()
                .orElseThrow()
                .in(MassUnit.POUND);
    }

    private static final String KEY = "sheet.a.column.4";

    @Test
    void isSaidToBeInDoubtWithItsFollowerAndIsAskedAgainByTheNextRun() throws IOException {
        String said = run();
        assertTrue(said.contains("Not answered yet; until then, in doubt: green mass [kg] (" + KEY), said);
        assertTrue(said.contains("its unit follows the green mass, and is in doubt with it"), said);
        assertTrue(said.contains("Not answered yet, so what stands for it is in doubt: '" + KEY + "'."), said);
        assertTrue(
                Files.readString(logbook.resolve(GatherWriter.ANSWERS)).contains("\n# " + KEY + "=green mass [kg]\n"));
        String again = run("lb");
        assertTrue(again.contains("kg or lb. What is it? [green mass [kg]]"), again);
        assertEquals(10, pounds(), 1e-9);
        assertFalse(run("kg").contains("What is it? [green mass"), "it was answered");
        assertEquals(10, pounds(), 1e-9);
    }

    @Test
    void isAnsweredByTakingTheNumberSignAway() throws IOException {
        run();
        Path answers = logbook.resolve(GatherWriter.ANSWERS);
        Files.writeString(
                answers, Files.readString(answers).replace("# " + KEY + "=green mass [kg]", KEY + "=green mass [lb]"));
        run();
        assertEquals(10, pounds(), 1e-9);
    }

    @Test
    void whatAnEarlierRunFoundByItselfIsNotSaidToBeAnswered() {
        run("lb");
        String again = run();
        assertTrue(again.contains("(answered; " + KEY + ")"), again);
        assertFalse(again.contains("(answered; sheet.a.column.1)"), again);
    }

    @Test
    void aQuestionMarkIsNoCuppersName() throws IOException {
        run("lb");
        Files.writeString(
                folder.resolve("scores.csv"),
                "Batch,Tasted on,Acidity,Sweetness,Body\n101,2031-03-20,7,6.5,7\n102,2031-03-20,6,6.5,7\n"
                        + "103,2031-03-20,6.5,6,7\n104,2031-03-20,7.5,6,7\n");
        String said = run("?", "Ida");
        assertTrue(said.contains("Who scored the 4 cups of 'scores.csv'?"), said);
        assertTrue(said.contains("It can be: the name of the cupper, or panel."), said);
        assertEquals(
                List.of("Ida"),
                Logbook.open(logbook).cups().stream()
                        .map(cup -> cup.cupper())
                        .distinct()
                        .toList());
    }

    @Test
    void whichOfTwoListsStandsIsAskedWhereThreeBatchesDiffer() throws IOException {
        String plan = "Batch,Green kg\n101,4\n102,4\n";
        Files.writeString(
                folder.resolve("a plan.csv"), plan.replace("Green kg", "Coffee").replace(",4", ",House"));
        assertFalse(run("lb").contains("Which of the two stands"), "two are slips");
        Files.writeString(
                folder.resolve("a plan.csv"),
                plan.replace("Green kg", "Coffee").replace(",4", ",House") + "103,House\n");
        logbook = temporary.resolve("second");
        String said = run("lb", "list");
        assertTrue(
                said.contains(
                        "'a plan.csv' and 'list.csv' say different things of 3 batches, such as 101, lot: House and Wren."
                                + " Which of the two stands, a plan or list? [a plan]"),
                said);
        assertEquals("Wren", Logbook.open(logbook).batch("101").lot().orElseThrow());
    }

    @Test
    void recordingsWithoutARowAreAllNamedInTheReport() throws IOException {
        StringBuilder curve = new StringBuilder("time [s],bean temperature [°C]\n");
        for (int i = 0; i < 300; i++) {
            curve.append(2 * i - 60)
                    .append(',')
                    .append(i < 30 ? 190 : 90 + (i - 30) * 0.43)
                    .append('\n');
        }
        for (int i = 1; i <= 7; i++) {
            Files.writeString(
                    folder.resolve("odd" + (char) ('a' + i) + ".csv"),
                    curve.toString().replace("190", "19" + i));
        }
        run("lb");
        String report = Files.readString(logbook.resolve(GatherWriter.REPORT));
        for (int i = 1; i <= 7; i++) {
            assertTrue(report.contains("The recording 'odd" + (char) ('a' + i) + "' is in no list."), report);
        }
    }

    @Test
    void aFolderOfPicturesAndALogbookAreCalledWhatTheyAre() throws IOException {
        Path pictures = Files.createDirectories(temporary.resolve("pictures"));
        Files.write(pictures.resolve("drum.jpg"), new byte[] {1, 2});
        String said =
                assertThrows(LogbookException.class, () -> Gather.of(pictures)).getMessage();
        assertTrue(said.contains("1 file, whose names end in '.jpg'"), said);
        run("lb");
        assertTrue(
                Gather.of(logbook)
                        .text()
                        .contains("It is a logbook already, and needs no gathering: Logbook.open(\"" + logbook + "\")"),
                Gather.of(logbook).text());
    }
}
