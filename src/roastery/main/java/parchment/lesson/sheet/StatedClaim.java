package parchment.lesson.sheet;

import java.util.Locale;

/**
 * What a student stated before the envelope was opened: an interval, or that it cannot be told.
 *
 * @param kind which of the two
 * @param lower lower end, in the unit of the page; NaN for "cannot tell"
 * @param upper upper end, in the unit of the page; NaN for "cannot tell"
 */
public record StatedClaim(Kind kind, double lower, double upper) {
    /** Says what was stated. */
    public enum Kind {
        /** An interval that is meant to hold the truth in 9 of 10 such claims. */
        INTERVAL,
        /** That these batches and cups cannot tell. */
        CANNOT_TELL
    }

    /** @throws IllegalArgumentException if an interval has an end that is no number, or its lower end above its upper one */
    public StatedClaim {
        if (kind == Kind.INTERVAL && !(lower <= upper)) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "A claim is stated from its lower to its upper end; the ends given are %s and %s.",
                    lower,
                    upper));
        }
        if (kind == Kind.INTERVAL && (Double.isInfinite(lower) || Double.isInfinite(upper))) {
            throw new IllegalArgumentException("A claim has two ends; to leave one open is to say: cannot tell.");
        }
    }

    /** Returns the claim that the truth lies between two numbers. */
    public static StatedClaim between(double lower, double upper) {
        return new StatedClaim(Kind.INTERVAL, lower, upper);
    }

    /** Returns the claim that it cannot be told. */
    public static StatedClaim cannotTell() {
        return new StatedClaim(Kind.CANNOT_TELL, Double.NaN, Double.NaN);
    }

    @Override
    public String toString() {
        return kind == Kind.CANNOT_TELL ? "cannot tell" : String.format(Locale.ROOT, "%.2f to %.2f", lower, upper);
    }
}
