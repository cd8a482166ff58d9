package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

/** The words, options and exit codes of the trial's commands, on a small logbook in °F; CommandLinesTest runs them on the demo logbook. */
class TrialCommandTest {
    @TempDir
    Path temporary;

    private final String before = System.getProperty(LogbookChoice.PROPERTY);

    @AfterEach
    void leavesTheSessionsLogbookAsItWas() {
        if (before == null) {
            System.clearProperty(LogbookChoice.PROPERTY);
        } else {
            System.setProperty(LogbookChoice.PROPERTY, before);
        }
    }

    private record Told(int code, String out, String err) {}

    private static Told run(List<String> words) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        CommandLine line = Main.commandLine();
        line.setOut(new PrintWriter(out));
        line.setErr(new PrintWriter(err));
        int code = line.execute(words.toArray(String[]::new));
        return new Told(code, out.toString(), err.toString());
    }

    private String folder() {
        return temporary.resolve("flip-1").toString();
    }

    private Told trial(String... words) {
        List<String> all = new ArrayList<>(List.of("trial"));
        all.addAll(List.of(words));
        return run(all);
    }

    /** Batches charged at 368.6, 374 and 379.4 °F, which are 187, 190 and 193 °C; a cup each. */
    private String logbook() throws IOException {
        Path folder = Files.createDirectories(temporary.resolve("My Roasts"));
        StringBuilder rows = new StringBuilder("batch,roasted at,charge temperature [°F]\n");
        double[] charges = {368.6, 368.6, 368.6, 374, 374, 379.4, 379.4, 379.4};
        for (int i = 0; i < charges.length; i++) {
            rows.append("B")
                    .append(i)
                    .append(",2025-03-0")
                    .append(i + 1)
                    .append("T09:15,")
                    .append(charges[i])
                    .append('\n');
        }
        Files.writeString(folder.resolve("batches.csv"), rows);
        Files.writeString(folder.resolve("logbook.properties"), "time.zone=UTC\n");
        return folder.toString();
    }

    private Told drawn(String... more) throws IOException {
        List<String> words = new ArrayList<>(List.of(
                "trial",
                "new",
                folder(),
                "--score",
                "sweetness",
                "--charge",
                "374",
                "--step",
                "5.4",
                "--sets",
                "2",
                "--sellable",
                "368..380",
                "--maker",
                "300..400",
                "--air",
                "520",
                "--miss",
                "1.8",
                "--cuppers",
                "Ada,Ben",
                "--logbook",
                logbook()));
        words.addAll(List.of(more));
        return run(words);
    }

    private Told listed(String... more) {
        List<String> words = new ArrayList<>(List.of(
                "trial",
                "next",
                folder(),
                "--day",
                "2025-04-01",
                "--lot",
                "kela",
                "--batch",
                "C1=2.5kg",
                "--batch",
                "C2=2500g",
                "--batch",
                "C3=2.5kg",
                "--seen-by",
                "Ada,Ben"));
        words.addAll(List.of(more));
        return run(words);
    }

    private static String line(String text, String begins) {
        return text.lines()
                .filter(each -> each.startsWith(begins))
                .findFirst()
                .orElse("no line '" + begins + "' in " + text);
    }

    @Test
    void drawsInTheLogbooksDegreesAndTellsTheSealAndWhatToDoWithIt() throws IOException {
        Told told = drawn();
        assertEquals(0, told.code(), told.err());
        String plan = Files.readString(temporary.resolve("flip-1").resolve("plan.txt"));
        assertTrue(plan.contains("\ntargets [°C]: 187.0 190.0 193.0\n"), plan);
        assertTrue(plan.contains("\nshown in: F\n"), plan);
        assertTrue(plan.contains("\nchecked: usual miss of an aim: 1.00, a third of the step or less\n"), plan);
        assertTrue(line(told.out(), "Seal:").matches("Seal:      ([0-9a-f]{4} ){15}[0-9a-f]{4}"), told.out());
        assertTrue(
                told.out()
                        .contains(
                                "Give these digits to somebody else now, such as the cuppers: a file's date proves nothing."),
                told.out());
        assertFalse(told.out().contains("Invented"), told.out());
        Told again = drawn();
        assertEquals(1, again.code());
        assertTrue(again.err().contains("holds something already, and was left as it is."), again.err());
    }

    @Test
    void opensListsAndTellsOnceMore() throws IOException {
        drawn();
        Told early = trial("next", folder());
        assertEquals(1, early.code());
        assertEquals(
                "Set 1 is not listed yet. List its 3 batches first, of one lot and for one day, each weighed: no target is opened before.",
                early.err().strip());
        Told first = listed("--sheets", temporary.resolve("sheets.html").toString());
        assertEquals(0, first.code(), first.err());
        assertTrue(
                line(first.out(), "Set 1")
                        .matches(
                                "Set 1 of 2, batch 1 of 3: C1, kela, 2\\.500 kg\\. Chance drew a charge temperature of 3(68\\.6|74\\.0|79\\.4) °F\\."),
                first.out());
        assertTrue(
                line(first.out(), "Write")
                        .startsWith("Write into batches.csv for C1: planned charge temperature [°F] 3"),
                first.out());
        String sheets = Files.readString(temporary.resolve("sheets.html"));
        assertTrue(
                sheets.contains("C3: set 1 of 2, batch 3 of 3") && sheets.contains("To abort a batch is always right"),
                sheets);
        assertEquals(
                first.out().lines().findFirst(),
                trial("next", folder(), "--again").out().lines().findFirst());
        assertTrue(trial("next", folder()).out().startsWith("Set 1 of 2, batch 2 of 3: C2"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "next FLIP --again --lot kela;--again opens and lists nothing: leave --lot and --batch out.",
                "next FLIP --lot kela;A set is listed with its lot and all of its batches: --lot LOT and a --batch NAME=MASS for each.",
                "next FLIP --batch C1=2kg;A set is listed with its lot and all of its batches: --lot LOT and a --batch NAME=MASS for each.",
                "next FLIP --lot kela --batch C1;A batch is listed with its mass, as in --batch B101=2.5kg, but this one is 'C1'.",
                "verify FLIP --seal 12;A seal is 64 digits from 0 to f, with or without blanks, but this one has 2. Type it as it was printed.",
                "new x --score s --sets 2;Chance draws one thing: name its middle with --drop, with --charge or with --first-gas.",
                "new x --score s --sets 2 --drop 1 --charge 2;Chance draws one thing: name its middle with --drop, with --charge or with --first-gas.",
            })
    void saysHowItIsTyped(String words, String says) throws IOException {
        drawn();
        Told told = trial(words.replace("FLIP", folder()).split(" "));
        assertEquals(1, told.code());
        assertEquals(says, told.err().strip());
    }

    @ParameterizedTest
    @CsvSource({"368-380", "368..", "a..b", "1..2..3"})
    void saysHowTwoEndsAreTyped(String typed) throws IOException {
        String says = trial(
                        "new",
                        folder(),
                        "--score",
                        "s",
                        "--charge",
                        "374",
                        "--sets",
                        "2",
                        "--sellable",
                        typed,
                        "--logbook",
                        logbook())
                .err()
                .strip();
        assertEquals(
                "--sellable takes two numbers with two dots between, as in 200..206, but this is '" + typed + "'.",
                says);
    }

    @Test
    void verifyEndsWithOneWhereSomethingWasChanged() throws IOException {
        Told told = drawn();
        listed();
        String seal = line(told.out(), "Seal:").substring("Seal:".length()).strip();
        Told whole = trial("verify", folder(), "--seal", seal);
        assertEquals(0, whole.code(), whole.err());
        assertEquals(
                "The seal is whole: plan, 1 of 6 lines opened and the record are as they were sealed and written.",
                whole.out().lines().findFirst().orElse(""));
        Path plan = temporary.resolve("flip-1").resolve("plan.txt");
        Files.writeString(plan, Files.readString(plan).replace("0.50", "0.05"));
        Told broken = trial("verify", folder(), "--seal", seal);
        assertEquals(1, broken.code());
        assertEquals(
                "The seal is broken: 1 place is not as it was.",
                broken.out().lines().findFirst().orElse(""));
    }

    @Test
    void aLookIsOnAPageAndInTheRecord() throws IOException {
        drawn();
        listed();
        Path page = temporary.resolve("answer.html");
        Told told = trial("answer", folder(), "--logbook", logbook(), "--out", page.toString());
        assertEquals(0, told.code(), told.err());
        assertTrue(told.out()
                .contains("This is look 1 of 1 planned. It was written into the trial's record before it was shown."));
        assertTrue(
                told.out()
                        .contains(
                                "1 cell of the logbook differs from what was drawn or listed. The sealed draw rules."),
                told.out());
        assertTrue(Files.readString(page).contains("no row of batch"), "the cells that differ");
        assertTrue(Files.readString(temporary.resolve("flip-1").resolve("record.txt"))
                .contains(" looked 1 at "));
    }

    @Test
    void sizesWithoutDrawing() throws IOException {
        Told told = drawn("--size");
        assertEquals(0, told.code(), told.err());
        assertTrue(told.out().strip().endsWith("Nothing was drawn."), told.out());
        assertFalse(Files.exists(temporary.resolve("flip-1")));
    }
}
