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
        List<String> names =
                List.of(good.lot(), good.lot() + machine.map(m -> " on " + m).orElse(" (machine not written)"));
        return Evidence.of(attribute, Features.dropTemperature(), logbook.whole()).bests().stream()
                .map(Bests::lots)
                .flatMap(List::stream)
                .filter(lot -> names.contains(lot.lot()))
                .filter(lot -> lot.best().answer() == Peak.Answer.INSIDE)
                .findFirst()
                .map(lot -> words(attribute, good.batches().size(), lot, logbook.readerUnit()));
    }

    /**
     * Ties the place to the few batches of the card: it comes of all that were scored, and is the surer one where it has an interval.
     *
     * @param shown how many batches stand on the card
     */
    static String words(String attribute, int shown, LotBest lot, TemperatureUnit reader) {
        Optional<Fieller> set = lot.best()
                .set()
                .filter(found -> found.form() == Fieller.Form.BETWEEN)
                .filter(found -> Double.isFinite(found.lower()) && Double.isFinite(found.upper()));
        double[] ends =
                set.map(found -> new double[] {found.lower(), found.upper()}).orElse(new double[0]);
        Digits digits = Digits.of(ends, Unit.TEMPERATURE, 0, reader);
        String these = shown == 1 ? "this one is" : "these " + shown + " are";
        return "All " + lot.batches() + " scored batches of the lot together put the best drop for " + attribute + " at "
                + digits.with(lot.best().best())
                + set.map(found -> " (" + digits.range(found.lower(), found.upper()) + "), as today's probe reads: that is the surer number; "
                                + these + " what it looked like on the drum.")
                        .orElse(", as today's probe reads, but how far off that may be cannot be told; " + these
                                + " what it looked like on the drum.")
                + " It is the best seen in this logbook, not a setting to make.";
    }
}
