package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What stands in cells is shown, and steers no terminal and turns no line. */
class HarmlessLinesTest {
    @TempDir
    Path temporary;

    @Test
    void signsThatSteerATerminalOrTurnALineAreShownAsNone() throws IOException {
        Path folder = Files.createDirectories(temporary.resolve("Logger files"));
        Files.writeString(
                folder.resolve("list.csv"),
                "batch,date,lot,green mass [kg]\n1,2031-03-04,\u001B[31mkela\u001B[0m,5\n2,2031-03-05,\u202Ealek,5\n3,2031-03-06,wren,5\n");
        StringBuilder out = new StringBuilder();
        Path logbook = temporary.resolve("My Roasts");
        assertEquals(0, Gather.run(folder, logbook, Optional.empty(), Gather.NOBODY, out), out.toString());
        for (String shown : List.of(out.toString(), Files.readString(logbook.resolve(GatherWriter.REPORT)))) {
            assertTrue(shown.contains("\uFFFD[31mkela"), shown);
            assertTrue(shown.contains("\uFFFDalek"), shown);
            assertTrue(shown.codePoints().noneMatch(point -> point == 0x1B || point == 0x202E), shown);
        }
    }
}
