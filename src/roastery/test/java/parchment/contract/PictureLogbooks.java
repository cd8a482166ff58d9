package parchment.contract;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import parchment.virtual.VirtualRoastery;

/** The five logbooks that every page and picture is looked at with; the same bytes each time. */
final class PictureLogbooks {
    private static final int MANY = 520;
    private static final int FEW = 3;
    private static final long SEED = 7;
    private static final Path DATASETS = Path.of("..", "datasets");

    private PictureLogbooks() {}

    /** Returns the folders by name, the one with the most in it first; writes those that are not there yet into a folder. */
    static Map<String, Path> in(Path folder) throws IOException {
        Map<String, Path> logbooks = new LinkedHashMap<>();
        logbooks.put("harbour", DATASETS.resolve("harbour"));
        logbooks.put("hillside", DATASETS.resolve("hillside"));
        logbooks.put("big", invented(MANY, folder.resolve("big")));
        logbooks.put("three", invented(FEW, folder.resolve("three")));
        logbooks.put("empty", empty(folder.resolve("empty")));
        return logbooks;
    }

    private static Path invented(int batches, Path folder) throws IOException {
        if (!Files.exists(folder)) {
            VirtualRoastery.harbour().withSeed(SEED).withBatches(batches).write(folder);
        }
        return folder;
    }

    /** A logbook begun today: its list of batches has headings and no line yet. */
    static Path empty(Path folder) throws IOException {
        Files.createDirectories(folder.resolve("curves"));
        String headings = Files.readAllLines(DATASETS.resolve("harbour").resolve("batches.csv"))
                .get(0);
        Files.writeString(folder.resolve("batches.csv"), headings + "\n");
        Files.writeString(
                folder.resolve("logbook.properties"),
                "provenance=invented machine\nname=A logbook begun today (invented)\ntime.zone=UTC\n");
        return folder;
    }
}
