package parchment.virtual;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class VirtualClassTest {
    @TempDir
    private static Path folder;

    @BeforeAll
    static void write() throws IOException {
        VirtualClass.write(Scenario.named("one-cause"), List.of("Ada", "Bo-2"), 12, folder.resolve("class"));
    }

    private static Path students() {
        return folder.resolve("class/students");
    }

    private static Path teacher() {
        return folder.resolve("class/teacher");
    }

    @Test
    void whatIsHandedOutHoldsSealsAndNoSecret() throws IOException {
        List<String> secrets = List.of(
                VirtualClass.open(teacher()).roastery("Ada").run().seed().text().substring(7),
                VirtualClass.open(teacher())
                        .roastery("Bo-2")
                        .run()
                        .seed()
                        .text()
                        .substring(7));
        assertNotEquals(secrets.get(0), secrets.get(1));
        try (Stream<Path> files = Files.walk(students())) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                assertFalse(file.toString().contains("truth"), file.toString());
                String text = Files.readString(file, StandardCharsets.UTF_8);
                secrets.forEach(secret -> assertFalse(text.contains(secret), file.toString()));
            }
        }
        String seals = Files.readString(students().resolve("seals.csv"));
        String readme = Files.readString(students().resolve("Ada/README.md"));
        String seal = seals.lines()
                .filter(line -> line.startsWith("Ada,"))
                .findFirst()
                .orElseThrow()
                .substring(4);
        assertEquals(64, seal.length());
        assertTrue(readme.contains(seal), readme);
    }

    /** Once the envelope is opened, anybody can make the logbook anew from it and compare every file. */
    @Test
    void theOpenedEnvelopeMakesTheHandedOutLogbookAgain() throws IOException {
        String readme = Files.readString(students().resolve("Ada/README.md"));
        String seal = readme.lines()
                .map(String::strip)
                .filter(line -> line.matches("[0-9a-f]{64}"))
                .findFirst()
                .orElseThrow();
        SealedTruth truth = SealedTruth.open(teacher().resolve("Ada-truth.json"), seal);
        VirtualLogbook again = VirtualRoastery.of(Scenario.of(truth.scenario().orElseThrow(), "opened.scenario"))
                .withSeed(truth.seed())
                .withBatches(truth.batches().size())
                .run();
        for (Map.Entry<String, String> file : again.files().entrySet()) {
            assertEquals(
                    file.getValue(),
                    Files.readString(students().resolve("Ada").resolve(file.getKey()), StandardCharsets.UTF_8),
                    file.getKey());
        }
    }

    @Test
    void aTruthThatWasChangedBreaksItsSeal() throws IOException {
        Path file = folder.resolve("changed.json");
        String text = Files.readString(teacher().resolve("Ada-truth.json"));
        String seal = SealedTruth.open(teacher().resolve("Ada-truth.json")).seal();
        Files.writeString(file, text.replaceFirst("\"sealed\": \\[\n    \"...", "\"sealed\": [\n    \"eyK"));
        String message = assertThrows(IllegalArgumentException.class, () -> SealedTruth.open(file, seal))
                .getMessage();
        assertTrue(message.contains("is broken: expected " + seal), message);
    }

    @Test
    void theTeachersMachineRoastsWhatAStudentPlanned() throws IOException {
        VirtualClass opened = VirtualClass.open(teacher());
        assertEquals(List.of("Ada", "Bo-2"), opened.students());
        RoastPlan plan = RoastPlan.of("lot,drop temperature [°C]\nSlate Hill,200\nSlate Hill,208\n", "plan.csv");
        VirtualLogbook roasted = opened.roastery("Ada").roast(plan);
        SealedTruth truth = SealedTruth.open(opened.truth("Ada"));
        assertEquals(2, roasted.batches().size());
        for (int a = 0; a < truth.surfaces().size(); a++) {
            assertEquals(
                    truth.surfaces().get(a).destination(),
                    roasted.surfaces().get(a).destination(),
                    1e-4);
        }
        assertNotEquals(
                roasted.surfaces(),
                opened.roastery("Bo-2").roast(plan).surfaces(),
                "each student has a truth of their own");
    }

    @Test
    void whatIsSecretCanBeReadByTheTeachersAccountOnly() throws IOException {
        assumeTrue(
                Files.getFileStore(folder).supportsFileAttributeView("posix"), "this system knows no rights of files");
        assertEquals("rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(teacher())));
        for (String secret : List.of("seeds.csv", "Ada-truth.json")) {
            assertEquals(
                    "rw-------",
                    PosixFilePermissions.toString(
                            Files.getPosixFilePermissions(teacher().resolve(secret))),
                    secret);
        }
    }

    @Test
    void saysWhatNoSealHides() throws IOException {
        assertEquals(List.of(), VirtualClass.open(teacher()).openInTheText());
        VirtualClass open = VirtualClass.write(
                Scenario.named("curve-chaser"), VirtualClass.numbered(1), 2, folder.resolve("open class"));
        assertEquals(List.of("acidity", "sweetness", "body"), open.openInTheText());
        assertEquals(List.of("student-01"), open.students());
    }

    @Test
    void saysWhoIsNotInTheClassAndWhichNamesAreNotAllowed() throws IOException {
        assertTrue(assertThrows(
                        IllegalArgumentException.class,
                        () -> VirtualClass.open(teacher()).roastery("Adda"))
                .getMessage()
                .contains("Did you mean 'Ada'?"));
        assertTrue(assertThrows(IllegalArgumentException.class, () -> VirtualClass.open(students()))
                .getMessage()
                .contains("is not the teacher's folder of a class"));
        assertTrue(assertThrows(
                        IllegalArgumentException.class,
                        () -> VirtualClass.write(
                                Scenario.named("one-cause"), List.of("a", "../b"), 2, folder.resolve("x")))
                .getMessage()
                .contains("number 2 is '../b'"));
        assertFalse(Files.exists(folder.resolve("x")));
    }
}
