package parchment.evidence;

import java.util.Locale;
import java.util.OptionalDouble;

/**
 * What is fixed before the scores are looked at, so that nothing is chosen because of them.
 *
 * <pre>{@code
 * Evidence.of("sweetness", dropTemperature(), logbook, EvidenceSettings.standard().withSmallestDifference(0.5))
 * }</pre>
 *
 * <p>The defaults are: 90 % intervals; the smallest difference that matters is half a point of a ten-point scale, and in
 * proportion of the scale that {@code logbook.properties} states for others; roast days are left out in 5 parts; seed 1.
 *
 * <pre>{@code
 * Evidence.of("sweetness", dropTemperature(), logbook, EvidenceSettings.standard().withSmallestDifference(0.5))
 * }</pre>
 */
public final class EvidenceSettings {
    private final double level;
    private final OptionalDouble smallestDifference;
    private final int parts;
    private final long seed;

    private EvidenceSettings(double level, OptionalDouble smallestDifference, int parts, long seed) {
        this.level = level;
        this.smallestDifference = smallestDifference;
        this.parts = parts;
        this.seed = seed;
    }

    /** Returns the defaults. */
    public static EvidenceSettings standard() {
        return new EvidenceSettings(0.90, OptionalDouble.empty(), 5, 1);
    }

    /** Returns the same settings with intervals of another level, between 0.5 and 1. */
    public EvidenceSettings withLevel(double share) {
        return new EvidenceSettings(EvidenceChecks.level(share), smallestDifference, parts, seed);
    }

    /**
     * Returns the same settings with the smallest difference that matters, in points over the tried range. State it before looking at
     * the scores: chosen afterwards it proves nothing.
     *
     * @throws IllegalArgumentException if it is not above 0
     */
    public EvidenceSettings withSmallestDifference(double points) {
        return new EvidenceSettings(
                level,
                OptionalDouble.of(EvidenceChecks.positive("The smallest difference that matters", points)),
                parts,
                seed);
    }

    /**
     * Returns the same settings with the roast days left out in another number of parts.
     *
     * @throws IllegalArgumentException if there are fewer than 2
     */
    public EvidenceSettings withParts(int number) {
        if (number < 2) {
            throw new IllegalArgumentException(
                    "Roast days are left out in at least 2 parts; it was given " + number + ".");
        }
        return new EvidenceSettings(level, smallestDifference, number, seed);
    }

    /** Returns the same settings with another seed for the split of the roast days. */
    public EvidenceSettings withSeed(long number) {
        return new EvidenceSettings(level, smallestDifference, parts, number);
    }

    /** Returns the level of the intervals, as in 0.90. */
    public double level() {
        return level;
    }

    /** Returns the smallest difference that matters, in points over the tried range; empty if half a point of a ten-point scale is taken. */
    public OptionalDouble smallestDifference() {
        return smallestDifference;
    }

    /** Returns in how many parts the roast days are left out. */
    public int parts() {
        return parts;
    }

    /** Returns the seed of the split of the roast days. */
    public long seed() {
        return seed;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%.0f %% intervals, smallest difference that matters %s, roast days left out in %d parts, seed %d",
                100 * level,
                smallestDifference.isPresent()
                        ? String.format(Locale.ROOT, "%.2f points", smallestDifference.getAsDouble())
                        : "half a point of a ten-point scale, in proportion on others",
                parts,
                seed);
    }
}
