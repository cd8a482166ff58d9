package parchment.stats.warp;

/** Averages warps of 0..1 onto itself: their square-root slopes are points of a sphere, and the mean is taken along its arcs. */
final class WarpMean {
    private static final int ROUNDS = 100;

    private WarpMean() {}

    /** Returns the mean of warps that are given at equally spaced points and straight in between. */
    static double[] of(double[][] warps) {
        int cells = warps[0].length - 1;
        double[][] roots = new double[warps.length][];
        for (int i = 0; i < warps.length; i++) {
            roots[i] = Velocity.of(warps[i]);
        }
        double[] mean = unit(Velocity.mean(roots));
        for (int round = 0; round < ROUNDS; round++) {
            double[] shift = new double[cells];
            for (double[] root : roots) {
                double angle = WarpAngle.ofChord(Math.sqrt(Velocity.squaredDistance(root, mean)));
                if (angle < 1e-14) {
                    continue;
                }
                double cosine = Math.cos(angle);
                double scale = angle / Math.sin(angle) / warps.length;
                for (int k = 0; k < cells; k++) {
                    shift[k] += scale * (root[k] - cosine * mean[k]);
                }
            }
            double length = Math.sqrt(Velocity.product(shift, shift));
            if (length < 1e-12) {
                break;
            }
            double along = Math.sin(length) / length;
            for (int k = 0; k < cells; k++) {
                mean[k] = Math.cos(length) * mean[k] + along * shift[k];
            }
            mean = unit(mean);
        }
        double[] warp = Velocity.curve(0, mean);
        double total = warp[cells];
        for (int k = 0; k <= cells; k++) {
            warp[k] /= total;
        }
        return warp;
    }

    private static double[] unit(double[] q) {
        double length = Math.sqrt(Velocity.product(q, q));
        double[] scaled = new double[q.length];
        for (int k = 0; k < q.length; k++) {
            scaled[k] = q[k] / length;
        }
        return scaled;
    }
}
