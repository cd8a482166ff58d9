package parchment.kernel.help;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import parchment.display.Showable;
import parchment.feature.Feature;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.cell.RecordingPage;
import parchment.kernel.imports.Rooms;
import parchment.kernel.page.Outcome;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;

/**
 * Every class that a notebook begins something with carries an example in its comment, and every such example runs.
 *
 * <p>Which those are: a public top-level type with a public static method that takes a {@link Logbook} or a {@link Batch} or gives a
 * {@link Logbook} or a {@link Feature}; in the rooms of display, charts and controls, which know of no logbook, a {@link Showable} with a public
 * static method that gives one of its own kind. Types that are only handed out by these need none.
 */
public class ExamplesTest {
    private static final Set<String> PAGES = Set.of("chart", "control", "display");
    private static final Pattern CLASS_COMMENT =
            Pattern.compile("(?s)/\\*\\*(?:(?!\\*/).)*\\*/(?=\\s*(?:@\\w+\\s*)*public )");
    public static final Pattern EXAMPLE = Pattern.compile("(?s)<pre>\\{@code\\n(.*?)\\n \\* }</pre>");
    private static final Path DEMO =
            Path.of("..", "datasets", "harbour").toAbsolutePath().normalize();

    private static Evaluator evaluator;
    private static String before;

    @BeforeAll
    static void open() {
        before = System.getProperty("parchment.logbook");
        System.setProperty("parchment.logbook", DEMO.toString());
        evaluator = Evaluator.open();
        Outcome outcome = evaluator.run("var logbook = Logbook.open();", new RecordingPage());
        assertTrue(outcome.fine(), () -> outcome.error().orElseThrow().text());
    }

    @AfterAll
    static void close() {
        evaluator.close();
        if (before == null) {
            System.clearProperty("parchment.logbook");
        } else {
            System.setProperty("parchment.logbook", before);
        }
    }

    @TestFactory
    Stream<DynamicTest> everyClassThatANotebookBeginsWithHasAnExampleThatRuns() {
        return notebookFacing()
                .map(type -> DynamicTest.dynamicTest(type.getSimpleName(), () -> {
                    List<String> examples = examples(type);
                    if (examples.isEmpty()) {
                        fail("A roaster who presses shift-tab on " + type.getSimpleName()
                                + " is shown no example. Write one into the comment on the class in " + type.getName()
                                + ", after its first paragraph, as\n\n * <pre>{@code\n * " + type.getSimpleName()
                                + ".of(logbook)\n * }</pre>\n\nof one to three lines that run in a notebook after"
                                + " `var logbook = Logbook.open();`.");
                    }
                    for (String example : examples) {
                        RecordingPage page = new RecordingPage();
                        Outcome outcome = evaluator.run(example, page);
                        assertTrue(
                                outcome.fine(),
                                () -> "The example in the comment on " + type.getName()
                                        + " must run in a notebook after"
                                        + " `var logbook = Logbook.open();`, but\n\n" + example + "\n\ngives\n\n"
                                        + outcome.error().orElseThrow().text());
                    }
                }));
    }

    /** The pages whose snippets name folders of the reader's; {@link FolderExamplesTest} runs them in such folders. */
    static final Set<String> NAME_FOLDERS = Set.of("logbook-format.md", "gather.md", "class.md", "virtual-roastery.md");

    /** Pages that a run has written; test_release_with_java.py runs them again. */
    private static final Set<String> RAN = Set.of("tour.md");

    static final Pattern SNIPPET = Pattern.compile("(?ms)^ *```java\n(.*?)^ *```");

    @TestFactory
    Stream<DynamicTest> everySnippetOfThePagesRuns() throws IOException {
        Path home = DEMO.getParent().getParent();
        List<Path> pages = new ArrayList<>(List.of(home.resolve("README.md")));
        try (Stream<Path> docs = Files.list(home.resolve("docs"))) {
            docs.filter(page -> page.toString().endsWith(".md"))
                    .filter(page -> !NAME_FOLDERS.contains(page.getFileName().toString()))
                    .filter(page -> !RAN.contains(page.getFileName().toString()))
                    .sorted()
                    .forEach(pages::add);
        }
        List<DynamicTest> tests = new ArrayList<>();
        for (Path page : pages) {
            SNIPPET.matcher(Files.readString(page))
                    .results()
                    .map(found -> found.group(1))
                    .forEach(snippet ->
                            tests.add(DynamicTest.dynamicTest(page.getFileName() + ": " + snippet.strip(), () -> {
                                Outcome outcome = evaluator.run(snippet, new RecordingPage());
                                assertTrue(
                                        outcome.fine(),
                                        () -> "A snippet of " + page.getFileName() + " must run in a notebook, but\n\n"
                                                + snippet + "\ngives\n\n"
                                                + outcome.error().orElseThrow().text());
                            })));
        }
        assertTrue(tests.size() >= 4, tests.size() + " snippets found");
        return tests.stream();
    }

    @Test
    void knowsTheClassesThatARoasterCalls() {
        Set<String> names = notebookFacing().map(Class::getSimpleName).collect(Collectors.toSet());
        Set<String> expected = Set.of(
                "Logbook", "Phases", "BatchChart", "OverlayChart", "BatchTable", "Features", "Evidence", "Explorer");
        assertTrue(names.containsAll(expected), names.toString());
        assertFalse(names.contains("Verdict"), "it is handed out, not called");
    }

    private static Stream<Class<?>> notebookFacing() {
        return Rooms.types().entrySet().stream()
                .flatMap(room -> room.getValue().stream().<Class<?>>map(type -> load(room.getKey(), type)))
                .filter(type -> Modifier.isPublic(type.getModifiers()))
                .filter(type -> Arrays.stream(type.getDeclaredMethods())
                        .filter(method ->
                                Modifier.isPublic(method.getModifiers()) && Modifier.isStatic(method.getModifiers()))
                        .anyMatch(method -> begins(method, type)));
    }

    private static boolean begins(Method method, Class<?> type) {
        boolean takes = Stream.of(method.getParameterTypes()).anyMatch(p -> p == Logbook.class || p == Batch.class);
        boolean gives = method.getReturnType() == Logbook.class || method.getReturnType() == Feature.class;
        String room = type.getPackageName().substring("parchment.".length());
        boolean shows = PAGES.contains(room) && Showable.class.isAssignableFrom(type) && method.getReturnType() == type;
        return takes || gives || shows;
    }

    private static Class<?> load(String room, String type) {
        try {
            return Class.forName("parchment." + room + "." + type, false, ExamplesTest.class.getClassLoader());
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException(e);
        }
    }

    private static List<String> examples(Class<?> type) {
        String source = DocSource.text(type.getName())
                .orElseThrow(() -> new AssertionError("The source of " + type.getName() + " is not in the jar."));
        String comment = CLASS_COMMENT
                .matcher(source)
                .results()
                .map(MatchResult::group)
                .findFirst()
                .orElse("");
        return EXAMPLE.matcher(comment)
                .results()
                .map(match -> match.group(1)
                        .lines()
                        .map(line -> line.replaceFirst("^ \\* ?", ""))
                        .collect(Collectors.joining("\n")))
                .toList();
    }
}
