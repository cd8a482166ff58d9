package parchment.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The list of notebooks by question, which lies beside them. */
class NotebooksPageTest {
    private static final Path NOTEBOOKS =
            Path.of("..", "notebooks").toAbsolutePath().normalize();
    private static final Pattern LINK = Pattern.compile("\\[[^\\]]+\\]\\(([^)]+)\\)");

    private static List<String> links(String text) {
        return LINK.matcher(text).results().map(found -> found.group(1)).toList();
    }

    @Test
    void theListSaysWhereToStartBeforeAnythingElse() throws IOException {
        String page = Files.readString(NOTEBOOKS.resolve("README.md"));
        assertTrue(page.startsWith("# Which notebook?\n\n**Start here: [tour.ipynb](tour.ipynb).**"), page);
    }

    @Test
    void everyNotebookAnswersOneQuestionOfTheList() throws IOException {
        List<String> named = Files.readString(NOTEBOOKS.resolve("README.md"))
                .lines()
                .filter(line -> line.startsWith("| ") && line.contains("?"))
                .flatMap(line -> links(line).stream())
                .sorted()
                .toList();
        try (Stream<Path> files = Files.list(NOTEBOOKS)) {
            assertEquals(
                    files.map(file -> file.getFileName().toString())
                            .filter(name -> name.endsWith(".ipynb"))
                            .sorted()
                            .toList(),
                    named);
        }
    }

    @Test
    void everyLinkOfTheListLeadsSomewhere() throws IOException {
        for (String link : links(Files.readString(NOTEBOOKS.resolve("README.md")))) {
            assertTrue(Files.exists(NOTEBOOKS.resolve(link)), link);
        }
    }
}
