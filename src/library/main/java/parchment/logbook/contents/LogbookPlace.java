package parchment.logbook.contents;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import parchment.logbook.LogbookFiles;

/**
 * Tells whether a place lies in a logbook, so that nothing of ours is ever written there.
 *
 * <p>A logbook is a folder with a file {@code batches.csv} or {@code logbook.properties}, or one with a folder {@code curves} of CSV files.
 * One far above the place counts only if it has {@code logbook.properties}, or both of the others: a single table may have been left anywhere,
 * such as among downloads. {@link #anyAround} makes no such exception.
 */
public final class LogbookPlace {
    private LogbookPlace() {}

    /**
     * Returns the logbook that the place is or lies in, through links too; nothing if it lies in none. The place need not be there.
     */
    public static Optional<Path> around(Path place) {
        Path real = real(place);
        Path there = real;
        while (there != null && !Files.exists(there)) {
            there = there.getParent();
        }
        for (Path folder = real; folder != null; folder = folder.getParent()) {
            boolean near = folder.equals(real) || folder.equals(real.getParent());
            boolean table = has(folder, LogbookFiles.BATCHES);
            boolean curves = (near || table) && holdsCurves(folder);
            boolean logbook = near || folder.equals(there) ? table || curves : table && curves;
            if (logbook || has(folder, LogbookFiles.SETTINGS)) {
                return Optional.of(folder);
            }
        }
        return Optional.empty();
    }

    /**
     * Returns the nearest folder that may be a logbook and holds the place, however deep; nothing if there is none. For what is refused in a
     * logbook because somebody else may have put it there: a place counts by its own path and by where its links lead.
     */
    public static Optional<Path> anyAround(Path place) {
        Path named = place.toAbsolutePath().normalize();
        return anyAbove(named).or(() -> anyAbove(real(place)));
    }

    private static Optional<Path> anyAbove(Path place) {
        for (Path folder = place; folder != null; folder = folder.getParent()) {
            if (has(folder, LogbookFiles.BATCHES) || has(folder, LogbookFiles.SETTINGS) || holdsCurves(folder)) {
                return Optional.of(folder);
            }
        }
        return Optional.empty();
    }

    /** Returns whether a place is a folder or lies in it, through links too. */
    public static boolean isIn(Path place, Path folder) {
        return real(place).startsWith(real(folder));
    }

    private static boolean has(Path folder, String file) {
        return Files.exists(folder.resolve(file));
    }

    private static boolean holdsCurves(Path folder) {
        Path curves = folder.resolve(LogbookFiles.CURVES);
        if (!Files.isDirectory(curves)) {
            return false;
        }
        try (Stream<Path> files = Files.list(curves)) {
            return files.anyMatch(
                    file -> file.toString().toLowerCase(Locale.ROOT).endsWith(".csv"));
        } catch (IOException e) {
            return true; // It may be one; nothing is written where that cannot be seen.
        }
    }

    /** Returns the path with links resolved, as far as it is there. */
    public static Path real(Path path) {
        Path there = path.toAbsolutePath().normalize();
        List<Path> rest = new ArrayList<>();
        while (there != null && !Files.exists(there)) {
            rest.add(0, there.getFileName());
            there = there.getParent();
        }
        try {
            Path real = there == null ? path.toAbsolutePath() : there.toRealPath();
            for (Path part : rest) {
                real = real.resolve(part);
            }
            return real;
        } catch (IOException e) {
            return path.toAbsolutePath().normalize();
        }
    }
}
