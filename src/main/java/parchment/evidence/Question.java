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
record Question(String attribute, Measure measure, List<MovedTogether.Other> others, EvidenceSettings settings) {
    /** @throws IllegalArgumentException if the logbook does not score the attribute */
    Evidence ask(Logbook logbook) {
        Checks.attribute(attribute, logbook.attributes(), logbook.name());
        Material material = Gathering.of(attribute, logbook, measure.readings());
        SmallestDifference margin = SmallestDifference.of(attribute, logbook, settings);
        Optional<Analysis> watched = Analysis.of(material, measure.step(), settings, margin);
        Facts facts = Facts.of(measure.name(), material);
        Blindness blindness = Blindness.of(material, logbook);
        VerdictRules.Judgement judgement = watched.map(found -> VerdictRules.judge(
                        Findings.of(measure.name(), Findings.Planned.NOT_BY_CHANCE, found, facts, others, blindness)))
                .orElseGet(() -> VerdictRules.nothingFitted(material));

        Material assigned = Gathering.of(attribute, logbook, drawnByChance(logbook));
        Optional<Analysis> drawn = Analysis.of(assigned, measure.step(), settings, margin);
        if (drawn.isPresent()) {
            VerdictRules.Judgement ofEffect = VerdictRules.judge(Findings.of(
                    measure.name(),
                    Findings.Planned.BY_CHANCE,
                    drawn.get(),
                    Facts.of(measure.name(), assigned),
                    others,
                    Blindness.of(assigned, logbook)));
            if (ofEffect.verdict() != Verdict.CANNOT_TELL) {
                judgement = ofEffect;
            }
        }
        Surroundings surroundings = new Surroundings(
                facts,
                MovedTogether.of(measure.name(), material, others),
                cupped(logbook),
                blindness,
                CuppingLayout.of(material),
                GeneralLevel.slope(attribute, measure, logbook));
        return new Evidence(this, material, watched, drawn, judgement, surroundings);
    }

    /** Returns the targets that were drawn by chance, as drawn: what the batch came out at does not matter. */
    private Map<String, Gathering.Reading> drawnByChance(Logbook logbook) {
        Map<String, Gathering.Reading> targets = new LinkedHashMap<>();
        for (Batch batch : logbook.batches()) {
            Double target = measure.planned().get(batch.name());
            if (target != null && batch.plan().plannedBy() == BatchPlan.PlannedBy.CHANCE) {
                targets.put(batch.name(), new Gathering.Reading(target, Double.NaN));
            }
        }
        return targets;
    }

    private CuppedBatches cupped(Logbook logbook) {
        Set<String> tasted = new HashSet<>();
        for (CupScores cup : logbook.cups()) {
            if (!Double.isNaN(cup.score(attribute))) {
                tasted.add(cup.batch());
            }
        }
        List<Double> with = new ArrayList<>();
        List<Double> without = new ArrayList<>();
        for (Batch batch : logbook.batches()) {
            double value = measure.readings()
                    .getOrDefault(batch.name(), Gathering.Reading.NONE)
                    .value();
            if (Double.isFinite(value)) {
                (tasted.contains(batch.name()) ? with : without).add(value);
            }
        }
        return CuppedBatches.of(with, without, measure.name(), measure.unit(), measure.reader());
    }
}
