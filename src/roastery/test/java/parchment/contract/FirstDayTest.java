package parchment.contract;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.display.Html;
import parchment.logbook.Logbook;
import parchment.logbook.contents.EmptyLogbook;

/** What a logbook that was begun today is answered with, asked everything there is to ask. */
class FirstDayTest {
    @TempDir
    static Path temp;

    private static Map<String, String> pages;

    @BeforeAll
    static void ask() throws IOException {
        pages = PicturePages.contents(
                Logbook.open(PictureLogbooks.empty(Files.createDirectories(temp.resolve("new")))));
    }

    @Test
    void tablesOfBatchesSayHowALogbookBegins() {
        for (String name : List.of("Logbook", "BatchTable", "PhaseTable", "WrittenTimes")) {
            assertTrue(pages.get(name).contains(Html.escape(EmptyLogbook.WORDS)), name + ": " + pages.get(name));
        }
    }

    @Test
    void aTableWithoutRowsSaysWhy() {
        pages.forEach((name, page) -> {
            int none = page.indexOf("<p>No rows.</p>");
            assertTrue(none < 0 || page.indexOf("<p><small>", none) > 0, name + ": " + page);
        });
    }

    @Test
    void anAnswerThatCannotBeGivenSaysSoInOurOwnWords() {
        pages.forEach((name, page) -> {
            String words = page.replaceAll("(?s)<(script|style).*?</\\1>", "");
            for (String not : List.of("toIndex", "out of bounds", "null", "No value present", "NaN")) {
                assertFalse(words.contains(not), name + ": " + words);
            }
        });
    }

    @Test
    void aComparisonWithOneSideSaysWhatItTakes() {
        assertTrue(
                pages.get("BeforeAndAfter").contains("Where one side has no batch nothing can be compared"),
                pages.get("BeforeAndAfter"));
    }

    @Test
    void twinsAreToldHowToBeMade() {
        String twins = pages.get("Twins");
        assertTrue(twins.contains("No two batches were meant alike, as far as was written."), twins);
        assertTrue(
                twins.contains("Roast one plan twice now and then: it shows what differs by nobody&#39;s doing."),
                twins);
    }

    @Test
    void nothingUnusualIsNotSaidOfTooFewToTell() {
        String moments = pages.get("Moments");
        assertTrue(moments.contains("Whether anything unusual happened cannot be told."), moments);
        assertFalse(moments.contains("nothing was far enough"), moments);
        assertEquals(1, moments.split("Looked for: ", -1).length - 1);
    }
}
