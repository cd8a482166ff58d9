package parchment.virtual.people;

import java.util.List;
import parchment.virtual.chance.Chance;

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
 * @param impression standard deviation of this cupper's general impression of a cup around its true general level, points; it enters
 *     every attribute through the halo
 * @param ownTaste standard deviation of this cupper's own liking of a batch, on each attribute, points: the same whenever it is met
 */
public record Cupper(
        String name,
        double bias,
        List<Double> attributeBias,
        double scale,
        double noise,
        double halo,
        double contrast,
        double fatigue,
        double impression,
        double ownTaste) {
    /** Standard deviation of a cup's general impression where nothing else is said, points (assumption). */
    public static final double IMPRESSION = 0.3;

    /** Copies the list. */
    public Cupper {
        attributeBias = List.copyOf(attributeBias);
    }

    /** Draws a cupper. */
    public static Cupper drawn(String name, int attributes, Chance chance) {
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
                chance.between(0.0, 0.03),
                IMPRESSION,
                0);
    }
}
