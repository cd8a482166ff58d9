package parchment.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermissions;

/** Who may read what we make, on systems that know such rights; elsewhere, as on a memory stick, there is nothing to say. */
public enum Rights {
    /** As the system gives them to every new file or folder. */
    USUAL,
    /** The owner alone may read and write. */
    OWNER;

    FileAttribute<?>[] ofFile(Path file) throws IOException {
        return of(file, "rw-------");
    }

    FileAttribute<?>[] ofFolder(Path folder) throws IOException {
        return of(folder, "rwx------");
    }

    private FileAttribute<?>[] of(Path place, String rights) throws IOException {
        Path above = place.toAbsolutePath().getParent();
        boolean known =
                this == OWNER && above != null && Files.getFileStore(above).supportsFileAttributeView("posix");
        return known
                ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(rights))}
                : new FileAttribute<?>[0];
    }

    /** Returns the rights with which a file's successor is made, so that it is open to nobody else while it is written. */
    static FileAttribute<?>[] ofSuccessor(Path file) throws IOException {
        PosixFileAttributeView before = Files.getFileAttributeView(file, PosixFileAttributeView.class);
        return before == null
                ? new FileAttribute<?>[0]
                : new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(before.readAttributes().permissions())
                };
    }

    /** Gives one file the rights of another, where the system knows rights. */
    static void copy(Path from, Path to) throws IOException {
        PosixFileAttributeView before = Files.getFileAttributeView(from, PosixFileAttributeView.class);
        PosixFileAttributeView after = Files.getFileAttributeView(to, PosixFileAttributeView.class);
        if (before != null && after != null) {
            after.setPermissions(before.readAttributes().permissions());
        }
    }

    /**
     * Makes a folder with these rights, and those above it with the usual ones; one that is there already stays as it is.
     *
     * @throws NotWrittenException if it cannot be made; the message says why
     */
    public void makeFolder(Path folder) throws IOException {
        try {
            Path above = folder.toAbsolutePath().getParent();
            if (above != null) {
                Files.createDirectories(above);
            }
            if (!Files.isDirectory(folder)) {
                Files.createDirectory(folder, ofFolder(folder));
            }
        } catch (IOException e) {
            throw new NotWrittenException(folder, e);
        }
    }
}
