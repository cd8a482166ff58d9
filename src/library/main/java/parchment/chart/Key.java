package parchment.chart;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Tells points, bands and crowds of thin lines apart in a row of swatches and words under the title. */
final class Key {
    static final double ROW = 20;
    private static final double SIZE = 14;
    private static final double SWATCH = 28;
    /** Room for a short line and the steps of shading behind it. */
    private static final double WIDE_SWATCH = 78;

    private static final double GAP = 20;

    private record Placed(Layer layer, String words, double x, int row, double swatch) {}

    private final List<Placed> placed = new ArrayList<>();
    private int rows;

    Key(Panels panels, Layout layout, double left, double right) {
        Map<String, Layer> items = new LinkedHashMap<>();
        for (Plot plot : panels.plots()) {
            for (Layer layer : plot.layers()) {
                boolean told = !layout.namesEnds() && layer instanceof Line end && EndLabels.isNamed(end)
                        || layer instanceof Points
                        || layer instanceof Band
                        || layer instanceof Line line && line.weight() == Weight.FAINT;
                if (told && !layer.label().isBlank() && !plot.isEmpty()) {
                    items.putIfAbsent(layer.getClass().getSimpleName() + layer.label(), layer);
                }
            }
        }
        boolean shades = panels.plots().stream().anyMatch(CrowdPainter::shades);
        double x = left;
        for (Layer layer : items.values()) {
            boolean crowd = shades && layer instanceof Line line && line.weight() == Weight.FAINT;
            String label = crowd ? layer.label() + ", shaded where many run" : layer.label();
            double swatch = crowd ? WIDE_SWATCH : SWATCH;
            String words = TextWidth.fit(label, SIZE, right - left - swatch);
            double width = swatch + TextWidth.of(words, SIZE);
            if (x > left && x + width > right) {
                rows++;
                x = left;
            }
            placed.add(new Placed(layer, words, x, rows, swatch));
            x += width + GAP;
        }
        rows += placed.isEmpty() ? 0 : 1;
    }

    double height() {
        return rows * ROW + (rows == 0 ? 0 : 3);
    }

    void paint(Svg svg, double top, Style style) {
        for (Placed item : placed) {
            double y = top + item.row() * ROW + ROW / 2;
            double x = item.x();
            if (item.layer() instanceof Points points) {
                svg.open("g", Markers.group(style.marker(points), style.colour(points)));
                svg.path(Markers.at(style.marker(points), x + 11, y), "").close("g");
            } else if (item.layer() instanceof Band band) {
                svg.rectangle(x, y - 6, 22, 12, PanelPainter.bandFill(band));
            } else if (item.layer() instanceof Line line) {
                svg.line(x, y, x + 22, y, "fill=\"none\" " + style.keyStroke(line));
                if (item.swatch() > SWATCH) {
                    shades(svg, x + 26, y);
                }
            }
            svg.text(x + item.swatch(), y + 4.5, item.words(), "");
        }
    }

    private static void shades(Svg svg, double left, double y) {
        double x = left;
        for (double step : CrowdPainter.steps(CrowdPainter.MOST_STEPS)) {
            String opacity = String.format(Locale.ROOT, "%.2f", step);
            svg.rectangle(x, y - 6, 7.5, 12, "fill=\"currentColor\" fill-opacity=\"" + opacity + "\"");
            x += 7.5;
        }
    }
}
