package parchment.learning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.linear.Robust;

/** Names kinds of roast by what differs most from the other batches, in plain words. */
final class KindWords {
    /** A middle that lies nearer to the others' than this many of their usual distances is not worth a name; common practice, no source. */
    private static final double LEAST = 0.8;
    /** Fewest batches of a kind, and of the others, that are compared in a number; common practice, no source. */
    private static final int FEWEST = 3;

    private static final int USUAL_PARTS = 2;
    /** Parts that a name may have beyond those where two would be the same. */
    private static final int MORE_PARTS = 2;

    private static final List<String> ORDINALS = List.of("first kind", "second kind", "third kind", "fourth kind");

    /** What may differ, and how it is said; times first, so that of two that differ as much the time is told. */
    private static final List<Look> LOOKS = List.of(
            new Look(Features.dryingTime(), "slower to yellowing", "faster to yellowing"),
            new Look(Features.browningTime(), "slower to first crack", "faster to first crack"),
            new Look(Features.developmentTime(), "longer after first crack", "shorter after first crack"),
            new Look(Features.dropTime(), "later drop", "earlier drop"),
            new Look(Features.dropTemperature(), "hotter drop", "cooler drop"),
            new Look(Features.chargeTemperature(), "hotter charge", "cooler charge"),
            new Look(Features.greenMass(), "larger batches", "smaller batches"));

    private record Look(Feature feature, String more, String less) {}

    /** The thirds of the way from where rates are read to the drop, each batch on its own way. */
    private static final List<String> THIRDS = List.of("in the first third", "in the middle third", "towards the drop");

    private final List<Column> columns;
    private final TemperatureUnit reader;

    /** Says where in a name a number stands. */
    enum Place {
        /** Times and temperatures, which a roaster sets: first. */
        FIRST,
        /** Rates of rise: where too few others differ. */
        AFTER
    }

    /**
     * Holds one number of each batch.
     *
     * @param what its name
     * @param more how it is said where the kind has more of it
     * @param values one per batch, NaN where missing or not comparable
     * @param asRead the same before readings were told as today's probe would read them
     */
    record Column(String what, String more, String less, Unit unit, Place place, double[] values, double[] asRead) {}

    KindWords(List<Column> columns, TemperatureUnit reader) {
        this.columns = List.copyOf(columns);
        this.reader = reader;
    }

    /** Reads what may differ off the batches, readings as on today's probe, and off their rates of rise. */
    static KindWords of(Logbook logbook, List<Batch> batches, List<double[]> rates) {
        List<Feature> features = LOOKS.stream().map(Look::feature).toList();
        BatchTable asRead = BatchTable.of(logbook, features);
        BatchTable today = asRead.onTodaysProbe();
        List<String> names = asRead.batches().stream().map(Batch::name).toList();
        int[] at =
                batches.stream().mapToInt(batch -> names.indexOf(batch.name())).toArray();
        List<Column> columns = new ArrayList<>();
        for (Look look : LOOKS) {
            Unit unit = look.feature().unit();
            columns.add(new Column(
                    look.feature().name(),
                    look.more(),
                    look.less(),
                    unit.equals(Unit.TEMPERATURE) ? Unit.TEMPERATURE_STEP : unit,
                    Place.FIRST,
                    picked(today.values(look.feature()), at),
                    picked(asRead.values(look.feature()), at)));
        }
        for (int third = 0; third < THIRDS.size(); third++) {
            int number = third;
            double[] means =
                    rates.stream().mapToDouble(one -> mean(one, number)).toArray();
            columns.add(new Column(
                    "rate of rise " + THIRDS.get(third),
                    "faster " + THIRDS.get(third),
                    "slower " + THIRDS.get(third),
                    Unit.RATE_OF_RISE,
                    Place.AFTER,
                    means,
                    means));
        }
        return new KindWords(columns, logbook.readerUnit());
    }

    private static double[] picked(double[] all, int[] at) {
        return Arrays.stream(at).mapToDouble(i -> all[i]).toArray();
    }

    private static double mean(double[] rates, int third) {
        return Arrays.stream(rates, rates.length * third / 3, rates.length * (third + 1) / 3)
                .average()
                .orElse(Double.NaN);
    }

    /** One difference: how many usual distances it is, and in words. */
    private record Told(double size, Place place, String name, String words) {}

    /**
     * Returns a name for each kind, as in "slower to yellowing, later drop": up to two times and temperatures, or the third of the way in which
     * the rates differ most; more where two names would be the same, and a mere number where they still are.
     */
    List<String> names(List<BitSet> kinds) {
        List<List<Told>> told = kinds.stream().map(this::told).toList();
        List<String> out = new ArrayList<>();
        for (int k = 0; k < kinds.size(); k++) {
            int own = k;
            out.add(IntStream.rangeClosed(0, MORE_PARTS)
                    .filter(more -> told.stream()
                                    .map(other -> name(other, more))
                                    .filter(name(told.get(own), more)::equals)
                                    .count()
                            == 1)
                    .mapToObj(more -> name(told.get(own), more))
                    .filter(name -> !name.isEmpty())
                    .findFirst()
                    .orElse(ORDINALS.get(k)));
        }
        // Names of unlike length may still meet.
        return new HashSet<>(out).size() == out.size() ? out : ORDINALS.subList(0, kinds.size());
    }

    private static String name(List<Told> told, int more) {
        int first =
                (int) told.stream().filter(one -> one.place() == Place.FIRST).count();
        return told.stream()
                .limit(Math.max(1, Math.min(first, USUAL_PARTS)) + more)
                .map(Told::name)
                .collect(Collectors.joining(", "));
    }

    /** Returns everything that differs enough, with numbers. */
    String words(BitSet kind) {
        List<Told> told = told(kind);
        return told.isEmpty()
                ? "nothing that was compared differs much"
                : String.join("; ", told.stream().map(Told::words).toList());
    }

    /** Returns what could not be compared for some kind, and why. */
    Optional<String> notCompared(List<BitSet> kinds) {
        String probes = names(kinds, column -> known(column.asRead(), kinds) && !known(column.values(), kinds));
        String few = names(kinds, column -> !known(column.asRead(), kinds));
        String both = Stream.of(
                        probes.isEmpty()
                                ? ""
                                : probes + " (the probe changed, and what today's would have read is not known)",
                        few.isEmpty() ? "" : few + " (known of too few batches)")
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining("; "));
        return both.isEmpty() ? Optional.empty() : Optional.of("Not compared: " + both + ".");
    }

    private String names(List<BitSet> kinds, Predicate<Column> wanted) {
        return kinds.isEmpty()
                ? ""
                : columns.stream().filter(wanted).map(Column::what).collect(Collectors.joining(", "));
    }

    private static boolean known(double[] values, List<BitSet> kinds) {
        return kinds.stream()
                .allMatch(kind -> finite(values, kind).length >= FEWEST
                        && finite(values, others(kind, values.length)).length >= FEWEST);
    }

    private static BitSet others(BitSet kind, int size) {
        BitSet others = (BitSet) kind.clone();
        others.flip(0, size);
        return others;
    }

    private static double[] finite(double[] values, BitSet kind) {
        return IntStream.range(0, values.length)
                .filter(kind::get)
                .mapToDouble(i -> values[i])
                .filter(Double::isFinite)
                .toArray();
    }

    /** What differs enough: times and temperatures first, then rates; each the most first. */
    private List<Told> told(BitSet kind) {
        List<Told> told = new ArrayList<>();
        for (Column column : columns) {
            double[] own = finite(column.values(), kind);
            double[] others = finite(column.values(), others(kind, column.values().length));
            if (own.length < FEWEST || others.length < FEWEST) {
                continue;
            }
            double off = Robust.median(own) - Robust.median(others);
            double usual = Math.max(Robust.medianAbsoluteDeviation(own), Robust.medianAbsoluteDeviation(others));
            if (off != 0 && Math.abs(off) >= LEAST * usual) {
                String name = off > 0 ? column.more() : column.less();
                told.add(new Told(
                        usual > 0 ? Math.abs(off) / usual : Double.POSITIVE_INFINITY,
                        column.place(),
                        name,
                        name + ", by " + column.unit().formatStep(Math.abs(off), reader)));
            }
        }
        told.sort(Comparator.comparing(Told::place)
                .thenComparing(Comparator.comparingDouble(Told::size).reversed()));
        return told;
    }
}
