package parchment.kernel.stop;

/** A thread that goes on with a cell which was stopped, as a test has made it. */
public final class MadeLeftBehind {
    private MadeLeftBehind() {}

    /** Takes a thread for one that was left behind by a cell before this one. */
    public static void add(Thread thread) {
        LeftBehind.add(thread);
        CellGuard.clear();
    }

    /** Forgets those that have ended. */
    public static void sweep() {
        LeftBehind.sweep();
        CellGuard.clear();
    }
}
