package parchment.kernel.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.cell.RecordingPage;
import parchment.kernel.page.Outcome;

/** Errors that say nothing of themselves, too much or never come to an end, and what the reader is told. */
@Timeout(60)
class StrangeErrorsTest {
    private static final String FAILED =
            "` was thrown. What it says of itself cannot be shown, because a method of its own that tells it failed.";

    private static Evaluator evaluator;

    @BeforeAll
    static void open() {
        evaluator = Evaluator.open();
    }

    @AfterAll
    static void close() {
        evaluator.close();
    }

    private final RecordingPage page = new RecordingPage();

    private CellError errorOf(String code) {
        Outcome outcome = evaluator.run(code, page);
        assertFalse(outcome.fine(), "the cell should fail");
        return outcome.error().orElseThrow();
    }

    private void assertGoesOn() {
        assertTrue(evaluator.run("40 + 2", page).fine());
        assertEquals("42", page.result());
    }

    @Test
    void anErrorWhoseTextFailsIsTold() {
        CellError error = errorOf(
                "class Er extends RuntimeException { public String getMessage() { throw new RuntimeException(\"in\"); } }\n"
                        + "throw new Er();");
        assertEquals("Er", error.name());
        assertEquals(List.of("Line 2:  throw new Er();", "`Er" + FAILED), error.lines());
        assertEquals(
                List.of("`Er" + FAILED),
                evaluator
                        .act(
                                page,
                                () -> {
                                    throw new RuntimeException() {
                                        private static final long serialVersionUID = 1L;

                                        @Override
                                        public String getMessage() {
                                            throw new IllegalStateException();
                                        }
                                    };
                                },
                                () -> false)
                        .error()
                        .orElseThrow()
                        .lines()
                        .stream()
                        .map(line -> line.replace("``", "`Er`"))
                        .toList());
        assertGoesOn();
    }

    @Test
    void anErrorWithoutATraceIsTold() {
        CellError error = errorOf(
                "class Bare extends RuntimeException { public StackTraceElement[] getStackTrace() { return null; } }\n"
                        + "throw new Bare();");
        assertEquals("Bare", error.message());
        CellError failing = errorOf(
                "class Bad extends RuntimeException { public StackTraceElement[] getStackTrace() { throw new Bad(); } }\n"
                        + "throw new Bad();");
        assertEquals("Bad", failing.name());
        assertGoesOn();
    }

    @Test
    void anErrorWhoseTextNeverEndsCanBeStopped() {
        CellError error = assertTimeoutPreemptively(Duration.ofSeconds(30), () -> {
            Thread asking = new Thread(() -> {
                try {
                    while (!page.out().contains("begun")) {
                        TimeUnit.MILLISECONDS.sleep(5);
                    }
                } catch (InterruptedException e) {
                    throw new IllegalStateException(e);
                }
                evaluator.interrupt();
            });
            asking.start();
            return errorOf(
                    "class Endless extends RuntimeException {\n"
                            + "  public String getMessage() { System.out.println(\"begun\"); while (true) { } }\n}\nthrow new Endless();");
        });
        assertEquals("Interrupted", error.name());
        assertGoesOn();
    }

    @Test
    void ofATextWithoutBoundTheBeginningIsShown() {
        CellError error = errorOf("throw new RuntimeException(\"z\".repeat(5_000_000));");
        assertTrue(
                error.text().length() < 2 * CellExceptions.LONGEST,
                () -> error.text().length() + " characters");
        assertTrue(error.text().endsWith("z\n... and 4990000 characters more, not shown"));
    }

    @Test
    void anAssertionThatFailsAgainEmptiesNoVariable() {
        errorOf("assert 1 > 2;");
        errorOf("assert 1 > 2;");
        errorOf("int unused = 1;\nassert 1 > 2;");
        assertEquals("", page.err());
    }

    @Test
    void aClassWhoseFirstUseWasStoppedIsToBeMadeAgain() {
        errorOf("class Si { static int n = begin(); static int begin() { System.exit(1); return 1; } }\nSi.n");
        assertEquals(
                "`Si` cannot be used any more, because getting it ready for its first use failed or was stopped: run the cell with"
                        + " the class again.",
                errorOf("Si.n").message());
        assertFalse(
                errorOf("Si.n").text().contains("parchment"),
                () -> errorOf("Si.n").text());
    }

    @Test
    void whatCannotBeShownIsCalledByANameThatTheReaderKnows() {
        evaluator.run(
                "record Bad(int n) { public String toString() { throw new IllegalStateException(\"no\"); } }", page);
        String end = " was made, but could not be shown: the method that puts it into words or draws it failed.";
        assertEquals(
                "The value" + end,
                errorOf("List.of(new Object() { public String toString() { throw new IllegalStateException(); } })")
                        .lines()
                        .get(0));
        assertEquals(
                "The value" + end,
                errorOf("new Object() { public String toString() { throw new IllegalStateException(); } }")
                        .lines()
                        .get(0));
        assertEquals(
                "The Odd" + end,
                errorOf("class Odd { public String toString() { throw new IllegalStateException(); } }\nnew Odd()")
                        .lines()
                        .get(0));
    }

    @Test
    void aThreadDeathOfTheCellsOwnEndsIt() {
        CellError error = errorOf("if (true) throw new ThreadDeath();\nSystem.out.println(\"on\");");
        assertEquals("ThreadDeath", error.name());
        assertEquals("", page.out());
        assertGoesOn();
    }
}
