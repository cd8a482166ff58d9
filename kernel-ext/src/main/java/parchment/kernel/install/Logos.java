package parchment.kernel.install;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import parchment.file.WholeFile;

/**
 * The kernel's picture in the lists of clients: a sheet with a curve on it, drawn for this project.
 *
 * @see <a href="https://jupyter-client.readthedocs.io/en/stable/kernels.html#kernel-specs">Kernel specs: the names of the files</a>
 */
final class Logos {
    static final List<String> FILES = List.of("logo-32x32.png", "logo-64x64.png", "logo-svg.svg");

    private Logos() {}

    /** Writes the files into the folder of a kernel. */
    static void write(Path folder) throws IOException {
        for (String file : FILES) {
            try (InputStream in = Logos.class.getResourceAsStream(file)) {
                if (in == null) {
                    throw new IllegalStateException("The picture " + file + " is missing from the jar.");
                }
                WholeFile.at(folder.resolve(file)).write(in.readAllBytes());
            }
        }
    }
}
