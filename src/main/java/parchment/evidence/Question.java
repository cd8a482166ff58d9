package parchment.evidence;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parchment.logbook.Batch;
import parchment.logbook.BatchPlan;
import parchment.logbook.CupScores;
import parchment.logbook.Logbook;

/**
 * Puts one question to a logbook.
 *
 * @param attribute the attribute that is scored
 * @param measure the feature asked about
 * @param others the other features it may have moved together with
 * @param settings what was fixed beforehand
 */
record Question(String attribute, Measure measure, List<CollinearFeatures.Other> others, EvidenceSettings settings) {
    /** @throws IllegalArgumentException if the logbook does not score the attribute */
    Evidence ask(Logbook logbook) {
        EvidenceChecks.attribute(attribute, logbook.attributes(), logbook.name());
        ModelFrame material = ModelFrames.of(attribute, logbook, measure.readings());
        SmallestDifference margin = SmallestDifference.of(attribute, logbook, settings);
        Optional<Analysis> watched = Analysis.of(material, measure, settings, margin);
        Facts facts = facts(material, watched);
        Blindness blindness = Blindness.of(material, logbook);
        VerdictRules.Judgement judgement = watched.map(found -> VerdictRules.judge(
                        Findings.of(measure.name(), Findings.Planned.NOT_BY_CHANCE, found, facts, others, blindness)))
                .orElseGet(() -> VerdictRules.nothingFitted(material));

        Optional<Analysis> judged = watched;
        ModelFrame assigned = ModelFrames.of(attribute, logbook, drawnByChance(logbook));
        Optional<Analysis> drawn = Analysis.of(assigned, measure, settings, margin);
        if (drawn.isPresent()) {
            VerdictRules.Judgement ofEffect = VerdictRules.judge(Findings.of(
                    measure.name(),
                    Findings.Planned.BY_CHANCE,
                    drawn.get(),
                    facts(assigned, drawn),
                    others,
                    Blindness.of(assigned, logbook)));
            if (ofEffect.verdict() != Verdict.CANNOT_TELL) {
                judgement = ofEffect;
                judged = drawn;
            }
        }
        Surroundings surroundings = new Surroundings(
                facts,
                CollinearFeatures.of(measure.name(), material, others),
                cupped(logbook),
                blindness,
                CuppingLayout.of(material),
                GeneralLevel.slope(attribute, measure, logbook),
                assigned.batches().size(),
                judged.equals(watched) ? blindness : Blindness.of(assigned, logbook),
                ReadingsMoved.of(judged.map(Analysis::material).orElse(material), measure, logbook),
                scoredWithoutFeature(logbook));
        return new Evidence(this, material, watched, drawn, judged, judgement, surroundings, List.of());
    }

    private Facts facts(ModelFrame material, Optional<Analysis> analysis) {
        return Facts.of(measure.name(), material)
                .leavingOut(analysis.map(found -> found.fitted().model().aliasedColumns())
                        .orElse(List.of()));
    }

    /** Returns the targets that were drawn by chance, as drawn: what the batch came out at does not matter. */
    private Map<String, ModelFrames.Reading> drawnByChance(Logbook logbook) {
        Map<String, ModelFrames.Reading> targets = new LinkedHashMap<>();
        for (Batch batch : logbook.batches()) {
            Double target = measure.planned().get(batch.name());
            if (target != null && batch.plan().plannedBy() == BatchPlan.PlannedBy.CHANCE) {
                targets.put(batch.name(), target(target, batch.name()));
            }
        }
        return targets;
    }

    /** A target was meant for the probe of its day, so to today's it moves as the batch's own reading does, with the same shared error. */
    private ModelFrames.Reading target(double target, String batch) {
        ModelFrames.Reading drawn = new ModelFrames.Reading(target, Double.NaN);
        ModelFrames.Reading read = measure.readings().getOrDefault(batch, ModelFrames.Reading.NONE);
        if (Double.isNaN(read.value())) {
            boolean moved = measure.readings().values().stream()
                    .anyMatch(other -> Double.isFinite(other.value()) && other.today() != other.value());
            return moved ? drawn.onTodaysProbe(Double.NaN, Double.NaN, "not known") : drawn;
        }
        return drawn.onTodaysProbe(target + read.today() - read.value(), read.sharedError(), read.period());
    }

    private Set<String> tasted(Logbook logbook) {
        Set<String> tasted = new HashSet<>();
        for (CupScores cup : logbook.cups()) {
            if (!Double.isNaN(cup.score(attribute))) {
                tasted.add(cup.batch());
            }
        }
        return tasted;
    }

    private int scoredWithoutFeature(Logbook logbook) {
        Set<String> tasted = tasted(logbook);
        return (int) logbook.batches().stream()
                .filter(batch -> tasted.contains(batch.name()))
                .filter(batch -> !Double.isFinite(measure.readings()
                        .getOrDefault(batch.name(), ModelFrames.Reading.NONE)
                        .value()))
                .count();
    }

    private CuppedBatches cupped(Logbook logbook) {
        Set<String> tasted = tasted(logbook);
        List<Double> with = new ArrayList<>();
        List<Double> without = new ArrayList<>();
        for (Batch batch : logbook.batches()) {
            double value = measure.readings()
                    .getOrDefault(batch.name(), ModelFrames.Reading.NONE)
                    .value();
            if (Double.isFinite(value)) {
                (tasted.contains(batch.name()) ? with : without).add(value);
            }
        }
        return CuppedBatches.of(with, without, measure.name(), measure.unit(), measure.reader());
    }
}
