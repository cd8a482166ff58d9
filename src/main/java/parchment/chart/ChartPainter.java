package parchment.chart;

import java.util.ArrayList;
import java.util.List;
import parchment.display.Html;

/** Lays a picture out and paints it as SVG, from the title at the top to the notes at the foot. */
final class ChartPainter {
    /** What the picture stands on. */
    enum Ground {
        /** A white ground of its own. */
        WHITE,
        /** The page's ground and the colour of the page's text. */
        PAGE
    }

    static final double WIDTH = 800;
    static final double MARGIN = 8;
    private static final double TITLE = 17;
    private static final double NOTE = 12;
    static final double LABEL = 13;
    /** The drawing area keeps at least this much of the width, whatever the labels want. */
    private static final double LEAST_AREA = 360;

    private final Panels panels;
    private final Ground ground;
    private final Style style;
    private final Scale acrossUnplaced;
    private final List<Scale> upwards = new ArrayList<>();
    private final Svg svg = new Svg();
    private final AxesPainter axes = new AxesPainter(svg);
    private double top = MARGIN;

    private ChartPainter(Panels panels, Ground ground) {
        this.panels = panels;
        this.ground = ground;
        this.style = new Style(panels);
        Layer.Reach all = new Layer.Reach();
        boolean points = false;
        for (Plot plot : panels.plots()) {
            Layer.Reach own = new Layer.Reach();
            for (Layer layer : plot.layers()) {
                layer.reach(all);
                layer.reach(own);
                points |= layer instanceof Points;
            }
            upwards.add(Scale.around(plot.y(), own.lowY(), own.highY(), Scale.Room.ROUND));
        }
        Scale.Room room = points ? Scale.Room.LITTLE : Scale.Room.NONE;
        acrossUnplaced = Scale.around(panels.plots().get(0).x(), all.lowX(), all.highX(), room);
    }

    static String paint(Panels panels, Ground ground) {
        return new ChartPainter(panels, ground).paint();
    }

    private String paint() {
        double left = AxesPainter.leftMargin(panels, upwards);
        Scale across = placeAcross(left);
        title(left);
        Key key = new Key(panels, left, WIDTH - MARGIN);
        key.paint(svg, top, style);
        top += key.height();
        for (int i = 0; i < panels.plots().size(); i++) {
            panel(i, across);
        }
        top = axes.across(across, top, panels.plots().stream().allMatch(Plot::isEmpty));
        notes(left);
        return document(Math.ceil(top + 2));
    }

    /** Sets the right end of the drawing area so that the names at line ends and the last boundary's name have room. */
    private Scale placeAcross(double left) {
        double ends = 0;
        for (Plot plot : panels.plots()) {
            ends = Math.max(ends, EndLabels.width(plot));
        }
        double right = WIDTH - MARGIN - Math.max(ends, 14);
        for (Plot plot : panels.plots()) {
            for (Boundary boundary : plot.layers(Boundary.class)) {
                // The name starts at its line, so the line must stand far enough to the left: solve for the right end.
                double room = WIDTH - 2 - Lanes.width(Lanes.words(boundary, acrossUnplaced.axis()));
                double share = (acrossUnplaced.place(boundary.x()));
                if (share > 0 && share <= 1) {
                    right = Math.min(right, left + (room - left) / share);
                }
            }
        }
        return acrossUnplaced.over(left, Math.max(right, left + LEAST_AREA));
    }

    private void title(double left) {
        if (panels.title().isBlank()) {
            return;
        }
        // Bold letters are about a tenth wider than the plain ones of the table of widths.
        for (String line : TextWidth.wrap(panels.title(), TITLE * 1.1, WIDTH - 2 * MARGIN, 3)) {
            top += 20;
            svg.text(MARGIN, top - 4, line, "font-size=\"" + Svg.number(TITLE) + "\" font-weight=\"bold\"");
        }
        top += 6;
    }

    private void panel(int number, Scale across) {
        Plot plot = panels.plots().get(number);
        if (panels.plots().size() > 1 && !plot.title().isBlank()) {
            top += 18;
            svg.text(
                    across.start(),
                    top - 4,
                    TextWidth.fit(plot.title(), LABEL * 1.1, WIDTH - across.start() - MARGIN),
                    "font-weight=\"bold\"");
        }
        // What stands in the first panel goes on through the others; said or shaded there again, it would stand twice.
        Plot first = panels.plots().get(0);
        List<Boundary> boundaries = new ArrayList<>(plot.layers(Boundary.class));
        List<Span> spans = new ArrayList<>(plot.layers(Span.class));
        if (number > 0) {
            boundaries.removeAll(first.layers(Boundary.class));
            spans.removeAll(first.layers(Span.class));
        }
        List<Lanes.Placed> names = Lanes.place(boundaries, across);
        double laneHeight = Lanes.count(names) * Lanes.LANE;
        double spanHeight = (spans.isEmpty() ? 0 : 16) + (plot.triedRange().isPresent() ? 16 : 0);
        double areaTop = top + laneHeight + spanHeight + 6;
        double areaBottom = areaTop + plot.height();
        Scale y = upwards.get(number).over(areaBottom, areaTop);
        List<SpanNames.Placed> spanNames = spanNames(spans, across, areaTop);
        double triedBottom = areaTop - (spans.isEmpty() ? 0 : 16);
        if (number > 0) {
            boundaries.addAll(first.layers(Boundary.class));
            spans.addAll(first.layers(Span.class));
        }
        PanelPainter painter = new PanelPainter(svg, plot, across, y, style);
        painter.ground(spans, boundaries);
        axes.upwards(plot, across, y);
        stems(names, spanNames, boundaries, across, y, areaTop - spanHeight - 2);
        if (plot.isEmpty()) {
            painter.emptySentence();
        } else {
            painter.layers();
            painter.triedRange(triedBottom);
            painter.endLabels();
        }
        top = areaBottom + (number < panels.plots().size() - 1 ? 12 : 0);
    }

    /** Writes the names of spans over their bands, pushed apart where bands are narrow, and returns where they stand. */
    private List<SpanNames.Placed> spanNames(List<Span> spans, Scale across, double areaTop) {
        List<SpanNames.Placed> placed = SpanNames.place(spans, across, WIDTH - 2);
        for (SpanNames.Placed name : placed) {
            svg.text(name.left(), areaTop - 5, name.words(), "font-size=\"" + Svg.number(SpanNames.SIZE) + "\"");
        }
        return placed;
    }

    private void stems(
            List<Lanes.Placed> names,
            List<SpanNames.Placed> spanNames,
            List<Boundary> boundaries,
            Scale across,
            Scale y,
            double lanesBottom) {
        StringBuilder path = new StringBuilder();
        for (Boundary boundary : boundaries) {
            if (!across.contains(boundary.x())) {
                continue;
            }
            double stemTop = y.end();
            for (Lanes.Placed name : names) {
                if (name.boundary() == boundary && name.lane() >= 0) {
                    double base = lanesBottom - name.lane() * Lanes.LANE;
                    stemTop = base - Lanes.SIZE;
                    svg.text(name.x() + 4, base - 3, name.words(), "font-size=\"" + Svg.number(Lanes.SIZE) + "\"");
                }
            }
            double place = across.place(boundary.x());
            path.append('M').append(Svg.number(place)).append(' ').append(Svg.number(y.start()));
            // A line that would strike through a span's name stops below it and goes on above it.
            if (stemTop < y.end() && spanNames.stream().anyMatch(name -> name.covers(place))) {
                path.append('V').append(Svg.number(y.end() - 1));
                path.append('M').append(Svg.number(place)).append(' ').append(Svg.number(y.end() - 16));
            }
            path.append('V').append(Svg.number(stemTop));
        }
        svg.path(path.toString(), "fill=\"none\" stroke=\"currentColor\" stroke-opacity=\".7\"");
    }

    private void notes(double left) {
        List<String> notes = new ArrayList<>(panels.notes());
        int unnamed = panels.plots().stream().mapToInt(EndLabels::withoutRoom).sum();
        if (unnamed > 0) {
            notes.add(unnamed + (unnamed == 1 ? " line has" : " lines have") + " no room for a name at its end.");
        }
        top += notes.isEmpty() ? 0 : 6;
        for (String note : notes) {
            for (String line : TextWidth.wrap(note, NOTE, WIDTH - 2 * MARGIN, 6)) {
                top += 16;
                svg.text(MARGIN, top - 4, line, "font-size=\"" + Svg.number(NOTE) + "\"");
            }
        }
    }

    private String document(double height) {
        String size = "width=\"" + Svg.number(WIDTH) + "\" height=\"" + Svg.number(height) + "\" viewBox=\"0 0 "
                + Svg.number(WIDTH) + " " + Svg.number(height) + "\"";
        // On a page as narrow as a telephone the picture stays readable and is moved sideways; on paper it is as wide as that.
        String look = ground == Ground.WHITE
                ? "color:#1a1a1a;background:#fff;max-width:100%;height:auto"
                : "color:inherit;background:none;width:max(100%,860px - 35vw);max-width:" + Svg.number(WIDTH)
                        + "px;height:auto";
        Svg document = new Svg();
        document.open(
                "svg",
                "xmlns=\"http://www.w3.org/2000/svg\" " + size + " role=\"img\" aria-label=\""
                        + Html.escape(panels.title())
                        + "\" font-family=\"Helvetica,Arial,'Liberation Sans','DejaVu Sans',sans-serif\" font-size=\""
                        + Svg.number(LABEL) + "\" fill=\"currentColor\" style=\"" + look + "\"");
        document.say("title", panels.title().isBlank() ? "Picture" : panels.title());
        document.say("desc", ChartWords.of(panels));
        if (ground == Ground.WHITE) {
            document.rectangle(0, 0, WIDTH, height, "fill=\"#fff\"");
        }
        return document.raw(svg.toString()).raw("</svg>").toString();
    }
}
