package parchment.control;

import java.util.function.Consumer;
import java.util.function.Function;
import parchment.display.live.Wire;

/**
 * A line that a person types into. It starts empty; it is told once the person presses Enter or leaves it.
 *
 * <pre>{@code
 * TextField.of("batch").startingAt("H001").showing(name -> BatchChart.of(logbook.batch(name)))
 * }</pre>
 */
public final class TextField implements Control {
    private final String label;
    private final Wire<String> wire;

    private TextField(String label, Wire<String> wire) {
        this.label = label;
        this.wire = wire;
    }

    /** Returns an empty line with a label. */
    public static TextField of(String label) {
        return new TextField(label, new Wire<>(""));
    }

    /** Returns the same line that starts with some text. */
    public TextField startingAt(String text) {
        return new TextField(label, wire.startingWith(text));
    }

    /** Calls the callback with the text each time a person has changed it; what it prints and shows appears below. */
    public TextField onChange(Consumer<? super String> callback) {
        wire.onChange(callback);
        return this;
    }

    /** Shows below the line what is made of its text, at once and after each change. */
    public TextField showing(Function<? super String, ?> ofValue) {
        wire.showing(ofValue);
        return this;
    }

    /** Returns the text as it is now. */
    public String value() {
        return wire.value();
    }

    /** Writes the text from Java; the page follows and no callback is called. */
    public void set(String text) {
        wire.set(text);
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public Wire<String> wire() {
        return wire;
    }

    @Override
    public String toString() {
        return label + (value().isEmpty() ? " is an empty line." : " is '" + value() + "'.");
    }
}
