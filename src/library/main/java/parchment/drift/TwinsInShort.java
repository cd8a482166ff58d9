package parchment.drift;

import java.util.Optional;
import parchment.display.answer.InShort;
import parchment.stats.Interval;

/** Puts how far batches lie apart that were meant alike into three sentences. */
final class TwinsInShort {
    /** Half of all pairs of normal values lie nearer to each other than this many standard deviations: 0.6745 times the root of 2. */
    private static final double HALF_OF_ALL_PAIRS = 0.9539;

    /** With fewer degrees of freedom the upper end is over two and a half times the estimate: too wide to act upon. */
    private static final int FEWEST = 4;

    private static final double LEVEL = 0.90;

    private TwinsInShort() {}

    /**
     * Says how far twins lie apart.
     *
     * @param batches how many there are in all
     * @param twins how many of them have twins
     * @param withoutPlan how many have no planned drop temperature written
     * @param told how far twins lie apart in what is told first; empty if nothing of that is known of them
     */
    static InShort of(int batches, int twins, int withoutPlan, Optional<Repeatability> told) {
        if (withoutPlan > 0 && withoutPlan == batches) {
            return new InShort(
                    "Which batches were meant alike cannot be told.",
                    "No planned drop temperature is written.",
                    "Write it before charge, in the column 'planned drop temperature' of batches.csv.");
        }
        if (twins == 0) {
            return new InShort(
                    "No two batches were meant alike, as far as was written.",
                    withoutPlan > 0
                            ? "Of " + withoutPlan + " of " + batches
                                    + " batches no planned drop temperature is written."
                            : "Lot, recipe, roaster, mass, charge or planned drop always differed.",
                    "Roast one plan twice now and then: it shows what differs by nobody's doing.");
        }
        if (told.isEmpty()) {
            return new InShort(
                    "How far batches that were meant alike lie apart cannot be told.",
                    "Of the " + twins + " batches that have twins, no times, drops or masses are known.",
                    "Log their curves and weigh them, then ask again.");
        }
        return of(told.get());
    }

    /** Says that nothing is known of a feature of batches that were meant alike. */
    static InShort withoutPairs(String feature) {
        return new InShort(
                "How far batches that were meant alike lie apart in " + feature + " cannot be told.",
                "No two of them have it.",
                "Roast one plan twice now and then: it shows what differs by nobody's doing.");
    }

    /** Says how far twins lie apart in a feature that at least two of them have. */
    static InShort of(Repeatability shown) {
        String rests = shown.batches() + " batches in " + shown.groups() + (shown.groups() == 1 ? " group" : " groups");
        if (shown.degreesOfFreedom() < FEWEST) {
            return new InShort(
                    "How far batches that were meant alike lie apart in "
                            + shown.feature().name() + " cannot be told.",
                    "Only " + rests + " have it, and so few may lie near each other by luck.",
                    "Roast one plan twice now and then, then ask again.");
        }
        Interval interval = shown.interval(LEVEL);
        double low = HALF_OF_ALL_PAIRS * interval.lower();
        double high = HALF_OF_ALL_PAIRS * interval.upper();
        return new InShort(
                "Half of all pairs meant alike came within "
                        + shown.step(
                                HALF_OF_ALL_PAIRS * shown.standardDeviation().orElseThrow(), high - low)
                        + " of each other in " + shown.feature().name() + " (" + shown.step(low, high - low) + " to "
                        + shown.step(high, high - low) + ").",
                "That rests on " + rests + "; what nobody wrote down may have differed too.",
                "Do not chase a smaller difference from one batch to the next.");
    }
}
