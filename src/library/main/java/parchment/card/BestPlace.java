package parchment.card;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import parchment.evidence.Bests;
import parchment.evidence.Evidence;
import parchment.evidence.LotBest;
import parchment.evidence.Peak;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Fieller;
import parchment.stats.Interval;

/** Finds where the scores of a lot were best along the drop temperature, if the first answer says so, and says it in one line. */
final class BestPlace {
    private BestPlace() {}

    /** Returns the place; empty if nothing was scored, or no best place inside what was tried can be told of the lot. */
    static Optional<Place> of(GoodBatches good, Logbook logbook) {
        if (good.scored().isEmpty() || good.batches().isEmpty()) {
            return Optional.empty();
        }
        String attribute = good.scored().get().attribute();
        Optional<String> machine = good.batches().get(0).machine();
        return Evidence.of(attribute, Features.dropTemperature(), logbook.whole()).bests().stream()
                .map(Bests::lots)
                .flatMap(List::stream)
                .filter(lot -> lot.isOf(good.lot(), machine))
                .filter(lot -> lot.best().answer() == Peak.Answer.INSIDE)
                .findFirst()
                .map(lot -> Place.of(attribute, lot));
    }

    /**
     * Where the scores were best, as all scored batches of the lot together say.
     *
     * @param attribute what was scored
     * @param batches how many were scored
     * @param best the best drop temperature, °C
     * @param set where it may lie, °C; empty if that cannot be told
     */
    record Place(String attribute, int batches, double best, Optional<Interval> set) {
        static Place of(String attribute, LotBest lot) {
            return new Place(
                    attribute,
                    lot.batches(),
                    lot.best().best(),
                    lot.best()
                            .set()
                            .filter(found -> found.form() == Fieller.Form.BETWEEN)
                            .filter(found -> Double.isFinite(found.lower()) && Double.isFinite(found.upper()))
                            .map(found -> new Interval(found.lower(), found.upper(), found.level())));
        }

        /** Returns how many of some drops lie where the best may be; what prints as an end of it does. */
        private long within(double[] drops, Digits digits) {
            return set.map(found -> Arrays.stream(drops)
                            .filter(drop ->
                                    (drop >= found.lower() || digits.with(drop).equals(digits.with(found.lower())))
                                            && (drop <= found.upper()
                                                    || digits.with(drop).equals(digits.with(found.upper()))))
                            .count())
                    .orElse((long) drops.length);
        }

        private Digits digits(TemperatureUnit reader) {
            return Digits.of(
                    set.map(found -> new double[] {found.lower(), found.upper()})
                            .orElse(new double[0]),
                    Unit.TEMPERATURE,
                    0,
                    reader);
        }

        /** Tells whether none of some drops, on today's probe, lies where the best may be: the place and the batches then disagree. */
        boolean disagrees(double[] drops, TemperatureUnit reader) {
            double[] known = Arrays.stream(drops).filter(Double::isFinite).toArray();
            return known.length > 0 && within(known, digits(reader)) == 0;
        }

        /** Says in a short sentence that the place is not where the batches of the card were dropped. */
        String elsewhere(TemperatureUnit reader) {
            return "But all " + batches + " scored batches together put the best drop at "
                    + digits(reader).with(best) + ", where none of these was: take neither as a target.";
        }

        /**
         * Ties the place to the few batches of the card: it is the surer number where it has an interval and they lie in it.
         *
         * @param drops the drop temperatures of the batches on the card on today's probe, °C; NaN where missing
         */
        String words(double[] drops, TemperatureUnit reader) {
            Digits digits = digits(reader);
            String these = (drops.length == 1 ? "this one is" : "these " + drops.length + " are")
                    + " what it looked like on the drum.";
            return "All " + batches + " scored batches of the lot together put the best drop for " + attribute + " at "
                    + digits.with(best)
                    + set.map(found -> " (" + digits.range(found.lower(), found.upper()) + "), as today's probe reads"
                                    + beside(drops, digits, these))
                            .orElse(", as today's probe reads, but how far off that may be cannot be told; " + these)
                    + " It is the best seen in this logbook, not a setting to make.";
        }

        private String beside(double[] drops, Digits digits, String these) {
            double[] known = Arrays.stream(drops).filter(Double::isFinite).toArray();
            long within = within(known, digits);
            if (within == known.length) {
                return ": that is the surer number; " + these;
            }
            return within > 0
                    ? "; of the " + known.length + " dropped here " + within + (within == 1 ? " lies" : " lie")
                            + " within."
                    : ". The two disagree: " + (known.length == 1 ? "this one was" : "these " + known.length + " were")
                            + " dropped at "
                            + digits.range(
                                    Arrays.stream(known).min().getAsDouble(),
                                    Arrays.stream(known).max().getAsDouble())
                            + ".";
        }
    }
}
