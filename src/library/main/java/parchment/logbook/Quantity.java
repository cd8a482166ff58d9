package parchment.logbook;

import java.util.Arrays;
import java.util.Optional;
import parchment.sheet.Header;

/** Names the quantities that a curve file may hold over time. */
public enum Quantity {
    /** What the bean probe read. */
    BEAN_TEMPERATURE("bean temperature"),
    /** What the air probe read: drum air or exhaust, as the machine's entry says. */
    AIR_TEMPERATURE("air temperature"),
    /** How far the gas was opened, on the machine's own scale. */
    GAS("gas"),
    /** The power of an electric heater, on the machine's own scale. */
    HEATER_POWER("heater power"),
    /** How much air was drawn, on the machine's own scale. */
    AIRFLOW("airflow"),
    /** The drum's speed, in turns per minute. */
    DRUM_SPEED("drum speed");

    /** What earlier logbooks called the air temperature. */
    private static final String AIR_BEFORE = "environment temperature";

    private final String words;

    Quantity(String words) {
        this.words = words;
    }

    /** Returns the quantity's name, as a header writes it without its unit. */
    public String words() {
        return words;
    }

    /**
     * Returns the quantity that a heading names, without regard to case, hyphens and extra blanks; earlier logbooks may say
     * "environment temperature" for the air temperature. Empty if it names none.
     */
    public static Optional<Quantity> named(String heading) {
        String plain = Header.plain(heading);
        return plain.equals(AIR_BEFORE)
                ? Optional.of(AIR_TEMPERATURE)
                : Arrays.stream(values())
                        .filter(quantity -> quantity.words.equals(plain))
                        .findFirst();
    }

    /** Returns whether this is set by the roaster rather than measured on the coffee. */
    public boolean isControl() {
        return this != BEAN_TEMPERATURE && this != AIR_TEMPERATURE;
    }

    @Override
    public String toString() {
        return words;
    }
}
