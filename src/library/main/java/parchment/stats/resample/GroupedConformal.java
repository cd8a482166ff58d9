package parchment.stats.resample;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import parchment.display.Showable;
import parchment.stats.linear.Checks;

/**
 * Finds how wide an interval must be to hold a new observation of a new group, from how far earlier ones lay off.
 *
 * <p>A score is how far an observation lay from its prediction, in standard deviations of that prediction, without its sign. Each group
 * counts the same, however many scores it has, because the new observation belongs to a new group: the scores' distribution is the mean of
 * those of the groups, and the level is raised by (1 + 1 / groups). No shape of the errors is assumed. What is supposed is that groups can be
 * exchanged; that the share held is then at least the level is proved for scores of a fixed prediction and a level raised so (hierarchical
 * conformal prediction, Lee, Barber and Willett 2023), while pooling itself is proved for many groups only (Dunn, Wasserman and Ramdas). Where
 * the scores come from predictions with each group left out, as for marks, the guarantee would be that of the jackknife+ (Barber, Candès,
 * Ramdas and Tibshirani 2021), at 1 - 2 (1 - level), and what is really held is measured: docs/measurements/marks.md.
 *
 * <pre>{@code
 * var calibration = GroupedConformal.of(scores, days);
 * calibration.factor(0.9)                        // 1.71: prediction ± 1.71 standard deviations holds 90 %
 * calibration.without("2025-03-04").factor(0.9)  // the same from the other days
 * }</pre>
 *
 * @see <a href="https://arxiv.org/abs/2306.06342">Lee, Barber and Willett 2023, Distribution-free inference with hierarchical data (its
 *     formula was not at hand)</a>
 * @see <a href="https://doi.org/10.1214/20-AOS1965">Barber, Candès, Ramdas and Tibshirani 2021, Ann. Stat. 49:486-507 (jackknife+; from
 *     memory)</a>
 * @see <a href="https://doi.org/10.1080/01621459.2022.2060112">Dunn, Wasserman and Ramdas 2023, J. Am. Stat. Assoc. 118:2491-2502
 *     (pooling of distribution functions)</a>
 */
public final class GroupedConformal implements Showable {
    private record Score(double value, String group) {}

    private final List<Score> sorted;
    private final Map<String, Integer> sizes;

    private GroupedConformal(List<Score> sorted) {
        this.sorted = sorted;
        this.sizes = new HashMap<>();
        sorted.forEach(score -> sizes.merge(score.group(), 1, Integer::sum));
    }

    /**
     * Gathers scores; missing ones (NaN) are left out.
     *
     * @param scores distances in standard deviations, 0 or more
     * @param groups the group of each score
     * @throws IllegalArgumentException if the lengths differ
     */
    public static GroupedConformal of(double[] scores, List<String> groups) {
        Checks.sameLength("A calibration", scores.length, "groups", groups.size());
        List<Score> sorted = new ArrayList<>();
        for (int i = 0; i < scores.length; i++) {
            if (!Double.isNaN(scores[i])) {
                sorted.add(new Score(scores[i], groups.get(i)));
            }
        }
        sorted.sort(Comparator.comparingDouble(Score::value));
        return new GroupedConformal(List.copyOf(sorted));
    }

    /** Returns the calibration by the other groups. */
    public GroupedConformal without(String group) {
        return new GroupedConformal(
                sorted.stream().filter(score -> !score.group().equals(group)).toList());
    }

    /** Returns how many groups there are. */
    public int groups() {
        return sizes.size();
    }

    /**
     * Returns by how many standard deviations an interval must reach to either side to hold a share of new observations; infinite where
     * there are too few groups for that share.
     *
     * @param level the share to hold, between 0 and 1
     */
    public double factor(double level) {
        double wanted = level * (1 + 1.0 / Math.max(1, sizes.size()));
        double held = 0;
        for (Score score : sorted) {
            held += 1.0 / (sizes.getOrDefault(score.group(), 1) * (double) sizes.size());
            if (held >= wanted - 1e-12) {
                return score.value();
            }
        }
        return Double.POSITIVE_INFINITY;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "calibration by %d scores in %d groups: 50 %% lie within %.2f, 90 %% within %.2f standard deviations",
                sorted.size(),
                sizes.size(),
                factor(0.5),
                factor(0.9));
    }
}
