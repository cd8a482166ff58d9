package parchment.otherroastery;

/**
 * Describes the logger and what is written by hand.
 *
 * @param interval mean seconds between readings, 1 to 5
 * @param irregular standard deviation of that interval, s
 * @param step of a reading in its own unit: 0.1, 0.5 or 1
 * @param noise standard deviation of a reading, °C
 * @param memory correlation of the noise of neighbouring readings
 * @param unit of all temperatures
 * @param stamps how the time of the charge is written
 */
public record ReadingLogger(
        double interval, double irregular, double step, double noise, double memory, Unit unit, Stamps stamps) {
    /** Unit of all temperatures. */
    public enum Unit {
        CELSIUS("°C"),
        FAHRENHEIT("°F");

        private final String sign;

        Unit(String sign) {
            this.sign = sign;
        }

        String sign() {
            return sign;
        }

        double written(double celsius) {
            return this == CELSIUS ? celsius : celsius * 9 / 5 + 32;
        }
    }

    /** How the time of the charge is written. */
    public enum Stamps {
        LOCAL_TIME,
        /** In UTC, though the roastery lies eight hours west of it: its afternoon ends on the next day's date. */
        UTC_IN_A_WESTERN_ZONE
    }

    public static ReadingLogger ordinary() {
        return new ReadingLogger(2.5, 0.3, 0.1, 0.25, 0.6, Unit.CELSIUS, Stamps.LOCAL_TIME);
    }

    public ReadingLogger in(Unit other) {
        return new ReadingLogger(interval, irregular, step, noise, memory, other, stamps);
    }

    public ReadingLogger stamped(Stamps other) {
        return new ReadingLogger(interval, irregular, step, noise, memory, unit, other);
    }

    public ReadingLogger every(double seconds, double inSteps) {
        return new ReadingLogger(seconds, 0.12 * seconds, inSteps, noise, memory, unit, stamps);
    }
}
