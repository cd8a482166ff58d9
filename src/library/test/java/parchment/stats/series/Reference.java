package parchment.stats.series;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** Reads a column of the published series beside these tests; lines with # say where they come from. */
final class Reference {
    private Reference() {}

    static double[] column(String file, String name) {
        InputStream stream = Objects.requireNonNull(Reference.class.getResourceAsStream("/reference/process/" + file));
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
            List<String> lines =
                    reader.lines().filter(line -> !line.startsWith("#")).toList();
            int column = List.of(lines.get(0).split(",", -1)).indexOf(name);
            return lines.stream()
                    .skip(1)
                    .mapToDouble(line -> Double.parseDouble(line.split(",", -1)[column]))
                    .toArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
