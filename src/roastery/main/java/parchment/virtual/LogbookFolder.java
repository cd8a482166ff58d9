package parchment.virtual;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import parchment.file.WholeFile;
import parchment.file.WholeFolder;

/** Writes a virtual logbook's files into an empty folder; never into one that holds anything. */
final class LogbookFolder {
    private LogbookFolder() {}

    static void write(Map<String, String> files, Path folder) throws IOException {
        checkEmpty(folder);
        WholeFolder.at(folder).fill(aside -> {
            add(files, aside);
            return aside;
        });
    }

    static void checkEmpty(Path folder) throws IOException {
        if (!WholeFolder.at(folder).isFree()) {
            throw new IOException("A virtual logbook is written into an empty folder only; " + folder
                    + " holds something already. Name a folder that does not exist yet.");
        }
    }

    static void add(Map<String, String> files, Path folder) throws IOException {
        for (Map.Entry<String, String> file : files.entrySet()) {
            Path target = folder.resolve(file.getKey());
            Path parent = target.getParent();
            if (parent != null) {
                Files.createDirectories(parent);
            }
            WholeFile.at(target).write(file.getValue());
        }
    }
}
