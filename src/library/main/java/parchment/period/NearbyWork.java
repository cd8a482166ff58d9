package parchment.period;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import parchment.calendar.machine.WrittenPeriods;
import parchment.logbook.Logbook;
import parchment.logbook.written.Upkeep;

/**
 * Written work on something else than the bean probe, about when readings stepped: it may be why they did.
 *
 * <pre>{@code
 * ProbePeriods.of(logbook).changes().stream().map(change -> NearbyWork.of(change, logbook)).toList()
 * }</pre>
 *
 * @param work the work
 * @param change the change that it may explain
 */
public record NearbyWork(Upkeep work, ProbeChange change) {
    /** Days by which work may lie outside of the date set of a change and still be its reason; common practice, no source. */
    static final int DAYS = 3;

    /** Words of the upkeep that are told before the rest is left to it. */
    private static final int WORDS = 6;

    /** Finds the work nearest to a change of which nobody wrote that the probe was changed; empty if there is none. */
    public static Optional<NearbyWork> of(ProbeChange change, Logbook logbook) {
        return switch (change.kind()) {
            case FOUND_AND_WRITTEN, WRITTEN_WITHOUT_CHANGE, OTHER_WORK -> Optional.empty();
            case FOUND_WITHOUT_ENTRY, LOT_OR_PROBE, ONE_PLACE_ONLY, NOT_IN_THE_BEANS, STEP_OR_SLOW ->
                logbook.whole().upkeep().stream()
                        .filter(work -> WrittenPeriods.concerns(work, change.machine()))
                        .filter(work -> !work.concernsTheBeanProbe())
                        .filter(work ->
                                !work.doneOn().isBefore(change.earliest().minusDays(DAYS)))
                        .filter(work -> !work.doneOn().isAfter(change.latest().plusDays(DAYS)))
                        .min(Comparator.comparingLong((Upkeep work) -> Math.abs(days(work, change.on())))
                                .thenComparing(Upkeep::doneOn))
                        .map(work -> new NearbyWork(work, change));
        };
    }

    private static long days(Upkeep work, LocalDate on) {
        return ChronoUnit.DAYS.between(work.doneOn(), on);
    }

    /** Says that the work may be the reason, as in "The upkeep says: ducts cleaned on 2025-03-31, the day before; that can do this too.". */
    public String words() {
        return "The upkeep says: " + shortly() + " on " + work.doneOn() + " (" + when() + "). That can do this too.";
    }

    private String shortly() {
        String[] words = work.what().split("[,;.:]")[0].strip().split("\\s+");
        return words.length <= WORDS
                ? String.join(" ", words)
                : String.join(" ", List.of(words).subList(0, WORDS)) + " ...";
    }

    private String when() {
        long before = days(work, change.on());
        if (before == 0) {
            return "the same day";
        }
        return (Math.abs(before) == 1 ? "the day" : Math.abs(before) + " days") + (before > 0 ? " before" : " after");
    }
}
