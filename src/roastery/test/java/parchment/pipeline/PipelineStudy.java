package parchment.pipeline;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Runs named cells of the full pipeline, from a folder of CSV files to the answer, over a range of seeds, and prints the table.
 *
 * <p>{@code run FILE FROM TO [--roastery other|virtual] CELL...} appends a line a logbook to a file and leaves out seeds that stand there
 * already, so that it can be stopped and taken up again; {@code report FILE...} prints the table of all lines. The tables of
 * docs/measurements/pipeline.md are its output.
 */
final class PipelineStudy {
    private static final String USAGE = "Say: run FILE FROM TO [--roastery other|virtual] CELL..., or: report FILE...";

    private PipelineStudy() {}

    /** Runs or reports, as the class says. */
    public static void main(String[] arguments) throws IOException {
        List<String> words = new ArrayList<>(List.of(arguments));
        String roastery = "other";
        int option = words.indexOf("--roastery");
        if (option >= 0 && option + 1 < words.size()) {
            roastery = words.get(option + 1);
            words.subList(option, option + 2).clear();
        }
        if (words.size() >= 5 && words.get(0).equals("run")) {
            Path file = Path.of(words.get(1));
            for (String cell : words.subList(4, words.size())) {
                run(cell(roastery, cell), roastery, Long.parseLong(words.get(2)), Long.parseLong(words.get(3)), file);
            }
        } else if (words.size() >= 2 && words.get(0).equals("report")) {
            List<String> lines = new ArrayList<>();
            for (String file : words.subList(1, words.size())) {
                lines.addAll(Files.readAllLines(Path.of(file)));
            }
            System.out.print(report(lines));
        } else {
            System.err.println(USAGE);
        }
    }

    static List<Cell> cells(String roastery) {
        return switch (roastery) {
            case "other" -> OtherCells.all();
            case "virtual" -> VirtualCells.all();
            default -> throw new IllegalArgumentException("There is no roastery '" + roastery + "': other or virtual.");
        };
    }

    private static Cell cell(String roastery, String name) {
        return cells(roastery).stream()
                .filter(cell -> cell.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("The roastery '" + roastery + "' has no cell '" + name
                        + "'. Cells: "
                        + cells(roastery).stream().map(Cell::name).collect(Collectors.joining(", ")) + "."));
    }

    /** Runs the seeds from the first up to and with the last that are not yet in the file. */
    static void run(Cell cell, String roastery, long from, long to, Path file) throws IOException {
        Set<String> done = new HashSet<>();
        if (Files.exists(file)) {
            Files.readAllLines(file).forEach(line -> done.add(key(line.split(",", -1))));
        }
        for (long seed = from; seed <= to; seed++) {
            if (!done.contains(key(cell.name(), roastery, Long.toString(seed)))) {
                Duration before = processorTime();
                Map<String, Double> values = ask(cell, seed);
                double seconds = processorTime().minus(before).toMillis() / 1000.0;
                StringBuilder line = new StringBuilder(
                        String.format(Locale.ROOT, "%s,%s,%d,%.2f", cell.name(), roastery, seed, seconds));
                new TreeMap<>(values)
                        .forEach((name, value) -> line.append(String.format(Locale.ROOT, ",%s=%.5g", name, value)));
                Files.writeString(file, line + "\n", StandardOpenOption.CREATE, StandardOpenOption.APPEND);
            }
        }
    }

    static Map<String, Double> ask(Cell cell, long seed) throws IOException {
        Path folder = Files.createTempDirectory("pipeline");
        try {
            return cell.question().ask(seed, folder.resolve("logbook"));
        } finally {
            empty(folder);
        }
    }

    private static void empty(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            files.sorted(Comparator.reverseOrder()).forEach(file -> {
                try {
                    Files.delete(file);
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        }
    }

    private static Duration processorTime() {
        return ProcessHandle.current().info().totalCpuDuration().orElse(Duration.ZERO);
    }

    private static String key(String... fields) {
        return fields[0] + "," + fields[1] + "," + fields[2];
    }

    /** Returns the table of all lines: a row for each cell, roastery and count, with its Monte-Carlo error. */
    static String report(List<String> lines) {
        Map<String, List<String[]>> byCell = new LinkedHashMap<>();
        for (String roastery : List.of("other", "virtual")) {
            cells(roastery).forEach(cell -> byCell.put(cell.name() + "," + roastery, new ArrayList<>()));
        }
        Set<String> seen = new HashSet<>();
        for (String line : lines) {
            String[] fields = line.split(",", -1);
            if (fields.length > 3 && seen.add(key(fields))) {
                byCell.computeIfAbsent(fields[0] + "," + fields[1], k -> new ArrayList<>())
                        .add(fields);
            }
        }
        StringBuilder table = new StringBuilder("| cell | roastery | counted | wanted, % | measured | logbooks |\n");
        table.append("| --- | --- | --- | --- | --- | --- |\n");
        byCell.values().removeIf(List::isEmpty);
        byCell.forEach((name, rows) -> {
            String[] parts = name.split(",", -1);
            boolean first = true;
            for (Cell.Count count : cell(parts[1], parts[0]).counts()) {
                String words =
                        first ? parts[0] + ": " + cell(parts[1], parts[0]).words() : "";
                table.append(row(words, first ? parts[1] : "", count, values(rows, count.name())));
                first = false;
            }
        });
        double seconds = byCell.values().stream()
                .flatMap(List::stream)
                .mapToDouble(fields -> Double.parseDouble(fields[3]))
                .average()
                .orElse(Double.NaN);
        return table + String.format(Locale.ROOT, "%nProcessor time: %.1f s a logbook.%n", seconds);
    }

    private static List<Double> values(List<String[]> rows, String count) {
        List<Double> values = new ArrayList<>();
        for (String[] fields : rows) {
            for (String field : fields) {
                if (field.startsWith(count + "=")) {
                    double value = Double.parseDouble(field.substring(count.length() + 1));
                    if (!Double.isNaN(value)) {
                        values.add(value);
                    }
                }
            }
        }
        return values;
    }

    private static String row(String cell, String roastery, Cell.Count count, List<Double> values) {
        int n = values.size();
        double mean = values.stream().mapToDouble(x -> x).average().orElse(Double.NaN);
        String measured;
        if (n == 0) {
            measured = "not asked";
        } else if (count.kind() == Cell.Kind.SHARE) {
            measured = String.format(Locale.ROOT, "%.1f ± %.1f %%", 100 * mean, 100 * Math.sqrt(mean * (1 - mean) / n));
        } else {
            double squares =
                    values.stream().mapToDouble(x -> (x - mean) * (x - mean)).sum();
            double error = Math.sqrt(squares / Math.max(1, n - 1) / n);
            measured = String.format(Locale.ROOT, "%.2f ± %.2f", mean, error);
        }
        return "| " + String.join(" | ", cell, roastery, count.words(), count.wanted(), measured, Integer.toString(n))
                + " |\n";
    }
}
