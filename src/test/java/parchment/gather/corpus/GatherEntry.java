package parchment.gather.corpus;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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

    /**
     * Gathers a folder without anybody there, or with somebody who answers the questions that hold a word of the answers and takes what is
     * proposed everywhere else.
     */
    static Gathered gather(Path folder, Path to, Optional<Map<String, String>> answers) throws IOException {
        StringBuilder out = new StringBuilder();
        Gather.Console console = answers.map(known -> (Gather.Console) question -> Optional.of(known.entrySet().stream()
                        .filter(answer -> question.contains(answer.getKey()))
                        .map(Map.Entry::getValue)
                        .findFirst()
                        .orElse("")))
                .orElse(Gather.NOBODY);
        List<String> files = names(folder);
        int code = Gather.run(folder, to, Optional.empty(), console, out);
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
