package parchment.align;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;

/** Names a group of batches by what they share. */
final class GroupNames {
    private GroupNames() {}

    /** Returns the lot, or the days, that all of some batches share; else the given words. */
    static String of(List<Batch> batches, String otherwise) {
        Set<Optional<String>> lots = batches.stream().map(Batch::lot).collect(Collectors.toSet());
        if (lots.size() == 1 && lots.iterator().next().isPresent()) {
            return "lot " + lots.iterator().next().get();
        }
        List<String> days = batches.stream()
                .flatMap(batch -> batch.roastDay().stream())
                .map(LocalDate::toString)
                .sorted()
                .toList();
        return days.size() < batches.size() || days.isEmpty()
                ? otherwise
                : days.get(0) + " to " + days.get(days.size() - 1);
    }

    /** Returns the probes that read the batches of a logbook. */
    static Set<String> probes(Logbook logbook) {
        ByProbe periods = ByProbe.of(logbook);
        return new HashSet<>(periods.periods().keySet());
    }
}
