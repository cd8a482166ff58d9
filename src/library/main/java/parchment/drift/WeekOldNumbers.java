package parchment.drift;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.period.MachinePeriods;
import parchment.period.ProbeChange;
import parchment.period.ProbePeriods;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Estimate;

/**
 * Reminds of changes of the bean probe that are no news any more and still matter at the machine: who drops at a number from before drops
 * otherwise.
 */
final class WeekOldNumbers {
    private static final List<Feature> DROP = List.of(Features.dropTemperature());

    private WeekOldNumbers() {}

    /** Returns a sentence or two for each such change, machine by machine in order of time. */
    static List<String> of(Logbook logbook, List<Batch> week) {
        List<String> sentences = new ArrayList<>();
        for (MachinePeriods machine : ProbePeriods.of(logbook).machines()) {
            machine.changes().stream()
                    .filter(change -> !WeekProbes.isNews(change, machine.days(), week))
                    .forEach(change -> of(change, week, logbook).ifPresent(sentences::add));
        }
        return sentences;
    }

    /**
     * Returns what is said of a change; empty unless it moved what the probe reads at the drop for sure, and lots of the week have batches from before
     * it on that machine whose readings are known on today's scale.
     */
    static Optional<String> of(ProbeChange change, List<Batch> week, Logbook logbook) {
        if (!change.kind().separatesPeriods()) {
            return Optional.empty();
        }
        Set<String> lots = week.stream()
                .filter(batch -> batch.machine().orElse("").equals(change.machine()))
                .flatMap(batch -> batch.lot().stream())
                .collect(Collectors.toSet());
        BatchTable table = BatchTable.of(logbook, DROP);
        double[] drops = table.values(Features.dropTemperature());
        return logbook.batches().stream()
                .filter(batch -> batch.machine().orElse("").equals(change.machine()))
                .filter(batch -> batch.lot().filter(lots::contains).isPresent())
                .filter(batch -> batch.roastDay()
                        .filter(day -> day.isBefore(change.on()))
                        .isPresent())
                .filter(batch -> Double.isFinite(drops[table.batches().indexOf(batch)]))
                .max(Comparator.comparing(batch -> batch.roastedAt().orElseThrow()))
                .map(batch -> ProbePeriods.of(logbook)
                        .toToday(batch, drops[table.batches().indexOf(batch)]))
                .flatMap(added -> words(change, added, logbook.readerUnit()));
    }

    /**
     * Says by how much today's reading differs from one before a change; empty if that may be nothing.
     *
     * @param added what is added to a reading from before to have it on today's scale, °C
     */
    static Optional<String> words(ProbeChange change, Estimate added, TemperatureUnit reader) {
        if (!Double.isFinite(added.estimate())
                || added.interval(SizeWords.LEVEL).contains(0)) {
            return Optional.empty();
        }
        boolean lower = added.estimate() < 0;
        return Optional.of("The bean probe of " + (change.machine().isEmpty() ? "the machine" : change.machine())
                + " reads " + SizeWords.of(added, Unit.TEMPERATURE_STEP, reader) + (lower ? " lower" : " higher")
                + " at the drop today than before " + change.on()
                + "; numbers from before are told as it reads today. Dropped at an old number, a batch comes out "
                + (lower ? "hotter." : "less hot."));
    }
}
