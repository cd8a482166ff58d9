package parchment.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import parchment.stats.CannotFitException;

/**
 * Fits the course of the score over the feature as it would be read on today's probe.
 *
 * <p>Each lot has a level of its own, so only differences inside lots count, and the places are readings: a best place is one to look for
 * on the probe. What had to be added to the readings of an earlier probe period is not known exactly, and its error is one and the same for
 * all batches of the period; see {@link FittedScores#withSharedErrors}.
 */
final class TodaysCourse {
    private static final ModelForm FORM = ModelForm.STANDARD.with(ModelForm.Lots.OWN_LEVEL);

    private final Material today;
    private final FittedScores line;
    private final Optional<FittedScores> bend;

    private TodaysCourse(Material today, FittedScores line, Optional<FittedScores> bend) {
        this.today = today;
        this.line = line;
        this.bend = bend;
    }

    /**
     * Fits a line and a bend.
     *
     * @param inside the line inside lots and periods, which is the same line where all batches are of one
     * @throws CannotFitException if there are too few scores for the line
     */
    static TodaysCourse of(Material material, FittedScores inside) {
        Material today = material.changed(TastedBatch::onTodaysProbe);
        FittedScores line = material.groupMeans().size() == 1 ? inside : fit(today, ModelForm.Shape.LINE);
        return new TodaysCourse(today, line, bend(today));
    }

    private static Optional<FittedScores> bend(Material today) {
        try {
            FittedScores fitted = fit(today, ModelForm.Shape.BEND);
            return fitted.slope(ScoreDesign.SQUARE).known() ? Optional.of(fitted) : Optional.empty();
        } catch (CannotFitException tooFew) {
            return Optional.empty();
        }
    }

    private static FittedScores fit(Material today, ModelForm.Shape shape) {
        double center = today.center();
        ScoreDesign design = ScoreDesign.of(today, FORM.with(shape), center);
        List<FittedScores> moved = new ArrayList<>();
        for (Material other : movedByOneError(today)) {
            moved.add(FittedScores.of(ScoreDesign.of(other, FORM.with(shape), center)));
        }
        return FittedScores.of(design).withSharedErrors(moved);
    }

    /** Returns the batches once for each probe period whose place is not known exactly, its readings moved by one standard error. */
    static List<Material> movedByOneError(Material today) {
        Map<String, Double> errors = new TreeMap<>();
        today.batches().forEach(batch -> {
            if (batch.today().sharedError() > 0) {
                errors.put(batch.today().period(), batch.today().sharedError());
            }
        });
        List<Material> moved = new ArrayList<>();
        errors.forEach((period, error) -> moved.add(today.changed(batch ->
                batch.today().period().equals(period) ? batch.withMeasure(batch.measure() + error, batch.error()) : batch)));
        return moved;
    }

    FittedScores line() {
        return line;
    }

    /** Returns the model with a bend; empty if it could not be fitted. */
    Optional<FittedScores> bend() {
        return bend;
    }

    /** Returns the model without the feature. */
    ScoreDesign withoutFeature() {
        return ScoreDesign.of(today, FORM.with(ModelForm.Shape.ABSENT), today.center());
    }
}
