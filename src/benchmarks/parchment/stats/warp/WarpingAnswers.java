package parchment.stats.warp;

import java.io.IOException;
import java.util.List;
import java.util.Locale;

/** Checks, before {@link WarpingBenchmark} is timed, that both sides answer the same; prints the answers for the page. */
final class WarpingAnswers {
    private WarpingAnswers() {}

    public static void main(String[] arguments) throws IOException {
        List<double[]> curves = WarpingBenchmark.curves(10_020);
        double[] a = curves.get(0);
        double[] b = curves.get(1);
        same("full", smile.math.distance.DynamicTimeWarping.d(a, b), WarpingBenchmark.PLAIN.distance(a, b));
        same("pruned", smile.math.distance.DynamicTimeWarping.d(a, b), WarpingBenchmark.PRUNED.distance(a, b));
        same(
                "path",
                smile.math.distance.DynamicTimeWarping.d(a, b),
                WarpingBenchmark.PLAIN.align(a, b).distance());
        same(
                "band",
                smile.math.distance.DynamicTimeWarping.d(a, b, WarpingBenchmark.RADIUS),
                WarpingBenchmark.BAND.distance(a, b));
        List<double[]> hundred = curves.subList(0, 100);
        double peer = WarpingBenchmark.smilePairs(hundred);
        same("pairs", peer, total(WarpingBenchmark.PLAIN.distances(hundred)));
        same("pairs pruned", peer, total(WarpingBenchmark.PRUNED.distances(hundred)));
        CurveLibrary library = CurveLibrary.of(curves.subList(0, 10_000), WarpingBenchmark.RADIUS);
        double found = 0;
        double least = 0;
        for (double[] query : curves.subList(10_000, 10_003)) {
            found += library.nearest(query, 1).get(0).distance();
            double nearest = Double.POSITIVE_INFINITY;
            for (double[] curve : curves.subList(0, 10_000)) {
                nearest = Math.min(
                        nearest, smile.math.distance.DynamicTimeWarping.d(query, curve, WarpingBenchmark.RADIUS));
            }
            least += nearest;
        }
        same("nearest", least, found);
        WarpingBenchmark.Bent bent = new WarpingBenchmark.Bent();
        bent.bend();
        ElasticMatch match = ElasticAlignment.of(200).align(bent.times, bent.warped, bent.plain);
        System.out.printf(Locale.ROOT, "elastic,%.12f,%.6f%n", match.phaseDistance(), match.amplitudeDistance());
    }

    private static double total(DistanceTable table) {
        double sum = 0;
        for (int i = 0; i < table.size(); i++) {
            for (int j = 0; j < i; j++) {
                sum += table.distance(i, j);
            }
        }
        return sum;
    }

    private static void same(String what, double peer, double ours) {
        if (!(Math.abs(peer - ours) <= 1e-12 * peer)) {
            throw new AssertionError(what + ": " + ours + " in place of " + peer);
        }
        System.out.printf(Locale.ROOT, "%s,%.6f,%.6f%n", what, peer, ours);
    }
}
