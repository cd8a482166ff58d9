package parchment.stats.mixed;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Puts the complete rows of a design into an order that follows from what stands in them: by their groups, then by their columns, then
 * by their response.
 *
 * <p>Sums are rounded in the order in which they are made, and drawn numbers are dealt out in it. In this order both come out the same
 * however the table was sorted; rows that tie are alike in everything, so it does not matter which of them comes first.
 */
final class RowOrder {
    private RowOrder() {}

    /** Returns the numbers of the complete rows, counted from 0 in the design. */
    static int[] of(MixedDesign design) {
        List<Comparator<Integer>> keys = new ArrayList<>();
        for (RandomTerm term : design.randomTerms()) {
            if (term.kind() == RandomTerm.Kind.GROUPS) {
                List<String> groups = term.groups();
                keys.add(Comparator.comparing(groups::get));
            }
        }
        design.fixed().forEach(term -> addColumns(term.columns(), keys));
        design.randomTerms().forEach(term -> addColumns(term.columns(), keys));
        keys.add(Comparator.comparingDouble(design::responseAt));
        return IntStream.range(0, design.rows())
                .filter(i -> Double.isFinite(design.responseAt(i)) && design.complete(i))
                .boxed()
                .sorted((a, b) -> compare(keys, a, b))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    private static void addColumns(List<double[]> columns, List<Comparator<Integer>> keys) {
        columns.forEach(column -> keys.add(Comparator.comparingDouble(i -> column[i])));
    }

    private static int compare(List<Comparator<Integer>> keys, Integer a, Integer b) {
        for (Comparator<Integer> key : keys) {
            int order = key.compare(a, b);
            if (order != 0) {
                return order;
            }
        }
        return 0;
    }
}
