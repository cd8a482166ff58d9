package parchment.gather;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Chooses the name of each recording's batch: the one it had in an earlier gathering, the list's, the one in its first lines, the number that follows a word for a
 * batch in its file's name, else the file's name. A short name that two recordings, or a row without this recording, would have is not taken.
 */
final class BatchNaming {
    private final Map<GatheredBatch, ListedRoast> rows;
    private final Map<String, String> earlier;
    private final Map<String, Integer> wanted = new HashMap<>();
    private final FolderNames folders;

    /**
     * Prepares the names.
     *
     * @param rows the row of each recording that has one
     * @param alone rows without a recording
     * @param earlier the names of an earlier gathering, by where a recording stands
     */
    BatchNaming(
            List<GatheredBatch> curves,
            Map<GatheredBatch, ListedRoast> rows,
            List<ListedRoast> alone,
            Map<String, String> earlier) {
        this.rows = rows;
        this.earlier = earlier;
        this.folders = FolderNames.of(curves);
        alone.forEach(roast -> count(roast.name()));
        rows.values().forEach(roast -> count(roast.name()));
        earlier.values().forEach(this::count);
        curves.stream()
                .filter(curve -> !isListed(curve) && !earlier.containsKey(curve.origin()))
                .forEach(curve -> ownShort(curve).ifPresent(this::count));
    }

    private void count(String name) {
        wanted.merge(BatchNumbers.plain(name), 1, Integer::sum);
    }

    private boolean isListed(GatheredBatch curve) {
        ListedRoast roast = rows.get(curve);
        return roast != null && !roast.name().isEmpty() && !isMade(roast);
    }

    /** A list that names no batches gives its rows names of their days. */
    private static boolean isMade(ListedRoast roast) {
        return roast.day().filter(day -> roast.name().startsWith(day + "-")).isPresent();
    }

    /** Returns the name that a recording's batch is to get, if no other has it. */
    String of(GatheredBatch curve) {
        String before = earlier.get(curve.origin());
        if (before != null) {
            return before;
        }
        ListedRoast row = rows.get(curve);
        if (row != null && isListed(curve)) {
            return row.name();
        }
        return ownShort(curve)
                .filter(name -> wanted.getOrDefault(BatchNumbers.plain(name), 0) == 1)
                .orElseGet(() -> row != null && !row.name().isEmpty() && curve.part() > 0
                        ? row.name()
                        : folders.whole(curve).orElse(curve.name()));
    }

    /** Returns the short name that a recording itself states. */
    private static Optional<String> ownShort(GatheredBatch curve) {
        List<List<String>> above =
                curve.recording().map(recording -> recording.file().above()).orElse(List.of());
        if (curve.part() > 0) {
            return Optional.empty();
        }
        Set<String> titles = BatchNumbers.titles(above);
        return titles.size() == 1 ? Optional.of(new ArrayList<>(titles).get(0)) : BatchNumbers.afterWord(curve.name());
    }
}
