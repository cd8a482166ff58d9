package parchment.control;

import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import parchment.display.live.Wire;

/**
 * One of several words, chosen from a list that drops down. It starts with the first.
 *
 * <pre>{@code
 * Choice.of("lot", "Cinder Ridge", "Low Orchard").showing(lot -> PaceChart.of(logbook.ofLot(lot)))
 * }</pre>
 */
public final class Choice implements Control {
    private final String label;
    private final List<String> options;
    private final Wire<String> wire;

    private Choice(String label, List<String> options, Wire<String> wire) {
        this.label = label;
        this.options = options;
        this.wire = wire;
    }

    /**
     * Returns a choice of one from a list.
     *
     * @throws IllegalArgumentException if the list is empty or holds something twice
     */
    public static Choice of(String label, List<String> options) {
        List<String> checked = Options.checked(label, options);
        return new Choice(label, checked, new Wire<>(checked.get(0)));
    }

    /** Returns a choice of one from what is named, as {@link #of(String, List)} does. */
    public static Choice of(String label, String... options) {
        return of(label, List.of(options));
    }

    /**
     * Returns the same choice that starts elsewhere.
     *
     * @throws IllegalArgumentException if the list does not hold it
     */
    public Choice startingAt(String option) {
        return new Choice(label, options, wire.startingWith(Options.known(label, options, option)));
    }

    /** Calls the callback with the new choice each time a person has chosen; what it prints and shows appears below. */
    public Choice onChange(Consumer<? super String> callback) {
        wire.onChange(callback);
        return this;
    }

    /** Shows below the list what is made of the choice, at once and after each change. */
    public Choice showing(Function<? super String, ?> ofValue) {
        wire.showing(ofValue);
        return this;
    }

    /** Returns what is chosen now. */
    public String value() {
        return wire.value();
    }

    /**
     * Chooses from Java; the page follows and no callback is called.
     *
     * @throws IllegalArgumentException if the list does not hold it
     */
    public void set(String option) {
        wire.set(Options.known(label, options, option));
    }

    /** Returns what there is to choose from. */
    public List<String> options() {
        return options;
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
        return label + " is " + value() + ", chosen from " + Options.listed(options) + ".";
    }
}
