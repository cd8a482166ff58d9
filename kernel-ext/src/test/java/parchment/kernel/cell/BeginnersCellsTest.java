package parchment.kernel.cell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import parchment.kernel.page.Outcome;
import parchment.kernel.words.CellError;

/** What a beginner types, and what they see; the list is beginners-cells.txt. */
class BeginnersCellsTest {
    private static final Evaluator EVALUATOR = Evaluator.open();

    private record Typed(String name, String code, List<String> seen) {}

    @AfterAll
    static void close() {
        EVALUATOR.close();
    }

    private static List<Typed> list() throws IOException {
        try (InputStream in = BeginnersCellsTest.class.getResourceAsStream("/beginners-cells.txt")) {
            List<Typed> cells = new ArrayList<>();
            for (String block : ("\n" + new String(in.readAllBytes(), StandardCharsets.UTF_8)).split("\n## ")) {
                List<String> lines = block.lines().toList();
                List<String> code = lines.stream()
                        .skip(1)
                        .filter(line -> !line.startsWith("=> "))
                        .toList();
                List<String> seen = lines.stream()
                        .filter(line -> line.startsWith("=> "))
                        .map(line -> line.substring(3))
                        .toList();
                if (!cells.isEmpty() || !seen.isEmpty() && !lines.get(0).isEmpty()) {
                    cells.add(new Typed(lines.get(0), String.join("\n", code), seen));
                }
            }
            return cells;
        }
    }

    @TestFactory
    Stream<DynamicTest> seesWhatABeginnerNeeds() throws IOException {
        return list().stream().map(typed -> DynamicTest.dynamicTest(typed.name, () -> check(typed)));
    }

    @Test
    void theListIsLong() throws IOException {
        assertTrue(list().size() >= 100, "cells: " + list().size());
        list().forEach(typed -> assertFalse(typed.seen.isEmpty(), typed.name + " expects nothing at all"));
    }

    private static void check(Typed typed) {
        RecordingPage page = new RecordingPage();
        Outcome outcome = EVALUATOR.run(typed.code, page);
        String error = outcome.error().map(CellError::text).orElse("");
        boolean mayFail = typed.seen.stream().anyMatch(line -> line.startsWith("says ") || line.startsWith("line "));
        assertEquals(!mayFail, outcome.fine(), () -> "ended with: " + error);
        for (String expected : typed.seen) {
            int blank = expected.indexOf(' ');
            String kind = blank < 0 ? expected : expected.substring(0, blank);
            String text = blank < 0 ? "" : expected.substring(blank + 1);
            switch (kind) {
                case "value" -> assertEquals(text, page.result());
                case "shows" -> assertTrue(page.result().contains(text), page::result);
                case "nothing" -> assertEquals("(nothing shown)" + page.out(), page.result() + page.err());
                case "says" -> assertTrue(error.contains(text), error);
                case "line" -> assertTrue(error.startsWith("Line " + text + ":"), error);
                case "prints" -> assertTrue((page.out() + page.err()).contains(text), page.out() + page.err());
                default -> throw new AssertionError("what is '" + expected + "'?");
            }
        }
        assertFalse(error.contains("REPL") || error.contains("JShell"), error);
    }
}
