package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** What the command says; that a stick works without a network, Java and Python is tried in test_stick.py. */
class StickCommandTest {
    private final StringWriter said = new StringWriter();

    private int run(Path home, String... arguments) {
        CommandLine main = Main.commandLine();
        main.getSubcommands().values().forEach(sub -> sub.setErr(new PrintWriter(said)));
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

    @Test
    @EnabledOnOs(OS.LINUX)
    void saysThatAStickIsPackedFromARelease(@TempDir Path folder) throws IOException {
        assertEquals(1, run(folder, "stick", "--to", folder.toString()));
        assertTrue(said.toString().contains("A stick is packed from a release, and " + folder), said.toString());
        assertTrue(said.toString().contains("mvn verify"), said.toString());
        try (Stream<Path> entries = Files.list(folder)) {
            assertEquals(0, entries.count());
        }
    }

    @Test
    @EnabledOnOs(OS.LINUX)
    void saysThatTheFolderForTheFileIsNotThere(@TempDir Path folder) throws IOException {
        Files.createFile(folder.resolve("parchment-kernel.jar"));
        Path none = folder.resolve("no stick");
        assertEquals(1, run(folder, "stick", "--to", none.toString()));
        assertTrue(said.toString().contains("There is no folder " + none), said.toString());
    }

    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = "links and rights of files as Linux and macOS know them")
    void aCopiedFolderHoldsNoLinksAndKeepsTheRightToRun(@TempDir Path folder) throws IOException {
        Path from = Files.createDirectories(folder.resolve("from"));
        Path program = Files.writeString(from.resolve("program"), "#!/bin/sh\n");
        assertTrue(program.toFile().setExecutable(true));
        Files.createSymbolicLink(from.resolve("other name"), Path.of("program"));
        Files.createSymbolicLink(from.resolve("leads nowhere"), Path.of("gone"));
        Files.writeString(Files.createDirectories(from.resolve("java")).resolve("old"), "left out");
        Files.writeString(
                Files.createDirectories(from.resolve("docs").resolve("java")).resolve("page"), "kept");
        Path to = folder.resolve("to");
        Files.createDirectories(from.resolve("lessons").resolve("teacher"));
        FolderCopy.of(from, to, List.of("java", "lessons/teacher"));
        assertTrue(Files.exists(to.resolve("lessons")));
        assertFalse(Files.exists(to.resolve("lessons").resolve("teacher")));
        assertTrue(Files.isExecutable(to.resolve("program")));
        assertFalse(Files.isSymbolicLink(to.resolve("other name")));
        assertEquals("#!/bin/sh\n", Files.readString(to.resolve("other name")));
        assertFalse(Files.exists(to.resolve("leads nowhere")));
        assertFalse(Files.exists(to.resolve("java")));
        assertEquals("kept", Files.readString(to.resolve("docs").resolve("java").resolve("page")));
    }

    private static Path file(Path home, String place) throws IOException {
        Path file = home.resolve(place);
        Files.createDirectories(file.getParent());
        return Files.writeString(file, "x\n");
    }

    @Test
    @EnabledOnOs(OS.LINUX)
    void refusesToPackWhereTheSeedsOrTruthsOfAClassLieAnywhereBelow(@TempDir Path folder) throws IOException {
        Path home = Files.createDirectories(folder.toRealPath().resolve("release"));
        file(home, "parchment-kernel.jar");
        Path stick = Files.createDirectories(folder.resolve("stick"));
        String secret = parchment.virtual.chance.Seed.secret().text();
        for (String place : List.of(
                "my-class/teacher/seeds.properties",
                "notebooks/lessons/copy of the seeds.txt",
                "docs/deep/down/ann-lesson-2-truth.json",
                ".hidden/seeds.csv")) {
            Path file = Files.writeString(file(home, place), "ann=" + secret + "\n");
            said.getBuffer().setLength(0);
            assertEquals(1, run(home, "stick", "--to", stick.toString(), "--without-jupyter"));
            assertTrue(
                    said.toString()
                            .contains("The folder " + home + " is to be packed, but " + file
                                    + " holds a secret of a class"),
                    said.toString());
            try (Stream<Path> entries = Files.list(stick)) {
                assertEquals(0, entries.count());
            }
            Files.delete(file);
        }
    }

    @Test
    void whatGoesInIsNamedAndNothingThatWasLaidBesideItSince() {
        for (String place : List.of(
                "parchment",
                "parchment.cmd",
                "parchment-kernel.jar",
                "README.md",
                "LICENSE",
                "THIRD-PARTY.md",
                "lib/parchment-0.1.0.jar",
                "licences/x/LICENSE",
                "docs/pictures/a.svg",
                "classes/index.html",
                "sources/pom.xml",
                "sources/src/library/main/java/A.java",
                "datasets/README.md",
                "datasets/harbour/curves/H001.csv",
                "datasets/harbour-truth.json",
                "notebooks/README.md",
                "notebooks/tour.ipynb",
                "notebooks/lessons/1-reading-a-roast.ipynb")) {
            assertTrue(StickCommand.goesIn(place, StickCommand.Answers.LEFT_BEHIND), place);
        }
        for (String place : List.of(
                "my-class/teacher/ann-lesson-2-truth.json",
                "teacher/seeds.properties",
                "out/1-reading-a-roast-teacher.html",
                "java/bin/java",
                "python/bin/python3",
                "datasets/mine/batches.csv",
                "datasets/ann-truth.json",
                "notebooks/lessons/answers/lesson-2-teacher.csv",
                "notebooks/lessons/notes.txt",
                "notebooks/notes.md",
                "notebooks/lessons/.ipynb_checkpoints/1-x-checkpoint.ipynb",
                "notebooks/my class/students/ann/1-reading-a-roast.ipynb",
                "results.html",
                "parchment-old",
                "lib/notes.txt",
                "sources/teacher/seeds.properties")) {
            assertFalse(StickCommand.goesIn(place, StickCommand.Answers.PACKED), place);
        }
        for (String answers : List.of(
                "notebooks/lessons/teacher/1-reading-a-roast-teacher.ipynb",
                "notebooks/lessons/source/1-reading-a-roast.txt")) {
            assertFalse(StickCommand.goesIn(answers, StickCommand.Answers.LEFT_BEHIND), answers);
            assertTrue(StickCommand.goesIn(answers, StickCommand.Answers.PACKED), answers);
        }
    }

    /** As docs/class.md says, which names these folders. */
    @Test
    void whatWasLaidIntoAFolderThatGoesInWholeGoesAlong() throws IOException {
        String said = Files.readString(Path.of("..", "docs", "class.md"));
        for (String folder : List.of(
                "docs",
                "classes",
                "licences",
                "sources/src",
                "sources/kernel-ext",
                "datasets/harbour",
                "datasets/hillside")) {
            assertTrue(said.contains("`" + folder + "`"), folder);
            assertTrue(StickCommand.goesIn(folder + "/my own/notes.txt", StickCommand.Answers.LEFT_BEHIND), folder);
        }
        assertTrue(StickCommand.goesIn("notebooks/my-own.ipynb", StickCommand.Answers.LEFT_BEHIND));
        assertTrue(StickCommand.goesIn("notebooks/lessons/my-own.ipynb", StickCommand.Answers.LEFT_BEHIND));
    }

    /** Every part of a release, as its description names it, goes on the stick. */
    @Test
    void whatGoesInIsAllOfTheReleaseButTheAnswers() throws IOException {
        String release = Files.readString(Path.of("src", "main", "assembly", "release.xml"));
        for (String part : List.of(
                "parchment",
                "parchment.cmd",
                "README.md",
                "CHANGES.md",
                "DEVELOPERS.md",
                "LICENSE",
                "THIRD-PARTY.md")) {
            assertTrue(release.contains("<include>" + part + "</include>"), part);
            assertTrue(StickCommand.goesIn(part, StickCommand.Answers.LEFT_BEHIND), part);
        }
        for (String part : List.of("notebooks", "datasets", "docs")) {
            assertTrue(release.contains("<include>" + part + "/**</include>"), part);
            Path folder = Path.of("..", part);
            try (Stream<Path> files = Files.walk(folder)) {
                for (Path file : files.filter(Files::isRegularFile).toList()) {
                    String place =
                            part + "/" + folder.relativize(file).toString().replace('\\', '/');
                    boolean own = place.contains("/answers/") || place.contains(".ipynb_checkpoints/");
                    assertTrue(own || StickCommand.goesIn(place, StickCommand.Answers.PACKED), place);
                }
            }
        }
    }

    @Test
    void onlyWhatIsWantedIsCopied(@TempDir Path folder) throws IOException {
        Path from = folder.resolve("from");
        file(from, "docs/a.md");
        file(from, "teacher/secret");
        Path to = folder.resolve("to");
        FolderCopy.only(from, to, place -> place.equals("docs/a.md"));
        try (Stream<Path> copied = Files.walk(to)) {
            assertEquals(
                    List.of("", "docs", "docs/a.md"),
                    copied.map(each -> to.relativize(each).toString().replace('\\', '/'))
                            .sorted()
                            .toList());
        }
    }
}
