package parchment.trial;

import java.util.OptionalLong;
import parchment.trial.sealed.SetDraw;
import parchment.trial.sealed.TrialControl;

/**
 * Holds what is to be drawn.
 *
 * @param control what chance chooses
 * @param unit what its targets are in
 * @param middle the middle target
 * @param step from the middle to each end; 0 while it is not said
 * @param sets how many sets; 0 while it is not said
 * @param size how many batches a set has
 * @param which which targets a set has
 * @param seed whence chance comes for an invented machine; empty for the computer's own
 */
record FlipDrawing(
        TrialControl control,
        String unit,
        double middle,
        double step,
        int sets,
        int size,
        SetDraw.Targets which,
        OptionalLong seed) {

    /** Returns sets of three around a middle, with nothing else said. */
    static FlipDrawing around(TrialControl control, String unit, double middle, double step) {
        return new FlipDrawing(
                control, unit, middle, step, 0, 3, SetDraw.Targets.ENDS_AND_MIDDLE, OptionalLong.empty());
    }

    FlipDrawing withSets(int number) {
        return new FlipDrawing(control, unit, middle, step, number, size, which, seed);
    }

    FlipDrawing withSetsOf(int batches) {
        return new FlipDrawing(control, unit, middle, step, sets, batches, which, seed);
    }

    FlipDrawing with(SetDraw.Targets chosen) {
        return new FlipDrawing(control, unit, middle, step, sets, size, chosen, seed);
    }

    FlipDrawing withStep(double distance) {
        return new FlipDrawing(control, unit, middle, distance, sets, size, which, seed);
    }

    FlipDrawing withSeed(long number) {
        return new FlipDrawing(control, unit, middle, step, sets, size, which, OptionalLong.of(number));
    }
}
