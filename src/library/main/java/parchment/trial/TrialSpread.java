package parchment.trial;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import parchment.feature.path.BatchPath;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Cupping;
import parchment.stats.mixed.SlopeInsideSets;
import parchment.trial.sealed.TrialControl;

/**
 * Holds how far batches of one lot and roast day that were cupped blind on one table lie apart for other reasons than the control: its line and its bend are taken out.
 *
 * @param variance of batch means inside such sets, squared points
 * @param degreesOfFreedom behind it: batches less sets less two
 * @param single variance of one cupper's one score about the batch, squared points; NaN where no two cuppers shared a table
 * @param scores how many scores a mean has, on average (harmonic mean)
 * @param batches how many batch means stand behind it
 * @param sets in how many sets
 */
record TrialSpread(double variance, int degreesOfFreedom, double single, double scores, int batches, int sets) {
    /** Chance that the true spread is above the limit a trial is sized by. */
    private static final double ABOVE_LIMIT = 0.2;

    /** One batch on one table. */
    private record Row(String set, String table, double reading, Map<String, List<Double>> byCupper) {
        double mean() {
            return byCupper.values().stream().mapToDouble(Row::mean).average().orElse(Double.NaN);
        }

        int scores() {
            return byCupper.values().stream().mapToInt(List::size).sum();
        }

        static double mean(List<Double> cups) {
            return cups.stream().mapToDouble(Double::doubleValue).average().orElse(Double.NaN);
        }
    }

    /** Returns the spread of a logbook's batches; empty if no degree of freedom is left. */
    static Optional<TrialSpread> of(String score, TrialControl control, Logbook logbook) {
        List<Row> rows = rows(score, control, logbook.whole());
        Map<String, Long> sizes = rows.stream().collect(Collectors.groupingBy(Row::set, Collectors.counting()));
        List<Row> kept = rows.stream()
                .filter(row -> sizes.getOrDefault(row.set(), 0L) > 1)
                .toList();
        int sets = (int) kept.stream().map(Row::set).distinct().count();
        int degrees = kept.size() - sets - 2;
        if (degrees < 1) {
            return Optional.empty();
        }
        List<String> names = kept.stream().map(Row::set).toList();
        double middle = kept.stream().mapToDouble(Row::reading).average().orElse(0);
        double[] x = kept.stream().mapToDouble(row -> row.reading() - middle).toArray();
        double[] y = kept.stream().mapToDouble(Row::mean).toArray();
        if (same(names, x)) {
            return Optional.empty();
        }
        SlopeInsideSets line = SlopeInsideSets.on(names, x);
        double[] bend = new double[x.length];
        double[] left = new double[x.length];
        double[] bent = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            bend[i] = x[i] * x[i];
        }
        double perBend = line.slope("bend", bend).estimate();
        double perLine = line.slope("line", y).estimate();
        for (int i = 0; i < x.length; i++) {
            bent[i] = bend[i] - perBend * x[i];
            left[i] = y[i] - perLine * x[i];
        }
        double freedom = line.degreesOfFreedom();
        double variance = same(names, bent)
                ? line.residualVariance(y) * freedom / degrees
                : SlopeInsideSets.on(names, bent).residualVariance(left) * freedom / degrees;
        double harmonic = kept.size()
                / kept.stream().mapToDouble(row -> 1.0 / row.scores()).sum();
        return Optional.of(new TrialSpread(variance, degrees, single(kept), harmonic, kept.size(), sets));
    }

    private static boolean same(List<String> sets, double[] values) {
        Map<String, Double> first = new HashMap<>();
        double scale = 0;
        for (double value : values) {
            scale = Math.max(scale, Math.abs(value));
        }
        for (int i = 0; i < values.length; i++) {
            Double there = first.putIfAbsent(sets.get(i), values[i]);
            if (there != null && Math.abs(there - values[i]) > 1e-9 * scale) {
                return false;
            }
        }
        return true;
    }

    private static List<Row> rows(String score, TrialControl control, Logbook logbook) {
        Map<String, Map<String, List<Double>>> scores = new TreeMap<>();
        Map<String, CupScores> one = new HashMap<>();
        for (CupScores cup : logbook.cups()) {
            if (TrialScores.isBlind(cup, logbook) && !discussed(cup, logbook) && Double.isFinite(cup.score(score))) {
                String key = cup.cupping() + "\n" + cup.batch();
                one.putIfAbsent(key, cup);
                scores.computeIfAbsent(key, k -> new TreeMap<>())
                        .computeIfAbsent(cup.cupper(), k -> new ArrayList<>())
                        .add(cup.score(score));
            }
        }
        Map<String, BatchPath> paths = new HashMap<>();
        BatchPath.of(logbook).forEach(path -> paths.put(path.batch().name(), path));
        List<Row> rows = new ArrayList<>();
        scores.forEach((key, byCupper) -> {
            CupScores cup = one.get(key);
            BatchPath path = cup == null ? null : paths.get(cup.batch());
            if (cup == null || path == null) {
                return;
            }
            Batch batch = path.batch();
            OptionalDouble reading = TrialScores.achieved(control, path);
            if (reading.isPresent()
                    && batch.lot().isPresent()
                    && batch.roastDay().isPresent()) {
                rows.add(new Row(
                        cup.cupping() + "\n" + batch.lot().get() + "\n"
                                + batch.roastDay().get(),
                        cup.cupping(),
                        reading.getAsDouble(),
                        byCupper));
            }
        });
        return rows;
    }

    /** Scores that were spoken of first lie closer together than those of a trial will. */
    private static boolean discussed(CupScores cup, Logbook logbook) {
        return Optional.of(cup.cupping())
                .flatMap(logbook::cupping)
                .filter(how -> how.beforeDiscussion() == Cupping.Said.NO)
                .isPresent();
    }

    /** The variance of one score about its batch, once each cupper's level at the table is taken out. */
    private static double single(List<Row> rows) {
        double squares = 0;
        double degrees = 0;
        Map<String, List<Row>> tables = rows.stream().collect(Collectors.groupingBy(Row::table));
        for (List<Row> table : tables.values()) {
            Map<String, List<Double>> levels = new HashMap<>();
            for (Row row : table) {
                row.byCupper()
                        .forEach((cupper, cups) -> levels.computeIfAbsent(cupper, k -> new ArrayList<>())
                                .add(Row.mean(cups) - row.mean()));
            }
            if (levels.size() < 2 || table.size() < 2) {
                continue;
            }
            for (Row row : table) {
                for (Map.Entry<String, List<Double>> of : row.byCupper().entrySet()) {
                    double level = Row.mean(levels.getOrDefault(of.getKey(), List.of(0.0)));
                    double off = Row.mean(of.getValue()) - row.mean() - level;
                    squares += off * off * of.getValue().size();
                }
            }
            degrees += (levels.size() - 1.0) * (table.size() - 1.0);
        }
        return degrees > 0 ? squares / degrees : Double.NaN;
    }

    /** Returns the variance of a batch mean of so many scores, never below a tenth of what was seen; as seen where one score's own is not known. */
    double varianceAt(int planned) {
        return Double.isNaN(single)
                ? variance
                : Math.max(0.1 * variance, variance - single / scores + single / planned);
    }

    /** Returns by how much the upper 80 % limit of the variance exceeds it. */
    double upperFactor() {
        return degreesOfFreedom
                / new ChiSquaredDistribution(degreesOfFreedom).inverseCumulativeProbability(ABOVE_LIMIT);
    }
}
