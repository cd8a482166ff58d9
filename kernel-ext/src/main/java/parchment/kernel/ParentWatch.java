package parchment.kernel;

import java.util.Optional;

/** Ends the kernel when the program that started it is gone: without it nobody could reach the kernel, or end it. */
final class ParentWatch {
    private static final long INTERVAL_MS = 1000;

    private ParentWatch() {}

    /** Starts watching; does the last thing once, when the parent has ended. */
    static void start(Runnable last) {
        Optional<ProcessHandle> parent = ProcessHandle.current().parent();
        if (parent.isEmpty()) {
            return;
        }
        ProcessHandle watched = parent.get();
        Thread thread = new Thread(
                () -> {
                    try {
                        while (watched.isAlive() && isStillParent(watched)) {
                            Thread.sleep(INTERVAL_MS);
                        }
                        last.run();
                    } catch (InterruptedException e) {
                        Thread.currentThread().interrupt();
                    }
                },
                "parent watch");
        thread.setDaemon(true);
        thread.start();
    }

    /** A process that has ended but was not waited for still counts as alive; the kernel's own parent changes all the same. */
    private static boolean isStillParent(ProcessHandle watched) {
        return ProcessHandle.current().parent().map(watched::equals).orElse(false);
    }
}
