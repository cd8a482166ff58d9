package parchment.display;

import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Lets long work inside the library be stopped from a notebook: loops ask from time to time whether their caller was interrupted.
 *
 * <p>A cell's own loops are stopped by the kernel, but on newer Java versions nothing outside can stop a loop of the library, so each
 * one that may last asks here. Worker threads are not the caller's thread, so a loop shared among them asks through an object made by
 * the caller:
 *
 * <pre>{@code
 * Interruption caller = Interruption.ofCaller();
 * IntStream.range(0, n).parallel().forEach(i -> {
 *     caller.check();
 *     work(i);
 * });
 * }</pre>
 *
 * The interrupt stays set, so that every loop around ends as well.
 *
 * <p>A thread that waits for its workers takes note of an interrupt only when they are done (Java keeps it from sight until then), so a
 * notebook asks by {@link #ask}, which the workers see as well.
 */
public final class Interruption {
    /** Threads that were asked to stop by name, until this is forgotten: the one of the cell, and those that were left behind. */
    private static final Set<Thread> ASKED = ConcurrentHashMap.newKeySet();

    private final Thread caller;
    private volatile boolean seen;

    private Interruption(Thread caller) {
        this.caller = caller;
    }

    /** Returns the interruption of the thread that calls now, to be asked from any thread. */
    public static Interruption ofCaller() {
        return new Interruption(Thread.currentThread());
    }

    /** Interrupts a thread, also where it waits for its workers; for notebooks, not for cells. */
    public static void ask(Thread thread) {
        ASKED.add(thread);
        thread.interrupt();
    }

    /** Forgets what a thread was asked when its work has ended, and the interrupt with it if it is the running thread. */
    public static void forget(Thread thread) {
        ASKED.remove(thread);
        if (thread == Thread.currentThread()) {
            Thread.interrupted();
        }
    }

    /**
     * Goes on unless the thread that made this object was interrupted. Takes some nanoseconds.
     *
     * @throws CancellationException if it was
     */
    public void check() {
        if (seen || isAsked(caller)) {
            seen = true;
            throw stopped();
        }
    }

    /**
     * Goes on unless the running thread was interrupted. Takes some nanoseconds.
     *
     * @throws CancellationException if it was
     */
    public static void checkHere() {
        if (isAsked(Thread.currentThread())) {
            throw stopped();
        }
    }

    private static boolean isAsked(Thread thread) {
        return thread.isInterrupted() || !ASKED.isEmpty() && ASKED.contains(thread);
    }

    private static CancellationException stopped() {
        return new CancellationException("Stopped before the end, as asked.");
    }
}
