package parchment.evidence;

import java.util.List;
import parchment.evidence.finding.Slope;
import parchment.stats.Interval;

/**
 * All that a verdict rests on, in numbers, so that the rules can be tried without a logbook.
 *
 * @param feature its name
 * @param planned whether it was drawn by chance before charge
 * @param slope as fitted, per unit of the measure
 * @param degreesLeft the most degrees of freedom that the roast days leave
 * @param told the interval of the slope that is told
 * @param bend the coefficient of the square
 * @param reliability how much of the feature's spread is its own
 * @param twins the controls and calendar facts from which the feature cannot be told
 * @param standIns facts outside the model that explain the feature as well as it explains itself
 * @param equivalence the difference over the tried range against the smallest that matters
 * @param control whether the next roast day's feature goes with today's score
 * @param blindness how many scores were blind
 * @param roastDays how many
 * @param gain on roast days left out
 * @param agreeing how many of the other ways of looking have the slope's sign
 * @param looks how many other ways there are
 * @param ordinal the second answer, of scores in few steps
 */
record Findings(
        String feature,
        Planned planned,
        Slope slope,
        double degreesLeft,
        Interval told,
        Slope bend,
        Reliability reliability,
        List<Collinearity.Twin> twins,
        List<Facts.Fact> standIns,
        Equivalence equivalence,
        NegativeControl control,
        Blindness blindness,
        int roastDays,
        PredictiveSkill gain,
        long agreeing,
        int looks,
        OrdinalCheck ordinal) {

    /** Says whether the feature was drawn by chance before charge. */
    enum Planned {
        BY_CHANCE,
        NOT_BY_CHANCE
    }

    /** Gathers what was computed; nothing that moved along stands in the way of a target that was drawn by chance. */
    static Findings of(
            String feature,
            Planned planned,
            Analysis analysis,
            Facts facts,
            List<CollinearFeatures.Other> others,
            Blindness blindness) {
        boolean drawn = planned == Planned.BY_CHANCE;
        return new Findings(
                feature,
                planned,
                analysis.fittedSlope(),
                analysis.fitted().mostDegrees(),
                analysis.headline().interval(analysis.level()),
                analysis.bendSlope(),
                analysis.reliability(),
                drawn ? List.of() : Collinearity.of(feature, analysis.fitted(), others),
                facts.standIns(),
                analysis.equivalence(),
                analysis.control(),
                blindness,
                analysis.material().roastDays(),
                analysis.gain(),
                analysis.specificationCurve().agreeing(analysis.fittedSlope()),
                analysis.specificationCurve().looks().size(),
                analysis.ordinal());
    }

    boolean slopeSeen() {
        return slope.chance() < VerdictRules.CHANCE_OF_SLOPE;
    }

    boolean bendSeen() {
        return bend.chance() < VerdictRules.CHANCE_OF_BEND;
    }

    /** Says whether zero was ruled out: by a slope or bend that is a finding, or by the interval that is told. */
    boolean zeroRuledOut() {
        return slopeSeen() || bendSeen() || told.lower() > 0 || told.upper() < 0;
    }
}
