package parchment.virtual.physics;

/**
 * Gives the rates at which one kilogram of dry matter of lumped beans warms, dries, reacts, browns and cracks.
 *
 * <p>After Schwartzberg 2002, "Modeling bean heating during batch roasting of coffee beans" (in Engineering and Food for the 21st
 * Century, CRC Press, ch. 52). The constants marked Schwartzberg are quoted from memory. What the paper does not give
 * (browning dose, cracking, loss of dry matter) is our own, with its reason beside it; see docs/virtual-roastery.md.
 *
 * <p>All heats are per kilogram of the dry matter that was charged; temperatures in °C; times in seconds.
 */
public final class BeanPhysics {
    /** Zero Celsius in kelvin. */
    static final double KELVIN = 273.15;
    /** Gas constant, kJ/(mol K) (CODATA 2018, exact to the digits given). */
    static final double GAS_CONSTANT = 8.314462618e-3;

    /** Heat that takes one kilogram of water out of the bean, kJ/kg (Schwartzberg 2002, from memory). */
    static final double EVAPORATION_HEAT = 2790;
    /** Rate constant of drying, mm²/s, and its temperature, K (Schwartzberg 2002, from memory). */
    static final double DRYING_RATE = 4.32e9;

    static final double DRYING_TEMPERATURE = 9889;
    /** Largest heat of reaction, kJ/kg; its rate constant, kW/kg; its temperature, K (Schwartzberg 2002, from memory). */
    static final double REACTION_HEAT = 232;

    static final double REACTION_RATE = 116_200;
    static final double REACTION_TEMPERATURE = 5500;

    /** Dry matter that can leave as gas up to charring, share (assumption; a quarter of it goes in an ordinary roast). */
    static final double LOSABLE_MATTER = 0.30;
    /**
     * Rate constant at 200 °C, 1/s, and activation energy, kJ/mol, of that loss. Fitted: the rate to a mass loss of 14.5 % in the
     * reference roast (common practice, no source), the energy so that the whole loss of mass, water included, rises with the beans'
     * temperature by 52 kJ/mol. Vargas-Elías et al. 2016 (Eng. Agríc. 36(2):300-308) give that figure by the roaster's temperature,
     * another quantity: an assumption, then, which no published number stands behind.
     */
    static final double MATTER_LOSS_RATE = 1.64e-3;

    static final double MATTER_LOSS_ENERGY = 140;

    /** Activation energy of browning, kJ/mol (assumption, in the usual range of browning reactions, 80 to 130). */
    static final double BROWNING_ENERGY = 105;

    /** Moisture at which the crack temperature is stated, kg/kg. */
    public static final double CRACK_MOISTURE = 0.04;
    /** Fall of the crack temperature per moisture, °C per kg/kg: more water, more steam pressure (assumption). */
    static final double CRACK_PER_MOISTURE = 150;
    /** Share of a bean's water that leaves as it cracks (assumption; makes the rate of rise dip a little near first crack and lift again after it). */
    static final double CRACK_STEAM = 0.10;
    /** Thermal diffusivity of a bean, mm²/s (assumption, order of magnitude for dry plant tissue). */
    static final double DIFFUSIVITY = 0.1;

    /** Positions of the bean's quantities in a state. */
    static final int TEMPERATURE = 0;

    static final int MOISTURE = 1;
    static final int MATTER_LOST = 2;
    static final int REACTION = 3;
    static final int CORE = 4;
    static final int CRACKED = 5;
    static final int BROWNING = 6;
    static final int SIZE = 7;

    private final GreenBeans beans;
    private final double coreLag;

    BeanPhysics(GreenBeans beans) {
        this.beans = beans;
        // A ball warmed at an even rate: its core lags its mean by r² / (10 alpha) (Carslaw and Jaeger 1959, section
        // 9.4).
        double radius = beans.diameter() / 2;
        this.coreLag = radius * radius / (10 * DIFFUSIVITY);
    }

    /** Returns the heat that warms a kilogram of dry matter and its water by one degree, kJ/(kg K) (Schwartzberg 2002, from memory). */
    public static double heatCapacity(double celsius, double moisture) {
        return 1.099 + 0.0070 * celsius + 5.0 * moisture;
    }

    /** Returns water lost per second, kg/kg/s, without what cracking sets free. */
    double drying(double celsius, double moisture) {
        double diameter = beans.diameter();
        return DRYING_RATE
                * moisture
                * moisture
                / (diameter * diameter)
                * StrictMath.exp(-DRYING_TEMPERATURE / (celsius + KELVIN));
    }

    /** Returns the heat that reactions set free, kW/kg, when the given heat has been set free already. */
    double reactionHeat(double celsius, double alreadyFree) {
        double left = StrictMath.max(0, 1 - alreadyFree / REACTION_HEAT);
        return beans.reactivity() * REACTION_RATE * StrictMath.exp(-REACTION_TEMPERATURE / (celsius + KELVIN)) * left;
    }

    /** Returns dry matter lost per second, share of what was charged. */
    static double matterLoss(double celsius, double lost) {
        return arrhenius(MATTER_LOSS_RATE, MATTER_LOSS_ENERGY, 200, celsius) * StrictMath.max(0, LOSABLE_MATTER - lost);
    }

    /** Returns how many seconds at 150 °C one second at this temperature browns. */
    static double browning(double celsius) {
        return arrhenius(1, BROWNING_ENERGY, 150, celsius);
    }

    /** Writes the rates of change of a bean that takes up the given heat, kW per kilogram of dry matter. */
    void rates(double[] state, double heat, double[] rates) {
        double celsius = state[TEMPERATURE];
        double moisture = state[MOISTURE];
        double drying = drying(celsius, moisture);
        double coreRate = (celsius - state[CORE]) / coreLag;

        double crackAt = beans.crackTemperature() - CRACK_PER_MOISTURE * (moisture - CRACK_MOISTURE);
        double distance = (state[CORE] - crackAt) / beans.crackSpread();
        double density =
                StrictMath.exp(-0.5 * distance * distance) / (StrictMath.sqrt(2 * StrictMath.PI) * beans.crackSpread());
        // Cracking frees water, and less water raises the crack temperature of the rest; solved together.
        double cracking = StrictMath.max(0, density * (coreRate - CRACK_PER_MOISTURE * drying))
                / (1 + density * CRACK_PER_MOISTURE * CRACK_STEAM * moisture);
        double waterLoss = drying + CRACK_STEAM * moisture * cracking;
        double reaction = reactionHeat(celsius, state[REACTION]);

        rates[TEMPERATURE] = (heat + reaction - EVAPORATION_HEAT * waterLoss) / heatCapacity(celsius, moisture);
        rates[MOISTURE] = -waterLoss;
        rates[MATTER_LOST] = matterLoss(celsius, state[MATTER_LOST]);
        rates[REACTION] = reaction;
        rates[CORE] = coreRate;
        rates[CRACKED] = cracking;
        rates[BROWNING] = browning(celsius);
    }

    private static double arrhenius(double rate, double energy, double atCelsius, double celsius) {
        return rate * StrictMath.exp(energy / GAS_CONSTANT * (1 / (atCelsius + KELVIN) - 1 / (celsius + KELVIN)));
    }
}
