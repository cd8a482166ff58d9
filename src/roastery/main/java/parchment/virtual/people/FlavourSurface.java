package parchment.virtual.people;

import java.util.List;
import parchment.virtual.chance.Chance;

/**
 * Gives the true level of one attribute as a smooth surface over how a batch was roasted.
 *
 * <p>A quadratic in destination, browning time and development time, flattened so that it stays between 0 and 10: points
 * = 5 + 5 tanh((q - 5) / 5), where q = level + a d + b d² + c w + e v + f v² + g d v, with d = (end temperature of the beans - 206
 * °C) in °C, w = (browning time - 240 s) in minutes, v = (development time - 120 s) in minutes. The surfaces are invented.
 *
 * @param attribute the attribute's name
 * @param level points at the middle
 * @param destination points per °C
 * @param destinationSquared points per °C²
 * @param browning points per minute of browning
 * @param development points per minute of development
 * @param developmentSquared points per minute²
 * @param together points per °C and minute of development
 */
public record FlavourSurface(
        String attribute,
        double level,
        double destination,
        double destinationSquared,
        double browning,
        double development,
        double developmentSquared,
        double together) {
    /** Bean temperature at which d is zero, °C. */
    public static final double MIDDLE_DESTINATION = 206;
    /** Browning time at which w is zero, s. */
    public static final double MIDDLE_BROWNING = 240;
    /** Development time at which v is zero, s. */
    public static final double MIDDLE_DEVELOPMENT = 120;

    /** Returns the shapes that a scenario can choose from. */
    public static List<String> shapes() {
        return List.of("as set", "drawn", "peak", "rising", "falling", "flat");
    }

    /**
     * Draws a surface of a shape: a peak near the middle, rising or falling with the destination, or flat, which no roasting moves.
     * The shape "drawn" is one of these four, all equally likely.
     */
    public static FlavourSurface drawn(String attribute, String shape, Chance chance) {
        String drawn = shape.equals("drawn") ? chance.pick(shapes().subList(2, 6)) : shape;
        double level = chance.between(4.8, 6.2);
        return switch (drawn) {
            case "peak" -> {
                double best = chance.between(-3.5, 3.5);
                double bend = chance.between(0.02, 0.04);
                double bestDevelopment = chance.between(-0.7, 0.7);
                double bendDevelopment = chance.between(0.1, 0.3);
                yield new FlavourSurface(
                        attribute,
                        level - bend * best * best,
                        2 * bend * best,
                        -bend,
                        chance.between(-0.2, 0.3),
                        2 * bendDevelopment * bestDevelopment,
                        -bendDevelopment,
                        chance.between(-0.02, 0.02));
            }
            case "rising", "falling" -> {
                double way = drawn.equals("rising") ? 1 : -1;
                yield new FlavourSurface(
                        attribute,
                        level,
                        way * chance.between(0.06, 0.18),
                        0,
                        chance.between(-0.2, 0.2),
                        way * chance.between(0, 0.3),
                        0,
                        0);
            }
            case "flat" -> new FlavourSurface(attribute, level, 0, 0, 0, 0, 0, 0);
            default ->
                throw new IllegalArgumentException(
                        "There is no shape '" + shape + "'. Shapes: " + String.join(", ", shapes()) + ".");
        };
    }

    /**
     * Returns the attribute's true level in points.
     *
     * @param endTemperature true temperature of the beans at the drop, °C
     * @param browningSeconds from yellowing to the first pop, s
     * @param developmentSeconds from the first pop to the drop, s
     */
    public double points(double endTemperature, double browningSeconds, double developmentSeconds) {
        double d = endTemperature - MIDDLE_DESTINATION;
        double w = (browningSeconds - MIDDLE_BROWNING) / 60;
        double v = (developmentSeconds - MIDDLE_DEVELOPMENT) / 60;
        double q = level
                + destination * d
                + destinationSquared * d * d
                + browning * w
                + development * v
                + developmentSquared * v * v
                + together * d * v;
        return 5 + 5 * StrictMath.tanh((q - 5) / 5);
    }
}
