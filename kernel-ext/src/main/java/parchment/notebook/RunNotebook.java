package parchment.notebook;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;

/**
 * A notebook as a run leaves it: with its outputs, and in its metadata a seal of what its cells say. A file with a whole seal was written
 * by a run and not changed by hand since, so the next run may take its place.
 */
public final class RunNotebook {
    private RunNotebook() {}

    /** Writes the notebook with its seal, over what {@link #check} has found to be no loss. */
    public static void write(Notebook notebook, Path file) throws IOException {
        notebook.withSeal(seal(notebook)).write(file);
    }

    /**
     * Checks that a run of a notebook can be written there without losing what somebody wrote: nothing is there, or what a run has left,
     * or the same cells.
     *
     * @throws IOException if that is not so; the message says what to do
     */
    public static void check(Path file, Notebook toRun) throws IOException {
        if (!Files.exists(file) || (Files.isRegularFile(file) && Files.size(file) == 0)) {
            return;
        }
        if (Files.isDirectory(file)) {
            throw refused(file, "is a folder, where the notebook would be written.");
        }
        Optional<Notebook> there = there(file);
        boolean ours = there.isPresent()
                && (there.get().seal().equals(Optional.of(seal(there.get())))
                        || seal(there.get()).equals(seal(toRun)));
        if (!ours) {
            throw refused(
                    file,
                    "is there already, and is not what a run has left (it is of somebody's own, or was changed since), so it was"
                            + " left as it is.");
        }
    }

    private static Optional<Notebook> there(Path file) throws IOException {
        try {
            return Optional.of(Notebook.read(file));
        } catch (IllegalArgumentException e) {
            return Optional.empty(); // No notebook, or a torn one.
        }
    }

    private static IOException refused(Path file, String why) {
        return new IOException("'" + file + "' " + why + " Name another folder with --out, or move that one away.");
    }

    /** The kinds and texts of the cells; outputs may differ, for they come again. */
    private static String seal(Notebook notebook) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            List<String> cells = notebook.cells().stream()
                    .map(cell -> cell.kind() + "\n" + cell.source().length() + "\n" + cell.source())
                    .toList();
            cells.forEach(cell -> digest.update(cell.getBytes(StandardCharsets.UTF_8)));
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("This Java lacks SHA-256, which every Java has.", e);
        }
    }
}
