package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.logbook.written.Problem;

class EncodingProblemTest {
    @TempDir
    private Path folder;

    @Test
    void oneLineTellsOfAnOldEncodingAndWhereItBegins() throws IOException {
        Files.write(
                folder.resolve(Settings.FILE),
                "# x\nname = R\u00F6sterei\n# \u00E4\n".getBytes(Charset.forName("windows-1252")));
        ProblemLog problems = new ProblemLog(Settings.FILE);
        assertEquals(
                "R\u00F6sterei",
                Settings.properties(folder.resolve(Settings.FILE), problems).get("name"));
        assertEquals(
                List.of(new Problem(
                        Settings.FILE, 2, "", "letters that are not UTF-8", "UTF-8", "read as Windows-1252")),
                problems.toList());
    }
}
