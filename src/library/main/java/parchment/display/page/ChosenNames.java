package parchment.display.page;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import parchment.display.Html;
import parchment.display.live.Live;
import parchment.display.live.Wire;

/**
 * The names that a person chooses on a page of {@link LinkedViews}, as they come back to Java.
 *
 * <p>Only a live page brings them back. Until one has answered, the choice is the one that it began with, and {@link #wayBack} says so.
 *
 * <pre>{@code
 * ChosenNames.among("batch", List.of("H001", "H002"), List.of("H002"), "with chosen()")
 * }</pre>
 */
public final class ChosenNames implements Live {
    /** How far the way from the page back to Java goes. */
    public enum WayBack {
        /** No page has answered yet: none was shown, or it is one that cannot. */
        SILENT,
        /** A page has answered, and tells of each choice. */
        OPEN,
        /** The page has said that it cannot, or was closed. */
        CLOSED
    }

    private final String noun;
    private final String within;
    private final Set<String> all;
    private final String place = "parchment-chosen-" + UUID.randomUUID();
    private final Wire<List<String>> wire;
    private volatile WayBack wayBack = WayBack.SILENT;

    private ChosenNames(String noun, List<String> all, List<String> first, String within) {
        this.noun = noun;
        this.within = within;
        this.all = new LinkedHashSet<>(all);
        this.wire = new Wire<>(known(first));
    }

    /**
     * Returns a choice among some names that begins with some of them; others are left out.
     *
     * @param noun what one of the names names, in the singular
     * @param within how a cell gets what is chosen, to end "the next cell has it ..."
     */
    public static ChosenNames among(String noun, List<String> names, List<String> first, String within) {
        return new ChosenNames(noun, names, first, within);
    }

    private List<String> known(List<String> names) {
        Set<String> wanted = new LinkedHashSet<>(names);
        return all.stream().filter(wanted::contains).toList();
    }

    /** Returns the names that are chosen now, in their own order. */
    public List<String> names() {
        return wire.value();
    }

    /** Tells whether the choice comes back from a page. */
    public WayBack wayBack() {
        return wayBack;
    }

    /** Returns the name of the place on the page through which the choice comes back; of this choice alone. */
    public String place() {
        return place;
    }

    /** Takes the names that a person chose; for pages. */
    public void take(List<String> names) {
        wayBack = WayBack.OPEN;
        wire.take(known(names));
    }

    /** Takes note that the page no longer answers; for pages. */
    public void close() {
        wayBack = WayBack.CLOSED;
    }

    /** Returns a sentence on what is chosen and where it is. */
    public String sentence() {
        int count = names().size();
        String chosen = (count == 0 ? "No " + noun : count == 1 ? "1 " + noun : count + " " + plural())
                + (count > 1 ? " are" : " is") + " chosen below";
        return switch (wayBack) {
            case OPEN ->
                chosen
                        + (count == 0
                                ? "."
                                : ": the next cell has " + (count == 1 ? "it" : "them") + " " + within + ".");
            case SILENT, CLOSED ->
                "What is chosen below does not come back by itself here. Copy the line of code under the pictures.";
        };
    }

    private String plural() {
        return noun.matches(".*(?:s|x|ch|sh)") ? noun + "es" : noun + "s";
    }

    @Override
    public Optional<String> html() {
        return Optional.of("<p><small>" + Html.escape(sentence()) + "</small></p>");
    }

    @Override
    public String toString() {
        return sentence();
    }
}
