package parchment.contract;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import parchment.lesson.Lesson;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;

/** Makes the pages of the launcher's commands, as {@code kernel-ext/src/test/resources/parchment/launcher/contact-sheet.txt} lists them. */
final class LauncherPages {
    private static final Path HOME = Path.of("..").toAbsolutePath().normalize();
    private static final Path LIST = HOME.resolve(
            Path.of("kernel-ext", "src", "test", "resources", "parchment", "launcher", "contact-sheet.txt"));

    private record Entry(String command, String logbooks, List<String> words) {}

    private LauncherPages() {}

    /** Runs each command of the list, into a folder for each logbook, and one called {@code once}. */
    static void write(Map<String, Path> logbooks, Path folder) throws IOException, InterruptedException {
        Path handedIn = handedIn(folder.resolve("handed-in"));
        for (Entry entry : entries()) {
            switch (entry.logbooks()) {
                case "every" -> {
                    for (Map.Entry<String, Path> logbook : logbooks.entrySet()) {
                        run(entry, folder.resolve(logbook.getKey()), handedIn, logbookWords(logbook.getValue()));
                    }
                }
                case "once" -> run(entry, folder.resolve("once"), handedIn, List.of());
                case "nothing" -> {
                    // Makes no page.
                }
                default -> {
                    Path logbook = logbooks.get(entry.logbooks());
                    if (logbook != null) {
                        run(entry, folder.resolve(entry.logbooks()), handedIn, logbookWords(logbook));
                    }
                }
            }
        }
    }

    private static List<String> logbookWords(Path logbook) {
        return List.of("--logbook", logbook.toAbsolutePath().normalize().toString());
    }

    private static List<Entry> entries() throws IOException {
        return Files.readAllLines(LIST).stream()
                .filter(line -> !line.startsWith("#") && !line.isBlank())
                .map(line -> line.split("\\|", -1))
                .map(parts -> new Entry(
                        parts[0].strip(),
                        parts[1].strip(),
                        List.of(parts[2].strip().split("\\s+"))))
                .toList();
    }

    private static void run(Entry entry, Path out, Path handedIn, List<String> logbook)
            throws IOException, InterruptedException {
        Files.createDirectories(out);
        boolean byClass = entry.words().get(0).startsWith("parchment.");
        List<String> words = new ArrayList<>(byClass ? List.of() : List.of("parchment.launcher.Main", entry.command()));
        Path place = HOME;
        for (String word : entry.words()) {
            if (word.endsWith(".ipynb")) {
                // A notebook's paths count from its own folder.
                place = HOME.resolve(word).getParent();
                words.addAll(matching(HOME.resolve(word)));
            } else {
                words.add(named(word, logbook)
                        .replace("HANDED_IN", handedIn.toString())
                        .replace("OUT", out.toAbsolutePath().normalize().toString()));
            }
        }
        words.addAll(logbook);
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx1g",
                "-cp",
                absolute(System.getProperty("java.class.path")),
                "-Dparchment.home=" + HOME));
        command.addAll(words);
        System.out.println(String.join(" ", words));
        int code = new ProcessBuilder(command)
                .directory(place.toFile())
                .inheritIO()
                .start()
                .waitFor();
        if (code != 0) {
            System.out.println("  ended with " + code);
        }
    }

    /** Puts a name from the logbook in the place of what stands for it; an empty logbook has none. */
    private static String named(String word, List<String> logbook) {
        if (!word.equals("LOT") && !word.equals("BATCH")) {
            return word;
        }
        List<Batch> batches = Logbook.open(Path.of(logbook.get(1))).batches();
        if (batches.isEmpty()) {
            return "none";
        }
        Batch last = batches.get(batches.size() - 1);
        return word.equals("LOT") ? last.lot().orElse("none") : last.name();
    }

    private static String absolute(String classPath) {
        return Stream.of(classPath.split(java.io.File.pathSeparator))
                .map(each -> Path.of(each).toAbsolutePath().normalize().toString())
                .reduce((a, b) -> a + java.io.File.pathSeparator + b)
                .orElseThrow();
    }

    private static List<String> matching(Path pattern) throws IOException {
        Path folder = pattern.getParent();
        PathMatcher matcher = FileSystems.getDefault().getPathMatcher("glob:" + pattern.getFileName());
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> matcher.matches(file.getFileName()))
                    .sorted()
                    .map(Path::toString)
                    .toList();
        }
    }

    /** Writes the sheets of two students who answered one lesson. */
    private static Path handedIn(Path folder) throws IOException {
        Files.createDirectories(folder);
        for (int student = 1; student <= 2; student++) {
            Lesson lesson = Lesson.open(2, student);
            lesson.check("whose pen", student == 1 ? "Maren" : "nobody");
            lesson.claim("lateness", 1, 9);
            lesson.handIn("Student " + student, folder);
        }
        return folder.toAbsolutePath().normalize();
    }
}
