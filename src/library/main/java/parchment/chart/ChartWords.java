package parchment.chart;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Puts a picture into words for readers who do not see it. */
final class ChartWords {
    private ChartWords() {}

    static String of(Panels panels) {
        List<String> sentences = new ArrayList<>();
        sentences.add(panels.title());
        Axis x = panels.plots().get(0).x();
        sentences.add("Across: " + x.fullLabel() + across(panels, x));
        for (Plot plot : panels.plots()) {
            describe(plot, x, sentences);
        }
        sentences.addAll(panels.notes());
        sentences.addAll(Frame.of(panels).notes());
        StringBuilder text = new StringBuilder();
        for (String sentence : sentences) {
            String stripped = sentence.strip();
            if (!stripped.isEmpty()) {
                text.append(text.length() == 0 ? "" : " ");
                text.appendCodePoint(Character.toUpperCase(stripped.codePointAt(0)));
                text.append(stripped, stripped.offsetByCodePoints(0, 1), stripped.length());
                text.append(".!?…".indexOf(stripped.charAt(stripped.length() - 1)) >= 0 ? "" : ".");
            }
        }
        return text.toString();
    }

    private static String across(Panels panels, Axis x) {
        Layer.Reach reach = new Layer.Reach();
        panels.plots().forEach(plot -> plot.layers().forEach(layer -> layer.reach(reach)));
        return reach.lowX() <= reach.highX() ? ", " + x.format(reach.lowX()) + " to " + x.format(reach.highX()) : "";
    }

    private static void describe(Plot plot, Axis x, List<String> sentences) {
        if (plot.isEmpty()) {
            sentences.add(plot.emptySentence());
        } else {
            Layer.Reach reach = new Layer.Reach();
            plot.layers().forEach(layer -> layer.reach(reach));
            sentences.add("Upwards: "
                    + (plot.y().kind() == Axis.Kind.ROWS
                            ? (plot.y().label() + " " + plot.y().rows().size() + " rows").strip()
                            : plot.y().fullLabel() + ", " + plot.y().format(reach.lowY()) + " to "
                                    + plot.y().format(reach.highY())));
        }
        List<String> parts = new ArrayList<>();
        Map<String, Integer> crowds = new LinkedHashMap<>();
        Map<String, List<Points>> groups = new LinkedHashMap<>();
        for (Layer layer : plot.layers()) {
            if (layer instanceof Line line && line.weight() == Weight.FAINT) {
                crowds.merge(line.label(), 1, Integer::sum);
            } else if (layer instanceof Line line) {
                parts.add("line " + line.label());
            } else if (layer instanceof Band band) {
                parts.add("band " + band.label());
            } else if (layer instanceof Points points) {
                groups.computeIfAbsent(points.label(), label -> new ArrayList<>())
                        .add(points);
            } else if (layer instanceof Boundary boundary) {
                parts.add(words(boundary, x));
            } else if (layer instanceof Span span) {
                parts.add(span.label() + " from " + x.format(span.from()) + " to " + x.format(span.to()));
            }
        }
        List<String> many = new ArrayList<>();
        crowds.forEach((label, count) -> many.add(named(count(count, "thin line"), label)));
        groups.forEach((label, same) -> many.add(words(label, same)));
        parts.addAll(0, many);
        plot.triedRange().ifPresent(range -> parts.add(words(range, x)));
        sentences.add(String.join("; ", parts.stream().map(String::strip).toList()));
    }

    private static String words(String label, List<Points> same) {
        int leftOut = same.stream().mapToInt(Points::leftOut).sum();
        int all = same.stream().mapToInt(Points::size).sum();
        String words = named(count(all - leftOut, "point"), label);
        return leftOut > 0 ? words + ", " + leftOut + " left out because a value is missing" : words;
    }

    private static String named(String count, String label) {
        return label.isBlank() ? count : count + " (" + label + ")";
    }

    private static String count(int count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
    }

    /** Returns the words of a boundary with its position and, if known, its uncertainty: "first crack start 8:30 ± 5 s". */
    static String words(Boundary boundary, Axis x) {
        return (boundary.label() + " " + position(boundary, x)).strip();
    }

    /** Returns the position of a boundary and, if known, its uncertainty: "8:30 ± 5 s". */
    static String position(Boundary boundary, Axis x) {
        String position = x.format(boundary.x());
        return boundary.uncertainty() > 0 ? position + " ± " + x.formatStep(boundary.uncertainty()) : position;
    }

    /** Returns the words of the range that was tried. */
    static String words(Span triedRange, Axis x) {
        return triedRange.label() + " from " + x.format(triedRange.from()) + " to " + x.format(triedRange.to());
    }
}
