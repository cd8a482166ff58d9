package parchment.otherroastery;

/**
 * Says how the drop of each batch is chosen, as a reading of the probe.
 *
 * @param choice by which rule
 * @param center mean reading, °C
 * @param daySpread standard deviation between days, °C
 * @param batchSpread standard deviation between batches of a day, °C
 * @param reaction how far a spread of the beans' hidden mood moves the drop that was meant, °C
 * @param hiddenInScore points by which a spread of that mood lifts the cup: none, unless a hidden cause is wanted
 * @param plan whether the drop that was meant is written down
 */
public record DropHabit(
        Choice choice,
        double center,
        double daySpread,
        double batchSpread,
        double reaction,
        double hiddenInScore,
        Plan plan) {
    /** By which rule the drop is chosen. */
    public enum Choice {
        /** By habit: days and batches differ. */
        HABIT,
        /** Drawn by chance before the charge, from five targets. */
        CHANCE,
        /** By habit, with the whole gas moved against it: correlation near -1. */
        LOCKSTEP,
        /** By habit, with the gas leaning against it: correlation of the first gas near -0.35, of the last near -0.5. */
        LEANING
    }

    /** Whether the drop that was meant stands in batches.csv. */
    public enum Plan {
        WRITTEN,
        NOT_WRITTEN
    }

    public static DropHabit ordinary() {
        return new DropHabit(Choice.HABIT, 205, 1.6, 2.5, 0.4, 0, Plan.NOT_WRITTEN);
    }

    public DropHabit by(Choice other) {
        return new DropHabit(other, center, daySpread, batchSpread, reaction, hiddenInScore, plan);
    }

    public DropHabit withPlan(Plan other) {
        return new DropHabit(choice, center, daySpread, batchSpread, reaction, hiddenInScore, other);
    }

    public DropHabit withHiddenCause(double degrees, double points) {
        return new DropHabit(choice, center, daySpread, batchSpread, degrees, points, plan);
    }

    /** Returns what is added to the gas, percent, if the meant drop is so far from the usual. */
    double gas(double aboveUsual, Draws draws) {
        double spread = Math.hypot(daySpread, batchSpread);
        return switch (choice) {
            case LOCKSTEP -> -1.2 * aboveUsual;
            case LEANING -> 3.0 * (-0.35 * aboveUsual / spread + draws.normal(Math.sqrt(1 - 0.35 * 0.35)));
            case HABIT, CHANCE -> draws.normal(1.5);
        };
    }
}
