package parchment.display;

import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;

/** The one thread that wakes for all work in progress; it ends itself when there has been none for a while. */
final class ProgressClock {
    /** For so long work is silent. */
    static final long SILENT_MS = 2_000;

    static final long TICK_MS = 250;
    private static final long IDLE_SECONDS = 10;
    private static final ScheduledThreadPoolExecutor CLOCK = clock();

    /** Ends the waking when asked. */
    interface Ticks {
        void end();
    }

    /** Tells the time and wakes; in a test, a time of its own. */
    interface Time {
        /** Returns nanoseconds since some moment. */
        long nanoseconds();

        /** Calls the work from two seconds on, four times a second, until it returns false or is ended. */
        Ticks every(BooleanSupplier work);
    }

    /** The machine's time. */
    static final Time REAL = new Time() {
        @Override
        public long nanoseconds() {
            return System.nanoTime();
        }

        @Override
        public Ticks every(BooleanSupplier work) {
            return ProgressClock.every(work);
        }
    };

    private ProgressClock() {}

    private static ScheduledThreadPoolExecutor clock() {
        ScheduledThreadPoolExecutor clock = new ScheduledThreadPoolExecutor(1, work -> {
            Thread thread = new Thread(work, "progress");
            thread.setDaemon(true);
            return thread;
        });
        clock.setRemoveOnCancelPolicy(true); // Most work ends before its first tick.
        clock.setKeepAliveTime(IDLE_SECONDS, TimeUnit.SECONDS);
        clock.allowCoreThreadTimeOut(true);
        return clock;
    }

    private static Ticks every(BooleanSupplier work) {
        AtomicReference<@Nullable ScheduledFuture<?>> own = new AtomicReference<>();
        Ticks ticks = () -> {
            ScheduledFuture<?> future = own.get();
            if (future != null) {
                future.cancel(false);
            }
        };
        own.set(CLOCK.scheduleWithFixedDelay(
                () -> {
                    if (!work.getAsBoolean()) {
                        ticks.end();
                    }
                },
                SILENT_MS,
                TICK_MS,
                TimeUnit.MILLISECONDS));
        return ticks;
    }
}
