package parchment.evidence;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.feature.kind.Family;
import parchment.feature.kind.Need;
import parchment.feature.path.Measured;
import parchment.feature.path.OnProbe;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.period.ProbePeriods;

/** Reads the feature asked about, and those it may have moved together with, off every batch. */
final class FeatureReadings {
    private FeatureReadings() {}

    static Question question(String attribute, Feature feature, Logbook logbook, EvidenceSettings settings) {
        EvidenceChecks.attribute(attribute, logbook.attributes(), logbook.name());
        BatchTable table = table(feature, logbook);
        Measure measure = measure(feature, table, logbook);
        return new Question(attribute, measure, others(feature, table), settings);
    }

    /** Reads the feature asked about and every built-in one that does not have its name. */
    static BatchTable table(Feature feature, Logbook logbook) {
        List<Feature> measured = new ArrayList<>(List.of(feature));
        Features.all().list().stream()
                .filter(other -> !other.name().equals(feature.name()))
                .forEach(measured::add);
        return BatchTable.of(logbook, measured);
    }

    /** Reads every built-in feature. */
    static List<Measure> all(Logbook logbook) {
        BatchTable table = BatchTable.of(logbook);
        return table.features().stream()
                .map(feature -> measure(feature, table, logbook))
                .toList();
    }

    static Measure measure(Feature feature, BatchTable table, Logbook logbook) {
        return new Measure(
                feature.name(),
                feature.unit().withNaturalStep(feature.naturalStep()),
                logbook.readerUnit(),
                readings(table, feature),
                planned(feature, logbook),
                feature.onProbe(),
                feature.role(),
                Need.howToHave(feature));
    }

    private static Map<String, Double> planned(Feature feature, Logbook logbook) {
        Map<String, Double> planned = new LinkedHashMap<>();
        logbook.batches().forEach(batch -> feature.planned(batch).ifPresent(value -> planned.put(batch.name(), value)));
        return planned;
    }

    private static Map<String, ModelFrames.Reading> readings(BatchTable table, Feature feature) {
        // One column: bringing the whole table to today's probe for each of its features would do the work of all as
        // often.
        BatchTable today = BatchTable.of(table.logbook(), feature).onTodaysProbe();
        double[] shared = today.sharedErrors(feature);
        ProbePeriods periods = ProbePeriods.of(table.logbook());
        Map<String, ModelFrames.Reading> readings = new LinkedHashMap<>();
        for (int i = 0; i < table.size(); i++) {
            Batch batch = table.batches().get(i);
            Measured measured = table.cell(i, feature);
            readings.put(
                    batch.name(),
                    measured.isMissing()
                            ? new ModelFrames.Reading(Double.NaN, Double.NaN, measured.whyMissing())
                            : new ModelFrames.Reading(
                                            measured.value(),
                                            measured.error() == Measured.ErrorKnown.YES
                                                    ? measured.standardError()
                                                    : Double.NaN)
                                    .onTodaysProbe(
                                            placeToday(feature, batch, today.cell(i, feature), periods),
                                            shared[i],
                                            feature.onProbe() == OnProbe.FREE_OF_IT ? "" : periods.errorKey(batch)));
        }
        return readings;
    }

    /**
     * Returns what today's probe would read, NaN where that is not known: before a step of which it cannot be told whether the probe moved a reading
     * says nothing of a place on today's probe.
     */
    private static double placeToday(Feature feature, Batch batch, Measured today, ProbePeriods periods) {
        boolean doubtful = feature.onProbe() != OnProbe.FREE_OF_IT && periods.doubt(batch, today.value()) > 0;
        return doubtful ? Double.NaN : today.value();
    }

    /** Returns every other feature of a table with its role. */
    static List<CollinearFeatures.Other> others(Feature feature, BatchTable table) {
        List<CollinearFeatures.Other> others = new ArrayList<>();
        for (Feature other : table.features()) {
            if (other.name().equals(feature.name())) {
                continue;
            }
            double[] values = table.values(other);
            Map<String, Double> byBatch = new LinkedHashMap<>();
            for (int i = 0; i < values.length; i++) {
                byBatch.put(table.batches().get(i).name(), values[i]);
            }
            Family family = other.family();
            String tie = family == feature.family() && !family.identity().isEmpty() ? family.words() : "";
            others.add(new CollinearFeatures.Other(other.name(), byBatch, tie, other.role()));
        }
        return others;
    }
}
