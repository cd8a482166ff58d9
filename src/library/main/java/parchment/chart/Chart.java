package parchment.chart;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.display.Html;
import parchment.display.Showable;
import parchment.file.FileWords;
import parchment.file.WholeFile;

/**
 * A finished picture, which shows itself as SVG, as HTML and in words.
 *
 * <p>In HTML the picture takes the colour of the page's text, so it reads on light and on dark pages; as a document of its own it has a
 * white ground. Its text is text: it can be searched and copied. It needs no script, no style sheet and no particular font.
 */
public final class Chart implements Showable {
    /** Where a page keeps no style sheets, the narrow layout stays hidden and the wide one shrinks. */
    private static final String NARROW_PAGES = "<style>@media (max-width:600px){.parchment-chart>.wide{display:none}"
            + ".parchment-chart>.narrow{display:block!important}}</style>";

    private final Panels panels;

    Chart(Panels panels) {
        this.panels = panels;
    }

    /** Returns what the picture shows. */
    public Panels panels() {
        return panels;
    }

    /** Returns the picture in words: its axes, how many lines and points it has, and what its boundaries say. */
    @Override
    public String text() {
        return ChartWords.of(panels);
    }

    /** Returns the picture as a document of its own on a white ground. */
    @Override
    public Optional<String> svg() {
        return Optional.of(ChartPainter.paint(panels, ChartPainter.Ground.WHITE, Layout.WIDE));
    }

    /** Returns the picture for a page, in the colour of the page's text. */
    @Override
    public Optional<String> html() {
        StringBuilder html = new StringBuilder(
                        "<figure class=\"parchment-chart\" style=\"margin:.5em 0;max-width:62em\">")
                .append(NARROW_PAGES)
                .append(ChartPainter.paint(panels, ChartPainter.Ground.PAGE, Layout.WIDE))
                .append(ChartPainter.paint(panels, ChartPainter.Ground.PAGE, Layout.NARROW));
        List<String> notes = ChartPainter.notes(panels, Layout.WIDE);
        if (!notes.isEmpty()) {
            html.append("<figcaption style=\"font-size:14px;line-height:1.35;margin:.3em 8px;max-width:56em\">");
            notes.forEach(note -> html.append("<div>").append(Html.escape(note)).append("</div>"));
            html.append("</figcaption>");
        }
        return Optional.of(html.append("</figure>").toString());
    }

    /**
     * Writes the picture as an SVG file and returns where it is.
     *
     * @throws UncheckedIOException if the file cannot be written
     */
    public Path save(String file) {
        Path path = Path.of(file);
        try {
            return WholeFile.at(path).write(ChartPainter.paint(panels, ChartPainter.Ground.WHITE, Layout.WIDE));
        } catch (IOException failure) {
            throw new UncheckedIOException("The picture " + FileWords.of(failure), failure);
        }
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "Picture: %s", panels.title());
    }
}
