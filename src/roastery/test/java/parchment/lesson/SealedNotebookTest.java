package parchment.lesson;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SealedNotebookTest {
    private static final Path NOTEBOOKS = Path.of("..", "notebooks", "lessons");

    private static String written(int lesson) throws IOException {
        try (Stream<Path> files = Files.list(NOTEBOOKS)) {
            return Files.readString(
                    files.filter(file -> file.getFileName().toString().startsWith(lesson + "-"))
                            .findFirst()
                            .orElseThrow());
        }
    }

    private static String sealed(int lesson) throws IOException {
        return SealedNotebook.of(written(lesson), lesson, "O'Neil", "lesson " + lesson);
    }

    /** Returns the text of each cell, a letter for its kind before it. */
    private static List<String> cells(String notebook) {
        List<String> cells = new ArrayList<>();
        for (JsonElement each :
                JsonParser.parseString(notebook).getAsJsonObject().getAsJsonArray("cells")) {
            JsonObject cell = each.getAsJsonObject();
            StringBuilder text =
                    new StringBuilder(cell.get("cell_type").getAsString().substring(0, 1) + " ");
            JsonArray lines = cell.getAsJsonArray("source");
            lines.forEach(line -> text.append(line.getAsString()));
            cells.add(text.toString());
        }
        return cells;
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9})
    void neverTellsAStudentToOpenTheEnvelopeOrToTakeAnythingAway(int lesson) throws IOException {
        String page = sealed(lesson);
        assertFalse(page.contains("slashes"), page);
        assertFalse(page.contains("openEnvelope"), page);
        assertFalse(page.contains("it opens the envelope"), page);
        assertFalse(page.contains("Lesson.open(" + lesson + ", 1)"), page);
        assertFalse(page.contains("your own number"), page);
        assertFalse(page.contains("lesson.roast(plan)"), page);
        assertTrue(page.contains("Invented machine: do not roast."), page);
        List<String> cells = cells(page);
        assertTrue(cells.contains("c lesson.handIn(\"O'Neil\")"), cells::toString);
        assertTrue(
                cells.stream()
                        .anyMatch(cell -> cell.startsWith("m ## Hand in\n\nRun the next cell when you are done.")),
                cells::toString);
        assertTrue(
                cells.stream()
                        .anyMatch(cell -> cell.startsWith(
                                "c var lesson = Lesson.open(" + lesson + ", \"lesson-" + lesson + "\");\n")),
                cells::toString);
        for (String cell : cells(written(lesson))) {
            boolean asked = cell.contains("lesson.check(") || cell.contains("lesson.claim(");
            assertTrue(!asked || cells.contains(cell), cell);
        }
    }

    @Test
    void saysThatTheEnvelopeIsWithTheTeacher() throws IOException {
        assertTrue(cells(sealed(2))
                .contains(
                        "m The envelope is with your teacher, who opens it for everybody at once. You can state your claim anew until"
                                + " you hand in."));
    }

    @Test
    void theLastLessonHandsItsPlanInAndWaitsForTheFolder() throws IOException {
        List<String> cells = cells(sealed(9));
        int handIn = cells.indexOf("c lesson.handInPlan(plan, \"O'Neil\")");
        assertTrue(handIn > 0, cells::toString);
        assertEquals("c var tasted = lesson.tasted(\"O'Neil\");\ntasted", cells.get(handIn + 1));
        assertTrue(cells.get(handIn - 1).contains("Your teacher's machine roasts your plan."), cells.get(handIn - 1));
        assertFalse(cells.get(0).contains("open the\nenvelope"), cells.get(0));
        Set<String> ids = new HashSet<>();
        for (JsonElement cell :
                JsonParser.parseString(sealed(9)).getAsJsonObject().getAsJsonArray("cells")) {
            assertTrue(ids.add(cell.getAsJsonObject().get("id").getAsString()), "each cell has its own name");
        }
    }

    @Test
    void theStartSpeaksOfAFolderAndNotOfANumber() throws IOException {
        String page = SealedNotebook.start(written(0));
        assertTrue(page.contains("## Your folder"), page);
        assertFalse(page.contains("whoever wants to look, can"), page);
        assertFalse(page.contains("the teacher gives you a number"), page);
        assertTrue(page.contains("Invented machine: do not roast."), page);
        assertEquals(cells(written(0)).size(), cells(page).size());
    }

    @Test
    void refusesANotebookThatWouldNotOpenTheStudentsFolder() {
        String other = "{\"cells\":[{\"cell_type\":\"code\",\"source\":\"var lesson = Lesson.open(3, 1);\"}]}";
        assertEquals(
                "my.ipynb cannot be handed out sealed: no cell of it opens the lesson with Lesson.open(2, 1); and so it would not open"
                        + " the student's folder.",
                assertThrows(IOException.class, () -> SealedNotebook.of(other, 2, "ann", "my.ipynb"))
                        .getMessage());
        assertEquals(
                "my.ipynb is no notebook.",
                assertThrows(IOException.class, () -> SealedNotebook.of("nothing", 2, "ann", "my.ipynb"))
                        .getMessage());
    }
}
