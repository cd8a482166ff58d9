package parchment.gather;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import parchment.logbook.Logbook;
import parchment.logbook.LogbookFiles;

/** Finds out whether gathered files come from a virtual roastery, so that the new logbook says so too. */
final class GatherProvenance {
    private GatherProvenance() {}

    /** Looks for a logbook's settings in the folder, in those within it, and beside it, where a folder of curves has them. */
    static Logbook.Provenance of(Path folder, int deepest) throws IOException {
        List<Path> settings = new ArrayList<>();
        FilesWithin.of(folder, deepest).paths().stream()
                .filter(path -> path.endsWith(LogbookFiles.SETTINGS))
                .forEach(settings::add);
        Path parent = folder.toAbsolutePath().normalize().getParent();
        if (parent != null) {
            settings.add(parent.resolve(LogbookFiles.SETTINGS));
        }
        boolean invented = settings.stream()
                .filter(Files::isRegularFile)
                .anyMatch(file -> read(file) == Logbook.Provenance.INVENTED);
        return invented ? Logbook.Provenance.INVENTED : Logbook.Provenance.ROASTED;
    }

    private static Logbook.Provenance read(Path file) {
        return LogbookFiles.provenance(file);
    }
}
