package parchment.kernel;

import org.jspecify.annotations.Nullable;
import parchment.display.Interruption;

/**
 * Stops the running cell when asked.
 *
 * <p>First by asking: every loop of the cell itself looks ({@link CellGuard}), and the thread is interrupted, which wakes what
 * sleeps or waits and what polls. Where that does not help because the cell is deep inside a library, the thread is stopped
 * outright on the Java versions that still can (up to 19).
 */
final class Interrupts {
    private static final long PATIENCE_MS = 400;
    private static final int STOPS = 25;

    private final CellControl control;
    private @Nullable Thread running;
    private long cell;

    Interrupts(CellControl control) {
        this.control = control;
    }

    synchronized void begin() {
        CellGuard.clear();
        running = Thread.currentThread();
        cell++;
    }

    synchronized void end() {
        running = null;
        Interruption.forget(Thread.currentThread()); // It was meant for the cell, not for what its thread does next.
        CellGuard.clear();
    }

    synchronized void interrupt() {
        Thread thread = running;
        if (thread == null) {
            return;
        }
        CellGuard.stop(CellStop.Reason.INTERRUPTED);
        Interruption.ask(thread);
        if (Runtime.version().feature() < 20) {
            long meant = cell;
            Thread insist = new Thread(() -> insist(meant), "interrupt");
            insist.setDaemon(true);
            insist.start();
        }
    }

    private void insist(long meant) {
        try {
            for (int i = 0; i < STOPS; i++) {
                Thread.sleep(PATIENCE_MS);
                if (!stopOutright(meant)) {
                    return;
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @SuppressWarnings({"deprecation", "removal"})
    private synchronized boolean stopOutright(long meant) {
        if (cell != meant || running == null) {
            return false;
        }
        Thread thread = control.userThread();
        if (thread != null) { // Never while JShell compiles: its state would be left half changed.
            thread.stop();
        }
        return true;
    }
}
