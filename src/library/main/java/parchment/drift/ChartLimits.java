package parchment.drift;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Gives every block of watched rows its limit, so that a fixed share of the series that have not signalled signals in it, and as nearly
 * as the stretch allows in every kind of resemblance.
 *
 * <p>A limit is a function of how likely the stretch makes each kind: the mean, in logarithms, of what one in ten series of the kind
 * exceeds, plus a number of the kind's own, plus one for the block. The kinds' numbers are found by bootstrap of the whole procedure,
 * stretch and all: where series of a kind signal more often than one should expect, limits grow for stretches that look like it, and
 * shrink where they signal less often. The last one says how far out the stated share lies.
 */
final class ChartLimits {
    /** Share of unchanged series that signal in ten watched rows. */
    static final double RATE = 0.01;
    /** What of a kind's highest values is taken as usual. */
    private static final double USUAL = 0.9;
    /** At which rate kinds are compared: rarer ones would be chance. */
    private static final double COMPARED = 0.03;
    /** Steps towards like rates, and how long they are: more of them follow the drawn series' chance, fewer leave kinds apart. */
    private static final int STEPS = 15;

    private static final double STEP = 0.1;

    private final DrawnKinds drawn;
    private final double[][][] usual;
    private final double[] more;
    private final double[] level;
    private final boolean[] signalled;

    /**
     * @param drawn the series' kinds
     * @param onward each series' charts in a future like its stretch: the logarithms of their highest values in blocks of rows
     * @param future the same in the rows to be watched
     * @param watched how many rows are watched
     */
    ChartLimits(DrawnKinds drawn, double[][][] onward, double[][][] future, int watched) {
        this.drawn = drawn;
        this.more = more(onward);
        this.usual = usual(future);
        this.level = new double[Charted.blocks(watched)];
        this.signalled = new boolean[drawn.series()];
        double[][] scores = scores(future, usual);
        double[] own = own();
        for (int b = 0; b < level.length; b++) {
            int rows = Math.min(Charted.BLOCK, watched - b * Charted.BLOCK);
            double[] score = scores[b];
            double[] left = IntStream.range(0, score.length)
                    .filter(r -> !signalled[r])
                    .mapToDouble(r -> score[r] - own[r])
                    .sorted()
                    .toArray();
            // One more series lies at or beyond the k-th largest of n with probability k / (n + 1).
            int reach = (int) Math.max(1, Math.round(RATE * rows / Charted.BLOCK * (left.length + 1)));
            level[b] = left[left.length - reach];
            for (int r = 0; r < score.length; r++) {
                signalled[r] |= score[r] - own[r] >= level[b];
            }
        }
    }

    private double[] more(double[][][] onward) {
        double[] found = new double[drawn.kinds()];
        double[][] scores = scores(onward, usual(onward));
        for (int step = 0; step < STEPS; step++) {
            double[] rates = new double[found.length];
            for (double[] score : scores) {
                double[] now = IntStream.range(0, score.length)
                        .mapToDouble(r -> score[r] - mean(drawn.likely(r), found))
                        .toArray();
                double[] sorted = now.clone();
                Arrays.sort(sorted);
                double limit = sorted[(int) ((1 - COMPARED) * sorted.length)];
                boolean[] beyond = new boolean[now.length];
                for (int r = 0; r < now.length; r++) {
                    beyond[r] = now[r] >= limit;
                }
                double[] shares = drawn.shares(beyond);
                for (int k = 0; k < rates.length; k++) {
                    rates[k] += shares[k] / scores.length;
                }
            }
            for (int k = 0; k < found.length; k++) {
                found[k] += STEP * Math.log(Math.max(0.1, rates[k] / COMPARED));
            }
        }
        return found;
    }

    /** Returns what one in ten series of a kind exceeds: by chart, block, kind. */
    private double[][][] usual(double[][][] charts) {
        int blocks = charts[0][0].length;
        double[][][] found = new double[charts[0].length][blocks][drawn.kinds()];
        for (int c = 0; c < found.length; c++) {
            for (int b = 0; b < blocks; b++) {
                for (int k = 0; k < drawn.kinds(); k++) {
                    int chart = c;
                    int block = b;
                    int kind = k;
                    double[] of = IntStream.range(0, drawn.series())
                            .filter(r -> drawn.kind(r) == kind)
                            .mapToDouble(r -> charts[r][chart][block])
                            .sorted()
                            .toArray();
                    found[c][b][k] = of[(int) (USUAL * of.length)];
                }
            }
        }
        return found;
    }

    /** Returns how far the farther chart of each series lies beyond what is usual: by block, series. */
    private double[][] scores(double[][][] charts, double[][][] usually) {
        double[][] found = new double[usually[0].length][drawn.series()];
        for (int r = 0; r < drawn.series(); r++) {
            for (int b = 0; b < found.length; b++) {
                found[b][r] = beyond(charts[r], b, drawn.likely(r), usually);
            }
        }
        return found;
    }

    private static double beyond(double[][] charts, int block, double[] likely, double[][][] usually) {
        double far = Double.NEGATIVE_INFINITY;
        for (int c = 0; c < charts.length; c++) {
            far = Math.max(far, charts[c][block] - mean(likely, usually[c][block]));
        }
        return far;
    }

    private double[] own() {
        return IntStream.range(0, drawn.series())
                .mapToDouble(r -> mean(drawn.likely(r), more))
                .toArray();
    }

    private static double mean(double[] weights, double[] values) {
        double sum = 0;
        for (int k = 0; k < values.length; k++) {
            sum += weights[k] * values[k];
        }
        return sum;
    }

    /** Returns the limit of a chart in each watched row, where the kinds are as likely as given. */
    double[] limits(int chart, double[] likely, int watched) {
        return IntStream.range(0, watched)
                .mapToDouble(i -> {
                    int b = i / Charted.BLOCK;
                    return Math.exp(mean(likely, usual[chart][b]) + mean(likely, more) + level[b]);
                })
                .toArray();
    }

    /** Tells whether charts of a drawn series leave their limits. */
    boolean crossed(int series, double[][] charts) {
        double own = mean(drawn.likely(series), more);
        boolean any = false;
        for (int b = 0; b < charts[0].length; b++) {
            any |= beyond(charts, b, drawn.likely(series), usual) - own > level[b];
        }
        return any;
    }

    /** Returns the share of unchanged series that signal in the watched rows. */
    double falseSignals() {
        return (double) IntStream.range(0, signalled.length)
                        .filter(r -> signalled[r])
                        .count()
                / signalled.length;
    }
}
