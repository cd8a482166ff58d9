package parchment.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.page.Outcome;
import parchment.lesson.AnswerKey;
import parchment.notebook.LessonPages.Edition;

/** Holds both editions of every lesson to their one source, and runs them: solutions are right, blanks give hints. */
class LessonPagesTest {
    @Test
    void editionsFollowTheirSource() throws IOException {
        for (Map.Entry<Path, String> page : LessonPages.all().entrySet()) {
            if (Boolean.getBoolean("parchment.write.docs")) {
                Files.createDirectories(page.getKey().getParent());
                Files.writeString(page.getKey(), page.getValue());
            }
            assertEquals(
                    page.getValue(),
                    Files.readString(page.getKey()),
                    () -> page.getKey()
                            + " does not follow its source: run this test with -Dparchment.write.docs=true");
        }
    }

    @TestFactory
    List<DynamicTest> everySolutionIsRight() throws IOException {
        List<DynamicTest> tests = new ArrayList<>();
        for (Path source : LessonPages.sources()) {
            Path page = LessonPages.place(source, Edition.TEACHER);
            tests.add(DynamicTest.dynamicTest(page.getFileName().toString(), () -> {
                for (Cell cell : filled(page)) {
                    String said = said(cell);
                    assertTrue(
                            said.contains("Right.") || said.contains("Noted."),
                            () -> cell.source() + " gave: " + said + key(page));
                }
            }));
        }
        return tests;
    }

    /** What is right, for whoever writes the source of a lesson; lesson zero has no key. */
    private static String key(Path page) {
        int number = Integer.parseInt(page.getFileName().toString().replaceFirst("-.*", ""));
        return number == 0 ? "" : "\n" + AnswerKey.of(number, 1).text();
    }

    @TestFactory
    List<DynamicTest> everyBlankGivesTheQuestionBack() throws IOException {
        List<DynamicTest> tests = new ArrayList<>();
        for (Path source : LessonPages.sources()) {
            Path page = LessonPages.place(source, Edition.STUDENT);
            tests.add(DynamicTest.dynamicTest(page.getFileName().toString(), () -> {
                for (Cell cell : filled(page)) {
                    String said = said(cell);
                    assertTrue(said.contains("Nothing filled in yet."), () -> cell.source() + " gave: " + said);
                    assertFalse(cell.source().matches("(?s).*[\u00ab\u00bb].*"), cell::source);
                }
            }));
        }
        return tests;
    }

    /** Runs a notebook to its end and returns the cells to be filled in. */
    private static List<Cell> filled(Path page) throws IOException {
        try (Evaluator evaluator = Evaluator.open()) {
            NotebookRun.Result result = NotebookRun.of(Notebook.read(page), evaluator)
                    .run(new NotebookRun.Progress() {
                        @Override
                        public void cellBegins(int number, int of, Cell cell) {}

                        @Override
                        public void cellEnded(int number, int of, Duration took, Outcome outcome) {}
                    });
            assertTrue(
                    result.failedCell().isEmpty(),
                    () -> page + ", cell " + result.failedCell() + ": "
                            + result.error().map(error -> error.text()).orElse(""));
            return result.notebook().cells().stream()
                    .filter(cell -> cell.tagged("fill"))
                    .toList();
        }
    }

    private static String said(Cell cell) {
        return cell.json().getAsJsonArray("outputs").toString();
    }
}
