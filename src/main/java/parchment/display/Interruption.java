package parchment.display;

import java.util.concurrent.CancellationException;

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
 */
public final class Interruption {
    private final Thread caller;

    private Interruption(Thread caller) {
        this.caller = caller;
    }

    /** Returns the interruption of the thread that calls now, to be asked from any thread. */
    public static Interruption ofCaller() {
        return new Interruption(Thread.currentThread());
    }

    /**
     * Goes on unless the thread that made this object was interrupted. Takes some nanoseconds.
     *
     * @throws CancellationException if it was
     */
    public void check() {
        if (caller.isInterrupted()) {
            throw stopped();
        }
    }

    /**
     * Goes on unless the running thread was interrupted. Takes some nanoseconds.
     *
     * @throws CancellationException if it was
     */
    public static void checkHere() {
        if (Thread.currentThread().isInterrupted()) {
            throw stopped();
        }
    }

    private static CancellationException stopped() {
        return new CancellationException("Stopped before the end, as asked.");
    }
}
