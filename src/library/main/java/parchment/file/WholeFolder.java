package parchment.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;

/**
 * A folder that is there with all that belongs into it, or not at all: filled aside, and moved into its place at the end.
 *
 * <p>{@code WholeFolder.at(place).fill(folder -> ...)} fills a folder beside the place, with a name of its own, and then gives it the
 * right one. A folder that is there and empty stays the same folder; it is filled from one inside it. What a killed command has left
 * counts as nothing.
 */
public final class WholeFolder {
    private final Path place;

    private WholeFolder(Path place) {
        this.place = place;
    }

    /** Fills a folder. */
    public interface Filling<T> {
        /** Writes everything into the folder given, which is there and empty, and returns what was made. */
        T into(Path folder) throws IOException;
    }

    /** Returns the folder of that path, which need not be there. */
    public static WholeFolder at(Path place) {
        return new WholeFolder(place);
    }

    /** Returns whether nothing would be in the way: there is nothing of that name, or an empty folder. */
    public boolean isFree() throws IOException {
        if (!Files.exists(place)) {
            return true;
        }
        if (!Files.isDirectory(place)) {
            return false;
        }
        return inside(place).isEmpty();
    }

    /** Tells whether the folder, which is there, takes a new file: some of the system's own do not, whoever asks. */
    public boolean takesFiles() {
        try {
            Aside.discard(Aside.make(place, place.resolve("tried"), Files::createFile));
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    /**
     * Fills the folder and returns what the filling returned.
     *
     * @throws NotWrittenException if something is there already or it cannot be written; the message says why, and nothing of it is left
     */
    public <T> T fill(Filling<T> filling) throws IOException {
        try {
            if (!isFree()) {
                throw new NotWrittenException("'" + place
                        + "' holds something already, and was left as it is. Name a folder that does not exist yet.");
            }
            Path target = place.toAbsolutePath().normalize();
            Path above = target.getParent();
            boolean there = Files.isDirectory(target);
            if (!there && above != null) {
                Files.createDirectories(above);
            }
            Path holder = there || above == null ? target : above;
            if (there) {
                Aside.sweep(target);
            }
            Path waiting = Aside.make(holder, target, Files::createDirectory);
            boolean moved = false;
            try {
                T made = filling.into(waiting);
                if (there || above == null) {
                    for (Path each : inside(waiting)) {
                        Files.move(each, target.resolve(waiting.relativize(each)));
                    }
                    Aside.discard(waiting); // Nothing is in it any more.
                } else {
                    Files.move(waiting, target); // Fails where another has been quicker.
                }
                moved = true;
                return made;
            } finally {
                if (!moved) {
                    Aside.discard(waiting);
                }
            }
        } catch (IOException e) {
            throw new NotWrittenException(place, e);
        }
    }

    /**
     * Fills the folder anew, in the place of an earlier one, which is removed once the new one is whole.
     *
     * @throws NotWrittenException if it cannot be written; the message says why, and the earlier one is still there
     */
    public <T> T replace(Filling<T> filling) throws IOException {
        if (isFree()) {
            return fill(filling);
        }
        try {
            Path target = place.toAbsolutePath().normalize();
            Path above = target.getParent();
            if (!Files.isDirectory(target) || above == null) {
                throw new NotWrittenException(
                        "'" + place + "' was not written: it is not a folder that can be replaced.");
            }
            Path waiting = Aside.make(above, target, Files::createDirectory);
            boolean moved = false;
            try {
                T made = filling.into(waiting);
                // Its time may be of long ago, and would make another take it for what a killed command has left.
                Files.setLastModifiedTime(target, FileTime.from(Instant.now()));
                Path old = Aside.make(above, target, folder -> Files.move(target, folder));
                try {
                    Files.move(waiting, target);
                } catch (IOException e) {
                    Files.move(old, target);
                    throw e;
                }
                moved = true;
                Aside.discard(old);
                return made;
            } finally {
                if (!moved) {
                    Aside.discard(waiting);
                }
            }
        } catch (IOException e) {
            throw new NotWrittenException(place, e);
        }
    }

    /**
     * Works with a folder that only its owner can look into, among the temporary files, and takes it away at the end; what killed commands have left there an hour ago and
     * longer is taken away first.
     *
     * @throws IOException if the folder cannot be made, or the work throws it
     */
    public <T> T work(Filling<T> work) throws IOException {
        Path temporary = Path.of(System.getProperty("java.io.tmpdir")).toAbsolutePath();
        Aside.sweep(temporary);
        FileAttribute<?>[] owner =
                temporary.getFileSystem().supportedFileAttributeViews().contains("posix")
                        ? new FileAttribute<?>[] {
                            PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------"))
                        }
                        : new FileAttribute<?>[0];
        Path waiting = Aside.make(temporary, place, folder -> Files.createDirectory(folder, owner));
        try {
            return work.into(waiting);
        } finally {
            Aside.discard(waiting);
        }
    }

    private static List<Path> inside(Path folder) throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(each -> !Aside.is(each)).sorted().toList();
        }
    }

    /**
     * Removes a folder with all that is in it, following no link; nothing happens if it is not there.
     *
     * @throws IOException if something in it cannot be removed
     */
    public static void delete(Path place) throws IOException {
        Aside.delete(place);
    }

    @Override
    public String toString() {
        return "the folder " + place;
    }
}
