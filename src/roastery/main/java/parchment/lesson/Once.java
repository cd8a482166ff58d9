package parchment.lesson;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import parchment.display.Display;

/**
 * Works a value out when it is first asked for, and keeps it: most students never open every question. What is worked out to hold an answer
 * against is no question that somebody puts to the scores.
 */
final class Once<T> {
    private final Supplier<T> work;
    private @Nullable T value;

    private Once(Supplier<T> work) {
        this.work = work;
    }

    static <T> Once<T> of(Supplier<T> work) {
        return new Once<>(work);
    }

    synchronized T value() {
        T there = value;
        if (there == null) {
            there = Display.uncounted(work);
            value = there;
        }
        return there;
    }
}
