package parchment.drift;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookException;
import parchment.quantity.Mass;
import parchment.quantity.MassUnit;

/**
 * One of the charges in which a lot was really roasted: a green mass, and all batches within a tenth of it. Times and settings go with the mass, so
 * batches of another charge say little of how long this one takes.
 *
 * <pre>{@code
 * String lot = logbook.lastWithCurve().lot().orElseThrow();
 * OneCharge.ofNewest(logbook.batches(), lot, logbook)
 * }</pre>
 *
 * @param kilograms the green mass, kg
 * @param unit the unit in which it is told
 */
public record OneCharge(double kilograms, MassUnit unit) {
    /** By how much of its mass a batch may differ and be of the same charge; common practice, no source. */
    static final double WITHIN = 0.1;

    /**
     * Returns the charge of the newest batch with a written green mass: of the sizes that its lot was really roasted in, the nearest; its own mass if
     * it is of none of them. Empty if no mass is written.
     *
     * @param inTime batches of the lot, the earliest first
     */
    public static Optional<OneCharge> ofNewest(List<Batch> inTime, String lot, Logbook logbook) {
        for (int i = inTime.size() - 1; i >= 0; i--) {
            double mass = kilograms(inTime.get(i)).orElse(Double.NaN);
            if (mass > 0) {
                return Optional.of(sizeOf(Mass.kilograms(mass), lot, logbook));
            }
        }
        return Optional.empty();
    }

    /**
     * Returns the charge of a lot that is about a mass.
     *
     * @throws LogbookException if no batch of the lot was charged with about as much; the message names the charges that were used
     */
    public static OneCharge of(Mass mass, String lot, Logbook logbook) {
        OneCharge asked = sizeOf(mass, lot, logbook);
        if (logbook.ofLot(lot).batches().stream().noneMatch(asked::holds)) {
            ChargeSizes used = ChargeSizes.of(lot, logbook.massUnit(), logbook);
            throw new LogbookException("No batch of lot '" + lot + "' was charged with about " + asked.words() + ". "
                    + (used.whose() == ChargeSizes.Whose.ITS_OWN
                            ? "Charges used for it: " + used.words(MassWords.in(logbook.massUnit()))
                                    + ". Name one of these."
                            : "None of its batches has a green mass; write it into batches.csv."));
        }
        return asked;
    }

    /** Returns the charge that a mass is one of: of the sizes that its lot was really roasted in, the nearest; the mass itself if it is of none of them. */
    public static OneCharge sizeOf(Mass mass, String lot, Logbook logbook) {
        return nearest(mass.kilograms(), lot, logbook).orElse(new OneCharge(mass.kilograms(), logbook.massUnit()));
    }

    private static Optional<OneCharge> nearest(double mass, String lot, Logbook logbook) {
        return ChargeSizes.of(lot, logbook.massUnit(), logbook).sizes().stream()
                .map(size -> new OneCharge(size.kilograms(), logbook.massUnit()))
                .filter(size -> size.holds(mass))
                .min(Comparator.comparingDouble(size -> Math.abs(size.kilograms - mass)));
    }

    private static OptionalDouble kilograms(Batch batch) {
        return batch.conditions().greenMass().stream()
                .mapToDouble(Mass::kilograms)
                .findFirst();
    }

    private boolean holds(double mass) {
        return Math.abs(mass - kilograms) <= WITHIN * kilograms;
    }

    /** Tells whether a batch was of this charge; one without a written green mass is of none. */
    public boolean holds(Batch batch) {
        return kilograms(batch).stream().anyMatch(this::holds);
    }

    /** Tells whether a batch was of another charge; one without a written green mass is of none. */
    public boolean isNotThatOf(Batch batch) {
        return kilograms(batch).stream().anyMatch(mass -> !holds(mass));
    }

    /** Returns the mass in words, as in "2.5 kg". */
    public String words() {
        return Mass.kilograms(kilograms).words(unit);
    }

    @Override
    public String toString() {
        return "charge of " + words();
    }
}
