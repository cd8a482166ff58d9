package parchment.kernel.stop;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import parchment.display.Interruption;

/**
 * The threads that still run code of a cell which was stopped: those the cell started, and where it called something that cannot be
 * stopped, its own. Each ends as soon as it comes back to code of a cell.
 */
final class LeftBehind {
    /** One for the whole process, as the threads are; what cells call to know whether to end has no object to ask. */
    private static final Set<Thread> THREADS = ConcurrentHashMap.newKeySet();

    /** How JShell names what it makes of a snippet. */
    private static final String CELL_CLASS = "REPL.";

    private static final long PATIENCE_MS = 150;
    private static final long LOOK_EVERY_MS = 10;

    /** A recursion that is on its way out has many thousand calls to leave. */
    private static final long UNTIL_UNWOUND_MS = 1_500;

    /** What the kernel itself does for a cell; its names tell a reader nothing. */
    private static final String OURS = "parchment.kernel.";

    private LeftBehind() {}

    static boolean has(Thread thread) {
        return THREADS.contains(thread);
    }

    static boolean isEmpty() {
        return THREADS.isEmpty();
    }

    /** Wakes every thread that is inside code of a cell, so that what sleeps or waits there notices the stop. */
    static void wake() {
        insideCells().forEach(Thread::interrupt);
    }

    static void add(Thread thread) {
        THREADS.add(thread);
    }

    /** Waits a little until no thread runs code of a cell, and remembers those that still do. */
    static void gather() {
        long until = System.nanoTime() + PATIENCE_MS * 1_000_000;
        while (insideCells().anyMatch(thread -> !has(thread)) && System.nanoTime() < until) {
            pause();
        }
        insideCells().forEach(LeftBehind::add);
    }

    /** Lets go of the threads that have ended, or run no code of a cell any more and only wait for other work. */
    static void sweep() {
        if (!THREADS.isEmpty()) {
            List<Thread> inside = insideCells().toList();
            THREADS.stream().filter(thread -> !inside.contains(thread)).forEach(LeftBehind::letGo);
        }
    }

    private static void letGo(Thread thread) {
        THREADS.remove(thread);
        Interruption.forget(thread);
    }

    /**
     * Returns the method outside the cell that a thread is inside of, such as {@code LongPipeline.sum}; an empty text if it is in none, and
     * nothing at all if the thread has left the cell. One that is in the cell's own code is on its way out and is waited for a while.
     */
    static Optional<String> stillInside(Thread thread) {
        long until = System.nanoTime() + UNTIL_UNWOUND_MS * 1_000_000;
        while (true) {
            StackTraceElement[] frames = thread.getStackTrace();
            if (Arrays.stream(frames).noneMatch(LeftBehind::isOfCell)) {
                return Optional.empty();
            }
            String inside = whereOutside(frames);
            if (!inside.isEmpty() || System.nanoTime() >= until) {
                return Optional.of(inside);
            }
            pause();
        }
    }

    private static String whereOutside(StackTraceElement[] frames) {
        for (int i = 1; i < frames.length; i++) {
            String owner = frames[i - 1].getClassName();
            if (isOfCell(frames[i]) && !isOfCell(frames[i - 1])) {
                return owner.startsWith(OURS)
                        ? ""
                        : owner.substring(owner.lastIndexOf('.') + 1).replace('$', '.') + "."
                                + frames[i - 1].getMethodName();
            }
        }
        return "";
    }

    private static Stream<Thread> insideCells() {
        return Thread.getAllStackTraces().entrySet().stream()
                .filter(entry -> entry.getKey() != Thread.currentThread())
                .filter(entry -> Arrays.stream(entry.getValue()).anyMatch(LeftBehind::isOfCell))
                .map(Map.Entry::getKey);
    }

    private static boolean isOfCell(StackTraceElement frame) {
        return frame.getClassName().startsWith(CELL_CLASS);
    }

    private static void pause() {
        try {
            Thread.sleep(LOOK_EVERY_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
