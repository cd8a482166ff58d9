package parchment.control;

import java.util.function.Consumer;
import java.util.function.Function;
import parchment.display.live.Wire;

/**
 * A box that a person ticks or clears. It starts clear.
 *
 * <pre>{@code
 * CheckBox.of("newest batch only").showing(ticked -> ticked ? logbook.lastWithCurve() : logbook)
 * }</pre>
 */
public final class CheckBox implements Control {
    private final String label;
    private final Wire<Boolean> wire;

    private CheckBox(String label, Wire<Boolean> wire) {
        this.label = label;
        this.wire = wire;
    }

    /** Returns a box with a label. */
    public static CheckBox of(String label) {
        return new CheckBox(label, new Wire<>(false));
    }

    /** Returns the same box that starts ticked. */
    public CheckBox ticked() {
        return new CheckBox(label, wire.startingWith(true));
    }

    /** Calls the callback with true or false each time a person has ticked or cleared the box; what it prints and shows appears below. */
    public CheckBox onChange(Consumer<? super Boolean> callback) {
        wire.onChange(callback);
        return this;
    }

    /** Shows below the box what is made of its state, at once and after each change. */
    public CheckBox showing(Function<? super Boolean, ?> ofValue) {
        wire.showing(ofValue);
        return this;
    }

    /** Tells whether the box is ticked now. */
    public boolean value() {
        return wire.value();
    }

    /** Ticks the box from Java; the page follows and no callback is called. */
    public void tick() {
        wire.set(true);
    }

    /** Clears the box from Java; the page follows and no callback is called. */
    public void clear() {
        wire.set(false);
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public Wire<Boolean> wire() {
        return wire;
    }

    @Override
    public String toString() {
        return label + " is " + (value() ? "ticked." : "not ticked.");
    }
}
