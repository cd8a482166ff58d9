package parchment.control;

import java.util.function.Consumer;
import java.util.function.Function;
import parchment.display.live.Wire;

/**
 * A whole number that a person sets by moving a handle between two ends. It starts at the lower end and moves by 1.
 *
 * <pre>{@code
 * CountSlider.of("batch", 1, 20).showing(number -> BatchChart.of(logbook.batches().get(number - 1)))
 * }</pre>
 */
public final class CountSlider implements Control {
    private final String label;
    private final int low;
    private final int high;
    private final Wire<Integer> wire;

    private CountSlider(String label, int low, int high, Wire<Integer> wire) {
        this.label = label;
        this.low = low;
        this.high = high;
        this.wire = wire;
    }

    /**
     * Returns a slider between two whole numbers.
     *
     * @throws IllegalArgumentException if the lower end is not below the upper one
     */
    public static CountSlider of(String label, int low, int high) {
        Still.checkRange(label, low, high);
        return new CountSlider(label, low, high, new Wire<>(low));
    }

    /**
     * Returns the same slider that starts elsewhere.
     *
     * @throws IllegalArgumentException if the value lies outside the ends
     */
    public CountSlider startingAt(int value) {
        Still.checkWithin(label, value, low, high);
        return new CountSlider(label, low, high, wire.startingWith(value));
    }

    /** Calls the callback with the new value each time a person has moved the slider; what it prints and shows appears below. */
    public CountSlider onChange(Consumer<? super Integer> callback) {
        wire.onChange(callback);
        return this;
    }

    /** Shows below the slider what is made of its value, at once and after each move. */
    public CountSlider showing(Function<? super Integer, ?> ofValue) {
        wire.showing(ofValue);
        return this;
    }

    /** Returns the value as it is now. */
    public int value() {
        return wire.value();
    }

    /**
     * Moves the slider from Java; the page follows and no callback is called.
     *
     * @throws IllegalArgumentException if the value lies outside the ends
     */
    public void set(int value) {
        Still.checkWithin(label, value, low, high);
        wire.set(value);
    }

    /** Returns the lower end. */
    public int low() {
        return low;
    }

    /** Returns the upper end. */
    public int high() {
        return high;
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public Wire<Integer> wire() {
        return wire;
    }

    @Override
    public String toString() {
        return label + " is " + value() + ", on a slider from " + low + " to " + high + ".";
    }
}
