package parchment.notebook;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import parchment.file.WholeFile;

/** A page in HTML that says of itself that this program made it, so that only such pages are ever written over. */
public final class OurPage {
    /** Stands in the head of every page. */
    public static final String MARK = "<meta name=\"generator\" content=\"Parchment\">";

    /** The mark stands near the beginning, after the signs that any page begins with. */
    private static final int HEAD = 4_096;

    private OurPage() {}

    /**
     * Writes a page, over an earlier one of ours.
     *
     * @throws IOException if it cannot be written, or something else of that name is there; the message says so
     */
    public static Path write(Path file, String html) throws IOException {
        check(file);
        return WholeFile.at(file).write(html);
    }

    /**
     * Checks that a page can be written there without losing what somebody else wrote.
     *
     * @throws IOException if something of that name is there which is not a page of ours; the message says what to do
     */
    public static void check(Path file) throws IOException {
        if (Files.isDirectory(file)) {
            throw refused(file, "is a folder, where the page would be written.");
        }
        if (Files.isRegularFile(file) && Files.size(file) > 0 && !isOurs(file)) {
            throw refused(
                    file,
                    "is there already and is no page that this program marked as its own (an earlier version may have written it),"
                            + " so it was left as it is.");
        }
    }

    private static IOException refused(Path file, String why) {
        return new IOException("'" + file + "' " + why + " Name another file, or move that one away.");
    }

    private static boolean isOurs(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return new String(in.readNBytes(HEAD), StandardCharsets.UTF_8).contains(MARK);
        }
    }
}
