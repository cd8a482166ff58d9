package parchment.learning;

import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import smile.math.MathEx;
import smile.stat.distribution.GaussianDistribution;

/**
 * Runs work of Smile so that the same seed gives the same answer, and leaves the reader's own seed alone.
 *
 * <p>Smile draws from a generator of the thread that happens to work, so the work runs in a pool of one thread. Its normal numbers come
 * in pairs, the second of which all threads share and keep until somebody asks: one that was left over from other work would shift every
 * draw, so it is used up first, and no two runs overlap.
 */
final class SeededRun {
    private static final Object ONE_AT_A_TIME = new Object();

    private SeededRun() {}

    static <T> T of(long seed, Callable<T> work) {
        ForkJoinPool one = new ForkJoinPool(1);
        try {
            return one.submit(() -> {
                        synchronized (
                                ONE_AT_A_TIME) { // Held by the work itself: what was stopped may go on for a while.
                            useUpKeptNormal(seed);
                            MathEx.setSeed(seed);
                            return work.call();
                        }
                    })
                    .get();
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new java.util.concurrent.CancellationException("Stopped before the end, as asked.");
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof RuntimeException own) {
                throw own;
            }
            throw new IllegalStateException(failed.getCause());
        } finally {
            one.shutdownNow();
        }
    }

    /** A normal number that moves the generator leaves its twin behind; one that does not was the twin. */
    private static void useUpKeptNormal(long seed) {
        MathEx.setSeed(seed);
        double next = MathEx.random();
        MathEx.setSeed(seed);
        GaussianDistribution.getInstance().rand();
        if (MathEx.random() != next) {
            GaussianDistribution.getInstance().rand();
        }
    }
}
