package parchment.stats.linear;

import java.util.Arrays;

/** Sums, products and choices of plain arrays of numbers. What does not fit in length is a mistake of the caller's and ends as Java ends it. */
public final class Vectors {
    private Vectors() {}

    /** Returns the sum of the products. */
    public static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    /** Returns the length, the root of the sum of squares. */
    public static double norm(double[] a) {
        return Math.sqrt(dot(a, a));
    }

    /** Returns the largest size of a number, 0 of none. */
    public static double largest(double[] a) {
        double largest = 0;
        for (double value : a) {
            largest = Math.max(largest, Math.abs(value));
        }
        return largest;
    }

    /** Returns matrix times vector. */
    public static double[] times(double[][] matrix, double[] v) {
        double[] out = new double[matrix.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = dot(matrix[i], v);
        }
        return out;
    }

    /** Returns v'Mv. */
    public static double quadratic(double[][] matrix, double[] v) {
        return dot(times(matrix, v), v);
    }

    /** Returns the values at these places, in their order. */
    public static double[] pick(double[] values, int[] places) {
        double[] picked = new double[places.length];
        for (int i = 0; i < places.length; i++) {
            picked[i] = values[places[i]];
        }
        return picked;
    }

    /** Returns the identity matrix. */
    public static double[][] identity(int size) {
        double[][] identity = new double[size][size];
        for (int i = 0; i < size; i++) {
            identity[i][i] = 1;
        }
        return identity;
    }

    /** Returns the numbers that are neither missing nor infinite, in their order: the array itself where all are. */
    public static double[] finite(double[] values) {
        // A plain loop: this runs for every window of a moving median.
        double[] kept = new double[values.length];
        int count = 0;
        for (double value : values) {
            if (Double.isFinite(value)) {
                kept[count++] = value;
            }
        }
        return count == kept.length ? kept : Arrays.copyOf(kept, count);
    }
}
