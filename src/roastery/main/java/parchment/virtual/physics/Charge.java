package parchment.virtual.physics;

/**
 * How a batch begins: what the simulation starts from.
 *
 * @param greenMass kg
 * @param greenTemperature temperature of the green beans, °C
 * @param reading what the bean probe read just before, °C
 * @param metalAbove how much hotter the drum's metal is than that reading, °C: an empty drum's probe does not see stored heat
 */
public record Charge(double greenMass, double greenTemperature, double reading, double metalAbove) {
    /** Metal above reading after an ordinary warm-up, °C (fitted with the machine). */
    public static final double ORDINARY_METAL = 5.9;

    /** @throws IllegalArgumentException if the mass is not above zero */
    public Charge {
        VirtualChecks.positive("green mass", greenMass);
    }

    /** Returns a charge of beans at 21 °C after an ordinary warm-up. */
    public static Charge of(double greenMass, double reading) {
        return new Charge(greenMass, 21, reading, ORDINARY_METAL);
    }
}
