package parchment.feature.path;

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
import parchment.phase.Phases;
import parchment.phase.found.Mark;

/**
 * Where a batch stands in its day and season, as features read it.
 *
 * @param batchOfTheDay counted from 1 on the same machine; missing without a date
 * @param secondsSinceLastDrop from the drop of the batch before it on the same machine and day
 * @param daysSinceArrival since the lot arrived
 * @param restDays from the roast to the first cupping
 */
public record DayFacts(
        Measured batchOfTheDay, Measured secondsSinceLastDrop, Measured daysSinceArrival, Measured restDays) {

    static final DayFacts ALONE = new DayFacts(
            Measured.missing("the batch was measured alone, without its logbook."),
            Measured.missing("the batch was measured alone, without its logbook."),
            Measured.missing("the batch was measured alone, without its logbook."),
            Measured.missing("the batch was measured alone, without its logbook."));

    private static final String NO_DATE = "the date and time of the roast were not written.";

    /** Works the facts out for all batches of a logbook; one entry per batch, in order. */
    static List<DayFacts> of(Logbook logbook, List<Phases> phases) {
        Map<String, Mark> drops = new HashMap<>();
        Phases.of(logbook.whole())
                .forEach(one -> one.mark(MarkKind.DROP)
                        .ifPresent(drop -> drops.putIfAbsent(one.batch().name(), drop)));
        RoastCalendar calendar = RoastCalendar.of(
                logbook, batch -> Optional.ofNullable(drops.get(batch.name())).map(Mark::at));
        return phases.stream().map(one -> of(one.batch(), calendar, drops)).toList();
    }

    private static DayFacts of(Batch batch, RoastCalendar calendar, Map<String, Mark> drops) {
        OptionalInt place = calendar.batchOfTheDay(batch);
        if (place.isEmpty()) {
            Measured none = Measured.missing(NO_DATE);
            return new DayFacts(none, none, none, none);
        }
        return new DayFacts(
                Measured.exact(place.getAsInt()),
                sinceLastDrop(batch, calendar, drops),
                sinceArrival(batch, calendar),
                rest(batch, calendar));
    }

    private static Measured sinceLastDrop(Batch batch, RoastCalendar calendar, Map<String, Mark> drops) {
        Optional<Batch> before = calendar.before(batch);
        if (before.isEmpty()) {
            return Measured.missing("it was the first batch of the day on its machine.");
        }
        String name = before.get().name();
        Mark drop = drops.get(name);
        if (drop == null) {
            return Measured.missing("the drop of the batch before it (" + name + ") is not known.");
        }
        if (calendar.sinceChargeBefore(batch).isEmpty()) {
            return Measured.missing(
                    "the time of day of its charge or of that of the batch before it (" + name + ") was not written.");
        }
        return calendar.sinceLastDrop(batch)
                .map(empty -> Measured.of(empty.seconds(), drop.standardError()))
                .orElseGet(() -> Measured.missing(
                        "the batch before it (" + name + ") was dropped after this one was charged, as written."));
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
