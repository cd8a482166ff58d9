package parchment.stats;

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
        // work holds L^-1 by columns, densely.
        for (int j = 0; j < size; j++) {
            int w = j * size;
            for (int i = j; i < size; i++) {
                work[w + i] = 0;
            }
            work[w + j] = 1;
            for (int k = j; k < size; k++) {
                int column = offset + k * stride;
                double x = work[w + k] / lower[column + k];
                work[w + k] = x;
                if (x != 0) {
                    for (int i = k + 1; i < size; i++) {
                        work[w + i] -= x * lower[column + i];
                    }
                }
            }
        }
        for (int j = 0; j < size; j++) {
            int wj = j * size;
            int target = outOffset + j * outStride;
            for (int i = j; i < size; i++) {
                int wi = i * size;
                double s0 = 0;
                double s1 = 0;
                double s2 = 0;
                double s3 = 0;
                int k = i;
                for (; k + 3 < size; k += 4) {
                    s0 += work[wi + k] * work[wj + k];
                    s1 += work[wi + k + 1] * work[wj + k + 1];
                    s2 += work[wi + k + 2] * work[wj + k + 2];
                    s3 += work[wi + k + 3] * work[wj + k + 3];
                }
                for (; k < size; k++) {
                    s0 += work[wi + k] * work[wj + k];
                }
                out[target + i] = s0 + s1 + (s2 + s3);
            }
        }
    }
}
