package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Pins the thresholds of how score sheets are read, a sheet on each side; each is common practice, no source. */
class ScoreThresholdsTest {
    private static final ScoreClues CLUES =
            ScoreClues.of(IntStream.range(101, 121).mapToObj(String::valueOf).toList());

    private static ScoreSheet read(List<String> lines) {
        return ScoreSheets.of(MadeTables.of(lines.toArray(String[]::new)), CLUES)
                .orElseThrow();
    }

    /** A sheet of ten cups whose last column holds so many numbers, and words after them. */
    private static String tenth(String heading, int numbers) {
        List<String> lines = new ArrayList<>(List.of("Batch|Cupper|Acidity|" + heading));
        IntStream.range(0, 10)
                .forEach(i -> lines.add((101 + i) + "|Ana|7|" + (i < numbers ? String.valueOf(5 + i % 3) : "so")));
        return read(lines).cups().get(0).scores().keySet().toString();
    }

    @Test
    void sevenOfTenNumbersMakeAColumnOfScoresUnderAnUnknownWord() {
        assertEquals("[acidity, zorn]", tenth("Zorn", 7));
        assertEquals("[acidity]", tenth("Zorn", 6));
    }

    @Test
    void fiveOfTenMakeOneUnderAnAttribute() {
        assertEquals("[acidity, body]", tenth("Body", 5));
        assertEquals("[acidity]", tenth("Body", 4));
    }

    @Test
    void oneKnownWordOfFourMakesTheOthersAttributesAndOneOfFiveDoesNot() {
        assertTrue(MadeTables.words(read(List.of("Batch|Acidity|Vost|Tirr|Dorm", "101|7|6|7|6"))
                        .cups())
                .toString()
                .contains("vost=6.0, tirr=7.0, dorm=6.0"));
        assertFalse(MadeTables.words(read(List.of("Batch|Acidity|Vost|Tirr|Dorm|Zim", "101|7|6|7|6|7"))
                        .cups())
                .toString()
                .contains("vost=6.0"));
    }

    private static String total(int cups, double off) {
        List<String> lines = new ArrayList<>(List.of("Batch|Cupper|Acidity|Body|Total"));
        for (int i = 0; i < cups; i++) {
            lines.add((101 + i) + "|Ana|" + (6 + i) + "|7|" + (13 + i + off));
        }
        return read(lines).told().toString();
    }

    @Test
    void threeCupsTellATotalAndTwoDoNot() {
        assertTrue(total(3, 0).contains("'total' is only the sum of the others in 3 cups"), total(3, 0));
        assertFalse(total(2, 0).contains("only the sum"), total(2, 0));
    }

    private static String mean(String written) {
        return read(List.of("Batch|Ana|Teo|Average", "101|7|8|" + written, "102|6|7|6.5"))
                .told()
                .toString();
    }

    @Test
    void aMeanIsThatOfTheScoresWithinAWrittenTwentieth() {
        assertFalse(mean("7.55").contains("is not that of the scores"), mean("7.55"));
        assertTrue(mean("7.56").contains("is not that of the scores beside it (7.5)"), mean("7.56"));
    }

    private static String batches(int known) {
        List<String> lines = new ArrayList<>(List.of("Sample|Cupper|Acidity|Body"));
        IntStream.range(0, 4)
                .forEach(i ->
                        lines.add((i < known ? String.valueOf(101 + i) : "x" + i + "x") + "|Ana|7|" + (5 + i % 3)));
        return MadeTables.words(read(lines).cups()).toString();
    }

    @Test
    void moreThanHalfOfTheNamesMakeAColumnOfSamplesOneOfBatches() {
        assertTrue(batches(3).contains("batch 101"), batches(3));
        assertTrue(batches(2).contains("code 101"), batches(2));
    }
}
