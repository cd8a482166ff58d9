package parchment.trial.sealed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SealTest {
    private static final Path REFERENCE = Path.of("library", "test", "resources", "reference", "seal");

    private static final String D = "0123456789abcdef".repeat(4);

    /** Expected: sha256sum and hashlib, FIPS 180-4 (reference/seal/README.md). */
    @Test
    void agreesWithChecksumProgramsToTheLastDigit() throws IOException {
        String plan = Files.readString(REFERENCE.resolve("plan.txt"));
        List<String> lines = Files.readAllLines(REFERENCE.resolve("lines.txt"));
        List<String> seals = Files.readAllLines(REFERENCE.resolve("seals.txt"));
        Seal seal = Seal.of(plan, lines);
        assertEquals(seals.subList(0, 3), seal.lineSeals());
        assertEquals(seals.get(3), seal.planSeal());
        assertEquals(seals.get(4), seal.digits());
        assertEquals(seal, Seal.read(seal.text()));
    }

    @Test
    void readsTheReferenceLinesAndWritesThemAsTheyStood() throws IOException {
        for (String line : Files.readAllLines(REFERENCE.resolve("lines.txt"))) {
            assertEquals(line, DrawnLine.read(line).text());
        }
        DrawnLine first = DrawnLine.read(
                Files.readAllLines(REFERENCE.resolve("lines.txt")).get(0));
        assertEquals(
                new DrawnLine(
                        "T1", "2026-12-01", "Stone Bridge", 1, 1, "B101", "201.5", "0f1e2d3c4b5a69788796a5b4c3d2e1f0"),
                first);
        assertEquals(201.5, first.value());
    }

    @Test
    void aLineOfWhichDayLotAndBatchWereNotKnownHasThemBlank() {
        DrawnLine line = new DrawnLine("flip-1", "", "", 2, 3, "", DrawnLine.target(203), "0".repeat(32));
        assertEquals("parchment-draw-1|flip-1|||2|3||203.0|" + "0".repeat(32), line.text());
        assertEquals(line, DrawnLine.read(line.text()));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "parchment-draw-2|T1|||1|1||201.5|0f1e2d3c4b5a69788796a5b4c3d2e1f0",
                "parchment-draw-1|T1|||0|1||201.5|0f1e2d3c4b5a69788796a5b4c3d2e1f0",
                "parchment-draw-1|T1|||1|1||201|0f1e2d3c4b5a69788796a5b4c3d2e1f0",
                "parchment-draw-1|T1|||1|1||201.5|0f1e2d3c4b5a69788796a5b4c3d2e1f",
                "parchment-draw-1|T1|||1|1||201.5|0f1e2d3c4b5a69788796a5b4c3d2e1f0|",
                "parchment-draw-1||||1|1||201.5|0f1e2d3c4b5a69788796a5b4c3d2e1f0",
            })
    void refusesWhatIsNoLine(String text) {
        assertEquals(
                "it is no line of a draw",
                assertThrows(IllegalArgumentException.class, () -> DrawnLine.read(text))
                        .getMessage());
    }

    @Test
    void printsItsDigitsInFours() {
        assertEquals(
                "0123 4567 89ab cdef " + "0123 4567 89ab cdef ".repeat(2) + "0123 4567 89ab cdef", Seal.inFours(D));
        assertEquals(D, Seal.typed("A seal", " 0123 4567 89AB cdef\n" + D.substring(16)));
    }

    @Test
    void saysWhatIsNoSeal() {
        assertEquals(
                "A seal is 64 digits from 0 to f, with or without blanks, but this one has 63. Type it as it was printed.",
                refusal(() -> Seal.typed("A seal", D.substring(1))));
        assertEquals(
                "A seal is 64 digits from 0 to f, with or without blanks, but this one has 64, and others among them."
                        + " Type it as it was printed.",
                refusal(() -> Seal.typed("A seal", "g" + D.substring(1))));
        assertEquals("line 1 is not 'parchment-seal-1'", refusal(() -> Seal.read("seal\n" + D + "\n" + D + "\n")));
        assertEquals("its last line has no end", refusal(() -> Seal.read("parchment-seal-1\n" + D + "\n" + D)));
        assertEquals("line 3 is not 64 digits", refusal(() -> Seal.read("parchment-seal-1\n" + D + "\nx\n")));
        assertEquals("it ends after line 2", refusal(() -> Seal.read("parchment-seal-1\n" + D + "\n")));
    }

    private static String refusal(Runnable work) {
        return assertThrows(IllegalArgumentException.class, work::run).getMessage();
    }
}
