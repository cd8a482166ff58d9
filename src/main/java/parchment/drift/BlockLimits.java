package parchment.drift;

import java.util.Arrays;
import java.util.stream.IntStream;

/** Gives every block of watched rows its limit, so that a fixed share of the series that are left signals in it. */
final class BlockLimits {
    private final int watched;
    private final boolean[] out;

    BlockLimits(int watched, int series) {
        this.watched = watched;
        this.out = new boolean[series];
    }

    double[] limits(double[][] one) {
        return limits(one, one)[0];
    }

    /** Two charts together: in each block both get the same share of the series of their own. */
    double[][] limits(double[][] one, double[][] other) {
        double[][] limits = new double[2][watched];
        for (int from = 0; from < watched; from += EstimatedLimits.BLOCK) {
            int to = Math.min(watched, from + EstimatedLimits.BLOCK);
            int[] left = IntStream.range(0, out.length).filter(r -> !out[r]).toArray();
            double[] first = highest(one, left, from, to);
            double[] second = highest(other, left, from, to);
            double[] sortedFirst = sorted(first);
            double[] sortedSecond = sorted(second);
            int[] place = IntStream.range(0, left.length)
                    .map(i -> Math.max(rank(sortedFirst, first[i]), rank(sortedSecond, second[i])))
                    .toArray();
            int[] sortedPlace = place.clone();
            Arrays.sort(sortedPlace);
            // One more series lies at or beyond the k-th largest of n with probability k / (n + 1).
            int reach = (int) Math.max(
                    1, Math.round(EstimatedLimits.RATE * (to - from) / EstimatedLimits.BLOCK * (left.length + 1)));
            int limit = sortedPlace[left.length - reach];
            Arrays.fill(limits[0], from, to, sortedFirst[limit]);
            Arrays.fill(limits[1], from, to, sortedSecond[limit]);
            for (int i = 0; i < left.length; i++) {
                out[left[i]] = place[i] >= limit;
            }
        }
        return limits;
    }

    /** Returns the share of the series that signalled. */
    double signalled() {
        return (double) IntStream.range(0, out.length).filter(r -> out[r]).count() / out.length;
    }

    private static double[] highest(double[][] charts, int[] left, int from, int to) {
        return Arrays.stream(left)
                .mapToDouble(r -> Arrays.stream(charts[r], from, to).max().orElse(0))
                .toArray();
    }

    private static double[] sorted(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted;
    }

    private static int rank(double[] sorted, double value) {
        int at = Arrays.binarySearch(sorted, value);
        while (at > 0 && sorted[at - 1] == value) {
            at--;
        }
        return at;
    }
}
