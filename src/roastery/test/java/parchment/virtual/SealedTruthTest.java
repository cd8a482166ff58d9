package parchment.virtual;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.virtual.chance.Seed;
import parchment.virtual.written.VirtualBatch;

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

    private static final String TRUTH = """
            {"logbook": "Tidewater", "seed": "41",
             "batches": [
               {"batch": "T1", "lot": "Cinder Ridge", "end temperature [°C]": 203.5, "loss [%]": 14},
               {"batch": "T2", "end temperature [°C]": 207.25, "story": {"of": 1}, "stalled": true, "marks": [1]}],
             "surfaces": []}""";

    /** Writes a sealed file by hand, in lines of so many signs, as the format says: base 64 of the JSON. */
    private static Path sealed(Path folder, String json, int line) throws IOException {
        String inside = Base64.getEncoder().encodeToString(json.getBytes(java.nio.charset.StandardCharsets.UTF_8));
        StringBuilder lines = new StringBuilder();
        for (int from = 0; from < inside.length(); from += line) {
            lines.append(from == 0 ? "\"" : ", \"")
                    .append(inside, from, Math.min(inside.length(), from + line))
                    .append('"');
        }
        return Files.writeString(folder.resolve("truth.json"), "{\"sealed\": [" + lines + "]}");
    }

    @Test
    void readsAFileWhoseLinesAreOfAnyLength(@TempDir Path folder) throws IOException {
        for (int line : new int[] {1, 7, 120, 100_000}) {
            SealedTruth truth = SealedTruth.open(sealed(folder, TRUTH, line));
            assertEquals(List.of("T1", "T2"), truth.batches());
            assertEquals("truth behind Tidewater: 2 batches, 0 surfaces. " + VirtualLogbook.WARNING, truth.toString());
            assertEquals(Seed.parse("41").text(), truth.seed().text());
            assertEquals(List.of(), truth.surfaces());
        }
    }

    @Test
    void ofABatchOnlyTheNumbersAreGivenByName(@TempDir Path folder) throws IOException {
        SealedTruth truth = SealedTruth.open(sealed(folder, TRUTH, 120));
        assertEquals(Map.of("end temperature [°C]", 203.5, "loss [%]", 14.0), truth.batch("T1"));
        assertEquals(Map.of("end temperature [°C]", 207.25), truth.batch("T2"));
        assertEquals(
                "The truth has no batch 'T3'; it has 2 batches, from T1 on.",
                assertThrows(IllegalArgumentException.class, () -> truth.batch("T3"))
                        .getMessage());
    }

    @Test
    void theScenarioIsThereOnlyWhereItLiesInTheEnvelope(@TempDir Path folder) throws IOException {
        assertEquals(
                Optional.empty(), SealedTruth.open(sealed(folder, TRUTH, 120)).scenario());
        String with = TRUTH.replace("\"seed\"", "\"scenario\": \"[machine]\", \"seed\"");
        assertEquals(
                Optional.of("[machine]"),
                SealedTruth.open(sealed(folder, with, 120)).scenario());
    }

    @Test
    void theSealedFileSaysWhatItIsInLinesOfAtMostHundredAndTwentySigns() {
        String text = LOGBOOK.truth().sealedText();
        assertTrue(
                text.startsWith(
                        "{\n  \"what\": \"The truth behind an invented logbook, sealed against accident only\",\n"
                                + "  \"to open\": \"SealedTruth.open(Path.of(\\\"this file\\\"))\",\n"
                                + "  \"warning\": \"" + VirtualLogbook.WARNING + "\",\n  \"sealed\": ["),
                text.substring(0, 300));
        assertTrue(text.endsWith("}\n"));
        List<String> lines = text.lines()
                .map(String::strip)
                .filter(line -> line.matches("\"[A-Za-z0-9+/=]+\",?"))
                .map(line -> line.replaceAll("[\",]", ""))
                .collect(Collectors.toList());
        String last = lines.remove(lines.size() - 1);
        assertTrue(lines.size() > 10 && lines.stream().allMatch(line -> line.length() == 120));
        assertTrue(!last.isEmpty() && last.length() <= 120, last);
    }

    /** The seal is the SHA-256 of the file, as any tool works it out. */
    @Test
    void theSealIsTheDigestOfTheFileAndOpensOnlyIt(@TempDir Path folder) throws Exception {
        Path file =
                Files.writeString(folder.resolve("truth.json"), LOGBOOK.truth().sealedText());
        byte[] digest = java.security.MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file));
        String seal = java.util.HexFormat.of().formatHex(digest);
        assertEquals(seal, LOGBOOK.truth().seal());
        assertEquals(
                LOGBOOK.truth().text(),
                SealedTruth.open(file, "  " + seal.toUpperCase(Locale.ROOT) + "\n")
                        .text());
        Files.writeString(file, Files.readString(file) + " ");
        String message = assertThrows(IllegalArgumentException.class, () -> SealedTruth.open(file, seal))
                .getMessage();
        assertTrue(
                message.startsWith("The seal of " + file + " is broken: expected " + seal + ", but the file has ")
                        && message.endsWith(". It is another file, or it was changed."),
                message);
    }

    @Test
    void theTextIsReadableAndEndsItsLine(@TempDir Path folder) throws IOException {
        String text = SealedTruth.open(sealed(folder, TRUTH, 120)).text();
        assertTrue(text.startsWith("{\n  \"logbook\": \"Tidewater\",\n"), text);
        assertTrue(text.contains("\"end temperature [°C]\": 203.5"), text);
        assertTrue(text.endsWith("}\n"), text);
    }
}
