package parchment.contract;

import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;

/**
 * Writes a folder with the first batches of the demo logbook in which every name and note that a user can choose holds markup, so that
 * whatever is shown unescaped would become an element, an attribute or a script of the page.
 */
public final class HostileLogbook {
    /** The attribute that the examples ask about. */
    public static final String ATTRIBUTE = "sweetness <script>alert(1)</script>";

    /** A second one, for what weighs two against each other. */
    private static final String OTHER = "acidity \"><img src=x onerror=alert(1)>";

    private static final Path DEMO = Path.of("..", "datasets", "harbour");
    private static final int BATCHES = 90;
    private static final Map<String, String> MARKUP = Map.of(
            "batch", " \"><img src=x onerror=alert(1)>",
            "lot", " <script>alert(1)</script>",
            "machine", " ]]><svg onload=alert(1)>",
            "operator", " </script><script>alert(1)</script>",
            "recipe", " &lt;script&gt; <iframe src=javascript:alert(1)>",
            "cupper", " ' onmouseover='alert(1)' </script>",
            "cupping", " \"><img src=x onerror=alert(1)>",
            "note", " ]]> &lt;b&gt; <b onclick=alert(1)> <!-- \u0007");
    private static final List<String> WITHOUT = List.of("body", "bitterness", "aftertaste", "liking");

    private HostileLogbook() {}

    /** Writes the folder; it must not be there yet. */
    public static Path write(Path folder) throws IOException {
        Files.createDirectories(folder.resolve("curves"));
        Set<String> kept = new HashSet<>();
        for (String name : List.of("batches", "lots", "lot-checks", "machines", "cuppings", "sessions", "upkeep")) {
            table(name + ".csv", folder, kept);
        }
        for (String batch : kept) {
            Files.copy(
                    DEMO.resolve("curves").resolve(batch + ".csv"),
                    folder.resolve("curves").resolve(batch + MARKUP.get("batch") + ".csv"));
        }
        Files.writeString(
                folder.resolve("logbook.properties"),
                "name=Harbour <script>alert(1)</script> \"><img src=x onerror=alert(1)>\ntime.zone=UTC\n");
        return folder;
    }

    private static void table(String file, Path folder, Set<String> kept) throws IOException {
        try (Reader in = Files.newBufferedReader(DEMO.resolve(file));
                CSVParser rows = CSVFormat.DEFAULT
                        .builder()
                        .setHeader()
                        .setSkipHeaderRecord(true)
                        .get()
                        .parse(in);
                Writer out = Files.newBufferedWriter(folder.resolve(file));
                CSVPrinter printer = new CSVPrinter(out, CSVFormat.RFC4180)) {
            List<String> columns = new ArrayList<>(rows.getHeaderNames());
            columns.removeAll(WITHOUT);
            printer.printRecord(columns.stream()
                    .map(column -> column.equals("sweetness") ? ATTRIBUTE : column.equals("acidity") ? OTHER : column)
                    .toList());
            for (CSVRecord row : rows) {
                if (file.equals("batches.csv") && kept.size() < BATCHES) {
                    kept.add(row.get("batch"));
                }
                if (row.isMapped("batch") && !kept.contains(row.get("batch"))) {
                    continue;
                }
                Map<String, String> cells = new LinkedHashMap<>();
                columns.forEach(column -> cells.put(column, hostile(column, row.get(column))));
                printer.printRecord(cells.values());
            }
            if (file.equals("batches.csv")) {
                // One more row that is wrong in every way, for the table of problems.
                printer.printRecord(columns.stream()
                        .map(column -> "<script>alert(1)</script> " + column)
                        .toList());
            }
        }
    }

    private static String hostile(String column, String value) {
        boolean mayBeBlank = !column.equals("note");
        return value.isBlank() && mayBeBlank ? value : value + MARKUP.getOrDefault(column, "");
    }
}
