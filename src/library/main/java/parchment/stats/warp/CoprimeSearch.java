package parchment.stats.warp;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/**
 * Finds the warp that makes two square-root velocities most alike, by dynamic programming over a square grid.
 *
 * <p>From each grid point a path may run straight by any pair of coprime steps up to the largest slope, 35 of them for 7. Each
 * step's integral is cut where it crosses a grid line of either curve and taken at the middle of each cut; seen from the second
 * curve every cut is the same, and so the result does not depend on which curve comes first.
 */
final class CoprimeSearch {
    private final int cells;
    private final int largestSlope;
    private final List<Step> steps;

    /** One straight step, cut where it crosses a grid line of either curve. */
    private static final class Step {
        private final int across;
        private final int up;
        private final int cuts;
        /** Where the middle of each cut lies, in cells from the start of the step. */
        private final double[] first;

        private final double[] second;
        /** Length of each cut along either curve, as a share of a clock from 0 to 1. */
        private final double[] firstLength;

        private final double[] secondLength;

        Step(int across, int up, int cells) {
            this.across = across;
            this.up = up;
            this.cuts = across + up - 1;
            this.first = new double[cuts];
            this.second = new double[cuts];
            this.firstLength = new double[cuts];
            this.secondLength = new double[cuts];
            // Positions in units of 1 / (across * up) of the step: the grid lines lie at multiples of either number.
            int position = 0;
            int end = across * up;
            for (int k = 0; position < end; k++) {
                int next = Math.min((position / up + 1) * up, (position / across + 1) * across);
                double middle = 0.5 * (position + next);
                first[k] = middle / up;
                second[k] = middle / across;
                firstLength[k] = (double) (next - position) / up / cells;
                secondLength[k] = (double) (next - position) / across / cells;
                position = next;
            }
        }

        /** Velocity times the root of the length of each cut, for every grid point that the step may start from. */
        static double[] table(double[] q, int reach, double[] middles, double[] lengths) {
            int starts = Math.max(0, q.length - reach);
            int cuts = middles.length;
            double[] table = new double[starts * cuts];
            for (int i = 0; i < starts; i++) {
                for (int k = 0; k < cuts; k++) {
                    double at = i + middles[k];
                    int node = (int) at;
                    double value = q[node] + (at - node) * (q[node + 1] - q[node]);
                    table[i * cuts + k] = Math.sqrt(lengths[k]) * value;
                }
            }
            return table;
        }
    }

    CoprimeSearch(int cells, int largestSlope) {
        this.cells = cells;
        this.largestSlope = largestSlope;
        this.steps = new ArrayList<>();
        for (int size = 1; size <= largestSlope; size++) {
            for (int other = 1; other <= size; other++) {
                if (coprime(size, other)) {
                    steps.add(new Step(size, other, cells));
                    if (size != other) {
                        steps.add(new Step(other, size, cells));
                    }
                }
            }
        }
    }

    private static boolean coprime(int a, int b) {
        return b == 0 ? a == 1 : coprime(b, a % b);
    }

    /** The best warp, both clocks from 0 to 1, and the squared distance of the velocities along it. */
    record Found(Warp warp, double squaredDistance) {}

    /** Searches for the warp from the first of two curves, given on the grid, to the second. */
    Found search(double[] firstCurve, double[] secondCurve) {
        double[] q1 = Velocity.atNodes(firstCurve);
        double[] q2 = Velocity.atNodes(secondCurve);
        int width = cells + 1;
        double[] best = new double[width * width];
        byte[] came = new byte[width * width];
        Arrays.fill(best, Double.POSITIVE_INFINITY);
        best[0] = 0;
        Step[] all = steps.toArray(new Step[0]);
        double[][] one = new double[all.length][];
        double[][] two = new double[all.length][];
        for (int s = 0; s < all.length; s++) {
            one[s] = Step.table(q1, all[s].across, all[s].first, all[s].firstLength);
            two[s] = Step.table(q2, all[s].up, all[s].second, all[s].secondLength);
        }
        for (int i = 1; i <= cells; i++) {
            for (int j = 1; j <= cells; j++) {
                double least = Double.POSITIVE_INFINITY;
                byte chosen = -1;
                for (byte s = 0; s < all.length; s++) {
                    int fromI = i - all[s].across;
                    int fromJ = j - all[s].up;
                    if (fromI < 0 || fromJ < 0) {
                        continue;
                    }
                    double sum = best[fromI * width + fromJ];
                    // A step cannot lower the sum; the first of equals wins, and the gentler slopes come first.
                    if (sum >= least) {
                        continue;
                    }
                    sum += apart(one[s], fromI, two[s], fromJ, all[s].cuts);
                    if (sum < least) {
                        least = sum;
                        chosen = s;
                    }
                }
                best[i * width + j] = least;
                came[i * width + j] = chosen;
            }
        }
        List<Integer> first = new ArrayList<>(List.of(cells));
        List<Integer> second = new ArrayList<>(List.of(cells));
        int i = cells;
        int j = cells;
        while (i > 0) {
            Step step = all[came[i * width + j]];
            i -= step.across;
            j -= step.up;
            first.add(i);
            second.add(j);
        }
        Collections.reverse(first);
        Collections.reverse(second);
        double[] x = first.stream().mapToDouble(k -> (double) k / cells).toArray();
        double[] y = second.stream().mapToDouble(k -> (double) k / cells).toArray();
        double left = new Polish(firstCurve, secondCurve, largestSlope, x, y).squaredDistance();
        return new Found(Warp.linear(x, y), left);
    }

    private static double apart(double[] one, int fromI, double[] two, int fromJ, int cuts) {
        int a = fromI * cuts;
        int b = fromJ * cuts;
        double sum = 0;
        for (int k = 0; k < cuts; k++) {
            double d = one[a + k] - two[b + k];
            sum += d * d;
        }
        return sum;
    }
}
