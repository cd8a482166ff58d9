package parchment.display;

import java.util.Map;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import parchment.display.live.Asked;
import parchment.display.live.Live;

/**
 * Shows several values from one cell, where the cell's last line alone would show one.
 *
 * <pre>{@code
 * for (var batch : logbook.batches().subList(0, 3)) {
 *     Display.show(BatchChart.of(batch));
 * }
 * }</pre>
 *
 * Outside a notebook the text of the value goes to standard output.
 */
public final class Display {
    private static final Target TERMINAL = new Target() {
        @Override
        public void show(Object value) {
            System.out.println(value instanceof Showable showable ? showable.text() : value);
        }

        @Override
        public Moving moving() {
            return TerminalLine.here();
        }
    };

    /**
     * The target is the one thing here that changes: {@code show} is called from a cell with no object at hand that could know
     * the page, and only the notebook puts another in place, for as long as a cell runs.
     */
    private static final AtomicReference<Target> TARGET = new AtomicReference<>(TERMINAL);

    private Display() {}

    /**
     * Shows the value now, above whatever the cell shows later.
     *
     * @param value anything; null is shown as the word null
     */
    public static void show(Object value) {
        target().show(value);
    }

    /**
     * Shows the value now in a place with a name, which {@link #update} can show something else in, from this cell or a later one. The name
     * itself is not shown: for words beside a value write {@code Display.show("words " + value)}.
     *
     * @param id any word; every place that was shown under it changes
     */
    public static void show(String id, Object value) {
        target().show(DisplayChecks.id(id), value);
    }

    /**
     * Shows the value in place of what {@link #show(String, Object)} has shown under that name, wherever that stands on the page.
     *
     * @throws IllegalArgumentException if nothing was shown under that name in this session
     */
    public static void update(String id, Object value) {
        target().update(DisplayChecks.id(id), value);
    }

    /**
     * Returns something that shows itself in the given media type, such as {@code text/html}, {@code text/markdown}, {@code text/latex},
     * {@code image/svg+xml} or {@code application/json}. A page that does not know the type shows text in its place.
     *
     * @throws IllegalArgumentException if that is no media type, or the text cannot be of that type
     */
    public static Showable as(String mediaType, String text) {
        return InForm.of(mediaType, text);
    }

    /**
     * Returns something that shows itself in a media type made of bytes, such as {@code image/png}.
     *
     * @throws IllegalArgumentException if that is no media type, or there are no bytes
     */
    public static Showable as(String mediaType, byte[] bytes) {
        return InForm.of(mediaType, bytes);
    }

    /**
     * Shows values of that class, and of what extends or implements it, by what the function makes of them, from now on in this session: text,
     * {@code Display.as(...)}, a table, or any other value. Where several fit, the one registered last is asked; one that returns the value itself
     * passes it on. Results of the library show themselves whatever is registered. Nothing happens outside a notebook.
     *
     * @throws IllegalArgumentException if values of the class show themselves already, as {@link Showable}
     */
    public static <T> void register(Class<T> type, Function<? super T, ?> form) {
        target().register(DisplayChecks.toRegister(type), value -> form.apply(type.cast(value)));
    }

    /**
     * Does what {@link #register(Class, Function)} does for a class by its name, so that the class need not be there yet.
     *
     * @param className the full name, as in {@code com.example.Cup}; for a class of a cell its own name, as in {@code Cup}
     */
    public static void register(String className, Function<Object, ?> form) {
        target().register(DisplayChecks.className(className), form);
    }

    /** Takes away what the cell has shown so far as soon as it shows something else, for a count or a picture that moves on. */
    public static void clear() {
        target().clear();
    }

    /** Tells the session that a question was put to data; for results of the library, not for cells. Counts nowhere outside a notebook. */
    public static void asked(Asked question) {
        target().asked(question);
    }

    /**
     * Does work whose questions nobody puts to data: what they answer is a key that somebody else's answers are held against. Everything
     * else that the work shows or tells is shown and told.
     */
    public static <T> T uncounted(Supplier<T> work) {
        Target counting = target();
        Target still = new Uncounted(counting);
        TARGET.set(still);
        try {
            return work.get();
        } finally {
            TARGET.compareAndSet(still, counting);
        }
    }

    /**
     * Tells the page a sentence that holds for everything that comes of the data just opened; for the library, not for cells. The page
     * shows it once. Nothing happens outside a notebook.
     */
    public static void holdsForPage(String sentence) {
        target().holdsForPage(sentence);
    }

    /**
     * Brings something to life on the page, for the library and for pages; returns the forms that a live page shows it in, text by media
     * type. None are returned where the page cannot: it shows the text or HTML then.
     */
    public static Map<String, String> live(Live value) {
        return target().live(value);
    }

    /**
     * Returns a value as something that shows itself, in the form in which {@link #show(Object)} would show it here; for results that hold
     * values of any kind, not for cells.
     *
     * @param value anything; null is shown as the word null
     */
    public static Showable showable(@Nullable Object value) {
        return target().showable(value);
    }

    /** Shows values on the given target until the result is closed; for notebooks, not for cells. */
    public static Shown on(Target target) {
        Target before = TARGET.getAndSet(Objects.requireNonNull(target));
        Progress.forgetTold();
        return () -> {
            TARGET.set(before);
            Progress.forgetTold();
        };
    }

    static Target target() {
        return Objects.requireNonNull(TARGET.get());
    }

    /** Where values appear while a cell runs: the page of a notebook, or plain text where there is no page. */
    public interface Target {

        /** Shows one value; a {@link Showable} in its richest form, anything else as text. */
        void show(Object value);

        /** Shows one value in a place with a name. */
        default void show(String id, Object value) {
            show(value);
        }

        /** Shows one value in the places of that name; where no page can change, after what is there. */
        default void update(String id, Object value) {
            show(value);
        }

        /** Returns a value as something that shows itself; as its text where nothing better is known here. */
        default Showable showable(@Nullable Object value) {
            return value instanceof Showable showable ? showable : InForm.plain(String.valueOf(value));
        }

        /** Shows values of the class by what the function makes of them. Does nothing where there is no page. */
        default void register(Class<?> type, Function<Object, ?> form) {}

        /** Shows values of the class of that name by what the function makes of them. Does nothing where there is no page. */
        default void register(String className, Function<Object, ?> form) {}

        /** Takes away what the cell has shown and printed so far, when the next thing is shown. Does nothing where that cannot be. */
        default void clear() {}

        /** Takes note of a question that was put to data. Does nothing where nobody counts. */
        default void asked(Asked question) {}

        /** Takes note of a sentence that holds for the whole page. Does nothing where there is no page. */
        default void holdsForPage(String sentence) {}

        /** Brings something to life, as {@link Display#live} says. A page that is still returns nothing. */
        default Map<String, String> live(Live value) {
            return Map.of();
        }

        /** Returns a place for one thing that changes while it is looked at; nothing is there until something is shown. */
        default Moving moving() {
            return Moving.NOWHERE;
        }
    }

    /** One thing on a page that is shown again and again in the same place. */
    public interface Moving {
        /** Shows nothing. */
        Moving NOWHERE = new Moving() {
            @Override
            public void now(Showable value) {
                // There is no page, or it cannot change.
            }

            @Override
            public void last(Showable value) {
                // There is no page, or it cannot change.
            }
        };

        /** Shows a value in place of the one before. */
        void now(Showable value);

        /** Shows the value that stays. */
        void last(Showable value);
    }

    /** Ends the use of a target when closed. */
    @FunctionalInterface
    public interface Shown extends AutoCloseable {
        @Override
        void close();
    }
}
