package parchment.gather;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import parchment.sheet.Words;

/** Passes over copies: files that hold the same bytes as another, as in a folder of safety copies. */
final class SameFiles {
    private static final Comparator<Path> BEST = Comparator.comparingInt(Path::getNameCount)
            .thenComparing(Files::isSymbolicLink)
            .thenComparing(file -> String.valueOf(file.getFileName()).length())
            .thenComparing(Path::toString);

    private SameFiles() {}

    /** Returns the files without the copies, in their order, after telling which are left out. */
    static List<Path> once(List<Path> files, Path folder, List<String> told) {
        Map<FileSum, Path> first = new HashMap<>();
        Map<Path, FileSum> sums = new HashMap<>();
        for (Path file : files) {
            try {
                FileSum sum = FileSum.of(file);
                if (sum.size() > 0) {
                    sums.put(file, sum);
                    first.merge(sum, file, (one, other) -> BEST.compare(one, other) <= 0 ? one : other);
                }
            } catch (IOException e) {
                continue; // What cannot be read is told when it is to be read.
            }
        }
        List<String> copies = files.stream()
                .filter(file -> sums.containsKey(file) && first.get(sums.get(file)) != file)
                .map(file -> folder.relativize(file).toString())
                .toList();
        if (!copies.isEmpty()) {
            told.add("Left out, because another file has the same bytes: " + Words.some(copies) + ".");
        }
        return files.stream()
                .filter(file -> !sums.containsKey(file) || first.get(sums.get(file)) == file)
                .toList();
    }
}
