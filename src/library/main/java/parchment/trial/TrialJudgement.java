package parchment.trial;

import java.util.Optional;
import parchment.evidence.finding.TrialVerdict;
import parchment.stats.Interval;
import parchment.trial.sealed.TrialTerms;

/**
 * Decides a finished trial, by rules of its own: whether chance shows as much, and whether a difference as large as was stated is left.
 *
 * @param verdict in one word
 * @param why what decided it
 * @param difference from the lowest target to the highest, in points; NaN if nothing could be compared
 * @param interval of that difference, with the bounds of missing scores in it where these rule
 * @param chance of as much without any true difference; 1 if nothing could be compared
 */
record TrialJudgement(TrialVerdict verdict, Why why, double difference, Interval interval, double chance) {

    /** What decided the verdict. */
    enum Why {
        NOTHING_TO_COMPARE,
        ONE_LOOK_TOO_MANY,
        SEEN,
        NONE_AS_LARGE,
        SEEN_BUT_SMALLER,
        TOO_FEW_SETS,
        NOT_RARE_ENOUGH,
        OPEN
    }

    /**
     * Returns the judgement.
     *
     * @param look which look at the scores this is, counted from 1
     */
    static TrialJudgement of(TrialTerms terms, int look, Optional<AsAssigned> assigned, MissingScores missing) {
        double level = level(terms);
        if (assigned.isEmpty()) {
            Interval unknown = new Interval(Double.NaN, Double.NaN, level);
            return new TrialJudgement(TrialVerdict.CANNOT_TELL, Why.NOTHING_TO_COMPARE, Double.NaN, unknown, 1);
        }
        AsAssigned found = assigned.get();
        Optional<MissingScores.Bounds> bounds = missing.rule() ? missing.bounds() : Optional.empty();
        double difference = bounds.map(MissingScores.Bounds::difference).orElse(found.difference());
        Interval interval = bounds.map(MissingScores.Bounds::interval).orElse(found.interval());
        double chance = bounds.map(MissingScores.Bounds::chance).orElse(found.chance());
        Why why = look > terms.looks()
                ? Why.ONE_LOOK_TOO_MANY
                : why(terms, found.slope().shuffle().smallestProbability(), interval, chance);
        return new TrialJudgement(verdict(why), why, difference, interval, chance);
    }

    /** Returns the level of the interval: both its one-sided halves err as rarely as a look may. */
    static double level(TrialTerms terms) {
        return 1 - 2 * terms.chance();
    }

    /**
     * Returns what decides a planned look.
     *
     * @param smallest the smallest chance that the design can give at all
     */
    static Why why(TrialTerms terms, double smallest, Interval interval, double chance) {
        boolean seen = chance <= terms.chance() + 1e-12;
        if (interval.lower() > -terms.smallestDifference() && interval.upper() < terms.smallestDifference()) {
            return seen ? Why.SEEN_BUT_SMALLER : Why.NONE_AS_LARGE;
        }
        if (seen) {
            return Why.SEEN;
        }
        if (smallest > terms.chance()) {
            return Why.TOO_FEW_SETS;
        }
        return interval.contains(0) ? Why.OPEN : Why.NOT_RARE_ENOUGH;
    }

    private static TrialVerdict verdict(Why why) {
        return switch (why) {
            case SEEN -> TrialVerdict.DID;
            case NONE_AS_LARGE, SEEN_BUT_SMALLER -> TrialVerdict.NOTHING_LARGER;
            default -> TrialVerdict.CANNOT_TELL;
        };
    }
}
