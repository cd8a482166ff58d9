package parchment.gather;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Finds files that hold the same bytes as another: no two roasts have the same readings throughout, so the second is a copy.
 *
 * @param originals what each copy is a copy of: the file in the fewest folders, of these the one with the shortest name
 */
record CopiedFiles(Map<Path, Path> originals) {
    static CopiedFiles among(List<Path> files) {
        Map<Long, List<Path>> bySize = new LinkedHashMap<>();
        for (Path file : files) {
            bySize.computeIfAbsent(size(file), s -> new ArrayList<>()).add(file);
        }
        Map<Path, Path> originals = new LinkedHashMap<>();
        bySize.forEach((size, alike) -> {
            if (size > 0 && alike.size() > 1) {
                Map<FileSum, Path> first = new LinkedHashMap<>();
                alike.stream()
                        .sorted(Comparator.comparingInt(Path::getNameCount)
                                .thenComparingInt(file -> file.toString().length())
                                .thenComparing(Path::toString))
                        .forEach(file -> {
                            try {
                                Path before = first.putIfAbsent(FileSum.of(file), file);
                                if (before != null) {
                                    originals.put(file, before);
                                }
                            } catch (IOException e) {
                                // It is told when the file is read.
                                return;
                            }
                        });
            }
        });
        return new CopiedFiles(originals);
    }

    private static long size(Path file) {
        try {
            return Files.size(file);
        } catch (IOException e) {
            return 0;
        }
    }
}
