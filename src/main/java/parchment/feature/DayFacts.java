package parchment.feature;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import parchment.calendar.RoastCalendar;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.phase.Mark;
import parchment.phase.Phases;
import parchment.quantity.Elapsed;

/**
 * Holds where a batch stands in its day and season.
 *
 * @param batchOfTheDay counted from 1 on the same machine; missing without a date
 * @param secondsSinceLastDrop from the drop of the batch before it on the same machine and day
 * @param daysSinceArrival since the lot arrived
 * @param restDays from the roast to the first cupping
 */
record DayFacts(Measured batchOfTheDay, Measured secondsSinceLastDrop, Measured daysSinceArrival, Measured restDays) {

    static final DayFacts ALONE = new DayFacts(
            Measured.missing("the batch was measured alone, without its logbook."),
            Measured.missing("the batch was measured alone, without its logbook."),
            Measured.missing("the batch was measured alone, without its logbook."),
            Measured.missing("the batch was measured alone, without its logbook."));

    private static final String NO_DATE = "the date and time of the roast were not written.";

    /** Works the facts out for all batches of a logbook; one entry per batch, in order. */
    static List<DayFacts> of(Logbook logbook, List<Phases> phases) {
        RoastCalendar calendar = RoastCalendar.of(logbook);
        Map<String, Phases> known = new HashMap<>();
        phases.forEach(one -> known.put(one.batch().name(), one));
        if (logbook.whole() != logbook && needsOthers(calendar, phases, known)) {
            Phases.of(logbook.whole())
                    .forEach(one -> known.putIfAbsent(one.batch().name(), one));
        }
        return phases.stream().map(one -> of(one.batch(), calendar, known)).toList();
    }

    /** Says whether a batch was roasted after one that a filter left out. */
    private static boolean needsOthers(RoastCalendar calendar, List<Phases> phases, Map<String, Phases> known) {
        return phases.stream()
                .flatMap(one -> calendar.before(one.batch()).stream())
                .anyMatch(before -> !known.containsKey(before.name()));
    }

    private static DayFacts of(Batch batch, RoastCalendar calendar, Map<String, Phases> known) {
        OptionalInt place = calendar.batchOfTheDay(batch);
        if (place.isEmpty()) {
            Measured none = Measured.missing(NO_DATE);
            return new DayFacts(none, none, none, none);
        }
        return new DayFacts(
                Measured.exact(place.getAsInt()),
                sinceLastDrop(batch, calendar, known),
                sinceArrival(batch, calendar),
                rest(batch, calendar));
    }

    private static Measured sinceLastDrop(Batch batch, RoastCalendar calendar, Map<String, Phases> known) {
        Optional<Batch> before = calendar.before(batch);
        if (before.isEmpty()) {
            return Measured.missing("it was the first batch of the day on its machine.");
        }
        String name = before.get().name();
        Optional<Mark> drop = Optional.ofNullable(known.get(name)).flatMap(one -> one.mark(MarkKind.DROP));
        if (drop.isEmpty()) {
            return Measured.missing("the drop of the batch before it (" + name + ") is not known.");
        }
        Optional<Elapsed> between = calendar.sinceChargeBefore(batch);
        if (between.isEmpty()) {
            return Measured.missing(
                    "the time of day of its charge or of that of the batch before it (" + name + ") was not written.");
        }
        double empty = between.get().seconds() - drop.get().seconds();
        return empty >= 0
                ? Measured.of(empty, drop.get().standardError())
                : Measured.missing(
                        "the batch before it (" + name + ") was dropped after this one was charged, as written.");
    }

    private static Measured sinceArrival(Batch batch, RoastCalendar calendar) {
        Optional<LocalDate> arrived = calendar.arrived(batch);
        if (arrived.isEmpty()) {
            return Measured.missing(
                    batch.lot().isEmpty()
                            ? "no lot was written."
                            : "the lot '" + batch.lot().get() + "' has no date of arrival in lots.csv.");
        }
        OptionalInt days = calendar.daysSinceArrival(batch);
        return days.isPresent()
                ? Measured.exact(days.getAsInt())
                : Measured.missing("the batch was roasted before its lot arrived, as written (" + arrived.get() + ").");
    }

    private static Measured rest(Batch batch, RoastCalendar calendar) {
        Optional<LocalDate> tasted = calendar.firstTasted(batch);
        Optional<LocalDate> day = batch.roastDay();
        if (tasted.isEmpty() || day.isEmpty()) {
            return Measured.missing("the batch was not cupped.");
        }
        return tasted.get().isBefore(day.get())
                ? Measured.missing("the batch was tasted before it was roasted, as written (" + tasted.get() + ").")
                : Measured.exact(ChronoUnit.DAYS.between(day.get(), tasted.get()));
    }
}
