package parchment.logbook;

import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import parchment.logbook.written.BatchConditions;
import parchment.quantity.Mass;
import parchment.quantity.MassUnit;
import parchment.sheet.Words;
import parchment.stats.linear.Robust;

/**
 * Settles which of a batch's two masses is set aside where no roast can have made the one from the other.
 *
 * <p>Usually the roasted mass: it is written in the hurry after the roast. Where the green mass is far from what is usually charged and the roasted mass is
 * not, a digit or a point slipped in the green mass, and that one is set aside.
 */
final class MassPair {
    /** A roast loses at most this share of the green mass; common practice, no source. */
    static final double LARGEST_MASS_LOSS = 0.4;

    /** How many times the usual charge, or what part of it, no charge of the same roastery is; common practice, no source. */
    static final double FAR = 4;

    /** Fewest other green masses that say what is usual. */
    static final int LEAST_OTHERS = 8;

    private static final String GREEN = "green mass";
    private static final String ROASTED = "roasted mass";
    private static final String MISSING = "value treated as missing";

    private MassPair() {}

    /** Says whether both masses are written and no roast can have made the one from the other. */
    static boolean contradicts(BatchConditions conditions) {
        return conditions.greenMass().isPresent()
                && conditions.roastedMass().isPresent()
                && !goesWith(
                        conditions.greenMass().get().kilograms(),
                        conditions.roastedMass().get().kilograms());
    }

    private static boolean goesWith(double green, double roasted) {
        double loss = 1 - roasted / green;
        return loss >= 0 && loss <= LARGEST_MASS_LOSS;
    }

    /**
     * Sets one of the masses aside in each batch where they contradict each other, and says so.
     *
     * @param batches all batches of the table by name, changed in place
     * @param apart the rows of those whose masses contradict each other
     * @param unit the unit that masses are told in
     */
    static void settle(Map<String, Batch> batches, Map<String, Row> apart, MassUnit unit) {
        double[] others = batches.values().stream()
                .filter(batch -> !apart.containsKey(batch.name()))
                .flatMap(batch -> batch.conditions().greenMass().stream())
                .mapToDouble(Mass::kilograms)
                .toArray();
        double usual = others.length < LEAST_OTHERS ? Double.NaN : Robust.median(others);
        apart.forEach((name, row) -> {
            Batch batch = Objects.requireNonNull(batches.get(name), name);
            BatchConditions conditions = batch.conditions();
            Mass green = conditions.greenMass().orElseThrow();
            Mass roasted = conditions.roastedMass().orElseThrow();
            boolean greenIsOff = isFar(green.kilograms(), usual) && goesWithUsual(roasted.kilograms(), usual);
            if (greenIsOff) {
                row.problem(
                        GREEN,
                        Words.quote(row.text(GREEN).orElse("")),
                        "a mass that goes with the roasted mass, " + roasted.words(unit) + "; usually about "
                                + Mass.kilograms(usual).words(unit) + " are charged",
                        MISSING);
            } else {
                row.problem(
                        ROASTED,
                        Words.quote(row.text(ROASTED).orElse("")),
                        roasted.kilograms() > green.kilograms()
                                ? "less than the green mass, " + green.words(unit)
                                : "more than 60 % of the green mass, " + green.words(unit),
                        MISSING);
            }
            batches.put(
                    name,
                    batch.toBuilder()
                            .conditions(
                                    greenIsOff
                                            ? conditions.withMasses(Optional.empty(), Optional.of(roasted))
                                            : conditions.withMasses(Optional.of(green), Optional.empty()))
                            .build());
        });
    }

    private static boolean isFar(double green, double usual) {
        return green > FAR * usual || green < usual / FAR;
    }

    private static boolean goesWithUsual(double roasted, double usual) {
        return roasted <= usual * FAR && roasted >= usual * (1 - LARGEST_MASS_LOSS) / FAR;
    }
}
