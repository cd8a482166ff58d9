package parchment.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import parchment.display.Table;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Verdict;
import parchment.evidence.finding.Wording;
import parchment.stats.linear.Matrices;
import parchment.stats.linear.Robust;

/**
 * Names the fewest pairs of batches that would tell apart what a logbook cannot.
 *
 * <p>A pair is two batches of one lot on one roast day. Pairs are chosen ({@link PairSearch}) until every comparison that more batches can
 * tell would show the smallest difference that matters, over the middle 80 % of its values, in 8 of 10 logbooks, and is no longer moved
 * together with the rest. Only values from that middle are offered, and only mixtures whose mean rate after first crack stays within a
 * quarter of those reached before. What more batches of the kind cannot tell is said in words.
 */
final class SeparatingBatches {
    private static final double POWER = 0.8416;

    /** Beyond this many nobody will roast them; then the best few are named as a start. */
    static final int MOST_PAIRS = 30;

    static final int START = 8;

    /** How far beyond the rates after first crack seen so far a mixture may ask the machine to go. */
    private static final double BEYOND = 0.25;

    /** A measure whose middle 80 % spans less than this, as the library keeps it, did not vary. */
    private static final double NOTHING = 1e-9;

    /** What more batches of the right kind can tell. */
    private static final Set<PathContrast.Because> BY_BATCHES = Set.of(
            PathContrast.Because.TOO_WIDE,
            PathContrast.Because.MOVED_TOGETHER,
            PathContrast.Because.FOLLOWS_FROM_OTHERS,
            PathContrast.Because.TOO_FEW_DAYS);

    private final List<Measure> shown;
    private final List<double[]> points;
    private final Plan plan;
    private final List<PathContrast> contrasts;
    private final double size;

    /** Says what came of the search. */
    enum Outcome {
        /** These pairs would tell. */
        ENOUGH,
        /** By formula the logbook could have told already: the answer fell between zero and what matters; these pairs narrow it. */
        BETWEEN,
        /** More pairs than anybody will roast; these are a start. */
        MORE_THAN_OFFERED,
        /** A measure did not vary. */
        HARDLY_VARIED,
        /** Every mixture asks for a faster or slower finish than was seen. */
        OUT_OF_REACH,
        /** More batches would not tell. */
        NOT_BY_BATCHES
    }

    /**
     * Holds the pairs.
     *
     * @param pairs how often each two mixtures
     * @param unmoved the names of the measures that did not vary
     */
    record Plan(Outcome outcome, Map<List<Integer>, Integer> pairs, List<String> unmoved) {
        static Plan none(Outcome outcome, List<String> unmoved) {
            return new Plan(outcome, Map.of(), unmoved);
        }
    }

    SeparatingBatches(
            List<Measure> shown, List<double[]> points, Plan plan, List<PathContrast> contrasts, double size) {
        this.shown = List.copyOf(shown);
        this.points = points;
        this.plan = plan;
        this.contrasts = List.copyOf(contrasts);
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
        if (contrasts.stream().noneMatch(contrast -> contrast.verdict() == Verdict.CANNOT_TELL)) {
            return Optional.empty();
        }
        List<double[]> points = points(fit, rates);
        List<double[]> wanted = IntStream.range(0, weights.size())
                .filter(k -> contrasts.get(k).verdict() == Verdict.CANNOT_TELL
                        && BY_BATCHES.contains(contrasts.get(k).because()))
                .mapToObj(weights::get)
                .toList();
        return Optional.of(new SeparatingBatches(
                fit.joint().measures(), points, plan(fit, wanted, points, size), contrasts, size));
    }

    private static Plan plan(JointFit fit, List<double[]> wanted, List<double[]> points, double size) {
        if (wanted.isEmpty()) {
            return Plan.none(Outcome.NOT_BY_BATCHES, List.of());
        }
        List<String> unmoved = new ArrayList<>();
        for (int k = 0; k < fit.within().size(); k++) {
            int measure = k;
            if (Reliability.spread(fit.within().get(k)) < NOTHING
                    && wanted.stream().anyMatch(weight -> weight[measure] != 0)) {
                unmoved.add(fit.joint().measures().get(k).name());
            }
        }
        if (!unmoved.isEmpty()) {
            return Plan.none(Outcome.HARDLY_VARIED, unmoved);
        }
        if (points.size() < 2) {
            return Plan.none(Outcome.OUT_OF_REACH, List.of());
        }
        double[] errors = wanted.stream()
                .mapToDouble(weight -> size / widest(fit, weight) / (critical(fit) + POWER))
                .toArray();
        PairSearch search =
                new PairSearch(start(fit), points, wanted, errors, fit.fitted().batchVariance());
        return planned(search);
    }

    /** Chooses pairs; where none would be needed by formula, as many as make the information twice what was needed. */
    static Plan planned(PairSearch search) {
        boolean between = search.before() <= 1;
        double[] errors = search.errors().clone();
        for (int c = 0; c < errors.length && between; c++) {
            errors[c] = errors[c] * Math.min(1, search.before()) / Math.sqrt(2);
        }
        PairSearch wanted =
                new PairSearch(search.information(), search.points(), search.wanted(), errors, search.noise());
        PairSearch.Chosen chosen = wanted.choose(MOST_PAIRS);
        if (chosen.enough() == PairSearch.Reached.ALL) {
            return new Plan(between ? Outcome.BETWEEN : Outcome.ENOUGH, chosen.pairs(), List.of());
        }
        return new Plan(Outcome.MORE_THAN_OFFERED, wanted.choose(START).pairs(), List.of());
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
                .interval(1 - PathRules.CHANCE)
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

    /** Returns the lower end, the middle and the upper end of each measure, in all mixtures whose finish is neither too fast nor slow. */
    static List<double[]> points(JointFit fit, Measure rates) {
        double[][] levels = new double[fit.within().size()][];
        for (int k = 0; k < levels.length; k++) {
            double[] within = fit.within().get(k);
            double center = fit.joint().center(k);
            levels[k] =
                    new double[] {center + Robust.quantile(within, 0.1), center, center + Robust.quantile(within, 0.9)};
        }
        double[] seen = fit.joint().material().batches().stream()
                .mapToDouble(batch -> rates.readings()
                        .getOrDefault(batch.name(), ModelFrames.Reading.NONE)
                        .value())
                .filter(Double::isFinite)
                .sorted()
                .toArray();
        double[] drops = fit.within().get(0).clone();
        for (int i = 0; i < drops.length; i++) {
            drops[i] += fit.joint().center(0);
        }
        double[] times = fit.joint().values(1);
        double crack = crackTemperature(fit, rates, drops, times);
        List<double[]> points = new ArrayList<>();
        for (double drop : levels[0]) {
            for (double development : levels[1]) {
                double rate = 60 * (drop - crack) / development;
                // Without any rate there is no temperature at crack either.
                boolean reached = Double.isNaN(crack)
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
                                        .getOrDefault(batch.name(), ModelFrames.Reading.NONE)
                                        .value())
                .filter(Double::isFinite)
                .average()
                .orElse(Double.NaN);
    }

    /** Returns how many batches in all. */
    int batches() {
        return 2 * plan.pairs().values().stream().mapToInt(Integer::intValue).sum();
    }

    Outcome outcome() {
        return plan.outcome();
    }

    /** Returns the mixtures of the batches, pair by pair. */
    List<double[]> mixtures() {
        List<double[]> mixtures = new ArrayList<>();
        plan.pairs().forEach((pair, times) -> {
            for (int k = 0; k < times; k++) {
                mixtures.add(points.get(pair.get(0)).clone());
                mixtures.add(points.get(pair.get(1)).clone());
            }
        });
        return mixtures;
    }

    String words() {
        String how =
                " Both of a pair are of one lot and roasted on one day, which of them goes first drawn by chance before charge, cupped"
                        + " blind and scored before anybody speaks. Each value was reached before, but perhaps not in this mixture: whether your machine"
                        + " can do it, one trial batch will tell.";
        String matters = "a difference of " + Wording.points(size) + " points over the middle 80 % of what was tried";
        String first = switch (plan.outcome()) {
            case ENOUGH ->
                "What would tell: " + batches() + " batches in pairs. By formula they would show " + matters
                        + ", in 8 of 10 logbooks, for " + names(BY_BATCHES) + "." + how;
            case BETWEEN ->
                "By formula this logbook could have shown " + matters + ", in 8 of 10 logbooks, for "
                        + names(BY_BATCHES) + ": what it found lies between that and zero. The " + batches()
                        + " batches in pairs below would halve the variance of the answer." + how;
            case MORE_THAN_OFFERED ->
                "To show " + matters + ", in 8 of 10 logbooks, for " + names(BY_BATCHES)
                        + ", more than " + 2 * MOST_PAIRS
                        + " batches would be needed, by formula. More cups or cuppers for each batch, or a wider range inside what your"
                        + " machine's maker allows, would be cheaper. The best " + batches()
                        + " batches to start with are below." + how;
            case HARDLY_VARIED ->
                "No batches can be named that would tell: " + Wording.list(plan.unmoved())
                        + " hardly varied inside lots, so nothing is known of what your machine can do elsewhere.";
            case OUT_OF_REACH ->
                "No batches can be named that would tell: whatever is mixed from the values of "
                        + Wording.list(shown.stream().map(Measure::name).toList())
                        + " seen so far asks for a finish more than a quarter faster or slower than any batch had.";
            case NOT_BY_BATCHES -> "";
        };
        List<String> sentences = new ArrayList<>();
        if (!first.isEmpty()) {
            sentences.add(first);
        }
        beyond(
                sentences,
                PathContrast.Because.ERROR_OF_MEASURING,
                "more batches of the same kind would not tell: they differ in it by little more than the error of measuring. Marks"
                        + " written as they happen, or a wider range inside what your machine's maker allows, would.");
        beyond(
                sentences,
                PathContrast.Because.MOVED_WITH_A_CONTROL,
                "only batches would tell in which it moves and the control that moved with it stays.");
        beyond(
                sentences,
                PathContrast.Because.CALENDAR,
                "more batches of the same kind would not tell: only batches drawn by chance, on days to come, are free of what moves"
                        + " with the calendar.");
        return String.join(" ", sentences);
    }

    private void beyond(List<String> sentences, PathContrast.Because because, String words) {
        String named = names(Set.of(because));
        if (!named.isEmpty()) {
            sentences.add("For " + named + " " + words);
        }
    }

    private String names(Set<PathContrast.Because> kinds) {
        return Wording.list(contrasts.stream()
                .filter(contrast -> contrast.verdict() == Verdict.CANNOT_TELL && kinds.contains(contrast.because()))
                .map(PathContrast::name)
                .toList());
    }

    Table table() {
        List<Map.Entry<List<Integer>, Integer>> rows = plan.pairs().entrySet().stream()
                .sorted(Comparator.comparingInt(entry -> -entry.getValue()))
                .toList();
        Table table = Table.titled(
                        plan.outcome() == Outcome.ENOUGH
                                ? "The fewest pairs of batches that would tell"
                                : "The pairs to start with")
                .withNumber("pairs", "", 0, rows, Map.Entry::getValue);
        for (int k = 0; k < shown.size(); k++) {
            Measure measure = shown.get(k);
            int column = k;
            table = table.withText(
                    measure.name() + ", one and other", rows, row -> both(measure, row.getKey(), column));
        }
        return table.withNote(
                "Counted from the usual values of all lots, temperatures as readings on today's probe; stay inside what your machine's maker allows.");
    }

    private String both(Measure measure, List<Integer> pair, int column) {
        String first = measure.value(points.get(pair.get(0))[column]);
        String second = measure.value(points.get(pair.get(1))[column]);
        return first.equals(second) ? "both " + first : first + " and " + second;
    }
}
