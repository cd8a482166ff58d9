package parchment.drift;

import java.util.SplittableRandom;
import java.util.stream.IntStream;

/** Which kind of resemblance each drawn series has, and how likely its own first rows make each kind. */
final class DrawnKinds {
    private static final long SEED = 20260301;

    private final LikelyWandering kinds;
    private final int[] kind;
    private final double[][] likely;

    DrawnKinds(LikelyWandering kinds, int series) {
        this.kinds = kinds;
        this.kind = new int[series];
        this.likely = new double[series][];
        int at = 0;
        double reached = kinds.before(0);
        for (int r = 0; r < series; r++) {
            // Systematic: each kind gets its share of the series.
            while ((r + 0.5) / series > reached) {
                reached += kinds.before(++at);
            }
            kind[r] = at;
        }
    }

    int series() {
        return kind.length;
    }

    int kinds() {
        return kinds.size();
    }

    int kind(int series) {
        return kind[series];
    }

    /** Returns the normal values of a series: the first of them are the same however many are asked for. */
    double[] normals(int series, int rows) {
        SplittableRandom random = new SplittableRandom(SEED + series);
        return IntStream.range(0, rows).mapToDouble(i -> random.nextGaussian()).toArray();
    }

    /** Remembers how likely the first rows of a series make each kind. */
    void weigh(int series, double[] y) {
        likely[series] = kinds.weights(y);
    }

    double[] likely(int series) {
        return likely[series];
    }

    /** Returns the share of each kind's series of which something is true. */
    double[] shares(boolean[] happened) {
        double[] share = new double[kinds()];
        int[] count = new int[kinds()];
        for (int r = 0; r < kind.length; r++) {
            share[kind[r]] += happened[r] ? 1 : 0;
            count[kind[r]]++;
        }
        return IntStream.range(0, share.length)
                .mapToDouble(k -> share[k] / Math.max(1, count[k]))
                .toArray();
    }

    /** Returns how often something happens, from the series in which it happened. */
    LikelyRate rate(boolean[] happened) {
        double[][] taken = new double[kinds()][kinds()];
        int[] count = new int[kinds()];
        for (int r = 0; r < kind.length; r++) {
            count[kind[r]]++;
            for (int k = 0; k < kinds(); k++) {
                taken[kind[r]][k] += likely[r][k];
            }
        }
        for (int i = 0; i < taken.length; i++) {
            for (int k = 0; k < kinds(); k++) {
                taken[i][k] /= Math.max(1, count[i]);
            }
        }
        return new LikelyRate(
                shares(happened),
                taken,
                IntStream.range(0, kinds()).mapToDouble(kinds::before).toArray());
    }
}
