package parchment.otherroastery;

/**
 * Holds a machine of two bodies: the drum's metal and the air with all thin parts in it, each with a heat of its own.
 *
 * @param flame heat of the flame at full gas, kW
 * @param flameOnDrum share of it that strikes the drum
 * @param drumHeat heat that warms the drum by one degree, kJ/K
 * @param airHeat heat that warms air and thin parts by one degree, kJ/K
 * @param draught heat that leaves with the air per degree above the room at half airflow, kW/K
 * @param airToBeans heat from air to five kilograms of beans at half airflow per degree, kW/K
 * @param drumToBeans heat from drum to beans per degree where they touch, kW/K
 * @param radiating area by which drum and beans see each other times emissivity, m²
 * @param airToDrum heat between air and drum per degree, kW/K
 * @param wall heat that the drum loses to the room per degree, kW/K
 */
public record TwoNodeDrum(
        double flame,
        double flameOnDrum,
        double drumHeat,
        double airHeat,
        double draught,
        double airToBeans,
        double drumToBeans,
        double radiating,
        double airToDrum,
        double wall) {
    /** Constant of Stefan and Boltzmann, kW/(m² K⁴) (CODATA 2018). */
    private static final double STEFAN_BOLTZMANN = 5.670374419e-11;

    static final double USUAL_MASS = 5;

    public static TwoNodeDrum ordinary() {
        return new TwoNodeDrum(16.5, 0.35, 20, 1.6, 0.018, 0.031, 0.012, 0.45, 0.020, 0.006);
    }

    /** A stronger flame on a heavier drum with less draught. */
    public static TwoNodeDrum heavy() {
        return new TwoNodeDrum(18, 0.42, 26, 1.9, 0.017, 0.027, 0.013, 0.50, 0.022, 0.007);
    }

    double draughtAt(double airflow) {
        return draught * (0.45 + 1.1 * airflow / 100);
    }

    double airToBeansAt(double airflow, double mass) {
        return airToBeans * Math.pow(mass / USUAL_MASS, 0.75) * (0.8 + 0.4 * airflow / 100);
    }

    double radiation(double drum, double bean) {
        return STEFAN_BOLTZMANN * radiating * (fourth(drum + 273.15) - fourth(bean + 273.15));
    }

    private static double fourth(double kelvin) {
        double square = kelvin * kelvin;
        return square * square;
    }
}
