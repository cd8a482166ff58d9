package parchment.drift;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.logbook.Logbook;
import parchment.logbook.Lot;
import parchment.logbook.contents.LotCheck;

/** Tells beside a lot's year what was written of its age: harvest, arrival, and moisture measured again. */
final class LotAge {
    private LotAge() {}

    /** Says what lots.csv and lot-checks.csv know of the lot's age. */
    static List<String> words(String lot, Logbook logbook) {
        List<String> words = new ArrayList<>();
        Optional<Lot> known =
                logbook.lots().stream().filter(l -> l.name().equals(lot)).findFirst();
        Optional<LocalDate> harvest = known.flatMap(Lot::harvestedOn);
        Optional<LocalDate> arrival = known.flatMap(Lot::arrivedOn);
        harvest.ifPresent(day -> words.add("Harvested on " + day
                + arrival.map(a -> ", arrived on " + a
                                + ": the days before arrival aged it too, and are the same for all its batches.")
                        .orElse(".")));
        if (harvest.isEmpty()) {
            words.add(arrival.map(a -> "Arrived on " + a + "; its harvest is not written, so its age is not known.")
                    .orElse("Neither harvest nor arrival of " + lot + " is written; dates stand for its age."));
        }
        List<LotCheck> checks = logbook.contents().lotChecks().stream()
                .filter(c -> c.lot().equals(lot) && c.moisture().isPresent())
                .sorted(Comparator.comparing(LotCheck::measuredOn))
                .toList();
        if (checks.size() >= 2) {
            LotCheck first = checks.get(0);
            LotCheck last = checks.get(checks.size() - 1);
            words.add(String.format(
                    Locale.ROOT,
                    "Its moisture was measured %d times: %.1f %% on %s, %.1f %% on %s%s",
                    checks.size(),
                    100 * first.moisture().getAsDouble(),
                    first.measuredOn(),
                    100 * last.moisture().getAsDouble(),
                    last.measuredOn(),
                    Math.abs(last.moisture().getAsDouble() - first.moisture().getAsDouble()) < 0.002
                            ? ": it hardly changed, so drying out or taking up water is not the reason for what moved."
                            : ": water moved together with age, and could be the reason for what moved."));
        } else {
            words.add("Its moisture was not measured again (lot-checks.csv), so what age did to it is not known.");
        }
        return words;
    }
}
