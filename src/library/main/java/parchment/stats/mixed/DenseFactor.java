package parchment.stats.mixed;

/** Cholesky factor and inverse of a dense block kept by columns inside a larger array; only the lower half is read or written. */
final class DenseFactor {
    private DenseFactor() {}

    /**
     * Replaces the block by its lower factor.
     *
     * @param stride rows of a column in the array
     * @param rows rows to carry along
     * @param pivots columns to eliminate, at most rows
     * @return false if a pivot is not positive
     */
    static boolean factor(double[] a, int offset, int stride, int rows, int pivots) {
        for (int j = 0; j < pivots; j++) {
            int target = offset + j * stride;
            int k = 0;
            // Four columns at a time: the target column is read and written once for four updates.
            for (; k + 3 < j; k += 4) {
                int o0 = offset + k * stride;
                int o1 = o0 + stride;
                int o2 = o1 + stride;
                int o3 = o2 + stride;
                double c0 = a[o0 + j];
                double c1 = a[o1 + j];
                double c2 = a[o2 + j];
                double c3 = a[o3 + j];
                for (int i = j; i < rows; i++) {
                    a[target + i] -= c0 * a[o0 + i] + c1 * a[o1 + i] + c2 * a[o2 + i] + c3 * a[o3 + i];
                }
            }
            for (; k < j; k++) {
                int o = offset + k * stride;
                double c = a[o + j];
                for (int i = j; i < rows; i++) {
                    a[target + i] -= c * a[o + i];
                }
            }
            double pivot = a[target + j];
            if (!(pivot > 0)) {
                return false;
            }
            double scale = Math.sqrt(pivot);
            a[target + j] = scale;
            double inverse = 1 / scale;
            for (int i = j + 1; i < rows; i++) {
                a[target + i] *= inverse;
            }
        }
        return true;
    }

    /** Writes the lower half of the inverse of L L' (first size rows and columns) into another array. */
    static void inverse(
            double[] lower,
            int offset,
            int stride,
            int size,
            double[] out,
            int outOffset,
            int outStride,
            double[] work) {
        invertFactor(lower, offset, stride, size, work);
        for (int j = 0; j < size; j++) {
            int target = outOffset + j * outStride;
            for (int i = j; i < size; i++) {
                out[target + i] = 0;
            }
            // Column j of W'W: rows of W from j on, each as far as its diagonal; four at a time, as in the factor.
            int k = j;
            for (; k + 3 < size; k += 4) {
                int w0 = k * size;
                int w1 = w0 + size;
                int w2 = w1 + size;
                int w3 = w2 + size;
                double c0 = work[w0 + j];
                double c1 = work[w1 + j];
                double c2 = work[w2 + j];
                double c3 = work[w3 + j];
                // Above the diagonal W holds zeros, so that all four rows may run as far as the longest.
                for (int i = j; i <= k + 3; i++) {
                    out[target + i] += c0 * work[w0 + i] + c1 * work[w1 + i] + c2 * work[w2 + i] + c3 * work[w3 + i];
                }
            }
            for (; k < size; k++) {
                int w = k * size;
                double c = work[w + j];
                for (int i = j; i <= k; i++) {
                    out[target + i] += c * work[w + i];
                }
            }
        }
    }

    /** Writes W = L^-1 by rows, with zeros above the diagonal. */
    private static void invertFactor(double[] lower, int offset, int stride, int size, double[] work) {
        for (int k = 0; k < size; k++) {
            int row = k * size;
            for (int i = 0; i < size; i++) {
                work[row + i] = 0;
            }
            int m = 0;
            for (; m + 3 < k; m += 4) {
                int column = offset + m * stride + k;
                double c0 = lower[column];
                double c1 = lower[column + stride];
                double c2 = lower[column + 2 * stride];
                double c3 = lower[column + 3 * stride];
                int w0 = m * size;
                int w1 = w0 + size;
                int w2 = w1 + size;
                int w3 = w2 + size;
                for (int i = 0; i <= m + 3; i++) {
                    work[row + i] -= c0 * work[w0 + i] + c1 * work[w1 + i] + c2 * work[w2 + i] + c3 * work[w3 + i];
                }
            }
            for (; m < k; m++) {
                double c = lower[offset + m * stride + k];
                int w = m * size;
                for (int i = 0; i <= m; i++) {
                    work[row + i] -= c * work[w + i];
                }
            }
            double inverse = 1 / lower[offset + k * stride + k];
            for (int i = 0; i < k; i++) {
                work[row + i] *= inverse;
            }
            work[row + k] = inverse;
        }
    }
}
