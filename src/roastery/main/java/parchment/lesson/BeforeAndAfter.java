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
    private record Line(String feature, String before, String after, String difference, boolean comparable) {}

    private final Logbook logbook;
    private final LocalDate day;
    private final List<Feature> features;
    private final List<Line> lines;

    private BeforeAndAfter(Logbook logbook, LocalDate day, List<Feature> features, List<Line> lines) {
        this.logbook = logbook;
        this.day = day;
        this.features = List.copyOf(features);
        this.lines = List.copyOf(lines);
    }

    /**
     * Works out the means.
     *
     * @param day as in "2024-10-07"; its own batches count as after
     */
    public static BeforeAndAfter of(Logbook logbook, String day, Feature... features) {
        LocalDate date = LocalDate.parse(day);
        List<Feature> asked = List.of(features);
        return new BeforeAndAfter(logbook, date, asked, lines(logbook, date, asked, ""));
    }

    /** Returns the same means for each lot by itself: what comes from one lot shows in its own batches only. */
    public BeforeAndAfter byLot() {
        List<Line> each = logbook.batches().stream()
                .flatMap(batch -> batch.lot().stream())
                .distinct()
                .sorted()
                .flatMap(lot -> lines(logbook.ofLot(lot), day, features, ", " + lot).stream())
                .toList();
        return new BeforeAndAfter(logbook, day, features, each);
    }

    private static List<Line> lines(Logbook logbook, LocalDate day, List<Feature> features, String of) {
        BatchTable table = BatchTable.of(logbook, features);
        List<Line> lines = new ArrayList<>();
        for (Feature feature : table.features()) {
            double[] before = some(table, feature, at -> at.isBefore(day));
            double[] after = some(table, feature, at -> !at.isBefore(day));
            Unit unit = feature.unit();
            lines.add(new Line(
                    feature.name() + of,
                    words(unit.format(mean(before), logbook.readerUnit()), before),
                    words(unit.format(mean(after), logbook.readerUnit()), after),
                    unit.formatStep(mean(after) - mean(before), logbook.readerUnit()),
                    before.length > 0 && after.length > 0));
        }
        return lines;
    }

    private static String words(String mean, double[] of) {
        return mean + " (" + LessonWords.count(of.length, "batch", "batches") + ")";
    }

    private static double[] some(BatchTable table, Feature feature, Predicate<LocalDate> when) {
        double[] values = table.values(feature);
        List<Double> chosen = new ArrayList<>();
        for (int i = 0; i < values.length; i++) {
            Batch batch = table.batches().get(i);
            if (Double.isFinite(values[i]) && batch.roastDay().filter(when).isPresent()) {
                chosen.add(values[i]);
            }
        }
        return chosen.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static double mean(double[] values) {
        return Arrays.stream(values).average().orElse(Double.NaN);
    }

    private Table table() {
        Table table = Table.titled("Means before " + day + " and from that day on")
                .withText("number", lines, Line::feature)
                .withText("before", lines, Line::before)
                .withText("after", lines, Line::after)
                .withText("difference", lines, Line::difference)
                .withNote(
                        "Of " + LessonWords.count(logbook.batches().size(), "batch", "batches")
                                + " those with the number and a date. Whatever else changed meanwhile is in the difference too.");
        return lines.stream().allMatch(Line::comparable)
                ? table
                : table.withNote(
                        "Where one side has no batch nothing can be compared: name a day with batches before and after it, or write more"
                                + " of the number.");
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
        return String.format(
                Locale.ROOT,
                "%s before %s and after, of %s",
                LessonWords.count(lines.size(), "number", "numbers"),
                day,
                LessonWords.count(logbook.batches().size(), "batch", "batches"));
    }
}
