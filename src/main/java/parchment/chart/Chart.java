package parchment.chart;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import parchment.display.Showable;
import parchment.file.FileWords;
import parchment.file.WholeFile;

/**
 * Holds a finished picture and shows it as SVG, as HTML and in words.
 *
 * <p>In HTML the picture takes the colour of the page's text, so it reads on light and on dark pages; as a document of its own it has a
 * white ground. Its text is text: it can be searched and copied. It needs no script, no style sheet and no particular font.
 */
public final class Chart implements Showable {
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
        return Optional.of(ChartPainter.paint(panels, ChartPainter.Ground.WHITE));
    }

    /** Returns the picture for a page, in the colour of the page's text. */
    @Override
    public Optional<String> html() {
        return Optional.of("<figure class=\"parchment-chart\" tabindex=\"0\" style=\"margin:.5em 0;max-width:62em;overflow-x:auto\">"
                + ChartPainter.paint(panels, ChartPainter.Ground.PAGE)
                + "</figure>");
    }

    /**
     * Writes the picture as an SVG file and returns where it is.
     *
     * @throws UncheckedIOException if the file cannot be written
     */
    public Path save(String file) {
        Path path = Path.of(file);
        try {
            return WholeFile.at(path).write(ChartPainter.paint(panels, ChartPainter.Ground.WHITE));
        } catch (IOException failure) {
            throw new UncheckedIOException("The picture " + FileWords.of(failure), failure);
        }
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "Picture: %s", panels.title());
    }
}
