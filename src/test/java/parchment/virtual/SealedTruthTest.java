package parchment.virtual;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SealedTruthTest {
    private static final VirtualLogbook LOGBOOK =
            VirtualRoastery.harbour().withBatches(12).run();

    @Test
    void oneCallOpensWhatAGlanceDoesNotShow(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("truth.json");
        String sealed = LOGBOOK.truth().sealedText();
        Files.writeString(file, sealed);
        assertFalse(sealed.contains("acidity"));
        assertFalse(sealed.contains("hidden"));

        SealedTruth truth = SealedTruth.open(file);
        assertEquals(12, truth.batches().size());
        assertEquals(LOGBOOK.truth().text(), truth.text());
        VirtualBatch batch = LOGBOOK.batches().get(4);
        assertEquals(batch.endTemperature(), truth.batch(batch.name()).get("end temperature [°C]"), 0.005);
        assertEquals(batch.roast().firstCrackStart(), truth.batch(batch.name()).get("first pop [s]"), 0.05);
        assertEquals(LOGBOOK.surfaces(), truth.surfaces());
    }

    @Test
    void saysWhatIsNoTruthAndWhichBatchIsMissing(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("other.json");
        for (String text : new String[] {"", "{", "{}", "[]", "{\"sealed\": [\"%%%\"]}", "{\"sealed\": 3}"}) {
            Files.writeString(file, text);
            IOException refused = assertThrows(IOException.class, () -> SealedTruth.open(file), text);
            assertTrue(refused.getMessage().contains("is not a sealed truth"), text);
        }
        String message = assertThrows(
                        IllegalArgumentException.class, () -> LOGBOOK.truth().batch("H999"))
                .getMessage();
        assertTrue(message.contains("'H999'") && message.contains("12 batches"), message);
    }
}
