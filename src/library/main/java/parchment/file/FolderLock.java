package parchment.file;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Keeps two commands from writing into one folder at once. The system gives the lock back when its command ends, killed or not; on a disk that knows no
 * locks, such as some network drives, nobody is kept out.
 */
public final class FolderLock implements AutoCloseable {
    /** Named like what waits to become whole, so that it counts as nothing where a killed command has left it. */
    private static final String NAME = ".parchment-lock.part";

    private static final int ATTEMPTS = 5;

    private final Path file;
    private final @Nullable FileChannel channel;

    private FolderLock(Path file, @Nullable FileChannel channel) {
        this.file = file;
        this.channel = channel;
    }

    /**
     * Returns the lock of a folder; empty if another command has it.
     *
     * @throws IOException if nothing can be written into the folder
     */
    public static Optional<FolderLock> of(Path folder) throws IOException {
        return of(folder, () -> {});
    }

    /** Returns the lock, after doing something between opening the file and locking it. */
    static Optional<FolderLock> of(Path folder, Runnable opened) throws IOException {
        Path file = folder.resolve(NAME);
        for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
            try {
                Files.createFile(file);
            } catch (FileAlreadyExistsException e) {
                // A killed command has left it, or another one has it: the lock tells which.
            }
            String before = key(file);
            FileChannel channel;
            try {
                channel = FileChannel.open(file, StandardOpenOption.WRITE);
            } catch (NoSuchFileException e) {
                continue; // Who had the lock has just removed it.
            }
            boolean locks = true;
            try {
                boolean sameOpened = before.equals(key(file));
                opened.run();
                @Nullable FileLock lock = channel.tryLock();
                if (lock == null) {
                    channel.close();
                    return Optional.empty();
                }
                // Who had it before may have removed the file: then this lock is one on a file that nobody sees any
                // more.
                if (before.isEmpty() || !sameOpened || !before.equals(key(file))) {
                    channel.close();
                    continue;
                }
            } catch (OverlappingFileLockException e) {
                channel.close();
                return Optional.empty();
            } catch (IOException e) {
                locks = false;
            }
            if (!locks) {
                channel.close();
                Files.deleteIfExists(file);
            }
            return Optional.of(new FolderLock(file, locks ? channel : null));
        }
        return Optional.empty();
    }

    /** Returns what tells a file from another of its name; "" if there is none. */
    private static String key(Path file) throws IOException {
        try {
            return "key "
                    + Files.readAttributes(file, BasicFileAttributes.class).fileKey();
        } catch (NoSuchFileException e) {
            return "";
        }
    }

    @Override
    public void close() throws IOException {
        if (channel != null) {
            Files.deleteIfExists(file);
            channel.close();
        }
    }
}
