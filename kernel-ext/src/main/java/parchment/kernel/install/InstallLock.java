package parchment.kernel.install;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.jspecify.annotations.Nullable;

/**
 * Lets one install at a time work in a folder; the others wait. A killed install holds nothing: the system takes the lock back. The file
 * stays, for a lock on a file that is gone keeps nobody out.
 */
final class InstallLock implements AutoCloseable {
    private static final String FILE = "install.lock";
    private static final long POLL_MS = 100;

    private final FileChannel channel;

    private InstallLock(FileChannel channel) {
        this.channel = channel;
    }

    /** Waits until no other install is at work in the folder. */
    static InstallLock take(Path folder) throws IOException, InterruptedException {
        FileChannel channel =
                FileChannel.open(folder.resolve(FILE), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        try {
            while (!isTaken(channel)) {
                Thread.sleep(POLL_MS);
            }
        } catch (InterruptedException e) {
            channel.close();
            throw e;
        }
        return new InstallLock(channel);
    }

    private static boolean isTaken(FileChannel channel) {
        try {
            @Nullable FileLock lock = channel.tryLock();
            return lock != null;
        } catch (OverlappingFileLockException e) {
            return false; // Another thread of this program.
        } catch (IOException e) {
            return true; // A disk that knows no locks: better without than never.
        }
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
