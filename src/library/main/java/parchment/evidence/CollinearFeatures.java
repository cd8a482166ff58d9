package parchment.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.evidence.finding.Wording;
import parchment.feature.kind.Role;
import parchment.stats.linear.Correlation;

/**
 * Shows which other features moved together with the one asked about, inside lots and probe periods of this logbook.
 *
 * <p>The variance inflation 1 / (1 - r^2) says how much wider the interval would be squared if both stood in one model (Marquardt
 * 1970, Technometrics 12(3)). Beyond a correlation of 0.7 it is hard, beyond 0.95 hopeless to tell which of the two went with the
 * score.
 */
public final class CollinearFeatures implements Showable {
    /** From this correlation on a feature is named in words. */
    static final double NOTABLE = 0.7;

    private static final double LISTED = 0.3;
    private static final int FEWEST = 8;
    private static final int MOST_LISTED = 8;

    private final String feature;
    private final List<Companion> companions;
    private final int compared;

    /**
     * Holds one feature that moved along.
     *
     * @param name the other feature
     * @param correlation inside lots, from -1 to 1
     * @param inflation the variance inflation that the two would have in one model; infinite if they moved as one
     * @param batches how many batches have both
     * @param tie how the two hang together by arithmetic, empty if they do not
     */
    public record Companion(String name, double correlation, double inflation, int batches, String tie) {}

    /** Holds another feature's values by batch, and how it is tied to the one asked about. */
    record Other(String name, Map<String, Double> values, String tie, Role role) {}

    private CollinearFeatures(String feature, List<Companion> companions, int compared) {
        this.feature = feature;
        this.companions = List.copyOf(companions);
        this.compared = compared;
    }

    static CollinearFeatures of(String feature, ModelFrame material, List<Other> others) {
        List<Companion> found = new ArrayList<>();
        for (Other other : others) {
            ModelFrame both =
                    material.only(batch -> Double.isFinite(other.values().getOrDefault(batch.name(), Double.NaN)));
            if (both.batches().size() < FEWEST) {
                continue;
            }
            ModelFrame swapped = both.changed(
                    batch -> batch.withMeasure(other.values().getOrDefault(batch.name(), Double.NaN), Double.NaN));
            double r = Correlation.pearson(both.within(), swapped.within());
            if (!Double.isNaN(r)) {
                found.add(new Companion(
                        other.name(),
                        r,
                        1 - r * r > 1e-9 ? 1 / (1 - r * r) : Double.POSITIVE_INFINITY,
                        both.batches().size(),
                        other.tie()));
            }
        }
        List<Companion> listed = found.stream()
                .filter(companion -> Math.abs(companion.correlation()) >= LISTED)
                .sorted(Comparator.comparingDouble(companion -> -Math.abs(companion.correlation())))
                .limit(MOST_LISTED)
                .toList();
        return new CollinearFeatures(feature, listed, found.size());
    }

    static CollinearFeatures of(String feature, List<Companion> companions, int compared) {
        return new CollinearFeatures(feature, companions, compared);
    }

    /** Returns the features with a correlation of at least 0.3 either way, the closest first, at most eight. */
    public List<Companion> companions() {
        return companions;
    }

    /** Returns the features that can hardly be told apart from the one asked about. */
    List<Companion> notable() {
        return companions.stream()
                .filter(companion -> Math.abs(companion.correlation()) >= NOTABLE)
                .toList();
    }

    Table table() {
        return Table.titled("Features that moved together with the " + feature)
                .withText("feature", companions, Companion::name)
                .withNumber("correlation inside lots", "", 2, companions, Companion::correlation)
                .withText("variance inflation", companions, companion -> Wording.inflation(companion.inflation()))
                .withNumber("batches", "", 0, companions, Companion::batches)
                .withText(
                        "tied by arithmetic",
                        companions,
                        companion -> companion.tie().isEmpty() ? "no" : companion.tie())
                .withNote("Of " + compared
                        + " other features compared, those with a correlation of at least 0.3 either way are"
                        + " listed, at most " + MOST_LISTED + ".");
    }

    @Override
    public String toString() {
        List<Companion> close = notable();
        if (compared == 0) {
            return "No other feature could be compared with the " + feature + ".";
        }
        if (close.isEmpty()) {
            return "None of " + compared + " other features moved so closely with the " + feature
                    + " that the two could not be told apart (correlation 0.7 or more).";
        }
        return "In this logbook the " + feature + " cannot well be told apart from "
                + Wording.list(close.stream()
                        .limit(4)
                        .map(companion ->
                                companion.name() + " (correlation " + Wording.plain(companion.correlation(), 2) + ")")
                        .toList())
                + ".";
    }
}
