package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.logbook.written.Problem;

class DuplicatesTest {
    private static final String HEAD = "cupping,tasted on,cupper,batch,blind code,cup,serving position,sweetness,note";

    @TempDir
    Path temporary;

    private static List<String> problems(Logbook logbook, String file) {
        return logbook.problems().list().stream()
                .filter(problem -> problem.file().startsWith(file))
                .map(Problem::toString)
                .filter(line -> !line.contains("scores kept, joined to no batch"))
                .toList();
    }

    private Logbook curves(String... texts) throws IOException {
        WrittenFolder folder = new WrittenFolder(temporary);
        for (int i = 0; i < texts.length; i++) {
            folder = folder.withText("curves/" + (i + 1) + ".csv", texts[i]);
        }
        return folder.open();
    }

    private Logbook cups(String... rows) throws IOException {
        return new WrittenFolder(temporary)
                .with("cuppings.csv", HEAD + "\n" + String.join("\n", rows))
                .withText("curves/1.csv", WrittenFolder.curve("°C", 0, 100, 2, 200))
                .open();
    }

    @Test
    void namesTwoBatchesOfTheSameReadingsAndKeepsBoth() throws IOException {
        Logbook logbook = curves(
                WrittenFolder.curve("°C", -20, 600, 2, 210),
                WrittenFolder.curve("°C", -20, 600, 2, 211),
                WrittenFolder.curve("°C", -20, 600, 2, 210));
        assertEquals(3, logbook.batches().size());
        assertEquals(
                List.of(
                        "curves/3.csv: found the same bean temperatures as in curves/1.csv; expected readings of its own; no two"
                                + " roasts are alike to the last digit; both kept as two batches: if they are one, take one out, else it"
                                + " counts twice."),
                problems(logbook, "curves/"));
    }

    @Test
    void knowsTheSameReadingsOnAClockThatStartsElsewhere() throws IOException {
        String text = WrittenFolder.curve("°C", 0, 100, 2, 210);
        String[] lines = text.split("\n");
        for (int i = 1; i < lines.length; i++) {
            int comma = lines[i].indexOf(',');
            lines[i] = Integer.parseInt(lines[i].substring(0, comma)) + 900 + lines[i].substring(comma);
        }
        String later = String.join("\n", lines);
        assertEquals(1, problems(curves(text, later), "curves/2").size());
    }

    @Test
    void otherTimesOrOneOtherReadingMakeAnotherRoast() throws IOException {
        String text = WrittenFolder.curve("°C", 0, 100, 2, 210);
        assertEquals(List.of(), problems(curves(text, text.replace("\n50,", "\n50.5,")), "curves/2"));
        assertEquals(List.of(), problems(curves(text, text.replace("157.5", "157.6")), "curves/2"));
    }

    @Test
    void comparesFromThirtyReadingsOn() throws IOException {
        String thirty = WrittenFolder.curve("°C", 0, 87, 3, 200);
        assertEquals(1, problems(curves(thirty, thirty), "curves/2").size());
        String fewer = WrittenFolder.curve("°C", 0, 84, 3, 200);
        assertEquals(List.of(), problems(curves(fewer, fewer), "curves/2"));
    }

    @Test
    void aRowOfScoresThatRepeatsAnotherIsSetAside() throws IOException {
        Logbook logbook = cups(
                "spring,2025-03-08,Ana,1,K7,1,,7.5,",
                "spring,2025-03-08,Ana,1,K7,2,,7.5,",
                "spring,2025-03-08,Ana,1,K7,1,,7.5,");
        assertEquals(2, logbook.cups().size());
        assertEquals(
                List.of(
                        "cuppings.csv, line 4, column 'batch': found line 2 again, cell for cell (Ana, spring, batch 1, cup 1);"
                                + " expected one row for each cup that a cupper scored; a second cup has its own number in the column"
                                + " 'cup'; row set aside, the first one kept."),
                problems(logbook, "cuppings"));
    }

    @Test
    void aSecondScoreOfOneCupIsQuestionedAndKept() throws IOException {
        Logbook logbook = cups("spring,2025-03-08,Ana,1,K7,1,,7.5,", "spring,2025-03-08,Ana,1,K7,1,,6,");
        assertEquals(2, logbook.cups().size());
        assertEquals(
                List.of(
                        "cuppings.csv, line 3, column 'cup': found other scores of the cup on line 2 (Ana, spring, batch 1, cup 1);"
                                + " expected one row for each cup that a cupper scored; both kept: if one is a slip, take it out."),
                problems(logbook, "cuppings"));
    }

    @Test
    void anotherCupperCuppingBatchCodeCupOrPlaceIsAnotherCup() throws IOException {
        Logbook logbook = cups(
                "spring,2025-03-08,Ana,1,K7,1,1,7.5,",
                "summer,2025-03-08,Ana,1,K7,1,1,7.5,",
                "spring,2025-03-08,Ben,1,K7,1,1,7.5,",
                "spring,2025-03-08,Ana,2,K7,1,1,7.5,",
                "spring,2025-03-08,Ana,1,M2,1,1,7.5,",
                "spring,2025-03-08,Ana,1,K7,2,1,7.5,",
                "spring,2025-03-08,Ana,1,K7,1,2,7.5,");
        assertEquals(7, logbook.cups().size());
        assertEquals(List.of(), problems(logbook, "cuppings"));
    }

    @Test
    void rowsWithoutACupsNumberThatAreAllRepeatedAreTakenForACopy() throws IOException {
        Logbook logbook = cups(
                "spring,2025-03-08,Ana,1,K7,,,7.5,",
                "spring,2025-03-08,Ben,1,K7,,,7,",
                "spring,2025-03-08,Ana,1,K7,,,7.5,",
                "spring,2025-03-08,Ben,1,K7,,,7,");
        assertEquals(2, logbook.cups().size());
        assertEquals(2, problems(logbook, "cuppings").size());
    }

    @Test
    void rowsWithoutACupsNumberThatElsewhereDifferAreSeveralCups() throws IOException {
        Logbook logbook = cups(
                "spring,2025-03-08,Ana,1,K7,,,7.5,",
                "spring,2025-03-08,Ana,1,K7,,,7.5,",
                "spring,2025-03-08,Ben,1,K7,,,7,",
                "spring,2025-03-08,Ben,1,K7,,,6,");
        assertEquals(4, logbook.cups().size());
        assertEquals(
                List.of(
                        "cuppings.csv, line 3, column 'cup': found the scores of line 2 again (Ana, spring, batch 1); expected the"
                                + " number of the cup, which tells a second cup from a row that was copied; kept as a second cup."),
                problems(logbook, "cuppings"));
    }

    @Test
    void aLogbookOfWhichEveryFileIsCopiedListsEveryCopy() throws IOException {
        String[] texts = new String[210];
        for (int i = 0; i < texts.length; i++) {
            texts[i] = WrittenFolder.curve("°C", 0, 100, 2, 200 + i / 2);
        }
        List<String> problems = problems(curves(texts), "curves/");
        assertEquals(101, problems.size());
        assertTrue(problems.get(100).startsWith("curves/: found 5 more like the 100 before"), problems.get(100));
    }
}
