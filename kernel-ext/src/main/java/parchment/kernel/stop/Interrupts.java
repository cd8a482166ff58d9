package parchment.kernel.stop;

/** Stops the running cell when asked, from any thread; {@link CellThread} tells by which steps. */
public final class Interrupts {
    private final CellThread thread;
    private boolean running;

    public Interrupts(CellThread thread) {
        this.thread = thread;
    }

    public synchronized void begin() {
        LeftBehind.sweep();
        CellGuard.clear();
        thread.begin();
        running = true;
    }

    /** Waits a little for other threads that run code of a cell which was stopped; returns at once if none was. */
    public static void settle() {
        if (CellGuard.stopping() != null) {
            LeftBehind.gather();
        }
    }

    public synchronized void end() {
        running = false;
        thread.end();
        CellGuard.clear();
    }

    public synchronized void interrupt() {
        if (running) {
            CellGuard.stop(CellStop.Reason.INTERRUPTED);
            thread.interrupt();
        }
    }
}
