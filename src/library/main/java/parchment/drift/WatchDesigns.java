package parchment.drift;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Keeps the designs of watches: numbers of one lot that were measured in the same batches have the same one, and to draw it takes long. */
final class WatchDesigns {
    private final Map<Like, WatchDesign> drawn = new HashMap<>();

    /** All that a design hangs on. */
    private record Like(List<List<Double>> columns, RowsInTime.Times times) {}

    /** Returns the design of rows that are compared at like columns; drawn when it is first asked for. */
    WatchDesign of(List<double[]> columns, RowsInTime rows) {
        List<List<Double>> values = columns.stream()
                .map(column -> Arrays.stream(column).boxed().toList())
                .toList();
        return drawn.computeIfAbsent(
                new Like(values, rows.times()), like -> new WatchDesign(columns, rows, WatchDesign.SERIES));
    }
}
