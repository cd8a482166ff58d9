package parchment.logbook;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import parchment.logbook.contents.LogbookException;
import parchment.sheet.Words;

/** Finds out which folder a session was started with. */
final class OpenedWith {
    static final String PROPERTY = "parchment.logbook";
    static final String VARIABLE = "PARCHMENT_LOGBOOK";

    private OpenedWith() {}

    static Logbook session(@Nullable String property, @Nullable String variable) {
        String named = property != null && !property.isBlank() ? property : variable;
        if (named == null || named.isBlank()) {
            throw new LogbookException(
                    "This session was started without a logbook. Write Logbook.open(\"folder\") with the folder"
                            + " that holds batches.csv or curves. To have one named in every notebook, open the notebooks with"
                            + " ./parchment open --logbook DIR, or install with ./parchment install --logbook DIR, or set the"
                            + " environment variable " + VARIABLE + " (or the system property " + PROPERTY
                            + ") to it before starting.");
        }
        return Logbook.open(named);
    }

    static Path path(String folder) {
        String stripped = folder.strip();
        try {
            if (stripped.equals("~") || stripped.startsWith("~/") || stripped.startsWith("~\\")) {
                Path home = Path.of(System.getProperty("user.home", ""));
                return stripped.length() <= 2 ? home : home.resolve(stripped.substring(2));
            }
            return Path.of(stripped);
        } catch (InvalidPathException e) {
            throw new LogbookException(
                    "The name " + Words.quote(folder) + " cannot be a folder's: " + e.getReason() + ".", e);
        }
    }
}
