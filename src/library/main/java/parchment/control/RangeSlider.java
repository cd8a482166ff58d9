package parchment.control;

import java.util.function.Consumer;
import java.util.function.Function;
import parchment.display.live.Wire;

/**
 * A range of numbers that a person sets by moving two handles between two ends. It starts with the whole; its step is chosen as that of a
 * {@link Slider}.
 *
 * <pre>{@code
 * RangeSlider.of("green mass", 2, 12).withUnit("kg")
 *         .onChange(range -> System.out.println(range.from() + " to " + range.to()))
 * }</pre>
 */
public final class RangeSlider implements Control {
    /**
     * What lies between the two handles, both ends within.
     *
     * @param from the lower handle
     * @param to the upper handle, never below the lower one
     */
    public record Between(double from, double to) {
        /** Tells whether a number lies between the handles; a missing one does not. */
        public boolean holds(double number) {
            return number >= from && number <= to;
        }
    }

    private final String label;
    private final String unit;
    private final double low;
    private final double high;
    private final Wire<Between> wire;

    private RangeSlider(String label, String unit, double low, double high, Wire<Between> wire) {
        this.label = label;
        this.unit = unit;
        this.low = low;
        this.high = high;
        this.wire = wire;
    }

    /**
     * Returns a slider with two handles between two ends.
     *
     * @throws IllegalArgumentException if the lower end is not below the upper one, or one of them is missing or infinite
     */
    public static RangeSlider of(String label, double low, double high) {
        Still.checkRange(label, low, high);
        return new RangeSlider(label, "", low, high, new Wire<>(new Between(low, high)));
    }

    /** Returns the same slider with a unit in its label. */
    public RangeSlider withUnit(String other) {
        return new RangeSlider(label, other, low, high, wire.startingWith(value()));
    }

    /**
     * Returns the same slider with its handles elsewhere.
     *
     * @throws IllegalArgumentException if a handle lies outside the ends, or the lower one above the upper one
     */
    public RangeSlider startingAt(double from, double to) {
        return new RangeSlider(label, unit, low, high, wire.startingWith(checked(from, to)));
    }

    /** Calls the callback with the new range each time a person has moved a handle; what it prints and shows appears below. */
    public RangeSlider onChange(Consumer<? super Between> callback) {
        wire.onChange(callback);
        return this;
    }

    /** Shows below the slider what is made of its range, at once and after each move. */
    public RangeSlider showing(Function<? super Between, ?> ofValue) {
        wire.showing(ofValue);
        return this;
    }

    /** Returns the range as it is now. */
    public Between value() {
        return wire.value();
    }

    /**
     * Moves the handles from Java; the page follows and no callback is called.
     *
     * @throws IllegalArgumentException if a handle lies outside the ends, or the lower one above the upper one
     */
    public void set(double from, double to) {
        wire.set(checked(from, to));
    }

    private Between checked(double from, double to) {
        Still.checkWithin(label, from, low, high);
        Still.checkWithin(label, to, from, high);
        return new Between(from, to);
    }

    /** Returns the lower end. */
    public double low() {
        return low;
    }

    /** Returns the upper end. */
    public double high() {
        return high;
    }

    /** Returns by how much a handle moves at least. */
    public double step() {
        return Still.step(low, high);
    }

    /** Returns how many decimals the handles' numbers are written with. */
    public int digits() {
        return Still.digits(step());
    }

    @Override
    public String label() {
        return Still.label(label, unit);
    }

    @Override
    public Wire<Between> wire() {
        return wire;
    }

    @Override
    public String toString() {
        return label + " goes from " + Still.number(value().from(), step(), "") + " to "
                + Still.number(value().to(), step(), unit) + ", on a slider from " + Still.number(low, step(), "")
                + " to "
                + Still.number(high, step(), unit) + ".";
    }
}
