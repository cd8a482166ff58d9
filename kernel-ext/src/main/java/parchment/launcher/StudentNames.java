package parchment.launcher;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import parchment.virtual.VirtualClass;
import picocli.CommandLine.Option;

/** Says who is in a class: so many students, or those of a list. */
final class StudentNames {
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
            return Files.readAllLines(names, StandardCharsets.UTF_8).stream()
                    .map(String::strip)
                    .filter(name -> !name.isEmpty())
                    .toList();
        }
        throw new IllegalArgumentException("Say how many students, --students N, or give their names, --names FILE.");
    }
}
