package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LogbookSummaryTest {
    @TempDir
    Path temporary;

    /** A row for each batch, every one with a mass that is none. */
    private Logbook withProblems(int problems) throws IOException {
        String[] rows = new String[problems + 2];
        rows[0] = "batch,lot,roasted at,green mass [kg]";
        for (int i = 1; i <= problems; i++) {
            rows[i] = i + ",kela,2025-03-04T09:15,much";
        }
        rows[problems + 1] = "last,kela,2025-03-05T09:15,2";
        WrittenFolder folder = new WrittenFolder(temporary.resolve("with-" + problems))
                .with("logbook.properties", "name=Quay: 2025", "time.zone=Europe/Lisbon")
                .with("batches.csv", rows)
                .withText("curves/last.csv", WrittenFolder.CURVE);
        for (int i = 1; i <= problems; i++) {
            folder.withText("curves/" + i + ".csv", WrittenFolder.curve("°C", 0, 560, 5, 190 + 0.1 * i));
        }
        return folder.open();
    }

    /** The page without what keeps a date in one piece. */
    private static String page(Logbook logbook) {
        return logbook.html().orElseThrow().replaceAll("<span style=\"white-space:nowrap\">(.*?)</span>", "$1");
    }

    private static String beforeAnyFold(String page) {
        return page.substring(0, page.indexOf("<details"));
    }

    @Test
    void beginsWithCountsAndThePictureAndFoldsTheRest() throws IOException {
        Logbook logbook = withProblems(3);
        assertEquals(3, logbook.problems().size(), logbook.problems().text());
        String open = beforeAnyFold(page(logbook));
        assertTrue(
                open.contains(
                        "<p style=\"max-width:50em\">4 batches (4 with a curve), 1 lot, 0 cups scored in 0 cuppings, 3 problems"
                                + " in reading. Roasted on 2 days from 2025-03-04 to 2025-03-05 (time zone Europe/Lisbon)."
                                + " Temperatures are shown in °C.</p>"),
                open);
        assertTrue(open.contains("<svg") && open.contains("Calendar of Quay: 2025"), open);
        assertFalse(open.contains("<caption>"), "tables wait until they are asked for");
        assertTrue(page(logbook).contains(">Its lots, and what was scored</summary>"), page(logbook));
        assertTrue(page(logbook).contains(">What is missing: 8 things</summary>"), page(logbook));
    }

    @Test
    void countsProblemsInTheLineThatOpensThem() throws IOException {
        String few = page(withProblems(Problems.SENTENCES_SHOWN));
        assertTrue(few.contains(">What could not be read as written: 30 problems in 1 file</summary>"), few);
        assertTrue(few.contains("<caption>Problems</caption>"), few);
        assertFalse(few.contains("<caption>Kinds of problems</caption>"), few);
    }

    @Test
    void groupsMoreProblemsThanCanBeReadByKind() throws IOException {
        String many = page(withProblems(Problems.SENTENCES_SHOWN + 1));
        assertTrue(many.contains(">What could not be read as written: 31 problems in 1 file</summary>"), many);
        assertTrue(many.contains("Here they are by kind; logbook.problems() lists them one by one."), many);
        assertTrue(many.contains("<caption>Kinds of problems</caption>"), many);
        assertFalse(many.contains("<caption>Problems</caption>"), many);
    }

    @Test
    void saysThatNothingWasLeftUnread() throws IOException {
        String none = page(withProblems(0));
        assertTrue(none.contains(">What could not be read as written: nothing</summary>"), none);
        assertTrue(none.contains("No problems: everything was read as written."), none);
        assertTrue(none.contains(" Roasted on 1 day, 2025-03-05 (time zone Europe/Lisbon)."), none);
    }

    /** Nobody wrote a yellowing: a phase is missing of every batch. One did: it is not said of the others. */
    @Test
    void namesYellowingAsMissingWhereAllLackIt() throws IOException {
        String[] head = {
            "batch,roasted at,yellowing [min:s],drop [min:s]", "1,2025-03-04T09:15,,10:00", "2,2025-03-05T09:15,,10:00"
        };
        String words =
                "2 of 2 batches without a written yellowing ('1', '2'): their drying and browning cannot be told apart.";
        Logbook none = new WrittenFolder(temporary.resolve("none"))
                .with("logbook.properties", "time.zone=Europe/Lisbon")
                .with("batches.csv", head)
                .open();
        assertTrue(none.text().contains(words), none.text());
        Logbook one = new WrittenFolder(temporary.resolve("one"))
                .with("logbook.properties", "time.zone=Europe/Lisbon")
                .with("batches.csv", head[0], head[1].replace(",,", ",5:00,"), head[2])
                .open();
        assertFalse(one.text().contains("without a written yellowing"), one.text());
    }
}
