package parchment.virtual.physics;

/**
 * Describes green beans as the physics needs them.
 *
 * @param moisture water per dry matter, kg/kg (11 % of the whole is 0.1236)
 * @param diameter diameter of a ball of the bean's volume, mm
 * @param density mass of a litre of beans, g/L
 * @param crackTemperature mean temperature of the bean's core at which beans crack when {@link BeanPhysics#CRACK_MOISTURE} of water
 *     is left, °C
 * @param crackSpread standard deviation of that temperature between beans, °C
 * @param yellowingDose browning dose at which the beans look yellow, seconds at 150 °C
 * @param reactivity how fast the heat of reaction is set free against the published rate; 1 is the published rate
 */
public record GreenBeans(
        double moisture,
        double diameter,
        double density,
        double crackTemperature,
        double crackSpread,
        double yellowingDose,
        double reactivity) {

    /** @throws IllegalArgumentException if a number is not positive, or there is more water than dry matter */
    public GreenBeans {
        VirtualChecks.positive("moisture", moisture);
        VirtualChecks.positive("diameter", diameter);
        VirtualChecks.positive("density", density);
        VirtualChecks.positive("crack temperature", crackTemperature);
        VirtualChecks.positive("crack spread", crackSpread);
        VirtualChecks.positive("yellowing dose", yellowingDose);
        VirtualChecks.positive("reactivity", reactivity);
        if (moisture >= 1) {
            throw new IllegalArgumentException(
                    "Green beans have less water than dry matter; the moisture given is " + moisture + " kg/kg.");
        }
    }

    /** Returns the beans to which the fitted machine was fitted: a washed coffee of middle size at 11 % moisture. */
    public static GreenBeans ordinary() {
        return new GreenBeans(fromShare(0.11), 6.4, 705, 199.6, 3.0, 119.9, 1);
    }

    /** Converts a share of water in the whole (0.11) to water per dry matter (0.1236). */
    public static double fromShare(double share) {
        return share / (1 - share);
    }

    /** Returns the share of water in the whole, as a moisture meter shows it. */
    public double moistureShare() {
        return moisture / (1 + moisture);
    }

    /** Returns the same beans with another moisture, kg of water per kg of dry matter. */
    public GreenBeans withMoisture(double other) {
        return new GreenBeans(other, diameter, density, crackTemperature, crackSpread, yellowingDose, reactivity);
    }

    /** Returns the same beans cracking and reacting a little differently: a shift in °C, a factor of the reaction's rate. */
    public GreenBeans varied(double crackShift, double reactivityFactor, double doseFactor) {
        return new GreenBeans(
                moisture,
                diameter,
                density,
                crackTemperature + crackShift,
                crackSpread,
                yellowingDose * doseFactor,
                reactivity * reactivityFactor);
    }
}
