package parchment.kernel.page;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import parchment.display.Display;
import parchment.display.Showable;
import parchment.display.live.Live;
import parchment.kernel.words.CellExceptions;
import parchment.rendering.Renderers;

/**
 * A value in the forms in which a page can show it, by media type; text is always among them.
 *
 * <p>A picture goes out twice, as {@code image/svg+xml} and inside {@code text/html}: Jupyter's converter to HTML drops the
 * former.
 *
 * @param forms text by media type, the plainest first
 */
public record Shown(Map<String, String> forms) {
    public static final String TEXT = "text/plain";
    public static final String HTML = "text/html";
    public static final String SVG = "image/svg+xml";

    /** No form at all, as of a name that means nothing. */
    public static final Shown NOTHING = new Shown(Map.of());

    private static final int TEXT_LENGTH = 100_000;

    public Shown {
        forms = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(forms));
    }

    /** Returns the forms of any value, as if nothing had been registered in a session. */
    public static Shown of(@Nullable Object value) {
        return of(Renderers.explainingErrors(CellExceptions::inWords).of(value));
    }

    /** Returns the forms of a value that shows itself. */
    public static Shown of(Showable showable) {
        Map<String, String> forms = new LinkedHashMap<>();
        forms.put(TEXT, shortened(showable.text()));
        Optional<String> svg = showable.svg();
        Optional<String> html = showable.html();
        if (html.isPresent()) {
            forms.put(HTML, html.get());
        } else {
            svg.ifPresent(picture -> forms.put(HTML, "<div>" + picture + "</div>"));
        }
        svg.ifPresent(picture -> forms.put(SVG, picture));
        forms.putAll(showable.otherForms());
        if (showable instanceof Live live) {
            forms.putAll(Display.live(live));
        }
        return new Shown(forms);
    }

    /** Returns the text form. */
    public String text() {
        return forms.getOrDefault(TEXT, "");
    }

    /** Tells whether a form of that media type is JSON, which clients and notebook files take as JSON and not as text. */
    public static boolean isJson(String mediaType) {
        return mediaType.equals("application/json") || mediaType.endsWith("+json");
    }

    /**
     * Returns the forms as the messaging protocol and notebook files hold them.
     *
     * @param text writes what is not JSON
     */
    public JsonObject data(Function<String, JsonElement> text) {
        JsonObject data = new JsonObject();
        forms.forEach((type, form) -> data.add(type, isJson(type) ? json(form, text) : text.apply(form)));
        return data;
    }

    /** Returns the forms as a message or an output of a notebook file holds them. */
    public JsonObject content() {
        JsonObject content = new JsonObject();
        content.add("data", data(JsonPrimitive::new));
        content.add("metadata", new JsonObject());
        return content;
    }

    /** Returns the same for a place with a name, under which a message can change it later. */
    public JsonObject contentUnder(String name) {
        JsonObject passing = new JsonObject();
        passing.addProperty("display_id", name);
        JsonObject content = content();
        content.add("transient", passing);
        return content;
    }

    private static JsonElement json(String form, Function<String, JsonElement> text) {
        try {
            return JsonParser.parseString(form);
        } catch (JsonParseException e) {
            return text.apply(form); // Somebody's own, and no JSON; the client says so.
        }
    }

    private static String shortened(String text) {
        return text.length() <= TEXT_LENGTH
                ? text
                : text.substring(0, TEXT_LENGTH) + "\n... and " + (text.length() - TEXT_LENGTH)
                        + " characters more, not shown";
    }
}
