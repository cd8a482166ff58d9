package parchment.kernel.help;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import com.google.gson.Gson;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import parchment.launcher.ReadersFolder;

/** Runs the Java of the pages that name folders of the reader's, as it stands, where these folders are. */
class FolderExamplesTest {
    @TempDir
    private static Path temporary;

    @TestFactory
    Stream<DynamicTest> everyPageThatNamesFoldersRuns() {
        return ExamplesTest.NAME_FOLDERS.stream()
                .sorted()
                .map(page -> DynamicTest.dynamicTest(page, () -> {
                    ReadersFolder reader = ReadersFolder.in(Files.createDirectories(temporary.resolve(page)));
                    switch (page) {
                        case "class.md" -> teachingAClass(reader);
                        case "gather.md" -> gatheringAFolder(reader);
                        case "logbook-format.md" -> theLogbookFormat(reader);
                        case "virtual-roastery.md" -> theVirtualRoastery(reader);
                        default -> fail("Say here what somebody has who reads " + page + ".");
                    }
                }));
    }

    /**
     * Runs a page's snippets, one cell each.
     *
     * @param between what happens in the world between them: Java to run before the snippet of that number, from 1; one more than there
     *     are runs after the last
     */
    private static void run(String page, ReadersFolder reader, Map<Integer, String> between)
            throws IOException, InterruptedException {
        List<String> cells = new ArrayList<>();
        int number = 0;
        for (String snippet : ExamplesTest.SNIPPET
                .matcher(ReadersFolder.page("docs/" + page))
                .results()
                .map(found -> found.group(1))
                .toList()) {
            number++;
            if (between.containsKey(number)) {
                cells.add(between.get(number));
            }
            cells.add(snippet);
        }
        assertTrue(number >= 2, number + " snippets on " + page);
        cells.add(between.getOrDefault(number + 1, ""));
        reader.write("page.ipynb", notebook(cells));
        ReadersFolder.Outcome outcome = reader.run(List.of("run", "page.ipynb", "--out", "ran"));
        assertEquals(0, outcome.exitCode(), page + ":\n" + outcome.said());
    }

    private static String notebook(List<String> cells) {
        return new Gson()
                .toJson(Map.of(
                        "nbformat",
                        4,
                        "nbformat_minor",
                        5,
                        "metadata",
                        Map.of(),
                        "cells",
                        cells.stream()
                                .map(cell -> Map.of(
                                        "cell_type",
                                        "code",
                                        "metadata",
                                        Map.of(),
                                        "outputs",
                                        List.of(),
                                        "source",
                                        cell))
                                .toList()));
    }

    /** Returns Java that stops the run if something is not so. */
    private static String must(String condition) {
        return "if (!(" + condition + ")) throw new IllegalStateException(" + new Gson().toJson(condition) + ");";
    }

    private static void theLogbookFormat(ReadersFolder reader) throws IOException, InterruptedException {
        reader.writeLogbookOfThePage("My Roasts");
        reader.writeLoggerFiles("Logger files");
        StringBuilder ofAnotherForm = new StringBuilder("A logger\nof another form\nclock;Sensor 1;Sensor 2;Valve\n");
        for (int s = 0; s < 600; s += 2) {
            ofAnotherForm.append(String.format("%d:%02d;20,5;%d,5;%d\n", s / 60, s % 60, 300 + s / 5, 12));
        }
        reader.write("logger.csv", ofAnotherForm.toString());
        run(
                "logbook-format.md",
                reader,
                Map.of(
                        4,
                        "Files.move(Path.of(\"logger.csv\"), Path.of(\"My Roasts\", \"curves\", \"102.csv\"));",
                        5,
                        must("logbook.batches().size() == 2") + must("logbook.problems().list().isEmpty()")));
    }

    private static void gatheringAFolder(ReadersFolder reader) throws IOException, InterruptedException {
        reader.writeLoggerFiles("Logger files");
        run(
                "gather.md",
                reader,
                Map.of(
                        2,
                        must("!Files.exists(Path.of(\"My Roasts\"))"),
                        3,
                        must("Logbook.open(Path.of(\"My Roasts\")).batches().size() > 0")));
    }

    private static void teachingAClass(ReadersFolder reader) throws IOException, InterruptedException {
        run(
                "class.md",
                reader,
                Map.of(
                        2,
                        "Files.createDirectories(Path.of(\"collected\"));\n"
                                + "var sheet = Lesson.open(4, \"my-class/students/student-07/lesson-4\");\n"
                                + "sheet.cannotTell(\"A minus B\");\n"
                                + "sheet.handIn(\"student-07\", Path.of(\"collected\"));",
                        3,
                        must("Classroom.open(Path.of(\"my-class/teacher\")).collect(Path.of(\"collected\")).toString()"
                                        + ".contains(\"1 \")")
                                + "\nFiles.writeString(Path.of(\"collected/plan-student-07.csv\"),"
                                + " Lesson.open(9, 1).plan(\"Cinder Ridge\", \"204\", \"198\", \"210\").csv());",
                        4,
                        must("Files.exists(Path.of(\"back/student-07/batches.csv\"))")));
    }

    private static void theVirtualRoastery(ReadersFolder reader) throws IOException, InterruptedException {
        reader.write(
                "mine.scenario",
                ReadersFolder.fenced(ReadersFolder.page("docs/virtual-roastery.md"), "ini")
                        .get(0));
        run(
                "virtual-roastery.md",
                reader,
                Map.of(
                        3,
                        must("Logbook.open(\"my-harbour\").batches().size() == 80")
                                + must("Logbook.open(\"my-works\").batches().size() == 300")
                                + must("Logbook.open(\"mine\").batches().size() == 80")));
    }
}
