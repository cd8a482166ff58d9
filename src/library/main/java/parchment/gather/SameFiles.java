package parchment.gather;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import parchment.sheet.Words;

/**
 * Passes over copies: files that hold the same bytes as another of the same name, as in a folder of safety copies.
 *
 * @param once the files without the copies, in their order
 * @param sums what each file was like, the copies too; one that cannot be read has none
 */
record SameFiles(List<Path> once, Map<Path, FileSum> sums) {
    private static final Comparator<Path> BEST = Comparator.comparingInt(Path::getNameCount)
            .thenComparing(Files::isSymbolicLink)
            .thenComparing(file -> String.valueOf(file.getFileName()).length())
            .thenComparing(Path::toString);

    /** What computers add to the name of a copy (common practice, no source). */
    private static final Pattern OF_A_COPY =
            Pattern.compile("(?iu)\\s*(\\(\\d+\\)|-?\\s*\\b(copy( of)?|kopie|copie|copia|cópia)\\b)\\s*");

    private record Copy(FileSum sum, String name) {}

    private static String plain(String name) {
        return OF_A_COPY.matcher(name).replaceAll("").toLowerCase(Locale.ROOT);
    }

    /** Looks at the files, and tells which are left out. */
    static SameFiles in(List<Path> files, Path folder, List<String> told) {
        Map<Copy, Path> first = new HashMap<>();
        Map<Path, Copy> copied = new HashMap<>();
        Map<Path, FileSum> sums = new LinkedHashMap<>();
        for (Path file : files) {
            try {
                FileSum sum = FileSum.of(file);
                sums.put(file, sum);
                if (sum.size() > 0) {
                    Copy copy = new Copy(sum, plain(String.valueOf(file.getFileName())));
                    copied.put(file, copy);
                    first.merge(copy, file, (one, other) -> BEST.compare(one, other) <= 0 ? one : other);
                }
            } catch (IOException e) {
                continue; // What cannot be read is told when it is to be read.
            }
        }
        List<String> copies = files.stream()
                .filter(file -> copied.containsKey(file) && first.get(copied.get(file)) != file)
                .map(file -> folder.relativize(file).toString())
                .toList();
        if (!copies.isEmpty()) {
            told.add("Left out, because another file of that name has the same bytes: " + Words.all(copies) + ".");
        }
        List<Path> once = files.stream()
                .filter(file -> !copied.containsKey(file) || first.get(copied.get(file)) == file)
                .toList();
        return new SameFiles(once, sums);
    }
}
