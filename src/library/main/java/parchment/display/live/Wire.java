package parchment.display.live;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import parchment.display.Display;
import parchment.display.Showable;

/**
 * A value that two sides can set: Java, and a person at a page. For what is {@link Live}; cells have no need of it.
 *
 * <p>What Java sets goes to the page and calls nobody. What the person sets is taken first and told after, so that a page may leave out
 * the telling where a newer value waits already. Safe for threads.
 */
public final class Wire<V> {
    private final List<Consumer<? super V>> callbacks = new CopyOnWriteArrayList<>();
    private volatile V value;
    private volatile @Nullable Function<? super V, ?> picture;
    private volatile @Nullable Showable pictured;
    private volatile Consumer<? super V> page = unheard -> {};

    /** Holds a first value; no page is connected yet. */
    public Wire(V value) {
        this.value = value;
    }

    /** Returns a wire with another value and the same callbacks, connected to no page. */
    public Wire<V> startingWith(V other) {
        Wire<V> fresh = new Wire<>(other);
        fresh.callbacks.addAll(callbacks);
        fresh.picture = picture;
        return fresh;
    }

    /** Returns the value as it is now. */
    public V value() {
        return value;
    }

    /** Sets the value from Java: the page follows, and no callback is called. */
    public void set(V other) {
        value = other;
        page.accept(other);
    }

    /** Takes the value that a person set at the page; nobody is told yet. */
    public void take(V other) {
        value = other;
    }

    /** Calls the callbacks with the value as it is now, in the order in which they were added, then shows the picture of it. */
    public void tell() {
        V now = value;
        callbacks.forEach(callback -> callback.accept(now));
        if (picture != null) {
            Display.show(picture());
            pictured = null;
        }
    }

    /** Adds a callback. */
    public void onChange(Consumer<? super V> callback) {
        callbacks.add(callback);
    }

    /** Sets what is shown of each value, now and after every change. */
    public void showing(Function<? super V, ?> ofValue) {
        picture = ofValue;
    }

    /** Returns what is shown of the value as it is now, worked out anew; nothing where nothing was to be shown. */
    public Optional<Showable> shown() {
        return picture == null ? Optional.empty() : Optional.of(picture());
    }

    /** Returns what {@link #shown} worked out last, and works it out if it has not. */
    public Optional<Showable> shownAgain() {
        Showable before = pictured;
        return before == null ? shown() : Optional.of(before);
    }

    /** Returns what {@link #shown} worked out last and forgets it, so that a page that needs it twice does not do the work twice. */
    public Optional<Showable> shownBefore() {
        Showable before = pictured;
        pictured = null;
        return before == null ? shown() : Optional.of(before);
    }

    private Showable picture() {
        Function<? super V, ?> ofValue = picture;
        Object made = ofValue == null ? "" : ofValue.apply(value);
        Showable shown = DrawnOnce.of(Display.showable(made));
        pictured = shown;
        return shown;
    }

    /** Connects a page, which hears from now on what Java sets. */
    public void connect(Consumer<? super V> live) {
        page = live;
    }

    /** Lets go of the page. */
    public void disconnect() {
        page = unheard -> {};
    }
}
