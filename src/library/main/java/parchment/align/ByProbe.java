package parchment.align;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.Quantity;
import parchment.period.ProbeChange;
import parchment.period.ProbePeriods;

/**
 * Sorts the batches of a logbook by the probe that read them, so that only readings on one scale are held against each other.
 *
 * <p>Periods are those of {@link ProbePeriods}: changes that were written into the upkeep, and moves that nobody wrote and that show in the
 * readings.
 */
final class ByProbe {
    /** Batches from which a mean of a probe's batches is worth drawing; common practice, no source. */
    static final int ENOUGH = 20;

    private final ProbePeriods periods;
    private final Map<String, List<Batch>> byPeriod = new LinkedHashMap<>();
    private final int all;

    private ByProbe(Logbook logbook) {
        this.periods = ProbePeriods.of(logbook);
        this.all = logbook.batches().size();
        for (Batch batch : logbook.batches()) {
            byPeriod.computeIfAbsent(periods.key(batch), k -> new ArrayList<>()).add(batch);
        }
    }

    static ByProbe of(Logbook logbook) {
        return new ByProbe(logbook);
    }

    /** Returns the period of a batch, a key for comparison only. */
    String period(Batch batch) {
        return periods.key(batch);
    }

    /** Returns the period in words, as in "the probe of drum 1 from 2024-10-07 on". */
    String words(String period) {
        List<Batch> batches = byPeriod.getOrDefault(period, List.of());
        return batches.isEmpty() ? "an unknown probe" : periods.words(batches.get(0));
    }

    /** Returns the periods with their batches, in the order they began. */
    Map<String, List<Batch>> periods() {
        return byPeriod;
    }

    /**
     * Returns the latest period that has {@value #ENOUGH} batches with a curve; if none has, the one with the most. Nothing if
     * there is no batch.
     */
    Optional<String> toCompare() {
        Optional<String> latest = byPeriod.keySet().stream()
                .filter(key -> curves(key) >= ENOUGH)
                .max(Comparator.comparing(this::lastDay));
        return latest.isPresent()
                ? latest
                : byPeriod.keySet().stream().reduce((a, b) -> curves(b) >= curves(a) ? b : a);
    }

    private LocalDate lastDay(String period) {
        return byPeriod.getOrDefault(period, List.of()).stream()
                .flatMap(batch -> batch.roastDay().stream())
                .max(Comparator.naturalOrder())
                .orElse(LocalDate.MIN);
    }

    private long curves(String period) {
        return byPeriod.getOrDefault(period, List.of()).stream()
                .filter(batch -> batch.logged().contains(Quantity.BEAN_TEMPERATURE))
                .count();
    }

    /** Says that the batches of other probes are left out; nothing if all are of one. */
    List<String> leftOutNote(String kept) {
        if (byPeriod.size() < 2) {
            return List.of();
        }
        int used = byPeriod.getOrDefault(kept, List.of()).size();
        List<String> notes = new ArrayList<>();
        notes.add("Only the batches on " + words(kept) + " are laid together (" + used + " of " + all
                + "): the readings of another probe are not on the same scale. Choose others with logbook.between(...) or"
                + " logbook.only(...).");
        notes.addAll(found(byPeriod.getOrDefault(kept, List.of())));
        return notes;
    }

    /** Says which changes of the probe that read some batches nobody wrote; nothing if all were written. */
    List<String> found(List<Batch> batches) {
        List<String> days = batches.stream()
                .flatMap(batch -> periods.changes(batch).stream())
                .filter(change -> change.kind() == ProbeChange.Kind.FOUND_WITHOUT_ENTRY)
                .map(change -> change.on().toString())
                .distinct()
                .sorted()
                .toList();
        return days.isEmpty()
                ? List.of()
                : List.of("That the probe was moved before the roasts of " + String.join(" and of ", days)
                        + " was written nowhere; it shows in the readings. If it was moved, write it into upkeep.csv.");
    }
}
