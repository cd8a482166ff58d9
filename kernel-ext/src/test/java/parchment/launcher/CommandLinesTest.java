package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import parchment.lesson.Lesson;
import parchment.trial.TrialFolder;
import picocli.CommandLine;

/**
 * Runs every {@code ./parchment} line of the README and the handbook as it stands, page by page and in the order of the page, in a folder
 * that has what the page's reader has. The lines that are only read by the option parser are listed with the reason.
 */
class CommandLinesTest {
    private static final Path PROJECT = Path.of("..").toAbsolutePath().normalize();

    /** What a run has written of a notebook; its lines stand in the notebook, for the reader's own lots and batches. */
    private static final Path RAN = PROJECT.resolve("docs").resolve("tour.md");

    private static final Pattern FENCED = Pattern.compile("(?ms)^ *```[^\n]*\n(.*?)^ *```");
    private static final Pattern INLINE = Pattern.compile("`\\./parchment ([^`\n]+)`");
    private static final Pattern LINE = Pattern.compile("(?m)(?:^|&& )\\./parchment (.+)$");

    private static final String SERVES = "starts a server that stays; test_release.py starts one";
    private static final String TESTS = "runs all tests, this one among them";
    private static final String INSTALLS =
            "installs the packed jars, which are made after the tests; test_release.py runs it";
    private static final String PACKS = "packs a release, which is made after the tests; test_stick.py runs it";
    private static final String TOUR = "the tour runs in the lines that name a logbook, and in ./parchment test";

    /** The lines that are not run, and why. */
    private static final Map<String, String> ONLY_PARSED = Map.ofEntries(
            Map.entry("open", SERVES),
            Map.entry("open --logbook \"My Roasts\"", SERVES),
            Map.entry("test", TESTS),
            Map.entry("run", TOUR),
            Map.entry("week", "the demo logbook's week runs in docs/week.md, with orders"),
            Map.entry("install --prefix /tmp/k", INSTALLS),
            Map.entry("release", "builds everything and packs it; test_release_with_java.py packs what is built"),
            Map.entry(
                    "run --markdown docs",
                    "writes into the project's own docs; test_release_with_java.py runs it in a release"),
            Map.entry("install", INSTALLS),
            Map.entry("install --as java", INSTALLS),
            Map.entry("install --jars \"/home/me/roast tools\"", INSTALLS),
            Map.entry("install --start-cells \"/home/me/start.jsh\"", INSTALLS),
            Map.entry("uninstall --as java", INSTALLS),
            Map.entry(
                    "run --fetch-jars NOTEBOOK",
                    "fetches from a registry; GeneralNotebookTest does where one is reached"),
            Map.entry(
                    "uninstall",
                    "takes the kernel out of the home of whoever runs the tests; test_release.py has one of its own"),
            Map.entry("stick --to /media/me/STICK", PACKS),
            Map.entry("stick --to DIR", PACKS),
            Map.entry("stick --to STICK", PACKS),
            Map.entry("make-datasets", "writes the project's own datasets; MakeDatasetsTest compares every file"),
            Map.entry(
                    "roastery --scenario big-works --batches 10020 --seed 5 --out target/big",
                    "ten thousand batches; RoasteryCommandTest writes fewer"));

    @TempDir
    private static Path temporary;

    /** Something that happens before a line is run: what the reader brings, or what others did meanwhile. */
    private interface Before {
        void happens(ReadersFolder reader) throws IOException;
    }

    /** What a page's reader has or does before a line, by page and line. */
    private static Map<String, Before> before() {
        Map<String, Before> all = new LinkedHashMap<>(BEFORE_FILES);
        all.put(
                "docs/coin-flip.md: trial verify flip-1 --seal \"1fa9 a356 ...\"",
                reader -> FlippedRoasts.roast(
                        reader.folder().resolve("flip-1"), reader.folder().resolve("Flipped Roasts")));
        return Map.copyOf(all);
    }

    private static final Map<String, Before> BEFORE_FILES = Map.of(
            "README.md: run --logbook \"My Roasts\"",
            reader -> reader.writeLogbookOfThePage("My Roasts"),
            "README.md: gather \"Logger files\" --to \"My Roasts\"",
            reader -> {
                move(reader, "My Roasts", "roasts of the paragraph before");
                reader.writeLoggerFiles("Logger files");
            },
            "docs/class.md: class collect collected --teacher my-class/teacher --page results.html --envelopes envelopes",
            reader -> {
                Files.createDirectories(reader.folder().resolve("collected"));
                Lesson lesson = Lesson.open(
                        4,
                        reader.folder()
                                .resolve("my-class/students/student-07/lesson-4")
                                .toString());
                lesson.cannotTell("A minus B");
                lesson.handIn("student-07", reader.folder().resolve("collected"));
            },
            "docs/class.md: class roast-plans collected --teacher my-class/teacher --to back",
            reader -> reader.write(
                    "collected/plan-student-07.csv",
                    Lesson.open(9, 1).plan("Cinder Ridge", "204", "198", "210").csv()),
            "docs/logbook-format.md: gather \"Logger files\" --look",
            reader -> reader.writeLoggerFiles("Logger files"),
            "docs/gather.md: gather \"Logger files\" --look",
            reader -> reader.writeLoggerFiles("Logger files"),
            "docs/week.md: week --logbook \"My Roasts\"",
            reader -> reader.writeLogbookOfThePage("My Roasts"),
            "docs/logbook-format.md: gather \"Logger files\" --to \"My Roasts again\" --answers answers.properties",
            reader -> Files.copy(
                    reader.folder().resolve("My Roasts").resolve("gathered-answers.properties"),
                    reader.folder().resolve("answers.properties")),
            "docs/virtual-roastery.md: roastery --scenario mine.scenario --seed 7 --batches 80 --out mine",
            reader -> reader.write(
                    "mine.scenario",
                    ReadersFolder.fenced(ReadersFolder.page("docs/virtual-roastery.md"), "ini")
                            .get(0)),
            "docs/virtual-roastery.md: roastery roast --teacher my-class/teacher --student student-07 --plan plan.csv"
                    + " --out planned-07",
            reader -> reader.write(
                    "plan.csv",
                    ReadersFolder.fenced(ReadersFolder.page("docs/virtual-roastery.md"), "csv")
                            .get(0)));

    private static final Map<String, Before> BEFORE = before();

    private static void move(ReadersFolder reader, String from, String to) throws IOException {
        Files.move(reader.folder().resolve(from), reader.folder().resolve(to));
    }

    /** What stands on a page for something that only the reader has. */
    private static String filledIn(String page, String line, ReadersFolder reader) throws IOException {
        Path folder = reader.folder().resolve("my-class");
        if (page.equals("docs/virtual-roastery.md") && line.contains("--seal 3f2a...")) {
            return line.replace("3f2a...", seal(folder.resolve("students").resolve("seals.csv")));
        }
        if (page.equals("docs/coin-flip.md") && line.contains("1fa9 a356 ...")) {
            return line.replace(
                    "1fa9 a356 ...",
                    TrialFolder.open(reader.folder().resolve("flip-1")).seal());
        }
        if (page.equals("docs/class.md") && line.contains("FILE --seal SEAL")) {
            Path truth = folder.resolve("teacher").resolve("student-07-lesson-4-truth.json");
            return line.replace("FILE", "\"" + truth + "\"")
                    .replace("SEAL", seal(folder.resolve("students").resolve("seals-lesson-4.csv")));
        }
        return line;
    }

    private static String seal(Path seals) throws IOException {
        Matcher seal = Pattern.compile("(?m)^student-07,.*\\b([0-9a-f]{64})\\b").matcher(Files.readString(seals));
        assertTrue(seal.find(), "a seal of student-07 in " + seals);
        return seal.group(1);
    }

    private static List<String> pages() throws IOException {
        List<String> pages = new ArrayList<>(List.of("README.md", "DEVELOPERS.md"));
        try (Stream<Path> docs = Files.walk(PROJECT.resolve("docs"))) {
            docs.filter(page -> page.toString().endsWith(".md"))
                    .filter(page -> !page.equals(RAN))
                    .map(page -> PROJECT.relativize(page).toString().replace('\\', '/'))
                    .sorted()
                    .forEach(pages::add);
        }
        return pages;
    }

    /** Returns the lines of a page without the launcher's name, in the order of the page, each once. */
    private static List<String> lines(String page) throws IOException {
        String text = ReadersFolder.page(page);
        Set<String> lines = new LinkedHashSet<>();
        Matcher either =
                Pattern.compile(FENCED.pattern() + "|" + INLINE.pattern()).matcher(text);
        while (either.find()) {
            if (either.group(1) == null) {
                lines.add(either.group(2).strip());
            } else {
                Matcher line = LINE.matcher(either.group(1));
                while (line.find()) {
                    lines.add(line.group(1).replaceFirst("\\s#.*", "").strip());
                }
            }
        }
        return List.copyOf(lines);
    }

    @TestFactory
    Stream<DynamicTest> everyLineOfThePagesDoesWhatItSays() throws IOException {
        List<DynamicTest> tests = new ArrayList<>();
        for (String page : pages()) {
            List<String> lines = lines(page);
            if (lines.isEmpty()) {
                continue;
            }
            ReadersFolder reader = ReadersFolder.in(Files.createDirectories(temporary.resolve(page.replace('/', ' '))));
            for (String line : lines) {
                tests.add(DynamicTest.dynamicTest(page + ": ./parchment " + line, () -> {
                    parse(line);
                    if (!ONLY_PARSED.containsKey(line)) {
                        run(page, line, reader);
                    }
                }));
            }
        }
        assertTrue(tests.size() >= 25, tests.size() + " lines found");
        return tests.stream();
    }

    private static void parse(String line) {
        try {
            Main.commandLine().parseArgs(ReadersFolder.words(line).toArray(String[]::new));
        } catch (CommandLine.ParameterException e) {
            fail(e.getMessage());
        }
    }

    private static void run(String page, String line, ReadersFolder reader) throws IOException, InterruptedException {
        Before before = BEFORE.get(page + ": " + line);
        if (before != null) {
            before.happens(reader);
        }
        ReadersFolder.Outcome outcome = reader.run(ReadersFolder.words(filledIn(page, line, reader)));
        assertEquals(0, outcome.exitCode(), outcome.said());
        assertTrue(!outcome.said().isBlank(), "nothing was said");
    }

    @Test
    void everyLineThatIsOnlyParsedAndEveryPreparationBelongsToAPage() throws IOException {
        Set<String> lines = new TreeSet<>();
        Set<String> withPage = new TreeSet<>();
        for (String page : pages()) {
            for (String line : lines(page)) {
                lines.add(line);
                withPage.add(page + ": " + line);
            }
        }
        assertEquals(
                List.of(),
                ONLY_PARSED.keySet().stream()
                        .filter(line -> !lines.contains(line))
                        .toList());
        assertEquals(
                List.of(),
                BEFORE.keySet().stream()
                        .filter(line -> !withPage.contains(line))
                        .toList());
    }

    @Test
    void aLineWithAnUnknownOptionOrWithoutWhatItNeedsIsRefused() {
        for (String wrong : List.of("run --outt x", "class hand-out 4", "gathr x", "class collect", "test (builds)")) {
            boolean refused = false;
            try {
                Main.commandLine().parseArgs(ReadersFolder.words(wrong).toArray(String[]::new));
            } catch (CommandLine.ParameterException e) {
                refused = true;
            }
            assertTrue(refused, wrong);
        }
    }
}
