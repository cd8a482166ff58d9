package parchment.virtual.physics;

/** Decides, second by second, what the person at the machine does with gas, air and drop. */
@FunctionalInterface
public interface Roaster {
    /** Looks at the batch and returns the settings for the next second, or the drop. */
    Move next(Sight sight);

    /**
     * Holds what a person at the machine can see, hear and smell.
     *
     * @param seconds time since charge
     * @param beanReading what the bean probe shows, °C
     * @param airReading what the air probe shows, °C
     * @param rateReading rise of the bean reading over the last 30 seconds, °C/min; missing in the first 30
     * @param yellowSince when the beans turned yellow, s; missing before
     * @param crackSince when the first beans popped, s; missing before
     * @param matterLost dry matter lost so far, share: what colour and smell tell
     */
    record Sight(
            double seconds,
            double beanReading,
            double airReading,
            double rateReading,
            double yellowSince,
            double crackSince,
            double matterLost) {}

    /**
     * Holds the settings of gas and air, from 0 to 1, and whether the batch goes on.
     *
     * @param gas share of full gas
     * @param air share of full airflow
     * @param end whether the beans leave now
     */
    record Move(double gas, double air, End end) {
        /** @throws IllegalArgumentException if a setting is not from 0 to 1 */
        public Move {
            VirtualChecks.share("gas", gas);
            VirtualChecks.share("airflow", air);
        }

        /** Returns settings under which the roast goes on. */
        public static Move settings(double gas, double air) {
            return new Move(gas, air, End.GO_ON);
        }

        /** Returns the drop. */
        public static Move drop(double gas, double air) {
            return new Move(gas, air, End.DROP);
        }
    }

    /** Says whether a batch goes on. */
    enum End {
        GO_ON,
        DROP
    }
}
