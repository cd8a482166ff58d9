package parchment.virtual.written;

import parchment.virtual.chance.Chance;
import parchment.virtual.people.Habit;
import parchment.virtual.physics.SimulatedRoast;

/**
 * The marks a person wrote, in seconds on the logger's clock; missing where it was forgotten or did not happen.
 *
 * @param yellowing s
 * @param firstCrackStart s
 * @param firstCrackEnd s
 * @param drop s
 */
public record WrittenMarks(double yellowing, double firstCrackStart, double firstCrackEnd, double drop) {

    /** Writes the marks of a batch as a person with the given habit would. */
    public static WrittenMarks written(SimulatedRoast roast, Habit habit, double pressedLate, Chance chance) {
        double drop = rounded(roast.drop() + chance.normal(0.5, 1) - pressedLate, habit);
        double yellowing = mark(roast.yellowing(), habit, 1.5, pressedLate, habit.forgets(), chance);
        double start = mark(roast.firstCrackStart(), habit, 1, pressedLate, habit.forgets(), chance);
        double end = mark(roast.firstCrackEnd(), habit, 2, pressedLate, 0.5 + habit.forgets(), chance);
        boolean dropForgotten = chance.happens(habit.forgets() / 2);
        return new WrittenMarks(
                before(drop, yellowing), before(drop, start), before(drop, end), dropForgotten ? Double.NaN : drop);
    }

    private static double mark(
            double event, Habit habit, double vagueness, double pressedLate, double forgets, Chance chance) {
        double delay = chance.normal(habit.markDelay(), habit.markSpread() * vagueness);
        return chance.happens(forgets) ? Double.NaN : rounded(event + delay - pressedLate, habit);
    }

    private static double rounded(double seconds, Habit habit) {
        return StrictMath.rint(seconds / habit.rounding()) * habit.rounding();
    }

    /** Nobody writes a mark after the drop. */
    private static double before(double drop, double mark) {
        return mark < drop ? mark : Double.NaN;
    }
}
