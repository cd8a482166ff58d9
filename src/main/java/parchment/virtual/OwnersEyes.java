package parchment.virtual;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;

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
        Path above = folder.toAbsolutePath().getParent();
        if (above != null) {
            Files.createDirectories(above);
        }
        if (!Files.exists(folder)) {
            Files.createDirectory(folder, rights(folder, "rwx------"));
        }
    }

    /**
     * Writes a file in UTF-8; one that is there already is written over and keeps its rights.
     *
     * @throws IOException if it cannot be written
     */
    public static void write(Path file, String text) throws IOException {
        if (!Files.exists(file)) {
            Files.createFile(file, rights(file, "rw-------")); // Before the text is in it.
        }
        Files.writeString(file, text, StandardCharsets.UTF_8);
    }

    private static FileAttribute<?>[] rights(Path path, String rights) throws IOException {
        Path above = path.toAbsolutePath().getParent();
        boolean known = above != null && Files.getFileStore(above).supportsFileAttributeView("posix");
        return known
                ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(rights))}
                : new FileAttribute<?>[0];
    }
}
