package parchment.lesson.sheet;

import java.util.Locale;

/**
 * Marks a stated claim with points, from 0 to 10, and why.
 *
 * <p>An interval is graded by the interval score for 90 % intervals, width + (2 / 0.1) × the distance by which the truth lies outside,
 * held against a width that says nothing: points = 10 × (1 - score / that width), never below 0. So a narrower interval earns more as
 * long as it holds the truth. Without the cut at 0, whoever states what they believe, no wider and no narrower, would earn most in the long
 * run; with it that is so where the width that says nothing is large beside what is believed (20 standard deviations), while somebody
 * who knows little earns more by a narrower guess (docs/class.md has the table). "Cannot tell" earns all 10 points where the batches and cups cannot tell, and 2 where they can.
 *
 * @param points from 0 to 10
 * @param words why
 * @see <a href="https://doi.org/10.1198/016214506000001437">Gneiting &amp; Raftery (2007), Strictly proper scoring rules, prediction,
 *     and estimation, section 6.2</a>
 */
public record Grade(double points, String words) {
    /** Points that are given at most. */
    public static final double FULL = 10;

    private static final double FOR_CAUTION = 2;
    private static final double ONE_MINUS_LEVEL = 0.1;

    /** Says whether the batches and cups behind a claim could tell. */
    public enum Telling {
        /** An honest interval leaves no doubt on which side of nothing the truth lies. */
        CAN_TELL,
        /** No honest interval does. */
        CANNOT_TELL
    }

    /**
     * Grades a claim.
     *
     * @param truth the truth, in the unit of the claim
     * @param sayingNothing width of an interval that says nothing, in the unit of the claim
     */
    public static Grade of(StatedClaim claim, double truth, double sayingNothing, Telling telling) {
        if (claim.kind() == StatedClaim.Kind.CANNOT_TELL) {
            return telling == Telling.CANNOT_TELL
                    ? new Grade(FULL, "Rightly said: these batches and cups cannot tell.")
                    : new Grade(FOR_CAUTION, "Careful, but these batches and cups could tell more than that.");
        }
        double width = claim.upper() - claim.lower();
        double outside = StrictMath.max(0, StrictMath.max(claim.lower() - truth, truth - claim.upper()));
        double score = width + 2 / ONE_MINUS_LEVEL * outside;
        double points = FULL * StrictMath.max(0, 1 - score / sayingNothing);
        return new Grade(points, words(outside, width, sayingNothing, telling));
    }

    private static String words(double outside, double width, double sayingNothing, Telling telling) {
        if (outside > 0) {
            return "The interval misses the truth: stated more narrowly than was known.";
        }
        if (width >= sayingNothing) {
            return "The interval holds the truth, but it is so wide that it says nothing.";
        }
        return telling == Telling.CANNOT_TELL
                ? "The interval holds the truth, with some luck: these batches and cups could not tell."
                : "The interval holds the truth.";
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%.1f of %.0f points. %s", points, FULL, words);
    }
}
