package parchment.virtual;

import java.util.List;

/**
 * Describes how an invented cupper scores.
 *
 * @param name invented given name
 * @param bias points above or below the others on every attribute
 * @param attributeBias points above or below on each attribute, in the order of the surfaces
 * @param scale how widely the cupper spreads scores; 1 is as the truth is spread
 * @param noise standard deviation of one score, points
 * @param halo share of a cup's general level that goes into every attribute
 * @param contrast points taken away per point that the cup before was above the middle
 * @param fatigue points lost per serving position
 */
public record Cupper(
        String name,
        double bias,
        List<Double> attributeBias,
        double scale,
        double noise,
        double halo,
        double contrast,
        double fatigue) {
    /** Copies the list. */
    public Cupper {
        attributeBias = List.copyOf(attributeBias);
    }

    /** Draws a cupper. */
    static Cupper drawn(String name, int attributes, Chance chance) {
        List<Double> biases = new java.util.ArrayList<>();
        for (int i = 0; i < attributes; i++) {
            biases.add(chance.normalWithin(0, 0.3, 2));
        }
        return new Cupper(
                name,
                chance.normalWithin(0, 0.4, 2),
                biases,
                chance.between(0.75, 1.25),
                chance.between(0.45, 0.75),
                chance.between(0.15, 0.45),
                chance.between(0.0, 0.12),
                chance.between(0.0, 0.03));
    }
}
