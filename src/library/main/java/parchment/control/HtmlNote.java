package parchment.control;

import java.util.Optional;
import parchment.display.Html;
import parchment.display.Showable;
import parchment.display.live.Wire;

/**
 * Words or a still picture among controls, which Java changes and the person only reads.
 *
 * <pre>{@code
 * var note = HtmlNote.ofText("Nothing chosen yet.");
 * note.set(BatchChart.of(logbook.lastWithCurve()));   // anything that shows itself
 * }</pre>
 */
public final class HtmlNote implements Control {
    private final Wire<String> wire;

    private HtmlNote(String html) {
        this.wire = new Wire<>(html);
    }

    /** Returns a note of plain words; they are escaped. */
    public static HtmlNote ofText(String words) {
        return new HtmlNote(paragraph(words));
    }

    /** Returns a note of what a value shows as. A script in it does not run. */
    public static HtmlNote of(Showable value) {
        return new HtmlNote(htmlOf(value));
    }

    /** Writes other words; the page follows. */
    public void setText(String words) {
        wire.set(paragraph(words));
    }

    /** Shows another value; the page follows. */
    public void set(Showable value) {
        wire.set(htmlOf(value));
    }

    private static String paragraph(String words) {
        return "<p>" + Html.escape(words) + "</p>";
    }

    private static String htmlOf(Showable value) {
        return value.html().or(value::svg).orElseGet(() -> paragraph(value.text()));
    }

    @Override
    public String label() {
        return "";
    }

    @Override
    public Wire<String> wire() {
        return wire;
    }

    @Override
    public Optional<String> html() {
        return Optional.of(wire.value());
    }

    /** Returns the note without its tags. */
    @Override
    public String toString() {
        return Html.words(wire.value());
    }
}
