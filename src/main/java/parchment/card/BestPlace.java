package parchment.card;

import java.util.List;
import java.util.Optional;
import parchment.evidence.Bests;
import parchment.evidence.Evidence;
import parchment.evidence.LotBest;
import parchment.evidence.Peak;
import parchment.feature.Features;
import parchment.logbook.Batch;
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
        List<String> names = List.of(
                good.lot(), good.lot() + machine.map(m -> " on " + m).orElse(" (machine not written)"));
        return Evidence.of(attribute, Features.dropTemperature(), logbook.whole()).bests().stream()
                .map(Bests::lots)
                .flatMap(List::stream)
                .filter(lot -> names.contains(lot.lot()))
                .filter(lot -> lot.best().answer() == Peak.Answer.INSIDE)
                .findFirst()
                .map(lot -> words(attribute, good.lot(), lot, logbook.readerUnit()));
    }

    private static String words(String attribute, String name, LotBest lot, TemperatureUnit reader) {
        Optional<Fieller> set = lot.best()
                .set()
                .filter(found -> found.form() == Fieller.Form.BETWEEN)
                .filter(found -> Double.isFinite(found.lower()) && Double.isFinite(found.upper()));
        double[] ends = set.map(found -> new double[] {found.lower(), found.upper()}).orElse(new double[0]);
        Digits digits = Digits.of(ends, Unit.TEMPERATURE, 0, reader);
        return "Seen in " + lot.batches() + " scored batches: " + attribute + " of " + name + " was highest at a drop of "
                + digits.with(lot.best().best())
                + set.map(found -> " (it may lie anywhere from " + digits.range(found.lower(), found.upper()) + ")")
                        .orElse(", and how far off that may be cannot be told")
                + ", as today's probe reads. That is the best seen in this logbook, not a setting to make.";
    }
}
