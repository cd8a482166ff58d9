package parchment.card;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import parchment.display.Table;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.logbook.Lot;

/** Finds the lots that are written down as most like one: of the same process and origin, else of the same process, else of the same origin. */
final class NearLots {
    private static final int SHOWN = 2;

    private final List<Near> near;
    private final Logbook logbook;

    /** What two lots have in common, as far as is written. */
    private enum Alike {
        PROCESS_AND_ORIGIN("process and origin"),
        PROCESS("process"),
        ORIGIN("origin");

        private final String words;

        Alike(String words) {
            this.words = words;
        }
    }

    private record Near(Alike alike, GoodBatches good) {}

    private record Row(String what, Function<Near, String> cell) {}

    private NearLots(List<Near> near, Logbook logbook) {
        this.near = near;
        this.logbook = logbook;
    }

    static NearLots of(String lot, Logbook logbook) {
        Optional<Lot> own =
                logbook.lots().stream().filter(l -> l.name().equals(lot)).findFirst();
        List<Near> near = own.stream()
                .flatMap(asked -> logbook.lots().stream()
                        .filter(other -> !other.name().equals(lot))
                        .flatMap(other -> alike(asked, other).stream()
                                .map(alike -> new Near(alike, GoodBatches.of(other.name(), logbook)))))
                .filter(one -> one.good().batches().size() >= ScoredLot.ENOUGH)
                .sorted(Comparator.comparing(Near::alike)
                        .thenComparing(one -> one.good().held(), Comparator.reverseOrder())
                        .thenComparing(one -> one.good().lot()))
                .limit(SHOWN)
                .toList();
        return new NearLots(near, logbook);
    }

    private static Optional<Alike> alike(Lot a, Lot b) {
        boolean process = same(a.process(), b.process());
        boolean origin = same(a.origin(), b.origin());
        return process && origin
                ? Optional.of(Alike.PROCESS_AND_ORIGIN)
                : process ? Optional.of(Alike.PROCESS) : origin ? Optional.of(Alike.ORIGIN) : Optional.empty();
    }

    private static boolean same(Optional<String> a, Optional<String> b) {
        return a.isPresent()
                && b.isPresent()
                && a.get().strip().equalsIgnoreCase(b.get().strip());
    }

    boolean isEmpty() {
        return near.isEmpty();
    }

    /** Says what the lots are, or why there are none. */
    String words(String lot) {
        return near.isEmpty()
                ? "No other lot with " + ScoredLot.ENOUGH
                        + " batches or more is written down with the process or the origin of " + lot
                        + ", so no other lot can be a guide."
                : "Other beans, so a weaker guide: the last good batches of the lots that are written down as most like "
                        + lot + ".";
    }

    /** Lays the lots side by side. */
    Table table() {
        List<Row> rows = List.of(
                new Row("the same", one -> one.alike().words),
                new Row("batches", one -> Integer.toString(one.good().batches().size())),
                new Row("went well by", one -> GroundWords.shortly(one.good())),
                in("charge temperature", Features.chargeTemperature()),
                in("first crack time", Features.firstCrackTime()),
                in("drop time", Features.dropTime()),
                in("drop temperature", Features.dropTemperature()));
        Table table = Table.titled("Lots most like it, as far as is written").withText("", rows, Row::what);
        for (Near one : near) {
            table = table.withText(one.good().lot(), rows, row -> row.cell().apply(one));
        }
        return table.withDashForMissing("not written or not measured")
                .withNote("The middle of those batches with their range, on today's probe.");
    }

    private Row in(String what, Feature feature) {
        return new Row(what, one -> SideBySide.of(one.good().batches(), logbook).words(feature));
    }
}
