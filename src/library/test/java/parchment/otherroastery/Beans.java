package parchment.otherroastery;

/**
 * Holds what one lot's beans do in the heat.
 *
 * @param moisture water per dry matter on the day of roasting, kg/kg
 * @param frontAt bean temperature at which half of the beans give off water freely, °C
 * @param crackAt bean temperature at which half of the beans have cracked after long waiting, °C
 * @param glow heat that cracked beans set free within the next minute, kJ per kilogram of dry matter
 */
public record Beans(double moisture, double frontAt, double crackAt, double glow) {
    /** Heat that takes a kilogram of water out of the beans, kJ/kg (of the order of water's own 2257 at 100 °C; assumption). */
    private static final double WATER_HEAT = 2450;

    private static final double FRONT_WIDTH = 22;
    private static final double FASTEST_DRYING = 4.8e-3;
    private static final double CRACK_WIDTH = 2.2;
    private static final double FASTEST_CRACKING = 0.045;
    private static final double GLOW_SECONDS = 35;

    /** Bean temperature at which the beans look yellow, °C. */
    static final double YELLOW = 151;

    public static Beans ordinary() {
        return new Beans(0.122, 136, 203, 6);
    }

    Beans with(double otherMoisture, double crackLater) {
        return new Beans(otherMoisture, frontAt, crackAt + crackLater, glow);
    }

    /** Returns the heat that warms a kilogram of dry matter with its water by one degree, kJ/(kg K): it falls as the water leaves. */
    static double heatCapacity(double water) {
        return 1.42 + 3.1 * water;
    }

    /** Returns the water lost per second, kg/kg: a logistic front in temperature, times what is left. */
    double drying(double celsius, double water) {
        return water * FASTEST_DRYING / (1 + Math.exp(-(celsius - frontAt) / FRONT_WIDTH));
    }

    double cracking(double celsius, double cracked) {
        return (1 - cracked) * FASTEST_CRACKING / (1 + Math.exp(-(celsius - crackAt) / CRACK_WIDTH));
    }

    /** Returns the heat from beans that cracked lately, kW/kg. */
    double glowing(double lately) {
        return glow * lately / GLOW_SECONDS;
    }

    static double fading(double lately) {
        return lately / GLOW_SECONDS;
    }

    static double waterHeat() {
        return WATER_HEAT;
    }

    /** Returns dry matter lost per second, share: twice as fast every 9 °C. */
    static double matterLoss(double celsius) {
        return 2.4e-4 * Math.pow(2, (celsius - 200) / 9);
    }
}
