package parchment.display;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.stream.Collectors;

/**
 * Gives long tables the script by which they sort, page and are searched; the same for every table, so it holds nothing of a user's.
 */
final class TableScript {
    /** The script as an element, its comments and indents left out. */
    static final String TAG = "<script>\n" + read() + "\n</script>";

    private TableScript() {}

    private static String read() {
        try (InputStream in = TableScript.class.getResourceAsStream("table.js")) {
            if (in == null) {
                throw new IllegalStateException("The script of tables is missing from the jar.");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .map(String::strip)
                    .filter(line -> !line.isEmpty() && !line.startsWith("//"))
                    .collect(Collectors.joining("\n"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
