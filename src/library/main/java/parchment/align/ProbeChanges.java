package parchment.align;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.period.ProbeChange;
import parchment.period.ProbePeriods;

/**
 * Warns where a probe was changed within the time of a logbook's batches, which makes readings before and after differ.
 */
final class ProbeChanges {
    private ProbeChanges() {}

    static List<String> sentences(Logbook logbook) {
        ProbePeriods periods = ProbePeriods.of(logbook);
        Optional<LocalDate> first = days(logbook).min(LocalDate::compareTo);
        Optional<LocalDate> last = days(logbook).max(LocalDate::compareTo);
        if (first.isEmpty() || last.isEmpty()) {
            return List.of();
        }
        List<String> changes = logbook.batches().stream()
                .flatMap(batch -> periods.changes(batch).stream())
                .distinct()
                .filter(change ->
                        change.on().isAfter(first.get()) && !change.on().isAfter(last.get()))
                .map(ProbeChanges::words)
                .distinct()
                .sorted()
                .toList();
        return changes.isEmpty()
                ? List.of()
                : List.of("A probe was changed within these batches (" + String.join("; ", changes)
                        + "): readings before and after it are not on one scale.");
    }

    private static String words(ProbeChange change) {
        return change.on() + (change.kind() == ProbeChange.Kind.FOUND_WITHOUT_ENTRY ? ", as the readings show" : "");
    }

    private static Stream<LocalDate> days(Logbook logbook) {
        return logbook.batches().stream().map(Batch::roastDay).flatMap(Optional::stream);
    }
}
