package parchment.logbook;

/** Names the quantities that a curve file may hold over time. */
public enum Quantity {
    /** What the bean probe read. */
    BEAN_TEMPERATURE("bean temperature"),
    /** What the air probe read: drum air or exhaust, as the machine's entry says. */
    ENVIRONMENT_TEMPERATURE("environment temperature"),
    /** How far the gas was opened, on the machine's own scale. */
    GAS("gas"),
    /** The power of an electric heater, on the machine's own scale. */
    HEATER_POWER("heater power"),
    /** How much air was drawn, on the machine's own scale. */
    AIRFLOW("airflow"),
    /** The drum's speed, in turns per minute. */
    DRUM_SPEED("drum speed");

    private final String words;

    Quantity(String words) {
        this.words = words;
    }

    /** Returns the quantity's name, as a header writes it without its unit. */
    public String words() {
        return words;
    }

    /** Returns whether this is set by the roaster rather than measured on the coffee. */
    public boolean isControl() {
        return this != BEAN_TEMPERATURE && this != ENVIRONMENT_TEMPERATURE;
    }

    @Override
    public String toString() {
        return words;
    }
}
