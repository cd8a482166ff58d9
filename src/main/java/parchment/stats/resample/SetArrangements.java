package parchment.stats.resample;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/** Holds the rows of one set, their assigned values less the set's mean, and the ways in which these could have been dealt out. */
final class SetArrangements {
    /** Sets with more arrangements than this (above seven different values) are shuffled afresh each time. */
    private static final int MOST_LISTED = 5_040;

    private final int[] rows;
    private final double[] values;
    private final List<double[]> listed;
    private final double count;

    SetArrangements(int[] rows, double[] assigned) {
        this.rows = rows;
        double mean =
                Arrays.stream(rows).mapToDouble(row -> assigned[row]).average().orElse(0);
        this.values =
                Arrays.stream(rows).mapToDouble(row -> assigned[row] - mean).toArray();
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        this.count = distinct(sorted);
        this.listed = new ArrayList<>();
        if (count <= MOST_LISTED) {
            list(sorted);
        }
    }

    /** Counts the arrangements that differ: the factorial of the size over those of the repeats. */
    private static double distinct(double[] sorted) {
        double arrangements = 1;
        int repeats = 1;
        for (int i = 0; i < sorted.length; i++) {
            repeats = i > 0 && sorted[i] == sorted[i - 1] ? repeats + 1 : 1;
            arrangements *= (i + 1.0) / repeats;
        }
        return Math.rint(arrangements);
    }

    /** Lists them in rising order of their values, each once (Narayana's next permutation). */
    private void list(double[] sorted) {
        double[] order = sorted;
        while (true) {
            listed.add(order.clone());
            int pivot = order.length - 2;
            while (pivot >= 0 && order[pivot] >= order[pivot + 1]) {
                pivot--;
            }
            if (pivot < 0) {
                return;
            }
            int next = order.length - 1;
            while (order[next] <= order[pivot]) {
                next--;
            }
            swap(order, pivot, next);
            for (int i = pivot + 1, j = order.length - 1; i < j; i++, j--) {
                swap(order, i, j);
            }
        }
    }

    private static void swap(double[] order, int i, int j) {
        double held = order[i];
        order[i] = order[j];
        order[j] = held;
    }

    /** Writes the set's centred values into their rows. */
    void writeValues(double[] into) {
        for (int i = 0; i < rows.length; i++) {
            into[rows[i]] = values[i];
        }
    }

    double count() {
        return count;
    }

    boolean isListed() {
        return !listed.isEmpty();
    }

    /** Returns what the set adds to the sum of centred value times response as it was dealt. */
    double sumAsDealt(double[] response) {
        return sum(values, response);
    }

    /** Returns what it adds under each listed arrangement. */
    double[] sums(double[] response) {
        return listed.stream().mapToDouble(order -> sum(order, response)).toArray();
    }

    /** Adds to each sum what the set adds to it under one arrangement that is drawn now. */
    void addDrawn(double[][] responses, double[] sums, SplittableRandom random) {
        double[] order = values.clone();
        for (int i = order.length - 1; i > 0; i--) {
            swap(order, i, random.nextInt(i + 1));
        }
        for (int k = 0; k < responses.length; k++) {
            sums[k] += sum(order, responses[k]);
        }
    }

    private double sum(double[] order, double[] response) {
        double sum = 0;
        for (int i = 0; i < rows.length; i++) {
            sum += order[i] * response[rows[i]];
        }
        return sum;
    }

    double squares() {
        return Arrays.stream(values).map(value -> value * value).sum();
    }

    /** Says whether turning the values around gives the same values, so that each arrangement has its mirror. */
    boolean isSymmetric() {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double scale = Math.max(Math.abs(sorted[0]), Math.abs(sorted[sorted.length - 1]));
        for (int i = 0; i < sorted.length; i++) {
            if (Math.abs(sorted[i] + sorted[sorted.length - 1 - i]) > 1e-9 * scale) {
                return false;
            }
        }
        return true;
    }
}
