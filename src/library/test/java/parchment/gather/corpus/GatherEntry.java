package parchment.gather.corpus;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import parchment.gather.Gather;
import parchment.logbook.Logbook;

/** Is the one place that knows how a gathering is started. */
final class GatherEntry {
    /**
     * Holds what a gathering left.
     *
     * @param logbook the new logbook; empty if none was written
     * @param report all that was said, on the screen, in the folder and as problems
     * @param files the names of the files that were gathered
     */
    record Gathered(Optional<Logbook> logbook, String report, List<String> files) {}

    private GatherEntry() {}

    /** Is how a key looks, by which a question can be answered in a file: words joined by dots. */
    private static final Pattern KEY = Pattern.compile("[\\p{L}\\p{N}-]+(\\.[\\p{L}\\p{N}-]+)+");

    /** Gathers a folder without anybody there. */
    static Gathered gather(Path folder, Path to) throws IOException {
        return gather(folder, to, Optional.empty(), Gather.NOBODY);
    }

    /**
     * Gathers a folder with somebody who answers the questions that hold a word of the answers, has left a file with those answers that are known by key, and
     * takes what is proposed everywhere else.
     */
    static Gathered gather(Path folder, Path to, Map<String, String> answers) throws IOException {
        List<String> written = answers.entrySet().stream()
                .filter(answer -> KEY.matcher(answer.getKey()).matches())
                .map(answer -> answer.getKey() + "=" + answer.getValue())
                .toList();
        Path file = Files.write(to.resolveSibling("answers.properties"), written);
        Gather.Console console = question -> Optional.of(answers.entrySet().stream()
                .filter(answer -> question.contains(answer.getKey()))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElse(""));
        return gather(folder, to, written.isEmpty() ? Optional.empty() : Optional.of(file), console);
    }

    private static Gathered gather(Path folder, Path to, Optional<Path> answers, Gather.Console console)
            throws IOException {
        StringBuilder out = new StringBuilder();
        List<String> files = names(folder);
        int code = Gather.run(folder, to, answers, console, out);
        if (code != 0) {
            return new Gathered(Optional.empty(), out.toString(), files);
        }
        Logbook logbook = Logbook.open(to);
        Path report = to.resolve("gathered.txt");
        if (Files.exists(report)) {
            out.append('\n').append(Files.readString(report, StandardCharsets.UTF_8));
        }
        logbook.problems().forEach(problem -> out.append('\n').append(problem));
        return new Gathered(Optional.of(logbook), out.toString(), files);
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> paths = Files.walk(folder)) {
            return paths.filter(Files::isRegularFile)
                    .map(path -> path.getFileName().toString())
                    .toList();
        }
    }
}
