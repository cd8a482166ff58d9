package parchment.evidence;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Supplier;
import parchment.stats.linear.CannotFitException;

/**
 * Fits the course of the score over the feature as it would be read on today's probe.
 *
 * <p>Each lot has a level of its own, so only differences inside lots count, and the places are readings: a best place is one to look for
 * on the probe. What had to be added to the readings of an earlier probe period is not known exactly, and its error is one and the same for
 * all batches of the period; see {@link FittedScores#withSharedErrors}.
 */
final class TodaysCourse {
    private static final ModelForm FORM = ModelForm.STANDARD.with(ModelForm.Lots.OWN_LEVEL);

    private final ModelFrame today;
    private final FittedScores line;
    private final Optional<FittedScores> bend;
    private final Places places;

    /** Says what the places along the course are. */
    enum Places {
        /** Readings on today's probe. */
        READINGS,
        /** Distances from the mean of a lot and probe period, put beside the mean of all: what today's probe would read is not known. */
        FROM_LOTS_MEANS,
        /** The same, because the batches were read by the probes of several machines, which are not one scale. */
        OF_SEVERAL_PROBES
    }

    private TodaysCourse(ModelFrame today, FittedScores line, Optional<FittedScores> bend, Places places) {
        this.places = places;
        this.today = today;
        this.line = line;
        this.bend = bend;
    }

    /**
     * Fits a line and a bend.
     *
     * @param inside the line inside lots and periods, which is the same line where all batches are of one and were read by today's probe
     * @throws CannotFitException if there are too few scores for the line
     */
    static TodaysCourse of(ModelFrame material, FittedScores inside) {
        ModelFrame today = material.changed(TastedBatch::onTodaysProbe);
        boolean asRead = material.groupMeans().size() == 1 && !material.movedToToday();
        if (!asRead && !today.ofSeveralProbes() && Analysis.whyNot(today).isEmpty()) {
            Optional<FittedScores> line = known(() -> fit(today, ModelForm.Shape.LINE), ScoreDesign.FEATURE);
            if (line.isPresent()) {
                return new TodaysCourse(
                        today,
                        line.get(),
                        known(() -> fit(today, ModelForm.Shape.BEND), ScoreDesign.SQUARE),
                        Places.READINGS);
            }
        }
        return new TodaysCourse(
                material,
                inside,
                known(
                        () -> FittedScores.of(material, ModelForm.STANDARD.with(ModelForm.Shape.BEND)),
                        ScoreDesign.SQUARE),
                asRead ? Places.READINGS : today.ofSeveralProbes() ? Places.OF_SEVERAL_PROBES : Places.FROM_LOTS_MEANS);
    }

    private static Optional<FittedScores> known(Supplier<FittedScores> fit, String column) {
        try {
            return Optional.of(fit.get()).filter(fitted -> fitted.slope(column).known());
        } catch (CannotFitException tooFew) {
            return Optional.empty();
        }
    }

    private static FittedScores fit(ModelFrame today, ModelForm.Shape shape) {
        double center = today.center();
        ScoreDesign design = ScoreDesign.of(today, FORM.with(shape), center);
        Map<String, FittedScores> moved = new TreeMap<>();
        movedByOneError(today)
                .forEach((period, other) ->
                        moved.put(period, FittedScores.of(ScoreDesign.of(other, FORM.with(shape), center))));
        return FittedScores.of(design).withSharedErrors(moved);
    }

    /** Returns the batches by the name of each probe period whose place is not known exactly, its readings moved by one standard error. */
    static Map<String, ModelFrame> movedByOneError(ModelFrame today) {
        Map<String, Double> errors = new TreeMap<>();
        today.batches().forEach(batch -> {
            if (batch.today().sharedError() > 0) {
                errors.put(batch.today().period(), batch.today().sharedError());
            }
        });
        Map<String, ModelFrame> moved = new TreeMap<>();
        errors.forEach((period, error) -> moved.put(
                period,
                today.changed(batch -> batch.today().period().equals(period)
                        ? batch.withMeasure(batch.measure() + error, batch.error())
                        : batch)));
        return moved;
    }

    FittedScores line() {
        return line;
    }

    /** Returns the model with a bend; empty if it could not be fitted. */
    Optional<FittedScores> bend() {
        return bend;
    }

    Places places() {
        return places;
    }

    /** Returns the model without the feature. */
    ScoreDesign withoutFeature() {
        return ScoreDesign.of(today, line.design().form().with(ModelForm.Shape.ABSENT), today.center());
    }
}
