package parchment.align;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.phase.Phases;

/**
 * Chooses the batches of a logbook that can be compared because one probe read them: the latest with batches enough, with their phases.
 */
record OneProbe(List<Phases> phases, List<String> notes) {

    static OneProbe of(Logbook logbook) {
        ByProbe periods = ByProbe.of(logbook);
        Optional<String> kept = periods.toCompare();
        return kept.isEmpty()
                ? new OneProbe(List.of(), List.of())
                : new OneProbe(phases(logbook, periods, kept.get()), periods.leftOutNote(kept.get()));
    }

    private static List<Phases> phases(Logbook logbook, ByProbe periods, String kept) {
        List<Batch> batches = periods.periods().getOrDefault(kept, List.of());
        Map<String, Phases> byName = new HashMap<>();
        // The noise is pooled over the logger's curves, so the whole logbook is read.
        Phases.of(logbook).forEach(phases -> byName.put(phases.batch().name(), phases));
        return batches.stream()
                .flatMap(batch -> Optional.ofNullable(byName.get(batch.name())).stream())
                .toList();
    }
}
