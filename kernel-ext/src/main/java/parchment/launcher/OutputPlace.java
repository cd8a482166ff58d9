package parchment.launcher;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import parchment.file.NotWrittenException;
import parchment.file.Rights;
import parchment.file.WholeFolder;
import parchment.logbook.contents.LogbookPlace;
import parchment.notebook.OurPage;

/** Where a command may write: never in a logbook, and never over what somebody else wrote. */
final class OutputPlace {
    private OutputPlace() {}

    /**
     * Returns the place that was named with an option, as a whole path.
     *
     * @param usual what is taken where none was named
     * @throws IllegalArgumentException if the name is empty, as of a variable that was never set; the message says so
     */
    static Path named(String option, @Nullable Path named, Path usual) {
        if (named == null) {
            return usual;
        }
        if (named.toString().isBlank()) {
            throw new IllegalArgumentException(
                    option + " was given an empty name. Name a place, or leave the option out.");
        }
        return named.toAbsolutePath();
    }

    /**
     * Returns the place as it was given.
     *
     * @throws IllegalArgumentException if it is a logbook or lies in one; the message names the logbook
     */
    static Path outsideLogbooks(Path place) {
        LogbookPlace.around(place).ifPresent(logbook -> {
            throw inLogbook(place, logbook);
        });
        return place;
    }

    /** Checks a place against the logbook that is being read as well, which may be one of curves alone. */
    static Path outsideLogbooks(Path place, LogbookChoice read) {
        @Nullable Path logbook = read.folder();
        if (logbook != null && LogbookPlace.isIn(place, logbook)) {
            throw inLogbook(place, logbook);
        }
        return outsideLogbooks(place);
    }

    /**
     * Checks the place of a folder that is made only if it is not there or empty.
     *
     * @throws IllegalArgumentException if it lies in a logbook, or cannot be made there; the message says why
     */
    static Path newFolder(Path place) {
        Path above = place.toAbsolutePath().normalize().getParent();
        if (above != null) {
            outsideLogbooks(above);
        }
        if (Files.isSymbolicLink(place)) {
            outsideLogbooks(place); // Filled where the link leads.
        }
        @Nullable
        Path there = firstThere(
                Files.isRegularFile(place) ? above : place.toAbsolutePath().normalize());
        if (there != null && !Files.isDirectory(there)) {
            throw noFolder(place, there);
        }
        if (there != null && !Files.isWritable(there)) {
            throw unwritable(there);
        }
        return place;
    }

    /** Returns the path, or what is the nearest above it that is there. */
    private static @Nullable Path firstThere(@Nullable Path place) {
        Path there = place;
        while (there != null && !Files.exists(there)) {
            there = there.getParent();
        }
        return there;
    }

    private static IllegalArgumentException noFolder(Path place, Path there) {
        return new IllegalArgumentException(
                place.toAbsolutePath().normalize().equals(there)
                        ? "'" + place + "' is a file, where a folder is needed. Name another."
                        : "'" + place + "' cannot be made: '" + there
                                + "' is a file, where a folder is needed. Name another.");
    }

    private static IllegalArgumentException inLogbook(Path place, Path logbook) {
        return new IllegalArgumentException("'" + place + "' is or lies in the logbook '" + logbook
                + "' (a folder with batches.csv, logbook.properties or curves). A logbook is only ever read; nothing was written."
                + " Name a place outside it.");
    }

    /**
     * Makes the folder if need be and returns it.
     *
     * @throws IllegalArgumentException if nothing can be written there; the message says why
     */
    static Path folder(Path folder, LogbookChoice read) throws IOException {
        outsideLogbooks(folder, read);
        @Nullable Path there = firstThere(folder.toAbsolutePath().normalize());
        if (there != null && !Files.isDirectory(there)) {
            throw noFolder(folder, there);
        }
        if (there != null && !Files.isWritable(there)) {
            throw unwritable(there);
        }
        try {
            Rights.USUAL.makeFolder(folder);
        } catch (NotWrittenException e) {
            if (there != null
                    && Files.isDirectory(there)
                    && !WholeFolder.at(there).takesFiles()) {
                throw takesNothing(there);
            }
            throw e;
        }
        if (!Files.isWritable(folder)) {
            throw unwritable(folder);
        }
        if (!WholeFolder.at(folder).takesFiles()) {
            throw takesNothing(folder);
        }
        return folder;
    }

    private static IllegalArgumentException takesNothing(Path folder) {
        return new IllegalArgumentException("Nothing can be written in the folder '" + folder
                + "': it takes no new files (the system keeps it for itself, or the disk is full)."
                + " Name a place in a folder of your own.");
    }

    private static IllegalArgumentException unwritable(Path folder) {
        return new IllegalArgumentException(
                "Nothing can be written in the folder '" + folder + "': that is not permitted to you. Name another.");
    }

    /**
     * Makes the folder of a page if need be and returns the page's file.
     *
     * @throws IOException if something is there that is no page of ours
     */
    static Path page(Path file, LogbookChoice read) throws IOException {
        outsideLogbooks(file, read);
        OurPage.check(file);
        Path folder = file.toAbsolutePath().normalize().getParent();
        if (folder != null) {
            folder(folder, read);
        }
        return file;
    }
}
