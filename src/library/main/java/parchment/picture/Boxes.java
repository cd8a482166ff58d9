package parchment.picture;

import java.util.List;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYChartBuilder;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.XYSeries.XYSeriesRenderStyle;
import org.knowm.xchart.style.lines.SeriesLines;
import org.knowm.xchart.style.markers.SeriesMarkers;
import parchment.chart.Colour;

/**
 * Draws boxes under each other, so that names of any length stand beside them. XChart's own box chart knows two colours, which no dark page shows, so the
 * boxes are areas and lines of its chart of two axes.
 */
final class Boxes {
    /** A whisker reaches so many lengths of its box; Tukey 1977. */
    private static final double WHISKER = 1.5;

    private static final double HALF_A_BOX = 0.3;
    private static final double HALF_AN_END = 0.12;

    private static final int SPACE_OF_A_LABEL = 64;
    private static final int HEIGHT_OF_A_BOX = 34;
    private static final int HEIGHT_OF_THE_REST = 90;

    /** A name longer than this would leave no room for the boxes. */
    private static final int LONGEST_NAME = 28;

    private static final int LONGEST_NAME_NARROW = 16;

    private final XYChart chart;
    private final Look look;

    private Boxes(XYChart chart, Look look) {
        this.chart = chart;
        this.look = look;
    }

    static XYChart chart(DrawnNumbers measure, List<Groups.Group> groups, Look look) {
        XYChart chart = Drawn.styled(
                new XYChartBuilder()
                        .width(look.width())
                        .height(HEIGHT_OF_THE_REST + HEIGHT_OF_A_BOX * groups.size())
                        .build(),
                look,
                measure.label(),
                "");
        int count = groups.size();
        chart.getStyler()
                .setPlotGridVerticalLinesVisible(true)
                .setPlotGridHorizontalLinesVisible(false)
                .setXAxisTickMarkSpacingHint(SPACE_OF_A_LABEL)
                .setYAxisMin(0.4)
                .setYAxisMax(count + 0.6)
                .setYAxisTickMarkSpacingHint(HEIGHT_OF_A_BOX / 2 + 4)
                .setYAxisTickLabelsFormattingFunction(place -> name(groups, place, look));
        if (measure.clock() == DrawnNumbers.Clock.MINUTES_AND_SECONDS) {
            double from = groups.stream()
                    .mapToDouble(group -> group.quantile(0))
                    .min()
                    .orElse(0);
            double to = groups.stream()
                    .mapToDouble(group -> group.quantile(1))
                    .max()
                    .orElse(0);
            chart.getStyler().setXAxisTickLabelsFormattingFunction(Drawn.clock(measure, to - from, look));
        }
        Boxes boxes = new Boxes(chart, look);
        for (int i = 0; i < count; i++) {
            boxes.draw(groups.get(i), count - i);
        }
        return chart;
    }

    /** The first group stands at the top. Between groups there is no name, told apart by blanks since the chart drops a label that is there already. */
    private static String name(List<Groups.Group> groups, double place, Look look) {
        int row = groups.size() - (int) Math.rint(place);
        if (place != Math.rint(place) || row < 0 || row >= groups.size()) {
            return " ".repeat(1 + (int) Math.abs(Math.rint(place)));
        }
        String name = groups.get(row).name();
        int longest = look.isNarrow() ? LONGEST_NAME_NARROW : LONGEST_NAME;
        return name.codePointCount(0, name.length()) <= longest
                ? name
                : name.substring(0, name.offsetByCodePoints(0, longest - 1)) + "…";
    }

    /** Where a box and its whiskers begin and end, from the lowest. */
    private record Ends(double first, double low, double high, double last) {
        static Ends of(Groups.Group group) {
            double low = group.quantile(0.25);
            double high = group.quantile(0.75);
            double reach = WHISKER * (high - low);
            double first = group.numbers().stream()
                    .filter(x -> x >= low - reach)
                    .findFirst()
                    .orElse(low);
            double last = group.numbers().stream()
                    .filter(x -> x <= high + reach)
                    .reduce((a, b) -> b)
                    .orElse(high);
            return new Ends(first, low, high, last);
        }
    }

    /** Returns the numbers beyond the whiskers, each of which is a dot. */
    static List<Double> far(Groups.Group group) {
        Ends ends = Ends.of(group);
        return group.numbers().stream()
                .filter(x -> x < ends.first() || x > ends.last())
                .toList();
    }

    private void draw(Groups.Group group, int place) {
        Ends ends = Ends.of(group);
        double low = ends.low();
        double high = ends.high();
        double first = ends.first();
        double last = ends.last();
        line(place + " lower whisker", List.of(first, low), List.of(place, place));
        line(place + " upper whisker", List.of(high, last), List.of(place, place));
        line(place + " lower end", List.of(first, first), List.of(place - HALF_AN_END, place + HALF_AN_END));
        line(place + " upper end", List.of(last, last), List.of(place - HALF_AN_END, place + HALF_AN_END));
        XYSeries box = chart.addSeries(
                place + " box",
                List.of(low, low, high, high, low),
                List.of(
                        place - HALF_A_BOX,
                        place + HALF_A_BOX,
                        place + HALF_A_BOX,
                        place - HALF_A_BOX,
                        place - HALF_A_BOX));
        box.setXYSeriesRenderStyle(XYSeriesRenderStyle.PolygonArea)
                .setMarker(SeriesMarkers.NONE)
                .setLineStyle(SeriesLines.SOLID)
                .setLineColor(Look.of(Colour.BLUE))
                .setLineWidth(1);
        box.setFillColor(Look.of(Colour.SKY));
        double middle = group.quantile(0.5);
        line(place + " middle", List.of(middle, middle), List.of(place - HALF_A_BOX, place + HALF_A_BOX))
                .setLineColor(Look.of(Colour.BLUE))
                .setLineWidth(4);
        List<Double> far = far(group);
        if (!far.isEmpty()) {
            XYSeries dots = chart.addSeries(
                    place + " far", far, far.stream().map(x -> place).toList());
            dots.setXYSeriesRenderStyle(XYSeriesRenderStyle.Scatter)
                    .setMarker(SeriesMarkers.CIRCLE)
                    .setMarkerColor(Look.of(Colour.VERMILLION));
        }
    }

    private XYSeries line(String name, List<Double> x, List<? extends Number> y) {
        XYSeries series = chart.addSeries(name, x, y);
        series.setXYSeriesRenderStyle(XYSeriesRenderStyle.Line)
                .setMarker(SeriesMarkers.NONE)
                .setLineStyle(SeriesLines.SOLID)
                .setLineColor(look.ink())
                .setLineWidth(1.4f);
        return series;
    }
}
