package parchment.chart;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Decides the colour, the dash and the shape of every layer of a picture, so that no two look the same. */
final class Style {
    private static final List<String> DASHES = List.of("", "7 3", "2 3", "9 3 2 3", "13 4", "4 2 1 2 1 2", "1 4");

    private final Map<Layer, Integer> order = new IdentityHashMap<>();
    private final int groups;
    private final int faint;

    Style(Panels panels) {
        int lines = 0;
        int pointGroups = 0;
        int crowd = 0;
        List<String> seen = new ArrayList<>();
        Map<String, Integer> named = new HashMap<>();
        for (Plot plot : panels.plots()) {
            for (Line line : plot.layers(Line.class)) {
                if (line.weight() == Weight.FAINT) {
                    crowd++;
                } else if (line.weight() != Weight.TENTATIVE) {
                    // Lines of one name and one colour, such as the limits of several panels, look alike.
                    Integer known = line.colour().isEmpty() || line.label().isBlank()
                            ? null
                            : named.get(line.label() + line.colour());
                    int own = known == null ? lines++ : known;
                    named.putIfAbsent(line.label() + line.colour(), own);
                    order.put(line, own);
                }
            }
            for (Points points : plot.layers(Points.class)) {
                // Groups with the same words are one group, so that panels can share a key.
                if (!seen.contains(points.label())) {
                    seen.add(points.label());
                    pointGroups++;
                }
                order.put(points, seen.indexOf(points.label()));
            }
        }
        groups = pointGroups;
        faint = crowd;
    }

    private int order(Layer layer) {
        return order.getOrDefault(layer, 0);
    }

    Colour colour(Line line) {
        boolean ink = line.weight() == Weight.FAINT || line.weight() == Weight.TENTATIVE;
        return line.colour().orElseGet(() -> ink ? Colour.INK : Colour.ofSeries(order(line)));
    }

    Colour colour(Points points) {
        return points.colour().orElseGet(() -> groups == 1 ? Colour.INK : Colour.ofSeries(order(points)));
    }

    Marker marker(Points points) {
        return points.marker().orElseGet(() -> Marker.ofSeries(order(points)));
    }

    /** Returns how far one of a crowd may be simplified: it is seen as density, the more so the more there are. */
    double crowdTolerance() {
        return faint > 40 ? 0.9 : 0.5;
    }

    /** Returns how a line is drawn in the key, where one of a crowd has to be seen by itself. */
    String keyStroke(Line line) {
        return line.weight() == Weight.FAINT
                ? "stroke=\"" + colour(line).svg() + "\" stroke-opacity=\".5\""
                : stroke(line);
    }

    /** Returns how a line is drawn, as attributes of SVG. */
    String stroke(Line line) {
        if (line.weight() == Weight.FAINT) {
            // The more lines, the fainter each, so that a crowd shows as density and the median stays readable.
            double opacity = Math.max(0.06, Math.min(0.55, 1.6 / Math.sqrt(Math.max(1, faint))));
            return String.format(
                    Locale.ROOT,
                    "stroke=\"%s\" stroke-opacity=\"%.2f\"",
                    colour(line).svg(),
                    opacity);
        }
        if (line.weight() == Weight.TENTATIVE) {
            return "stroke=\"" + colour(line).svg() + "\" stroke-width=\"1.3\" stroke-dasharray=\"9 7\"";
        }
        String dash = DASHES.get(order(line) % DASHES.size());
        return "stroke=\"" + colour(line).svg() + "\" stroke-width=\""
                + (line.weight() == Weight.STRONG ? "2.8" : "1.7") + "\""
                + (dash.isEmpty() ? "" : " stroke-dasharray=\"" + dash + "\"");
    }
}
