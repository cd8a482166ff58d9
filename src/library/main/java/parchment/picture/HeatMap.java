package parchment.picture;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.knowm.xchart.HeatMapChart;
import org.knowm.xchart.HeatMapChartBuilder;
import parchment.chart.Colour;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.Sentence;
import parchment.feature.Feature;
import parchment.logbook.Logbook;
import parchment.logbook.contents.EmptyLogbook;

/**
 * Shows where batches lie in two features at once: how many are in each field of a grid, written in the field.
 *
 * <pre>{@code
 * HeatMap.of(dropTemperature(), developmentTime(), logbook)
 * }</pre>
 *
 * <p>A field without a batch stays empty: nobody tried it. The picture says of how many batches a number is missing.
 */
public final class HeatMap implements Showable {
    private static final int MOST_ACROSS = 9;
    private static final int MOST_ACROSS_NARROW = 5;
    private static final int MOST_UP = 10;
    private static final int SPACE_OF_A_LABEL = 10;

    /** The field of fewest batches; dark letters can be read on it and on the fullest. */
    private static final Color FEWEST = Color.decode("#eaf5fc");

    private static final Color LETTERS = Color.decode("#1f2328");

    private final DrawnNumbers across;
    private final DrawnNumbers up;
    private final Page page;

    private HeatMap(DrawnNumbers across, DrawnNumbers up, String whereToBegin) {
        this.across = across;
        this.up = up;
        this.page = page(whereToBegin);
    }

    /**
     * Counts the batches of a logbook by two features.
     *
     * @param across the feature along the foot of the picture
     * @param up the feature along its side
     * @throws UnsupportedOperationException if XChart is not on the class path
     */
    public static HeatMap of(Feature across, Feature up, Logbook logbook) {
        Page.check();
        DrawnNumbers first = DrawnNumbers.of(across, logbook);
        DrawnNumbers second = DrawnNumbers.of(up, logbook);
        List<Integer> both = IntStream.range(0, first.values().size())
                .filter(i -> Double.isFinite(first.values().get(i))
                        && Double.isFinite(second.values().get(i)))
                .boxed()
                .toList();
        return new HeatMap(first.only(both), second.only(both), missing(first, second, both.size(), logbook));
    }

    private static String missing(DrawnNumbers first, DrawnNumbers second, int both, Logbook logbook) {
        int lacking = first.values().size() - both;
        if (logbook.whole().batches().isEmpty()) {
            return EmptyLogbook.WORDS;
        }
        return lacking == 0
                ? ""
                : String.format(
                        Locale.ROOT,
                        "%d of %s %s no %s or no %s and %s not counted.",
                        lacking,
                        first.rows().counted(first.values().size()),
                        lacking == 1 ? "has" : "have",
                        first.name(),
                        second.name(),
                        lacking == 1 ? "is" : "are");
    }

    private Page page(String missing) {
        double[] first = across.values().present();
        String title = Sentence.of(across.name()) + " and " + up.name() + " of "
                + across.rows().counted(first.length);
        List<String> notes = List.of(missing, across.note().isEmpty() ? up.note() : across.note());
        if (first.length == 0) {
            return Page.ofNothing(title, "There is nothing to draw: no batch has both.", notes);
        }
        if (first.length == 1) {
            return Page.ofNothing(
                    title,
                    "They are " + across.printWithUnit(first[0]) + " and "
                            + up.printWithUnit(up.values().get(0)) + "; a map needs at least two batches.",
                    notes);
        }
        Optional<DrawnNumbers> same =
                across.isAllTheSame() ? Optional.of(across) : up.isAllTheSame() ? Optional.of(up) : Optional.empty();
        if (same.isPresent()) {
            return Page.ofNothing(
                    title,
                    "The " + same.get().name() + " of all is the same, "
                            + same.get().printWithUnit(same.get().values().get(0))
                            + "; a map needs two that differ.",
                    notes);
        }
        Grid grid = Grid.of(across, up, MOST_ACROSS, MOST_UP);
        String sentence = grid.fullest(across, up);
        return new Page(
                title,
                sentence,
                Optional.of(Drawn.of("Heat map: " + title + ". " + sentence, this::chart)),
                notes,
                Optional.of(behind(grid)));
    }

    private Table behind(Grid grid) {
        List<String> columns = grid.across().names(across);
        List<String> names = grid.up().names(up);
        List<Integer> rows =
                new ArrayList<>(IntStream.range(0, grid.up().count()).boxed().toList());
        java.util.Collections.reverse(rows);
        Table table = Table.titled(Sentence.of(across.rows().many()) + " by " + across.label() + " and " + up.label())
                .withText(up.label(), rows, names::get);
        for (int i = 0; i < columns.size(); i++) {
            int column = i;
            table = table.withNumber(columns.get(i), "", 0, rows, row -> grid.count(column, row));
        }
        return table;
    }

    /**
     * Returns the chart of XChart, to be changed further.
     *
     * @throws IllegalStateException if there is nothing to draw
     */
    public HeatMapChart chart() {
        if (page.picture().isEmpty()) {
            throw new IllegalStateException(page.words());
        }
        return chart(Look.WIDE);
    }

    private HeatMapChart chart(Look look) {
        Grid grid = Grid.of(across, up, look.isNarrow() ? MOST_ACROSS_NARROW : MOST_ACROSS, MOST_UP);
        HeatMapChart chart = Drawn.styled(
                new HeatMapChartBuilder()
                        .width(look.width())
                        .height(look.height())
                        .build(),
                look,
                across.label(),
                up.label());
        chart.getStyler()
                .setRangeColors(new Color[] {FEWEST, Look.of(Colour.SKY)})
                .setMin(1)
                .setMax(Math.max(2, grid.most()))
                .setDrawBorder(false)
                .setShowValue(true)
                .setValueFont(look.font())
                .setValueFontColor(LETTERS)
                .setHeatMapValueDecimalPattern("#,##0");
        chart.getStyler()
                .setPlotGridLinesVisible(false)
                .setXAxisTickMarkSpacingHint(SPACE_OF_A_LABEL)
                .setPlotContentSize(1);
        List<Number[]> fields = new ArrayList<>();
        for (int i = 0; i < grid.across().count(); i++) {
            for (int j = 0; j < grid.up().count(); j++) {
                if (grid.count(i, j) > 0) {
                    fields.add(new Number[] {i, j, grid.count(i, j)});
                }
            }
        }
        chart.addSeries(
                across.rows().many(), grid.across().names(across), grid.up().names(up), fields);
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
