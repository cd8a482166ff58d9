package parchment.rendering;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Function;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import parchment.display.Showable;

/**
 * Finds out how a value is shown: a {@link Showable} by itself, all else by what was registered last for its class, then by what is known of its
 * class, and last as text. Safe for threads.
 */
public final class Renderers {
    private record Registered(Predicate<Class<?>> fits, String name, Function<Object, ?> form) {}

    private final List<Registered> registered; // The last is asked first.
    private final Function<Throwable, List<String>> errorWords;

    private Renderers(List<Registered> registered, Function<Throwable, List<String>> errorWords) {
        this.registered = registered;
        this.errorWords = errorWords;
    }

    /**
     * Returns renderers to which nothing has been added.
     *
     * @param errorWords puts an error into words: what happened, then a line for each cause
     */
    public static Renderers explainingErrors(Function<Throwable, List<String>> errorWords) {
        return new Renderers(new CopyOnWriteArrayList<>(), errorWords);
    }

    /** Shows values of the class, and of what extends or implements it, by what the function makes of them. */
    public void register(Class<?> type, Function<Object, ?> form) {
        registered.add(new Registered(type::isAssignableFrom, type.getSimpleName(), form));
    }

    /** Does the same for a class by its full name, or by its own name if it is a class of a cell. */
    public void register(String className, Function<Object, ?> form) {
        registered.add(new Registered(type -> ClassNames.has(type, className), className, form));
    }

    /** Returns the value as something that shows itself. */
    public Showable of(@Nullable Object value) {
        if (value == null) {
            return new Words("null");
        }
        if (value instanceof Showable showable) {
            return showable;
        }
        for (int i = registered.size() - 1; i >= 0; i--) {
            Registered asked = registered.get(i);
            if (asked.fits().test(value.getClass())) {
                Object made = asked.form().apply(value);
                if (made == null) {
                    throw new IllegalStateException(
                            "What is registered for '" + asked.name()
                                    + "' gave nothing (null) for a value. Let it return text, Display.as(...), a table, or the value itself.");
                }
                if (made != value) {
                    return without(asked).of(made);
                }
            }
        }
        return Foreign.of(value).or(() -> JavaValues.of(value, this)).orElseGet(() -> new Words(PlainText.of(value)));
    }

    /** What a function makes may be of the same kind again, and must not come back to it for ever. */
    private Renderers without(Registered asked) {
        List<Registered> others = new ArrayList<>(registered);
        others.remove(asked);
        return new Renderers(others, errorWords);
    }

    /** Tells whether a value has a form of its own, beside the text that Java gives it. */
    boolean showsItself(@Nullable Object value) {
        return value instanceof Showable
                || value != null
                        && (registered.stream().anyMatch(each -> each.fits().test(value.getClass()))
                                || Foreign.knows(value.getClass()));
    }

    List<String> inWords(Throwable error) {
        return errorWords.apply(error);
    }

    /** Text alone. */
    record Words(String text) implements Showable {
        @Override
        public String toString() {
            return text;
        }
    }

    /** Text, and a page's form of the same. */
    record Page(String text, String fragment) implements Showable {
        @Override
        public Optional<String> html() {
            return Optional.of(fragment);
        }

        @Override
        public String toString() {
            return text;
        }
    }
}
