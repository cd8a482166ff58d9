package parchment.otherroastery;

import java.util.List;

/**
 * Roasts by habit with gas and airflow in continuous percent.
 *
 * <p>The first gas is held until the beans are warm, then leaned back in proportion to the reading; a rate of rise above what this
 * person expects takes some more away, gently; cracking opens the air and takes the last of the gas.
 */
final class Roaster implements Hand {
    private static final double LEAN_FROM = 130;
    private static final double LEAN = 0.0070;
    private static final double LEAST = 0.66;

    private final Person person;
    private final double firstGas;
    private final double steer;
    private final double dropAt;
    private double gas;

    /**
     * A person.
     *
     * @param name as written
     * @param gas added to the first gas, percent
     * @param chargeAbove added to the charge, °C
     * @param crackLate usual delay of the mark of first crack, s
     * @param lateDays share of days on which it comes 10 to 25 s later still
     * @param steer how much of the gas a rate one degree a minute too high takes away, percent
     */
    record Person(String name, double gas, double chargeAbove, double crackLate, double lateDays, double steer) {
        static final List<Person> ALL =
                List.of(new Person("Ilka", 0, 0, 4, 0.10, 0.5), new Person("Bruno", 2.5, -2.5, 9, 0.25, 1.2));
    }

    /** Steers by the rate of rise only where the gas is not bound to the drop. */
    Roaster(Person person, double firstGas, DropHabit.Choice choice, double dropAt) {
        this.person = person;
        this.firstGas = firstGas;
        this.steer = choice == DropHabit.Choice.LOCKSTEP ? 0 : person.steer();
        this.dropAt = dropAt;
        this.gas = firstGas;
    }

    /** Charges by the weather and the mass: hotter for more beans and on a cold day. */
    static double charge(Person person, double mass, double room) {
        return 196 + 6 * (mass - TwoNodeDrum.USUAL_MASS) - 0.35 * (room - 20) + person.chargeAbove();
    }

    @Override
    public Setting next(Sight sight) {
        boolean warm = sight.seconds() > 120 && sight.reading() > LEAN_FROM;
        if (warm && sight.seconds() % 5 == 0) {
            double lean = Math.max(LEAST, 1 - LEAN * (sight.reading() - LEAN_FROM));
            double expected = 13.5 - 0.06 * (sight.reading() - 90);
            double tooFast = Math.max(-3, Math.min(3, sight.ratePerMinute() - expected));
            double last = sight.cracked() > 0.1 ? 0.97 : 1;
            gas = Math.max(20, Math.min(100, firstGas * lean * last - steer * tooFast));
        }
        double air =
                42 + (warm ? Math.min(12, 0.2 * (sight.reading() - LEAN_FROM)) : 0) + (sight.cracked() > 0.03 ? 9 : 0);
        boolean dropped = sight.seconds() > 240 && sight.reading() >= dropAt;
        return new Setting(gas, air, dropped ? Act.DROP : Act.GO_ON);
    }

    Person person() {
        return person;
    }
}
