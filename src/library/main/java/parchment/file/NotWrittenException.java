package parchment.file;

import java.io.IOException;
import java.nio.file.Path;

/** Tells the person in words why a file or folder was not written. What was there before is still there, unchanged. */
public final class NotWrittenException extends IOException {
    private static final long serialVersionUID = 1L;

    NotWrittenException(String words) {
        super(words);
    }

    /** Says why a file or folder could not be written. */
    NotWrittenException(Path place, IOException cause) {
        super(cause instanceof NotWrittenException ? cause.getMessage() : words(place, cause), cause);
    }

    private static String words(Path place, IOException cause) {
        return "'" + place + "' was not written: " + FileWords.reason(cause) + ".";
    }
}
