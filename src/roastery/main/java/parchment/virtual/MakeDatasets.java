package parchment.virtual;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import parchment.file.WholeFile;
import parchment.file.WholeFolder;

/** Makes the demo datasets anew, bit for bit as they are committed. */
public final class MakeDatasets {
    private MakeDatasets() {}

    /**
     * Writes the demo datasets into the folder named first, {@code datasets} if none is named.
     *
     * @throws IOException if a file cannot be written
     */
    public static void main(String[] arguments) throws IOException {
        Path folder = Path.of(arguments.length > 0 ? arguments[0] : "datasets");
        write(folder, System.out);
    }

    /** Returns the datasets by the names of their folders. */
    public static Map<String, VirtualRoastery> all() {
        return new TreeMap<>(Map.of("harbour", VirtualRoastery.harbour(), "hillside", VirtualRoastery.hillside()));
    }

    /**
     * Writes each dataset and, beside its folder, its sealed truth; earlier ones of the same name are replaced.
     *
     * @throws IOException if a file cannot be written, or a folder of that name holds what this command did not write
     */
    public static void write(Path folder, PrintStream progress) throws IOException {
        write(all(), folder, progress);
    }

    static void write(Map<String, VirtualRoastery> datasets, Path folder, PrintStream progress) throws IOException {
        for (Map.Entry<String, VirtualRoastery> dataset : datasets.entrySet()) {
            VirtualLogbook logbook = dataset.getValue().run();
            Path target = folder.resolve(dataset.getKey());
            check(target, logbook);
            WholeFolder.at(target).replace(aside -> {
                LogbookFolder.add(logbook.files(), aside);
                return aside;
            });
            WholeFile.at(folder.resolve(dataset.getKey() + "-truth.json"))
                    .write(logbook.truth().sealedText());
            progress.println("Wrote " + target + ": " + logbook);
        }
    }

    /** Only a folder that names itself as ours is ever replaced. */
    private static void check(Path target, VirtualLogbook logbook) throws IOException {
        if (WholeFolder.at(target).isFree()) {
            return;
        }
        Path properties = target.resolve("logbook.properties");
        if (!Files.exists(properties)
                || !Files.readString(properties, StandardCharsets.UTF_8).contains("name=" + logbook.name() + "\n")) {
            throw new IOException(target + " exists and is not the invented logbook '" + logbook.name()
                    + "'. It was left alone; move it away or name another folder.");
        }
    }
}
