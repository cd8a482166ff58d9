package parchment.evidence;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import parchment.display.Showable;
import parchment.evidence.finding.Wording;

/**
 * Warns of what was never tasted side by side, by how batches were laid out over cuppings: such batches can only be compared across
 * cuppings.
 *
 * @param cuppings how many cuppings
 * @param withSeveralLots how many held batches of more than one lot
 * @param withSeveralDays how many held batches of more than one roast day
 * @param spreadShare the spread of the feature inside cuppings as a share of its spread over all batches
 * @param lots how many lots there are
 */
record CuppingLayout(int cuppings, int withSeveralLots, int withSeveralDays, double spreadShare, int lots)
        implements Showable {

    static CuppingLayout of(ModelFrame material) {
        return new CuppingLayout(
                material.cuppings(),
                several(material, TastedBatch::lot),
                several(material, batch -> batch.day().toString()),
                spreadShare(material),
                material.lots().size());
    }

    private static int several(ModelFrame material, Function<TastedBatch, String> group) {
        Map<String, Set<String>> seen = new HashMap<>();
        material.scores()
                .forEach(score -> seen.computeIfAbsent(score.cupping(), key -> new HashSet<>())
                        .add(group.apply(material.batchOf(score))));
        return (int) seen.values().stream().filter(groups -> groups.size() > 1).count();
    }

    private static double spreadShare(ModelFrame material) {
        Map<String, List<Double>> cuppings = new HashMap<>();
        Set<String> counted = new HashSet<>();
        for (ScoreRow score : material.scores()) {
            if (counted.add(score.cupping() + "\n" + score.batch())) {
                cuppings.computeIfAbsent(score.cupping(), key -> new ArrayList<>())
                        .add(material.batchOf(score).measure());
            }
        }
        double inside = 0;
        int degrees = 0;
        for (List<Double> values : cuppings.values()) {
            inside += squares(values);
            degrees += values.size() - 1;
        }
        List<Double> all = material.batches().stream().map(TastedBatch::measure).toList();
        double variance = squares(all) / Math.max(1, all.size() - 1);
        return degrees > 0 && variance > 0 ? Math.sqrt(inside / degrees / variance) : Double.NaN;
    }

    private static double squares(List<Double> values) {
        double mean = values.stream().mapToDouble(value -> value).average().orElse(0);
        return values.stream()
                .mapToDouble(value -> (value - mean) * (value - mean))
                .sum();
    }

    @Override
    public String toString() {
        List<String> words = new ArrayList<>();
        if (lots > 1) {
            words.add(
                    withSeveralLots == 0
                            ? "No cupping held two lots side by side, so lots are compared across cuppings only."
                            : Wording.count(withSeveralLots, "cupping", "cuppings") + " of " + cuppings
                                    + " held more than one lot.");
        }
        words.add(
                withSeveralDays == 0
                        ? "No cupping held two roast days side by side, so days and cuppings cannot be told apart."
                        : Wording.count(withSeveralDays, "cupping", "cuppings") + " of " + cuppings
                                + " held more than one roast day.");
        if (!Double.isNaN(spreadShare)) {
            words.add("Inside a cupping the measure spread " + Wording.percent(spreadShare)
                    + " as widely as over all scored batches.");
        }
        return String.join(" ", words);
    }
}
