package parchment.gather.corpus;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * Counts the cells of random folders that are left out in silence: {@code CellsInSilenceStudy FIRST-LAST} prints each, {@code FIRST-LAST FOLDER}
 * also leaves the folders to look at.
 */
final class CellsInSilenceStudy {
    private CellsInSilenceStudy() {}

    public static void main(String[] arguments) throws IOException {
        String[] seeds = arguments[0].split("-");
        boolean keep = arguments.length > 1;
        Path place = keep ? Path.of(arguments[1]) : Files.createTempDirectory("strewn");
        int cells = 0;
        int lost = 0;
        for (long seed = Long.parseLong(seeds[0]); seed <= Long.parseLong(seeds[1]); seed++) {
            Path from = place.resolve("from " + seed);
            List<StrewnFolder.Cell> written = StrewnFolder.write(from, seed);
            List<String> silent = CellsInSilence.of(from, written, place.resolve("to " + seed));
            cells += written.size();
            lost += silent.size();
            for (String cell : silent) {
                System.out.println("seed " + seed + ": " + cell);
            }
        }
        System.out.println("seeds " + arguments[0] + ": " + lost + " of " + cells + " cells left out in silence");
        if (!keep) {
            try (Stream<Path> all = Files.walk(place)) {
                for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(path);
                }
            }
        }
    }
}
