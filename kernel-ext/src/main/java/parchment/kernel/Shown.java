package parchment.kernel;

import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import parchment.display.Display;
import parchment.display.Html;
import parchment.display.Live;
import parchment.display.Showable;

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

    /** So many members of a collection are shown, each in its own form; the rest is counted. */
    private static final int MEMBERS = 60;

    private static final int TEXT_LENGTH = 100_000;

    public Shown {
        forms = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(forms));
    }

    /** Returns the forms of any value: its own if it is {@link Showable}, those of its members if it holds such, else its text. */
    public static Shown of(@Nullable Object value) {
        if (value instanceof Optional<?> optional && optional.isPresent() && optional.get() instanceof Showable inner) {
            return ofShowable(inner);
        }
        if (value instanceof Showable showable) {
            return ofShowable(showable);
        }
        if (value instanceof Collection<?> collection && holdsShowables(collection)) {
            return ofMembers(collection);
        }
        if (value instanceof Object[] array && holdsShowables(Arrays.asList(array))) {
            return ofMembers(Arrays.asList(array));
        }
        return new Shown(Map.of(TEXT, shortened(PlainText.of(value))));
    }

    /** Returns the text form. */
    public String text() {
        return forms.getOrDefault(TEXT, "");
    }

    private static Shown ofShowable(Showable showable) {
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
        if (showable instanceof Live live) {
            forms.putAll(Display.live(live));
        }
        return new Shown(forms);
    }

    private static boolean holdsShowables(Collection<?> collection) {
        return !collection.isEmpty() && collection.stream().allMatch(member -> member instanceof Showable);
    }

    private static Shown ofMembers(Collection<?> members) {
        StringBuilder text = new StringBuilder();
        StringBuilder html = new StringBuilder();
        members.stream().limit(MEMBERS).map(Shown::of).forEach(member -> {
            text.append(member.text()).append('\n');
            String rich = member.forms().get(HTML);
            html.append("<div>")
                    .append(rich != null ? rich : "<pre>" + Html.escape(member.text()) + "</pre>")
                    .append("</div>\n");
        });
        if (members.size() > MEMBERS) {
            String rest = "and " + (members.size() - MEMBERS) + " more, not shown";
            text.append(rest).append('\n');
            html.append("<p>").append(rest).append("</p>\n");
        }
        Map<String, String> forms = new LinkedHashMap<>();
        forms.put(TEXT, shortened(text.toString().stripTrailing()));
        forms.put(HTML, html.toString());
        return new Shown(forms);
    }

    private static String shortened(String text) {
        return text.length() <= TEXT_LENGTH
                ? text
                : text.substring(0, TEXT_LENGTH) + "\n... and " + (text.length() - TEXT_LENGTH)
                        + " characters more, not shown";
    }
}
