package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The contact sheet shows every page that a command makes: one that is new here has to say which (DEVELOPERS.md, "Look at everything"). */
class ContactSheetListTest {
    private static final Path LIST = Path.of("src", "test", "resources", "parchment", "launcher", "contact-sheet.txt");

    private static List<String[]> lines() throws IOException {
        return Files.readAllLines(LIST).stream()
                .filter(line -> !line.startsWith("#") && !line.isBlank())
                .map(line -> line.split("\\|", -1))
                .toList();
    }

    @Test
    void everyCommandSaysWhichPagesItMakes() throws IOException {
        Set<String> listed = lines().stream().map(parts -> parts[0].strip()).collect(Collectors.toSet());
        Set<String> commands = Main.commandLine().getSubcommands().keySet();
        assertEquals(
                new TreeSet<>(commands),
                new TreeSet<>(listed),
                "Give each command a line in kernel-ext/" + LIST.toString().replace('\\', '/')
                        + "; what the lines mean stands there");
    }

    @Test
    void everyLineIsOneTheCommandUnderstands() throws Exception {
        for (String[] parts : lines()) {
            assertEquals(3, parts.length, String.join("|", parts));
            String logbooks = parts[1].strip();
            assertTrue(Set.of("every", "harbour", "once", "nothing").contains(logbooks), logbooks);
            if (!logbooks.equals("nothing")) {
                assertTrue(parts[2].contains("OUT"), "it has to write into OUT: " + parts[2]);
                if (parts[2].strip().startsWith("parchment.")) {
                    Class.forName(parts[2].strip().split("\\s+")[0]);
                    continue;
                }
                Main.commandLine().parseArgs((parts[0].strip() + " " + parts[2].strip()).split("\\s+"));
            }
        }
    }

    @Test
    void everyNotebookIsShown() throws IOException {
        List<String> words = lines().stream().map(parts -> parts[2]).toList();
        for (String folder : List.of("notebooks/", "notebooks/lessons/")) {
            assertTrue(words.stream().anyMatch(each -> each.contains(folder + "*.ipynb")), folder);
        }
    }
}
