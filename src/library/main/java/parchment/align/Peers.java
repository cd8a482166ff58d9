package parchment.align;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookException;
import parchment.phase.Phases;

/**
 * Sorts batches into those that can be held against each other: one probe, and one lot where the lot has batches enough.
 *
 * @param words what they have in common, as in "lot A on the probe of drum 1"
 * @param members the batches, in the logbook's order
 * @param kind what the batches have in common beside the probe
 */
record Peers(String words, List<Phases> members, Kind kind) {
    /** What its batches have in common beside the probe. */
    enum Kind {
        /** One lot. */
        LOT,
        /** No lot was written for any. */
        NO_LOT,
        /** Several lots with few batches each, and perhaps batches without a lot. */
        SEVERAL_LOTS
    }

    /** Fewest batches of a lot that are held against each other alone; common practice, no source. */
    static final int ENOUGH = 10;

    /** Returns the groups: every batch with a bean temperature is in one of them. */
    static List<Peers> of(Logbook logbook) {
        ByProbe periods = ByProbe.of(logbook);
        Map<String, Map<String, List<Phases>>> groups = new LinkedHashMap<>();
        for (Phases phases : Phases.of(logbook)) {
            if (phases.bean().isPresent()) {
                groups.computeIfAbsent(periods.period(phases.batch()), k -> new LinkedHashMap<>())
                        .computeIfAbsent(phases.batch().lot().orElse(""), k -> new ArrayList<>())
                        .add(phases);
            }
        }
        List<Peers> peers = new ArrayList<>();
        groups.forEach((period, lots) -> {
            List<Phases> rest = new ArrayList<>();
            lots.forEach((lot, members) -> {
                if (members.size() >= ENOUGH) {
                    peers.add(new Peers(
                            (lot.isEmpty() ? "batches without a lot" : "lot " + lot) + " on " + periods.words(period),
                            List.copyOf(members),
                            lot.isEmpty() ? Kind.NO_LOT : Kind.LOT));
                } else {
                    rest.addAll(members);
                }
            });
            if (!rest.isEmpty()) {
                peers.add(new Peers(
                        "all lots with few batches on " + periods.words(period),
                        List.copyOf(rest),
                        lots.size() == 1 && lots.containsKey("") ? Kind.NO_LOT : Kind.SEVERAL_LOTS));
            }
        });
        return List.copyOf(peers);
    }

    /**
     * Returns the group that a batch belongs to.
     *
     * @throws LogbookException if the batch is not in the logbook, or has no bean temperature
     */
    static Peers of(Batch batch, Logbook logbook) {
        String name = logbook.batch(batch.name()).name();
        Optional<Peers> found = of(logbook).stream()
                .filter(peers -> peers.member(name).isPresent())
                .findFirst();
        return found.orElseThrow(() -> new LogbookException("Batch '" + name
                + "' has no bean temperature, so its path cannot be held against others. Choose a batch with a curve, such as"
                + " logbook.lastWithCurve()."));
    }

    Optional<Phases> member(String name) {
        return members.stream()
                .filter(phases -> phases.batch().name().equals(name))
                .findFirst();
    }

    /** Returns the other batches. */
    List<Phases> others(String name) {
        return members.stream()
                .filter(phases -> !phases.batch().name().equals(name))
                .toList();
    }
}
