package parchment.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.knowm.xchart.XYChart;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.Sentence;
import parchment.feature.Feature;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.EmptyLogbook;

/**
 * Shows a feature lot by lot, machine by machine or month by month, as boxes beside each other.
 *
 * <pre>{@code
 * BoxPlot.byLot(dropTemperature(), logbook)
 * BoxPlot.byMonth(massLoss(), logbook)
 * }</pre>
 *
 * <p>A box holds the middle half of a group's batches and its line is the middle one; whiskers reach to the farthest batches within one and a half lengths of
 * the box, and each batch farther out is a dot (Tukey 1977). Quarters are R's type 7. A group of fewer than 5 batches has no box, and at most 12
 * boxes are drawn; the picture says what it left out.
 *
 * @see "Tukey 1977, Exploratory Data Analysis, chapter 2"
 */
public final class BoxPlot implements Showable {
    private static final DrawnNumbers.Named LOTS = new DrawnNumbers.Named("lot", "lots");
    private static final DrawnNumbers.Named MACHINES = new DrawnNumbers.Named("machine", "machines");
    private static final DrawnNumbers.Named MONTHS = new DrawnNumbers.Named("month", "months");
    private static final DrawnNumbers.Named GROUPS = new DrawnNumbers.Named("group", "groups");

    private final DrawnNumbers measure;
    private final DrawnNumbers.Named what;
    private final Groups groups;
    private final Page page;

    private BoxPlot(DrawnNumbers measure, DrawnNumbers.Named what, Groups groups, String whereToBegin) {
        this.measure = measure;
        this.what = what;
        this.groups = groups;
        this.page = page(whereToBegin);
    }

    /**
     * Compares lots, the one with most batches first.
     *
     * @throws UnsupportedOperationException if XChart is not on the class path
     */
    public static BoxPlot byLot(Feature feature, Logbook logbook) {
        return of(feature, logbook, LOTS, Groups.Order.LARGEST_FIRST, batch -> batch.lot());
    }

    /**
     * Compares machines, the one with most batches first.
     *
     * @throws UnsupportedOperationException if XChart is not on the class path
     */
    public static BoxPlot byMachine(Feature feature, Logbook logbook) {
        return of(feature, logbook, MACHINES, Groups.Order.LARGEST_FIRST, batch -> batch.machine());
    }

    /**
     * Compares months of the calendar, in their order.
     *
     * @throws UnsupportedOperationException if XChart is not on the class path
     */
    public static BoxPlot byMonth(Feature feature, Logbook logbook) {
        return of(
                feature,
                logbook,
                MONTHS,
                Groups.Order.BY_NAME,
                batch -> batch.roastDay()
                        .map(day -> String.format(Locale.ROOT, "%d-%02d", day.getYear(), day.getMonthValue())));
    }

    /**
     * Compares numbers of your own by groups of your own, such as two columns of a table. Where one word says what a group is, the title is better off
     * with it: {@link #of(String, Iterable, String, Iterable)}.
     *
     * @param name what the numbers are, which may end with their unit in square brackets
     * @param numbers NaN is missing
     * @param groups the group of each number; empty where it is in none
     * @throws IllegalArgumentException if there are not as many groups as numbers
     * @throws UnsupportedOperationException if XChart is not on the class path
     */
    public static BoxPlot of(String name, Iterable<? extends Number> numbers, Iterable<String> groups) {
        return of(name, numbers, GROUPS, groups);
    }

    /**
     * Compares numbers of your own by groups of your own, and says what a group is:
     * {@code BoxPlot.of("sweetness [points]", cups.doubleColumn("sweetness [points]"), "cupper", cups.stringColumn("cupper"))}.
     *
     * @param name what the numbers are, which may end with their unit in square brackets
     * @param numbers NaN is missing
     * @param group what one group is, as in "cupper"
     * @param groups the group of each number; empty where it is in none
     * @throws IllegalArgumentException if there are not as many groups as numbers
     * @throws UnsupportedOperationException if XChart is not on the class path
     */
    public static BoxPlot of(String name, Iterable<? extends Number> numbers, String group, Iterable<String> groups) {
        return of(
                name, numbers, group.isBlank() ? GROUPS : new DrawnNumbers.Named(group.strip(), GROUPS.many()), groups);
    }

    private static BoxPlot of(
            String name, Iterable<? extends Number> numbers, DrawnNumbers.Named what, Iterable<String> groups) {
        Page.check();
        DrawnNumbers measure = DrawnNumbers.of(name, numbers);
        List<String> names = new ArrayList<>();
        groups.forEach(group -> names.add(group == null ? "" : group));
        if (names.size() != measure.values().size()) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "Boxes need the group of each number: there are %d numbers and %d groups. Take both from the same table.",
                    measure.values().size(),
                    names.size()));
        }
        return new BoxPlot(measure, what, Groups.of(measure, names, what, Groups.Order.LARGEST_FIRST), "");
    }

    private static BoxPlot of(
            Feature feature,
            Logbook logbook,
            DrawnNumbers.Named what,
            Groups.Order order,
            Function<Batch, Optional<String>> group) {
        Page.check();
        DrawnNumbers measure = DrawnNumbers.of(feature, logbook);
        List<String> names = logbook.batches().stream()
                .map(batch -> group.apply(batch).orElse(""))
                .toList();
        return new BoxPlot(
                measure,
                what,
                Groups.of(measure, names, what, order),
                logbook.whole().batches().isEmpty() ? EmptyLogbook.WORDS : "");
    }

    private Page page(String whereToBegin) {
        int used = groups.drawn().stream()
                .mapToInt(group -> group.numbers().size())
                .sum();
        String title = Sentence.of(measure.name()) + " by " + what.one() + ", "
                + measure.rows().counted(used);
        List<String> notes = new ArrayList<>(groups.notes());
        notes.add(measure.missing());
        notes.add(measure.note());
        notes.add(whereToBegin);
        if (groups.drawn().isEmpty()) {
            return Page.ofNothing(
                    title,
                    String.format(
                            Locale.ROOT,
                            "There is nothing to draw: no %s has %d %s with a number.",
                            what.one(),
                            Groups.FEWEST,
                            measure.rows().many()),
                    notes);
        }
        String sentence = sentence();
        notes.add("Each box holds the middle half and its line is the middle one. What differs here may be chance.");
        notes.add(dots());
        return new Page(
                title,
                sentence,
                Optional.of(Drawn.of("Box plot: " + title + ". " + sentence, this::chart)),
                notes,
                Optional.of(behind()));
    }

    /** A dot may be a slip of the pen, such as a score above the best there is, so it is said what a dot is. */
    private String dots() {
        return groups.drawn().stream().allMatch(group -> Boxes.far(group).isEmpty())
                ? ""
                : "Each dot is a " + measure.rows().one()
                        + " more than one and a half lengths of its box away from it. It is unusual, or a slip of the pen.";
    }

    private String sentence() {
        return groups.farthest()
                .map(ends -> String.format(
                        Locale.ROOT,
                        "The middle one of %s is lowest, %s, and that of %s is highest, %s.",
                        ends.get(0).name(),
                        measure.printWithUnit(ends.get(0).quantile(0.5)),
                        ends.get(1).name(),
                        measure.printWithUnit(ends.get(1).quantile(0.5))))
                .orElseGet(() -> "The middle one of " + groups.drawn().get(0).name() + " is "
                        + measure.printWithUnit(groups.drawn().get(0).quantile(0.5)) + ".");
    }

    private Table behind() {
        List<Groups.Group> rows = groups.drawn();
        return Table.titled(Sentence.of(measure.label()))
                .withText(what.one(), rows, Groups.Group::name)
                .withNumber(
                        measure.rows().many(),
                        "",
                        0,
                        rows,
                        group -> group.numbers().size())
                .withText("lowest", rows, group -> measure.print(group.quantile(0)))
                .withText("a quarter below", rows, group -> measure.print(group.quantile(0.25)))
                .withText("middle one", rows, group -> measure.print(group.quantile(0.5)))
                .withText("a quarter above", rows, group -> measure.print(group.quantile(0.75)))
                .withText("highest", rows, group -> measure.print(group.quantile(1)));
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
        return Boxes.chart(measure, groups.drawn(), look);
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
