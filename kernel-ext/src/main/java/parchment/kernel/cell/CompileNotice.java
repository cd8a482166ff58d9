package parchment.kernel.cell;

import java.time.Duration;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import parchment.kernel.page.CellPage;

/**
 * Tells the reader once a cell when it is compiled for long: a method of thousands of lines takes Java's compiler a minute, in which nothing is
 * seen and nothing can be stopped. The time in which the cell's own code runs does not count.
 */
final class CompileNotice {
    static final String WORDS = "Java is still compiling this cell. It can be stopped only when that is done."
            + " A shorter method, or data read from a file, compiles sooner.\n";

    static final Duration AFTER = Duration.ofSeconds(5);

    private final Duration after;
    private @Nullable ScheduledThreadPoolExecutor clock;
    private @Nullable ScheduledFuture<?> due;
    private @Nullable CellPage page;

    CompileNotice() {
        this(AFTER);
    }

    CompileNotice(Duration after) {
        this.after = after;
    }

    /** Begins with a cell, which is compiled first. */
    synchronized void begin(CellPage ofCell) {
        page = ofCell;
        resume();
    }

    /** Takes note that the cell's code runs now. */
    synchronized void pause() {
        ScheduledFuture<?> waiting = due;
        if (waiting != null) {
            waiting.cancel(false);
            due = null;
        }
    }

    /** Takes note that what comes next of the cell is compiled. */
    synchronized void resume() {
        pause();
        if (page != null) {
            due = clock().schedule(this::tell, after.toMillis(), TimeUnit.MILLISECONDS);
        }
    }

    /** Ends with the cell. */
    synchronized void end() {
        pause();
        page = null;
    }

    private synchronized void tell() {
        CellPage told = page;
        if (told != null && due != null) {
            told.print(CellPage.Stream.STDERR, WORDS);
            end();
        }
    }

    private ScheduledThreadPoolExecutor clock() {
        ScheduledThreadPoolExecutor running = clock;
        if (running == null) {
            running = new ScheduledThreadPoolExecutor(1, work -> {
                Thread thread = new Thread(work, "compile notice");
                thread.setDaemon(true);
                return thread;
            });
            running.setRemoveOnCancelPolicy(true);
            clock = running;
        }
        return running;
    }

    synchronized void close() {
        end();
        if (clock != null) {
            clock.shutdownNow();
        }
    }
}
