package parchment.launcher;

import java.nio.file.Path;
import java.util.Optional;
import parchment.kernel.cell.Evaluator;

/**
 * A notebook's run that Ctrl-C ends. While its cells run, the one at work stops and nothing of the notebook is written. Once it is being written, it is
 * written whole; either way no other notebook begins.
 */
final class RunStop implements Runnable {
    /** What a program ends with that Ctrl-C has ended. */
    static final int EXIT_CODE = 130;

    private Optional<Evaluator> running = Optional.empty();
    private boolean asked;
    private boolean writing;

    /** Stops the cell at work; those after it do not begin. */
    @Override
    public synchronized void run() {
        asked = true;
        running.ifPresent(Evaluator::interrupt);
    }

    /** Names where the cells run that are to be stopped; call before the first of them. */
    synchronized void of(Evaluator evaluator) {
        running = Optional.of(evaluator);
    }

    synchronized boolean isAsked() {
        return asked;
    }

    /** Tells whether the notebook may be written: it may not where Ctrl-C came before. From then on Ctrl-C no longer keeps it from being written. */
    synchronized boolean mayWrite() {
        running = Optional.empty();
        writing = !asked;
        return writing;
    }

    /** Says what Ctrl-C has left of a notebook; empty if it did not come. */
    synchronized Optional<String> words(Path notebook) {
        return !asked
                ? Optional.empty()
                : Optional.of(
                        writing
                                ? "Stopped. All of " + notebook + " was written."
                                : "Stopped. Nothing of " + notebook + " was written.");
    }
}
