package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Whatever the program writes goes through the room 'file', which writes it whole or not at all. */
class WritersTest {
    private static final Pattern WRITING = Pattern.compile(
            "Files\\s*\\.\\s*(?:write|writeString|newBufferedWriter|newOutputStream|newByteChannel|copy|move|createFile)\\b"
                    + "|FileOutputStream|FileWriter|RandomAccessFile|new PrintStream\\(|FileChannel\\.open|new PrintWriter\\(");

    /** What may write without it, and why. */
    private static final Map<String, String> ALLOWED = Map.of(
            "CarriedPython", "fills a temporary folder, which is packed into one file at the end",
            "FolderCopy", "fills a temporary folder, which is packed into one file at the end",
            "InstallLock", "holds a lock on an empty file",
            "CellStreams", "hands what a cell prints to its page");

    @Test
    void everyWriterOfTheProjectWritesAside() throws IOException {
        Map<String, String> found = new TreeMap<>();
        for (Path sources : new Path[] {
            Path.of("..", "src", "library", "main", "java"),
            Path.of("..", "src", "roastery", "main", "java"),
            Path.of("src", "main", "java")
        }) {
            try (Stream<Path> files = Files.walk(sources)) {
                for (Path file :
                        files.filter(each -> each.toString().endsWith(".java")).toList()) {
                    if (!file.getParent().endsWith(Path.of("parchment", "file"))) {
                        note(file, found);
                    }
                }
            }
        }
        assertEquals(Map.of(), found, "use parchment.file.WholeFile or WholeFolder");
    }

    private static void note(Path file, Map<String, String> found) throws IOException {
        String name = file.getFileName().toString().replace(".java", "");
        if (ALLOWED.containsKey(name)) {
            return;
        }
        String code = Files.readString(file).replaceAll("(?s)/\\*.*?\\*/", "").replaceAll("//.*", "");
        WRITING.matcher(code).results().findFirst().ifPresent(match -> found.put(name, match.group()));
    }
}
