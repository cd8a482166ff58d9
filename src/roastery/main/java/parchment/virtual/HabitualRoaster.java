package parchment.virtual;

import parchment.virtual.chance.Chance;
import parchment.virtual.people.Habit;
import parchment.virtual.physics.Roaster;

/**
 * Roasts one batch by habit: gas and air move in steps, some seconds after what called for them, and the drop follows the
 * reading and, partly, what smell tells.
 */
final class HabitualRoaster implements Roaster {
    private static final double CUT_SECONDS = 30;
    private static final int CUT_STEPS = 3;
    private static final double AIR_STEP = 0.1;
    /** Bean reading before which nobody chases the curve, and from which the last cut is made, °C. */
    private static final double CHASE_FROM = 165;

    private static final double LAST_CUT_AT = 186;

    private final Habit habit;
    private final double gasAtStart;
    private final double gasAfter;
    private final double lastCut;
    private final double airOpensAt;
    private final double airAtEnd;
    private final double reaction;
    private final double dropAt;
    private double chased;
    private double nextLook;
    private double opening;
    private double lastCutSince = Double.NaN;
    private double dropSeen = Double.NaN;
    private double lowest = Double.POSITIVE_INFINITY;

    /**
     * Draws one batch's settings.
     *
     * @param meantDrop reading at which the person means to drop, °C
     * @param hidden the beans' hidden state, standard deviations: smell tells it, no reading does
     */
    HabitualRoaster(Habit habit, double meantDrop, double hidden, double push, Chance chance) {
        this.habit = habit;
        gasAtStart = setting(habit.gasAtStart() + 0.5 * chance.normal(0, habit.gasSpread()), 0.5, 1);
        gasAfter = setting(habit.gasAfterYellowing() + push + chance.normal(0, habit.gasSpread()), 0.45, gasAtStart);
        lastCut = setting(habit.lastCut() * chance.between(0.3, 1.7), 0, 0.3);
        airOpensAt = chance.normal(habit.airOpensAt(), 2);
        airAtEnd = setting(chance.normal(habit.airAtEnd(), 0.08), habit.airAtStart(), 1);
        reaction = chance.between(0.5, 1.5) * habit.reaction();
        dropAt = meantDrop + habit.feel() * hidden + chance.normal(0, habit.dropCare());
        nextLook = 240;
    }

    @Override
    public Move next(Sight sight) {
        lowest = StrictMath.min(lowest, sight.beanReading());
        boolean rising = sight.beanReading() > lowest + 20;
        double gas = setting(round(gas(sight, rising)), 0.2, 1);
        double air = air(sight, rising);
        if (rising && Double.isNaN(dropSeen) && sight.beanReading() >= dropAt) {
            dropSeen = sight.seconds();
        }
        // The hand is already on the lever: the drop follows the reading faster than a setting does.
        boolean dropped = sight.seconds() >= dropSeen + reaction / 2;
        return dropped ? Move.drop(gas, air) : Move.settings(gas, air);
    }

    private double gas(Sight sight, boolean rising) {
        double since = sight.seconds() - sight.yellowSince() - reaction;
        double done =
                Double.isNaN(since) ? 0 : setting(StrictMath.ceil(since / CUT_SECONDS * CUT_STEPS) / CUT_STEPS, 0, 1);
        double gas = gasAtStart - done * (gasAtStart - gasAfter);
        if (done >= 1 && rising) {
            chase(sight);
            if (Double.isNaN(lastCutSince) && sight.beanReading() >= LAST_CUT_AT) {
                lastCutSince = sight.seconds() + reaction;
            }
            gas += chased - (sight.seconds() >= lastCutSince ? lastCut : 0);
        }
        return gas;
    }

    /** Once in half a minute the person compares the rate of rise with what is expected at this reading. */
    private void chase(Sight sight) {
        if (habit.chase() == 0 || sight.seconds() < nextLook || sight.beanReading() < CHASE_FROM) {
            return;
        }
        nextLook = sight.seconds() + 30;
        double expected = habit.aim() - 0.12 * (sight.beanReading() - CHASE_FROM);
        double off = sight.rateReading() - expected;
        if (StrictMath.abs(off) > 1) {
            // Who reacts more strongly also goes further; those who hardly react stay within 15 %.
            double reach = StrictMath.max(0.15, 6 * habit.chase());
            chased = setting(chased - habit.chase() * off, -reach, reach);
        }
    }

    private double air(Sight sight, boolean rising) {
        if (rising) {
            double wanted = setting((sight.beanReading() - airOpensAt) / 8, 0, 1);
            opening = StrictMath.max(opening, StrictMath.floor(wanted * 3) / 3);
        }
        double air = habit.airAtStart() + opening * (airAtEnd - habit.airAtStart());
        return StrictMath.rint(air / AIR_STEP) * AIR_STEP;
    }

    private static double round(double gas) {
        return StrictMath.rint(gas * 50) / 50;
    }

    private static double setting(double value, double low, double high) {
        return StrictMath.max(low, StrictMath.min(high, value));
    }
}
