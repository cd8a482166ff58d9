package parchment.display;

import java.util.Map;
import java.util.Optional;

/**
 * Shows itself in a notebook.
 *
 * <p>Every result of the library implements this. HTML and SVG are fragments that stand alone: no outside script, style, font or
 * picture, readable on a light and on a dark page, and every text that came from a user's file is escaped.
 */
public interface Showable {

    /** Returns the value as plain text; one sentence with counts and units, or a small table. */
    default String text() {
        return toString();
    }

    /** Returns the value as a fragment of HTML, or nothing if text says it all. */
    default Optional<String> html() {
        return Optional.empty();
    }

    /** Returns the value as an SVG document, or nothing if it is not a picture. */
    default Optional<String> svg() {
        return Optional.empty();
    }

    /**
     * Returns the value in media types beside these three, by media type; nothing for most values. What is bytes (image/png) stands there in
     * Base64, what is JSON (application/json and every type that ends with +json) as the text of the JSON.
     */
    default Map<String, String> otherForms() {
        return Map.of();
    }
}
