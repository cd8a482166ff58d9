package parchment.virtual.physics;

/**
 * Roasts by the clock and the reading alone: full gas until the beans are yellow, gas then cut evenly over 30 seconds, air opened
 * in steps towards first crack, drop at a reading.
 *
 * <p>This way of roasting is common practice (no source). The fitted machine was fitted to it.
 *
 * @param gasAfter gas after yellowing, share
 * @param airBefore air until it is opened, share
 * @param airAfter air at first crack and after, share
 * @param airOpensAt bean reading at which the air begins to open, °C
 * @param dropAt bean reading of the drop, °C
 */
public record ReferenceRoaster(double gasAfter, double airBefore, double airAfter, double airOpensAt, double dropAt)
        implements Roaster {
    private static final double CUT_SECONDS = 30;
    /** Degrees of bean reading over which the air is opened. */
    private static final double OPENING = 8;

    /** Returns the habit to which the machine was fitted. */
    public static ReferenceRoaster commonPractice() {
        return new ReferenceRoaster(0.79, 0.3, 0.6, 180, 203.3);
    }

    @Override
    public Move next(Sight sight) {
        double cut = Double.isNaN(sight.yellowSince())
                ? 0
                : StrictMath.min(1, StrictMath.max(0, (sight.seconds() - sight.yellowSince()) / CUT_SECONDS));
        double gas = 1 - cut * (1 - gasAfter);
        // Before yellowing a falling probe still reads high; only the way up counts.
        double opening = cut < 1
                ? 0
                : StrictMath.min(
                        1, StrictMath.max(0, StrictMath.ceil((sight.beanReading() - airOpensAt) / OPENING * 4) / 4));
        double air = airBefore + opening * (airAfter - airBefore);
        boolean reached = cut >= 1 && sight.beanReading() >= dropAt;
        return reached ? Move.drop(gas, air) : Move.settings(gas, air);
    }
}
