package parchment.display.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import parchment.display.Display;
import parchment.display.Html;
import parchment.display.Showable;

/**
 * Puts the page of linked views together: the still picture, the data, the style, the plotting library and the script, all in one
 * fragment.
 */
final class LinkedViewsPage {
    /** The plotting library inside the page (docs/decisions/0005). */
    private static final String UPLOT = "/META-INF/resources/webjars/uplot/1.6.30/";

    private LinkedViewsPage() {}

    static String of(LinkedViews views) {
        String data = views.data();
        // The same page twice in one notebook has the same name; the script takes the first that is not alive yet.
        String name = "parchment-views-" + String.format(Locale.ROOT, "%08x", data.hashCode());
        StringBuilder html = new StringBuilder(data.length() + 100_000);
        html.append("<div class=\"parchment-views\" data-page=\"").append(name).append('"');
        views.chosen()
                .flatMap(LinkedViewsPage::wayBack)
                .ifPresent(place -> html.append(" data-back=\"").append(place).append('"'));
        html.append(">\n<style>\n");
        html.append(read(UPLOT + "dist/uPlot.min.css"))
                .append(read("linked-views.css"))
                .append("</style>\n");
        html.append("<div class=\"still\">");
        views.still().flatMap(Showable::html).ifPresent(html::append);
        html.append(
                        "<p class=\"how\">This is the still picture. Trust the notebook or run the cell again for the explorer, where")
                .append(" batches can be chosen, filtered and compared.</p></div>\n");
        html.append("<div class=\"live\" hidden></div>\n");
        for (String note : views.notes()) {
            html.append("<p class=\"note\"><small>").append(Html.escape(note)).append("</small></p>\n");
        }
        html.append("<script type=\"application/json\" class=\"data\">")
                .append(data)
                .append("</script>\n");
        html.append("<script>\n(function () {\n'use strict';\n/* uPlot 1.6.30\n")
                .append(read(UPLOT + "LICENSE").strip())
                .append("\n*/\n")
                .append(read(UPLOT + "dist/uPlot.iife.min.js"))
                .append('\n')
                .append(read("linked-views-scales.js"))
                .append(read("linked-views-picture.js"))
                .append(read("linked-views-table.js"))
                .append(read("linked-views.js"))
                .append("\nstart('")
                .append(name)
                .append("');\n}());\n</script>\n</div>\n");
        return html.toString();
    }

    /** Shows the place through which a choice comes back, where the page has one, and returns its name. */
    private static Optional<String> wayBack(ChosenNames chosen) {
        if (Display.live(chosen).isEmpty()) {
            return Optional.empty();
        }
        Display.show(chosen);
        return Optional.of(chosen.place());
    }

    private static String read(String resource) {
        try (InputStream in = LinkedViewsPage.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("The file " + resource + " is missing from the jars.");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).replaceFirst("^/[*]! SPDX.*?[*]/\n", "");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
