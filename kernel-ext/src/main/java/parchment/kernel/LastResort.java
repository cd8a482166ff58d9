package parchment.kernel;

/**
 * Ends the process at once when one of the kernel's own threads has died for lack of memory: without it the client would wait for ever, while
 * it starts a kernel that has ended anew. Needs no memory itself.
 */
final class LastResort implements Thread.UncaughtExceptionHandler {
    /** The beginnings of the names of the threads without which no client is answered; the library's are among them. */
    private static final String[] NEEDED = {"iothread", "reaper", "shell", "control", "heartbeat"};

    private static final int ENDED_FOR_MEMORY = 3;

    private final Runnable end;

    LastResort(Runnable end) {
        this.end = end;
    }

    /** Stands by for all threads of this process. */
    static void standBy() {
        Thread.setDefaultUncaughtExceptionHandler(
                new LastResort(() -> Runtime.getRuntime().halt(ENDED_FOR_MEMORY)));
    }

    @Override
    public void uncaughtException(Thread thread, Throwable thrown) {
        if (thrown instanceof OutOfMemoryError && isNeeded(thread.getName())) {
            end.run();
            return;
        }
        System.err.println("The thread '" + thread.getName() + "' ended early.");
        thrown.printStackTrace(System.err);
    }

    private static boolean isNeeded(String name) {
        for (String needed : NEEDED) {
            if (name.startsWith(needed)) {
                return true;
            }
        }
        return false;
    }
}
