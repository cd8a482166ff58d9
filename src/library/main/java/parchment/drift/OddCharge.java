package parchment.drift;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.quantity.Mass;
import parchment.quantity.MassUnit;
import parchment.stats.linear.Robust;

/**
 * A charge that most of a lot's batches were not of, and too few to say what is usual for it. What follows from the charge then says nothing of the
 * batch.
 *
 * @param kilograms its green mass, kg
 * @param usual the size of charge that the middle of the others' green masses is of ({@link OneCharge#sizeOf}), kg
 * @param unit the unit in which they are told
 */
record OddCharge(double kilograms, double usual, MassUnit unit) {
    /** By how much a charge may lie off the half of the usual one and be called so; common practice, no source. */
    private static final double ABOUT = 0.1;

    /** What the roaster decides or the scales show whatever was charged; all else looked at goes with the mass. */
    private static final Set<String> NOT_OF_THE_CHARGE = Set.of(
            WrittenCharge.AGAINST_THE_CURVE.name(),
            Features.dropTemperature().name(),
            Features.massLoss().name());

    /** Finds whether a batch is of such a charge: of eight others or more fewer than eight others are of it, and more than half of those weighed are of another. */
    static Optional<OddCharge> of(Batch batch, List<Batch> others, Logbook logbook) {
        double own = batch.conditions().greenMass().map(Mass::kilograms).orElse(Double.NaN);
        if (!(own > 0) || others.size() < Usual.ENOUGH) {
            return Optional.empty();
        }
        OneCharge charge = new OneCharge(own, logbook.massUnit());
        long like = others.stream().filter(charge::holds).count();
        long unlike = others.stream().filter(charge::isNotThatOf).count();
        if (like >= Usual.ENOUGH || unlike <= like) {
            return Optional.empty();
        }
        Mass middle = Mass.kilograms(Robust.median(others.stream()
                .flatMap(other -> other.conditions().greenMass().stream())
                .mapToDouble(Mass::kilograms)
                .toArray()));
        double usual = batch.lot()
                .map(lot -> OneCharge.sizeOf(middle, lot, logbook).kilograms())
                .orElse(middle.kilograms());
        return Optional.of(new OddCharge(own, usual, logbook.massUnit()));
    }

    /** Tells whether a feature can be held against batches of other charges. */
    static boolean canHold(Feature feature) {
        return NOT_OF_THE_CHARGE.contains(feature.name());
    }

    /** Says what charge it was beside the usual one, as in "a half charge". */
    String size() {
        double share = kilograms / usual;
        return (Math.abs(share - 0.5) <= ABOUT * 0.5 ? "a half" : share < 1 ? "a small" : "a large") + " charge";
    }

    /** Says what charge it was, as in "a half charge (2.49 kg; usually 4.99 kg)". */
    String words() {
        return size() + " (" + Mass.kilograms(kilograms).words(unit) + "; usually "
                + Mass.kilograms(usual).words(unit) + ")";
    }
}
