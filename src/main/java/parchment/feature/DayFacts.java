package parchment.feature;

import java.time.Duration;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.logbook.Batch;
import parchment.logbook.CupScores;
import parchment.logbook.Logbook;
import parchment.logbook.Lot;
import parchment.logbook.MarkKind;
import parchment.phase.Mark;
import parchment.phase.Phases;

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
        ZoneId zone = logbook.contents().zone();
        Map<String, Lot> lots = new HashMap<>();
        logbook.lots().forEach(lot -> lots.put(lot.name(), lot));
        Map<String, LocalDate> cupped = new HashMap<>();
        for (CupScores cup : logbook.cups()) {
            cupped.merge(cup.batch(), cup.tastedOn(), (a, b) -> a.isBefore(b) ? a : b);
        }
        DayFacts[] facts = new DayFacts[phases.size()];
        Integer[] byTime = new Integer[facts.length];
        for (int i = 0; i < byTime.length; i++) {
            byTime[i] = i;
        }
        java.util.Arrays.sort(byTime, (a, b) -> time(phases.get(a)).compareTo(time(phases.get(b))));
        Map<String, Integer> countOfDay = new HashMap<>();
        Map<String, Phases> lastOfDay = new HashMap<>();
        for (int i : byTime) {
            Batch batch = phases.get(i).batch();
            facts[i] = batch.roastedAt()
                    .map(at -> {
                        LocalDate day = at.atZoneSameInstant(zone).toLocalDate();
                        String key = batch.machine().orElse("") + "\n" + day;
                        int position = countOfDay.merge(key, 1, Integer::sum);
                        Phases last = lastOfDay.put(key, phases.get(i));
                        return new DayFacts(
                                Measured.exact(position),
                                sinceLastDrop(at, position, Optional.ofNullable(last)),
                                sinceArrival(batch, day, lots),
                                rest(batch, day, cupped));
                    })
                    .orElse(new DayFacts(
                            Measured.missing(NO_DATE),
                            Measured.missing(NO_DATE),
                            Measured.missing(NO_DATE),
                            Measured.missing(NO_DATE)));
        }
        return List.of(facts);
    }

    private static OffsetDateTime time(Phases phases) {
        return phases.batch().roastedAt().orElse(OffsetDateTime.MAX);
    }

    private static Measured sinceLastDrop(OffsetDateTime at, int position, Optional<Phases> last) {
        if (last.isEmpty()) {
            return Measured.missing(
                    position == 1
                            ? "it was the first batch of the day on its machine."
                            : "the batch before it is not known.");
        }
        Optional<Mark> drop = last.get().mark(MarkKind.DROP);
        if (drop.isEmpty()) {
            return Measured.missing(
                    "the drop of the batch before it (" + last.get().batch().name() + ") is not known.");
        }
        double between =
                Duration.between(last.get().batch().roastedAt().orElse(at), at).toMillis() / 1000.0
                        - drop.get().seconds();
        return between >= 0
                ? Measured.of(between, drop.get().standardError())
                : Measured.missing("the batch before it (" + last.get().batch().name()
                        + ") was dropped after this one was charged, as written.");
    }

    private static Measured sinceArrival(Batch batch, LocalDate day, Map<String, Lot> lots) {
        Optional<LocalDate> arrived = batch.lot().map(lots::get).flatMap(Lot::arrivedOn);
        return arrived.map(on -> Measured.exact(ChronoUnit.DAYS.between(on, day)))
                .orElseGet(() -> Measured.missing(
                        batch.lot().isEmpty()
                                ? "no lot was written."
                                : "the lot '" + batch.lot().get() + "' has no date of arrival in lots.csv."));
    }

    private static Measured rest(Batch batch, LocalDate day, Map<String, LocalDate> cupped) {
        LocalDate on = cupped.get(batch.name());
        return on == null
                ? Measured.missing("the batch was not cupped.")
                : Measured.exact(ChronoUnit.DAYS.between(day, on));
    }
}
