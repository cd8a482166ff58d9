package parchment.evidence;

import java.util.Arrays;
import parchment.evidence.finding.Slope;
import parchment.stats.linear.Robust;

/**
 * The answer to one comparison among several measures of one model.
 *
 * @param fitted the slope as fitted
 * @param told the slope corrected for the measures' errors where that matters
 * @param reliability how much of the part that the slope rests on is the batches' own
 * @param inflation by how much the variance grew because the measures moved together (Marquardt 1970, Technometrics 12:591); infinite
 *     if one of them is determined by the rest
 * @param compared that part of each batch's measures that the slope rests on, in the unit of the comparison
 */
record JointSlope(Slope fitted, Slope told, Reliability reliability, double inflation, double[] compared) {

    static JointSlope undetermined(int batches) {
        return new JointSlope(
                Slope.MISSING,
                Slope.MISSING,
                new Reliability(Double.NaN, Double.NaN, 0, batches),
                Double.POSITIVE_INFINITY,
                new double[batches]);
    }

    /** Returns the 10th percentile of that part, counted from its mean. */
    double low() {
        return Robust.quantile(compared, 0.1)
                - Arrays.stream(compared).average().orElse(0);
    }

    /** Returns the distance from the 10th to the 90th percentile of that part. */
    double width() {
        return Reliability.spread(compared);
    }
}
