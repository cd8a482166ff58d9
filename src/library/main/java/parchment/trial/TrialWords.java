package parchment.trial;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.display.answer.InShort;
import parchment.evidence.finding.PointsWords;
import parchment.evidence.finding.TrialVerdict;
import parchment.stats.Interval;
import parchment.trial.sealed.TrialTerms;

/** Puts a finished trial into three sentences, in the words of the first answers. Nothing is decided here. */
final class TrialWords {
    private static final String WITHOUT_DIFFERENCE = "In 100 trials without any true difference, luck shows as much ";

    private final TrialTerms terms;
    private final TrialJudgement judgement;

    private TrialWords(TrialTerms terms, TrialJudgement judgement) {
        this.terms = terms;
        this.judgement = judgement;
    }

    /**
     * Says an answer.
     *
     * @param look which look this is, counted from 1
     * @param assigned what was compared
     * @param missing which scores are missing
     * @param needed how many batches a new trial would need; empty if no number can be told
     */
    static InShort of(
            TrialTerms terms,
            TrialJudgement judgement,
            int look,
            Optional<AsAssigned> assigned,
            MissingScores missing,
            Optional<Integer> needed) {
        TrialWords words = new TrialWords(terms, judgement);
        return new InShort(words.found(), words.howSure(look, assigned, missing), words.next(look, missing, needed));
    }

    /** Prints a target or reading of the trial's control, in the reader's unit. */
    static String reading(TrialTerms terms, double value) {
        return terms.control().unit().format(value, terms.reader());
    }

    static String count(long number, String one, String many) {
        return number + " " + (number == 1 ? one : many);
    }

    /** Prints points with two decimals, as the smallest difference is always told. */
    static String points(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }

    /** Says the verdict as it is printed. */
    static String verdict(TrialTerms terms, TrialVerdict verdict) {
        return verdict == TrialVerdict.NOTHING_LARGER
                ? verdict.words() + " " + points(terms.smallestDifference()) + " points"
                : verdict.words();
    }

    private String lowest() {
        return reading(terms, terms.targets().get(0));
    }

    private String highest() {
        return reading(terms, terms.targets().get(terms.targets().size() - 1));
    }

    private String found() {
        String control = terms.control().words();
        return switch (judgement.verdict()) {
            case DID ->
                "A higher " + control + " did " + (judgement.difference() > 0 ? "raise " : "lower ") + terms.score()
                        + ": " + lowest() + " to " + highest() + ", "
                        + PointsWords.points(Math.abs(judgement.difference()), judgement.interval())
                        + " points (likely "
                        + PointsWords.range(judgement.interval()) + ").";
            case NOTHING_LARGER ->
                "From " + lowest() + " to " + highest() + " the " + control + " did nothing larger than "
                        + points(terms.smallestDifference()) + " points to " + terms.score() + ".";
            case CANNOT_TELL ->
                "Whether " + terms.score() + " is higher at " + lowest() + " or " + highest()
                        + " cannot be told from these batches.";
        };
    }

    private String howSure(int look, Optional<AsAssigned> assigned, MissingScores missing) {
        boolean rule = missing.rule();
        return switch (judgement.why()) {
            case NOTHING_TO_COMPARE -> "No set has two batches with different targets and a blind score.";
            case ONE_LOOK_TOO_MANY ->
                "This is look " + look + " at a trial that was stated for " + (terms.looks() == 1 ? "one" : "two")
                        + ", and whoever looks on finds something by luck.";
            case SEEN -> luck() + (rule ? ", whatever the missing batches would have scored." : ".");
            case NONE_AS_LARGE, SEEN_BUT_SMALLER, OPEN -> open();
            case TOO_FEW_SETS -> tooFew(assigned.orElseThrow());
            case NOT_RARE_ENOUGH -> luck() + "; over " + percent(terms.chance()) + " is too often to build on.";
        };
    }

    private String tooFew(AsAssigned found) {
        return "With " + count(found.setCount(), "set", "sets")
                + " like these even the clearest result comes by luck in "
                + Math.round(100 * found.slope().shuffle().smallestProbability()) + " of 100 trials.";
    }

    private String luck() {
        double chance = judgement.chance();
        long of = Math.round(100 * chance);
        return WITHOUT_DIFFERENCE + (chance < 0.01 ? "less than once" : of <= 1 ? "once" : of + " times");
    }

    private static String percent(double chance) {
        return chance * 100 == Math.rint(chance * 100)
                ? Long.toString(Math.round(100 * chance))
                : String.format(Locale.ROOT, "%.1f", 100 * chance);
    }

    private String open() {
        return anything(judgement.interval());
    }

    /** Says which differences agree with the scores. */
    static String anything(Interval interval) {
        if (Double.isInfinite(interval.lower()) || Double.isInfinite(interval.upper())) {
            return "So few batches rule out no difference at all, however large.";
        }
        return "Anything from " + PointsWords.end(interval.lower(), interval) + " to "
                + PointsWords.end(interval.upper(), interval) + " agrees with the scores.";
    }

    private String next(int look, MissingScores missing, Optional<Integer> needed) {
        return switch (judgement.verdict()) {
            case DID ->
                "Roast the next batches nearer to " + (judgement.difference() > 0 ? highest() : lowest())
                        + ", inside what your machine's maker allows, and keep cupping.";
            case NOTHING_LARGER ->
                "Choose the " + terms.control().words()
                        + " for other reasons; more batches like these would change little.";
            case CANNOT_TELL -> further(look, missing, needed);
        };
    }

    private String further(int look, MissingScores missing, Optional<Integer> needed) {
        return switch (judgement.why()) {
            case NOTHING_TO_COMPARE -> "Cup the trial's batches blind, a set on one table, then ask again.";
            case ONE_LOOK_TOO_MANY ->
                "Keep the answer of the last planned look, and draw a new trial for whatever is still open.";
            default ->
                look < terms.looks()
                        ? "Roast the remaining sets as they were drawn, and look a second and last time."
                        : missing.rule()
                                ? "Find out why so many batches have no score before a new trial is drawn."
                                : needed.map(batches -> "A new trial of about " + batches + " batches would show "
                                                + points(terms.smallestDifference()) + " points four times in five.")
                                        .orElse("No trial of a size worth roasting would show "
                                                + points(terms.smallestDifference()) + " points here.");
        };
    }

    /** Joins words as in "a, b and c". */
    static String list(List<String> words) {
        return words.size() < 2
                ? String.join("", words)
                : String.join(", ", words.subList(0, words.size() - 1)) + " and " + words.get(words.size() - 1);
    }
}
