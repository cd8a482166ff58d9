package parchment.picture;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * How many rows lie in each field of two measures.
 *
 * @param across the fields along the foot
 * @param up the fields along the side
 * @param counts one per field, the fields of the foot's first column first
 */
record Grid(Bins across, Bins up, List<Integer> counts) {
    Grid {
        counts = List.copyOf(counts);
    }

    /** Counts measures that have no missing numbers. */
    static Grid of(DrawnNumbers first, DrawnNumbers second, int mostAcross, int mostUp) {
        Bins across = Bins.of(first, mostAcross);
        Bins up = Bins.of(second, mostUp);
        int[] counts = new int[across.count() * up.count()];
        for (int i = 0; i < first.values().size(); i++) {
            counts[
                    across.place(first.values().get(i)) * up.count()
                            + up.place(second.values().get(i))]++;
        }
        return new Grid(across, up, Arrays.stream(counts).boxed().toList());
    }

    int count(int column, int row) {
        return counts.get(column * up.count() + row);
    }

    int most() {
        return counts.stream().mapToInt(count -> count).max().orElse(0);
    }

    /** Says in a sentence which field holds most. */
    String fullest(DrawnNumbers first, DrawnNumbers second) {
        int place = IntStream.range(0, counts.size())
                .filter(i -> counts.get(i) == most())
                .findFirst()
                .orElseThrow();
        int column = place / up.count();
        int row = place % up.count();
        return String.format(
                Locale.ROOT,
                "The fullest field holds %d: %s %s and %s %s.",
                most(),
                first.label(),
                across.names(first).get(column),
                second.label(),
                up.names(second).get(row));
    }
}
