package parchment.virtual.classroom;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.virtual.Scenario;
import parchment.virtual.SealedTruth;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.VirtualRoastery;
import parchment.virtual.chance.Seed;

class ClassSecretsTest {
    private static final String SECRET = Seed.secret().text();

    @TempDir
    private Path folder;

    private Path inside;

    @BeforeEach
    void nest() throws IOException {
        folder = folder.toRealPath();
        inside = Files.createDirectories(folder.resolve("a").resolve("b"));
    }

    private static VirtualLogbook logbook(Seed seed) {
        return VirtualRoastery.of(Scenario.named("one-cause"))
                .withSeed(seed)
                .withBatches(2)
                .run();
    }

    @Test
    void findsASealedTruthUnderAnyNameButNotThatOfAPlainSeed() throws IOException {
        Path file = inside.resolve("my notes.txt");
        Files.writeString(file, logbook(Seed.of(7)).truth().sealedText());
        assertEquals(Optional.empty(), ClassSecrets.below(folder));
        Files.writeString(file, logbook(Seed.secret()).truth().sealedText());
        assertEquals(Optional.of(file), ClassSecrets.below(folder));
        Files.writeString(file, logbook(Seed.secret()).truth().text());
        assertEquals(Optional.of(file), ClassSecrets.below(folder), "an opened truth");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "ann=SEED\n",
                "a,b,12,SEED\r\n",
                "student,seed\n\"ann\",\"SEED\"\n",
                "  \"seed\": \"SEED\",\n",
                "SEED"
            })
    void findsASeedUnderAnyNameOfAFile(String text) throws IOException {
        Path file = Files.writeString(inside.resolve("seeds (1).bak"), text.replace("SEED", SECRET));
        assertEquals(Optional.of(file), ClassSecrets.below(folder));
    }

    @ParameterizedTest
    @ValueSource(strings = {"seeds.properties", "seeds.csv", "Seeds.CSV"})
    void findsASeedsFileByItsName(String name) throws IOException {
        Path file = Files.writeString(inside.resolve(name), "ann=7\n");
        assertEquals(Optional.of(file), ClassSecrets.below(folder));
    }

    @Test
    void aProgramThatSpeaksOfSecretsHoldsNone() throws IOException {
        Files.writeString(inside.resolve("A.java"), "Seed.parse(\"" + SECRET + "\");\n");
        Files.writeString(inside.resolve("B.java"), "String what = \"" + SealedTruth.WHAT + "\";\n");
        Files.writeString(inside.resolve("short"), SECRET.substring(0, SECRET.length() - 1) + "\n");
        Files.writeString(inside.resolve("seeds"), "the green seeds\n");
        assertEquals(Optional.empty(), ClassSecrets.below(folder));
        assertEquals(Optional.empty(), ClassSecrets.below(folder.resolve("nowhere")));
    }

    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = "links as Linux and macOS know them")
    void looksBehindTheLinkOfAFileAndPastAnEndlessDevice(@TempDir Path elsewhere) throws IOException {
        Files.createSymbolicLink(inside.resolve("endless.csv"), Path.of("/dev/zero"));
        assertEquals(Optional.empty(), ClassSecrets.below(folder));
        Path seeds = Files.writeString(elsewhere.resolve("x"), "ann=" + SECRET + "\n");
        Path link = Files.createSymbolicLink(inside.resolve("link"), seeds);
        assertEquals(Optional.of(link), ClassSecrets.below(folder));
    }

    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = "rights of files as Linux and macOS know them")
    void goesOnPastWhatThisAccountMayNotRead() throws IOException {
        Path closed = Files.createDirectories(folder.resolve("a").resolve("a closed folder"));
        Path locked = Files.writeString(folder.resolve("a").resolve("a locked file"), "x\n");
        Path file = Files.writeString(inside.resolve("x"), "ann=" + SECRET + "\n");
        Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("---------"));
        Files.setPosixFilePermissions(locked, PosixFilePermissions.fromString("---------"));
        try {
            assumeFalse(Files.isReadable(closed), "this account may read everything");
            assertEquals(Optional.of(file), ClassSecrets.below(folder));
            Files.delete(file);
            assertEquals(Optional.empty(), ClassSecrets.below(folder));
            assertThrows(IOException.class, () -> ClassSecrets.below(closed));
        } finally {
            Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("rwx------"));
        }
    }

    /** The same for an account that may read everything, which meets no such folder. */
    @Test
    void aFolderThatCannotBeReadStopsNothingButItself() throws IOException {
        ClassSecrets.Search search = new ClassSecrets.Search(folder);
        assertEquals(
                FileVisitResult.CONTINUE, search.visitFileFailed(inside, new AccessDeniedException(inside.toString())));
        assertEquals(
                FileVisitResult.CONTINUE,
                search.postVisitDirectory(inside, new AccessDeniedException(inside.toString())));
        assertThrows(
                AccessDeniedException.class,
                () -> search.visitFileFailed(folder, new AccessDeniedException(folder.toString())));
    }

    @Test
    void aFilmOrAnArchiveIsNotReadToItsEnd() throws IOException {
        byte[] film = new byte[1 << 20];
        Arrays.fill(film, (byte) 'x');
        byte[] seed = ("\nann=" + SECRET + "\n").getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(seed, 0, film, film.length - seed.length, seed.length);
        Path file = Files.write(inside.resolve("film"), film);
        assertEquals(Optional.of(file), ClassSecrets.below(folder), "a long text is read");
        film[8191] = 0;
        Files.write(file, film);
        assertEquals(Optional.empty(), ClassSecrets.below(folder), "no text, by its first 8 KB");
        film[8191] = 'x';
        film[8192] = 0;
        Files.write(file, film);
        assertEquals(Optional.of(file), ClassSecrets.below(folder));
    }

    @Test
    void refusesInWordsThatNameTheFileAndWhatToDo() throws IOException {
        ClassSecrets.refuseIn(folder, "packed");
        Path file = Files.writeString(inside.resolve("seeds.properties"), "ann=" + SECRET + "\n");
        assertEquals(
                "The folder " + folder + " is to be packed, but " + file
                        + " holds a secret of a class: whoever gets it knows every truth. Keep the teacher's folder somewhere else,"
                        + " and run this again.",
                assertThrows(IllegalArgumentException.class, () -> ClassSecrets.refuseIn(folder, "packed"))
                        .getMessage());
    }
}
