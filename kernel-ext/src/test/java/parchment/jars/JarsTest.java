package parchment.jars;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;
import static parchment.jars.MadeRepository.needs;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.jar.Attributes;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.objectweb.asm.Opcodes;
import parchment.jars.MavenSettings.Mirror;

/** What is loaded, from where, and what is said; against a repository of invented libraries on the disk. */
class JarsTest {
    @TempDir
    private Path folder;

    private MadeRepository remote;
    private final List<String> said = new ArrayList<>();
    private final List<Path> classPath = new ArrayList<>();
    private boolean programFirst;

    private final SessionJars.ClassPath recording = new SessionJars.ClassPath() {
        @Override
        public void add(Path entry) {
            said.add("added " + entry.getFileName());
            classPath.add(entry);
        }

        @Override
        public void programFirst() {
            programFirst = true;
        }

        @Override
        public void say(String line) {
            said.add(line);
        }
    };

    @BeforeEach
    void aRepository() throws IOException {
        remote = new MadeRepository(Files.createDirectory(folder.resolve("remote")));
        remote.add(
                "harbour.tools",
                "blends",
                "1.0",
                "<dependencies>" + needs("harbour.tools", "scales", "2.1", "compile")
                        + needs("harbour.tools", "proofs", "1.0", "test") + "</dependencies>");
        remote.add("harbour.tools", "scales", "2.1", "");
        remote.add("harbour.tools", "scales", "2.2", "");
        remote.list("harbour.tools", "blends", "0.8", "0.9", "1.0");
    }

    private SessionJars session(Network network, List<Mirror> mirrors, Repository... repositories) {
        return new SessionJars(
                recording,
                network,
                () -> new MavenSettings(folder.resolve("local"), mirrors, List.of(), Network.WHEN_ASKED),
                List.of(repositories));
    }

    private Repository made() {
        return new Repository("made", remote.folder().toUri().toString());
    }

    private SessionJars session() {
        return session(Network.WHEN_ASKED, List.of(), made());
    }

    private static List<Coordinate> names(String... coordinates) {
        return List.of(coordinates).stream().map(Coordinate::parse).toList();
    }

    private String refusal(SessionJars session, String coordinate) {
        String words = assertThrows(IllegalArgumentException.class, () -> session.addLibraries(names(coordinate)))
                .getMessage();
        assertEquals(List.of(), classPath, "nothing is loaded");
        return words;
    }

    @Test
    void bringsWhatALibraryNeedsAndListsItBeforeItIsLoaded() throws IOException {
        Jars jars = session().addLibraries(names("harbour.tools:blends:1.0"));
        String one = Jar.size(Files.size(classPath.get(0)));
        String both = Jar.size(Files.size(classPath.get(0)) + Files.size(classPath.get(1)));
        assertEquals(
                List.of(
                        "Fetching harbour.tools:blends:1.0, harbour.tools:scales:2.1 from made ("
                                + remote.folder().toUri() + ") ...",
                        "Loading 2 jars (" + both + "):",
                        "  harbour.tools:blends:1.0     " + one + "  Invented licence",
                        "  harbour.tools:scales:2.1     " + one + "  Invented licence",
                        "added blends-1.0.jar",
                        "added scales-2.1.jar"),
                said);
        assertEquals("2 jars (" + both + "): harbour.tools:blends:1.0, harbour.tools:scales:2.1.", jars.toString());
        assertEquals(2, jars.paths().size());
        assertFalse(programFirst);
    }

    @Test
    void givesThePathsAlsoOfWhatIsThereAlready() throws IOException {
        SessionJars session = session();
        Jars first = session.addLibraries(names("harbour.tools:blends:1.0"));
        said.clear();
        Jars again = session.addLibraries(names("harbour.tools:blends:1.0"));
        assertEquals(first.paths(), again.paths());
        assertEquals(2, again.paths().size());
        assertEquals(List.of(), again.added());
        assertEquals(
                "Nothing new was loaded: it is there already. This session has 2 jars of yours now.", again.toString());
        assertEquals(
                first.paths().subList(1, 2),
                session.addLibraries(names("harbour.tools:scales:2.1")).paths(),
                "one that came along");
        assertEquals(List.of(), said, "the value says it, and nothing else does");
    }

    @Test
    void givesThePathsAlsoOfFilesThatAreThereAlready() throws IOException {
        Path one = MadeRepository.jar(
                folder.resolve("one.jar"), "tools/One.class", MadeRepository.says("tools/One", "1", Opcodes.V17));
        Path two = MadeRepository.jar(
                folder.resolve("two.jar"), "tools/Two.class", MadeRepository.says("tools/Two", "2", Opcodes.V17));
        SessionJars session = session();
        session.addFiles(List.of(one));
        said.clear();
        assertEquals(List.of(one.toString()), session.addFiles(List.of(one)).paths());
        assertEquals(List.of(), said, "the value says it, and nothing else does");
        assertEquals(
                List.of(one.toString(), two.toString()),
                session.addFiles(List.of(one, two)).paths());
    }

    @Test
    void asksNobodyWhereTheLocalRepositoryHasEverything() {
        session().addLibraries(names("harbour.tools:blends:1.0"));
        said.clear();
        Repository nobody = new Repository("gone", "https://localhost:1/");
        session(Network.NEVER, List.of(), nobody).addLibraries(names("harbour.tools:blends:1.0"));
        assertTrue(said.get(0).startsWith("Loading 2 jars ("), said.get(0));
    }

    @Test
    void fetchesNothingThatIsNotAskedFor() {
        String words = refusal(session(Network.NEVER, List.of(), made()), "harbour.tools:blends:1.0");
        assertEquals(
                "harbour.tools:blends:1.0 is not, or not with all that it needs, in the local repository '"
                        + folder.resolve("local")
                        + "', and nothing is fetched here. To allow it: ./parchment run --fetch-jars; a cell in an open notebook"
                        + " fetches what it asks for.",
                words);
        assertEquals(List.of(), said);
    }

    @Test
    void keepsToSettingsThatSayOffline() {
        SessionJars offline = new SessionJars(
                recording,
                Network.WHEN_ASKED,
                () -> new MavenSettings(folder.resolve("local"), List.of(), List.of(), Network.NEVER),
                List.of(made()));
        assertTrue(refusal(offline, "harbour.tools:blends:1.0")
                .endsWith("the settings of Maven (settings.xml) say to work offline."));
    }

    @Test
    void refusesALibraryWhoseChecksumIsWrong() throws IOException {
        Path jar = remote.file("harbour.tools", "scales", "2.1", "jar");
        Files.writeString(jar.resolveSibling(jar.getFileName() + ".sha1"), "0".repeat(40));
        String words = refusal(session(), "harbour.tools:blends:1.0");
        assertTrue(words.startsWith("harbour.tools:scales:2.1 came from made"), words);
        assertTrue(words.contains("otherwise than its makers published it: its checksum is "), words);
        assertTrue(words.contains(", and should be " + "0".repeat(40) + "."), words);
        assertTrue(words.endsWith("Nothing was loaded."), words);
    }

    @Test
    void refusesALibraryThatHasNoChecksum() throws IOException {
        Path jar = remote.file("harbour.tools", "scales", "2.1", "jar");
        Files.delete(jar.resolveSibling(jar.getFileName() + ".sha1"));
        String words = refusal(session(), "harbour.tools:blends:1.0");
        assertTrue(words.startsWith("harbour.tools:scales:2.1 cannot be trusted: made ("), words);
    }

    @Test
    void saysWhichVersionsThereAre() {
        String words = refusal(session(), "harbour.tools:blends:1.1");
        assertTrue(
                words.contains("has harbour.tools:blends, but no version 1.1. The newest there: 1.0, 0.9, 0.8."),
                words);
    }

    @Test
    void saysThatNothingHasThatName() {
        String words = refusal(session(), "harbour.tools:blend:1.0");
        assertTrue(words.startsWith("Nothing is named harbour.tools:blend in made ("), words);
        assertTrue(words.endsWith("Is it spelled as its makers write it? Nothing was loaded."), words);
    }

    @Test
    void saysWhichOfTheThingsNeededIsNotThere() throws IOException {
        remote.add(
                "harbour.tools",
                "torn",
                "1.0",
                "<dependencies>" + needs("harbour.tools", "lost", "3.0", "compile") + "</dependencies>");
        String words = refusal(session(), "harbour.tools:torn:1.0");
        assertTrue(
                words.startsWith("harbour.tools:lost:3.0, which harbour.tools:torn:1.0 needs, is not in made"), words);
        assertTrue(words.contains("Jars.repository("), words);
    }

    @Test
    void saysThatTheRepositoryCannotBeReached() {
        Repository nobody = new Repository("far", "https://localhost:1/maven");
        String words = refusal(session(Network.WHEN_ASKED, List.of(), nobody), "harbour.tools:blends:1.0");
        assertTrue(words.contains("is not in the local repository, and far (localhost) cannot be reached."), words);
        assertTrue(words.contains("~/.m2/settings.xml"), words);
    }

    @Test
    void namesEveryRepositoryThatCannotBeReached() {
        Repository near = new Repository("near", "https://localhost:1/");
        Repository far = new Repository("far", "https://localhost:2/maven");
        String words = refusal(session(Network.WHEN_ASKED, List.of(), near, far), "harbour.tools:blends:1.0");
        assertTrue(
                words.contains(
                        "is not in the local repository, and near (localhost), far (localhost) cannot be reached."),
                words);
        String one = refusal(session(Network.WHEN_ASKED, List.of(), made(), far), "harbour.tools:blend:1.0");
        assertTrue(one.contains("is not in the local repository, and far (localhost) cannot be reached."), one);
    }

    @Test
    void asksNoRepositoryWithoutEncryption() {
        String words = assertThrows(
                        IllegalArgumentException.class, () -> Repository.encrypted("plain", "http://example.org/maven"))
                .getMessage();
        assertTrue(words.startsWith("The repository 'plain' (http://example.org/maven) is not encrypted"), words);
        String other = assertThrows(
                        IllegalArgumentException.class, () -> Repository.encrypted("disk", "file:///srv/maven"))
                .getMessage();
        assertTrue(other.startsWith("A repository has an address that begins with https; 'disk' has"), other);
        Mirror mirror = Mirror.asked("house", "http://example.org/maven", "*");
        assertTrue(refusal(session(Network.WHEN_ASKED, List.of(mirror), made()), "harbour.tools:blends:1.0")
                .startsWith("The repository 'house' (http://example.org/maven) is not encrypted"));
    }

    @Test
    void saysThatJavaDoesNotTrustWhoAnswers() throws Exception {
        try (MadeServer server = MadeServer.https(folder)) {
            Repository own = new Repository("own", server.address());
            Mirror mirror = Mirror.asked("house", own.url(), "own");
            String words = refusal(session(Network.WHEN_ASKED, List.of(mirror), own), "harbour.tools:blends:1.0");
            assertTrue(words.contains("Java does not trust who answers for house (localhost)."), words);
        }
    }

    @Test
    void aCellCanBeStoppedWhileARepositoryDoesNotAnswer() throws Exception {
        try (ServerSocket silent = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            Repository far = new Repository("far", "https://localhost:" + silent.getLocalPort() + "/");
            FutureTask<Jars> cell = new FutureTask<>(
                    () -> session(Network.WHEN_ASKED, List.of(), far).addLibraries(names("harbour.tools:blends:1.0")));
            Thread thread = new Thread(cell);
            thread.start();
            silent.accept(); // Asked, and answers nothing.
            thread.interrupt();
            ExecutionException stopped = assertThrows(ExecutionException.class, () -> cell.get(20, TimeUnit.SECONDS));
            assertEquals(CancellationException.class, stopped.getCause().getClass());
            assertEquals(List.of(), classPath);
        }
    }

    @Test
    void saysThatARepositoryAsksForAPassword() throws Exception {
        try (MadeServer server = MadeServer.https(folder)) {
            server.trusted();
            server.answers(401);
            Repository own = new Repository("own", server.address());
            String words = refusal(session(Network.WHEN_ASKED, List.of(), own), "harbour.tools:blends:1.0");
            assertTrue(words.contains("own (localhost) asks for a name and a password"), words);
        }
    }

    @Test
    void goesWhereItIsSentOnOnlyIfThatIsEncrypted() throws Exception {
        try (MadeServer open = MadeServer.http();
                MadeServer server = MadeServer.https(folder)) {
            server.trusted();
            open.serves("/", remote.folder());
            server.serves("/there/", remote.folder());
            for (int status : new int[] {301, 302, 303, 307, 308}) {
                String within = status + "/within/";
                String plain = status + "/plain/";
                String later = status + "/later/";
                server.sendsOn("/" + within, status, "/there/");
                server.sendsOn("/" + plain, status, open.address());
                server.sendsOn("/" + later, status, server.address() + plain);
                for (String place : List.of(plain, later)) {
                    Repository own = new Repository("own", server.address() + place);
                    String words = refusal(session(Network.WHEN_ASKED, List.of(), own), "harbour.tools:scales:2.1");
                    assertEquals(
                            "harbour.tools:scales:2.1 could not be fetched: own (localhost) sends on to "
                                    + open.address()
                                    + "harbour/tools/scales/2.1/scales-2.1.pom, which is not encrypted. What comes from there can be"
                                    + " changed on its way. Nothing was loaded.",
                            words);
                }
                Repository own = new Repository("own", server.address() + within);
                MavenSettings settings =
                        new MavenSettings(folder.resolve("local" + status), List.of(), List.of(), Network.WHEN_ASKED);
                assertEquals(
                        1,
                        new Resolver(settings, Network.WHEN_ASKED, said::add)
                                .find(names("harbour.tools:scales:2.1"), List.of(own))
                                .size());
            }
            assertEquals(0, open.asked(), "nothing goes out without encryption");
        }
    }

    @Test
    void asksNobodyInPlaceOfARepositoryThatSettingsBlock() {
        Mirror stop = new Mirror("stop", "http://0.0.0.0/", "made", MavenSettings.Use.BLOCKED);
        assertEquals(
                "harbour.tools:blends:1.0 is not in the local repository, and the settings of Maven (settings.xml) forbid to ask"
                        + " made (blocked by the mirror stop). Nothing was loaded.",
                refusal(session(Network.WHEN_ASKED, List.of(stop), made()), "harbour.tools:blends:1.0"));
        assertEquals(List.of(), said, "nothing is fetched");
        Repository other = new Repository("other", remote.folder().toUri().toString());
        session(Network.WHEN_ASKED, List.of(stop), made(), other).addLibraries(names("harbour.tools:blends:1.0"));
        assertEquals(
                "The settings of Maven (settings.xml) forbid to ask made (blocked by the mirror stop).", said.get(0));
        assertTrue(said.get(1).contains(" from other ("), said.get(1));
        assertEquals(2, classPath.size());
    }

    @Test
    void keepsTheVersionThatTheSessionLoadedFirst() {
        SessionJars session = session();
        session.addLibraries(names("harbour.tools:blends:1.0"));
        said.clear();
        Jars second = session.addLibraries(names("harbour.tools:scales:2.2"));
        String note =
                "harbour.tools:scales 2.2 is not loaded: this session has 2.1, and that one is used. To change it, restart the"
                        + " kernel and name 2.2 first.";
        assertEquals(List.of(note), second.notes());
        assertEquals(note, said.get(said.size() - 1));
        assertEquals(2, classPath.size());
        said.clear();
        session.addLibraries(names("harbour.tools:scales:2.1"));
        assertEquals(List.of(), said, "the same version again needs no word");
    }

    /** A file with the class that the made repository's library of that name has too, or with another. */
    private Path file(String name, String type) throws IOException {
        return MadeRepository.jar(
                folder.resolve(name), type + ".class", MadeRepository.says(type, "a word", Opcodes.V17));
    }

    private static String otherVersion(String asked, String version, String before) {
        return asked + " " + version + " is not loaded: this session has " + before
                + ", and that one is used. To change it, restart the kernel and name " + version + " first.";
    }

    @Test
    void hasALibraryInOneVersionAlsoBetweenFilesAndNames() throws IOException {
        Path file = file("scales-1.0.jar", "scales/Says");
        SessionJars session = session();
        session.addFiles(List.of(file));
        assertEquals(
                List.of(otherVersion("harbour.tools:scales", "2.1", "1.0")),
                session.addLibraries(names("harbour.tools:scales:2.1")).notes());
        assertEquals(List.of(file), classPath);
        classPath.clear();
        SessionJars second = session();
        second.addLibraries(names("harbour.tools:scales:2.1"));
        assertEquals(
                List.of(otherVersion("scales", "1.0", "2.1")),
                second.addFiles(List.of(file)).notes());
        assertEquals(1, classPath.size());
        Path same = file("scales-2.1.jar", "scales/Says");
        assertEquals(List.of(), second.addFiles(List.of(same)).notes(), "the same version needs no word");
        assertEquals(1, classPath.size());
    }

    @Test
    void hasALibraryInOneVersionAlsoWithinOneFolder() throws IOException {
        Path one = file("blend-1.0.jar", "blend/Says");
        Path two = file("blend-2.0.jar", "blend/Says");
        Path scales = file("scales-1.0.jar", "scales/Says");
        SessionJars session = session();
        assertEquals(
                List.of(otherVersion("blend", "2.0", "1.0")),
                session.addFiles(List.of(one, two, scales)).notes());
        assertEquals(List.of(one, scales), classPath);
        assertEquals(
                List.of(otherVersion("blend", "2.0", "1.0")),
                session.addFiles(List.of(two)).notes(),
                "and so in a later call");
    }

    @Test
    void takesFilesForOneLibraryOnlyIfTheyHaveAClassInCommon() throws IOException {
        Path one = file("core-1.0.jar", "ours/Says");
        Path two = file("core-2.0.jar", "theirs/Says");
        Path natives = file("core-1.0-linux.jar", "linux/Says");
        assertEquals(List.of(), session().addFiles(List.of(one, two, natives)).notes());
        assertEquals(List.of(one, two, natives), classPath);
    }

    @Test
    void takesTwoNamesForOneLibraryOnlyInOneGroup() throws IOException {
        remote.add("other.makers", "scales", "2.2", "");
        session().addLibraries(names("harbour.tools:scales:2.1", "other.makers:scales:2.2"));
        assertEquals(2, classPath.size());
    }

    @Test
    void loadsNoLibraryThatIsNoJar() throws IOException {
        Path archive = remote.file("harbour.tools", "scales", "2.1", "zip");
        Files.writeString(archive, "an archive");
        MadeRepository.sign(archive);
        Jars jars = session().addLibraries(names("harbour.tools:scales:zip:2.1"));
        assertEquals(
                List.of("harbour.tools:scales:2.1 is no jar but a file of the kind zip; it is not loaded."),
                jars.notes());
        assertEquals(List.of(), classPath);
    }

    /** A jar that does not tell its group may be anybody's of that name, so another version of it is looked for first. */
    @Test
    void saysWhatThePartsOfTheProgramAreWhereALibraryIsNotToBeHad() {
        String own = ProgramJars.ofThisProgram().version("asm").orElseThrow();
        SessionJars session = session(Network.NEVER, List.of(), made());
        Jars jars = session.addLibraries(names("org.ow2.asm:asm:3.8.0"));
        assertEquals(2, jars.notes().size());
        assertTrue(jars.notes().get(0).startsWith("org.ow2.asm:asm:3.8.0 is not, or not with all"));
        assertEquals(
                "asm " + own + " is part of Parchment, and that one is used here.",
                jars.notes().get(1));
        assertEquals(jars.notes(), said);
        assertEquals(List.of(), classPath);
        said.clear();
        assertThrows(
                IllegalArgumentException.class,
                () -> session.addLibraries(names("org.ow2.asm:asm:3.8.0", "harbour.tools:blends:1.0")),
                "one that is no part of it is still lacking");
    }

    @ParameterizedTest
    @CsvSource({"tech.tablesaw:tablesaw-core", "org.ow2.asm:asm"})
    void aLibraryOfTheProgramItselfIsToldBeforeAnythingIsLookedFor(String library) {
        String artifact = library.substring(library.indexOf(':') + 1);
        String own = ProgramJars.ofThisProgram().version(artifact).orElseThrow();
        SessionJars session = new SessionJars(
                recording,
                Network.WHEN_ASKED,
                () -> {
                    throw new AssertionError("it was looked for");
                },
                List.of(made()));
        Jars jars = session.addLibraries(names(library + ":" + own));
        assertEquals(List.of(artifact + " " + own + " is part of Parchment, and that one is used here."), jars.notes());
        assertEquals(jars.notes(), said);
        assertEquals(List.of(), classPath);
    }

    @Test
    void anotherVersionOfALibraryOfTheProgramIsToldBeforeAnythingIsLookedForAndTheOthersAreLoaded() {
        String own = ProgramJars.ofThisProgram().version("xchart").orElseThrow();
        session().addLibraries(names("org.knowm.xchart:xchart:3.8.0", "harbour.tools:scales:2.1"));
        assertEquals(
                "org.knowm.xchart:xchart:3.8.0 is not loaded: Parchment runs on xchart " + own
                        + ", and that one is used here.",
                said.get(0));
        assertTrue(said.get(1).startsWith("Fetching harbour.tools:scales:2.1 from made"), said.toString());
        assertEquals(1, classPath.size());
    }

    @ParameterizedTest
    @CsvSource({
        "harbour.tools:xchart:3.8.0, false",
        "org.knowm.xchart:xchart:jar:sources:4.0.3, false",
        "org.knowm.xchart:xchart:1.0, true"
    })
    void aLibraryOfThatNameBySomebodyElseIsNoneOfTheProgram(String name, boolean isOne) {
        assertEquals(isOne, ProgramJars.ofThisProgram().isOne(Coordinate.parse(name)));
    }

    @Test
    void refusesAtOnceAPathThatJavaWouldTakeForTwo() throws IOException {
        assumeFalse(java.io.File.separatorChar == '\\', "no file of Windows has the sign");
        Path place = Files.createDirectory(folder.resolve("roast:tools"));
        Path jar = MadeRepository.jar(
                place.resolve("blends.jar"),
                "harbour/Blend.class",
                MadeRepository.says("harbour/Blend", "even", Opcodes.V17));
        for (Path each : List.of(jar, place)) {
            assertEquals(
                    "'" + each
                            + "' cannot be loaded: Java takes the sign ':' in a path for the end of it. Give the file or its"
                            + " folder a name without that sign. Nothing was loaded.",
                    assertThrows(IllegalArgumentException.class, () -> session().addFiles(List.of(each)))
                            .getMessage());
        }
        assertEquals(List.of(), said);
    }

    @Test
    void namesTheJarsOfAFolderThatNoSessionCouldLoad() throws IOException {
        Path place = Files.createDirectory(folder.resolve("tools"));
        assertEquals(List.of("There is no jar directly in '" + place + "'."), SessionJars.troublesIn(place));
        MadeRepository.jar(
                place.resolve("blends.jar"),
                "harbour/Blend.class",
                MadeRepository.says("harbour/Blend", "even", Opcodes.V17));
        assertEquals(List.of(), SessionJars.troublesIn(place));
        Files.writeString(place.resolve("half.jar"), "not found");
        assertEquals(1, SessionJars.troublesIn(place).size());
        assertTrue(
                SessionJars.troublesIn(place).get(0).contains("half.jar"),
                SessionJars.troublesIn(place).toString());
    }

    @Test
    void keepsTheVersionThatTheProgramRunsOn() throws IOException {
        Path older = MadeRepository.jar(
                folder.resolve("xchart-3.0.0.jar"),
                "org/knowm/xchart/XYChart.class",
                MadeRepository.says("org/knowm/xchart/XYChart", "old", Opcodes.V17),
                "org/knowm/xchart/Other.class",
                MadeRepository.says("org/knowm/xchart/Other", "old", Opcodes.V17));
        session().addFiles(List.of(older));
        String own = ProgramJars.ofThisProgram().version("xchart").orElseThrow();
        assertEquals(
                List.of("xchart-3.0.0.jar is not loaded: Parchment runs on xchart " + own
                        + ", and that one is used here."),
                said);
    }

    @Test
    void saysInOneLineWhatTheProgramRunsOnItselfWhereItIsMuch() throws IOException {
        Path chart = MadeRepository.jar(
                folder.resolve("xchart-3.0.0.jar"),
                "org/knowm/xchart/XYChart.class",
                MadeRepository.says("org/knowm/xchart/XYChart", "old", Opcodes.V17));
        Path json = MadeRepository.jar(
                folder.resolve("gson-1.0.jar"),
                "com/google/gson/Gson.class",
                MadeRepository.says("com/google/gson/Gson", "old", Opcodes.V17));
        session().addFiles(List.of(chart, json));
        ProgramJars program = ProgramJars.ofThisProgram();
        assertEquals(
                List.of("2 jars are not loaded: Parchment runs on xchart "
                        + program.version("xchart").orElseThrow() + ", gson "
                        + program.version("gson").orElseThrow()
                        + ", and those are used here in place of xchart-3.0.0.jar, gson-1.0.jar."),
                said);
    }

    @Test
    void readsWhatTheProgramRunsOnFromItsOwnJar() throws IOException {
        Manifest manifest = new Manifest();
        manifest.getMainAttributes().put(Attributes.Name.MANIFEST_VERSION, "1.0");
        manifest.getMainAttributes().put(Attributes.Name.CLASS_PATH, "lib/xchart-9.9.jar lib/listed-1.2-beta.jar");
        Path jar = folder.resolve("program.jar");
        new JarOutputStream(Files.newOutputStream(jar), manifest).close();
        ProgramJars program = ProgramJars.of(List.of(folder.toString(), jar.toString(), "/x/asm-9.9.1.jar"));
        assertEquals("9.9", program.version("xchart").orElseThrow());
        assertEquals("1.2-beta", program.version("listed").orElseThrow());
        assertEquals("9.9.1", program.version("asm").orElseThrow());
        assertTrue(program.version("other").isEmpty());
    }

    @Test
    void saysWhichClassesAreThereAlready() throws IOException {
        byte[] chart = MadeRepository.says("org/knowm/xchart/XYChart", "old", Opcodes.V17);
        Path some = MadeRepository.jar(
                folder.resolve("all-in-one.jar"),
                "org/knowm/xchart/XYChart.class",
                chart,
                "harbour/Own.class",
                MadeRepository.says("harbour/Own", "own", Opcodes.V17));
        Path all = MadeRepository.jar(folder.resolve("copy.jar"), "org/knowm/xchart/XYChart.class", chart);
        String holder =
                "xchart-" + ProgramJars.ofThisProgram().version("xchart").orElseThrow() + ".jar";
        session().addFiles(List.of(some));
        assertTrue(programFirst, "the compiler looks in the same order");
        assertEquals(
                "all-in-one.jar has 1 of its 2 classes in common with " + holder
                        + "; those are used, and only the rest comes from it.",
                said.get(2));
        said.clear();
        session().addFiles(List.of(all));
        assertEquals(List.of("copy.jar is not loaded: all its classes are there already, in " + holder + "."), said);
    }

    @Test
    void refusesAJarForANewerJava() throws IOException {
        int here = Runtime.version().feature();
        Path fits =
                MadeRepository.jar(folder.resolve("fits.jar"), "a/A.class", MadeRepository.says("a/A", "a", 44 + here));
        Path newer = MadeRepository.jar(
                folder.resolve("newer.jar"), "a/A.class", MadeRepository.says("a/A", "a", 45 + here));
        Path later = MadeRepository.jar(
                folder.resolve("later.jar"),
                "META-INF/versions/99/a/A.class",
                MadeRepository.says("a/A", "a", 45 + here));
        session().addFiles(List.of(fits, later));
        String words = assertThrows(
                        IllegalArgumentException.class, () -> session().addFiles(List.of(newer)))
                .getMessage();
        assertEquals(
                "'newer.jar' was made for Java " + (here + 1) + " or later; this session runs on Java " + here
                        + ". Name an older version of it, or install a newer Java and then Parchment again. Nothing was loaded.",
                words);
    }

    @Test
    void refusesAFileThatIsNoJar() throws IOException {
        Path text = Files.writeString(folder.resolve("page.jar"), "<html>Not found</html>");
        String words = assertThrows(
                        IllegalArgumentException.class, () -> session().addFiles(List.of(text)))
                .getMessage();
        assertTrue(words.startsWith("'" + text + "' is no jar: a jar is a zip archive of Java classes"), words);
        String none = assertThrows(
                        IllegalArgumentException.class, () -> session().addFiles(List.of(folder.resolve("none.jar"))))
                .getMessage();
        assertTrue(none.startsWith("There is no file '" + folder.resolve("none.jar") + "'."), none);
        String empty = assertThrows(
                        IllegalArgumentException.class,
                        () -> SessionJars.jarsIn(Files.createDirectory(folder.resolve("e"))))
                .getMessage();
        assertTrue(empty.contains("has neither jars nor classes in it"), empty);
    }

    @Test
    void saysThatAFolderCannotBeRead() throws IOException {
        Path closed = Files.createDirectories(folder.resolve("tools/closed"));
        closed.toFile().setReadable(false);
        assumeFalse(Files.isReadable(closed), "whoever runs this may read everything");
        String words = assertThrows(IllegalArgumentException.class, () -> JarFiles.matching(folder + "/tools/*/*.jar"))
                .getMessage();
        closed.toFile().setReadable(true);
        assertTrue(words.contains("'" + closed + "'"), words);
        assertFalse(words.contains("Exception"), words);
    }

    @ParameterizedTest
    @ValueSource(strings = {"./E.class", "../E.class", "a/../E.class", "a/./", ".."})
    void refusesAJarThatTheCompilerOpensNever(String entry) throws IOException {
        Path jar = MadeRepository.jar(folder.resolve("odd.jar"), entry, new byte[0]);
        assertEquals(
                "'odd.jar' cannot be used: something in it is named '" + entry
                        + "', and Java opens no jar where . or .. is a part of a name. It was not loaded, because no later cell"
                        + " could run with it. Ask its makers for a whole one.",
                notUsed(jar));
    }

    @ParameterizedTest
    @ValueSource(strings = {"lib/a%b.jar", "a?b.jar", "[]", "odd.jar", "leads.jar", "torn.jar"})
    void refusesAJarWhoseManifestLeadsToWhatJavaCannotRead(String names) throws IOException {
        MadeRepository.jar(folder.resolve("odd.jar"), "./E.class", new byte[0]);
        Files.writeString(folder.resolve("torn.jar"), "torn");
        leading(folder.resolve("leads.jar"), "odd.jar");
        assertEquals(
                "'leading.jar' cannot be used: its manifest leads to other jars (Class-Path: " + names
                        + "), and Java cannot read one of these names, or one of these jars. It was not loaded, because no later"
                        + " cell could run with it. Ask its makers for a whole one.",
                notUsed(leading(folder.resolve("leading.jar"), names)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"none.jar", "a%20b.jar", "http://example.org/a.jar", "usual.jar ."})
    void loadsAJarWhoseManifestLeadsToWhatMayBeMissing(String names) throws IOException {
        leading(folder.resolve("usual.jar"), "leading.jar");
        session().addFiles(List.of(leading(folder.resolve("leading.jar"), names)));
        assertEquals(List.of(folder.resolve("leading.jar")), classPath);
    }

    @ParameterizedTest
    @ValueSource(strings = {"a/..E.class", "a/.hidden/E.class", "/a/E.class", "a//E.class", "a b/E.class"})
    void loadsAJarWithNamesThatAreOnlyUnusual(String entry) throws IOException {
        Path jar = MadeRepository.jar(folder.resolve("unusual.jar"), entry, new byte[0]);
        session().addFiles(List.of(jar));
        assertEquals(List.of(jar), classPath);
    }

    private String notUsed(Path jar) {
        String words = assertThrows(
                        IllegalArgumentException.class, () -> session().addFiles(List.of(jar)))
                .getMessage();
        assertEquals(List.of(), classPath, "nothing is loaded");
        return words;
    }

    private static Path leading(Path jar, String names) throws IOException {
        String manifest = "Manifest-Version: 1.0\nClass-Path: " + names + "\n";
        return MadeRepository.jar(
                jar,
                "META-INF/MANIFEST.MF",
                manifest.getBytes(StandardCharsets.UTF_8),
                "a/A.class",
                MadeRepository.says("a/A", "a", Opcodes.V17));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "a.b:c:1.0|a.b:c:1.0",
                "a.b:c:jar:1.0|a.b:c:1.0",
                "a.b:c:jar:linux:1.0|a.b:c:linux:1.0",
                "a.b:c|has no version",
                "a.b|group:artifact:version",
                "a.b:c:jar:x:1.0:more|group:artifact:version",
                "a.b::1.0|a part is empty",
                "..:..:..|'..' cannot be a name",
                "a.b:.:1.0|'.' cannot be a name",
                "a..b:c:1.0|a..b:c:1.0",
                "a.b:c d:1.0|'c d' cannot be a name",
                "a.b:c:LATEST|leaves open which version",
                "a.b:c:[1.0,2.0)|leaves open which version",
                "a.b:c:1.+|leaves open which version",
            })
    void readsTheNameOfALibrary(String written, String expected) {
        String found;
        try {
            found = Coordinate.parse(written).toString();
        } catch (IllegalArgumentException e) {
            found = e.getMessage();
        }
        assertTrue(found.contains(expected), found);
    }

    @Test
    void whatCanBeNoFileIsToldAsTheNameOfALibrary() {
        try (Jars.InPlace place = Jars.on(session())) {
            for (String written : List.of("", " ", "\u0000")) {
                String words = assertThrows(IllegalArgumentException.class, () -> Jars.add(written))
                        .getMessage();
                assertEquals(
                        "A library is named group:artifact:version, as in \"org.apache.commons:commons-math3:3.6.1\"; found '"
                                + (written.isBlank() ? "" : "?") + "'.",
                        words);
            }
        }
    }

    @Test
    void worksOnlyInANotebook() {
        String words = assertThrows(IllegalStateException.class, () -> Jars.add("a:b:1.0"))
                .getMessage();
        assertTrue(words.startsWith("Jars are added in a cell of a notebook."), words);
    }

    @Test
    void aJarWithoutClassesIsLoadedAndSaidToHoldNone() throws IOException {
        Path sources = MadeRepository.jar(
                folder.resolve("blends-1.0-sources.jar"),
                "harbour/Blend.java",
                "class Blend {}".getBytes(StandardCharsets.UTF_8));
        Jars jars = session().addFiles(List.of(sources));
        String said =
                "blends-1.0-sources.jar holds no class that a cell could use. Is it the jar of a library's sources or pages? The library itself is another jar.";
        assertEquals(List.of(said), jars.notes());
        assertEquals(1, jars.paths().size());
    }
}
