package parchment.gather;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import parchment.sheet.Numbers;
import parchment.sheet.Sheet;

/** Makes small tables for tests. */
final class Tables {
    private Tables() {}

    /** Returns the table of a file of that name, with nothing above its headings. */
    static FoundTable of(List<String> headings, List<List<String>> rows) {
        return of("a.csv", List.of(), headings, rows);
    }

    static FoundTable of(String file, List<List<String>> above, List<String> headings, List<List<String>> rows) {
        return new FoundTable(
                new Sheet(Path.of(file), "", ',', Numbers.Decimal.POINT, List.of()),
                above,
                headings,
                rows,
                IntStream.rangeClosed(2, rows.size() + 1).boxed().toList(),
                List.of());
    }
}
