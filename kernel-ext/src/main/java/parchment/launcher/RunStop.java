package parchment.launcher;

import java.io.IOException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import parchment.kernel.Evaluator;

/** A run of notebooks that Ctrl-C ends: the cell at work stops, nothing of its notebook is written, and no folder is left that was made for it. */
final class RunStop implements Runnable {
    /** What a program ends with that Ctrl-C has ended. */
    static final int EXIT_CODE = 130;

    private final AtomicReference<Optional<Evaluator>> running = new AtomicReference<>(Optional.empty());
    private volatile boolean asked;

    /** Stops the cell at work; those after it do not begin. */
    @Override
    public void run() {
        asked = true;
        running.get().ifPresent(Evaluator::interrupt);
    }

    /** Names where the cells run that are to be stopped; call before the first of them. */
    void of(Evaluator evaluator) {
        running.set(Optional.of(evaluator));
    }

    boolean isAsked() {
        return asked;
    }

    /** Returns the folders of a path that are not there yet, the innermost first: if the run is stopped, they are taken away again. */
    static List<Path> missing(Path folder) {
        List<Path> missing = new ArrayList<>();
        for (Path each = folder.toAbsolutePath().normalize();
                each != null && Files.notExists(each);
                each = each.getParent()) {
            missing.add(each);
        }
        return missing;
    }

    /** Takes away folders in which nothing was written. */
    static void removeEmpty(List<Path> folders) throws IOException {
        for (Path each : folders) {
            try {
                Files.deleteIfExists(each);
            } catch (DirectoryNotEmptyException e) {
                return; // An earlier notebook of the same command is in it, and in those above.
            }
        }
    }
}
