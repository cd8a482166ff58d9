package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** What goes into the release with a Java of its own, and what its command says; that it works is tried in test_release_with_java.py. */
class ReleaseCommandTest {
    private static final String WINDOWS_RIGHTS = "links and rights of files as Linux and macOS know them";

    private final StringWriter said = new StringWriter();

    private int run(Path home, String... arguments) {
        CommandLine main = Main.commandLine();
        main.getSubcommands().values().forEach(sub -> {
            sub.setOut(new PrintWriter(said));
            sub.setErr(new PrintWriter(said));
        });
        String before = System.getProperty("parchment.home");
        System.setProperty("parchment.home", home.toString());
        try {
            return main.execute(arguments);
        } finally {
            if (before == null) {
                System.clearProperty("parchment.home");
            } else {
                System.setProperty("parchment.home", before);
            }
        }
    }

    private static Path file(Path home, String place) throws IOException {
        Path file = home.resolve(place);
        Files.createDirectories(file.getParent());
        return Files.writeString(file, place);
    }

    private static Path plain(Path folder, String... names) throws IOException {
        Path plain = folder.resolve("parchment-0.1.0.zip");
        try (ZipArchiveOutputStream zip = new ZipArchiveOutputStream(plain.toFile())) {
            for (String name : names) {
                ZipArchiveEntry entry = new ZipArchiveEntry(name);
                entry.setUnixMode(name.endsWith("/parchment") ? 0100755 : 0100644);
                entry.setTime(1_764_000_000_000L);
                zip.putArchiveEntry(entry);
                zip.write(name.getBytes(StandardCharsets.UTF_8));
                zip.closeArchiveEntry();
            }
        }
        return plain;
    }

    @Test
    void systemsAreNamedAlikeWhateverJavaCallsThem() {
        assertEquals("linux-amd64", ThisSystem.name("Linux", "amd64"));
        assertEquals("macos-aarch64", ThisSystem.name("Mac OS X", "aarch64"));
        assertEquals("windows-amd64", ThisSystem.name("Windows 11", "amd64"));
        assertEquals("some-system-x", ThisSystem.name("Some System", "X"));
        assertEquals(ThisSystem.name(System.getProperty("os.name"), System.getProperty("os.arch")), ThisSystem.name());
    }

    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = WINDOWS_RIGHTS)
    void theJavaLiesInTheReleasesOwnFolderWithItsRightsAndWithoutLinks(@TempDir Path folder) throws IOException {
        ReleaseZip release =
                new ReleaseZip(plain(folder, "parchment-0.1.0/parchment", "parchment-0.1.0/docs/parchment.md"));
        Path java = folder.resolve("somewhere").resolve("cut");
        assertTrue(file(java, "bin/java").toFile().setExecutable(true));
        file(java, "lib/modules");
        file(java, "legal/java.base/LICENSE");
        Files.createDirectories(java.resolve("legal/java.xml"));
        Files.createSymbolicLink(java.resolve("legal/java.xml/LICENSE"), Path.of("../java.base/LICENSE"));
        Files.createSymbolicLink(java.resolve("legal/leads-nowhere"), Path.of("gone"));
        Path file = release.with(java, folder.resolve(release.nameHere()));
        assertEquals(
                "parchment-0.1.0-" + ThisSystem.name() + ".zip",
                file.getFileName().toString());
        try (ZipFile zip = ZipFile.builder().setPath(file).get()) {
            List<String> found = new ArrayList<>();
            for (ZipArchiveEntry entry : Collections.list(zip.getEntriesInPhysicalOrder())) {
                found.add(entry.getName() + " " + Integer.toOctalString(entry.getUnixMode()));
            }
            assertEquals(
                    List.of(
                            "parchment-0.1.0/parchment 100755",
                            "parchment-0.1.0/docs/parchment.md 100644",
                            "parchment-0.1.0/java/ 40755",
                            "parchment-0.1.0/java/bin/ 40755",
                            "parchment-0.1.0/java/bin/java 100755",
                            "parchment-0.1.0/java/legal/ 40755",
                            "parchment-0.1.0/java/legal/java.base/ 40755",
                            "parchment-0.1.0/java/legal/java.base/LICENSE 100644",
                            "parchment-0.1.0/java/legal/java.xml/ 40755",
                            "parchment-0.1.0/java/legal/java.xml/LICENSE 100644",
                            "parchment-0.1.0/java/lib/ 40755",
                            "parchment-0.1.0/java/lib/modules 100644"),
                    found);
            assertEquals("legal/java.base/LICENSE", content(zip, "parchment-0.1.0/java/legal/java.xml/LICENSE"));
            assertEquals("parchment-0.1.0/docs/parchment.md", content(zip, "parchment-0.1.0/docs/parchment.md"));
        }
        byte[] once = Files.readAllBytes(file);
        assertTrue(java.resolve("lib/modules").toFile().setLastModified(1_000_000_000L));
        release.with(java, file);
        assertArrayEquals(
                once, Files.readAllBytes(file), "the same files give the same bytes, whenever they were made");
    }

    private static String content(ZipFile zip, String name) throws IOException {
        return new String(zip.getInputStream(zip.getEntry(name)).readAllBytes(), StandardCharsets.UTF_8);
    }

    /** The sum of the three letters is an example of FIPS 180-4, the standard of SHA-256. */
    @Test
    void theSumBesideAFileIsWrittenAsTheProgramsReadItThatCheckIt(@TempDir Path folder) throws IOException {
        Path sum = ReleaseZip.writeSum(Files.writeString(folder.resolve("a.zip"), "abc"));
        assertEquals(folder.resolve("a.zip.sha256"), sum);
        assertEquals(
                "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad  a.zip\n", Files.readString(sum));
    }

    @Test
    void anArchiveWithoutTheProgramIsNoRelease(@TempDir Path folder) throws IOException {
        ReleaseZip none = new ReleaseZip(plain(folder, "parchment-0.1.0/docs/parchment", "parchment"));
        Path file = folder.resolve("made.zip");
        IOException refused = assertThrows(IOException.class, () -> none.with(folder, file));
        assertTrue(
                refused.getMessage().contains("is no release: the program 'parchment' is not in it"),
                refused.getMessage());
        assertTrue(Files.notExists(file));
    }

    @Test
    void saysThatAReleaseIsMadeFromTheSources(@TempDir Path folder) {
        assertEquals(1, run(folder, "release", "--to", folder.toString()));
        assertTrue(
                said.toString().contains("A release is made from the sources, and " + folder + " holds none"),
                said.toString());
        assertTrue(said.toString().contains("./parchment stick"), said.toString());
    }

    @Test
    void saysThatNothingIsBuiltYet(@TempDir Path folder) throws IOException {
        file(folder, "pom.xml");
        file(folder, "kernel-ext/target/parchment-0.1.0-linux-amd64.zip");
        assertEquals(
                1,
                run(
                        folder,
                        "release",
                        "--skip-build",
                        "--to",
                        folder.resolve("made").toString()));
        assertTrue(
                said.toString()
                        .contains("There is no parchment-VERSION.zip in "
                                + folder.resolve("kernel-ext").resolve("target")),
                said.toString());
    }

    @Test
    void packsNeitherIntoALogbookNorTheSecretsOfAClass(@TempDir Path folder) throws IOException {
        Path home = folder.toRealPath();
        file(home, "pom.xml");
        file(home, "roasts/batches.csv");
        assertEquals(
                1,
                run(
                        home,
                        "release",
                        "--skip-build",
                        "--to",
                        home.resolve("roasts").toString()));
        assertTrue(said.toString().contains("A logbook is only ever read"), said.toString());
        Path seeds = file(home, "notebooks/my-class/seeds.csv");
        Files.writeString(seeds, "ann=" + parchment.virtual.chance.Seed.secret().text() + "\n");
        said.getBuffer().setLength(0);
        assertEquals(
                1,
                run(
                        home,
                        "release",
                        "--skip-build",
                        "--to",
                        home.resolve("made").toString()));
        assertTrue(said.toString().contains(seeds + " holds a secret of a class"), said.toString());
    }

    @Test
    void thePagesNameTheFileByTheVersionOfToday() throws IOException {
        Matcher version = Pattern.compile("<artifactId>parchment-reactor</artifactId>\\s*<version>([^<]+)</version>")
                .matcher(Files.readString(Path.of("..", "pom.xml")));
        assertTrue(version.find());
        for (String page : List.of("README.md", "docs/install.md")) {
            Matcher named = Pattern.compile("parchment-([0-9][^/`\\s]*?)(?:-(?:linux|macos|windows)-\\w+)?\\.zip")
                    .matcher(Files.readString(Path.of("..").resolve(page)));
            assertTrue(named.find(), page);
            do {
                assertEquals(version.group(1), named.group(1), page + ": " + named.group());
            } while (named.find());
        }
    }

    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = WINDOWS_RIGHTS)
    void aReleaseThatBringsAJavaHandsThatOneOn(@TempDir Path folder) throws IOException, InterruptedException {
        Path release = folder.resolve("release");
        Path own = file(release, "java/bin/java");
        assertTrue(own.toFile().setExecutable(true));
        Path java = folder.resolve("stick").resolve("java");
        CarriedJava.along(new Places(release), java);
        assertEquals("java/bin/java", Files.readString(java.resolve("bin/java")));
        assertTrue(Files.isExecutable(java.resolve("bin/java")));
    }
}
