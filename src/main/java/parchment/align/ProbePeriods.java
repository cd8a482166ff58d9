package parchment.align;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.Upkeep;

/**
 * Sorts the batches of a logbook by the probe that read them: one machine between two written changes of its probe.
 *
 * <p>Readings of one probe installation are comparable with each other, not with those before or after. Only changes that somebody
 * wrote into the upkeep are known here.
 */
final class ProbePeriods {
    /** Batches from which a mean of a probe's batches is worth drawing; common practice, no source. */
    static final int ENOUGH = 20;

    private final Map<String, List<Batch>> byPeriod = new LinkedHashMap<>();
    private final Map<String, String> words = new LinkedHashMap<>();
    private final Map<String, String> periodOf = new LinkedHashMap<>();
    private final int all;

    private ProbePeriods(Logbook logbook) {
        List<Upkeep> moves = logbook.upkeep().stream()
                .filter(work -> work.what().toLowerCase(Locale.ROOT).contains("probe"))
                .toList();
        this.all = logbook.batches().size();
        for (Batch batch : logbook.batches()) {
            String machine = batch.machine().orElse("");
            Optional<LocalDate> day = batch.roastedAt().map(at -> at.toLocalDate());
            List<LocalDate> changes = moves.stream()
                    .filter(work -> machine.isEmpty() || work.machine().equals(machine))
                    .map(Upkeep::doneOn)
                    .distinct()
                    .sorted()
                    .toList();
            // A batch without a date could belong to any period, so it belongs to none of the known ones.
            int period = day.map(d -> (int) changes.stream()
                            .filter(change -> !d.isBefore(change))
                            .count())
                    .orElse(changes.isEmpty() ? 0 : -1);
            String key = machine + "\n" + period;
            periodOf.put(batch.name(), key);
            byPeriod.computeIfAbsent(key, k -> new ArrayList<>()).add(batch);
            words.putIfAbsent(key, words(machine, period, changes));
        }
    }

    static ProbePeriods of(Logbook logbook) {
        return new ProbePeriods(logbook);
    }

    private static String words(String machine, int period, List<LocalDate> changes) {
        String on = machine.isEmpty() ? "" : " of " + machine;
        if (changes.isEmpty()) {
            return "the probe" + on;
        }
        if (period < 0) {
            return "an unknown probe" + on + " (the batch has no date)";
        }
        if (period == 0) {
            return "the probe" + on + " until " + changes.get(0);
        }
        return "the probe" + on + " from " + changes.get(period - 1)
                + (period < changes.size() ? " until " + changes.get(period) : " on");
    }

    /** Returns the period of a batch, a key for comparison only. */
    String period(Batch batch) {
        return periodOf.getOrDefault(batch.name(), "");
    }

    /** Returns the period in words, as in "the probe of drum 1 from 2024-10-07 on". */
    String words(String period) {
        return words.getOrDefault(period, "an unknown probe");
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
                .flatMap(batch -> batch.roastedAt().stream())
                .map(at -> at.toLocalDate())
                .max(Comparator.naturalOrder())
                .orElse(LocalDate.MIN);
    }

    private long curves(String period) {
        return byPeriod.getOrDefault(period, List.of()).stream()
                .filter(batch -> batch.logged().contains(parchment.logbook.Quantity.BEAN_TEMPERATURE))
                .count();
    }

    /** Says that the batches of other probes are left out; nothing if all are of one. */
    List<String> leftOutNote(String kept) {
        if (byPeriod.size() < 2) {
            return List.of();
        }
        int used = byPeriod.getOrDefault(kept, List.of()).size();
        return List.of("Only the batches on " + words(kept) + " are laid together (" + used + " of " + all
                + "): the readings of another probe are not on the same scale. Choose others with logbook.between(...) or"
                + " logbook.only(...).");
    }
}
