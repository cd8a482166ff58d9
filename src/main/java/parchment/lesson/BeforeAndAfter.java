package parchment.lesson;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.quantity.Unit;

/**
 * Shows the plain means of a few numbers before a day and from that day on: a first look, which lots, season and habits move too.
 *
 * <pre>{@code
 * BeforeAndAfter.of(logbook, "2024-10-07", firstCrackTemperature(), roomTemperature())
 * }</pre>
 */
public final class BeforeAndAfter implements Showable {
    /** Holds one number's means, as printed. */
    private record Line(String feature, String before, String after, String difference) {}

    private final LocalDate day;
    private final int batches;
    private final List<Line> lines;

    private BeforeAndAfter(LocalDate day, int batches, List<Line> lines) {
        this.day = day;
        this.batches = batches;
        this.lines = List.copyOf(lines);
    }

    /**
     * Works out the means.
     *
     * @param day as in "2024-10-07"; its own batches count as after
     */
    public static BeforeAndAfter of(Logbook logbook, String day, Feature... features) {
        LocalDate date = LocalDate.parse(day);
        BatchTable table = BatchTable.of(logbook, features);
        List<Line> lines = new ArrayList<>();
        for (Feature feature : features) {
            double[] values = table.values(feature);
            double[] before = some(table, values, at -> at.isBefore(date));
            double[] after = some(table, values, at -> !at.isBefore(date));
            Unit unit = feature.unit();
            lines.add(new Line(
                    feature.name(),
                    words(unit.format(mean(before), logbook.readerUnit()), before),
                    words(unit.format(mean(after), logbook.readerUnit()), after),
                    unit.formatStep(mean(after) - mean(before), logbook.readerUnit())));
        }
        return new BeforeAndAfter(date, table.size(), lines);
    }

    private static String words(String mean, double[] of) {
        return mean + " (" + of.length + (of.length == 1 ? " batch)" : " batches)");
    }

    private static double[] some(BatchTable table, double[] values, Predicate<LocalDate> when) {
        List<Double> chosen = new ArrayList<>();
        for (int i = 0; i < values.length; i++) {
            Batch batch = table.batches().get(i);
            if (Double.isFinite(values[i])
                    && batch.roastedAt()
                            .map(at -> at.toLocalDate())
                            .filter(when)
                            .isPresent()) {
                chosen.add(values[i]);
            }
        }
        return chosen.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static double mean(double[] values) {
        return Arrays.stream(values).average().orElse(Double.NaN);
    }

    private Table table() {
        return Table.titled("Means before " + day + " and from that day on")
                .withText("number", lines, Line::feature)
                .withText("before", lines, Line::before)
                .withText("after", lines, Line::after)
                .withText("difference", lines, Line::difference)
                .withNote(
                        "Of " + batches
                                + " batches those with the number and a date. Whatever else changed meanwhile is in the difference too.");
    }

    @Override
    public String text() {
        return table().text();
    }

    @Override
    public Optional<String> html() {
        return table().html();
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%d numbers before %s and after, of %d batches", lines.size(), day, batches);
    }
}
