package parchment.control;

import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import parchment.display.Wire;

/**
 * A box that a person ticks or clears. It starts clear.
 *
 * <pre>{@code
 * CheckBox.of("newest batch only").showing(tick -> tick == CheckBox.Tick.TICKED ? logbook.lastWithCurve() : logbook)
 * }</pre>
 */
public final class CheckBox implements Control {
    /** Whether a box is ticked. */
    public enum Tick {
        TICKED,
        CLEAR
    }

    private final String label;
    private final Wire<Tick> wire;

    private CheckBox(String label, Wire<Tick> wire) {
        this.label = label;
        this.wire = wire;
    }

    /** Returns a box with a label. */
    public static CheckBox of(String label) {
        return new CheckBox(label, new Wire<>(Tick.CLEAR));
    }

    /** Returns the same box that starts ticked. */
    public CheckBox ticked() {
        return new CheckBox(label, wire.startingWith(Tick.TICKED));
    }

    /** Calls the callback each time a person has ticked or cleared the box; what it prints and shows appears below. */
    public CheckBox onChange(Consumer<? super Tick> callback) {
        wire.onChange(callback);
        return this;
    }

    /** Shows below the box what is made of its state, at once and after each change. */
    public CheckBox showing(Function<? super Tick, ?> ofValue) {
        wire.showing(ofValue);
        return this;
    }

    /** Tells whether the box is ticked now. */
    public boolean isTicked() {
        return wire.value() == Tick.TICKED;
    }

    /** Ticks or clears the box from Java; the page follows and no callback is called. */
    public void set(Tick tick) {
        wire.set(tick);
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public Wire<Tick> wire() {
        return wire;
    }

    @Override
    public String text() {
        return Still.text(toString(), wire);
    }

    @Override
    public Optional<String> html() {
        return Still.html(toString(), wire);
    }

    @Override
    public String toString() {
        return label + " is " + (isTicked() ? "ticked." : "not ticked.");
    }
}
