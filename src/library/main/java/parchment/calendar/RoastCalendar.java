package parchment.calendar;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import parchment.display.Showable;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.Lot;
import parchment.logbook.MarkKind;
import parchment.logbook.written.CupScores;
import parchment.quantity.Elapsed;

/**
 * Works out what follows from the dates of a logbook and is never asked for: which batch of the day, how long the machine stood empty
 * before, how old the green coffee was, how long the coffee rested before the cupping.
 *
 * <pre>{@code
 * RoastCalendar.of(logbook).batchOfTheDay(logbook.lastWithCurve())
 * }</pre>
 *
 * <p>A batch whose time is exactly midnight was written without a time of day: it counts in the order of its row, and no time between it
 * and its neighbours is told. The batches that a filter left out of a logbook still count, for they heated the machine all the same.
 */
public final class RoastCalendar implements Showable {
    private record Position(int ofTheDay, Optional<Batch> before) {}

    private record Drum(LocalDate day, Optional<String> machine) {}

    private final Logbook logbook;
    private final Function<Batch, Optional<Elapsed>> drop;
    private final Map<String, Position> positions = new HashMap<>();
    private final Map<String, Batch> recorded = new HashMap<>();
    private final Map<String, Lot> lots = new HashMap<>();
    private final Map<String, LocalDate> tasted = new HashMap<>();

    private RoastCalendar(Logbook logbook, Function<Batch, Optional<Elapsed>> drop) {
        this.logbook = logbook;
        this.drop = drop;
        Map<Drum, Batch> latest = new HashMap<>();
        Map<Drum, Integer> counts = new HashMap<>();
        List<Batch> inTime = new ArrayList<>(logbook.whole().batches());
        // A stable sort: batches without a time of day stay in the order of their rows.
        inTime.sort(Comparator.comparing(
                batch -> batch.roastedAt().orElse(null), Comparator.nullsLast(Comparator.naturalOrder())));
        for (Batch batch : inTime) {
            recorded.putIfAbsent(batch.name(), batch);
            batch.roastDay().ifPresent(day -> {
                Drum drum = new Drum(day, batch.machine());
                int position = counts.merge(drum, 1, Integer::sum);
                Batch before = latest.put(drum, batch);
                positions.put(batch.name(), new Position(position, Optional.ofNullable(before)));
            });
        }
        logbook.lots().forEach(lot -> lots.putIfAbsent(lot.name(), lot));
        logbook.whole()
                .cups()
                .forEach(cup -> tasted.merge(cup.batch(), cup.tastedOn(), (a, b) -> a.isBefore(b) ? a : b));
    }

    /** Returns the calendar of a logbook, with drops as the roaster wrote them. */
    public static RoastCalendar of(Logbook logbook) {
        return of(logbook, batch -> batch.writtenMark(MarkKind.DROP));
    }

    /**
     * Returns the calendar of a logbook, with drops from elsewhere, such as those found on the curves.
     *
     * @param drop gives the time from charge to drop of a batch, or nothing if it is not known
     */
    public static RoastCalendar of(Logbook logbook, Function<Batch, Optional<Elapsed>> drop) {
        return new RoastCalendar(logbook, drop);
    }

    /** Returns which batch of its day on its machine this was, counted from 1; empty if the batch has no date. */
    public OptionalInt batchOfTheDay(Batch batch) {
        Position position = positions.get(batch.name());
        return position == null ? OptionalInt.empty() : OptionalInt.of(position.ofTheDay());
    }

    /** Returns the batch before on the same machine and day; empty for the first of a day and for a batch without a date. */
    public Optional<Batch> before(Batch batch) {
        return Optional.ofNullable(positions.get(batch.name())).flatMap(Position::before);
    }

    /**
     * Returns the time from the charge of the batch before, on the same day and machine, to this charge; empty for the first batch of a day, and
     * where a time of day is not known.
     */
    public Optional<Elapsed> sinceChargeBefore(Batch batch) {
        Optional<OffsetDateTime> charge = timed(batch);
        Optional<OffsetDateTime> chargeBefore = before(batch).flatMap(RoastCalendar::timed);
        return charge.isEmpty() || chargeBefore.isEmpty()
                ? Optional.empty()
                : Optional.of(Elapsed.seconds(ChronoUnit.MILLIS.between(chargeBefore.get(), charge.get()) / 1000.0));
    }

    /**
     * Returns the time from the drop of the batch before, on the same day and machine, to this charge; empty for the first batch of a
     * day, where a time of day or the drop before is not known, and where the two overlap.
     */
    public Optional<Elapsed> sinceLastDrop(Batch batch) {
        Optional<Elapsed> between = sinceChargeBefore(batch);
        Optional<Elapsed> dropBefore = before(batch).flatMap(drop);
        if (between.isEmpty() || dropBefore.isEmpty()) {
            return Optional.empty();
        }
        double empty = between.get().seconds() - dropBefore.get().seconds();
        return empty < 0 ? Optional.empty() : Optional.of(Elapsed.seconds(empty));
    }

    private static Optional<OffsetDateTime> timed(Batch batch) {
        return batch.roastedAt().filter(at -> !at.toLocalTime().equals(LocalTime.MIDNIGHT));
    }

    /** Returns the days from the roast to the cupping; empty if the batch is unknown or undated, or was tasted before it was roasted. */
    public OptionalInt restDays(CupScores cup) {
        Batch batch = recorded.get(cup.batch());
        return batch == null ? OptionalInt.empty() : days(batch.roastDay(), Optional.of(cup.tastedOn()));
    }

    /** Returns the day on which a batch was first tasted; empty if it never was. */
    public Optional<LocalDate> firstTasted(Batch batch) {
        return Optional.ofNullable(tasted.get(batch.name()));
    }

    /** Returns the days on which something was tasted, the earliest first. */
    public List<LocalDate> cuppingDays() {
        return logbook.whole().cups().stream()
                .map(CupScores::tastedOn)
                .distinct()
                .sorted()
                .toList();
    }

    /** Returns the days from the harvest to the roast; empty if either is not known, and for a blend. */
    public OptionalInt daysSinceHarvest(Batch batch) {
        return days(batch.lot().map(lots::get).flatMap(Lot::harvestedOn), batch.roastDay());
    }

    /** Returns the day on which a batch's lot arrived; empty if it is not known, and for a blend. */
    public Optional<LocalDate> arrived(Batch batch) {
        return batch.lot().map(lots::get).flatMap(Lot::arrivedOn);
    }

    /** Returns the days from the arrival of the lot to the roast; empty if either is not known, and for a blend. */
    public OptionalInt daysSinceArrival(Batch batch) {
        return days(arrived(batch), batch.roastDay());
    }

    private static OptionalInt days(Optional<LocalDate> from, Optional<LocalDate> to) {
        if (from.isEmpty() || to.isEmpty() || from.get().isAfter(to.get())) {
            return OptionalInt.empty();
        }
        return OptionalInt.of((int) ChronoUnit.DAYS.between(from.get(), to.get()));
    }

    @Override
    public String toString() {
        List<Batch> batches = logbook.batches();
        long dated =
                batches.stream().filter(batch -> batch.roastDay().isPresent()).count();
        long days = batches.stream()
                .flatMap(batch -> batch.roastDay().stream())
                .distinct()
                .count();
        return String.format(
                Locale.ROOT,
                "%d dated %s on %d %s; %d without a date left out",
                dated,
                dated == 1 ? "batch" : "batches",
                days,
                days == 1 ? "day" : "days",
                batches.size() - dated);
    }
}
