package parchment.kernel.install;

import java.io.IOException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import parchment.file.WholeFile;
import parchment.file.WholeFolder;

/** A folder with those above it that were made for it, so that they can be taken away again; a file in it names them. */
final class FoldersMade {
    /** One a line, the nearest first. */
    private static final String LIST = "folders-made.txt";

    private FoldersMade() {}

    static void make(Path folder) throws IOException {
        Set<Path> made = new LinkedHashSet<>();
        for (Path above = folder.getParent(); above != null && !Files.exists(above); above = above.getParent()) {
            made.add(above);
        }
        Files.createDirectories(folder);
        if (!made.isEmpty()) {
            WholeFile.at(folder.resolve(LIST))
                    .write(made.stream().map(each -> each + "\n").collect(Collectors.joining()));
        }
    }

    /** Removes the folder with all that is in it, and those above it that were made for it as far as nothing else is in them. */
    static void remove(Path folder) throws IOException {
        Path list = folder.resolve(LIST);
        List<String> made = Files.exists(list) ? Files.readAllLines(list) : List.of();
        WholeFolder.delete(folder);
        for (String above : made) {
            try {
                Files.deleteIfExists(Path.of(above));
            } catch (DirectoryNotEmptyException e) {
                break; // Others use it by now.
            }
        }
    }
}
