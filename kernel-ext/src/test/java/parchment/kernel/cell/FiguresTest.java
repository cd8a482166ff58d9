package parchment.kernel.cell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import parchment.kernel.page.Outcome;
import parchment.kernel.page.Shown;

/**
 * The figures of the handbook are what the Java above them draws; run with {@code -Dparchment.write.docs=true} to draw them anew.
 *
 * <p>The words in it agree to the letter; coordinates may differ by a twentieth of a pixel, since Java versions round some functions differently.
 */
class FiguresTest {
    private static final Path DOCS = Path.of("..", "docs").toAbsolutePath().normalize();
    private static final Pattern FIGURE =
            Pattern.compile("(?s)```java\\n((?:(?!```).)*)```\\n\\n!\\[[^\\]]+\\]\\((pictures/[a-z-]+\\.svg)\\)");
    private static final Pattern NUMBER = Pattern.compile("-?[0-9]+(?:\\.[0-9]+)?");
    private static final Pattern WORDS = Pattern.compile(">[^<]+<|aria-label=\"[^\"]*\"");
    private static final double NEAR = 0.05;

    private static Evaluator evaluator;

    @BeforeAll
    static void open() {
        evaluator = Evaluator.open();
        String demo =
                DOCS.resolveSibling("datasets").resolve("harbour").toString().replace("\\", "/");
        assertTrue(evaluator
                .run("var logbook = Logbook.open(\"" + demo + "\");", new RecordingPage())
                .fine());
    }

    @AfterAll
    static void close() {
        evaluator.close();
    }

    private record Figure(String java, String file) {}

    private static List<Figure> figures() throws IOException {
        List<Figure> figures = new ArrayList<>();
        try (Stream<Path> pages = Files.list(DOCS)) {
            for (Path page : pages.filter(file -> file.toString().endsWith(".md"))
                    .sorted()
                    .toList()) {
                FIGURE.matcher(Files.readString(page))
                        .results()
                        .forEach(found -> figures.add(new Figure(found.group(1), found.group(2))));
            }
        }
        return figures;
    }

    @TestFactory
    Stream<DynamicTest> everyFigureIsWhatTheJavaAboveItDraws() throws IOException {
        assertTrue(figures().size() >= 4, "figures found: " + figures());
        return figures().stream()
                .map(figure -> DynamicTest.dynamicTest(figure.file(), () -> {
                    RecordingPage page = new RecordingPage();
                    Outcome outcome = evaluator.run(figure.java(), page);
                    assertTrue(
                            outcome.fine(), () -> outcome.error().orElseThrow().text());
                    String drawn =
                            page.results.get(page.results.size() - 1).forms().get(Shown.SVG);
                    assertTrue(drawn != null && drawn.contains("xmlns"), figure.java() + " draws no picture");
                    Path file = DOCS.resolve(figure.file());
                    if (Boolean.getBoolean("parchment.write.docs")) {
                        Files.writeString(file, drawn, StandardCharsets.UTF_8);
                    }
                    assertAlike(Files.readString(file, StandardCharsets.UTF_8), drawn, figure.file());
                }));
    }

    private static void assertAlike(String kept, String drawn, String name) {
        assertEquals(words(kept), words(drawn), name + ": what is written in the figure");
        assertEquals(
                NUMBER.matcher(kept).replaceAll("0"),
                NUMBER.matcher(drawn).replaceAll("0"),
                name + ": words or shapes");
        List<String> before = numbers(kept);
        List<String> now = numbers(drawn);
        for (int i = 0; i < before.size(); i++) {
            assertEquals(
                    Double.parseDouble(before.get(i)),
                    Double.parseDouble(now.get(i)),
                    NEAR + 1e-9,
                    name + ": number " + (i + 1));
        }
    }

    /** Returns what a reader reads, which must agree to the letter: a printed result is no coordinate. */
    private static List<String> words(String svg) {
        return WORDS.matcher(svg).results().map(MatchResult::group).toList();
    }

    private static List<String> numbers(String svg) {
        Matcher found = NUMBER.matcher(svg);
        return found.results().map(MatchResult::group).toList();
    }

    @Test
    void noFigureLiesAboutUnused() throws IOException {
        Set<String> used = figures().stream().map(Figure::file).collect(Collectors.toSet());
        Set<String> kept = new HashSet<>();
        try (Stream<Path> files = Files.list(DOCS.resolve("pictures"))) {
            files.filter(file -> file.toString().endsWith(".svg"))
                    .forEach(file -> kept.add("pictures/" + file.getFileName()));
        }
        assertEquals(new TreeSet<>(used), new TreeSet<>(kept));
    }
}
