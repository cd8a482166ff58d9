package parchment.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Every notebook opens its logbook in its first cell and nowhere else: so the first output says of an invented logbook that its machine is to
 * be roasted on by nobody (NotebookRunTest holds that a page says so under the cell that opened it).
 */
class DemoNotebooksTest {
    @Test
    void theFirstCellOfEachOpensTheLogbook() throws IOException {
        int seen = 0;
        try (Stream<Path> files = Files.list(Path.of("..", "notebooks"))) {
            for (Path file : files.filter(f -> f.toString().endsWith(".ipynb")).toList()) {
                List<Cell> code = Notebook.read(file).cells().stream()
                        .filter(cell -> cell.kind() == Cell.Kind.CODE)
                        .toList();
                assertTrue(code.get(0).source().startsWith("var logbook = Logbook.open();"), file::toString);
                assertEquals(
                        1,
                        code.stream()
                                .filter(cell -> cell.source().contains("Logbook.open("))
                                .count(),
                        file::toString);
                seen++;
            }
        }
        assertTrue(seen >= 8, seen + " notebooks");
    }
}
