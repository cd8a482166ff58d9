package parchment.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYChartBuilder;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.markers.SeriesMarkers;
import parchment.chart.Colour;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.Sentence;
import parchment.feature.Feature;
import parchment.logbook.Logbook;
import parchment.logbook.contents.EmptyLogbook;
import parchment.stats.linear.Robust;

/**
 * Shows how the numbers of a feature are spread: how many batches lie in each field between round numbers.
 *
 * <pre>{@code
 * Histogram.of(dropTemperature(), logbook)
 * }</pre>
 *
 * <p>Batches without the number are not counted, and the picture says how many they are. With fewer than two numbers, or where all are the same, there
 * is a sentence and no picture.
 */
public final class Histogram implements Showable {
    private static final int MOST_FIELDS = 40;
    private static final int MOST_FIELDS_NARROW = 20;
    private static final int SPACE_OF_A_LABEL = 64;

    private final DrawnNumbers measure;
    private final Page page;

    private Histogram(DrawnNumbers measure, String whereToBegin) {
        this.measure = measure;
        this.page = page(whereToBegin);
    }

    /**
     * Counts the batches of a logbook by a feature, shown in the logbook's unit.
     *
     * @throws UnsupportedOperationException if XChart is not on the class path
     */
    public static Histogram of(Feature feature, Logbook logbook) {
        Page.check();
        return new Histogram(
                DrawnNumbers.of(feature, logbook), logbook.whole().batches().isEmpty() ? EmptyLogbook.WORDS : "");
    }

    /**
     * Counts numbers of your own, such as a column of a table: {@code Histogram.of("sweetness [points]", cups.doubleColumn("sweetness [points]"))}.
     *
     * @param name what they are, which may end with their unit in square brackets
     * @param numbers NaN is missing
     * @throws UnsupportedOperationException if XChart is not on the class path
     */
    public static Histogram of(String name, Iterable<? extends Number> numbers) {
        Page.check();
        return new Histogram(DrawnNumbers.of(name, numbers), "");
    }

    private Page page(String whereToBegin) {
        double[] values = measure.values().present();
        String title = Sentence.of(measure.name()) + " of " + measure.rows().counted(values.length);
        List<String> notes = List.of(measure.missing(), measure.note(), whereToBegin);
        if (values.length < 2) {
            return Page.ofNothing(
                    title,
                    values.length == 0
                            ? "There is nothing to draw."
                            : "It is " + measure.printWithUnit(values[0]) + "; a histogram needs at least two.",
                    notes);
        }
        if (measure.isAllTheSame()) {
            return Page.ofNothing(
                    title, "All are the same, " + measure.printWithUnit(values[0]) + "; nothing is spread.", notes);
        }
        String sentence = values.length < Groups.FEWEST
                ? String.format(
                        Locale.ROOT,
                        "They lie between %s and %s.",
                        measure.print(Robust.quantile(values, 0)),
                        measure.printWithUnit(Robust.quantile(values, 1)))
                : String.format(
                        Locale.ROOT,
                        "Half lie between %s and %s, the middle one at %s.",
                        measure.print(Robust.quantile(values, 0.25)),
                        measure.printWithUnit(Robust.quantile(values, 0.75)),
                        measure.printWithUnit(Robust.median(values)));
        return new Page(
                title,
                sentence,
                Optional.of(Drawn.of("Histogram: " + title + ". " + sentence, this::chart)),
                notes,
                Optional.of(behind(Bins.of(measure, MOST_FIELDS), values)));
    }

    private Table behind(Bins bins, double[] values) {
        List<Integer> counts = bins.counts(values);
        List<String> names = bins.names(measure);
        List<Integer> rows =
                java.util.stream.IntStream.range(0, bins.count()).boxed().toList();
        return Table.titled(Sentence.of(measure.label()))
                .withText("from–to", rows, names::get)
                .withNumber(measure.rows().many(), "", 0, rows, counts::get);
    }

    /**
     * Returns the chart of XChart, to be changed further.
     *
     * @throws IllegalStateException if there is nothing to draw
     */
    public XYChart chart() {
        if (page.picture().isEmpty()) {
            throw new IllegalStateException(page.words());
        }
        return chart(Look.WIDE);
    }

    private XYChart chart(Look look) {
        Bins bins = Bins.of(measure, look.isNarrow() ? MOST_FIELDS_NARROW : MOST_FIELDS);
        List<Integer> counts = bins.counts(measure.values().present());
        List<Double> x = new ArrayList<>();
        List<Integer> y = new ArrayList<>();
        for (int i = 0; i < bins.count(); i++) {
            x.addAll(List.of(bins.edge(i), bins.edge(i), bins.edge(i + 1), bins.edge(i + 1)));
            y.addAll(List.of(0, counts.get(i), counts.get(i), 0));
        }
        XYChart chart = Drawn.styled(
                new XYChartBuilder().width(look.width()).height(look.height()).build(),
                look,
                measure.label(),
                measure.rows().many());
        chart.getStyler().setYAxisMin(0.0).setYAxisDecimalPattern("#,##0");
        chart.getStyler().setXAxisTickMarkSpacingHint(SPACE_OF_A_LABEL);
        if (bins.isOfWholeNumbers()) {
            chart.getStyler().setXAxisMin(bins.edge(0) - 0.5).setXAxisMax(bins.edge(bins.count()) + 0.5);
        }
        if (measure.clock() == DrawnNumbers.Clock.MINUTES_AND_SECONDS) {
            chart.getStyler()
                    .setXAxisTickLabelsFormattingFunction(Drawn.clock(measure, bins.count() * bins.width(), look));
        }
        XYSeries series = chart.addSeries(measure.rows().many(), x, y);
        series.setXYSeriesRenderStyle(XYSeries.XYSeriesRenderStyle.Area)
                .setMarker(SeriesMarkers.NONE)
                .setLineColor(Look.of(Colour.SKY))
                .setLineWidth(1);
        series.setFillColor(Look.of(Colour.SKY));
        chart.addSeries("between the fields", x, y)
                .setXYSeriesRenderStyle(XYSeries.XYSeriesRenderStyle.Line)
                .setMarker(SeriesMarkers.NONE)
                .setLineColor(look.ground())
                .setLineWidth(1.5f);
        return chart;
    }

    @Override
    public String text() {
        return page.words();
    }

    @Override
    public Optional<String> html() {
        return page.html();
    }

    @Override
    public Map<String, String> otherForms() {
        return page.otherForms();
    }

    @Override
    public String toString() {
        return page.words();
    }
}
