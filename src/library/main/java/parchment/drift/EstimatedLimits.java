package parchment.drift;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Sets limits for a series from its first rows, so that false signals come as rarely as is stated although the level, its slopes, the
 * spread and the resemblance of neighbours are only estimated there.
 *
 * <p>Limits that are taken as known signal too often, worst of all with few rows to estimate from (Jensen, Jones-Farmer, Champ and
 * Woodall 2006, J. Quality Technology 38:349). Here the whole procedure is repeated on series drawn without any change: estimated from
 * their first rows, watched on the others (parametric bootstrap of the estimating step, as in Gandy and Kvaløy 2013, Scand. J. Statist.
 * 40:647, though for the mean over stretches and not for nine stretches in ten). Every stretch of ten watched rows gets the limit that
 * one in a hundred of the series signals at that did not signal before (limits of a fixed conditional rate, as in Shen, Zou, Jiang and
 * Tsung 2013, Naval Research Logistics 60:625; all from memory). Limits of earlier rows stay as they are when rows are added.
 *
 * <p>How far neighbours resemble each other is not known either, and few rows do not tell. The limits are drawn up so that every kind
 * of resemblance signals about as often ({@link ChartLimits}).
 */
final class EstimatedLimits {
    private final int stretch;
    private final int watched;
    private final Foretold.Deviations own;
    private final Optional<WatchDesign> design;
    private final double[] likely;

    private EstimatedLimits(double[] y, Foretold foretold, Optional<WatchDesign> design, int stretch) {
        this.stretch = stretch;
        this.watched = y.length - stretch;
        this.own = foretold.of(y);
        this.design = design;
        this.likely = design.map(d -> d.kinds.weights(y)).orElse(new double[0]);
    }

    /**
     * Sets limits.
     *
     * @param y rows in order of time
     * @param columns what rows are compared at like, the first of them all ones; free of each other in the first rows
     * @param rows when they were roasted, and how many of the first of them to estimate from
     */
    static EstimatedLimits of(double[] y, List<double[]> columns, RowsInTime rows) {
        return of(y, columns, rows, new WatchDesigns());
    }

    /** Sets limits with a design that was drawn for other rows like these, if it was. */
    static EstimatedLimits of(double[] y, List<double[]> columns, RowsInTime rows, WatchDesigns designs) {
        return rows.size() == rows.stretch()
                ? new EstimatedLimits(y, new Foretold(columns, rows.stretch()), Optional.empty(), rows.stretch())
                : of(y, designs.of(columns, rows), rows.stretch());
    }

    /** Sets limits where the design has been drawn already. */
    static EstimatedLimits of(double[] y, WatchDesign design, int stretch) {
        return new EstimatedLimits(y, design.foretold, Optional.of(design), stretch);
    }

    /** Returns how far each row lies from what the first rows foretell of it, in the unit of the rows. */
    double[] deviations() {
        return own.raw().clone();
    }

    /** Returns the standard deviation of rows about what is foretold, from the first rows. */
    double spread() {
        return own.spread();
    }

    /** Returns half of the width of the limits of single rows, in the unit of the rows; one for each watched row. */
    double[] singleLimits() {
        double[] limits = singleStandardLimits();
        return IntStream.range(0, limits.length)
                .mapToDouble(i ->
                        limits[i] * own.spread() * design.orElseThrow().foretold.error(i))
                .toArray();
    }

    /** Returns the watched rows' deviations in standard deviations of a new row. */
    double[] standard() {
        return own.watched(stretch);
    }

    /** Returns the limits of single rows in standard deviations of a new row. */
    double[] singleStandardLimits() {
        return design.map(d -> d.single().limits(0, likely, watched)).orElse(new double[0]);
    }

    /** Returns the weighted mean of the watched rows, in standard deviations. */
    double[] weightedMean() {
        return Charted.weightedMeans(standard());
    }

    /** Returns half of the width of the weighted mean's limits, in standard deviations. */
    double[] weightedMeanLimits() {
        return design.map(d -> d.shift.limits(0, likely, watched)).orElse(new double[0]);
    }

    /** Returns the sum of what lay above, in standard deviations. */
    double[] sumAbove() {
        return Charted.sums(standard(), 1);
    }

    /** Returns the sum of what lay below, in standard deviations. */
    double[] sumBelow() {
        return Charted.sums(standard(), -1);
    }

    /** Returns the limits of the sums, in standard deviations. */
    double[] sumLimits() {
        return design.map(d -> d.shift.limits(1, likely, watched)).orElse(new double[0]);
    }

    /** Returns the share of charts of this length with a single row outside although nothing changed; 0 if none is watched. */
    double falseSingles() {
        return design.map(d -> d.single().falseSignals()).orElse(0.0);
    }

    /** Returns the share of charts of this length that show a shift although nothing changed; 0 if no row is watched. */
    double falseShifts() {
        return design.map(d -> d.shift.falseSignals()).orElse(0.0);
    }

    /** Returns how often a shift of one standard deviation that comes with the first watched row shows within 20 rows, or all if fewer. */
    double shiftSeenSoon() {
        return design.map(d -> d.seenSoon(likely)).orElse(Double.NaN);
    }

    /** Returns the least shift that shows within 20 rows, or all if fewer, in 8 of 10 charts, in standard deviations. */
    double leastSeen() {
        return design.map(d -> d.leastSeen(0.8, likely)).orElse(Double.NaN);
    }
}
