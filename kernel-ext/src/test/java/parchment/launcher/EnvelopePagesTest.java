package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import parchment.lesson.ClassResults;
import parchment.lesson.Lesson;
import picocli.CommandLine;

/** Envelopes of a class with numbers, whose students write what they like into their names. */
class EnvelopePagesTest {
    private static final Lesson LESSON = Lesson.open(2, 1);

    @TempDir
    private Path folder;

    private Path collected;
    private Path envelopes;

    @BeforeEach
    void places() throws IOException {
        collected = Files.createDirectories(folder.resolve("a/b/collected"));
        envelopes = folder.resolve("a/b/envelopes");
        LESSON.cannotTell("lateness");
    }

    private void sheet(String file, String student) throws IOException {
        String cell = "\"" + student.replace("\"", "\"\"") + "\"";
        Files.writeString(collected.resolve(file), LESSON.answers().csv().replace("2,,1,", "2," + cell + ",1,"));
    }

    private String collect() {
        StringWriter said = new StringWriter();
        CommandLine main = Main.commandLine();
        main.setOut(new PrintWriter(said));
        main.setErr(new PrintWriter(said));
        main.execute("class", "collect", collected.toString(), "--envelopes", envelopes.toString());
        return said.toString();
    }

    private List<String> written() throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(file -> file.toString().endsWith(".html"))
                    .map(file ->
                            folder.resolve("a/b").relativize(file).toString().replace('\\', '/'))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void saysThatThereIsNoneWhereNobodyHandedInASheet() throws IOException {
        String said = collect();

        assertTrue(said.contains("Envelopes: none, for no student has a sheet that could be marked."), said);
        assertFalse(Files.exists(envelopes));
        assertEquals(List.of(), written());
    }

    @Test
    void areWrittenIntoTheirFolderWhateverAStudentIsCalled() throws IOException {
        List<String> names =
                List.of("../../x", folder.resolve("absolute").toString(), "..", "Zoë, third row", "O'Neil", "x", "...");
        for (int i = 0; i < names.size(); i++) {
            sheet(i + ".csv", names.get(i));
        }
        String said = collect();
        List<String> pages = written();
        assertEquals(names.size(), pages.size(), said + pages);
        for (String page : pages) {
            assertTrue(page.matches("envelopes/[^/]+/envelope-lesson-2\\.html"), page);
        }
        assertTrue(pages.contains("envelopes/O'Neil/envelope-lesson-2.html"), pages::toString);
        assertTrue(pages.contains("envelopes/Zoë-third-row/envelope-lesson-2.html"), pages::toString);
        assertTrue(pages.contains("envelopes/x/envelope-lesson-2.html"), pages::toString);
        assertTrue(pages.contains("envelopes/x-2/envelope-lesson-2.html"), "two students never share a folder");
        assertTrue(Files.readString(envelopes.resolve("x/envelope-lesson-2.html"))
                .contains("Invented machine: do not roast."));
    }

    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = "links as Linux and macOS know them")
    void areNotWrittenThroughALink() throws IOException {
        sheet("a.csv", "ann");
        Path elsewhere = Files.createDirectories(folder.resolve("elsewhere"));
        Files.createDirectories(envelopes);
        Files.createSymbolicLink(envelopes.resolve("ann"), elsewhere);
        List<ClassResults.Returned> opened = ClassResults.read(collected).envelopes();
        String message = assertThrows(IllegalArgumentException.class, () -> EnvelopePages.write(opened, envelopes))
                .getMessage();
        assertTrue(message.contains("is none, or only a link to one"), message);
        try (Stream<Path> files = Files.list(elsewhere)) {
            assertEquals(0, files.count());
        }
    }

    @Test
    void areNotWrittenWhereTheSeedsOfAClassLie() throws IOException {
        sheet("a.csv", "ann");
        Files.createDirectories(envelopes.resolve("teacher"));
        Files.writeString(envelopes.resolve("teacher/seeds.properties"), "ann=7\n");
        String said = collect();
        assertTrue(said.contains("is to be given back, but "), said);
        assertFalse(Files.exists(envelopes.resolve("ann")), said);
    }
}
