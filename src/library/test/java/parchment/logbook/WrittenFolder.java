package parchment.logbook;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Writes small logbook folders for tests. */
public final class WrittenFolder {
    public static final String CURVE = curve("°C", 0, 560, 5, 200);

    private final Path folder;

    /** Begins in an empty folder. */
    public WrittenFolder(Path folder) {
        this.folder = folder;
    }

    /** Returns a curve file whose bean temperature rises from half of the given last reading to it. */
    public static String curve(String unit, int from, int to, int step, double last) {
        StringBuilder text = new StringBuilder("time [s],bean temperature [" + unit + "]\n");
        for (int t = from; t <= to; t += step) {
            text.append(t)
                    .append(',')
                    .append(last * (0.5 + 0.5 * (t - from) / (to - from)))
                    .append('\n');
        }
        return text.toString();
    }

    /** Writes a file of lines. */
    public WrittenFolder with(String file, String... lines) throws IOException {
        return withText(file, String.join("\n", lines) + "\n");
    }

    /** Writes a file. */
    public WrittenFolder withText(String file, String text) throws IOException {
        Path path = folder.resolve(file);
        Files.createDirectories(path.getParent());
        Files.write(path, text.getBytes(StandardCharsets.UTF_8));
        return this;
    }

    /** Opens the folder as a logbook. */
    public Logbook open() {
        return Logbook.open(folder);
    }

    /** Returns the folder. */
    public Path path() {
        return folder;
    }
}
