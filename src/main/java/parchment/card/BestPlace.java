package parchment.card;

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

/** Says in one line where the scores of a lot were best along the drop temperature, if the first answer says so. */
final class BestPlace {
    private BestPlace() {}

    /** Returns the line; empty if nothing was scored, or no best place inside what was tried can be told of the lot. */
    static Optional<String> words(GoodBatches good, Logbook logbook) {
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
                .map(lot -> Place.of(attribute, lot).words(good.batches().size(), logbook.readerUnit()));
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

        /**
         * Ties the place to the few batches of the card: it is the surer number where it has an interval.
         *
         * @param shown how many batches stand on the card
         */
        String words(int shown, TemperatureUnit reader) {
            double[] ends = set.map(found -> new double[] {found.lower(), found.upper()})
                    .orElse(new double[0]);
            Digits digits = Digits.of(ends, Unit.TEMPERATURE, 0, reader);
            String these =
                    (shown == 1 ? "this one is" : "these " + shown + " are") + " what it looked like on the drum.";
            return "All " + batches + " scored batches of the lot together put the best drop for " + attribute + " at "
                    + digits.with(best)
                    + set.map(found -> " (" + digits.range(found.lower(), found.upper())
                                    + "), as today's probe reads: that is the surer number; " + these)
                            .orElse(", as today's probe reads, but how far off that may be cannot be told; " + these)
                    + " It is the best seen in this logbook, not a setting to make.";
        }
    }
}
