package parchment.launcher;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * The folder in which somebody who follows a page of the handbook stands: the project's own folders are there, and whatever the page has
 * them make or bring. A command runs in a process of its own, since Java cannot change the folder it stands in.
 *
 * @param folder the folder
 */
public record ReadersFolder(Path folder) {
    private static final Path PROJECT = Path.of("..").toAbsolutePath().normalize();
    private static final long PATIENCE_S = 600;
    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

    /**
     * What a command came to.
     *
     * @param exitCode its exit code
     * @param said all that it printed
     */
    public record Outcome(int exitCode, String said) {}

    /** Makes the folder ready: the demo logbooks and the notebooks are there, under the names that they have in the project. */
    public static ReadersFolder in(Path folder) throws IOException {
        for (String name : List.of("datasets", "notebooks", "docs", "README.md", "DEVELOPERS.md")) {
            Files.createSymbolicLink(folder.resolve(name), PROJECT.resolve(name));
        }
        return new ReadersFolder(folder);
    }

    /** Returns the text of a page of the project. */
    public static String page(String name) throws IOException {
        return Files.readString(PROJECT.resolve(name), StandardCharsets.UTF_8);
    }

    /** Returns what is written between fences of that kind on a page, such as {@code csv batches.csv}. */
    public static List<String> fenced(String page, String kind) {
        return Pattern.compile("(?ms)^```" + Pattern.quote(kind) + "\\n(.*?)^```")
                .matcher(page)
                .results()
                .map(found -> found.group(1))
                .toList();
    }

    /** Writes a file, and the folders above it. */
    public void write(String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        Files.writeString(file, text, StandardCharsets.UTF_8);
    }

    /** Puts the logbook of the format's page into a folder: each example there is a file. */
    public void writeLogbookOfThePage(String name) throws IOException {
        for (MatchResult example : Pattern.compile("(?s)```\\w+ (\\S+)\\n(.*?)```")
                .matcher(page("docs/logbook-format.md"))
                .results()
                .toList()) {
            write(name + "/" + example.group(1), example.group(2));
        }
    }

    /** Lays the curve files of some batches into a folder, as a logger would leave them. */
    public void writeLoggerFiles(String name) throws IOException {
        for (int i = 1; i <= 12; i++) {
            String file = String.format("H%03d.csv", i);
            write(name + "/" + file, Files.readString(PROJECT.resolve("datasets/harbour/curves/" + file)));
        }
    }

    /** Returns the words of a line as a shell hands them on, without a comment. */
    public static List<String> words(String line) {
        return WORD.matcher(line.replaceFirst("\\s#.*", ""))
                .results()
                .map(word -> word.group(1) == null ? word.group(2) : word.group(1))
                .toList();
    }

    /** Runs a command of the launcher in the folder; nobody is there to answer. */
    public Outcome run(List<String> arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx768m",
                "-Djava.awt.headless=true",
                "-Dfile.encoding=UTF-8",
                "-Dparchment.home=" + folder,
                "-cp",
                System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"))
                        .replace("target" + File.separator + "test-classes", "target" + File.separator + "no-tests"),
                Main.class.getName()));
        command.addAll(arguments);
        Path said = Files.createTempFile("said", ".txt");
        try {
            ProcessBuilder builder = new ProcessBuilder(command)
                    .directory(folder.toFile())
                    .redirectErrorStream(true)
                    .redirectOutput(said.toFile());
            builder.environment().remove(LogbookChoice.ENVIRONMENT);
            List.of("DISPLAY", "WAYLAND_DISPLAY").forEach(builder.environment()::remove); // So that no browser opens.
            Process process = builder.start();
            process.getOutputStream().close();
            if (!process.waitFor(PATIENCE_S, TimeUnit.SECONDS)) {
                process.destroyForcibly().waitFor();
                return new Outcome(-1, "Not done within " + PATIENCE_S + " s.\n" + Files.readString(said));
            }
            return new Outcome(process.exitValue(), Files.readString(said, StandardCharsets.UTF_8));
        } finally {
            Files.delete(said);
        }
    }
}
