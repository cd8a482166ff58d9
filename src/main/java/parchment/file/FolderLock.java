package parchment.file;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Keeps two commands from writing into one folder at once. The system gives the lock back when its command ends, killed or not; on a disk that knows no
 * locks, such as some network drives, nobody is kept out.
 */
public final class FolderLock implements AutoCloseable {
    /** Named like what waits to become whole, so that it counts as nothing where a killed command has left it. */
    private static final String NAME = ".parchment-lock.part";

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
        Path file = folder.resolve(NAME);
        FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        try {
            @Nullable FileLock lock = channel.tryLock();
            // Who had it before has removed the file: a third command may hold a lock on a new one.
            if (lock == null || !Files.exists(file)) {
                channel.close();
                return Optional.empty();
            }
        } catch (OverlappingFileLockException e) {
            channel.close();
            return Optional.empty();
        } catch (IOException e) {
            channel.close();
            Files.deleteIfExists(file);
            return Optional.of(new FolderLock(file, null));
        }
        return Optional.of(new FolderLock(file, channel));
    }

    @Override
    public void close() throws IOException {
        if (channel != null) {
            Files.deleteIfExists(file);
            channel.close();
        }
    }
}
