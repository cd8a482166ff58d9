package parchment.evidence;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import parchment.feature.path.OnProbe;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.period.ProbeChange;
import parchment.period.ProbePeriods;

/**
 * Tells on the face of an answer by how much the readings of earlier probe periods are told otherwise than they were written.
 *
 * @param steps what was done to each earlier period, the earliest first
 */
record ReadingsMoved(List<Step> steps) {
    /** Holds what nothing was done to. */
    static final ReadingsMoved NONE = new ReadingsMoved(List.of());

    /** Says whether somebody wrote that the probe was changed. */
    enum Entry {
        WRITTEN,
        NOT_WRITTEN
    }

    /**
     * What was done to the readings of one period.
     *
     * @param before the day from which on the next period's probe read
     * @param moved the mean of what was added to its readings, as the library keeps the feature
     * @param entry whether the change at its end was written
     */
    record Step(LocalDate before, double moved, Entry entry) {}

    /** The batches between two changes of the probe: the change at their end, and by how much each was moved. */
    private record Stretch(ProbeChange end, List<Double> moved) {}

    ReadingsMoved {
        steps = List.copyOf(steps);
    }

    /** Gathers what was done to the readings of the batches that an answer rests on; nothing for several machines, whose places are not one scale. */
    static ReadingsMoved of(ModelFrame material, Measure measure, Logbook logbook) {
        if (measure.onProbe() != OnProbe.READING || !material.movedToToday() || material.ofSeveralProbes()) {
            return NONE;
        }
        ProbePeriods periods = ProbePeriods.of(logbook);
        Map<String, Batch> byName = new HashMap<>();
        logbook.batches().forEach(batch -> byName.put(batch.name(), batch));
        Map<Integer, Stretch> stretches = new TreeMap<>();
        for (TastedBatch tasted : material.batches()) {
            Batch batch = byName.get(tasted.name());
            double by = tasted.today().value() - tasted.measure();
            if (batch == null || !Double.isFinite(by) || periods.isTodays(batch)) {
                continue;
            }
            periods.number(batch)
                    .ifPresent(number -> stretches
                            .computeIfAbsent(
                                    number,
                                    key -> new Stretch(periods.changes(batch).get(number - 1), new ArrayList<>()))
                            .moved()
                            .add(by));
        }
        List<Step> steps = new ArrayList<>();
        stretches.forEach((number, stretch) -> steps.add(new Step(
                stretch.end().on(),
                stretch.moved().stream()
                        .mapToDouble(Double::doubleValue)
                        .average()
                        .orElseThrow(),
                stretch.end().kind() == ProbeChange.Kind.FOUND_WITHOUT_ENTRY ? Entry.NOT_WRITTEN : Entry.WRITTEN)));
        return new ReadingsMoved(steps);
    }

    /** Returns the sentences for the reader; empty if no reading was moved. */
    String words(Measure measure) {
        if (steps.isEmpty()) {
            return "";
        }
        List<String> parts = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            String whose = i == 0
                    ? "Readings from before "
                    : "those from " + steps.get(i - 1).before() + " until before ";
            parts.add(whose + step.before() + by(step.moved(), measure));
        }
        long silent =
                steps.stream().filter(step -> step.entry() == Entry.NOT_WRITTEN).count();
        return String.join("; ", parts) + ", to what today's probe would show; your logbook stays as it is."
                + (silent == 0
                        ? ""
                        : " Nobody wrote that the probe was changed"
                                + (silent < steps.size() ? " each time" : "")
                                + "; the readings themselves show it.");
    }

    private static String by(double moved, Measure measure) {
        String size = measure.difference(Math.abs(moved));
        return Double.parseDouble(size.replaceFirst("[^0-9.].*", "")) == 0
                ? " were left as they are"
                : " were " + (moved > 0 ? "raised" : "lowered") + " by about " + size;
    }
}
