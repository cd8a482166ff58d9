package parchment.trial;

import java.util.OptionalInt;
import parchment.stats.linear.NoncentralT;

/**
 * Says how likely a trial is to find a slope, by the noncentral t distribution.
 *
 * <p>The noncentrality is slope times the root of (sets times the sum of squares of the targets in a set, over the variance of batch means inside sets), on batches
 * less sets less one degrees of freedom.
 *
 * @param slope the true slope, points per unit of the control
 * @param variance of batch means inside sets, squared points
 * @param setSize batches in a set
 * @param squares of the targets in a set about their mean
 * @param chance of a false finding
 */
record TrialPower(double slope, double variance, double setSize, double squares, double chance) {
    /** So often a trial is to find a difference that is there. */
    static final double WANTED = 0.8;

    /** More batches than this are no trial that a roastery would finish; a choice of this project. */
    static final int MOST_BATCHES = 200;

    /** Returns the share of trials of so many sets that find the slope. */
    double at(int sets) {
        double degrees = sets * (setSize - 1) - 1;
        if (!(degrees > 0)) {
            return 0;
        }
        return variance > 0 ? NoncentralT.power(slope * Math.sqrt(sets * squares / variance), degrees, chance) : 1;
    }

    /** Returns how many sets find it four times in five; empty if that takes more batches than a trial may have. */
    OptionalInt sets() {
        int most = (int) (MOST_BATCHES / setSize);
        for (int sets = 2; sets <= most; sets++) {
            if (at(sets) >= WANTED) {
                return OptionalInt.of(sets);
            }
        }
        return OptionalInt.empty();
    }
}
