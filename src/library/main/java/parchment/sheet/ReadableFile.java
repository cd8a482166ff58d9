package parchment.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;

/**
 * Opens a file of a logbook if it is a plain file inside its folder. A pipe or a device may never end, and a link out of the folder is not
 * followed: what a logbook shows stands in its folder.
 */
public final class ReadableFile {
    /** Says what stands there instead of a file that can be read. */
    public static final class Refused extends IOException {
        private static final long serialVersionUID = 1L;

        public Refused(String what) {
            super(what);
        }
    }

    private ReadableFile() {}

    /** Returns whether anything has the name, be it no file or a link that leads nowhere: then it has to be told of. */
    public static boolean isThere(Path file) {
        return Files.exists(file, LinkOption.NOFOLLOW_LINKS);
    }

    /**
     * Opens a file.
     *
     * @param folder the folder that a link may not lead out of
     * @throws Refused if it is a folder, a pipe, a device, or a link out of the folder
     */
    public static InputStream open(Path file, Path folder) throws IOException {
        if (leadsOut(file, folder)) {
            throw new Refused("a link out of the folder, which is not followed");
        }
        return open(file);
    }

    /**
     * Opens a file wherever it is.
     *
     * @throws Refused if it is a folder, a pipe or a device
     */
    public static InputStream open(Path file) throws IOException {
        if (Files.isDirectory(file)) {
            throw new Refused("a folder of that name");
        }
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            throw new Refused("no file but a pipe or a device");
        }
        return Files.newInputStream(file);
    }

    /** Returns whether a file is a link to something outside a folder; one that leads nowhere is told when it is opened. */
    public static boolean leadsOut(Path file, Path folder) {
        if (!Files.isSymbolicLink(file)) {
            return false;
        }
        try {
            return !file.toRealPath().startsWith(folder.toRealPath());
        } catch (IOException e) {
            return false;
        }
    }
}
