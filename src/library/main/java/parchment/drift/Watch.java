package parchment.drift;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.display.answer.ShownAs;
import parchment.feature.Feature;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.stats.series.Signal.Side;

/**
 * Watches one feature of one lot: single batches, their weighted mean and their cumulated sum, against limits from a stretch of the lot's
 * own past.
 *
 * <pre>{@code
 * Watch.of(logbook.ofLot(logbook.lastWithCurve().lot().orElseThrow()), browningTime())
 * }</pre>
 *
 * <p>The stretch is the earliest 20 batches in a row (40 once there are 100, 60 once there are 150; 15 or 10 where there are fewer than
 * 20) in which no single batch lies far off the others. Batches are compared at like lot, machine, green mass and planned drop
 * temperature, as far as these are written and varied in the stretch. Readings of the bean probe and what hangs on
 * it are watched within the latest of its periods ({@link parchment.period.ProbePeriods}, written or found): the error of an offset would look like a shift.
 *
 * <p>The limits carry the error of all that the stretch is asked for: level, slopes, spread, and how far neighbouring batches resemble each
 * other. In ten batches after the stretch one chart in a hundred shows a shift although nothing changed, and one in a hundred a single
 * batch outside; what that makes of a chart of this length is said. How well it holds: {@code docs/measurements/drift.md}.
 *
 * @see <a href="https://www.itl.nist.gov/div898/handbook/pmc/section3/pmc3.htm">NIST/SEMATECH e-Handbook 6.3.2 (the charts)</a>
 */
public final class Watch implements ShownAs {
    /** Correlation of neighbours in the stretch beyond this many of its standard errors is spoken of. */
    private static final double CLEAR = 2;

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
    public record Signal(Batch batch, Kind kind, Side side) {}

    private final Logbook logbook;
    private final Feature feature;
    private final WatchRows rows;
    private final Optional<EstimatedLimits> limits;

    private Watch(Logbook logbook, Feature feature, WatchRows rows, WatchDesigns designs) {
        this.logbook = logbook;
        this.feature = feature;
        this.rows = rows;
        this.limits = rows.stretch() == 0 ? Optional.empty() : Optional.of(rows.limits(designs));
    }

    /**
     * Watches a feature over the batches of a logbook, usually those of one lot.
     *
     * @param logbook the batches, as in {@code logbook.ofLot("Cinder Ridge")}
     */
    public static Watch of(Logbook logbook, Feature feature) {
        return of(logbook, feature, new WatchDesigns());
    }

    /** Watches a feature with a design that was drawn for another one in the same batches, if it was. */
    static Watch of(Logbook logbook, Feature feature, WatchDesigns designs) {
        return new Watch(logbook, feature, WatchRows.of(logbook, feature), designs);
    }

    /** Tells whether there is a stretch to set limits from. */
    public boolean hasLimits() {
        return limits.isPresent();
    }

    /** Returns the batches of the stretch and those watched after it, in order of time. */
    public List<Batch> batches() {
        return rows.batches();
    }

    /** Returns the batches of the stretch that limits are set from. */
    public List<Batch> stable() {
        return rows.batches().subList(0, rows.stretch());
    }

    /** Returns the batches watched: those after the stretch. */
    public List<Batch> watched() {
        return rows.batches().subList(rows.stretch(), rows.batches().size());
    }

    /** Returns the answer in three sentences: whether it moved, how sure that is, what to do next. */
    public InShort inShort() {
        return WatchInShort.of(this);
    }

    /** Returns the share of charts of this length that show a shift although nothing changed; NaN without limits. */
    public double falseShifts() {
        return limits.map(EstimatedLimits::falseShifts).orElse(Double.NaN);
    }

    /** Returns every signal after the stretch, in order of time. */
    public List<Signal> signals() {
        return limits.map(of -> WatchSignals.of(of, watched())).orElse(List.of());
    }

    /** Returns the signals of the weighted mean and of the sums, in order of time: what single batches need takes long to work out. */
    List<Signal> shifts() {
        return limits.map(of -> WatchSignals.shifts(of, watched())).orElse(List.of());
    }

    /**
     * Tells whether the latest batches lie to the side of a signal: a sum keeps what lay above long after the batches fell.
     */
    boolean stillThere(Signal signal) {
        double[] means = limits.map(EstimatedLimits::weightedMean).orElse(new double[0]);
        int last = means.length - 1;
        return last >= 0 && (signal.side() == Side.ABOVE ? means[last] > 0 : means[last] < 0);
    }

    /** Returns the correlation of neighbouring batches in the stretch; NaN without limits. */
    public double neighbourCorrelation() {
        return limits.map(of -> {
                    double[] own = of.deviations();
                    double products = 0;
                    double squares = 0;
                    for (int i = 0; i < rows.stretch(); i++) {
                        squares += own[i] * own[i];
                        products += i > 0 ? own[i] * own[i - 1] : 0;
                    }
                    return products / squares;
                })
                .orElse(Double.NaN);
    }

    /** Says whether neighbouring batches of the stretch resemble each other, and what the limits make of it. */
    String neighbourWords() {
        double correlation = neighbourCorrelation();
        double clear = CLEAR / Math.sqrt(rows.stretch());
        if (correlation > clear) {
            return String.format(
                    Locale.ROOT,
                    "Neighbouring batches of the stretch resemble each other (correlation %.2f); the limits are wider for it.",
                    correlation);
        }
        if (correlation < -clear) {
            return String.format(
                    Locale.ROOT,
                    "Neighbouring batches of the stretch alternate (correlation %.2f); the limits do not reckon with that: shifts"
                            + " show by chance less often than stated and, from few batches, single ones more often.",
                    correlation);
        }
        return "Neighbouring batches of the stretch do not clearly resemble each other; the limits still allow for it, as far as so few"
                + " batches leave it open.";
    }

    /** Says how often such a chart signals although nothing changed, and which shifts it sees. */
    String rateWords() {
        if (watched().isEmpty() || limits.isEmpty()) {
            return "No batch has been roasted after the stretch yet.";
        }
        EstimatedLimits of = limits.get();
        int soon = Math.min(2 * Charted.BLOCK, watched().size());
        return String.format(
                Locale.ROOT,
                "If nothing changes, one chart in %s of this length (%s after the stretch) shows a shift, and one in %s a single"
                        + " batch outside. A shift of one standard deviation (about %s) right after the stretch shows within %s in"
                        + " %.0f of 100 charts. %s",
                oneIn(of.falseShifts()),
                batches(watched().size()),
                oneIn(of.falseSingles()),
                step(of.spread()),
                batches(soon),
                100 * of.shiftSeenSoon(),
                leastWords(of, soon));
    }

    /** Says which shifts are too small for a chart like this one. */
    private String leastWords(EstimatedLimits of, int soon) {
        double least = of.leastSeen();
        return Double.isFinite(least)
                ? String.format(
                        Locale.ROOT,
                        "From %d batches only a shift of more than about %s (%.1f standard deviations) is seen so soon in 8 of 10"
                                + " charts.",
                        rows.stretch(),
                        step(least * of.spread()),
                        least)
                : String.format(
                        Locale.ROOT,
                        "From %d batches not even a shift of %s (%.0f standard deviations) is seen within %s in 8 of 10 charts.",
                        rows.stretch(),
                        step(WatchDesign.LARGEST * of.spread()),
                        WatchDesign.LARGEST,
                        batches(soon));
    }

    private String step(double size) {
        return feature.unit().formatStep(size, logbook.readerUnit());
    }

    private static String batches(int number) {
        return number + (number == 1 ? " batch" : " batches");
    }

    private static String oneIn(double share) {
        return String.format(Locale.ROOT, "%.0f", 1 / share);
    }

    Feature feature() {
        return feature;
    }

    WatchRows rows() {
        return rows;
    }

    Optional<EstimatedLimits> limits() {
        return limits;
    }

    Logbook logbook() {
        return logbook;
    }

    /** Says what is watched: the lot if there is one only. */
    String of() {
        TreeSet<String> lots = new TreeSet<>();
        batches().forEach(b -> lots.add(b.lot().map(l -> "lot " + l).orElse("batches without a lot")));
        return lots.size() == 1 ? lots.first() : lots.size() + " lots together";
    }

    @Override
    public Showable shownAs() {
        return WatchPicture.of(this);
    }

    @Override
    public String toString() {
        if (!hasLimits()) {
            return "Cannot set limits for " + feature.name() + ": " + rows.whyNone();
        }
        List<Signal> signals = signals();
        long single =
                signals.stream().filter(a -> a.kind() == Kind.SINGLE_BATCH).count();
        Optional<Signal> shift =
                signals.stream().filter(a -> a.kind() != Kind.SINGLE_BATCH).findFirst();
        return String.format(
                Locale.ROOT,
                "%s of %s: %d of %d single batches outside of the limits; %s",
                feature.name(),
                of(),
                single,
                watched().size(),
                shift.map(a -> "a shift " + (a.side() == Side.ABOVE ? "up" : "down") + " shows since batch "
                                + a.batch().name() + " (" + a.batch().roastDay().orElseThrow() + ", "
                                + a.kind().words() + ")")
                        .orElse("no shift that stays"));
    }
}
