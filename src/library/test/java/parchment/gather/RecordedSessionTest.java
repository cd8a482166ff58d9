package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.quantity.MassUnit;

/** Plays the session that docs/gather.md shows, and looks whether its lines and its logbook are what they were. */
class RecordedSessionTest {
    @TempDir
    Path temporary;

    @Test
    void theSessionOfTheHandbookGoesAsItStandsThere() throws IOException {
        Path folder = temporary.resolve("Logger files");
        Path logbook = temporary.resolve("My Roasts");
        HarbourFiles.write(folder, 1);
        StringBuilder out = new StringBuilder();
        List<String> asked = new ArrayList<>();
        int code = Gather.run(
                folder,
                logbook,
                Optional.empty(),
                question -> {
                    asked.add(question);
                    return Optional.of("");
                },
                out);
        assertEquals(0, code, out.toString());
        assertEquals(List.of(), asked, "everything is certain: nothing is asked");
        String said = out.toString()
                .replace(temporary + "/", "")
                .replace("time zone: " + ZoneId.systemDefault().getId(), "time zone: Europe/Lisbon");
        assertEquals(
                session().lines().toList(),
                said.strip().lines().map(String::stripTrailing).toList(),
                said);

        Logbook read = Logbook.open(logbook);
        assertEquals(HarbourFiles.BATCHES, read.batches().size());
        assertEquals("101", read.batches().get(0).name());
        assertEquals(180, read.cups().size());
        for (Batch batch : read.batches()) {
            assertTrue(batch.beanTemperature().isPresent(), batch.name());
            assertTrue(batch.airTemperature().isPresent(), batch.name());
            assertTrue(batch.lot().isPresent(), batch.name());
            assertTrue(batch.writtenMark(MarkKind.DROP).isPresent(), batch.name());
            assertTrue(batch.writtenMark(MarkKind.FIRST_CRACK_START).isPresent(), batch.name());
            assertEquals(11.5, batch.conditions().greenMass().orElseThrow().in(MassUnit.POUND), 0.51);
            assertEquals(0.15, batch.conditions().massLoss().orElseThrow(), 0.02);
        }
        // The logger was started a minute before the charge, which its curve shows within a reading or two.
        double off = java.time.Duration.between(
                        java.time.LocalDateTime.of(2031, 1, 6, 8, 0),
                        read.batch("101").roastedAt().orElseThrow().toLocalDateTime())
                .toSeconds();
        assertEquals(0, off, 60, "the clock above the readings shows minutes");
    }

    /** Returns the first session that the page shows, after its command. */
    private static String session() throws IOException {
        Path page = Path.of("..", "docs", "gather.md");
        String text = Files.readString(Files.exists(page) ? page : Path.of("docs", "gather.md"));
        int from = text.indexOf("```text\n") + "```text\n".length();
        return text.substring(from, text.indexOf("\n```", from));
    }
}
