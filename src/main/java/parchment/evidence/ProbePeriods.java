package parchment.evidence;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import parchment.logbook.Upkeep;

/**
 * Cuts the calendar of each machine where upkeep says that its probe was touched.
 *
 * <p>Readings of one probe installation are comparable with each other, not with those before or after. Only written upkeep is used
 * here; finding an unwritten move is a matter of drift.
 */
final class ProbePeriods {
    private final List<Upkeep> moves;

    private ProbePeriods(List<Upkeep> moves) {
        this.moves = moves;
    }

    static ProbePeriods of(List<Upkeep> upkeep) {
        return new ProbePeriods(upkeep.stream()
                .filter(work -> work.what().toLowerCase(Locale.ROOT).contains("probe"))
                .toList());
    }

    /** Returns the number of the period a batch belongs to, from 1; a batch of an unwritten machine follows every written move. */
    int period(String machine, LocalDate day) {
        return 1
                + (int) moves.stream()
                        .filter(move ->
                                (machine.isEmpty() || move.machine().equals(machine)) && !day.isBefore(move.doneOn()))
                        .map(Upkeep::doneOn)
                        .distinct()
                        .count();
    }
}
