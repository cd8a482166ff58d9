package parchment.drift;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.TDistribution;
import parchment.feature.Feature;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.sheet.Words;
import parchment.stats.Estimate;
import parchment.stats.linear.Vectors;
import parchment.stats.series.DayRegression;
import parchment.stats.series.WanderingDays;

/**
 * Gathers the batches of a watch in order of time, finds the stretch that limits are set from, and says what batches are compared at
 * like: lot and machine where there are several, green mass, and the drop that was meant.
 *
 * <p>What did not vary in the stretch cannot be taken into account later: a batch of another lot, mass or aim than any of the stretch is
 * left out and counted.
 */
final class WatchRows {
    /** Lengths of the stretch, the longest first, and how many batches there must be for each; common practice, no source. */
    private static final int[][] STRETCHES = {{60, 150}, {40, 100}, {20, 20}, {15, 15}, {10, 10}};

    /** Batches of the stretch for each number estimated from it, its spread aside; common practice, no source. */
    static final int ROWS_FOR_EACH = 5;
    /** How rarely a quiet stretch is passed over for one batch far off. */
    private static final double FAR_OFF = 0.01;

    private final List<Batch> batches;
    private final double[] values;
    private final List<double[]> columns;
    private final Set<String> like;
    private final Set<String> unlike;
    private final int stretch;
    private final int notMeasured;
    private final int earlierProbe;
    private final int before;
    private final int notComparable;
    private final int tooMany;

    private WatchRows(WatchedBatches all, WatchWindow window, int tooMany) {
        this.batches = List.copyOf(window.batches);
        this.values = window.batches.stream().mapToDouble(all::value).toArray();
        this.columns = window.columns;
        this.like = window.like;
        this.unlike = window.unlike;
        this.stretch = window.stretch;
        this.notMeasured = all.notMeasured;
        this.earlierProbe = all.earlierProbe;
        this.before = window.before;
        this.notComparable = all.batches.size() - window.before - window.batches.size();
        this.tooMany = tooMany;
    }

    /** Gathers the rows and chooses the stretch: the earliest in which no single batch lies far off the others. */
    static WatchRows of(Logbook logbook, Feature feature) {
        WatchedBatches rows = new WatchedBatches(logbook, feature);
        int stretch = Arrays.stream(STRETCHES)
                .filter(s -> rows.batches.size() >= s[1])
                .mapToInt(s -> s[0])
                .findFirst()
                .orElse(0);
        int most = Math.max(1, stretch / ROWS_FOR_EACH);
        int tooMany = 0;
        Optional<WatchWindow> fallback = Optional.empty();
        for (int from = 0; stretch > 0 && from + stretch <= rows.batches.size(); from++) {
            int groups = groups(rows.batches.subList(from, from + stretch));
            if (groups > most) {
                tooMany = Math.max(tooMany, groups);
                continue;
            }
            WatchWindow window = new WatchWindow(rows, from, stretch, feature);
            if (quiet(rows, window)) {
                return new WatchRows(rows, window, 0);
            }
            fallback = fallback.or(() -> Optional.of(window)).filter(w -> varies(rows, w));
        }
        int found = tooMany;
        return fallback.map(window -> new WatchRows(rows, window, 0))
                .orElseGet(() -> new WatchRows(rows, new WatchWindow(rows), found));
    }

    private static int groups(List<Batch> own) {
        long lots = own.stream().map(Batch::lot).distinct().count();
        long machines = own.stream().map(Batch::machine).distinct().count();
        return (int) (lots + machines - 1);
    }

    private static double[] rest(WatchedBatches rows, WatchWindow window) {
        DayRegression.Projection like = new DayRegression.Projection();
        window.columns.forEach(c -> like.add(Arrays.copyOf(c, window.stretch)));
        return like.rest(window.batches.stream()
                .limit(window.stretch)
                .mapToDouble(rows::value)
                .toArray());
    }

    private static boolean varies(WatchedBatches rows, WatchWindow window) {
        double[] rest = rest(rows, window);
        return Vectors.dot(rest, rest) > 1e-18;
    }

    /** Tells whether no batch of the stretch lies far off, held against the spread of the others (Student's t, Bonferroni's share). */
    private static boolean quiet(WatchedBatches rows, WatchWindow window) {
        double[] rest = rest(rows, window);
        double squares = Vectors.dot(rest, rest);
        int degrees = window.stretch - window.columns.size() - 1;
        double limit = new TDistribution(degrees).inverseCumulativeProbability(1 - FAR_OFF / (2 * window.stretch));
        return squares > 1e-18
                && Arrays.stream(rest)
                        .map(r -> Math.abs(r) / Math.sqrt(Math.max(1e-300, squares - r * r) / degrees))
                        .allMatch(t -> t <= limit);
    }

    List<Batch> batches() {
        return batches;
    }

    int stretch() {
        return stretch;
    }

    double[] values() {
        return values.clone();
    }

    /** Sets the limits from the stretch. */
    EstimatedLimits limits(WatchDesigns designs) {
        List<LocalDate> days =
                batches.stream().map(b -> b.roastDay().orElseThrow()).toList();
        List<LocalDate> dates = List.copyOf(new TreeSet<>(days));
        return EstimatedLimits.of(
                values,
                columns,
                new RowsInTime(
                        days.stream().mapToInt(dates::indexOf).toArray(),
                        dates.stream().mapToDouble(LocalDate::toEpochDay).toArray(),
                        stretch),
                designs);
    }

    /**
     * Returns by how much the batches from one on lie off those of the stretch, at like beans and with days that wander.
     *
     * @param from number of the first such batch after the stretch, from 0
     */
    Estimate step(String name, int from) {
        int[] kept = IntStream.range(0, values.length)
                .filter(row -> row < stretch || row >= stretch + from)
                .toArray();
        List<LocalDate> days = Arrays.stream(kept)
                .mapToObj(row -> batches.get(row).roastDay().orElseThrow())
                .toList();
        List<LocalDate> dates = List.copyOf(new TreeSet<>(days));
        List<double[]> beside = new ArrayList<>();
        for (double[] column : columns) {
            beside.add(Arrays.stream(kept).mapToDouble(row -> column[row]).toArray());
        }
        beside.add(Arrays.stream(kept).mapToDouble(row -> row < stretch ? 0 : 1).toArray());
        return DayRegression.fit(
                        new WanderingDays(
                                days.stream().mapToInt(dates::indexOf).toArray(),
                                dates.stream()
                                        .mapToDouble(LocalDate::toEpochDay)
                                        .toArray()),
                        Arrays.stream(kept).mapToDouble(row -> values[row]).toArray(),
                        beside,
                        DayRegression.By.RESTRICTED)
                .term(name, beside.size() - 1);
    }

    /** Says what batches are compared at like, and what not. */
    String likeWords() {
        String with =
                like.isEmpty() ? "Batches are compared as they are" : "Compared at like " + String.join(", ", like);
        return with
                + (unlike.isEmpty()
                        ? "."
                        : "; " + String.join(", ", unlike)
                                + (unlike.size() == 1 ? " is" : " are")
                                + " not taken into account (the stretch is too short for it, it moved with the others, or it is not"
                                + " written everywhere).");
    }

    /** Says what was left out. */
    String leftOutWords() {
        List<String> words = new ArrayList<>();
        count(words, notMeasured, "without this feature or a date");
        count(words, earlierProbe, "read before its machine's probe last changed, as written or found");
        count(words, before, "before the stretch, in which one lies far off");
        count(words, notComparable, "of a lot, mass or aim that the stretch does not hold");
        return Words.count(batches.size(), "batch", "batches") + " watched, "
                + (words.isEmpty() ? "none left out" : "left out: " + String.join(", ", words)) + ".";
    }

    private static void count(List<String> words, int number, String reason) {
        if (number > 0) {
            words.add(number + " " + reason);
        }
    }

    /** Says why there are no limits. */
    String whyNone() {
        return tooMany > 0
                ? "the batches are of " + tooMany + " lots and machines; watch one lot, as in logbook.ofLot(...)"
                : batches.size() < 10
                        ? (batches.size() == 1 ? "there is 1 batch" : "there are " + batches.size() + " batches")
                                + ", and 10 are needed"
                        : "the batches do not differ";
    }
}
