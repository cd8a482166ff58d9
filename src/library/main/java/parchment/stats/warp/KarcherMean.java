package parchment.stats.warp;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parchment.display.Interruption;

/**
 * Finds the mean of a set of curves after their clocks are matched, with what was matched away and what remains.
 *
 * <p>The mean curve has the mean square-root velocity of the matched curves; its clock is the mean of their clocks, so that no
 * curve's tempo is preferred. Curves are read at equally spaced instants.
 *
 * @see <a href="https://arxiv.org/abs/1103.3817">Srivastava et al. 2011, section 3.4</a>; Tucker, Wu and Srivastava 2013, Comput.
 *     Stat. Data Anal. 61:50
 */
public final class KarcherMean {
    private static final int ROUNDS = 30;
    private static final double SETTLED = 1e-3;

    private final double[] times;
    private final double[] mean;
    private final List<double[]> aligned;
    private final List<Warp> warps;
    private final double amplitudeVariance;
    private final double phaseVariance;
    private final double varianceBefore;
    private final double varianceAfter;
    private final int rounds;
    private final double lastChange;

    private KarcherMean(double[] times, double[][] curves, Rounds result, double start, double run) {
        int n = curves.length;
        int cells = times.length - 1;
        this.times = times;
        double[] centre = WarpMean.of(result.warps);
        // Going back along the mean clock puts the mean of all clocks at equal speed.
        double[] grid = Velocity.unitGrid(cells);
        double[] back = Warp.linear(grid, centre).inverse().at(grid);
        this.aligned = new ArrayList<>();
        this.warps = new ArrayList<>();
        double[][] velocities = new double[n][];
        double[][] matched = new double[n][];
        double level = 0;
        double phases = 0;
        double[] clock = clock(start, run, grid);
        for (int i = 0; i < n; i++) {
            double[] warp = Velocity.at(result.warps[i], back);
            matched[i] = Velocity.at(curves[i], warp);
            velocities[i] = Velocity.of(matched[i]);
            level += curves[i][0] / n;
            Warp own = Warp.linear(clock, clock(start, run, warp));
            phases += own.phaseDistance() * own.phaseDistance();
            warps.add(own);
            aligned.add(matched[i]);
        }
        double[] velocity = Velocity.mean(velocities);
        this.mean = Velocity.curve(level, velocity);
        double amplitudes = 0;
        for (double[] q : velocities) {
            amplitudes += Velocity.squaredDistance(q, velocity);
        }
        this.amplitudeVariance = amplitudes / (n - 1);
        this.phaseVariance = phases / (n - 1);
        this.varianceBefore = variance(curves);
        this.varianceAfter = variance(matched);
        this.rounds = result.rounds;
        this.lastChange = result.lastChange;
    }

    private record Rounds(double[][] warps, int rounds, double lastChange) {}

    static KarcherMean of(double[] times, List<double[]> samples, int cells, CoprimeSearch search) {
        int n = samples.size();
        double[][] curves = new double[n][];
        double[][] velocities = new double[n][];
        for (int i = 0; i < n; i++) {
            curves[i] = Velocity.onGrid(times, samples.get(i), cells);
            velocities[i] = Velocity.of(curves[i]);
        }
        double[] grid = Velocity.unitGrid(cells);
        double[] mean = nearest(velocities, Velocity.mean(velocities));
        double[][] warps = new double[n][];
        double change = Double.POSITIVE_INFINITY;
        int round = 0;
        while (round < ROUNDS && change > SETTLED) {
            double[][] moved = new double[n][];
            double[] target = mean;
            double[] shape = Velocity.curve(0, target);
            for (int i = 0; i < n; i++) {
                Interruption.checkHere();
                warps[i] = search.search(shape, curves[i]).warp().at(grid);
                moved[i] = Velocity.of(Velocity.at(curves[i], warps[i]));
            }
            double[] next = Velocity.mean(moved);
            double size = Math.sqrt(Velocity.product(target, target));
            change = size == 0 ? 0 : Math.sqrt(Velocity.squaredDistance(next, target)) / size;
            mean = next;
            round++;
        }
        double start = times[0];
        double run = times[times.length - 1] - start;
        return new KarcherMean(
                clock(start, run, Velocity.unitGrid(cells)), curves, new Rounds(warps, round, change), start, run);
    }

    private static double[] nearest(double[][] velocities, double[] mean) {
        double[] best = velocities[0];
        for (double[] q : velocities) {
            if (Velocity.squaredDistance(q, mean) < Velocity.squaredDistance(best, mean)) {
                best = q;
            }
        }
        return best;
    }

    private static double[] clock(double start, double run, double[] unit) {
        double[] clock = new double[unit.length];
        for (int k = 0; k < unit.length; k++) {
            clock[k] = start + run * unit[k];
        }
        return clock;
    }

    /** Variance between curves at one instant, averaged over the instants by the trapezoid rule. */
    private static double variance(double[][] curves) {
        double[] mean = Velocity.mean(curves);
        double sum = 0;
        int last = mean.length - 1;
        for (double[] curve : curves) {
            for (int k = 0; k <= last; k++) {
                double weight = k == 0 || k == last ? 0.5 : 1;
                sum += weight * (curve[k] - mean[k]) * (curve[k] - mean[k]);
            }
        }
        return sum / last / (curves.length - 1);
    }

    /** Returns the instants at which the mean and the matched curves are given. */
    public double[] times() {
        return times.clone();
    }

    /** Returns the mean curve at {@link #times()}, in the unit of the curves. */
    public double[] mean() {
        return mean.clone();
    }

    /** Returns each curve on the common clock at {@link #times()}, in the order given. */
    public List<double[]> aligned() {
        return aligned.stream().map(double[]::clone).toList();
    }

    /** Returns for each curve the warp from the common clock to its own, in the order given. */
    public List<Warp> warps() {
        return List.copyOf(warps);
    }

    /** Returns the mean squared distance of the matched square-root velocities to their mean, with n - 1. */
    public double amplitudeVariance() {
        return amplitudeVariance;
    }

    /** Returns the mean squared angle of the clocks to the common one, with n - 1. */
    public double phaseVariance() {
        return phaseVariance;
    }

    /** Returns the variance between the curves on their own clocks, averaged over time, in the squared unit of the curves. */
    public double varianceBefore() {
        return varianceBefore;
    }

    /** Returns the variance between the matched curves, averaged over time: what timing does not explain. */
    public double varianceAfter() {
        return varianceAfter;
    }

    /** Says whether the last round changed the mean velocity by less than one part in a thousand. */
    public boolean settled() {
        return lastChange <= SETTLED;
    }

    @Override
    public String toString() {
        String end = settled()
                ? String.format(Locale.ROOT, "settled after %d rounds", rounds)
                : String.format(
                        Locale.ROOT,
                        "not settled after %d rounds: the last one still changed the mean by %.1f %%",
                        rounds,
                        100 * lastChange);
        return String.format(
                Locale.ROOT,
                "mean of %d curves on one clock; variance between them %.4g before and %.4g after matching; %s",
                aligned.size(),
                varianceBefore,
                varianceAfter,
                end);
    }
}
