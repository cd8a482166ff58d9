package parchment.chart;

import java.util.List;

/** Draws the axes of a picture: their numbers, their words, and the faint grid. */
final class AxesPainter {
    private static final double TICK = 13;
    private static final double ROW_LINE = 15;

    private static final double LABEL = ChartPainter.LABEL;
    private static final double MARGIN = ChartPainter.MARGIN;

    private final Svg svg;
    private final Layout layout;

    AxesPainter(Svg svg, Layout layout) {
        this.svg = svg;
        this.layout = layout;
    }

    /** Returns where the drawing area starts so that all numbers and names of rows have room on its left. */
    double leftMargin(Panels panels, List<Scale> upwards) {
        double widest = 0;
        int lines = 1;
        for (int i = 0; i < panels.plots().size(); i++) {
            Plot plot = panels.plots().get(i);
            lines = Math.max(lines, axisWords(plot).size());
            for (String label : plot.isEmpty()
                    ? List.<String>of()
                    : ticks(plot, upwards.get(i)).labels()) {
                for (String line : rowName(plot, label)) {
                    widest = Math.max(widest, TextWidth.of(line, TICK));
                }
            }
        }
        return MARGIN + lines * 16 + widest + 12;
    }

    /** Returns the name of a row, on two lines where it is long and the rows are high enough for them. */
    private List<String> rowName(Plot plot, String label) {
        boolean high = plot.y().kind() == Axis.Kind.ROWS
                && plot.height() >= 2 * ROW_LINE * plot.y().rows().size();
        return high
                ? TextWidth.wrap(label, TICK, layout.widestRow(), 2)
                : List.of(TextWidth.fit(label, TICK, layout.widestRow()));
    }

    private static List<String> axisWords(Plot plot) {
        return plot.y().fullLabel().isBlank()
                ? List.of()
                : TextWidth.wrap(plot.y().fullLabel(), LABEL, plot.height() + 8, 3);
    }

    private static Ticks ticks(Plot plot, Scale y) {
        int most = Math.max(2, plot.height() / 45);
        Ticks ticks = y.ticks(most);
        // One number alone gives no measure.
        while (ticks.at().size() < 2 && plot.y().kind() != Axis.Kind.ROWS && most < 10) {
            ticks = y.ticks(++most);
        }
        return ticks;
    }

    /** Draws the upright axis of one panel with its numbers, its grid and its words. */
    void upwards(Plot plot, Scale across, Scale y) {
        // An axis without numbers would show limits that nobody chose.
        boolean blank = plot.isEmpty() && plot.y().kind() != Axis.Kind.ROWS;
        Ticks ticks = blank ? new Ticks(List.of(), List.of()) : ticks(plot, y);
        StringBuilder grid = new StringBuilder();
        svg.open("g", "text-anchor=\"end\" font-size=\"" + Svg.number(TICK) + "\"");
        for (int i = 0; i < ticks.at().size(); i++) {
            double place = y.placeShown(ticks.at().get(i));
            grid.append('M').append(Svg.number(across.start())).append(' ').append(Svg.number(place));
            grid.append('H').append(Svg.number(across.end()));
            List<String> lines = rowName(plot, ticks.labels().get(i));
            double first = place + 4 - (lines.size() - 1) * ROW_LINE / 2;
            for (int line = 0; line < lines.size(); line++) {
                svg.text(across.start() - 6, first + line * ROW_LINE, lines.get(line), "");
            }
        }
        svg.close("g");
        svg.path(grid.toString(), "fill=\"none\" stroke=\"currentColor\" stroke-opacity=\".13\"");
        svg.path(
                "M" + Svg.number(across.start()) + " " + Svg.number(y.end()) + "V" + Svg.number(y.start()) + "H"
                        + Svg.number(across.end()),
                "fill=\"none\" stroke=\"currentColor\" stroke-opacity=\".6\"");
        List<String> words = axisWords(plot);
        double middle = (y.start() + y.end()) / 2;
        for (int i = 0; i < words.size(); i++) {
            double x = MARGIN + 11 + i * 16;
            svg.text(
                    x,
                    middle,
                    words.get(i),
                    "text-anchor=\"middle\" transform=\"rotate(-90 " + Svg.number(x) + " " + Svg.number(middle)
                            + ")\"");
        }
    }

    /** Draws the axis across under the last panel and returns where it ends; a blank one has no numbers. */
    double across(Scale across, double areaBottom, boolean blank) {
        double top = areaBottom;
        Ticks ticks = blank ? new Ticks(List.of(), List.of()) : across.ticks(most());
        for (int most = most() - 1; !blank && most > 1 && !hasRoom(ticks, across); most--) {
            ticks = across.ticks(most);
        }
        StringBuilder marks = new StringBuilder();
        svg.open("g", "text-anchor=\"middle\" font-size=\"" + Svg.number(TICK) + "\"");
        for (int i = 0; i < ticks.at().size(); i++) {
            double place = across.placeShown(ticks.at().get(i));
            marks.append('M')
                    .append(Svg.number(place))
                    .append(' ')
                    .append(Svg.number(top))
                    .append("v5");
            double half = TextWidth.of(ticks.labels().get(i), TICK) / 2;
            svg.text(
                    Math.min(place, layout.width() - 2 - half),
                    top + 17,
                    ticks.labels().get(i),
                    "");
        }
        svg.close("g");
        svg.path(marks.toString(), "fill=\"none\" stroke=\"currentColor\" stroke-opacity=\".6\"");
        top += 22;
        if (across.axis().label().isBlank()) {
            return top;
        }
        for (String line : TextWidth.wrap(across.axis().fullLabel(), LABEL, layout.width() - 2 * MARGIN, 2)) {
            double half = TextWidth.of(line, LABEL) / 2;
            double middle = Math.max(
                    MARGIN + half, Math.min(layout.width() - MARGIN - half, (across.start() + across.end()) / 2));
            svg.text(middle, top + 13, line, "text-anchor=\"middle\"");
            top += 17;
        }
        return top + 3;
    }

    private int most() {
        return layout == Layout.WIDE ? 10 : 6;
    }

    private static boolean hasRoom(Ticks ticks, Scale across) {
        double end = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < ticks.at().size(); i++) {
            double place = across.placeShown(ticks.at().get(i));
            double half = TextWidth.of(ticks.labels().get(i), TICK) / 2;
            if (place - half < end + 8) {
                return false;
            }
            end = place + half;
        }
        return true;
    }
}
