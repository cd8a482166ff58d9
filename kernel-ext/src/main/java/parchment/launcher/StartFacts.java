package parchment.launcher;

import java.io.IOException;
import java.time.Duration;
import java.util.concurrent.CancellationException;
import org.jspecify.annotations.Nullable;
import parchment.card.Overview;
import parchment.display.Display;
import parchment.display.Interruption;
import parchment.logbook.Logbook;
import parchment.logbook.LogbookException;

/**
 * Fills the start page while the server starts and the reader reads: the logbook is opened and each part worked out, one after the other,
 * in a thread of its own. It ends after a while whatever the logbook is like, and no fault of it reaches the server.
 */
final class StartFacts {
    /** Ten times what a logbook of some hundred batches takes. */
    static final Duration AT_MOST = Duration.ofMinutes(2);

    private static final Display.Target SILENT = value -> {
        // What long work says of itself would stand among the server's own lines.
    };

    private final StartPage page;
    private final LogbookChoice choice;

    private StartFacts(StartPage page, LogbookChoice choice) {
        this.page = page;
        this.choice = choice;
    }

    /** Begins, and returns at once. */
    static void begin(StartPage page, LogbookChoice choice, Duration atMost) {
        Thread work = daemon("start page", new StartFacts(page, choice)::fill);
        daemon("start page, its bound", () -> stopAfter(atMost, work));
    }

    private static Thread daemon(String name, Runnable work) {
        Thread thread = new Thread(work, name);
        thread.setDaemon(true);
        thread.start();
        return thread;
    }

    private static void stopAfter(Duration atMost, Thread work) {
        try {
            work.join(atMost.toMillis());
            if (work.isAlive()) {
                Interruption.ask(work);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void fill() {
        try (Display.Shown silent = Display.on(SILENT)) {
            fillParts();
        } catch (IOException e) {
            return; // The page stays as it is: a full disk is told by whatever else is written.
        } finally {
            Interruption.forget(Thread.currentThread());
        }
    }

    private void fillParts() throws IOException {
        if (choice.folder() == null) {
            page.endWith("No logbook was named. Start again with --logbook and the folder of yours.");
            return;
        }
        try {
            Logbook logbook = Logbook.open(choice.folder());
            page.isOf(logbook);
            for (Overview.Part part : Overview.Part.values()) {
                page.put(part.of(logbook));
            }
        } catch (CancellationException e) {
            Thread.interrupted(); // Otherwise the last words could not be written.
            page.endWith("This takes longer than " + AT_MOST.toMinutes()
                    + " minutes of this logbook, so it was left. In a notebook, Overview.of(logbook) works it out.");
        } catch (LogbookException e) {
            page.endWith(String.valueOf(e.getMessage()));
        } catch (RuntimeException | OutOfMemoryError | StackOverflowError e) {
            page.endWith(Words.of(e));
        }
    }
}
