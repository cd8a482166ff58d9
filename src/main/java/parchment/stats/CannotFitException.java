package parchment.stats;

/**
 * Says that the data cannot carry what was asked of them: too few complete rows or groups, nothing that varies, or numbers too large
 * to compute with.
 *
 * <p>It is about the data only. Wrong arguments (a column that does not exist, arrays of two lengths) stay an
 * {@link IllegalArgumentException}, so that whoever answers "cannot tell" catches this one and no fault of the program.
 */
public final class CannotFitException extends IllegalArgumentException {
    /** @param message what was to be fitted, what it needs, what there is */
    public CannotFitException(String message) {
        super(message);
    }
}
