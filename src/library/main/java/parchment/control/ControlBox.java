package parchment.control;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import parchment.display.live.Live;

/**
 * Several controls together, one under the other or side by side.
 *
 * <pre>{@code
 * ControlBox.column(Slider.of("drop temperature", 196, 212), Choice.of("lot", "Cinder Ridge", "Low Orchard"))
 * }</pre>
 */
public final class ControlBox implements Live {
    /** How the controls lie. */
    public enum Lie {
        COLUMN,
        ROW
    }

    private final Lie lie;
    private final List<Live> members;

    private ControlBox(Lie lie, List<Live> members) {
        this.lie = lie;
        this.members = members;
    }

    /** Returns controls, or boxes of them, one under the other. */
    public static ControlBox column(Live... members) {
        return new ControlBox(Lie.COLUMN, List.of(members));
    }

    /** Returns controls, or boxes of them, side by side. */
    public static ControlBox row(Live... members) {
        return new ControlBox(Lie.ROW, List.of(members));
    }

    /** Returns how the controls lie. */
    public Lie lie() {
        return lie;
    }

    /** Returns what is in the box, in order. */
    public List<Live> members() {
        return members;
    }

    @Override
    public String text() {
        return members.stream().map(Live::text).collect(Collectors.joining("\n"));
    }

    @Override
    public Optional<String> html() {
        return Optional.of(members.stream()
                .map(member -> member.html().orElse(""))
                .collect(Collectors.joining("\n", "<div class=\"parchment-controls\">", "</div>")));
    }

    @Override
    public String toString() {
        return "A " + (lie == Lie.ROW ? "row" : "column") + " of "
                + (members.size() == 1 ? "one control." : members.size() + " controls.");
    }
}
