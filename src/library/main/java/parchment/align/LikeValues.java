package parchment.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import parchment.stats.linear.Robust;

/**
 * Brings one number per batch to like conditions, so that what is left is the batch's own: the median of its group is taken away, and
 * what goes with a condition by a straight line.
 *
 * <p>Both are told by medians, so that the one batch that is looked for does not pull them: the slope is the median of the slopes between
 * all pairs of batches, weighted by how far their conditions lie apart (Theil 1950 and Sen 1968; the weights after Jaeckel 1972, all three
 * from memory).
 */
final class LikeValues {
    /** Fewest batches of a group that have a middle of their own; common practice, no source. */
    static final int GROUP = 5;

    private LikeValues() {}

    /** Returns the values less their group's median; groups of fewer than {@value #GROUP} known values share one. */
    static double[] withoutGroups(double[] values, List<String> groups) {
        Map<String, List<Integer>> rows = new LinkedHashMap<>();
        List<Integer> rest = new ArrayList<>();
        for (int i = 0; i < values.length; i++) {
            rows.computeIfAbsent(groups.get(i), k -> new ArrayList<>()).add(i);
        }
        double[] left = new double[values.length];
        rows.values().forEach(own -> {
            long known = own.stream().filter(i -> Double.isFinite(values[i])).count();
            if (known >= GROUP) {
                center(values, own, left);
            } else {
                rest.addAll(own);
            }
        });
        center(values, rest, left);
        return left;
    }

    private static void center(double[] values, List<Integer> rows, double[] left) {
        double middle = Robust.median(rows.stream()
                .mapToDouble(i -> values[i])
                .filter(Double::isFinite)
                .toArray());
        rows.forEach(i -> left[i] = values[i] - middle);
    }

    /** Returns the values less what goes with a condition; a batch whose condition is missing is taken to have the median. */
    static double[] without(double[] values, double[] condition) {
        double slope = slope(values, condition);
        double[] known = Arrays.stream(condition).filter(Double::isFinite).toArray();
        if (!Double.isFinite(slope) || known.length == 0) {
            return values.clone();
        }
        double middle = Robust.median(known);
        return IntStream.range(0, values.length)
                .mapToDouble(i -> values[i] - (Double.isFinite(condition[i]) ? slope * (condition[i] - middle) : 0))
                .toArray();
    }

    /** Returns the weighted median of the slopes between all pairs; NaN if the condition never differs. */
    private static double slope(double[] values, double[] condition) {
        List<double[]> slopes = new ArrayList<>();
        double weights = 0;
        for (int i = 0; i < values.length; i++) {
            for (int j = 0; j < i; j++) {
                double apart = Math.abs(condition[i] - condition[j]);
                double slope = (values[i] - values[j]) / (condition[i] - condition[j]);
                if (apart > 0 && Double.isFinite(slope)) {
                    slopes.add(new double[] {slope, apart});
                    weights += apart;
                }
            }
        }
        slopes.sort((a, b) -> Double.compare(a[0], b[0]));
        double passed = 0;
        for (double[] one : slopes) {
            passed += one[1];
            if (passed >= weights / 2) {
                return one[0];
            }
        }
        return Double.NaN;
    }
}
