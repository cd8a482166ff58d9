package parchment.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Says what a reader finds on opening a notebook: what it answers, how long it takes, and where to go next. */
class FirstCellsTest {
    private static final Path NOTEBOOKS = Path.of("..", "notebooks");
    private static final String TOUR = "tour";
    /** Words of the tour's own prose: with what its cells say, counted on the demo logbook, a reader is through in under ten minutes. */
    private static final int PROSE_OF_THE_TOUR = 600;

    static List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(NOTEBOOKS)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".ipynb"))
                    .map(name -> name.replace(".ipynb", ""))
                    .sorted()
                    .toList();
        }
    }

    private static List<Cell> cells(String name) throws IOException {
        return Notebook.read(NOTEBOOKS.resolve(name + ".ipynb")).cells();
    }

    private static List<String> prose(String name) throws IOException {
        return cells(name).stream()
                .filter(cell -> cell.kind() == Cell.Kind.MARKDOWN)
                .map(Cell::source)
                .toList();
    }

    @ParameterizedTest
    @MethodSource("names")
    void theFirstCellSaysWhichQuestionHowLongAndWhereNext(String name) throws IOException {
        assertEquals(Cell.Kind.MARKDOWN, cells(name).get(0).kind());
        String first = prose(name).get(0);
        String opening = first.split("\n\n")[1];
        assertTrue(opening.contains("?"), "the question: " + opening);
        assertTrue(opening.matches("(?s).*\\b([Tt]en|Five|Fifteen|Twenty)\\s+minutes\\b.*"), "how long: " + opening);
        assertTrue(
                name.equals(TOUR)
                        ? opening.contains("which page to open next")
                        : names().stream()
                                .anyMatch(other -> !other.equals(name) && opening.contains("*" + other + "*")),
                "where next: " + opening);
        assertTrue(opening.split("[.?] ").length <= 5, "a few plain sentences: " + opening);
        assertTrue(first.contains("Shift"), first);
    }

    @ParameterizedTest
    @MethodSource("names")
    void theLastCellSendsTheReaderBackToTheDrum(String name) throws IOException {
        List<String> prose = prose(name);
        String last = prose.get(prose.size() - 1).replace('\n', ' ');
        assertTrue(
                last.contains("Never leave a roast unattended; watch the drum, not the screen."), name + ": " + last);
    }

    @Test
    void theTourEndsWithEveryOtherNotebookAndTheCommandsWithoutCode() throws IOException {
        List<String> prose = prose(TOUR);
        String last = prose.get(prose.size() - 1);
        for (String other : names()) {
            assertTrue(other.equals(TOUR) || last.contains("`" + other + ".ipynb`"), other);
        }
        assertTrue(last.contains("`lessons/0-start-here.ipynb`"), last);
        assertTrue(Files.exists(NOTEBOOKS.resolve("lessons/0-start-here.ipynb")));
        for (String command : List.of("./parchment week", "./parchment next LOT", "./parchment batch NAME")) {
            assertTrue(last.contains("`" + command + "`"), command);
        }
    }

    @Test
    void theTourTellsOneStoryInOrder() throws IOException {
        assertEquals(
                List.of(
                        "What you have",
                        "One batch",
                        "Many batches",
                        "What the cup says",
                        "What would tell",
                        "Where to go from here"),
                prose(TOUR).stream()
                        .flatMap(String::lines)
                        .filter(line -> line.startsWith("## "))
                        .map(line -> line.substring(3))
                        .toList());
    }

    @Test
    void theTourIsShort() throws IOException {
        int words = prose(TOUR).stream()
                .mapToInt(text -> text.trim().split("\\s+").length)
                .sum();
        assertTrue(words <= PROSE_OF_THE_TOUR, words + " words");
        String code = cells(TOUR).stream()
                .filter(cell -> cell.kind() == Cell.Kind.CODE)
                .map(Cell::source)
                .collect(Collectors.joining("\n\n"));
        assertTrue(code.startsWith("var logbook = Logbook.open();\nlogbook\n\n"), code);
        assertTrue(!code.contains("problems()"), "problems wait below the first picture: " + code);
    }
}
