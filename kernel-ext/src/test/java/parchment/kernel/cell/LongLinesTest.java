package parchment.kernel.cell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import parchment.kernel.source.CellText;

/** What is said where one line of a cell is very long, or more than Java's compiler takes. */
class LongLinesTest {
    private static String errorOf(String cell) {
        try (Evaluator evaluator = Evaluator.open()) {
            return evaluator
                    .run(cell, new RecordingPage())
                    .error()
                    .orElseThrow()
                    .text();
        }
    }

    @Test
    void ofALongLineOnlyWhatStandsAroundThePlaceIsShown() {
        String error = errorOf("int number = \"" + "n".repeat(30_000) + "\";");
        assertTrue(error.length() < 1_000, error.length() + " letters");
        assertTrue(error.contains("(30,016 letters in this line)"), error);
        assertEquals(
                "Line 2:  " + "a".repeat(200) + " ...   (401 letters in this line)",
                new CellText(1, "x\n" + "a".repeat(401)).pointAt(2).get(0));
        assertEquals(
                "Line 2:  " + "a".repeat(400),
                new CellText(1, "x\n" + "a".repeat(400)).pointAt(2).get(0));
        assertEquals(
                "Line 1:  ... " + "a".repeat(100) + "b" + "a".repeat(99) + " ...   (1,001 letters in this line)",
                new CellText(1, "a".repeat(500) + "b" + "a".repeat(500))
                        .pointAt(500)
                        .get(0));
    }

    @Test
    void tooManyNumbersInALineAreBetterReadFromAFile() {
        String numbers = IntStream.range(0, 20_000).mapToObj(Integer::toString).collect(Collectors.joining(","));
        String error = errorOf("int[] numbers = {" + numbers + "};");
        assertTrue(error.contains("64 kB of Java's own code at most") && error.contains("Files.readAllLines"), error);
        assertTrue(error.length() < 1_500, error.length() + " letters");
    }

    @Test
    void anExpressionTooDeepForTheCompilerIsNoEndlessMethod() {
        String error = errorOf("int sum = 1" + "+1".repeat(30_000) + ";");
        assertTrue(error.contains("write it in several lines"), error);
        assertFalse(error.contains("calls itself"), error);
    }
}
