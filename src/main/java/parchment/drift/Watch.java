package parchment.drift;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import parchment.display.Showable;
import parchment.display.ShownAs;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.period.ProbeChange;
import parchment.period.ProbePeriods;
import parchment.stats.process.CusumChart;
import parchment.stats.process.EwmaChart;
import parchment.stats.process.IndividualsChart;
import parchment.stats.process.Signal;

/**
 * Watches one feature of one lot: single batches, their weighted mean and their cumulated sum, against limits from a stable stretch of
 * the lot's own past.
 *
 * <pre>{@code
 * Watch.of(logbook.ofLot(logbook.lastWithCurve().lot().orElseThrow()), browningTime())
 * }</pre>
 *
 * <p>The stable stretch is the earliest 20 batches in a row (15 or 10 if there is none) in which neither a single batch nor the weighted
 * mean leaves the limits that these batches set themselves. For temperatures of the bean probe only the batches since the last written
 * work on a probe are watched. How often such limits cry wolf, and how soon they see a shift of one standard deviation, is stated.
 *
 * @see <a href="https://www.itl.nist.gov/div898/handbook/pmc/section3/pmc3.htm">NIST/SEMATECH e-Handbook 6.3.2</a>
 */
public final class Watch implements ShownAs {
    private static final int[] STRETCHES = {20, 15, 10};

    /** Which chart gave a signal. */
    public enum Kind {
        /** One batch lies outside. */
        SINGLE_BATCH("single batch"),
        /** The weighted mean of the latest batches lies outside. */
        WEIGHTED_MEAN("weighted mean"),
        /** The cumulated sum lies outside: a small shift that stays. */
        CUMULATED_SUM("cumulated sum");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** Returns the kind in words. */
        public String words() {
            return words;
        }
    }

    /**
     * Holds one signal.
     *
     * @param batch the batch at which the chart left its limits
     * @param kind which chart
     * @param side to which side
     */
    public record Alarm(Batch batch, Kind kind, Signal.Side side) {}

    private final Logbook logbook;
    private final Feature feature;
    private final List<Batch> batches;
    private final double[] values;
    private final int from;
    private final int length;
    private final int leftOut;
    private final Optional<LocalDate> since;

    private Watch(
            Logbook logbook,
            Feature feature,
            List<Batch> batches,
            double[] values,
            int from,
            int length,
            int leftOut,
            Optional<LocalDate> since) {
        this.logbook = logbook;
        this.feature = feature;
        this.batches = List.copyOf(batches);
        this.values = values;
        this.from = from;
        this.length = length;
        this.leftOut = leftOut;
        this.since = since;
    }

    /**
     * Watches a feature over the batches of a logbook, usually those of one lot.
     *
     * @param logbook the batches, as in {@code logbook.ofLot("Cinder Ridge")}
     */
    public static Watch of(Logbook logbook, Feature feature) {
        BatchTable table = BatchTable.of(logbook, feature);
        double[] all = table.values(feature);
        ProbePeriods periods = ProbePeriods.of(logbook);
        Optional<LocalDate> since = feature.readsBeanProbe()
                ? table.batches().stream()
                        .flatMap(batch -> periods.changes(batch).stream())
                        .map(ProbeChange::on)
                        .filter(day -> table.batches().stream()
                                .flatMap(batch -> batch.roastDay().stream())
                                .anyMatch(roasted -> !roasted.isBefore(day)))
                        .max(Comparator.naturalOrder())
                : Optional.empty();
        List<Integer> rows = new ArrayList<>();
        for (int i = 0; i < all.length; i++) {
            Batch batch = table.batches().get(i);
            if (Double.isFinite(all[i])
                    && batch.roastedAt().isPresent()
                    && since.map(day -> !batch.roastDay().orElseThrow().isBefore(day))
                            .orElse(true)) {
                rows.add(i);
            }
        }
        rows.sort(
                Comparator.comparing(row -> table.batches().get(row).roastedAt().orElseThrow()));
        double[] values = rows.stream().mapToDouble(row -> all[row]).toArray();
        int[] stretch = stable(values);
        return new Watch(
                logbook,
                feature,
                rows.stream().map(table.batches()::get).toList(),
                values,
                stretch[0],
                stretch[1],
                all.length - values.length,
                since);
    }

    private static int[] stable(double[] values) {
        for (int length : STRETCHES) {
            for (int from = 0; from + length <= values.length; from++) {
                double[] stretch = Arrays.copyOfRange(values, from, from + length);
                IndividualsChart chart = IndividualsChart.of(stretch);
                if (chart.standardDeviation() > 0
                        && chart.signals().isEmpty()
                        && EwmaChart.of(stretch, chart.center(), chart.standardDeviation())
                                .signals()
                                .isEmpty()) {
                    return new int[] {from, length};
                }
            }
        }
        return new int[] {0, 0};
    }

    /** Tells whether there is a stable stretch to set limits from. */
    public boolean hasLimits() {
        return length > 0;
    }

    /** Returns the batches watched, in order of time. */
    public List<Batch> batches() {
        return batches;
    }

    /** Returns the batches of the stable stretch. */
    public List<Batch> stable() {
        return batches.subList(from, from + length);
    }

    /** Returns the chart of single batches; empty without limits. */
    public Optional<IndividualsChart> single() {
        return hasLimits()
                ? Optional.of(IndividualsChart.of(Arrays.copyOfRange(values, from, from + length))
                        .watching(values.clone()))
                : Optional.empty();
    }

    /** Returns the chart of the weighted mean; empty without limits. */
    public Optional<EwmaChart> weightedMean() {
        return single().map(s -> EwmaChart.of(values.clone(), s.center(), s.standardDeviation()));
    }

    /** Returns the chart of the cumulated sum; empty without limits. */
    public Optional<CusumChart> cumulatedSum() {
        return single().map(s -> CusumChart.of(values.clone(), s.center(), s.standardDeviation()));
    }

    /** Returns every signal, in order of time. */
    public List<Alarm> alarms() {
        List<Alarm> alarms = new ArrayList<>();
        single().ifPresent(chart -> add(alarms, chart.signals(), Kind.SINGLE_BATCH));
        weightedMean().ifPresent(chart -> add(alarms, chart.signals(), Kind.WEIGHTED_MEAN));
        cumulatedSum().ifPresent(chart -> add(alarms, chart.signals(), Kind.CUMULATED_SUM));
        alarms.sort(Comparator.comparing(a -> a.batch().roastedAt().orElseThrow()));
        return alarms;
    }

    private void add(List<Alarm> alarms, List<Signal> signals, Kind kind) {
        signals.forEach(s -> alarms.add(new Alarm(batches.get(s.position() - 1), kind, s.side())));
    }

    /** Returns the correlation of neighbouring batches in the stable stretch; NaN without limits. */
    public double neighbourCorrelation() {
        double mean = Arrays.stream(values, from, from + length).average().orElse(Double.NaN);
        double products = 0;
        double squares = 0;
        for (int i = from; i < from + length; i++) {
            squares += (values[i] - mean) * (values[i] - mean);
            products += i > from ? (values[i] - mean) * (values[i - 1] - mean) : 0;
        }
        return products / squares;
    }

    Feature feature() {
        return feature;
    }

    double[] values() {
        return values.clone();
    }

    Logbook logbook() {
        return logbook;
    }

    /** Says what is watched: the lot if there is one only. */
    String of() {
        TreeSet<String> lots = new TreeSet<>();
        batches.forEach(b -> lots.add(b.lot().map(l -> "lot " + l).orElse("batches without a lot")));
        return lots.size() == 1 ? lots.first() : lots.size() + " lots together";
    }

    String leftOutWords() {
        return batches.size() + " batches watched, " + leftOut + " left out (no such feature"
                + since.map(day -> ", no date, or roasted before the work on the probe of " + day)
                        .orElse(" or no date")
                + ").";
    }

    @Override
    public Showable shownAs() {
        return WatchPicture.of(this);
    }

    @Override
    public String toString() {
        if (!hasLimits()) {
            return "Cannot set limits for " + feature.name() + ": of " + batches.size()
                    + " batches no 10 in a row are stable";
        }
        List<Alarm> alarms = alarms();
        long single = alarms.stream().filter(a -> a.kind() == Kind.SINGLE_BATCH).count();
        Optional<Alarm> shift = alarms.stream()
                .filter(a -> a.kind() != Kind.SINGLE_BATCH && batches.indexOf(a.batch()) >= from + length)
                .findFirst();
        return String.format(
                Locale.ROOT,
                "%s of %s: %d of %d single batches outside of the limits; %s",
                feature.name(),
                of(),
                single,
                batches.size(),
                shift.map(a -> "a shift shows since batch " + a.batch().name() + " ("
                                + a.batch().roastDay().orElseThrow() + ", "
                                + a.kind().words() + ")")
                        .orElse("no shift that stays"));
    }
}
