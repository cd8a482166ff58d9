package parchment.stats.warp;

import java.util.List;
import parchment.stats.linear.Checks;

/**
 * Matches the clocks of curves by their square-root velocities sign(f') sqrt|f'|, under the Fisher-Rao metric.
 *
 * <p>The amplitude distance of two curves does not change when both are put on another common clock, and does not depend on which
 * comes first; what it leaves out is the phase distance. Only the shape counts: a shift of level changes nothing. <b>Curves that
 * only rise are warps of one another</b>, so that their amplitude distance tells of their total rise and nothing else: match such
 * curves by landmarks, or match their rates of change instead.
 *
 * <p>Each curve's clock is scaled to run from 0 to 1 and cut into equal cells; the best path over that grid is found first and its
 * corners are then freed from the grid. Default: slopes between 1/7 and 7. The work grows
 * with the square of the number of cells.
 *
 * @see <a href="https://arxiv.org/abs/1103.3817">Srivastava, Wu, Kurtek, Klassen and Marron 2011, Registration of functional data
 *     using Fisher-Rao metric</a>; Srivastava and Klassen 2016, Functional and Shape Data Analysis, section 4
 */
public final class ElasticAlignment {
    private static final String JOB = "Elastic alignment";
    private static final int LARGEST_SLOPE = 7;

    private final int cells;
    private final int largestSlope;

    private ElasticAlignment(int cells, int largestSlope) {
        this.cells = cells;
        this.largestSlope = largestSlope;
        Checks.atLeast(2 * largestSlope, "The number of cells of an elastic alignment", cells);
    }

    /**
     * Returns an elastic alignment on a grid.
     *
     * @param cells number of equal cells that either clock is cut into, 14 or more; 100 to 200 are usual
     */
    public static ElasticAlignment of(int cells) {
        return new ElasticAlignment(cells, LARGEST_SLOPE);
    }

    /**
     * Returns a copy whose warps run at slopes from 1/largest to largest.
     *
     * @param largest 1 or more, at most half the number of cells and at most 11; 1 leaves the clocks as they are
     */
    public ElasticAlignment withLargestSlope(int largest) {
        if (largest > 11) {
            throw new IllegalArgumentException(
                    "The largest slope of an elastic alignment must be 11 or less, but it is " + largest
                            + ". A clock that runs so unevenly says that the curves are not alike.");
        }
        return new ElasticAlignment(cells, Checks.atLeast(1, "The largest slope of an elastic alignment", largest));
    }

    /**
     * Matches two curves sampled at the same instants.
     *
     * @throws IllegalArgumentException if the instants do not increase, the lengths differ or a sample is missing
     */
    public ElasticMatch align(double[] times, double[] first, double[] second) {
        return align(times, first, times, second);
    }

    /**
     * Matches two curves, each on its own clock.
     *
     * @throws IllegalArgumentException if the instants do not increase, the lengths differ or a sample is missing
     */
    public ElasticMatch align(double[] firstTimes, double[] first, double[] secondTimes, double[] second) {
        check("the first curve", firstTimes, first);
        check("the second curve", secondTimes, second);
        Scaled fine = match(firstTimes, first, secondTimes, second, cells);
        Scaled coarse = match(firstTimes, first, secondTimes, second, Math.max(largestSlope, cells / 2));
        return new ElasticMatch(
                onClocks(fine.warp, firstTimes, secondTimes),
                fine.before,
                fine.amplitude,
                fine.warp.phaseDistance(),
                Math.abs(fine.amplitude - coarse.amplitude),
                Math.abs(fine.warp.phaseDistance() - coarse.warp.phaseDistance()));
    }

    /**
     * Returns the mean of curves sampled at the same instants, its clock in the middle of theirs.
     *
     * @throws IllegalArgumentException if there are fewer than two curves, the lengths differ or a sample is missing
     */
    public KarcherMean mean(double[] times, List<double[]> curves) {
        Checks.sameGrid("An elastic mean", 2, times.length, curves);
        for (int i = 0; i < curves.size(); i++) {
            check("curve " + (i + 1), times, curves.get(i));
        }
        return KarcherMean.of(times, curves, cells, new CoprimeSearch(cells, largestSlope));
    }

    private record Scaled(Warp warp, double before, double amplitude) {}

    private Scaled match(double[] firstTimes, double[] first, double[] secondTimes, double[] second, int grid) {
        double[] one = Velocity.onGrid(firstTimes, first, grid);
        double[] two = Velocity.onGrid(secondTimes, second, grid);
        CoprimeSearch.Found found = new CoprimeSearch(grid, largestSlope).search(one, two);
        double before = Math.sqrt(Velocity.squaredDistance(Velocity.of(one), Velocity.of(two)));
        return new Scaled(found.warp(), before, Math.sqrt(found.squaredDistance()));
    }

    private static Warp onClocks(Warp unit, double[] firstTimes, double[] secondTimes) {
        double[] ends = {0, 1};
        Warp in = Warp.linear(new double[] {firstTimes[0], firstTimes[firstTimes.length - 1]}, ends);
        Warp out = Warp.linear(ends, new double[] {secondTimes[0], secondTimes[secondTimes.length - 1]});
        return in.then(unit).then(out);
    }

    private static void check(String what, double[] times, double[] values) {
        Checks.curve(JOB, what, values);
        Checks.asManySamples(JOB, "the instants", times.length, what, values.length);
        Checks.rising("The instants of " + what, times);
    }

    @Override
    public String toString() {
        return "elastic alignment on " + cells + " cells, slopes from 1/" + largestSlope + " to " + largestSlope;
    }
}
