package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.virtual.Scenario;
import picocli.CommandLine;

class RoasteryCommandTest {
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... arguments) {
        CommandLine main = Main.commandLine();
        main.setOut(new PrintWriter(out));
        main.setErr(new PrintWriter(err));
        CommandLine roastery = main.getSubcommands().get("roastery");
        roastery.setOut(new PrintWriter(out));
        roastery.setErr(new PrintWriter(err));
        roastery.getSubcommands().values().forEach(sub -> {
            sub.setOut(new PrintWriter(out));
            sub.setErr(new PrintWriter(err));
        });
        return main.execute(arguments);
    }

    @Test
    void writesALogbookAndItsTruthBesideIt(@TempDir Path folder) throws IOException {
        Path scenario = Files.writeString(
                folder.resolve("mine.scenario"), Scenario.named("steady-hand").text());
        Path book = folder.resolve("book");
        assertEquals(
                0,
                run(
                        "roastery",
                        "--scenario",
                        scenario.toString(),
                        "--seed",
                        "3",
                        "--batches",
                        "6",
                        "--out",
                        book.toString()),
                err.toString());
        assertTrue(Files.exists(book.resolve("curves/L006.csv")));
        assertTrue(Files.exists(folder.resolve("book-truth.json")));
        assertTrue(out.toString().contains("sealed against accident only"), out.toString());
        assertEquals(1, run("roastery", "--out", book.toString()));
        assertTrue(err.toString().contains("holds something already"), err.toString());
    }

    @Test
    void makesAClassAndRoastsAStudentsPlan(@TempDir Path folder) throws IOException {
        Path group = folder.resolve("class");
        assertEquals(
                0,
                run(
                        "roastery",
                        "class",
                        "--scenario",
                        "one-cause",
                        "--students",
                        "2",
                        "--batches",
                        "6",
                        "--out",
                        group.toString()),
                err.toString());
        Path plan = Files.writeString(
                folder.resolve("plan.csv"),
                "lot,drop temperature [°C],habit\nSlate Hill,201,steady\nSlate Hill,206,steady\n");
        assertEquals(
                0,
                run(
                        "roastery",
                        "roast",
                        "--plan",
                        plan.toString(),
                        "--teacher",
                        group.resolve("teacher").toString(),
                        "--student",
                        "student-02",
                        "--out",
                        folder.resolve("planned").toString()),
                err.toString());
        assertTrue(Files.exists(folder.resolve("planned/cuppings.csv")));
        assertTrue(Files.exists(group.resolve("teacher/planned-truth.json")), "the truth stays with the teacher");
        out.getBuffer().setLength(0);
        Path truth = group.resolve("teacher/student-02-truth.json");
        String seal =
                Files.readAllLines(group.resolve("students/seals.csv")).get(2).split(",")[1];
        assertEquals(0, run("roastery", "open-truth", truth.toString(), "--seal", seal), err.toString());
        assertTrue(out.toString().startsWith("The seal is whole."), out.toString());
    }

    @Test
    void aTruthInTheTeachersFolderIsNeverWrittenOverByThatOfAnotherFolder(@TempDir Path folder) throws IOException {
        Path group = folder.resolve("class");
        run(
                "roastery",
                "class",
                "--scenario",
                "one-cause",
                "--students",
                "2",
                "--batches",
                "4",
                "--out",
                group.toString());
        Path plan = Files.writeString(folder.resolve("plan.csv"), "lot,drop temperature [°C]\nSlate Hill,201\n");
        Path teacher = group.resolve("teacher");
        String[] first = {
            "roastery",
            "roast",
            "--plan",
            plan.toString(),
            "--teacher",
            teacher.toString(),
            "--student",
            "student-01",
            "--out",
            folder.resolve("a").resolve("year").toString()
        };
        assertEquals(0, run(first), err.toString());
        String truth = Files.readString(teacher.resolve("year-truth.json"));
        String[] second = first.clone();
        second[7] = "student-02";
        second[9] = folder.resolve("b").resolve("year").toString();
        assertEquals(1, run(second));
        assertTrue(
                err.toString().contains("year-truth.json is there already and holds the truth of another logbook"),
                err.toString());
        assertEquals(truth, Files.readString(teacher.resolve("year-truth.json")));
        assertFalse(Files.exists(folder.resolve("b").resolve("year")));
        second[7] = "student-01"; // The same truth is in nobody's way.
        assertEquals(0, run(second), err.toString());
    }

    @Test
    void saysWhatIsMissing(@TempDir Path folder) {
        assertEquals(
                1,
                run(
                        "roastery",
                        "--scenario",
                        "harbor",
                        "--out",
                        folder.resolve("a").toString()));
        assertTrue(err.toString().contains("Did you mean 'harbour'?"), err.toString());
        assertEquals(1, run("roastery"));
        assertTrue(err.toString().contains("--out DIR"), err.toString());
    }

    @Test
    void listsAndPrintsTheScenarios() {
        assertEquals(0, run("roastery", "scenarios"));
        assertEquals(Scenario.builtIn().size() + 1, out.toString().lines().count());
        out.getBuffer().setLength(0);
        assertEquals(0, run("roastery", "scenarios", "harbour"));
        assertEquals(Scenario.named("harbour").text(), out.toString());
    }
}
