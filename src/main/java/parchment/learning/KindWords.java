package parchment.learning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.quantity.TemperatureUnit;
import parchment.stats.Robust;

/** Names kinds of roast by what differs most from the other batches, in plain words. */
final class KindWords {
    /** A middle that lies nearer to the others' than this many of their usual distances is not worth a name; common practice, no source. */
    private static final double LEAST = 0.8;
    /** A normal sample's standard deviation is this many of its median absolute deviations. */
    private static final double NORMAL = 1.4826;

    /** What may differ, and how it is said; times first, so that of two that differ as much the time is told. */
    private enum Look {
        DRYING(Features.dryingTime(), "slower to yellowing", "faster to yellowing"),
        BROWNING(Features.browningTime(), "slower to first crack", "faster to first crack"),
        DEVELOPMENT(Features.developmentTime(), "longer after first crack", "shorter after first crack"),
        DROP(Features.dropTime(), "later drop", "earlier drop"),
        DROP_TEMPERATURE(Features.dropTemperature(), "hotter drop", "cooler drop"),
        CHARGE(Features.chargeTemperature(), "hotter charge", "cooler charge"),
        MASS(Features.greenMass(), "larger batches", "smaller batches");

        private final Feature feature;
        private final String more;
        private final String less;

        Look(Feature feature, String more, String less) {
            this.feature = feature;
            this.more = more;
            this.less = less;
        }
    }

    private final double[][] values;
    private final TemperatureUnit reader;

    private KindWords(double[][] values, TemperatureUnit reader) {
        this.values = values;
        this.reader = reader;
    }

    /** Reads what may differ off the batches, readings as on today's probe. */
    static KindWords of(Logbook logbook, List<Batch> batches) {
        List<Feature> features =
                Arrays.stream(Look.values()).map(look -> look.feature).toList();
        BatchTable table = BatchTable.of(logbook, features).onTodaysProbe();
        List<String> names = table.batches().stream().map(Batch::name).toList();
        int[] at =
                batches.stream().mapToInt(batch -> names.indexOf(batch.name())).toArray();
        double[][] values = features.stream()
                .map(feature -> {
                    double[] all = table.values(feature);
                    return Arrays.stream(at).mapToDouble(i -> all[i]).toArray();
                })
                .toArray(double[][]::new);
        return new KindWords(values, logbook.readerUnit());
    }

    /** One difference: how many usual distances it is, and in words. */
    private record Told(double size, String name, String words) {}

    /** Returns a name of at most two parts, as in "slower to yellowing, later drop". */
    String name(BitSet kind) {
        List<Told> told = told(kind);
        return told.isEmpty()
                ? "another course, the same times"
                : String.join(", ", told.stream().limit(2).map(Told::name).toList());
    }

    /** Returns everything that differs enough, with numbers. */
    String words(BitSet kind) {
        List<Told> told = told(kind);
        return told.isEmpty()
                ? "none of the usual times and temperatures differs much"
                : String.join("; ", told.stream().map(Told::words).toList());
    }

    private List<Told> told(BitSet kind) {
        List<Told> told = new ArrayList<>();
        for (Look look : Look.values()) {
            double[] all = values[look.ordinal()];
            double[] own = IntStream.range(0, all.length)
                    .filter(kind::get)
                    .mapToDouble(i -> all[i])
                    .filter(Double::isFinite)
                    .toArray();
            double[] others = IntStream.range(0, all.length)
                    .filter(i -> !kind.get(i))
                    .mapToDouble(i -> all[i])
                    .filter(Double::isFinite)
                    .toArray();
            if (own.length < 3 || others.length < 3) {
                continue;
            }
            double off = Robust.median(own) - Robust.median(others);
            double usual =
                    NORMAL * Math.max(Robust.medianAbsoluteDeviation(own), Robust.medianAbsoluteDeviation(others));
            if (off != 0 && Math.abs(off) >= LEAST * usual) {
                told.add(new Told(
                        usual > 0 ? Math.abs(off) / usual : Double.POSITIVE_INFINITY,
                        off > 0 ? look.more : look.less,
                        (off > 0 ? look.more : look.less) + ", by "
                                + (look.feature.unit().equals(parchment.quantity.Unit.TEMPERATURE)
                                                ? parchment.quantity.Unit.TEMPERATURE_STEP
                                                : look.feature.unit())
                                        .formatStep(Math.abs(off), reader)));
            }
        }
        told.sort(Comparator.comparingDouble(Told::size).reversed());
        return told;
    }
}
