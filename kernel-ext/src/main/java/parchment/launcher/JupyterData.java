package parchment.launcher;

import java.nio.file.Path;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Where Jupyter keeps the data of a user, by its own rules. */
final class JupyterData {
    private JupyterData() {}

    /**
     * Returns the folder of the present user.
     *
     * @see <a href="https://docs.jupyter.org/en/latest/use/jupyter-directories.html">Jupyter's common directories</a>
     */
    static Path ofUser() {
        String chosen = variable("JUPYTER_DATA_DIR");
        if (chosen != null) {
            return Path.of(chosen);
        }
        String system = System.getProperty("os.name").toLowerCase(Locale.ROOT);
        if (system.startsWith("windows")) {
            String roaming = variable("APPDATA");
            return roaming != null
                    ? Path.of(roaming, "jupyter")
                    : home().resolve(".jupyter").resolve("data");
        }
        if (system.startsWith("mac")) {
            return home().resolve("Library").resolve("Jupyter");
        }
        return userData().resolve("jupyter");
    }

    /** Returns the folder of the user's own program data, where a private Python environment goes. */
    static Path userData() {
        String data = variable("XDG_DATA_HOME");
        return data != null ? Path.of(data) : home().resolve(".local").resolve("share");
    }

    private static Path home() {
        String home = variable("HOME"); // Jupyter goes by this; Java's own property may name another folder.
        return Path.of(home != null ? home : System.getProperty("user.home"));
    }

    private static @Nullable String variable(String name) {
        String value = System.getenv(name);
        return value == null || value.isBlank() ? null : value;
    }
}
