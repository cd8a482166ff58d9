package parchment.virtual.people;

import java.util.List;
import java.util.Locale;
import parchment.display.answer.Spelling;

/**
 * Describes how a person usually roasts and writes things down.
 *
 * @param gasAtStart gas from charge to yellowing, share
 * @param gasAfterYellowing gas after the cut that follows yellowing, share
 * @param gasSpread standard deviation of both from batch to batch
 * @param lastCut how much gas is taken away before first crack, share
 * @param airAtStart airflow until it is opened, share
 * @param airAtEnd airflow from first crack on, share
 * @param airOpensAt bean reading at which the air begins to open, °C
 * @param chase change of gas per °C/min that the rate of rise is off what is expected; 0 for a person who leaves it alone
 * @param aim the rate of rise that such a person expects at a reading of 165 °C, °C/min; 0.12 °C/min less for each °C above
 * @param reaction mean time from seeing to doing, s
 * @param dropCare standard deviation of the reading at the drop around what was meant, °C
 * @param feel how far the drop follows what smell says, °C per standard deviation of the beans' hidden state
 * @param markDelay mean delay with which a mark is written, s
 * @param markSpread standard deviation of that delay, s
 * @param rounding step to which written times are rounded, s
 * @param forgets probability that a mark is not written
 */
public record Habit(
        double gasAtStart,
        double gasAfterYellowing,
        double gasSpread,
        double lastCut,
        double airAtStart,
        double airAtEnd,
        double airOpensAt,
        double chase,
        double aim,
        double reaction,
        double dropCare,
        double feel,
        double markDelay,
        double markSpread,
        double rounding,
        double forgets) {
    /** Returns a person who starts with full gas, cuts it after yellowing and then mostly lets the roast run. */
    public static Habit steady() {
        return new Habit(0.97, 0.80, 0.05, 0.06, 0.3, 0.6, 180, 0.006, 11, 2, 0.5, 0.8, 4, 5, 1, 0.04);
    }

    /** Returns a person who pushes early and then coasts: more gas is taken away later. Writes times to the nearest five seconds. */
    public static Habit earlyPush() {
        return new Habit(1.0, 0.74, 0.06, 0.12, 0.25, 0.7, 176, 0.012, 11, 4, 0.8, 0.5, 7, 7, 5, 0.08);
    }

    /** Returns a person who cannot leave the gas alone: each half minute it follows the rate of rise, late and too far. */
    public static Habit chaser() {
        return new Habit(0.96, 0.80, 0.04, 0.05, 0.3, 0.6, 180, 0.08, 8.7, 6, 0.6, 0.4, 4, 4, 1, 0.05);
    }

    /**
     * Returns the same person roasting as told: with these settings, dropping at the reading that was meant whatever smell says, and
     * writing every mark.
     */
    public Habit asPlanned(double gasFirst, double gasAfter, double airFirst, double airLast) {
        return new Habit(
                gasFirst,
                StrictMath.min(gasFirst, gasAfter),
                gasSpread,
                lastCut,
                airFirst,
                StrictMath.max(airFirst, airLast),
                airOpensAt,
                chase,
                aim,
                reaction,
                dropCare,
                0,
                markDelay,
                markSpread,
                rounding,
                0);
    }

    /** Returns the names of the habits that a scenario or a plan can choose from. */
    public static List<String> names() {
        return List.of("steady", "pushes early", "goes gently", "chases the curve");
    }

    /**
     * Returns the habit of that name.
     *
     * @throws IllegalArgumentException if there is none
     */
    public static Habit named(String name) {
        return switch (name.strip().toLowerCase(Locale.ROOT)) {
            case "steady" -> steady();
            case "pushes early" -> earlyPush();
            case "goes gently" -> gentle();
            case "chases the curve" -> chaser();
            default ->
                throw new IllegalArgumentException("There is no habit '" + name + "'."
                        + Spelling.question(name, names()) + " Habits: " + String.join(", ", names()) + ".");
        };
    }

    /** Returns a person who goes gently throughout and forgets to write half of the marks. */
    public static Habit gentle() {
        return new Habit(0.9, 0.78, 0.06, 0.04, 0.35, 0.6, 183, 0, 11, 3, 0.9, 1.0, 6, 9, 5, 0.5);
    }
}
