package parchment.drift;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;
import parchment.stats.linear.Vectors;
import parchment.stats.series.DayRegression;

/** A stretch with the batches after it that can be compared with it. */
final class WatchWindow {
    /** Share of batches in which something must be written to be taken into account. */
    private static final double KNOWN = 0.85;
    /** What counts as the same mass (share of it) and the same aim (°C); common practice, no source. */
    private static final double SAME_MASS = 0.05;

    private static final double SAME_AIM = 1;
    /** Share of a column's squared length that must be its own. */
    private static final double OWN_SHARE = 0.1;

    /** Something that batches are compared at like. */
    private record Like(String words, ToDoubleFunction<Batch> value, double same) {
        double of(Batch batch) {
            return value.applyAsDouble(batch);
        }
    }

    final List<Batch> batches = new ArrayList<>();
    final List<double[]> columns = new ArrayList<>();
    final Set<String> like = new LinkedHashSet<>();
    final Set<String> unlike = new LinkedHashSet<>();
    final int stretch;
    final int before;

    /** All batches, without a stretch. */
    WatchWindow(WatchedBatches rows) {
        this.before = 0;
        this.stretch = 0;
        batches.addAll(rows.batches);
    }

    WatchWindow(WatchedBatches rows, int before, int stretch, Feature feature) {
        this.before = before;
        this.stretch = stretch;
        List<Batch> first = rows.batches.subList(before, before + stretch);
        List<Like> used = new ArrayList<>();
        Predicate<Batch> comparable = b -> true;
        int most = Math.max(1, stretch / WatchRows.ROWS_FOR_EACH) - 1;
        for (Like one : kinds(rows, first, feature)) {
            double[] known =
                    first.stream().mapToDouble(one::of).filter(Double::isFinite).toArray();
            double low = Arrays.stream(known).min().orElse(0);
            double high = Arrays.stream(known).max().orElse(0);
            boolean complete = known.length == stretch;
            if (complete && high - low > one.same() && used.size() < most && free(used, one, first)) {
                used.add(one);
                like.add(one.words());
                comparable = comparable.and(b -> Double.isFinite(one.of(b)));
            } else if (complete && high - low <= one.same()) {
                comparable = comparable.and(b ->
                        !Double.isFinite(one.of(b)) || one.of(b) >= low - one.same() && one.of(b) <= high + one.same());
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

    private static List<Like> kinds(WatchedBatches rows, List<Batch> first, Feature feature) {
        List<Like> kinds = new ArrayList<>();
        addGroups(kinds, "lot", first, b -> b.lot().orElse(""));
        addGroups(kinds, "machine", first, b -> b.machine().orElse(""));
        double mass = first.stream()
                .mapToDouble(WatchWindow::mass)
                .filter(Double::isFinite)
                .average()
                .orElse(Double.NaN);
        add(kinds, rows, new Like(Features.greenMass().name(), WatchWindow::mass, SAME_MASS * mass), feature);
        add(kinds, rows, new Like("planned drop temperature", WatchWindow::aim, SAME_AIM), feature);
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

    private static void add(List<Like> kinds, WatchedBatches rows, Like one, Feature feature) {
        long known =
                rows.batches.stream().filter(b -> Double.isFinite(one.of(b))).count();
        if (known >= KNOWN * rows.batches.size() && known > 0 && !feature.name().equals(one.words())) {
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
        return Vectors.dot(rest, rest) > OWN_SHARE * Vectors.dot(centred, centred);
    }

    private static double mass(Batch batch) {
        return batch.conditions().greenMass().map(Mass::kilograms).orElse(Double.NaN);
    }

    private static double aim(Batch batch) {
        return batch.plan().dropTemperature().map(Temperature::celsius).orElse(Double.NaN);
    }
}
