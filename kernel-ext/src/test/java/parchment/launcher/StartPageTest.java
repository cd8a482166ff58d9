package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.MessageDigest;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.card.Overview;
import parchment.logbook.Logbook;
import parchment.logbook.contents.Cautions;

class StartPageTest {
    private static final Path NOTEBOOKS = Path.of("..", "notebooks");
    private static final Pattern LINK = Pattern.compile("href=\"([^\"]+)\"");

    @TempDir
    private Path folder;

    private Path kernel;

    @BeforeEach
    void makeKernelFolder() throws IOException {
        kernel = Files.createDirectories(folder.resolve("kernels").resolve("parchment"));
    }

    private Path file() throws IOException {
        try (Stream<Path> files = Files.list(kernel)) {
            return files.findFirst().orElseThrow();
        }
    }

    private String html() throws IOException {
        return Files.readString(file());
    }

    private static Overview.Section section(Overview.Part part, String words) {
        return new Overview.Section(part, Optional.empty(), List.of(words));
    }

    private static List<String> links(String html) {
        List<String> links = new ArrayList<>();
        Matcher found = LINK.matcher(html);
        while (found.find()) {
            if (!found.group(1).startsWith("#")) {
                links.add(found.group(1));
            }
        }
        return links;
    }

    @Test
    void isThereAtOnceWithTheNotebooksAndSaysWhatIsBeingWorkedOut() throws IOException {
        StartPage page = new StartPage(folder.resolve("My <Roasts>"), NOTEBOOKS);
        String address = page.openIn(kernel, NotebookServer.CLASSIC);
        assertEquals("/kernelspecs/parchment/" + file().getFileName(), address);
        String html = html();
        assertEquals(4, html.split(" data-waiting>", -1).length - 1, html);
        assertTrue(html.contains("Being worked out ..."), html);
        assertTrue(html.contains("My &lt;Roasts&gt;"), html);
        assertTrue(html.contains(">Which drop temperature?</a>"), html);
    }

    /** The page's own address has two folders above it that are the server's root, whatever that is called. */
    @ParameterizedTest
    @CsvSource({
        "CLASSIC, ../../notebooks/tour.ipynb, ../../tree",
        "NOTEBOOK, ../../notebooks/tour.ipynb, ../../tree",
        "LAB, ../../lab/tree/tour.ipynb, ../../lab"
    })
    void everyLinkCountsFromTheServersRootAndLeadsToANotebookThatIsThere(
            NotebookServer server, String tour, String list) throws IOException {
        StartPage page = new StartPage(folder, NOTEBOOKS);
        page.openIn(kernel, server);
        page.endWith("Done.");
        List<String> links = links(html());
        assertTrue(links.contains(tour), links.toString());
        assertTrue(links.contains(list), links.toString());
        for (String link : links) {
            String notebook = link.replaceFirst("^\\.\\./\\.\\./(notebooks|lab/tree)/", "");
            assertTrue(link.equals(list) || Files.isRegularFile(NOTEBOOKS.resolve(notebook)), link);
        }
        try (Stream<Path> notebooks = Files.list(NOTEBOOKS)) {
            for (Path notebook :
                    notebooks.filter(n -> n.toString().endsWith(".ipynb")).toList()) {
                assertTrue(
                        links.stream().anyMatch(link -> link.endsWith("/" + notebook.getFileName())),
                        notebook + " is on the start page");
            }
        }
    }

    @Test
    void aNotebookThatIsNotThereIsNotOffered() throws IOException {
        Path few = Files.createDirectories(folder.resolve("notebooks"));
        Files.writeString(few.resolve("tour.ipynb"), "{}");
        StartPage page = new StartPage(folder, few);
        page.openIn(kernel, NotebookServer.CLASSIC);
        page.endWith("Done.");
        assertEquals(
                List.of("../../notebooks/tour.ipynb", "../../tree"),
                links(html()).stream().distinct().sorted().toList());
    }

    @Test
    void fillsInPartByPartAndRunsItsScriptOnlyAsLongAsItWaits() throws Exception {
        StartPage page = new StartPage(folder, NOTEBOOKS);
        page.put(section(Overview.Part.THE_WEEK, "Known before the server is."));
        page.openIn(kernel, NotebookServer.CLASSIC);
        String html = html();
        assertTrue(html.contains("Known before the server is."), html);
        assertEquals(3, html.split(" data-waiting>", -1).length - 1, html);
        Matcher script = Pattern.compile("(?s)<script>(.*?)</script>").matcher(html);
        assertTrue(script.find(), html);
        byte[] hash =
                MessageDigest.getInstance("SHA-256").digest(script.group(1).getBytes(StandardCharsets.UTF_8));
        assertTrue(html.contains("script-src 'sha256-" + Base64.getEncoder().encodeToString(hash) + "'"), html);
        for (Overview.Part part : Overview.Part.values()) {
            page.put(section(part, "<b>" + part.title() + "</b>"));
        }
        html = html();
        assertFalse(html.contains("data-waiting>"), html);
        assertFalse(html.contains("<script") || html.contains("script-src"), html);
        assertTrue(html.contains("&lt;b&gt;What is") && !html.contains("<b>"), html);
    }

    @Test
    void carriesTheCautionsAndThatAMachineIsInvented() throws IOException {
        StartPage page = new StartPage(folder, NOTEBOOKS);
        page.openIn(kernel, NotebookServer.CLASSIC);
        assertFalse(html().contains("nvented machine"), "not known yet");
        page.isOf(Logbook.open(Path.of("..", "datasets", "hillside")));
        String html = html().replace("&#39;", "'");
        assertEquals(1, html.split(Pattern.quote(Cautions.INVENTED_PAGE), -1).length - 1, html);
        Stream.concat(Stream.of(Cautions.BESIDE_A_READING), Cautions.forAPage().stream())
                .forEach(words -> assertEquals(1, html.split(Pattern.quote(words), -1).length - 1, words));
    }

    @Test
    void isForItsOwnerAloneAndGoesWithTheServer() throws IOException {
        StartPage page = new StartPage(folder, NOTEBOOKS);
        page.openIn(kernel, NotebookServer.CLASSIC);
        if (Files.getFileStore(kernel).supportsFileAttributeView("posix")) {
            assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file())));
        }
        page.remove();
        page.put(section(Overview.Part.THE_WEEK, "Too late."));
        try (Stream<Path> left = Files.list(kernel)) {
            assertEquals(List.of(), left.toList());
        }
    }

    @Test
    void aPageWhoseProcessIsGoneIsTakenAwayByTheNextAndNoOther() throws Exception {
        Process gone = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(), "--version")
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("said").toFile())
                .start();
        gone.waitFor();
        Path left = Files.writeString(kernel.resolve("start-0123abcd-" + gone.pid() + ".html"), "left");
        Path alive = Files.writeString(
                kernel.resolve("start-0123abcd-" + ProcessHandle.current().pid() + ".html"), "alive");
        Path strange = Files.writeString(kernel.resolve("start-mine-" + gone.pid() + ".html"), "mine");
        new StartPage(folder.resolve("a"), NOTEBOOKS).openIn(kernel, NotebookServer.CLASSIC);
        assertFalse(Files.exists(left));
        assertTrue(Files.exists(alive));
        assertTrue(Files.exists(strange));
    }

    @Test
    void twoLogbooksHaveTwoPages() throws IOException {
        String one = new StartPage(folder.resolve("a"), NOTEBOOKS).openIn(kernel, NotebookServer.CLASSIC);
        String other = new StartPage(folder.resolve("b"), NOTEBOOKS).openIn(kernel, NotebookServer.CLASSIC);
        assertFalse(one.equals(other), one);
    }

    private String filled(Path logbook, Duration atMost) throws Exception {
        StartPage page = new StartPage(logbook, NOTEBOOKS);
        page.openIn(kernel, NotebookServer.CLASSIC);
        StartFacts.begin(page, new LogbookChoice(logbook), atMost).join();
        return html().replace("&#39;", "'").replace("&quot;", "\"");
    }

    @Test
    void aFolderThatIsNoLogbookIsToldOnceAndTheNotebooksStand() throws Exception {
        Path empty = Files.createDirectories(folder.resolve("empty"));
        String html = filled(empty, StartFacts.AT_MOST);
        assertEquals(1, html.split("holds no logbook", -1).length - 1, html);
        assertEquals(3, html.split("Nothing is told here for the same reason", -1).length - 1, html);
        assertTrue(html.contains(">Which drop temperature?</a>"), html);
        assertEquals(0, Files.list(empty).count(), "nothing is written into a logbook's folder");
    }

    @Test
    void whereNoLogbookIsNamedItSaysHowToNameOne() throws Exception {
        StartPage page = new StartPage(null, NOTEBOOKS);
        page.openIn(kernel, NotebookServer.CLASSIC);
        StartFacts.begin(page, new LogbookChoice(null), StartFacts.AT_MOST).join();
        assertTrue(html().contains("Start again with --logbook and the folder of yours."), html());
    }

    @Test
    void brokenFilesAreToldInWords() throws Exception {
        Path broken = Files.createDirectories(folder.resolve("broken").resolve("curves"))
                .getParent();
        Files.writeString(broken.resolve("batches.csv"), "batch,roasted at,lot\n\"x,2031-13-45,\n\0\0\0");
        Files.write(broken.resolve("curves").resolve("x.csv"), new byte[] {1, 2, (byte) 0xff, 0, 34, 10});
        String html = filled(broken, StartFacts.AT_MOST);
        assertTrue(html.contains("There is no week to show"), html);
        assertFalse(html.contains("Exception") || html.contains(" data-waiting>"), html);
    }

    @Test
    void whatTakesTooLongIsLeftAndSaysHowToHaveItAllTheSame() throws Exception {
        String html = filled(Path.of("..", "datasets", "harbour"), Duration.ofMillis(1));
        assertTrue(html.contains("so it was left. In a notebook, Overview.of(logbook) works it out."), html);
        assertFalse(html.contains(" data-waiting>"), html);
        assertEquals(
                4,
                Arrays.stream(Overview.Part.values())
                        .filter(part -> html.contains(">" + part.title() + "</h2>"))
                        .count());
    }
}
