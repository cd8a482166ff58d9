package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.page.Outcome;
import parchment.notebook.Cell;
import parchment.notebook.Notebook;
import parchment.notebook.NotebookRun;

/** What Ctrl-C leaves of a notebook, before and after it begins to be written. */
class RunStopTest {
    private static final Path BOOK = Path.of("tour.ipynb");

    @Test
    void withoutControlCItIsWrittenAndNothingIsSaid() {
        RunStop stop = new RunStop();
        assertFalse(stop.isAsked());
        assertTrue(stop.mayWrite());
        assertEquals(Optional.empty(), stop.words(BOOK));
    }

    /** Presses Ctrl-C as soon as the cell has begun. */
    private record PressedIn(Runnable controlC) implements NotebookRun.Progress {
        @Override
        public void cellBegins(int number, int of, Cell cell) {
            new Thread(controlC).start();
        }

        @Override
        public void cellEnded(int number, int of, Duration took, Outcome outcome) {
            assertFalse(outcome.fine());
        }
    }

    @Test
    void controlCWhileACellIsAtWorkStopsItAndNothingIsWritten(@TempDir Path folder) throws IOException {
        RunStop stop = new RunStop();
        Path file = Files.writeString(
                folder.resolve("tour.ipynb"),
                "{\"nbformat\":4,\"nbformat_minor\":5,\"metadata\":{},\"cells\":[{\"cell_type\":\"code\",\"metadata\":{},"
                        + "\"outputs\":[],\"source\":\"Thread.sleep(100_000)\"}]}");
        try (Evaluator evaluator = Evaluator.open()) {
            stop.of(evaluator);
            NotebookRun.Result result =
                    NotebookRun.of(Notebook.read(file), evaluator).run(new PressedIn(stop), stop::isAsked);
            assertEquals(Optional.of(1), result.failedCell());
        }
        assertTrue(stop.isAsked());
        assertFalse(stop.mayWrite());
        assertEquals(Optional.of("Stopped. Nothing of tour.ipynb was written."), stop.words(BOOK));
    }

    @Test
    void controlCWhileItIsBeingWrittenLeavesItWholeAndSaysSo() {
        RunStop stop = new RunStop();
        assertTrue(stop.mayWrite());
        stop.run();
        assertTrue(stop.isAsked());
        assertEquals(Optional.of("Stopped. All of tour.ipynb was written."), stop.words(BOOK));
    }
}
