package parchment.launcher;

import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * Which logbook folder a session reads: the one named, else the one in the environment, else the demo.
 *
 * @param folder the folder, or null where none is named and no demo is there
 */
record LogbookChoice(@Nullable Path folder) {
    static final String PROPERTY = "parchment.logbook";
    static final String ENVIRONMENT = "PARCHMENT_LOGBOOK";

    /** @throws IllegalArgumentException if a folder was named that is not there */
    static LogbookChoice of(@Nullable Path named, Places places) {
        if (named != null) {
            return new LogbookChoice(existing(named));
        }
        String environment = System.getenv(ENVIRONMENT);
        if (environment != null && !environment.isBlank()) {
            return new LogbookChoice(existing(Path.of(environment)));
        }
        return new LogbookChoice(places.demoLogbook());
    }

    /** @throws IllegalArgumentException if it is not a folder */
    static Path existing(Path folder) {
        if (!Files.isDirectory(folder)) {
            throw new IllegalArgumentException("There is no logbook folder " + folder.toAbsolutePath()
                    + ". A logbook is a folder of CSV files; name it with --logbook.");
        }
        return folder.toAbsolutePath().normalize();
    }

    /** Hands the choice to the library of this process. */
    void asProperty() {
        if (folder != null) {
            System.setProperty(PROPERTY, folder.toString());
        }
    }

    /** Hands the choice to a process to be started. */
    void inEnvironment(ProcessBuilder builder) {
        if (folder != null) {
            builder.environment().put(ENVIRONMENT, folder.toString());
        }
    }
}
