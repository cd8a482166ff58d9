package parchment.launcher;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import parchment.virtual.VirtualClass;
import picocli.CommandLine.Option;

/** Settles who is in a class: so many students, or those of a list. */
final class StudentNames {
    private static final int LARGEST_BYTES = 1 << 20;

    @Option(names = "--students", paramLabel = "N", description = "How many students, named student-01 and so on.")
    private @Nullable Integer students;

    @Option(names = "--names", paramLabel = "FILE", description = "A file with a student's name on each line instead.")
    private @Nullable Path names;

    /**
     * Returns the students' names.
     *
     * @throws IOException if the list cannot be read
     * @throws IllegalArgumentException if neither a number nor a list was given, or both
     */
    List<String> listed() throws IOException {
        if (students != null && names == null) {
            return VirtualClass.numbered(students);
        }
        if (names != null && students == null) {
            return read(names);
        }
        throw new IllegalArgumentException("Say how many students, --students N, or give their names, --names FILE.");
    }

    private static List<String> read(Path file) throws IOException {
        if (Files.isRegularFile(file) && Files.size(file) > LARGEST_BYTES) {
            throw new IllegalArgumentException(
                    file + " is too large for a list of names; a name on each line is expected.");
        }
        try {
            String text = Files.readString(file, StandardCharsets.UTF_8);
            return (text.startsWith("\uFEFF") ? text.substring(1) : text)
                    .lines()
                    .map(String::strip)
                    .filter(name -> !name.isEmpty())
                    .toList();
        } catch (CharacterCodingException e) {
            throw new IllegalArgumentException(
                    file + " is not text in UTF-8, so that its accents cannot be read. Save it as UTF-8.", e);
        }
    }
}
