package parchment.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parchment.display.Html;

/** Lays a picture out and paints it as SVG, from the title at the top to the notes at the foot. */
final class ChartPainter {
    /** What the picture stands on. */
    enum Ground {
        /** A white ground of its own. */
        WHITE("stroke=\"#fff\""),
        /** The page's ground and the colour of the page's text. */
        PAGE("style=\"stroke:var(--jp-layout-color0,var(--vscode-editor-background,Canvas))\"");

        private final String stroke;

        Ground(String stroke) {
            this.stroke = stroke;
        }

        /** Returns how a line in the colour of the ground is drawn, as an attribute of SVG. */
        String stroke() {
            return stroke;
        }
    }

    static final double MARGIN = 8;
    private static final double TITLE = 17;
    private static final double NOTE = 14;
    static final double LABEL = 14;

    private final Panels panels;
    private final Ground ground;
    private final Style style;
    private final Scale acrossUnplaced;
    private final Frame frame;
    private final List<Scale> upwards;
    private final Svg svg = new Svg();
    private final AxesPainter axes;
    private final Layout layout;
    private double top = MARGIN;

    private ChartPainter(Panels panels, Ground ground, Layout layout) {
        this.layout = layout;
        this.axes = new AxesPainter(svg, layout);
        this.panels = panels;
        this.ground = ground;
        this.style = new Style(panels);
        this.frame = Frame.of(panels);
        this.acrossUnplaced = frame.across();
        this.upwards = frame.upwards();
    }

    static String paint(Panels panels, Ground ground, Layout layout) {
        return new ChartPainter(panels, ground, layout).paint();
    }

    /** Returns the sentences under a picture: its own, then what a reader has to know of how it is drawn. */
    static List<String> notes(Panels panels, Layout layout) {
        List<String> notes = new ArrayList<>(panels.notes());
        notes.addAll(Frame.of(panels).notes());
        int unnamed = layout.namesEnds()
                ? panels.plots().stream().mapToInt(EndLabels::withoutRoom).sum()
                : 0;
        if (unnamed > 0) {
            notes.add(unnamed + (unnamed == 1 ? " line has" : " lines have") + " no room for a name at its end.");
        }
        return notes;
    }

    private String paint() {
        double left = axes.leftMargin(panels, upwards);
        Scale across = placeAcross(left);
        title(left);
        Key key = new Key(panels, layout, layout.namesEnds() ? left : MARGIN, layout.width() - MARGIN);
        key.paint(svg, top, style);
        top += key.height();
        for (int i = 0; i < panels.plots().size(); i++) {
            panel(i, across);
        }
        top = axes.across(across, top, panels.plots().stream().allMatch(Plot::isEmpty));
        notes();
        return document(Math.ceil(top + 2));
    }

    /** Sets the right end of the drawing area so that the names at line ends and the last boundary's name have room. */
    private Scale placeAcross(double left) {
        double ends = 0;
        for (Plot plot : panels.plots()) {
            ends = Math.max(ends, EndLabels.width(plot, layout));
        }
        double right = layout.width() - MARGIN - Math.max(ends, 14);
        for (Plot plot : panels.plots()) {
            for (Boundary boundary : layout.namesEnds() ? plot.layers(Boundary.class) : List.<Boundary>of()) {
                // The name starts at its line, so the line must stand far enough to the left: solve for the right end.
                double room = layout.width() - 2 - Lanes.width(Lanes.words(boundary, acrossUnplaced.axis(), layout));
                double share = (acrossUnplaced.place(boundary.x()));
                if (share > 0 && share <= 1) {
                    right = Math.min(right, left + (room - left) / share);
                }
            }
        }
        return acrossUnplaced.over(left, Math.max(right, left + layout.leastArea()));
    }

    private void title(double left) {
        if (panels.title().isBlank()) {
            return;
        }
        // Bold letters are about a tenth wider than the plain ones of the table of widths.
        for (String line : TextWidth.wrap(panels.title(), TITLE * 1.1, layout.width() - 2 * MARGIN, 3)) {
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
                    TextWidth.fit(plot.title(), LABEL * 1.1, layout.width() - across.start() - MARGIN),
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
        List<Lanes.Placed> names = Lanes.place(boundaries, across, layout);
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
        PanelPainter painter = new PanelPainter(svg, plot, across, y, style, ground, layout);
        painter.ground(spans, boundaries);
        axes.upwards(plot, across, y);
        stems(plot, names, spanNames, boundaries, across, y, areaTop - spanHeight - 2);
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
        List<SpanNames.Placed> placed = SpanNames.place(spans, across, layout.width() - 2);
        for (SpanNames.Placed name : placed) {
            svg.text(name.left(), areaTop - 5, name.words(), "font-size=\"" + Svg.number(SpanNames.SIZE) + "\"");
        }
        return placed;
    }

    private void stems(
            Plot plot,
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
                    stemTop = name.isMoved() ? base : base - Lanes.SIZE;
                }
            }
            double place = across.place(boundary.x());
            path.append('M').append(Svg.number(place)).append(' ').append(Svg.number(y.start()));
            // A line that would strike through a span's name stops below it and goes on above it.
            // The words of the range that was tried go nearly all across.
            if (stemTop < y.end() && plot.triedRange().isPresent()) {
                path.append('V').append(Svg.number(y.end()));
                path.append('M').append(Svg.number(place)).append(' ').append(Svg.number(lanesBottom));
            } else if (stemTop < y.end() && spanNames.stream().anyMatch(name -> name.covers(place))) {
                path.append('V').append(Svg.number(y.end() - 1));
                path.append('M').append(Svg.number(place)).append(' ').append(Svg.number(y.end() - 16));
            }
            // So does one that would strike through the name of another line that was moved inwards.
            for (Lanes.Placed name : names) {
                double base = lanesBottom - name.lane() * Lanes.LANE;
                if (name.lane() >= 0 && name.isMoved() && name.covers(place) && base - Lanes.SIZE > stemTop) {
                    path.append('V').append(Svg.number(base));
                    path.append('M').append(Svg.number(place)).append(' ').append(Svg.number(base - Lanes.SIZE - 1));
                }
            }
            path.append('V').append(Svg.number(stemTop));
        }
        svg.path(path.toString(), "fill=\"none\" stroke=\"currentColor\" stroke-opacity=\".7\"");
        for (Lanes.Placed name : names) {
            if (name.lane() >= 0) {
                svg.text(
                        name.left(),
                        lanesBottom - name.lane() * Lanes.LANE - 3,
                        name.words(),
                        "font-size=\"" + Svg.number(Lanes.SIZE) + "\"");
            }
        }
    }

    /** Writes the notes where the picture stands alone; on a page they are the page's own text, which does not shrink. */
    private void notes() {
        if (ground == Ground.PAGE) {
            return;
        }
        List<String> notes = notes(panels, layout);
        top += notes.isEmpty() ? 0 : 6;
        for (String note : notes) {
            for (String line : TextWidth.wrap(note, NOTE, layout.width() - 2 * MARGIN, 6)) {
                top += 18;
                svg.text(MARGIN, top - 5, line, "font-size=\"" + Svg.number(NOTE) + "\"");
            }
        }
    }

    private String document(double height) {
        String size = "width=\"" + Svg.number(layout.width()) + "\" height=\"" + Svg.number(height)
                + "\" viewBox=\"0 0 " + Svg.number(layout.width()) + " " + Svg.number(height) + "\"";
        String look = (ground == Ground.WHITE ? "color:#1a1a1a;background:#fff" : "color:inherit;background:none")
                + ";max-width:100%;height:auto"
                + (layout == Layout.NARROW ? ";display:none" : "");
        String which = ground == Ground.WHITE ? "" : " class=\"" + layout.name().toLowerCase(Locale.ROOT) + "\"";
        Svg document = new Svg();
        document.open(
                "svg",
                "xmlns=\"http://www.w3.org/2000/svg\" " + size + which + " role=\"img\" aria-label=\""
                        + Html.escape(panels.title())
                        + "\" font-family=\"Helvetica,Arial,'Liberation Sans','DejaVu Sans',sans-serif\" font-size=\""
                        + Svg.number(LABEL) + "\" fill=\"currentColor\" style=\"" + look + "\"");
        document.say("title", panels.title().isBlank() ? "Picture" : panels.title());
        document.say("desc", ChartWords.of(panels));
        if (ground == Ground.WHITE) {
            document.rectangle(0, 0, layout.width(), height, "fill=\"#fff\"");
        }
        return document.raw(svg.toString()).raw("</svg>").toString();
    }
}
