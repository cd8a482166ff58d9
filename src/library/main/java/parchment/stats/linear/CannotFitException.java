package parchment.stats.linear;

/**
 * Tells a caller that the data cannot carry what was asked of them, apart from a mistake of the program: too few complete rows or groups,
 * nothing that varies, or numbers too large to compute with.
 *
 * <p>It is about the data only. Wrong arguments (a column that does not exist, arrays of two lengths) stay an
 * {@link IllegalArgumentException}, so that whoever answers "cannot tell" catches this one and no fault of the program.
 */
public final class CannotFitException extends IllegalArgumentException {
    /** @param message what was to be fitted, what it needs, what there is */
    public CannotFitException(String message) {
        super(message);
    }

    /**
     * Returns the values, if their squares and fourth powers are numbers that a double can hold.
     *
     * @throws CannotFitException if the largest is above 1e30 in size, or they are all below 1e-30
     */
    public static double[] unlessComputable(String job, String what, double[] values) {
        double largest = 0;
        for (double value : values) {
            largest = Double.isNaN(value) ? largest : Math.max(largest, Math.abs(value));
        }
        if (largest > 1e30 || (largest > 0 && largest < 1e-30)) {
            throw new CannotFitException(job + " needs numbers between 1e-30 and 1e30 in size, but " + what
                    + " goes up to " + Checks.number(largest) + ". Look for a slip of the pen, or take another unit.");
        }
        return values;
    }
}
