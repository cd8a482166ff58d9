package parchment.file;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;

/**
 * A file that is written whole or not at all: written aside in the same folder, and moved into its place at the end.
 *
 * <p>{@code WholeFile.at(Path.of("week.html")).write(page)} writes, over what is there; the folder must be there. Usual are: over an
 * earlier file, whose rights are kept, with the rights that the system gives to a new one. A link is followed: what it points to is
 * replaced, and the link stays. What is no file, such as a pipe, is written into directly.
 */
public final class WholeFile {
    /** What may stand in the file's place before. */
    private enum Before {
        ANYTHING,
        NOTHING
    }

    private final Path file;
    private final Before before;
    private final Rights rights;

    private WholeFile(Path file, Before before, Rights rights) {
        this.file = file;
        this.before = before;
        this.rights = rights;
    }

    /** Fills a file with text. */
    public interface Text {
        /** Writes; the writer is closed by who called. */
        void into(Writer writer) throws IOException;
    }

    /** Makes a file, such as with another program. */
    public interface Making {
        /** Writes everything into the file given, which is there and empty. */
        void into(Path file) throws IOException;
    }

    /** Fills a file with bytes. */
    private interface Bytes {
        void into(OutputStream out) throws IOException;
    }

    /** Returns the file of that path, which need not be there. */
    public static WholeFile at(Path file) {
        return new WholeFile(file, Before.ANYTHING, Rights.USUAL);
    }

    /** Returns the same file, to be written only if nothing of that name is there, not even at the last moment (on a disk without hard links: but for an instant). */
    public WholeFile ifNew() {
        return new WholeFile(file, Before.NOTHING, rights);
    }

    /** Returns the same file, to be made with these rights if it is new. */
    public WholeFile with(Rights chosen) {
        return new WholeFile(file, before, chosen);
    }

    /**
     * Writes text in UTF-8 and returns the path.
     *
     * @throws NotWrittenException if it cannot be written; the message says why, and what was there before is still there
     */
    public Path write(String text) throws IOException {
        return fill(out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
    }

    /**
     * Writes text in UTF-8 as it is made, and returns the path.
     *
     * @throws NotWrittenException if it cannot be written; the message says why, and what was there before is still there
     */
    public Path write(Text text) throws IOException {
        return fill(out -> {
            Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
            text.into(writer);
            writer.flush();
        });
    }

    /**
     * Writes bytes, such as a picture's, and returns the path.
     *
     * @throws NotWrittenException if it cannot be written; the message says why, and what was there before is still there
     */
    public Path write(byte[] bytes) throws IOException {
        return fill(out -> out.write(bytes));
    }

    /**
     * Copies a file with the time of its last change, and returns the path.
     *
     * @throws NotWrittenException if it cannot be written; the message says why, and what was there before is still there
     */
    public Path copy(Path from) throws IOException {
        FileTime changed = Files.getLastModifiedTime(from);
        Path copied = fill(out -> Files.copy(from, out));
        Files.setLastModifiedTime(copied, changed);
        return copied;
    }

    private Path fill(Bytes bytes) throws IOException {
        return make(place -> {
            try (OutputStream out = Files.newOutputStream(place)) {
                bytes.into(out);
            }
        });
    }

    /**
     * Has the file made under another name in its folder, and returns the path.
     *
     * @throws NotWrittenException if it cannot be written; the message says why, and what was there before is still there
     */
    public Path make(Making making) throws IOException {
        try {
            Path target = Files.isSymbolicLink(file) && Files.exists(file) ? file.toRealPath() : file.toAbsolutePath();
            if (Files.isDirectory(target)) {
                throw new NotWrittenException("'" + file + "' was not written: a folder of that name stands there.");
            }
            if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
                checkReplaceable(target);
                if (!Files.isRegularFile(target)) {
                    making.into(target); // A pipe or a device has no place that another could be moved into.
                    return file;
                }
            }
            aside(target, making);
            return file;
        } catch (IOException e) {
            throw new NotWrittenException(file, e);
        }
    }

    private void checkReplaceable(Path target) throws IOException {
        if (before == Before.NOTHING) {
            throw new FileAlreadyExistsException(target.toString());
        }
        if (Files.isSymbolicLink(target)) { // One that leads to a file was followed before.
            throw new NotWrittenException("'" + file
                    + "' was not written: it is a link that leads nowhere. Remove it, or make what it" + " leads to.");
        }
        if (!Files.isWritable(target)) {
            throw new AccessDeniedException(target.toString()); // Moving would pass over what its owner has locked.
        }
    }

    private void aside(Path target, Making making) throws IOException {
        Path folder = target.getParent();
        if (folder == null) {
            throw new FileAlreadyExistsException(target.toString());
        }
        Path waiting = Aside.make(
                folder,
                target,
                place -> Files.createFile(
                        place, Files.exists(target) ? Rights.ofSuccessor(target) : rights.ofFile(place)));
        boolean moved = false;
        try {
            making.into(waiting);
            if (Files.exists(target)) {
                Rights.copy(target, waiting);
            }
            move(waiting, target);
            moved = true;
        } finally {
            if (!moved) {
                Aside.discard(waiting);
            }
        }
    }

    private void move(Path waiting, Path target) throws IOException {
        if (before == Before.NOTHING) {
            moveIfNew(waiting, target);
            return;
        }
        try {
            Files.move(waiting, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(waiting, target, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** Fails where another has been quicker. A move would look first and then replace; a second name is given or refused in one step. */
    private static void moveIfNew(Path waiting, Path target) throws IOException {
        try {
            Files.createLink(target, waiting);
        } catch (FileAlreadyExistsException e) {
            throw e;
        } catch (IOException | UnsupportedOperationException e) {
            Files.move(
                    waiting,
                    target); // A disk without second names, such as a memory stick: looks first, and that is all it
            // can.
            return;
        }
        Aside.discard(waiting);
    }

    @Override
    public String toString() {
        return "the file " + file;
    }
}
