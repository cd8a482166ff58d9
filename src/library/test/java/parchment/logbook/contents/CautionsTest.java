package parchment.logbook.contents;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.display.Display;
import parchment.logbook.Logbook;

class CautionsTest {
    private static final Path DOCS = Files.isDirectory(Path.of("docs")) ? Path.of("docs") : Path.of("../docs");

    @TempDir
    private Path folder;

    @Test
    void aPageNamesTheDangersAndWhenToStopAndWhoComesFirst() {
        String all = String.join(" ", Cautions.forAPage());
        for (String words : List.of(
                "unattended",
                "chaff burn",
                "carbon monoxide",
                "When to stop",
                "Common practice, no source",
                "maker's manual and your local codes come before",
                "call the fire service")) {
            assertTrue(all.contains(words), words + " in " + all);
        }
    }

    @Test
    void theHandbookSaysTheSameOfWhenToStop() throws IOException {
        String page = Files.readString(DOCS.resolve("safety.md"), StandardCharsets.UTF_8)
                .replaceAll("\\s+", " ");
        String stop = Cautions.forAPage().get(3);
        String said = stop.substring("When to stop: ".length(), stop.indexOf(" (Common practice"));
        assertTrue(page.contains(said), said);
    }

    @Test
    void everyPageOfTheHandbookWithAPictureSaysThatItsMachineIsInvented() throws IOException {
        int pictures = 0;
        try (Stream<Path> pages = Stream.concat(Files.list(DOCS), Stream.of(DOCS.resolveSibling("README.md")))) {
            for (Path page : pages.filter(p -> p.toString().endsWith(".md")).toList()) {
                String text = Files.readString(page, StandardCharsets.UTF_8);
                if (text.matches("(?s).*\\]\\((docs/)?pictures/.*")) {
                    pictures++;
                    assertTrue(text.contains("nvented machine: do not roast"), page::toString);
                }
            }
        }
        assertTrue(pictures >= 6, "pages with a picture: " + pictures);
    }

    /** What a page is told while a logbook is opened. */
    private static List<String> told(Runnable work) {
        List<String> told = new ArrayList<>();
        Display.Target page = new Display.Target() {
            @Override
            public void show(Object value) {
                // Nothing is shown here.
            }

            @Override
            public void holdsForPage(String sentence) {
                told.add(sentence);
            }
        };
        try (Display.Shown shown = Display.on(page)) {
            work.run();
        }
        return told;
    }

    private Logbook logbook(String settings) {
        try {
            Files.writeString(
                    folder.resolve("batches.csv"),
                    "batch,roasted at,lot\n1,2031-01-06T09:00,a\n2,2031-01-06T09:30,b\n");
            Files.writeString(folder.resolve("logbook.properties"), settings);
            return Logbook.open(folder);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "'name=x', ROASTED, 0",
        "'provenance=invented machine', INVENTED, 1",
        "'Provenance = Invented  machine', INVENTED, 1",
    })
    void aLogbookSaysWhereItComesFromAndTellsThePageIfItWasInvented(
            String settings, Logbook.Provenance provenance, int told) {
        assertEquals(
                java.util.Collections.nCopies(told, Cautions.INVENTED_PAGE),
                told(() -> assertEquals(provenance, logbook(settings).provenance())));
    }

    @Test
    void aPartOfAnInventedLogbookIsInventedAndTellsNothingAnew() {
        Logbook whole = logbook("provenance=invented machine");
        assertEquals(List.of(), told(() -> {
            assertEquals(Logbook.Provenance.INVENTED, whole.ofLot("a").provenance());
            assertEquals(
                    Logbook.Provenance.INVENTED,
                    whole.only("1")
                            .in(parchment.quantity.TemperatureUnit.FAHRENHEIT)
                            .provenance());
        }));
    }

    @Test
    void anotherProvenanceIsAProblem() {
        Logbook logbook = logbook("provenance=my drum");
        assertEquals(Logbook.Provenance.ROASTED, logbook.provenance());
        String problems = logbook.problems().list().toString();
        assertTrue(
                problems.contains("'invented machine', which stands in the logbooks of a virtual roastery"), problems);
    }
}
