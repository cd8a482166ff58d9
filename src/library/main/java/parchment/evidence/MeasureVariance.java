package parchment.evidence;

import java.util.List;
import java.util.Set;

/**
 * Works out the variance of the feature that the model's slope rests on.
 *
 * <p>The feature's differences inside lots, after the model's other columns are taken out, are split into those inside roast days and
 * those between. A difference between days counts g = s^2 / (s^2 + n d^2) as much, where d^2 is the spread of days, s^2 that of
 * batches inside a day and n the batches per day; this is the weight that a mixed model gives it.
 *
 * @param variance in the measure's unit squared
 * @param insideWeight the share of the slope's information that comes from inside roast days
 */
record MeasureVariance(double variance, double insideWeight) {

    /**
     * Works the variance out.
     *
     * @param dayVariance the variance of the scores between roast days
     * @param batchVariance the variance of a batch's mean score inside a day
     */
    static MeasureVariance of(ScoreDesign design, double dayVariance, double batchVariance) {
        JointSpread spread = JointSpread.of(
                design,
                List.of(design.centered()),
                Set.of(ScoreDesign.FEATURE, ScoreDesign.SQUARE),
                dayVariance,
                batchVariance);
        return new MeasureVariance(spread.covariance(0, 0), spread.insideWeight(new double[] {1}));
    }
}
