package parchment.kernel.stop;

import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Keeps a thread from being ended in the middle of a message, which would leave its socket useless. A thread says that it sends before it
 * looks whether it is to end, and who ends it says so before looking whether it sends: so one of them sees the other.
 */
public final class WholeMessages {
    /** Both for the whole process, as the threads are. */
    private static final Set<Thread> SENDING = ConcurrentHashMap.newKeySet();

    private static final Set<Thread> ENDING = ConcurrentHashMap.newKeySet();

    private WholeMessages() {}

    /**
     * Sends a message; the thread is not ended meanwhile.
     *
     * @throws CellStop if the thread is about to be ended; nothing was sent then
     */
    public static void send(Runnable message) {
        Thread here = Thread.currentThread();
        boolean outermost = SENDING.add(here);
        try {
            if (outermost && ENDING.contains(here)) {
                throw new CellStop(CellStop.Reason.INTERRUPTED);
            }
            message.run();
        } finally {
            if (outermost) {
                SENDING.remove(here);
            }
        }
    }

    /** Ends a thread, unless it sends something now; returns whether it was ended. From then on it sends nothing. */
    static boolean endUnlessSending(Thread thread, Runnable end) {
        ENDING.removeIf(ended -> !ended.isAlive());
        ENDING.add(thread);
        if (SENDING.contains(thread)) {
            ENDING.remove(thread);
            return false;
        }
        end.run();
        return true;
    }
}
