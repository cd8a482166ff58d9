package parchment.rendering;

import java.util.Collection;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import parchment.display.Html;
import parchment.display.Showable;

/** Shows several values that each show themselves, one below the other. */
final class Members {
    /** So many are shown; the rest is counted. */
    static final int SHOWN = 60;

    private final Renderers renderers;
    private final StringBuilder text = new StringBuilder();
    private final StringBuilder html = new StringBuilder();

    private Members(Renderers renderers) {
        this.renderers = renderers;
    }

    static Showable of(Collection<?> members, Renderers renderers) {
        Members all = new Members(renderers);
        members.stream().limit(SHOWN).forEach(all::add);
        return all.whole(members.size());
    }

    /** Shows the values of a map, each below its key. */
    static Showable of(Map<?, ?> map, Renderers renderers) {
        Members all = new Members(renderers);
        map.entrySet().stream().limit(SHOWN).forEach(entry -> {
            String key = PlainText.of(entry.getKey());
            all.text.append(key).append(":\n");
            all.html.append("<p><strong>").append(Html.escape(key)).append("</strong></p>\n");
            all.add(entry.getValue());
        });
        return all.whole(map.size());
    }

    private void add(@Nullable Object member) {
        Showable shown = renderers.of(member);
        text.append(shown.text()).append('\n');
        html.append("<div>")
                .append(shown.html().or(shown::svg).orElseGet(() -> withoutPage(shown)))
                .append("</div>\n");
    }

    private static String withoutPage(Showable shown) {
        String png = shown.otherForms().get("image/png");
        return png == null
                ? "<pre>" + Html.escape(shown.text()) + "</pre>"
                : "<img alt=\"" + Html.escape(shown.text()) + "\" style=\"max-width:100%\" src=\"data:image/png;base64,"
                        + Html.escape(png.replaceAll("\\s", "")) + "\">";
    }

    private Showable whole(int size) {
        if (size > SHOWN) {
            String rest = "and " + (size - SHOWN) + " more, not shown";
            text.append(rest).append('\n');
            html.append("<p>").append(rest).append("</p>\n");
        }
        return new Renderers.Page(text.toString().stripTrailing(), html.toString());
    }
}
