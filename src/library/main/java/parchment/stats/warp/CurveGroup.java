package parchment.stats.warp;

import java.util.List;
import java.util.Locale;
import parchment.stats.linear.Checks;

/**
 * Curves on one grid with the label of the cluster (such as a day) that each was taken in; a cluster is the unit of chance.
 */
public final class CurveGroup {
    private final List<double[]> curves;
    private final List<String> clusters;

    private CurveGroup(List<double[]> curves, List<String> clusters) {
        this.curves = curves;
        this.clusters = clusters;
    }

    /**
     * Returns a group.
     *
     * @param curves values at the same points, none missing, at least one curve
     * @param clusters one label per curve
     * @throws IllegalArgumentException if the numbers or lengths differ or a value is missing
     */
    public static CurveGroup of(List<double[]> curves, List<String> clusters) {
        int points = curves.isEmpty() ? 0 : curves.get(0).length;
        Checks.sameGrid("A group of curves", 1, points, curves);
        Checks.asManySamples("A group of curves", "the labels", clusters.size(), "the curves", curves.size());
        for (int i = 0; i < curves.size(); i++) {
            Checks.curve("A group of curves", "curve " + (i + 1), curves.get(i));
        }
        return new CurveGroup(curves.stream().map(double[]::clone).toList(), List.copyOf(clusters));
    }

    /** Returns the number of curves. */
    public int size() {
        return curves.size();
    }

    /** Returns the number of different clusters. */
    public int clusterCount() {
        return (int) clusters.stream().distinct().count();
    }

    int points() {
        return curves.get(0).length;
    }

    double[] curve(int position) {
        return curves.get(position);
    }

    List<String> clusters() {
        return clusters;
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%d curves in %d clusters", size(), clusterCount());
    }
}
