package parchment.gather;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import parchment.file.WholeFile;

/**
 * One file that is to be written into a logbook, so that what a gathering would write can be looked at before it is.
 *
 * @param place where it is to stand
 * @param text what it is to hold
 * @param replaces whether one may be there
 */
record PlannedFile(Path place, Text text, Replaces replaces) {
    /** Gives a text when it is to be written: thousands of curves need not be held at once. */
    interface Text {
        String read() throws IOException;
    }

    enum Replaces {
        NOTHING,
        AN_EARLIER_ONE
    }

    /** Writes what is planned, one file after the other. */
    interface Doing {
        void write(PlannedFile file) throws IOException;
    }

    /** Writes it whole. */
    void write() throws IOException {
        Path folder = place.toAbsolutePath().getParent();
        if (folder != null) {
            Files.createDirectories(folder);
        }
        WholeFile file = WholeFile.at(place);
        (replaces == Replaces.NOTHING ? file.ifNew() : file).write(text.read());
    }
}
