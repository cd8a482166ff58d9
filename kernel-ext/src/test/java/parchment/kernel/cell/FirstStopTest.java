package parchment.kernel.cell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.kernel.page.Outcome;
import parchment.kernel.words.CellError;

/**
 * The first thing a session does may be a recursion without end that catches what ends it. Its overflows come anywhere, also where Java
 * would make a class of its own ready for the first stop; a class that fails then fails for good. So each cell here has a Java of its own.
 */
class FirstStopTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "System.out.println(\"begun\");\nvoid rec() { while (true) { try { rec(); } catch (Throwable t) { } } }\nrec()",
                "System.out.println(\"begun\");\nint f(int n) { try { return f(n + 1); } catch (Throwable t) { return f(n); } }\nf(0)",
            })
    void theNextCellRunsAfterTheVeryFirstStop(String cell) throws IOException, InterruptedException {
        Process once = new ProcessBuilder(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        Once.class.getName(),
                        cell))
                .redirectErrorStream(true)
                .start();
        String said = new String(once.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(once.waitFor(60, TimeUnit.SECONDS));
        assertEquals("Interrupted: the cell was stopped before its end.\n2\n", said);
    }

    /** A session whose first cell is stopped while it runs, and a cell after it. */
    static final class Once {
        private Once() {}

        public static void main(String[] arguments) throws InterruptedException {
            try (Evaluator evaluator = Evaluator.open()) {
                evaluator.warmUp();
                RecordingPage page = new RecordingPage();
                Thread stop = new Thread(() -> stopOnceBegun(evaluator, page));
                stop.start();
                Outcome stopped = evaluator.run(arguments[0], page);
                stop.join();
                System.out.println(stopped.error().map(CellError::text).orElse("not stopped"));
                Outcome next = evaluator.run("1 + 1", page);
                System.out.println(next.error().map(CellError::text).orElseGet(page::result));
            }
            System.exit(0);
        }

        private static void stopOnceBegun(Evaluator evaluator, RecordingPage page) {
            try {
                while (!page.out().contains("begun")) {
                    TimeUnit.MILLISECONDS.sleep(5);
                }
                TimeUnit.MILLISECONDS.sleep(500);
            } catch (InterruptedException e) {
                return;
            }
            evaluator.interrupt();
        }
    }
}
