package parchment.control;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import parchment.display.live.Wire;

/**
 * Some of several words, chosen from a list that stands open; none are chosen at the start.
 *
 * <pre>{@code
 * Choices.of("lots", "Cinder Ridge", "Low Orchard").onChange(lots -> System.out.println(lots.size() + " lots"))
 * }</pre>
 */
public final class Choices implements Control {
    private final String label;
    private final List<String> options;
    private final Wire<List<String>> wire;

    private Choices(String label, List<String> options, Wire<List<String>> wire) {
        this.label = label;
        this.options = options;
        this.wire = wire;
    }

    /**
     * Returns a choice of any number from a list.
     *
     * @throws IllegalArgumentException if the list is empty or holds something twice
     */
    public static Choices of(String label, List<String> options) {
        return new Choices(label, Options.checked(label, options), new Wire<>(List.of()));
    }

    /** Returns a choice of any number from what is named, as {@link #of(String, List)} does. */
    public static Choices of(String label, String... options) {
        return of(label, List.of(options));
    }

    /**
     * Returns the same choice that starts with some chosen.
     *
     * @throws IllegalArgumentException if the list lacks one of them
     */
    public Choices startingAt(List<String> chosen) {
        return new Choices(label, options, wire.startingWith(inOrder(chosen)));
    }

    /** Calls the callback with all that is chosen each time a person has chosen; what it prints and shows appears below. */
    public Choices onChange(Consumer<? super List<String>> callback) {
        wire.onChange(callback);
        return this;
    }

    /** Shows below the list what is made of the choice, at once and after each change. */
    public Choices showing(Function<? super List<String>, ?> ofValue) {
        wire.showing(ofValue);
        return this;
    }

    /** Returns what is chosen now, in the order of the list. */
    public List<String> value() {
        return wire.value();
    }

    /**
     * Chooses from Java; the page follows and no callback is called.
     *
     * @throws IllegalArgumentException if the list lacks one of them
     */
    public void set(List<String> chosen) {
        wire.set(inOrder(chosen));
    }

    private List<String> inOrder(List<String> chosen) {
        chosen.forEach(option -> Options.known(label, options, option));
        Set<String> wanted = new LinkedHashSet<>(chosen);
        return options.stream().filter(wanted::contains).toList();
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
    public Wire<List<String>> wire() {
        return wire;
    }

    @Override
    public String toString() {
        return label + ": " + (value().isEmpty() ? "none" : String.join(", ", value())) + " chosen from "
                + Options.listed(options) + ".";
    }
}
