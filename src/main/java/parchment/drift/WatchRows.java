package parchment.drift;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import org.hipparchus.distribution.continuous.TDistribution;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.period.ProbePeriods;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;
import parchment.stats.series.DayRegression;

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
    private static final int ROWS_FOR_EACH = 5;
    /** Share of batches in which something must be written to be taken into account. */
    private static final double KNOWN = 0.85;
    /** What counts as the same mass (share of it) and the same aim (°C); common practice, no source. */
    private static final double SAME_MASS = 0.05;

    private static final double SAME_AIM = 1;
    /** How rarely a quiet stretch is passed over for one batch far off. */
    private static final double FAR_OFF = 0.01;
    /** Share of a column's squared length that must be its own. */
    private static final double OWN_SHARE = 0.1;

    /** Something that batches are compared at like. */
    private record Like(String words, ToDoubleFunction<Batch> value, double same) {
        double of(Batch batch) {
            return value.applyAsDouble(batch);
        }
    }

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

    private WatchRows(Rows all, Window window, int tooMany) {
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

    /** The measured and dated batches, in order of time. */
    private static final class Rows {
        private final BatchTable table;
        private final double[] all;
        private final List<Batch> batches;
        private final int notMeasured;
        private final int earlierProbe;

        Rows(Logbook logbook, Feature feature) {
            this.table = BatchTable.of(logbook, feature);
            this.all = table.values(feature);
            List<Batch> measured = new ArrayList<>();
            for (int i = 0; i < all.length; i++) {
                Batch batch = table.batches().get(i);
                if (Double.isFinite(all[i]) && batch.roastedAt().isPresent()) {
                    measured.add(batch);
                }
            }
            measured.sort(Comparator.comparing(
                            (Batch b) -> b.roastedAt().orElseThrow().toInstant())
                    .thenComparing(Batch::name));
            this.notMeasured = all.length - measured.size();
            Predicate<Batch> now =
                    feature.readsBeanProbe() ? onTheLatestProbe(measured, ProbePeriods.of(logbook)) : b -> true;
            this.batches = measured.stream().filter(now).toList();
            this.earlierProbe = measured.size() - batches.size();
        }

        double value(Batch batch) {
            return all[table.batches().indexOf(batch)];
        }

        /** Keeps what the probe of the batch's own machine read in the latest of its periods that holds such a batch. */
        private static Predicate<Batch> onTheLatestProbe(List<Batch> measured, ProbePeriods periods) {
            Map<Optional<String>, Integer> latest = new HashMap<>();
            measured.forEach(
                    batch -> latest.merge(batch.machine(), periods.number(batch).orElse(1), Math::max));
            return batch -> periods.number(batch).orElse(1).equals(latest.get(batch.machine()));
        }
    }

    /** A stretch with the batches after it that can be compared with it. */
    private static final class Window {
        private final List<Batch> batches = new ArrayList<>();
        private final List<double[]> columns = new ArrayList<>();
        private final Set<String> like = new LinkedHashSet<>();
        private final Set<String> unlike = new LinkedHashSet<>();
        private final int stretch;
        private final int before;

        /** All batches, without a stretch. */
        Window(Rows rows) {
            this.before = 0;
            this.stretch = 0;
            batches.addAll(rows.batches);
        }

        Window(Rows rows, int before, int stretch, Feature feature) {
            this.before = before;
            this.stretch = stretch;
            List<Batch> first = rows.batches.subList(before, before + stretch);
            List<Like> used = new ArrayList<>();
            Predicate<Batch> comparable = b -> true;
            int most = Math.max(1, stretch / ROWS_FOR_EACH) - 1;
            for (Like one : kinds(rows, first, feature)) {
                double[] known = first.stream()
                        .mapToDouble(one::of)
                        .filter(Double::isFinite)
                        .toArray();
                double low = Arrays.stream(known).min().orElse(0);
                double high = Arrays.stream(known).max().orElse(0);
                boolean complete = known.length == stretch;
                if (complete && high - low > one.same() && used.size() < most && free(used, one, first)) {
                    used.add(one);
                    like.add(one.words());
                    comparable = comparable.and(b -> Double.isFinite(one.of(b)));
                } else if (complete && high - low <= one.same()) {
                    comparable = comparable.and(b -> !Double.isFinite(one.of(b))
                            || one.of(b) >= low - one.same() && one.of(b) <= high + one.same());
                } else if (known.length > 0) {
                    unlike.add(one.words());
                }
            }
            unlike.removeAll(like);
            Set<Optional<String>> lots =
                    new LinkedHashSet<>(first.stream().map(Batch::lot).toList());
            Set<Optional<String>> machines =
                    new LinkedHashSet<>(first.stream().map(Batch::machine).toList());
            comparable = comparable.and(b -> lots.contains(b.lot())).and(b -> machines.contains(b.machine()));
            batches.addAll(first);
            rows.batches.subList(before + stretch, rows.batches.size()).stream()
                    .filter(comparable)
                    .forEach(batches::add);
            double[] ones = new double[batches.size()];
            Arrays.fill(ones, 1);
            columns.add(ones);
            for (Like one : used) {
                double mean = first.stream().mapToDouble(one::of).average().orElse(0);
                columns.add(batches.stream().mapToDouble(b -> one.of(b) - mean).toArray());
            }
        }

        private static List<Like> kinds(Rows rows, List<Batch> first, Feature feature) {
            List<Like> kinds = new ArrayList<>();
            addGroups(kinds, "lot", first, b -> b.lot().orElse(""));
            addGroups(kinds, "machine", first, b -> b.machine().orElse(""));
            double mass = first.stream()
                    .mapToDouble(WatchRows::mass)
                    .filter(Double::isFinite)
                    .average()
                    .orElse(Double.NaN);
            add(kinds, rows, new Like(Features.greenMass().name(), WatchRows::mass, SAME_MASS * mass), feature);
            add(kinds, rows, new Like("planned drop temperature", WatchRows::aim, SAME_AIM), feature);
            return kinds;
        }

        private static void addGroups(
                List<Like> kinds, String words, List<Batch> first, java.util.function.Function<Batch, String> group) {
            TreeSet<String> names = new TreeSet<>(first.stream().map(group).toList());
            names.pollFirst();
            for (String name : names) {
                kinds.add(new Like(words, b -> Objects.equals(group.apply(b), name) ? 1 : 0, 0.5));
            }
        }

        private static void add(List<Like> kinds, Rows rows, Like one, Feature feature) {
            long known = rows.batches.stream()
                    .filter(b -> Double.isFinite(one.of(b)))
                    .count();
            if (known >= KNOWN * rows.batches.size()
                    && known > 0
                    && !feature.name().equals(one.words())) {
                kinds.add(one);
            }
        }

        private static boolean free(List<Like> used, Like one, List<Batch> first) {
            DayRegression.Projection others = new DayRegression.Projection();
            double[] ones = new double[first.size()];
            Arrays.fill(ones, 1);
            others.add(ones);
            used.forEach(u -> others.add(first.stream().mapToDouble(u::of).toArray()));
            double[] own = first.stream().mapToDouble(one::of).toArray();
            double mean = Arrays.stream(own).average().orElse(0);
            double[] centred = Arrays.stream(own).map(v -> v - mean).toArray();
            double[] rest = others.rest(own);
            return DayRegression.dot(rest, rest) > OWN_SHARE * DayRegression.dot(centred, centred);
        }
    }

    /** Gathers the rows and chooses the stretch: the earliest in which no single batch lies far off the others. */
    static WatchRows of(Logbook logbook, Feature feature) {
        Rows rows = new Rows(logbook, feature);
        int stretch = Arrays.stream(STRETCHES)
                .filter(s -> rows.batches.size() >= s[1])
                .mapToInt(s -> s[0])
                .findFirst()
                .orElse(0);
        int most = Math.max(1, stretch / ROWS_FOR_EACH);
        int tooMany = 0;
        Optional<Window> fallback = Optional.empty();
        for (int from = 0; stretch > 0 && from + stretch <= rows.batches.size(); from++) {
            int groups = groups(rows.batches.subList(from, from + stretch));
            if (groups > most) {
                tooMany = Math.max(tooMany, groups);
                continue;
            }
            Window window = new Window(rows, from, stretch, feature);
            if (quiet(rows, window)) {
                return new WatchRows(rows, window, 0);
            }
            fallback = fallback.or(() -> Optional.of(window)).filter(w -> varies(rows, w));
        }
        int found = tooMany;
        return fallback.map(window -> new WatchRows(rows, window, 0))
                .orElseGet(() -> new WatchRows(rows, new Window(rows), found));
    }

    private static int groups(List<Batch> own) {
        long lots = own.stream().map(Batch::lot).distinct().count();
        long machines = own.stream().map(Batch::machine).distinct().count();
        return (int) (lots + machines - 1);
    }

    private static double[] rest(Rows rows, Window window) {
        DayRegression.Projection like = new DayRegression.Projection();
        window.columns.forEach(c -> like.add(Arrays.copyOf(c, window.stretch)));
        return like.rest(window.batches.stream()
                .limit(window.stretch)
                .mapToDouble(rows::value)
                .toArray());
    }

    private static boolean varies(Rows rows, Window window) {
        double[] rest = rest(rows, window);
        return DayRegression.dot(rest, rest) > 1e-18;
    }

    /** Tells whether no batch of the stretch lies far off, held against the spread of the others (Student's t, Bonferroni's share). */
    private static boolean quiet(Rows rows, Window window) {
        double[] rest = rest(rows, window);
        double squares = DayRegression.dot(rest, rest);
        int degrees = window.stretch - window.columns.size() - 1;
        double limit = new TDistribution(degrees).inverseCumulativeProbability(1 - FAR_OFF / (2 * window.stretch));
        return squares > 1e-18
                && Arrays.stream(rest)
                        .map(r -> Math.abs(r) / Math.sqrt(Math.max(1e-300, squares - r * r) / degrees))
                        .allMatch(t -> t <= limit);
    }

    private static double mass(Batch batch) {
        return batch.conditions().greenMass().map(Mass::kilograms).orElse(Double.NaN);
    }

    private static double aim(Batch batch) {
        return batch.plan().dropTemperature().map(Temperature::celsius).orElse(Double.NaN);
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
    EstimatedLimits limits(Logbook logbook) {
        List<LocalDate> days =
                batches.stream().map(b -> b.roastDay().orElseThrow()).toList();
        List<LocalDate> dates = List.copyOf(new TreeSet<>(days));
        return EstimatedLimits.of(
                values,
                columns,
                days.stream().mapToInt(dates::indexOf).toArray(),
                dates.stream().mapToDouble(LocalDate::toEpochDay).toArray(),
                stretch);
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
        return batches.size() + " batches watched, "
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
                        ? "there are " + batches.size() + " batches, and 10 are needed"
                        : "the batches do not differ";
    }
}
