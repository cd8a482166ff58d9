package parchment.stats.process;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import parchment.display.Interruption;
import parchment.display.Showable;

/**
 * Splits values in order of time into stretches of constant level, paying a penalty for every change.
 *
 * <p>The split with the least squared error plus penalty, exactly, in about linear time where changes are frequent: dates that can
 * never again be the last change are dropped on the way (Killick, Fearnhead and Eckley 2012, J. Am. Stat. Assoc. 107:1590).
 */
public final class PenalizedChanges implements Showable {
    private final SegmentCost cost;
    private final double penalty;
    private final List<Integer> positions;

    private PenalizedChanges(SegmentCost cost, double penalty, List<Integer> positions) {
        this.cost = cost;
        this.penalty = penalty;
        this.positions = positions;
    }

    /**
     * Searches one series for the levels of least cost.
     *
     * @param values in order of time, none missing, with a variance of 1 around their levels if the penalty is meant so
     * @param shortest the least number of values in a stretch, at least 1
     * @param penalty for one change, in squared units of the values; 3 ln n is common for independent values
     */
    public static PenalizedChanges of(double[] values, int shortest, double penalty) {
        Checks.series("A search for changes", 2, values);
        SegmentCost cost = SegmentCost.of(List.of(values));
        Checks.atLeast(1, "The shortest stretch", shortest);
        Checks.positive("The penalty", penalty);
        int n = cost.length();
        double[] best = new double[n + 1];
        int[] last = new int[n + 1];
        best[0] = -penalty;
        List<Integer> candidates = new ArrayList<>();
        int[] beatenBy = new int[n + 1]; // the end at which a better last change than this one was found, 0 if none yet
        for (int end = 1; end <= n; end++) {
            if (end % 1000 == 0) {
                Interruption.checkHere();
            }
            best[end] = Double.POSITIVE_INFINITY;
            if (end < shortest) {
                continue;
            }
            candidates.add(end - shortest);
            // What beats a candidate can itself be the last change only once a whole stretch has followed it.
            int here = end;
            candidates.removeIf(split -> beatenBy[split] > 0 && here - beatenBy[split] >= shortest);
            for (int split : candidates) {
                double sum = best[split] + cost.of(split, end) + penalty;
                if (sum < best[end]) {
                    best[end] = sum;
                    last[end] = split;
                }
            }
            for (int split : candidates) {
                if (beatenBy[split] == 0 && best[split] + cost.of(split, end) >= best[end]) {
                    beatenBy[split] = end;
                }
            }
        }
        List<Integer> positions = new ArrayList<>();
        for (int end = n; last[end] > 0; end = last[end]) {
            positions.add(last[end]);
        }
        Collections.reverse(positions);
        return new PenalizedChanges(cost, penalty, List.copyOf(positions));
    }

    /** Returns after which values the level changes, counted from 1; empty if it does not. */
    public List<Integer> positions() {
        return positions;
    }

    /** Returns the sum of squared errors around the levels, without penalties. */
    public double sumOfSquares() {
        double sum = 0;
        int begin = 0;
        for (int position : positions) {
            sum += cost.of(begin, position);
            begin = position;
        }
        return sum + cost.of(begin, cost.length());
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%d values, %d %s of level at a penalty of %.4g",
                cost.length(),
                positions.size(),
                positions.size() == 1 ? "change" : "changes",
                penalty);
    }
}
