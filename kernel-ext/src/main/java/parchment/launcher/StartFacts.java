package parchment.launcher;

import java.io.IOException;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import parchment.card.Overview;
import parchment.display.Display;
import parchment.display.Interruption;
import parchment.logbook.Logbook;

/**
 * Fills the start page while the server starts and the reader reads: the logbook is opened and each part worked out, one after the other,
 * in a thread of its own. It ends after a while whatever the logbook is like, and no fault of it reaches the server.
 */
final class StartFacts {
    /** Many times what a logbook of some hundred batches takes, so that a slow or busy machine gets there too. */
    static final Duration AT_MOST = Duration.ofMinutes(5);

    private static final Display.Target SILENT = value -> {
        // What long work says of itself would stand among the server's own lines.
    };

    private final StartPage page;
    private final LogbookChoice choice;
    private volatile boolean outOfTime;

    private StartFacts(StartPage page, LogbookChoice choice) {
        this.page = page;
        this.choice = choice;
    }

    /** Begins and returns at once, with what works. */
    static Thread begin(StartPage page, LogbookChoice choice, Duration atMost) {
        StartFacts facts = new StartFacts(page, choice);
        Thread work = daemon("start page", facts::fill);
        daemon("start page, its bound", () -> facts.stopAfter(atMost, work));
        return work;
    }

    private static Thread daemon(String name, Runnable work) {
        Thread thread = new Thread(work, name);
        thread.setDaemon(true);
        thread.start();
        return thread;
    }

    private void stopAfter(Duration atMost, Thread work) {
        try {
            work.join(atMost.toMillis());
            outOfTime = true;
            if (work.isAlive()) {
                Interruption.ask(work);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void fill() {
        Optional<String> why;
        try (Display.Shown silent = Display.on(SILENT)) {
            why = whatStopped();
        }
        Interruption.forget(Thread.currentThread()); // Otherwise the last words could not be written.
        try {
            page.endWith(why.orElse("")); // Nothing is open any more unless something stopped it.
        } catch (IOException e) {
            return; // The page stays as it is; a full disk is told by whatever else is written.
        }
    }

    /** Fills the page and returns why parts of it are still open, if they are. */
    private Optional<String> whatStopped() {
        if (choice.folder() == null) {
            return Optional.of("No logbook was named. Start again with --logbook and the folder of yours.");
        }
        try {
            Logbook logbook = Logbook.open(choice.folder());
            page.isOf(logbook);
            for (Overview.Part part : Overview.Part.values()) {
                page.put(part.of(logbook, LocalDate.now(ZoneId.systemDefault())));
            }
            return Optional.empty();
        } catch (IOException | RuntimeException | OutOfMemoryError | StackOverflowError e) {
            // Whoever is interrupted may fail in many ways: a file that is being read is closed.
            return Optional.of(
                    outOfTime
                            ? "This takes longer than " + AT_MOST.toMinutes()
                                    + " minutes of this logbook, so it was left. In a notebook, Overview.of(logbook) works it out."
                            : Words.of(e));
        }
    }
}
