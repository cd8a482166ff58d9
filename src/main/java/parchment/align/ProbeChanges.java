package parchment.align;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import parchment.logbook.Logbook;
import parchment.logbook.Upkeep;

/** Says whether a probe was changed within the time of a logbook's batches, which makes readings before and after differ. */
final class ProbeChanges {
    private ProbeChanges() {}

    static List<String> sentences(Logbook logbook) {
        Optional<LocalDate> first = days(logbook).min(LocalDate::compareTo);
        Optional<LocalDate> last = days(logbook).max(LocalDate::compareTo);
        if (first.isEmpty() || last.isEmpty()) {
            return List.of();
        }
        List<String> changes = logbook.upkeep().stream()
                .filter(done -> done.what().toLowerCase(Locale.ROOT).contains("probe"))
                .map(Upkeep::doneOn)
                .filter(day -> day.isAfter(first.get()) && !day.isAfter(last.get()))
                .map(LocalDate::toString)
                .distinct()
                .toList();
        return changes.isEmpty()
                ? List.of()
                : List.of("A probe was changed within these batches (" + String.join(", ", changes)
                        + "): readings before and after it are not on one scale.");
    }

    private static Stream<LocalDate> days(Logbook logbook) {
        return logbook.batches().stream()
                .flatMap(batch -> batch.roastedAt().stream())
                .map(at -> at.toLocalDate());
    }
}
