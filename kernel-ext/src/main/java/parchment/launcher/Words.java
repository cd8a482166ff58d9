package parchment.launcher;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.InvalidPathException;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import parchment.file.FileWords;

/** Turns an error into a line for the person at the terminal. */
final class Words {
    private static final Pattern CLASS =
            Pattern.compile("\\b(?:[a-z]\\w*\\.)+[A-Z]\\w*|\\b[A-Z]\\w*(?:Exception|Error)\\b");

    private Words() {}

    static String of(Throwable failure) {
        @Nullable String message = failure.getMessage();
        if (failure instanceof UncheckedIOException unchecked) {
            return FileWords.of(unchecked);
        }
        if (failure instanceof IOException file) {
            return FileWords.of(file);
        }
        if (failure instanceof InvalidPathException path) {
            return "'" + path.getInput() + "' is no name that a file can have here.";
        }
        if (failure instanceof InterruptedException) {
            return "Stopped before it was done.";
        }
        if (failure instanceof OutOfMemoryError) {
            return "That needs more memory than Java was given ("
                    + (Runtime.getRuntime().maxMemory() >> 20) + " MB). More of it: set JAVA_TOOL_OPTIONS to -Xmx4g.";
        }
        boolean refusal = failure instanceof IllegalArgumentException
                || failure instanceof IllegalStateException
                || failure.getClass().getName().startsWith("parchment.");
        if (refusal && message != null) {
            return message;
        }
        boolean told = message != null && !namesAClass(failure, message);
        return "Parchment stopped at a fault of its own, not of yours" + (told ? ": " + message : ".")
                + "\nTo report it, run the same again with PARCHMENT_TRACE=1 before the command, and send what it prints.";
    }

    /** What Java says of a missing or unfit value is for who writes programs. */
    private static boolean namesAClass(Throwable failure, String message) {
        return failure instanceof NullPointerException
                || failure instanceof ClassCastException
                || CLASS.matcher(message).find();
    }
}
