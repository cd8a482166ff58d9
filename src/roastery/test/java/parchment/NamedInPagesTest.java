package parchment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The handbook's chapters of methods and words name only classes and tests that exist. */
class NamedInPagesTest {
    private static final Path DOCS = Path.of("..", "docs");
    private static final List<String> PAGES = List.of(
            "methods.md",
            "limits.md",
            "troubleshooting.md",
            "from-r.md",
            "from-spreadsheets.md",
            "glossary.md",
            "architecture.md");

    /** Of Java and the libraries, named in these pages. */
    private static final Set<String> ELSEWHERE = Set.of("List", "LocalDate", "Optional");

    private static final Pattern CODE = Pattern.compile("(`+)([^`].*?)\\1");
    private static final Pattern IN_A_ROOM = Pattern.compile("(?:parchment\\.)?((?:[a-z]+\\.){1,2}[A-Z]\\w*)");
    private static final Pattern NAME = Pattern.compile("(?<![\\w.\"])([A-Z][a-z]\\w*)(?=$|[.(])");

    private static Set<String> sources(Path... roots) throws IOException {
        List<String> names = new ArrayList<>();
        for (Path root : roots) {
            try (Stream<Path> files = Files.walk(root)) {
                files.map(file -> root.relativize(file).toString().replace('\\', '/'))
                        .filter(file -> file.endsWith(".java"))
                        .map(file -> file.substring(0, file.length() - ".java".length())
                                .replace('/', '.'))
                        .forEach(names::add);
            }
        }
        return names.stream().collect(Collectors.toUnmodifiableSet());
    }

    private static Set<String> simple(Set<String> names) {
        return names.stream()
                .map(name -> name.substring(name.lastIndexOf('.') + 1))
                .collect(Collectors.toUnmodifiableSet());
    }

    @Test
    void everyClassAndTestThatIsNamedExists() throws IOException {
        Set<String> full = sources(Path.of("library/main/java/parchment"), Path.of("roastery/main/java/parchment"));
        Set<String> classes = simple(full);
        Set<String> tests = simple(sources(
                Path.of("library/test/java"), Path.of("roastery/test/java"), Path.of("../kernel-ext/src/test/java")));
        List<String> wrong = new ArrayList<>();
        int found = 0;
        for (String page : PAGES) {
            String text = Files.readString(DOCS.resolve(page)).replaceAll("(?ms)^```.*?^```", "");
            for (String code : CODE.matcher(text).results().map(m -> m.group(2)).toList()) {
                var room = IN_A_ROOM.matcher(code);
                if (room.matches()) {
                    found++;
                    if (!full.contains(room.group(1))) {
                        wrong.add(page + ": " + code);
                    }
                } else if (page.equals("troubleshooting.md") && code.contains(" ")) {
                    continue; // a message, which has a test of its own
                } else {
                    for (String name :
                            NAME.matcher(code).results().map(m -> m.group(1)).toList()) {
                        found++;
                        if (!ELSEWHERE.contains(name) && !classes.contains(name) && !tests.contains(name)) {
                            wrong.add(page + ": " + name + " in " + code);
                        }
                    }
                }
            }
        }
        assertEquals(List.of(), wrong, "named in a page, but neither a class nor a test");
        assertTrue(found > 100, "names found: " + found);
    }

    /** A promise without a test is none, and neither is one whose test was taken away. */
    @Test
    void everyPromiseIsHeldByTestsThatExist() throws IOException {
        Set<String> tests = simple(sources(
                Path.of("library/test/java"), Path.of("roastery/test/java"), Path.of("../kernel-ext/src/test/java")));
        List<String> wrong = new ArrayList<>();
        int rows = 0;
        for (String line : Files.readAllLines(DOCS.resolve("reliability.md"))) {
            if (!line.startsWith("| ") || line.startsWith("| ---") || line.startsWith("| promise")) {
                continue;
            }
            rows++;
            String held = line.substring(line.lastIndexOf(" | ") + 1);
            List<String> names = Pattern.compile("`(\\w+(?:Test|\\.py))`")
                    .matcher(held)
                    .results()
                    .map(m -> m.group(1))
                    .toList();
            if (names.isEmpty()) {
                wrong.add("nothing holds: " + line);
            }
            names.stream()
                    .filter(name -> name.endsWith(".py")
                            ? !Files.exists(Path.of("../kernel-ext/src/test/python", name))
                            : !tests.contains(name))
                    .forEach(name -> wrong.add(name + " does not exist"));
        }
        assertEquals(List.of(), wrong);
        assertTrue(rows > 20, "promises: " + rows);
    }
}
