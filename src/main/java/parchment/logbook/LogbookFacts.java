package parchment.logbook;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import parchment.quantity.Elapsed;

/**
 * Works out what follows from the dates of a logbook and is never asked for: which batch of the day, how long the machine stood empty
 * before, how old the green coffee was, how long the coffee rested before the cupping.
 *
 * <pre>{@code
 * LogbookFacts.of(logbook).batchOfTheDay(logbook.lastWithCurve())
 * }</pre>
 *
 * <p>A day is a calendar day of the logbook's time zone. A batch whose time is exactly midnight was written without a time of day: it
 * counts in the order of its row, and no time between it and its neighbours is told. The batches that a filter left out of a logbook
 * still count, for they heated the machine all the same.
 */
public final class LogbookFacts {
    private record Position(int ofTheDay, Optional<Batch> before) {}

    private record Drum(LocalDate day, Optional<String> machine) {}

    private final Logbook logbook;
    private final Function<Batch, Optional<Elapsed>> drop;
    private final Map<String, Position> positions = new HashMap<>();
    private final Map<String, Batch> recorded = new HashMap<>();
    private final Map<String, Lot> lots = new HashMap<>();

    private LogbookFacts(Logbook logbook, Function<Batch, Optional<Elapsed>> drop) {
        this.logbook = logbook;
        this.drop = drop;
        Map<Drum, Batch> latest = new HashMap<>();
        Map<Drum, Integer> counts = new HashMap<>();
        for (Batch batch : logbook.recorded()) {
            recorded.putIfAbsent(batch.name(), batch);
            day(batch).ifPresent(day -> {
                Drum drum = new Drum(day, batch.machine());
                int position = counts.merge(drum, 1, Integer::sum);
                Batch before = latest.put(drum, batch);
                positions.put(batch.name(), new Position(position, Optional.ofNullable(before)));
            });
        }
        logbook.lots().forEach(lot -> lots.putIfAbsent(lot.name(), lot));
    }

    /** Returns the facts of a logbook, with drops as the roaster wrote them. */
    public static LogbookFacts of(Logbook logbook) {
        return of(logbook, batch -> batch.writtenMark(MarkKind.DROP));
    }

    /**
     * Returns the facts of a logbook, with drops from elsewhere, such as those found on the curves.
     *
     * @param drop gives the time from charge to drop of a batch, or nothing if it is not known
     */
    public static LogbookFacts of(Logbook logbook, Function<Batch, Optional<Elapsed>> drop) {
        return new LogbookFacts(logbook, drop);
    }

    /** Returns the calendar day of the roast; empty if the batch has no date. */
    public Optional<LocalDate> day(Batch batch) {
        return batch.roastedAt().map(this::localDay);
    }

    private LocalDate localDay(OffsetDateTime at) {
        return at.atZoneSameInstant(logbook.contents().zone()).toLocalDate();
    }

    /** Returns which batch of its day on its machine this was, counted from 1; empty if the batch has no date. */
    public OptionalInt batchOfTheDay(Batch batch) {
        Position position = positions.get(batch.name());
        return position == null ? OptionalInt.empty() : OptionalInt.of(position.ofTheDay());
    }

    /**
     * Returns the time from the drop of the batch before, on the same day and machine, to this charge; empty for the first batch of a
     * day, where a time of day or the drop before is not known, and where the two overlap.
     */
    public Optional<Elapsed> sinceLastDrop(Batch batch) {
        Position position = positions.get(batch.name());
        if (position == null || position.before().isEmpty()) {
            return Optional.empty();
        }
        Optional<OffsetDateTime> charge = timed(batch);
        Optional<OffsetDateTime> chargeBefore = position.before().flatMap(this::timed);
        Optional<Elapsed> dropBefore = position.before().flatMap(drop);
        if (charge.isEmpty() || chargeBefore.isEmpty() || dropBefore.isEmpty()) {
            return Optional.empty();
        }
        double between = ChronoUnit.MILLIS.between(chargeBefore.get(), charge.get()) / 1000.0;
        double empty = between - dropBefore.get().seconds();
        return empty < 0 ? Optional.empty() : Optional.of(Elapsed.seconds(empty));
    }

    private Optional<OffsetDateTime> timed(Batch batch) {
        return batch.roastedAt()
                .filter(at -> !at.atZoneSameInstant(logbook.contents().zone())
                        .toLocalTime()
                        .equals(LocalTime.MIDNIGHT));
    }

    /** Returns the days from the roast to the cupping; empty if the batch is unknown or undated, or was tasted before it was roasted. */
    public OptionalInt restDays(CupScores cup) {
        Batch batch = recorded.get(cup.batch());
        return batch == null ? OptionalInt.empty() : days(day(batch), Optional.of(cup.tastedOn()));
    }

    /** Returns the days from the harvest to the roast; empty if either is not known, and for a blend. */
    public OptionalInt daysSinceHarvest(Batch batch) {
        return days(batch.lot().map(lots::get).flatMap(Lot::harvestedOn), day(batch));
    }

    /** Returns the days from the arrival of the lot to the roast; empty if either is not known, and for a blend. */
    public OptionalInt daysSinceArrival(Batch batch) {
        return days(batch.lot().map(lots::get).flatMap(Lot::arrivedOn), day(batch));
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
        long dated = batches.stream().filter(batch -> day(batch).isPresent()).count();
        long days = batches.stream()
                .flatMap(batch -> day(batch).stream())
                .distinct()
                .count();
        return Words.count(dated, "dated batch", "dated batches") + " on " + Words.count(days, "day", "days") + "; "
                + (batches.size() - dated) + " without a date left out";
    }
}
