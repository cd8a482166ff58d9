package parchment.rendering;

import java.util.Map;
import java.util.Optional;
import parchment.display.Html;
import parchment.display.Showable;

/**
 * A picture of dots, with the same as SVG where there is one.
 *
 * @param words what it is, for those who do not see it
 * @param base64 the PNG file's content
 * @param width in the page's units
 * @param vector the SVG document, or empty
 */
record Png(String words, String base64, int width, String vector) implements Showable {
    @Override
    public String text() {
        return words;
    }

    @Override
    public Optional<String> html() {
        return Optional.of(
                vector.isEmpty()
                        ? "<img alt=\"" + Html.escape(words) + "\" width=\"" + width
                                + "\" style=\"max-width:100%;height:auto\" src=\"data:image/png;base64," + base64
                                + "\">"
                        : "<div>" + vector + "</div>");
    }

    @Override
    public Optional<String> svg() {
        return vector.isEmpty() ? Optional.empty() : Optional.of(vector);
    }

    @Override
    public Map<String, String> otherForms() {
        return Map.of("image/png", base64);
    }
}
