package parchment.launcher;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Base64;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import parchment.card.Overview;
import parchment.display.Html;
import parchment.file.Rights;
import parchment.file.WholeFile;
import parchment.logbook.Logbook;
import parchment.logbook.contents.Cautions;
import parchment.notebook.PageForm;

/**
 * The page that the browser shows first: what the logbook has to tell, and the notebooks by question.
 *
 * <p>It lies beside the kernel's own file, because Jupyter hands out what lies there to whoever has its token, at the same address for every
 * kind of server, and no folder of the reader's is written into. It is there before the logbook is read, and is written anew with each part
 * that is worked out; a script on it asks for what is new.
 */
final class StartPage {
    private static final Pattern NAME = Pattern.compile("start-[0-9a-f]{8}-([0-9]{1,18})\\.html");

    private final StartQuestions questions;
    private final @Nullable Path folder;
    private final Map<Overview.Part, String> parts = new EnumMap<>(Overview.Part.class);
    private final Set<Overview.Part> leftOpen = EnumSet.noneOf(Overview.Part.class);
    private Optional<Path> file = Optional.empty();
    private Optional<NotebookServer> server = Optional.empty();
    private String name = "";
    private Optional<String> note = Optional.empty();
    private int written;

    /**
     * @param folder the logbook's folder, or null if there is none
     * @param notebooks the folder that the server shows
     */
    StartPage(@Nullable Path folder, Path notebooks) {
        this.folder = folder;
        this.questions = new StartQuestions(notebooks);
    }

    /**
     * Writes the page with what is known by now, and from here on whenever more is.
     *
     * @param kernelFolder where the kernel is installed
     * @return the address of the page on the server, beginning with a slash
     * @throws IOException if it cannot be written
     */
    synchronized String openIn(Path kernelFolder, NotebookServer kind) throws IOException {
        removeLeftBehind(kernelFolder);
        String which = String.format(
                Locale.ROOT,
                "start-%08x-%d.html",
                String.valueOf(folder).hashCode(),
                ProcessHandle.current().pid());
        file = Optional.of(kernelFolder.resolve(which));
        server = Optional.of(kind);
        write();
        return "/kernelspecs/" + kernelFolder.getFileName() + "/" + which;
    }

    /** Takes pages away whose process was ended without a chance to do so itself; a page is named after its process. */
    private static void removeLeftBehind(Path kernelFolder) throws IOException {
        try (Stream<Path> files = Files.list(kernelFolder)) {
            for (Path file : files.toList()) {
                Matcher name = NAME.matcher(String.valueOf(file.getFileName()));
                if (name.matches()
                        && ProcessHandle.of(Long.parseLong(name.group(1)))
                                .filter(ProcessHandle::isAlive)
                                .isEmpty()) {
                    Files.deleteIfExists(file);
                }
            }
        }
    }

    /** Takes the page away, when there is no server any more that could show it. */
    synchronized void remove() throws IOException {
        if (file.isPresent()) {
            Files.deleteIfExists(file.get());
            file = Optional.empty();
        }
    }

    /** Says whose page it is. */
    synchronized void isOf(Logbook logbook) throws IOException {
        name = logbook.name();
        if (logbook.provenance() == Logbook.Provenance.INVENTED) {
            note = Optional.of(Cautions.INVENTED_PAGE);
        }
        write();
    }

    /** Puts a part in its place. */
    synchronized void put(Overview.Section section) throws IOException {
        parts.put(
                section.part(),
                section.html().orElseGet(() -> "<p>" + Html.escape(String.join(" ", section.sentences())) + "</p>"));
        write();
    }

    /** Says in the first part that is still open why it stays so, and leaves the others. */
    synchronized void endWith(String words) throws IOException {
        String said = words;
        for (Overview.Part part : Overview.Part.values()) {
            if (!parts.containsKey(part)) {
                parts.put(part, "<p>" + Html.escape(said) + "</p>");
                leftOpen.add(part);
                said = "Nothing is told here for the same reason.";
            }
        }
        write();
    }

    private void write() throws IOException {
        if (file.isPresent() && server.isPresent()) {
            written++;
            WholeFile.at(file.get()).with(Rights.OWNER).write(html(server.get()));
        }
    }

    /** Returns the page as HTML whose links count from its own place on the server. */
    private String html(NotebookServer kind) {
        boolean waiting = parts.size() < Overview.Part.values().length;
        String script = waiting ? PageForm.text(StartPage.class, "start.js").strip() : "";
        return Html.allowed(PageForm.filled(
                StartPage.class,
                Map.of(
                        "TITLE",
                        Html.escape(title()),
                        "FOLDER",
                        folder == null ? "" : Html.escape("Logbook folder: " + folder),
                        "NOTE",
                        note.map(words -> "<p role=\"note\"><strong>" + Html.escape(words) + "</strong></p>")
                                .orElse(""),
                        "PARTS",
                        Arrays.stream(Overview.Part.values())
                                .map(part -> part(part, kind))
                                .collect(Collectors.joining("\n")),
                        "QUESTIONS",
                        questions.all().stream()
                                .map(question -> "<li>" + link(question, kind)
                                        + (question.equals(StartQuestions.TOUR) ? " <strong>Start here.</strong>" : "")
                                        + "</li>")
                                .collect(Collectors.joining("\n")),
                        "TOUR",
                        questions.all().contains(StartQuestions.TOUR)
                                ? "<p>New here? <a target=\"_blank\" rel=\"noopener\" href=\"../../"
                                        + kind.address(StartQuestions.TOUR.notebook())
                                        + "\">Start with the tour</a>, ten minutes. "
                                        + "<span class=\"narrow\"><a href=\"#asked\">Notebooks by question</a></span></p>"
                                : "",
                        "LIST",
                        "../../" + kind.list(),
                        "CAUTIONS",
                        cautions(),
                        "SCRIPT",
                        script.isEmpty() ? "" : "<script>" + script + "</script>",
                        "POLICY",
                        script.isEmpty() ? "" : " connect-src 'self'; script-src '" + fingerprint(script) + "';")));
    }

    private String title() {
        return name.isEmpty() ? "Your logbook" : name;
    }

    private String part(Overview.Part part, NotebookServer kind) {
        String id = part.name().toLowerCase(Locale.ROOT).replace('_', '-');
        String words = parts.getOrDefault(
                part,
                "<p class=\"waiting\">Being worked out ...</p><noscript><p><a href=\"?" + written
                        + "\">Show what is known by now.</a></p></noscript>");
        List<StartQuestions.Question> further = leftOpen.contains(part) ? List.of() : questions.after(part);
        return "<section id=\"" + id + "\" aria-labelledby=\"" + id + "-title\""
                + (parts.containsKey(part) ? "" : " data-waiting") + ">\n<h2 id=\"" + id + "-title\">"
                + Html.escape(part.title()) + "</h2>\n" + words
                + (further.isEmpty()
                        ? ""
                        : "\n<p class=\"on\">Go on: "
                                + further.stream()
                                        .map(question -> link(question, kind))
                                        .collect(Collectors.joining(" "))
                                + "</p>")
                + "\n</section>";
    }

    private static String link(StartQuestions.Question question, NotebookServer kind) {
        return "<a target=\"_blank\" rel=\"noopener\" href=\"../../" + Html.escape(kind.address(question.notebook()))
                + "\">" + Html.escape(question.words()) + "</a>";
    }

    private static String cautions() {
        return Cautions.forAPage().stream()
                .map(words -> "<p>" + Html.escape(words) + "</p>")
                .collect(Collectors.joining("\n", "<p>" + Html.escape(Cautions.BESIDE_A_READING) + "</p>\n", ""));
    }

    /**
     * Returns what a page says of the one script that may run on it.
     *
     * @see <a href="https://www.w3.org/TR/CSP3/#framework-directive-source-list">Content Security Policy Level 3, 2.3.1 Source Lists</a>
     */
    private static String fingerprint(String script) {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(script.getBytes(StandardCharsets.UTF_8));
            return "sha256-" + Base64.getEncoder().encodeToString(hash);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("This Java lacks SHA-256, which every Java has.", e);
        }
    }
}
