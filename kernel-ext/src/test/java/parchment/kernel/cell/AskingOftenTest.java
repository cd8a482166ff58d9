package parchment.kernel.cell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import parchment.kernel.page.Shown;

/** Runs cells that ask, and reads the line under each. */
class AskingOftenTest {
    private static final String RECORD = """
            record Finding(String of, String what) implements parchment.display.Showable {
                public Finding { Display.asked(new parchment.display.live.Asked("the scores of " + of, what)); }
                public String text() { return "found " + what; }
            }
            """;

    private static Evaluator evaluator;

    @BeforeAll
    static void open() {
        evaluator = Evaluator.open();
        run(RECORD);
    }

    @AfterAll
    static void close() {
        evaluator.close();
    }

    private static RecordingPage run(String code) {
        RecordingPage page = new RecordingPage();
        evaluator.run(code, page);
        return page;
    }

    /** Returns what stands under the cell before the sentence about luck; empty if nothing does. */
    private static String footOf(String code) {
        List<Shown> feet = run(code).feet;
        return feet.isEmpty() ? "" : feet.get(0).text().replaceFirst("( in this session|;).*", "");
    }

    @Test
    void countsWhatACellShowsAtItsEnd() {
        RecordingPage page = run("new Finding(\"Tidewater\", \"a\")");
        assertEquals("found a", page.result());
        assertEquals(1, page.feet.size());
        assertEquals(List.of(), page.shown, "the foot is not what the cell showed");
        assertEquals(
                "The first question put to the scores of Tidewater in this session; after a restart the count begins anew."
                        + " If nothing went with them, it would still bring a finding by luck about one time in 20 (5 in 100).",
                page.feet.get(0).text());
        assertEquals("The 2nd question put to the scores of Tidewater", footOf("new Finding(\"Tidewater\", \"b\")"));
    }

    @Test
    void countsWhatIsKeptInAVariableAndNotShown() {
        assertEquals(
                "The first question put to the scores of Marsh", footOf("var kept = new Finding(\"Marsh\", \"a\");"));
        assertEquals("", footOf("kept"), "to look at an answer again asks nothing");
        assertEquals("", footOf("kept.text()"));
    }

    @Test
    void countsEveryRoundOfALoopThatKeepsOnlyWhatItLikes() {
        assertEquals(
                "Questions 1 to 20 put to the scores of Quay",
                footOf("java.util.stream.IntStream.range(0, 20).mapToObj(i -> new Finding(\"Quay\", \"q\" + i))"
                        + ".filter(f -> f.text().endsWith(\"7\")).count()"));
    }

    @Test
    void askedAgainIsNotANewQuestion() {
        run("new Finding(\"Pier\", \"a\")");
        assertEquals(
                "Asked before, so not counted again: one question has been put to the scores of Pier",
                footOf("new Finding(\"Pier\", \"a\")"));
    }

    @Test
    void aQuestionOfACellThatFailsLaterCountsAndIsTold() {
        assertEquals("The first question put to the scores of Lock", footOf("new Finding(\"Lock\", \"a\");\n1 / 0"));
        assertEquals("The 2nd question put to the scores of Lock", footOf("new Finding(\"Lock\", \"b\")"));
    }

    @Test
    void aCellThatAsksNothingHasNoFoot() {
        run("new Finding(\"Dune\", \"a\")");
        assertEquals("", footOf("1 + 1"));
    }

    @Test
    void aNewSessionBeginsAnew() {
        run("new Finding(\"Weir\", \"a\")");
        run("new Finding(\"Weir\", \"b\")");
        RecordingPage page = new RecordingPage();
        try (Evaluator restarted = Evaluator.open()) {
            restarted.run(RECORD, page);
            restarted.run("new Finding(\"Weir\", \"b\")", page);
        }
        String foot = page.feet.get(0).text();
        assertTrue(
                foot.startsWith("The first question put to the scores of Weir in this session; after a restart"), foot);
    }

    @Test
    void theLibrarysOwnAnswersAreCountedAndTheirTextStaysAsItIs() {
        run("var hillside = Logbook.open(\"../datasets/hillside\");");
        RecordingPage page = run("Halo.of(hillside)");
        assertEquals(1, page.feet.size());
        assertFalse(page.results.get(0).forms().toString().contains("in this session"));
        assertEquals(
                "Asked before, so not counted again: one question has been put to the scores of "
                        + page.feet.get(0).text().replaceFirst("^.*?the scores of (.*?) in this session.*$", "$1"),
                footOf("var halo = Halo.of(Logbook.open(\"../datasets/hillside\"));"));
    }
}
