package parchment.contract;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import parchment.display.Showable;
import parchment.logbook.Logbook;

/** What every public result keeps to, tried on results of a logbook whose every name and note holds markup. */
class ShowableContractTest {
    @TempDir
    static Path temp;

    private static Logbook logbook;
    private static Map<Showable, String> found;

    @BeforeAll
    static void open() throws IOException {
        logbook = Logbook.open(HostileLogbook.write(temp.resolve("hostile")));
        found = ShowableExamples.found(logbook);
    }

    @Test
    void everyPublicResultHasAnExample() {
        Set<String> missing = new TreeSet<>();
        new ClassFileImporter()
                .withImportOption(new ImportOption.DoNotIncludeTests()).importPackages("parchment").stream()
                        .filter(c -> c.isAssignableTo(Showable.class)
                                && !c.isInterface()
                                && c.getModifiers().contains(JavaModifier.PUBLIC)
                                && !c.getModifiers().contains(JavaModifier.ABSTRACT))
                        .forEach(c -> missing.add(c.getName()));
        missing.removeAll(ShowableExamples.classesOf(found.keySet()));
        assertEquals(
                Set.of(),
                missing,
                () ->
                        "These results have no example that the contract could be tried on. For each, add a line to ROOTS in"
                                + " src/roastery/test/java/parchment/contract/ShowableExamples.java (numerics: NumericExamples.java), such as\n  "
                                + missing.stream()
                                        .map(name -> name.substring(name.lastIndexOf('.') + 1))
                                        .map(name ->
                                                "ROOTS.put(\"" + name + "\", logbook -> " + name + ".of(logbook));")
                                        .collect(Collectors.joining("\n  "))
                                + "\nIf its HTML has a script, add that to Fragments.isOurs, and see that no text of a user is in it.");
    }

    @Test
    void theLogbookIsAsHostileAsItShouldBe() {
        assertTrue(logbook.batches().size() >= 90, logbook.toString());
        assertTrue(logbook.batches().get(3).name().contains("onerror"), logbook.toString());
        assertTrue(found.size() > 60, found.size() + " results");
        String all = logbook.html().orElseThrow() + logbook.problems().html().orElse("");
        assertTrue(all.contains("&lt;script&gt;alert(1)&lt;/script&gt;"), all);
    }

    @Test
    void saysItselfInOneLine() {
        each((value, way) -> {
            String line = value.toString();
            assertFalse(line.isBlank(), way);
            assertFalse(line.contains("\n"), way + ": more than one line: " + line);
            assertFalse(line.matches(".*\\b[\\w.$]+@[0-9a-f]{5,8}\\b.*"), way + ": a bare object: " + line);
            assertFalse(line.contains("parchment."), way + ": the name of a class: " + line);
            assertFalse(line.matches(".*\\b(NaN|null)\\b.*"), way + ": not a word for missing: " + line);
            Fragments.digits(line, way);
        });
    }

    @Test
    void readsAsPlainText() {
        each((value, way) -> {
            String text = value.text();
            assertFalse(text.isBlank(), way);
            assertFalse(text.contains("<svg xmlns") || text.contains("<table"), way + ": markup in the text: " + text);
            assertFalse(
                    text.matches("(?s).*\\b[a-z]+\\.[\\w.$]+@[0-9a-f]{5,8}\\b.*"), way + ": a bare object: " + text);
            Fragments.digits(text, way);
        });
    }

    @Test
    void showsItselfInAPageThatNothingOfAUserCanChange() {
        each((value, way) -> {
            Optional<String> html = value.html();
            if (html.isPresent()) {
                Fragments.digits(
                        Fragments.html(html.get(), way).getDocumentElement().getTextContent(), way);
            }
            Optional<String> svg = value.svg();
            if (svg.isPresent()) {
                Fragments.svg(svg.get(), way);
            }
        });
    }

    @Test
    void showsTheSameTwice() {
        each((value, way) -> {
            assertEquals(value.text(), value.text(), way);
            assertEquals(value.svg(), value.svg(), way);
        });
    }

    /** A picture or table right below a heading of the same words would say them a second time. */
    @Test
    void saysNoTitleTwice() {
        // The picture for narrow pages stands beside the wide one and is shown in its place.
        Pattern narrow = Pattern.compile("<svg [^>]* class=\"narrow\".*?</svg>", Pattern.DOTALL);
        Pattern title = Pattern.compile("<(?:h[1-4]|caption)[^>]*>(.*?)</|<svg xmlns[^>]* aria-label=\"([^\"]*)\"");
        each((value, way) -> {
            List<String> titles = title.matcher(
                            narrow.matcher(value.html().orElse("")).replaceAll(""))
                    .results()
                    .map(each -> each.group(each.group(1) == null ? 2 : 1))
                    .filter(words -> !words.isBlank() && !words.equals("&lt;b&gt;"))
                    .toList();
            for (int i = 1; i < titles.size(); i++) {
                assertNotEquals(titles.get(i - 1), titles.get(i), way);
            }
        });
    }

    private interface Check {
        void of(Showable value, String way) throws Exception;
    }

    private static void each(Check check) {
        List<Executable> all = new ArrayList<>();
        found.forEach((value, way) -> all.add(() -> check.of(value, way)));
        assertAll(all);
    }
}
