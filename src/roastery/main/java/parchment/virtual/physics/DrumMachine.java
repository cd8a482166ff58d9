package parchment.virtual.physics;

import java.util.List;

/**
 * Describes an invented gas-fired drum machine: flame, air, metal and how each gives heat to the beans.
 *
 * <p>No existing machine is meant, and nothing here may be carried over to one.
 *
 * @param flame heat of the flame at full gas, kW: the flame is limited
 * @param flameOnDrum share of the flame's heat that goes into the drum's metal; the rest goes into the air
 * @param flameLag time constant of the flame after a change of gas, s
 * @param leastAir air drawn through the drum at airflow 0, kg/s
 * @param mostAir air drawn through at airflow 1, kg/s
 * @param airToBeans heat from air to the beans of one kilogram of green coffee, per degree, at half airflow, kW/K
 * @param airToMetal heat from air to metal, per degree, kW/K
 * @param metalToBeans heat from metal to the beans of one kilogram of green coffee, per degree, kW/K
 * @param metalHeat heat that warms the metal by one degree, kJ/K
 * @param loss heat from the metal to the room, per degree, kW/K
 */
public record DrumMachine(
        double flame,
        double flameOnDrum,
        double flameLag,
        double leastAir,
        double mostAir,
        double airToBeans,
        double airToMetal,
        double metalToBeans,
        double metalHeat,
        double loss) {
    /** Specific heat of air near 200 °C, kJ/(kg K) (handbook value, from memory; combustion gas is a few per cent above). */
    static final double AIR_HEAT = 1.03;

    /** Forced convection grows with this power of the air's speed (between 0.5 of single spheres and 0.8 of tubes; assumption). */
    private static final double SPEED_POWER = 0.6;
    /** A fuller drum shows the air less of each bean (assumption). */
    private static final double AIR_MASS_POWER = 0.85;
    /** A fuller drum puts less of each bean on the metal (assumption: surface against volume). */
    private static final double METAL_MASS_POWER = 2.0 / 3;

    /** @throws IllegalArgumentException if a number is not positive, a share is above 1, or the air's limits are crossed */
    public DrumMachine {
        VirtualChecks.positive("flame", flame);
        VirtualChecks.share("share of the flame on the drum", flameOnDrum);
        VirtualChecks.positive("lag of the flame", flameLag);
        VirtualChecks.positive("least air", leastAir);
        VirtualChecks.positive("heat from air to beans", airToBeans);
        VirtualChecks.positive("heat from air to metal", airToMetal);
        VirtualChecks.positive("heat from metal to beans", metalToBeans);
        VirtualChecks.positive("heat of the metal", metalHeat);
        VirtualChecks.positive("loss", loss);
        if (!(mostAir > leastAir)) {
            throw new IllegalArgumentException(
                    "The most air, " + mostAir + " kg/s, must be above the least, " + leastAir + " kg/s.");
        }
    }

    /** Returns the one machine that was fitted to the reference roast (see docs/virtual-roastery.md); capacity about 3 kg. */
    public static DrumMachine fitted() {
        return new DrumMachine(5.04, 0.786, 4, 0.00576, 0.0127, 0.00346, 0.0313, 0.00644, 9.23, 0.00221);
    }

    /** Returns a machine whose gas moves much and whose air moves little: a strong flame under a drum with a steady fan. */
    public static DrumMachine strongFlame() {
        return new DrumMachine(6.3, 0.80, 3, 0.0100, 0.0114, 0.0033, 0.031, 0.0064, 9.2, 0.0024);
    }

    /** Returns a machine whose gas is near its end from the start, and whose air steers: a weak burner, much of it in the air. */
    public static DrumMachine weakBurner() {
        return new DrumMachine(4.75, 0.62, 6, 0.0050, 0.0175, 0.0052, 0.026, 0.0060, 12.5, 0.0020);
    }

    /** Returns the names of the characters that a scenario can choose from. */
    public static List<String> characters() {
        return List.of("ordinary drum", "strong flame", "air steers");
    }

    /** Returns the machine of one of {@link #characters}. */
    public static DrumMachine of(String character) {
        return switch (character) {
            case "ordinary drum" -> fitted();
            case "strong flame" -> strongFlame();
            case "air steers" -> weakBurner();
            default ->
                throw new IllegalArgumentException(
                        "There is no machine '" + character + "'. Machines: " + String.join(", ", characters()) + ".");
        };
    }

    /** Returns the same machine with its flame and its draught changed by factors: gas pressure, sooted ducts. */
    public DrumMachine worn(double flameFactor, double draughtFactor) {
        return new DrumMachine(
                flame * flameFactor,
                flameOnDrum,
                flameLag,
                leastAir * draughtFactor,
                mostAir * draughtFactor,
                airToBeans,
                airToMetal,
                metalToBeans,
                metalHeat,
                loss);
    }

    /** Returns the air drawn through, kg/s, at an airflow from 0 to 1. */
    double air(double airflow) {
        return leastAir + (mostAir - leastAir) * airflow;
    }

    /** Returns heat from air to beans per degree, kW/K. */
    double airToBeans(double greenMass, double air) {
        return airToBeans
                * StrictMath.pow(greenMass, AIR_MASS_POWER)
                * StrictMath.pow(2 * air / (leastAir + mostAir), SPEED_POWER);
    }

    /** Returns heat from metal to beans per degree, kW/K. */
    double metalToBeans(double greenMass) {
        return metalToBeans * StrictMath.pow(greenMass, METAL_MASS_POWER);
    }
}
