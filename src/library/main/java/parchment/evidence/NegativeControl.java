package parchment.evidence;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import parchment.display.Showable;
import parchment.evidence.finding.Slope;
import parchment.stats.linear.CannotFitException;

/**
 * Asks whether the feature of the next roast day goes with today's score, which it cannot have changed.
 *
 * <p>One logbook in twenty shows this by chance; otherwise both follow something that moves with the calendar. The verdict drops a
 * level.
 *
 * @param slope of today's score on the mean feature of the next roast day, from its lots' means
 * @param roastDays how many roast days have a next one
 */
record NegativeControl(Slope slope, int roastDays) implements Showable {
    static final double CHANCE = 0.05;
    private static final int FEWEST_DAYS = 3;
    private static final String NEXT_DAY = "feature of the next roast day";

    static final NegativeControl MISSING = new NegativeControl(Slope.MISSING, 0);

    static NegativeControl of(ModelFrame material) {
        double[] within = material.within();
        TreeMap<LocalDate, double[]> days = new TreeMap<>();
        for (TastedBatch batch : material.batches()) {
            double[] sum = days.computeIfAbsent(batch.day(), key -> new double[2]);
            sum[0] += within[batch.position()];
            sum[1]++;
        }
        if (days.size() < FEWEST_DAYS) {
            return MISSING;
        }
        LocalDate last = days.lastKey();
        ModelFrame earlier = material.only(batch -> batch.day().isBefore(last));
        List<TastedBatch> batches = earlier.batches();
        double[] next = new double[batches.size()];
        for (int i = 0; i < next.length; i++) {
            double[] sum = days.higherEntry(batches.get(i).day()).getValue();
            next[i] = sum[0] / sum[1];
        }
        try {
            FittedScores fitted =
                    FittedScores.of(ScoreDesign.of(earlier, ModelForm.STANDARD).withBatchColumn(NEXT_DAY, next));
            // It is one number per roast day, so the days are all that it can be compared by.
            return new NegativeControl(fitted.contrast(Map.of(NEXT_DAY, 1.0), next, 0), days.size() - 1);
        } catch (CannotFitException tooFew) {
            return new NegativeControl(Slope.MISSING, days.size() - 1);
        }
    }

    /** Says whether the control was set off: the next day's feature goes with today's score, at a chance of 5 in 100. */
    public boolean setOff() {
        return slope.chance() < CHANCE;
    }

    @Override
    public String toString() {
        if (!slope.known()) {
            return "Whether the next roast day's measure goes with today's score could not be checked: "
                    + (roastDays < FEWEST_DAYS
                            ? "there are too few roast days."
                            : "on " + roastDays
                                    + " roast days it could not be told from the other terms of the model.");
        }
        String often = "chance alone would do as much in " + Math.round(100 * slope.chance()) + " of 100 logbooks";
        return setOff()
                ? "The measure of the next roast day goes with today's score (" + often
                        + "), which it cannot have changed. One logbook in twenty shows this by chance; otherwise something that moves"
                        + " with the calendar is behind both."
                : "The measure of the next roast day does not go with today's score (" + often + "), as it should be.";
    }
}
