package parchment.trial;

import java.util.OptionalDouble;

/**
 * Holds what a roaster states of the ends between which chance may choose, as the control's unit keeps them.
 *
 * @param sellLow the lowest setting whose coffee can be sold
 * @param sellHigh the highest
 * @param makerLow the lowest setting that the maker allows
 * @param makerHigh the highest
 * @param air the highest air temperature that the maker allows, °C
 * @param hits how closely the roaster hits what is aimed at: the usual error to either side
 */
record FlipLimits(
        OptionalDouble sellLow,
        OptionalDouble sellHigh,
        OptionalDouble makerLow,
        OptionalDouble makerHigh,
        OptionalDouble air,
        OptionalDouble hits) {
    static final FlipLimits NONE = new FlipLimits(
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty());

    FlipLimits sellable(double low, double high) {
        return new FlipLimits(OptionalDouble.of(low), OptionalDouble.of(high), makerLow, makerHigh, air, hits);
    }

    FlipLimits allowed(double low, double high) {
        return new FlipLimits(sellLow, sellHigh, OptionalDouble.of(low), OptionalDouble.of(high), air, hits);
    }

    FlipLimits air(double highest) {
        return new FlipLimits(sellLow, sellHigh, makerLow, makerHigh, OptionalDouble.of(highest), hits);
    }

    FlipLimits hits(double error) {
        return new FlipLimits(sellLow, sellHigh, makerLow, makerHigh, air, OptionalDouble.of(error));
    }
}
