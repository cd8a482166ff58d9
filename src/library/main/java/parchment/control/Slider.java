package parchment.control;

import java.util.function.Consumer;
import java.util.function.Function;
import parchment.display.live.Wire;

/**
 * A number that a person sets by moving a handle between two ends.
 *
 * <p>Defaults: it starts in the middle; a step is 1, 2 or 5 times a power of ten, so that 50 to 125 steps lie between the ends; no unit.
 *
 * <pre>{@code
 * Slider.of("drop temperature", 196, 212)
 *         .withUnit("°C")
 *         .onChange(value -> System.out.println(value))
 * }</pre>
 */
public final class Slider implements Control {
    private final String label;
    private final String unit;
    private final double low;
    private final double high;
    private final double step;
    private final Wire<Double> wire;

    private Slider(String label, String unit, double low, double high, double step, Wire<Double> wire) {
        this.label = label;
        this.unit = unit;
        this.low = low;
        this.high = high;
        this.step = step;
        this.wire = wire;
    }

    /**
     * Returns a slider between two ends.
     *
     * @throws IllegalArgumentException if the lower end is not below the upper one, or one of them is missing or infinite
     */
    public static Slider of(String label, double low, double high) {
        Still.checkRange(label, low, high);
        double step = Still.step(low, high);
        double middle = low + step * Math.rint((high - low) / 2 / step);
        return new Slider(label, "", low, high, step, new Wire<>(Math.min(high, middle)));
    }

    /** Returns the same slider with a unit in its label. */
    public Slider withUnit(String other) {
        return new Slider(label, other, low, high, step, wire.startingWith(value()));
    }

    /**
     * Returns the same slider that moves by another step, counted from the lower end. A value that no step leads to gives way to the
     * nearest; call {@link #startingAt} after this for one that lies between two steps.
     *
     * @throws IllegalArgumentException if the step is not above 0
     */
    public Slider withStep(double other) {
        Still.checkStep(label, other);
        double most = Math.floor((high - low) / other * (1 + 1e-12));
        double steps = Math.min(most, Math.rint((value() - low) / other));
        double digits = Math.pow(10, Still.digits(other) + Still.digits(low));
        double nearest = Math.rint((low + steps * other) * digits) / digits;
        boolean onStep = Math.abs(nearest - value()) <= 1e-9 * other;
        return new Slider(label, unit, low, high, other, wire.startingWith(onStep ? value() : nearest));
    }

    /**
     * Returns the same slider that starts elsewhere.
     *
     * @throws IllegalArgumentException if the value lies outside the ends
     */
    public Slider startingAt(double value) {
        return new Slider(label, unit, low, high, step, wire.startingWith(Still.checkWithin(label, value, low, high)));
    }

    /** Calls the callback with the new value each time a person has moved the slider; what it prints and shows appears below. */
    public Slider onChange(Consumer<? super Double> callback) {
        wire.onChange(callback);
        return this;
    }

    /** Shows below the slider what is made of its value, at once and after each move. */
    public Slider showing(Function<? super Double, ?> ofValue) {
        wire.showing(ofValue);
        return this;
    }

    /** Returns the value as it is now. */
    public double value() {
        return wire.value();
    }

    /**
     * Moves the slider from Java; the page follows and no callback is called.
     *
     * @throws IllegalArgumentException if the value lies outside the ends
     */
    public void set(double value) {
        wire.set(Still.checkWithin(label, value, low, high));
    }

    /** Returns the lower end. */
    public double low() {
        return low;
    }

    /** Returns the upper end. */
    public double high() {
        return high;
    }

    /** Returns by how much the value goes up or down at least. */
    public double step() {
        return step;
    }

    /** Returns how many decimals the value is written with. */
    public int digits() {
        return Still.digits(step);
    }

    @Override
    public String label() {
        return Still.label(label, unit);
    }

    @Override
    public Wire<Double> wire() {
        return wire;
    }

    @Override
    public String toString() {
        return label + " is " + Still.number(value(), step, unit) + ", on a slider from " + Still.number(low, step, "")
                + " to " + Still.number(high, step, unit) + ".";
    }
}
