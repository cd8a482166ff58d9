package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Pins when a scale is taken to be known; each threshold is common practice, no source. */
class ScoreScalesTest {
    private static ScoreSheet sheet(int rows, String... scores) {
        List<String> lines = new ArrayList<>(List.of("Batch|Cupper|Acidity|Body"));
        IntStream.range(0, rows)
                .forEach(i -> lines.add("101|" + (i % 2 == 0 ? "Ana" : "Teo") + "|" + scores[i % scores.length] + "|"
                        + scores[(i + 1) % scores.length]));
        return ScoreSheets.of(MadeTables.of(lines.toArray(String[]::new)), ScoreClues.of(List.of("101")))
                .orElseThrow();
    }

    private static String scale(ScoreSheet sheet) {
        return sheet.scales().isEmpty()
                ? "none"
                : sheet.scales().get(0).low() + " to " + sheet.scales().get(0).high();
    }

    /** Scores that stay in a part of a scale tell neither of its ends, whatever their step. */
    @Test
    void scoresThatUseNoEndTellNoScaleAndAreAskedAboutWithTheirStep() {
        assertEquals("none", scale(sheet(10, "6", "7.25", "8.75")));
        assertEquals(
                "What is the scale of acidity, body? There are scores from 6 to 8.75 in steps of 0.25 in 20 cells, which fit"
                        + " 1 to 9, 0 to 9, 1 to 10, 0 to 10.",
                question(sheet(10, "6", "7.25", "8.75")));
        assertTrue(question(sheet(10, "6", "7.5", "8.5")).contains("from 6 to 8.5 in steps of 0.5 in"));
        assertTrue(question(sheet(10, "6", "7", "8")).contains("from 6 to 8 in steps of 1 in"));
        assertTrue(question(sheet(10, "6", "7.1", "8")).contains("from 6 to 8 in steps of 0.1 in"));
        assertTrue(question(sheet(10, "6", "7.13", "8")).contains("from 6 to 8 in 20 cells"));
    }

    private static String question(ScoreSheet sheet) {
        return sheet.open().stream()
                .filter(line -> line.startsWith("What is the scale"))
                .findFirst()
                .orElse("");
    }

    @Test
    void bothEndsTellAScaleFromTwentyScoresOn() {
        assertEquals("1.0 to 5.0", scale(sheet(10, "1", "3", "5")));
        assertEquals("none", scale(sheet(9, "1", "3", "5")));
        assertTrue(sheet(10, "2", "3", "4").open().toString().contains("What is the scale of acidity, body?"));
    }

    @Test
    void scoresAboveFiftyTellAScaleUpToAHundred() {
        assertEquals("0.0 to 100.0", scale(sheet(2, "50", "51")));
        assertEquals("none", scale(sheet(2, "49", "50")));
    }
}
