package parchment.virtual.people;

import java.io.IOException;
import java.nio.file.Path;
import parchment.file.Rights;
import parchment.file.WholeFile;

/**
 * Files and folders that only their owner can read, on systems that know such rights. Elsewhere, as on a memory stick, they are
 * made without; there whoever holds the stick can read all of it anyway.
 */
public final class OwnersEyes {
    private OwnersEyes() {}

    /**
     * Makes a folder and those above it; only the last is kept from others, and one that is there already stays as it is.
     *
     * @throws IOException if it cannot be made
     */
    public static void makeFolder(Path folder) throws IOException {
        Rights.OWNER.makeFolder(folder);
    }

    /**
     * Writes a file in UTF-8; one that is there already is written over and keeps its rights.
     *
     * @throws IOException if it cannot be written
     */
    public static void write(Path file, String text) throws IOException {
        WholeFile.at(file).with(Rights.OWNER).write(text);
    }
}
