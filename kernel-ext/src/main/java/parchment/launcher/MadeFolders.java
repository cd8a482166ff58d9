package parchment.launcher;

import java.io.IOException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.ReentrantLock;

/**
 * The folders that a command makes for what it writes: they are taken away again unless something was written in them.
 *
 * <p>That holds however the command ends: well, at a fault, or by Ctrl-C at any moment, which waits for what is being written by then. Begin before the
 * first folder is made.
 */
final class MadeFolders implements AutoCloseable {
    private final List<Path> made = new ArrayList<>();
    private final ReentrantLock lock = new ReentrantLock();
    private final Thread atEnd = new Thread(this::end, "empty folders are taken away");

    private MadeFolders() {}

    /** Something that writes. */
    @FunctionalInterface
    interface Writing {
        void write() throws IOException;
    }

    static MadeFolders begin() {
        MadeFolders folders = new MadeFolders();
        Runtime.getRuntime().addShutdownHook(folders.atEnd);
        return folders;
    }

    /**
     * Makes the folder if need be and returns it.
     *
     * @throws IllegalArgumentException if nothing can be written there; the message says why
     */
    Path folder(Path folder, LogbookChoice read) throws IOException {
        lock.lock();
        try {
            made.addAll(0, missing(folder));
            return OutputPlace.folder(folder, read);
        } finally {
            lock.unlock();
        }
    }

    /**
     * Makes the folder of a page if need be and returns the page's file.
     *
     * @throws IOException if something is there that is no page of ours
     */
    Path page(Path file, LogbookChoice read) throws IOException {
        lock.lock();
        try {
            missing(file).stream().skip(1).forEach(made::add);
            return OutputPlace.page(file, read);
        } finally {
            lock.unlock();
        }
    }

    /** Writes; Ctrl-C ends the program only when that is done. */
    void write(Writing writing) throws IOException {
        lock.lock();
        try {
            writing.write();
        } finally {
            lock.unlock();
        }
    }

    /** Returns what of a path is not there yet, the innermost first. */
    private static List<Path> missing(Path place) {
        List<Path> missing = new ArrayList<>();
        for (Path each = place.toAbsolutePath().normalize();
                each != null && Files.notExists(each);
                each = each.getParent()) {
            missing.add(each);
        }
        return missing;
    }

    /** Keeps the lock, so that no folder is made in the moment between this and the end of the program. */
    private void end() {
        lock.lock();
        removeEmpty();
    }

    private void removeEmpty() {
        for (Path each : made) {
            try {
                Files.deleteIfExists(each);
            } catch (DirectoryNotEmptyException e) {
                continue; // Something was written in it.
            } catch (IOException e) {
                continue; // What cannot be taken away stays; the command has its own answer.
            }
        }
    }

    @Override
    public void close() {
        lock.lock();
        try {
            Runtime.getRuntime().removeShutdownHook(atEnd);
            removeEmpty();
        } catch (IllegalStateException alreadyEnding) {
            removeEmpty(); // Ctrl-C has come in this moment; twice does no harm.
        } finally {
            lock.unlock();
        }
    }
}
