package parchment.logbook;

import java.lang.ref.SoftReference;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

/**
 * Keeps what was worked out of one logbook, one result per kind, as long as memory lasts.
 *
 * <p>Two threads that ask at once may both work it out; the first result is kept. Nothing is locked while the work is done, so work may
 * ask for other results of the same logbook. Work that fails or is interrupted leaves nothing behind.
 */
final class Remembered {
    private final Map<Class<?>, SoftReference<Object>> results = new ConcurrentHashMap<>();

    <T> T of(Class<T> what, Supplier<T> work) {
        SoftReference<Object> kept = results.get(what);
        Object known = kept == null ? null : kept.get();
        if (known != null) {
            return what.cast(known);
        }
        T made = work.get();
        results.put(what, new SoftReference<>(made));
        return made;
    }
}
