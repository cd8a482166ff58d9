package parchment.kernel.stop;

import java.util.Optional;
import java.util.Set;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.LinkedBlockingQueue;
import org.jspecify.annotations.Nullable;
import parchment.display.Interruption;

/**
 * Runs the code of cells on a thread of its own, apart from the one that compiles them and answers: so an answer never waits for code
 * that nothing can stop.
 *
 * <p>A stop goes by steps. First it is asked for: every method, loop and catch block of the cell itself looks ({@link CellGuard}), and
 * the thread is interrupted, which wakes what sleeps or waits and what polls. Where that does not help, because the cell is deep inside
 * a library, the thread is stopped outright on the Java versions that still can (up to 19). Where that does not help either, it is left
 * behind: the next cell gets another thread, and this one ends as soon as it comes back to code of a cell.
 */
public final class CellThread implements AutoCloseable {
    private static final long UNTIL_STOPPED_MS = 400;
    private static final long UNTIL_LEFT_MS = 600;

    /** Between two looks whether a stop was asked for or has helped; the end of the work itself is told at once. */
    private static final long LOOK_EVERY_MS = 50;

    /** The stack is generous because cells recurse. */
    private static final long STACK = 4L << 20;

    private static final boolean STOPS_OUTRIGHT = Runtime.version().feature() < 20;

    private volatile @Nullable Worker worker;
    private final Set<Thread> stoppedOutright = ConcurrentHashMap.newKeySet();
    private volatile Optional<String> leftInside = Optional.empty();

    /** What a cell does that may last. */
    @FunctionalInterface
    public interface Work {
        @Nullable
        Object run() throws Exception;
    }

    /** Makes ready for the next cell. */
    void begin() {
        leftInside = Optional.empty();
    }

    /** Returns the method that the running cell was left behind in; nothing if it was not. */
    public Optional<String> leftInside() {
        return leftInside;
    }

    /**
     * Runs work for a cell and waits for it, unless the cell is stopped meanwhile and the work does not end.
     *
     * @throws CellStop if the cell was stopped before the work began, or the work was left behind
     * @throws Exception whatever the work throws
     */
    @Nullable
    public Object call(Work work) throws Exception {
        Worker mine = worker;
        if (mine == null || !mine.thread.isAlive()) {
            mine = new Worker();
            worker = mine;
            mine.thread.start();
        } else if (mine.thread == Thread.currentThread()) {
            return work.run();
        }
        Job job = new Job(work);
        mine.jobs.add(job);
        waitFor(job, mine);
        return job.result();
    }

    /** Asks the running work to end, from any thread, after {@link CellGuard#stop}. */
    void interrupt() {
        Worker asked = worker;
        if (asked != null) {
            Interruption.ask(asked.thread);
        }
    }

    /** Forgets what the running work was asked. */
    void end() {
        Worker asked = worker;
        if (asked != null) {
            Interruption.forget(asked.thread);
        }
        // Their workers elsewhere asked for them until now. One that is left behind after all is asked on.
        stoppedOutright.removeIf(thread -> {
            if (!LeftBehind.has(thread)) {
                Interruption.forget(thread);
            }
            return true;
        });
    }

    @Override
    public void close() {
        Worker idle = worker;
        worker = null;
        if (idle != null) {
            idle.thread.interrupt();
        }
    }

    private void waitFor(Job job, Worker mine) throws InterruptedException {
        long asked = 0;
        MemoryWatch memory = new MemoryWatch();
        while (!job.endsWithin(LOOK_EVERY_MS) && mine.thread.isAlive()) {
            if (CellGuard.stopping() == null) {
                if (memory.runsOut()) {
                    CellGuard.stop(CellStop.Reason.MEMORY);
                    Interruption.ask(mine.thread);
                }
                continue;
            }
            long now = System.nanoTime() / 1_000_000;
            if (asked == 0) {
                asked = now;
                LeftBehind.wake();
            } else if (now - asked > UNTIL_LEFT_MS) {
                leave(mine);
                throw new CellStop(CellStop.Reason.INTERRUPTED);
            } else if (STOPS_OUTRIGHT && worker == mine && now - asked > UNTIL_STOPPED_MS) {
                // Whether the stop arrives in time cannot be known, so the thread is not used again.
                if (WholeMessages.endUnlessSending(mine.thread, () -> stopOutright(mine.thread))) {
                    worker = null;
                    stoppedOutright.add(mine.thread);
                }
            }
        }
    }

    private void leave(Worker mine) {
        worker = null;
        LeftBehind.add(mine.thread);
        leftInside = LeftBehind.stillInside(mine.thread);
        mine.thread.setPriority(Thread.MIN_PRIORITY);
    }

    @SuppressWarnings({"deprecation", "removal"})
    private static void stopOutright(Thread thread) {
        thread.stop();
    }

    private final class Worker implements Runnable {
        private final BlockingQueue<Job> jobs = new LinkedBlockingQueue<>();
        private final Thread thread = new Thread(null, this, "cell", STACK);

        Worker() {
            thread.setDaemon(true);
        }

        @Override
        public void run() {
            while (worker == this) {
                try {
                    jobs.take().run();
                } catch (InterruptedException e) {
                    continue; // It was meant for a cell that has ended, or this is not needed any more.
                }
            }
        }
    }

    private static final class Job {
        private final Work work;
        private boolean ended;
        private @Nullable Object value;
        private @Nullable Throwable thrown;

        Job(Work work) {
            this.work = work;
        }

        void run() {
            try {
                if (CellGuard.stopping() == null) {
                    Interruption.forget(Thread.currentThread()); // It was meant for an earlier cell.
                }
                CellStop.Reason reason = CellGuard.stopping(); // Read again: it may have come in between.
                if (reason != null) {
                    throw new CellStop(reason);
                }
                value = work.run();
            } catch (Throwable e) {
                thrown = e;
            } finally {
                tellEnd();
            }
        }

        private synchronized void tellEnd() {
            ended = true;
            notifyAll();
        }

        synchronized boolean endsWithin(long milliseconds) throws InterruptedException {
            if (!ended) {
                wait(milliseconds);
            }
            return ended;
        }

        synchronized @Nullable Object result() throws Exception {
            if (thrown instanceof Exception exception) {
                throw exception;
            }
            if (!ended || thrown instanceof ThreadDeath) {
                throw new CellStop(CellStop.Reason.INTERRUPTED); // Stopped outright, in one case on its way out.
            }
            if (thrown instanceof Error error) {
                throw error;
            }
            return value;
        }
    }
}
