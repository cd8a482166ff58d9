package parchment.logbook;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import parchment.chart.Axis;
import parchment.chart.Boundary;
import parchment.chart.Colour;
import parchment.chart.Marker;
import parchment.chart.Plot;
import parchment.chart.Points;
import parchment.display.Showable;
import parchment.display.answer.ShownAs;
import parchment.logbook.written.Upkeep;
import parchment.sheet.Words;

/**
 * Draws a logbook on the calendar: one row per lot with a stroke for each batch, then the cuppings and the work on the machines.
 *
 * <pre>{@code
 * CalendarStrip.of(logbook)
 * }</pre>
 *
 * <p>It shows at a glance what moved with the season: which lots were never roasted side by side, and which lie on different sides of a
 * change of probe. Batches without a date are left out and counted.
 */
public final class CalendarStrip implements ShownAs {
    /** More rows than these would not be read; the lots with the fewest batches share one row. */
    private static final int MOST_LOTS = 18;
    /** More upright lines than these would hide the batches; changes of probe come first. */
    private static final int MOST_LINES = 8;

    private static final double ROW_HEIGHT = 24;

    private final Logbook logbook;

    private CalendarStrip(Logbook logbook) {
        this.logbook = logbook;
    }

    /** Returns the calendar strip of a logbook. */
    public static CalendarStrip of(Logbook logbook) {
        return new CalendarStrip(logbook);
    }

    /** Returns what is drawn. */
    public Plot plot() {
        Map<String, List<Batch>> lots = lots();
        List<String> rows = new ArrayList<>();
        lots.forEach((lot, batches) -> rows.add(lot + " (" + batches.size() + ")"));
        if (!logbook.cups().isEmpty()) {
            rows.add("cuppings");
        }
        if (!logbook.upkeep().isEmpty()) {
            rows.add("upkeep");
        }
        Plot plot = Plot.of("Calendar of " + logbook.name(), Axis.dates("day"), Axis.rows("", rows))
                .withHeight((int) Math.max(60, rows.size() * ROW_HEIGHT))
                .withEmptySentence("No batch of this logbook has a date, so there is no calendar to draw.");
        int row = 0;
        for (List<Batch> batches : lots.values()) {
            plot = plot.with(batches(batches, row++));
        }
        if (!logbook.cups().isEmpty()) {
            plot = plot.with(cuppings(row++));
        }
        if (!logbook.upkeep().isEmpty()) {
            plot = plot.with(upkeep(row)).with(lines());
        }
        return withNotes(plot);
    }

    private List<Batch> dated() {
        return logbook.batches().stream()
                .filter(batch -> batch.roastedAt().isPresent())
                .toList();
    }

    /** Returns the dated batches by lot, in the order in which the lots were first roasted. */
    private Map<String, List<Batch>> lots() {
        Map<String, List<Batch>> all = new LinkedHashMap<>();
        for (Batch batch : dated()) {
            all.computeIfAbsent(batch.lot().orElse("no lot written"), lot -> new ArrayList<>())
                    .add(batch);
        }
        if (all.size() <= MOST_LOTS) {
            return all;
        }
        List<String> largest = all.entrySet().stream()
                .sorted(Comparator.comparingInt(entry -> -entry.getValue().size()))
                .limit(MOST_LOTS - 1)
                .map(Map.Entry::getKey)
                .toList();
        Map<String, List<Batch>> few = new LinkedHashMap<>();
        List<Batch> others = new ArrayList<>();
        all.forEach((lot, batches) -> {
            if (largest.contains(lot)) {
                few.put(lot, batches);
            } else {
                others.addAll(batches);
            }
        });
        few.put((all.size() - largest.size()) + " other lots", others);
        return few;
    }

    private static Points batches(List<Batch> batches, int row) {
        double[] days = new double[batches.size()];
        double[] rows = new double[batches.size()];
        List<String> names = new ArrayList<>();
        for (int i = 0; i < days.length; i++) {
            OffsetDateTime at = batches.get(i).roastedAt().orElseThrow();
            days[i] = day(batches.get(i)).toEpochDay() + at.toLocalTime().toSecondOfDay() / 86400.0;
            rows[i] = row;
            names.add("batch " + batches.get(i).name() + ", " + day(batches.get(i)));
        }
        return Points.of("one batch", days, rows)
                .withNames(names)
                .withMarker(Marker.TICK)
                .withColour(Colour.BLUE);
    }

    private Points cuppings(int row) {
        Map<LocalDate, Integer> cups = new TreeMap<>();
        logbook.cups().forEach(cup -> cups.merge(cup.tastedOn(), 1, Integer::sum));
        List<String> names = new ArrayList<>();
        cups.forEach((day, count) -> names.add(day + ": " + count + (count == 1 ? " cup scored" : " cups scored")));
        double[] rows = new double[cups.size()];
        Arrays.fill(rows, row);
        return Points.of(
                        "a day of cupping",
                        cups.keySet().stream()
                                .mapToDouble(LocalDate::toEpochDay)
                                .toArray(),
                        rows)
                .withNames(names)
                .withMarker(Marker.DIAMOND)
                .withColour(Colour.VERMILLION);
    }

    private Points upkeep(int row) {
        List<Upkeep> work = logbook.upkeep();
        double[] days =
                work.stream().mapToDouble(done -> done.doneOn().toEpochDay()).toArray();
        double[] rows = new double[days.length];
        Arrays.fill(rows, row);
        return Points.of("work on a machine", days, rows)
                .withNames(work.stream()
                        .map(done -> (logbook.machines().size() > 1 ? done.machine() + ", " : "") + done.words() + ", "
                                + done.doneOn())
                        .toList())
                .withMarker(Marker.TRIANGLE)
                .withColour(Colour.INK);
    }

    private String words(Upkeep done) {
        return logbook.machines().size() > 1 ? done.what() + " (" + done.machine() + ")" : done.what();
    }

    /** Returns the work that gets an upright line through all rows: changes of probe first, then the latest. */
    private List<Boundary> lines() {
        return logbook.upkeep().stream()
                .sorted(Comparator.comparing((Upkeep done) -> done.kind().changesTheBeanProbe() ? 0 : 1)
                        .thenComparing(Upkeep::doneOn, Comparator.reverseOrder()))
                .limit(MOST_LINES)
                .map(done -> Boundary.at(words(done), done.doneOn().toEpochDay()))
                .toList();
    }

    private Plot withNotes(Plot plot) {
        List<Batch> dated = dated();
        int undated = logbook.batches().size() - dated.size();
        String left = undated == 0
                ? "."
                : "; " + undated + (undated == 1 ? " has" : " have") + " no date and " + (undated == 1 ? "is" : "are")
                        + " left out.";
        Plot noted = plot.withNote(dated.size() + " of "
                + Words.count(logbook.batches().size(), "batch", "batches") + season(dated) + left);
        if (logbook.upkeep().isEmpty()) {
            noted = noted.withNote("No work on the machines is written down, so changes of probe cannot be shown.");
        } else if (logbook.upkeep().size() > MOST_LINES) {
            noted = noted.withNote("Of " + logbook.upkeep().size() + " pieces of work on the machines the " + MOST_LINES
                    + " most telling have a line: changes of probe first, then the latest.");
        }
        return logbook.cups().isEmpty() ? noted.withNote("No cupping is written down.") : noted;
    }

    private static String season(List<Batch> dated) {
        Optional<LocalDate> first = dated.stream().map(CalendarStrip::day).min(Comparator.naturalOrder());
        Optional<LocalDate> last = dated.stream().map(CalendarStrip::day).max(Comparator.naturalOrder());
        if (first.isEmpty() || last.isEmpty()) {
            return "";
        }
        long days = ChronoUnit.DAYS.between(first.get(), last.get()) + 1;
        return ", " + first.get() + " to " + last.get() + " (" + days + (days == 1 ? " day)" : " days)");
    }

    private static LocalDate day(Batch batch) {
        return batch.roastDay().orElseThrow();
    }

    @Override
    public Showable shownAs() {
        return plot();
    }

    @Override
    public String toString() {
        return "Calendar of " + logbook.name() + ": " + Words.count(dated().size(), "batch", "batches");
    }
}
