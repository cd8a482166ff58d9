package parchment.otherroastery;

/**
 * Moves gas and airflow of a roast and ends it, once a second.
 *
 * <p>A roaster with habits is one; a fixed schedule, for what a machine would have done otherwise, is another.
 */
public interface Hand {
    /**
     * What can be seen, heard and smelt at a second.
     *
     * @param seconds since the charge
     * @param reading of the bean probe, °C
     * @param ratePerMinute rise of the reading over the last half minute, °C/min; NaN before that
     * @param cracked share of the beans that have cracked
     */
    record Sight(int seconds, double reading, double ratePerMinute, double cracked) {}

    /** What the hand does: gas and airflow in percent, and whether the beans are dropped now. */
    record Setting(double gas, double airflow, Act act) {}

    /** Whether the roast goes on. */
    enum Act {
        GO_ON,
        DROP
    }

    Setting next(Sight sight);
}
