package parchment.gather;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import parchment.file.WholeFile;
import parchment.logbook.LogbookFiles;
import parchment.sheet.CsvText;
import parchment.sheet.Header;

/** Writes the tables of lots and of work on machines into a new folder, each if there is a row for it. */
final class LotsWriter {
    private LotsWriter() {}

    static void write(Path folder, Map<String, Map<String, String>> lots, List<ListedUpkeep> work) throws IOException {
        if (!lots.isEmpty()) {
            Set<String> headings = new LinkedHashSet<>();
            lots.values().forEach(values -> headings.addAll(values.keySet()));
            List<String> ordered = new ArrayList<>(headings);
            ordered.sort(Comparator.comparingInt(heading -> LogbookFiles.placeInLots(Header.parse(heading))));
            List<List<String>> rows = new ArrayList<>();
            rows.add(row("lot", ordered));
            lots.forEach((name, values) -> rows.add(row(
                    name,
                    ordered.stream()
                            .map(heading -> values.getOrDefault(heading, ""))
                            .toList())));
            WholeFile.at(folder.resolve(LogbookFiles.LOTS)).ifNew().write(CsvText.of(rows));
        }
        if (!work.isEmpty()) {
            List<List<String>> rows = new ArrayList<>();
            rows.add(List.of("machine", "done on", "what", "kind", "note"));
            work.forEach(each ->
                    rows.add(List.of(each.machine(), each.doneOn().toString(), each.what(), each.kind(), each.note())));
            WholeFile.at(folder.resolve(LogbookFiles.UPKEEP)).ifNew().write(CsvText.of(rows));
        }
    }

    private static List<String> row(String first, List<String> others) {
        List<String> row = new ArrayList<>(List.of(first));
        row.addAll(others);
        return row;
    }
}
