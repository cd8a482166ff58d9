package parchment.display;

import java.lang.ref.WeakReference;
import java.time.Duration;
import java.util.Collection;
import java.util.Iterator;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;

/**
 * Tells how far long work has come, and lets it be stopped.
 *
 * <p>Nothing is shown for the first two seconds; work that takes less leaves no trace. From then on a line moves on, at most four
 * times a second, and at the end stays as one sentence. In a notebook it is a bar with words, on a terminal one line that is written
 * over, elsewhere nothing.
 *
 * <pre>{@code
 * for (var batch : Progress.over(logbook.batches(), "measuring batches")) {
 *     measure(batch);
 * }
 *
 * try (var progress = Progress.of(400, "shuffling batches")) {
 *     orders.parallel().forEach(order -> {
 *         shuffle(order);
 *         progress.step();
 *     });
 * }
 * }</pre>
 *
 * Steps may come from several threads. Of work inside other work only the outer is shown.
 */
public final class Progress implements AutoCloseable {
    /** The outermost work that is being told about now; another is told about when it has ended. */
    private static final AtomicReference<@Nullable Progress> TOLD = new AtomicReference<>();

    private final String what;
    private final long total;
    private final ProgressClock.Time time;
    private final long begin;
    private final AtomicLong done = new AtomicLong();
    private final Interruption caller = Interruption.ofCaller();
    private final Display.Target target = Display.target();
    private final ProgressClock.Ticks ticks;
    private Display.@Nullable Moving line;
    private String shown = "";
    private boolean closed;

    private Progress(String what, long total, ProgressClock.Time time) {
        this.what = what;
        this.total = total;
        this.time = time;
        this.begin = time.nanoseconds();
        // Held weakly, so that a loop that was left without closing this does not tick for ever.
        WeakReference<Progress> here = new WeakReference<>(this);
        this.ticks = time.every(() -> {
            Progress progress = here.get();
            return progress != null && progress.tick();
        });
    }

    /**
     * Begins work of a known number of steps.
     *
     * @param total number of steps, 0 or more
     * @param what the work in words, as in "measuring batches"
     * @throws IllegalArgumentException if the number is negative
     */
    public static Progress of(long total, String what) {
        return of(total, what, ProgressClock.REAL);
    }

    static Progress of(long total, String what, ProgressClock.Time time) {
        if (total < 0) {
            throw new IllegalArgumentException(
                    "Progress needs a number of steps of 0 or more, but was given " + total + ".");
        }
        return new Progress(what, total, time);
    }

    /**
     * Returns the items for a loop that tells how far it has come. The work begins with the loop and ends with its last item.
     *
     * @param what the work in words, as in "measuring batches"
     */
    public static <T> Iterable<T> over(Collection<T> items, String what) {
        return over(items, what, ProgressClock.REAL);
    }

    static <T> Iterable<T> over(Collection<T> items, String what, ProgressClock.Time time) {
        return () -> new Steps<>(items.iterator(), of(items.size(), what, time));
    }

    /**
     * Counts one step as done. Takes some nanoseconds; may be called from any thread.
     *
     * @throws CancellationException if the thread that began the work was interrupted
     */
    public void step() {
        done.incrementAndGet();
        caller.check();
    }

    /** Returns how many steps are done. */
    public long done() {
        return done.get();
    }

    /** Ends the telling; if it was seen, one sentence stays. */
    @Override
    public synchronized void close() {
        if (closed) {
            return;
        }
        closed = true;
        ticks.end();
        if (line != null) {
            line.last(note());
        }
        TOLD.compareAndSet(this, null);
    }

    /** Forgets work that was begun on a page that is gone. */
    static void forgetTold() {
        TOLD.set(null);
    }

    /** Shows the present state; returns whether there may be more to show. */
    private synchronized boolean tick() {
        if (closed || target != Display.target()) {
            return false;
        }
        if (TOLD.get() != this && !TOLD.compareAndSet(null, this)) {
            return true;
        }
        ProgressNote note = note();
        if (line == null) {
            line = target.moving();
        }
        if (!note.text().equals(shown)) {
            shown = note.text();
            line.now(note);
        }
        return true;
    }

    private synchronized ProgressNote note() {
        ProgressNote.State state = !closed
                ? ProgressNote.State.RUNNING
                : done.get() < total ? ProgressNote.State.STOPPED : ProgressNote.State.DONE;
        return new ProgressNote(what, done.get(), total, Duration.ofNanos(time.nanoseconds() - begin), state);
    }

    @Override
    public String toString() {
        return note().text();
    }

    /** Counts an item as done when the next is asked for. */
    private static final class Steps<T> implements Iterator<T> {
        private final Iterator<T> items;
        private final Progress progress;
        private boolean begun;

        Steps(Iterator<T> items, Progress progress) {
            this.items = items;
            this.progress = progress;
        }

        @Override
        public boolean hasNext() {
            if (items.hasNext()) {
                return true;
            }
            countLast();
            progress.close();
            return false;
        }

        @Override
        public T next() {
            countLast();
            T item = items.next();
            begun = true;
            return item;
        }

        private void countLast() {
            if (begun) {
                begun = false;
                try {
                    progress.step();
                } catch (CancellationException stopped) {
                    progress.close();
                    throw stopped;
                }
            }
        }
    }
}
