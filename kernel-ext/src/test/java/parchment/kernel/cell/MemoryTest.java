package parchment.kernel.cell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.kernel.page.Outcome;
import parchment.kernel.words.CellError;

/** A cell that keeps ever more small things is stopped before the session has no memory left. */
@Timeout(120)
class MemoryTest {

    /** Runs the cells that it is given in a session of their own, and prints what each shows or why it failed. */
    static final class Session {
        private Session() {}

        public static void main(String[] cells) {
            try (Evaluator evaluator = Evaluator.open()) {
                for (String cell : cells) {
                    RecordingPage page = new RecordingPage();
                    Outcome outcome = evaluator.run(cell, page);
                    System.out.println(outcome.error().map(CellError::text).orElseGet(page::result));
                }
            }
            System.exit(0);
        }
    }

    private static String said(String collector, String... cells) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx256m",
                collector,
                "-cp",
                System.getProperty("java.class.path"),
                Session.class.getName()));
        command.addAll(List.of(cells));
        Process process = new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));
        return said;
    }

    @ParameterizedTest
    @ValueSource(strings = {"-XX:+UseSerialGC", "-XX:+UseG1GC"})
    void manySmallThingsEndTheCellAndNotTheSession(String collector) throws IOException, InterruptedException {
        String said = said(
                collector,
                "int kept = 5;",
                "var l = new ArrayList<Object>(); while (true) l.add(\"x\" + l.size());",
                "kept + 37",
                "l.size()");
        List<String> lines = said.lines().toList();
        assertTrue(
                lines.get(1)
                        .startsWith(
                                "The cell was stopped, because it needed nearly all the memory that this session has ("),
                said);
        assertEquals("42", lines.get(2), said);
        assertTrue(said.contains("`l`"), said);
    }

    /** As the library keeps smoothed curves: Java lets go of them when it must, and no cell is to blame for them. */
    @ParameterizedTest
    @ValueSource(strings = {"-XX:+UseSerialGC", "-XX:+UseG1GC"})
    void whatIsKeptOnlyAsLongAsThereIsRoomEndsNoCell(String collector) throws IOException, InterruptedException {
        String said = said(
                collector,
                "var soft = new ArrayList<java.lang.ref.SoftReference<byte[]>>();",
                "for (int i = 0; i < 60_000; i++) { soft.add(new java.lang.ref.SoftReference<>(new byte[10_000]));"
                        + " if (i % 200 == 0) Thread.sleep(3); }",
                "soft.size()");
        assertTrue(said.stripTrailing().endsWith("60000"), said);
    }
}
