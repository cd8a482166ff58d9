package parchment.launcher;

import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;

/** Turns an error into a line for the person at the terminal. */
final class Words {
    private Words() {}

    static String of(Exception exception) {
        String message = exception.getMessage();
        if (exception instanceof NoSuchFileException) {
            return "There is no file or folder " + message + ".";
        }
        if (exception instanceof AccessDeniedException) {
            return "Reading or writing " + message + " is not permitted.";
        }
        if (exception instanceof IllegalArgumentException || exception instanceof IllegalStateException) {
            return message == null ? exception.toString() : message;
        }
        return exception.getClass().getSimpleName() + (message == null ? "" : ": " + message);
    }
}
