package parchment.logbook.contents;

/** Tells the reader of a logbook what went wrong, in words that are complete without a stack trace. */
public final class LogbookException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** Creates an exception whose message says what was found, where, what was expected and what to do next. */
    public LogbookException(String message) {
        super(message);
    }

    /** Creates an exception with the failure that led to it. */
    public LogbookException(String message, Throwable cause) {
        super(message, cause);
    }
}
