package parchment.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import parchment.display.Table;
import parchment.stats.Robust;

/**
 * Names the fewest pairs of batches that would tell apart what a logbook cannot.
 *
 * <p>A pair is two batches of one lot on one roast day; it adds d d' / (2 s^2) to the information on the slopes, with d their
 * difference in drop temperature, development time and time to first crack and s^2 the variance of a batch's mean score inside a day.
 * Pairs are taken one by one, each time the one that most reduces the largest ratio of error to wanted error, until every comparison
 * that could not be told would show the smallest difference that matters, over the middle 80 % of its values, in 8 of 10 logbooks. Only
 * values from that middle are offered, and only mixtures whose mean rate after first crack stays within a quarter of those reached before.
 */
final class SeparatingBatches {
    private static final double POWER = 0.8416;

    /** Beyond this many nobody will roast them; then the best few are named as a start. */
    private static final int MOST_PAIRS = 30;

    private static final int START = 8;

    /** How far beyond the rates after first crack seen so far a mixture may ask the machine to go. */
    private static final double BEYOND = 0.25;

    private final JointFit fit;
    private final List<double[]> points;
    private final Map<List<Integer>, Integer> pairs;
    private final boolean enough;
    private final double size;

    private SeparatingBatches(
            JointFit fit, List<double[]> points, Map<List<Integer>, Integer> pairs, boolean enough, double size) {
        this.fit = fit;
        this.points = points;
        this.pairs = pairs;
        this.enough = enough;
        this.size = size;
    }

    /**
     * Looks for the pairs.
     *
     * @param weights one comparison each, in steps, in the order of the contrasts
     * @param rates the mean rate after first crack of each batch, °C/min
     * @return nothing if everything can be told, or if nothing was fitted
     */
    static Optional<SeparatingBatches> of(
            JointFit fit, List<double[]> weights, List<PathContrast> contrasts, Measure rates, double size) {
        List<double[]> wanted = IntStream.range(0, weights.size())
                .filter(k -> contrasts.get(k).verdict() == Verdict.CANNOT_TELL)
                .mapToObj(weights::get)
                .toList();
        if (wanted.isEmpty()) {
            return Optional.empty();
        }
        List<double[]> points = points(fit, rates);
        double[] target = wanted.stream()
                .mapToDouble(weight -> size / widest(fit, weight) / (critical(fit) + POWER))
                .toArray();
        double noise = fit.fitted().batchVariance();
        double[][] information = start(fit);
        Map<List<Integer>, Integer> chosen = new LinkedHashMap<>();
        Map<List<Integer>, Integer> first = new LinkedHashMap<>();
        for (int round = 0; round < MOST_PAIRS; round++) {
            double worst = worst(information, wanted, target);
            if (worst <= 1) {
                return Optional.of(new SeparatingBatches(fit, points, chosen, true, size));
            }
            List<Integer> best = List.of();
            double least = Double.POSITIVE_INFINITY;
            for (int a = 0; a < points.size(); a++) {
                for (int b = a + 1; b < points.size(); b++) {
                    double ratio = worst(plus(information, points.get(a), points.get(b), noise), wanted, target);
                    if (ratio < least) {
                        least = ratio;
                        best = List.of(a, b);
                    }
                }
            }
            if (best.isEmpty()) {
                break;
            }
            information = plus(information, points.get(best.get(0)), points.get(best.get(1)), noise);
            chosen.merge(best, 1, Integer::sum);
            if (round < START) {
                first.merge(best, 1, Integer::sum);
            }
        }
        return Optional.of(new SeparatingBatches(fit, points, first, false, size));
    }

    /** Returns the information that the logbook holds already; where a slope could not be fitted, next to none. */
    private static double[][] start(JointFit fit) {
        int n = fit.within().size();
        Optional<double[][]> known = fit.slopeCovariance().flatMap(Matrices::inverse);
        double[][] information = known.orElseGet(() -> new double[n][n]);
        for (int k = 0; k < n; k++) {
            double spread = Math.max(1e-12, Reliability.spread(fit.within().get(k)));
            information[k][k] += 1e-6 / (spread * spread);
        }
        return information;
    }

    private static double critical(JointFit fit) {
        return new Slope(0, 1, Math.max(2, fit.fitted().mostDegrees()))
                .interval(1 - PathQuestion.CHANCE)
                .upper();
    }

    /** Returns how many steps of a comparison fit into the middle 80 % of the measures that it moves. */
    private static double widest(JointFit fit, double[] weight) {
        double steps = Double.POSITIVE_INFINITY;
        for (int k = 0; k < weight.length; k++) {
            if (weight[k] != 0) {
                steps = Math.min(steps, Reliability.spread(fit.within().get(k)) / Math.abs(weight[k]));
            }
        }
        return Math.max(1e-9, steps);
    }

    private static double worst(double[][] information, List<double[]> wanted, double[] target) {
        Optional<double[][]> covariance = Matrices.inverse(information);
        if (covariance.isEmpty()) {
            return Double.MAX_VALUE;
        }
        double worst = 0;
        for (int k = 0; k < target.length; k++) {
            double error = Math.sqrt(Matrices.form(wanted.get(k), covariance.get(), wanted.get(k)));
            worst = Math.max(worst, error / target[k]);
        }
        return worst;
    }

    private static double[][] plus(double[][] information, double[] first, double[] second, double noise) {
        double[][] sum = new double[information.length][];
        for (int k = 0; k < sum.length; k++) {
            sum[k] = information[k].clone();
            for (int l = 0; l < sum.length; l++) {
                sum[k][l] += (first[k] - second[k]) * (first[l] - second[l]) / (2 * noise);
            }
        }
        return sum;
    }

    /** Returns the lower end, the middle and the upper end of each measure, in all mixtures whose finish is neither too fast nor slow. */
    private static List<double[]> points(JointFit fit, Measure rates) {
        double[][] levels = new double[fit.within().size()][];
        for (int k = 0; k < levels.length; k++) {
            double[] within = fit.within().get(k);
            double center = fit.joint().with(fit.joint().values(k)).center();
            levels[k] =
                    new double[] {center + Robust.quantile(within, 0.1), center, center + Robust.quantile(within, 0.9)};
        }
        double[] seen = fit.joint().material().batches().stream()
                .mapToDouble(batch -> rates.readings()
                        .getOrDefault(batch.name(), Gathering.Reading.NONE)
                        .value())
                .filter(Double::isFinite)
                .sorted()
                .toArray();
        double[] drops = fit.joint().values(0);
        double[] times = fit.joint().values(1);
        double crack = crackTemperature(fit, rates, drops, times);
        List<double[]> points = new ArrayList<>();
        for (double drop : levels[0]) {
            for (double development : levels[1]) {
                double rate = 60 * (drop - crack) / development;
                boolean reached = seen.length == 0
                        || Double.isNaN(crack)
                        || rate >= seen[0] * (1 - BEYOND) && rate <= seen[seen.length - 1] * (1 + BEYOND);
                for (double early : levels[2]) {
                    if (reached) {
                        points.add(new double[] {drop, development, early});
                    }
                }
            }
        }
        return points;
    }

    private static double crackTemperature(JointFit fit, Measure rates, double[] drops, double[] times) {
        return fit.joint().material().batches().stream()
                .mapToDouble(batch -> drops[batch.position()]
                        - times[batch.position()]
                                / 60
                                * rates.readings()
                                        .getOrDefault(batch.name(), Gathering.Reading.NONE)
                                        .value())
                .filter(Double::isFinite)
                .average()
                .orElse(Double.NaN);
    }

    /** Returns how many batches in all. */
    int batches() {
        return 2 * pairs.values().stream().mapToInt(Integer::intValue).sum();
    }

    String words() {
        if (pairs.isEmpty()) {
            return "No batches can be named that would tell: drop temperature, development time and time to first crack hardly varied,"
                    + " so nothing is known of what your machine can do elsewhere.";
        }
        String how =
                " Both of a pair are of one lot and roasted on one day, which of them goes first drawn by chance before charge, cupped"
                        + " blind and scored before anybody speaks. Each value was reached before, but perhaps not in this mixture: whether your machine"
                        + " can do it, one trial batch will tell.";
        String seen = "a difference of " + Wording.points(size)
                + " points over the middle 80 % of what was tried, in 8 of 10 logbooks, for everything that cannot be told above";
        return enough
                ? "What would tell: " + batches() + " batches in pairs. By formula they would show " + seen + "." + how
                : "To show " + seen + ", more than " + 2 * MOST_PAIRS
                        + " batches would be needed, by formula. More cups or cuppers for each batch, or a wider range inside what your"
                        + " machine's maker allows, would be cheaper. The best " + batches()
                        + " batches to start with are below." + how;
    }

    Table table() {
        List<Map.Entry<List<Integer>, Integer>> rows = pairs.entrySet().stream()
                .sorted(Comparator.comparingInt(entry -> -entry.getValue()))
                .toList();
        Table table = Table.titled(enough ? "The fewest pairs of batches that would tell" : "The pairs to start with")
                .withNumber("pairs", "", 0, rows, Map.Entry::getValue);
        for (int k = 0; k < fit.joint().measures().size(); k++) {
            Measure measure = fit.joint().measures().get(k);
            int column = k;
            table = table.withText(
                    measure.name() + ", one and other", rows, row -> both(measure, row.getKey(), column));
        }
        return table.withNote(
                "Counted from the usual values of all lots; stay inside what your machine's maker allows.");
    }

    private String both(Measure measure, List<Integer> pair, int column) {
        String first = measure.value(points.get(pair.get(0))[column]);
        String second = measure.value(points.get(pair.get(1))[column]);
        return first.equals(second) ? "both " + first : first + " and " + second;
    }
}
