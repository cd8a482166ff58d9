package parchment.kernel.cell;

import java.lang.Thread.UncaughtExceptionHandler;
import org.jspecify.annotations.Nullable;
import parchment.kernel.stop.CellStop;
import parchment.kernel.words.CellExceptions;

/** While a cell runs, says in one line what ended a thread that the cell started; the trace of it names nothing the reader wrote. */
final class CellThreads implements AutoCloseable {
    private final @Nullable UncaughtExceptionHandler before = Thread.getDefaultUncaughtExceptionHandler();

    CellThreads() {
        Thread.setDefaultUncaughtExceptionHandler((thread, thrown) -> {
            if (!(thrown instanceof CellStop)) {
                System.err.println("A thread that the cell started ended early: " + CellExceptions.line(thrown));
            }
        });
    }

    @Override
    public void close() {
        Thread.setDefaultUncaughtExceptionHandler(before);
    }
}
