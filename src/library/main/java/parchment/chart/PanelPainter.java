package parchment.chart;

import java.util.List;

/** Paints the layers of one panel inside its frame. */
final class PanelPainter {
    private final Svg svg;
    private final Plot plot;
    private final Scale x;
    private final Scale y;
    private final Style style;
    private final ChartPainter.Ground ground;
    private final Layout layout;
    private final double left;
    private final double right;
    private final double top;
    private final double bottom;

    PanelPainter(Svg svg, Plot plot, Scale x, Scale y, Style style, ChartPainter.Ground ground, Layout layout) {
        this.layout = layout;
        this.ground = ground;
        this.svg = svg;
        this.plot = plot;
        this.x = x;
        this.y = y;
        this.style = style;
        this.left = x.start();
        this.right = x.end();
        this.top = y.end();
        this.bottom = y.start();
    }

    static String bandFill(Band band) {
        return "fill=\"" + band.colour().svg() + "\" fill-opacity=\"" + (band.colour() == Colour.INK ? ".18" : ".25")
                + "\"";
    }

    /** Paints the ground: grey spans, what was not tried, the uncertainty of boundaries. */
    void ground(List<Span> spans, List<Boundary> boundaries) {
        int n = 0;
        for (Span span : spans) {
            double from = x.placeInside(span.from());
            double to = x.placeInside(span.to());
            // Two greys in turn, so that neighbours are told apart where they meet.
            svg.rectangle(
                    from,
                    top,
                    to - from,
                    bottom - top,
                    "fill=\"currentColor\" fill-opacity=\"" + (n++ % 2 == 0 ? ".09" : ".04") + "\"");
        }
        plot.triedRange().ifPresent(range -> {
            double from = x.placeInside(range.from());
            double to = x.placeInside(range.to());
            String grey = "fill=\"currentColor\" fill-opacity=\".1\"";
            svg.rectangle(left, top, from - left, bottom - top, grey)
                    .rectangle(to, top, right - to, bottom - top, grey);
        });
        for (Boundary boundary : boundaries) {
            if (boundary.uncertainty() > 0) {
                double from = x.placeInside(boundary.x() - boundary.uncertainty());
                double to = x.placeInside(boundary.x() + boundary.uncertainty());
                svg.rectangle(from, top, to - from, bottom - top, "fill=\"currentColor\" fill-opacity=\".16\"");
            }
        }
    }

    /** Paints bands, crowds, points and lines, cut at the frame. */
    void layers() {
        // Half a line's width beyond the frame, so that a line along the frame is not cut in half.
        double over = 1.5;
        String place = "x=\"" + Svg.number(left - over) + "\" y=\"" + Svg.number(top - over) + "\"";
        String size = Svg.number(right - left + 2 * over) + "\" height=\"" + Svg.number(bottom - top + 2 * over) + "\"";
        String box = Svg.number(left - over) + " " + Svg.number(top - over) + " " + Svg.number(right - left + 2 * over)
                + " " + Svg.number(bottom - top + 2 * over);
        // An inner picture cuts its content off at its edge without needing an id, which could clash with another
        // picture's.
        svg.open("svg", place + " width=\"" + size + " viewBox=\"" + box + "\" preserveAspectRatio=\"none\"");
        svg.open("g", "fill=\"none\" stroke-linejoin=\"round\" stroke-linecap=\"round\"");
        new CrowdPainter(svg, x, y, style).paint(plot);
        svg.close("g");
        plot.layers(Band.class).forEach(this::band);
        plot.layers(Points.class).forEach(this::points);
        svg.open("g", "fill=\"none\" stroke-linejoin=\"round\"");
        lines(Weight.TENTATIVE);
        lines(Weight.NORMAL);
        lines(Weight.STRONG);
        svg.close("g").close("svg");
    }

    private void lines(Weight weight) {
        for (Line line : plot.layers(Line.class)) {
            if (line.weight() == weight) {
                String path = path(line);
                if (CrowdPainter.crowds(plot)) {
                    svg.path(path, halo(weight == Weight.STRONG ? 5.6 : 4.8));
                }
                svg.path(path, style.stroke(line));
            }
        }
    }

    /** Returns a rim in the colour of the ground, so that a line is seen over shading. */
    private String halo(double width) {
        return "stroke-opacity=\".85\" stroke-width=\"" + Svg.number(width) + "\" " + ground.stroke();
    }

    private String path(Line line) {
        Polyline path = new Polyline();
        double before = Double.NaN;
        for (int i = 0; i < line.size(); i++) {
            if (!Double.isFinite(line.x(i)) || !Double.isFinite(line.y(i))) {
                path.lift();
                before = Double.NaN;
                continue;
            }
            double placeX = x.place(line.x(i));
            double placeY = y.place(line.y(i));
            if (line.isSteps() && !Double.isNaN(before)) {
                path.to(placeX, before);
            }
            path.to(placeX, placeY);
            before = placeY;
        }
        return path.data();
    }

    private void band(Band band) {
        Polyline path = new Polyline();
        int from = 0;
        while (from < band.size()) {
            int to = from;
            while (to < band.size() && isWhole(band, to)) {
                path.to(x.place(band.x(to)), y.place(band.upper(to)));
                to++;
            }
            for (int i = to - 1; i >= from; i--) {
                path.to(x.place(band.x(i)), y.place(band.lower(i)));
            }
            path.close();
            from = to + 1;
        }
        svg.path(path.data(), bandFill(band));
        if (CrowdPainter.shades(plot)) {
            // Over shading a light fill alone is hardly seen: its edges are drawn as well.
            String edges = edge(band, Band::lower) + edge(band, Band::upper);
            svg.path(edges, "fill=\"none\" " + halo(2.6));
            svg.path(
                    edges,
                    "fill=\"none\" stroke-width=\"1.1\" stroke=\""
                            + band.colour().svg() + "\"");
        }
    }

    private String edge(Band band, BandEdge edge) {
        Polyline path = new Polyline();
        for (int i = 0; i < band.size(); i++) {
            if (isWhole(band, i)) {
                path.to(x.place(band.x(i)), y.place(edge.at(band, i)));
            } else {
                path.lift();
            }
        }
        return path.data();
    }

    private interface BandEdge {
        double at(Band band, int position);
    }

    private static boolean isWhole(Band band, int i) {
        return Double.isFinite(band.x(i)) && Double.isFinite(band.lower(i)) && Double.isFinite(band.upper(i));
    }

    private void points(Points points) {
        Colour colour = style.colour(points);
        Polyline bars = new Polyline();
        for (int i = 0; i < points.size(); i++) {
            if (points.isDrawn(i)) {
                bar(
                        bars,
                        x.place(points.x(i)),
                        x.place(points.x(i)),
                        y.place(points.lower(i)),
                        y.place(points.upper(i)));
                double error = points.xError(i);
                bar(
                        bars,
                        x.place(points.x(i) - error),
                        x.place(points.x(i) + error),
                        y.place(points.y(i)),
                        y.place(points.y(i)));
            }
        }
        svg.path(
                bars.data(),
                "fill=\"none\" stroke=\"" + colour.svg() + "\" stroke-opacity=\".55\" stroke-width=\"1.2\"");
        Marker marker = style.marker(points);
        svg.open("g", Markers.group(marker, colour));
        for (int i = 0; i < points.size(); i++) {
            if (!points.isDrawn(i)) {
                continue;
            }
            String path = Markers.at(marker, x.place(points.x(i)), y.place(points.y(i)));
            if (points.name(i).isEmpty()) {
                svg.path(path, "");
            } else {
                svg.open("path", "d=\"" + path + "\"")
                        .say("title", points.name(i))
                        .close("path");
            }
        }
        svg.close("g");
    }

    private static void bar(Polyline bars, double fromX, double toX, double fromY, double toY) {
        if (!Double.isNaN(fromX + toX + fromY + toY)) {
            bars.to(fromX, fromY).to(toX, toY).lift();
        }
    }

    /** Paints the names of lines at their ends, each with the line's own colour and dash. */
    void endLabels() {
        if (!layout.namesEnds()) {
            return;
        }
        for (EndLabels.Placed placed : EndLabels.place(plot, x, y)) {
            double swatch = right + 7;
            double labelY = placed.labelY();
            String colour =
                    "fill=\"none\" stroke=\"" + style.colour(placed.line()).svg() + "\"";
            Polyline leader = new Polyline().to(placed.endX(), placed.endY());
            // A line that ends early is led along its own height, so that the leader is not read as data going on.
            leader.to(Math.max(placed.endX(), right - 1), placed.endY()).to(swatch, labelY);
            svg.path(leader.data(), colour + " stroke-opacity=\".6\" stroke-dasharray=\"1 2\"");
            svg.line(swatch, labelY, swatch + 22, labelY, "fill=\"none\" " + style.stroke(placed.line()));
            String words = TextWidth.fit(placed.line().label(), EndLabels.SIZE, layout.widestEnd());
            svg.text(swatch + EndLabels.SWATCH - 8, labelY + 4.5, words, "");
        }
    }

    /** Paints the bracket along the top of the frame that shows the range that was tried, with its words above it. */
    void triedRange(double wordsBottom) {
        plot.triedRange().ifPresent(range -> {
            double from = x.placeInside(range.from());
            double to = x.placeInside(range.to());
            svg.path(
                    new Polyline()
                            .to(from, top + 5)
                            .to(from, top)
                            .to(to, top)
                            .to(to, top + 5)
                            .data(),
                    "fill=\"none\" stroke=\"currentColor\" stroke-width=\"2\"");
            String tried = ChartWords.words(range, x.axis());
            String both = tried + ", not tried in the grey beyond";
            boolean greyIsSeen = from > left + 1 || to < right - 1;
            boolean room = TextWidth.of(both, SpanNames.SIZE) <= right - left;
            String words = greyIsSeen && room ? both : TextWidth.fit(tried, SpanNames.SIZE, right - left);
            double half = TextWidth.of(words, SpanNames.SIZE) / 2;
            double middle = Math.max(left + half, Math.min(right - half, (from + to) / 2));
            svg.text(middle, wordsBottom - 5, words, "text-anchor=\"middle\" font-size=\"13\"");
        });
    }

    /** Paints the sentence in the place of data. */
    void emptySentence() {
        List<String> lines = TextWidth.wrap(plot.emptySentence(), 14, right - left - 40, 4);
        double first = (top + bottom) / 2 - (lines.size() - 1) * 9;
        for (int i = 0; i < lines.size(); i++) {
            svg.text((left + right) / 2, first + i * 18 + 5, lines.get(i), "text-anchor=\"middle\" font-size=\"14\"");
        }
    }
}
