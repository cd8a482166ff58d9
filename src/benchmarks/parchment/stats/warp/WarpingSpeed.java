package parchment.stats.warp;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.ToDoubleBiFunction;

/**
 * Times dynamic time warping beside Smile 3.1.1's in one process, and elastic alignment; prints medians and ratios.
 *
 * <p>Smile is used here only, not by the library. To run, from the folder of the root pom, after {@code mvn -q -pl src compile}:
 *
 * <pre>
 * mvn -q dependency:copy -Dartifact=com.github.haifengl:smile-base:3.1.1 -DoutputDirectory=target/peers
 * mvn -q dependency:copy -Dartifact=org.slf4j:slf4j-api:2.0.17 -DoutputDirectory=target/peers
 * java -cp "src/target/classes:target/peers/*" src/benchmarks/parchment/stats/warp/WarpingSpeed.java
 * </pre>
 */
final class WarpingSpeed {
    private static final int POINTS = 800;
    private static final int CURVES = 100;

    private WarpingSpeed() {}

    public static void main(String[] arguments) {
        List<double[]> curves = curves(CURVES);
        DynamicTimeWarping plain = DynamicTimeWarping.of(StepPattern.SYMMETRIC1);
        DynamicTimeWarping pruned = plain.withPruning(Pruning.UPPER_BOUND);
        DynamicTimeWarping doubled = DynamicTimeWarping.of(StepPattern.SYMMETRIC2);
        DynamicTimeWarping band = plain.withWindow(Window.band(80));
        System.out.printf(
                Locale.ROOT,
                "Java %s, %d processors; medians of 101 calls after 300 unmeasured ones, curves of %d points%n",
                System.getProperty("java.version"),
                Runtime.getRuntime().availableProcessors(),
                POINTS);
        double peer = one(curves, "Smile 3.1.1, full", Double.NaN, smile.math.distance.DynamicTimeWarping::d);
        one(curves, "full, weights 1", peer, plain::distance);
        one(curves, "full, weights 1, pruned", peer, pruned::distance);
        one(curves, "full, diagonal 2", peer, doubled::distance);
        one(curves, "full, diagonal 2, pruned", peer, doubled.withPruning(Pruning.UPPER_BOUND)::distance);
        one(
                curves,
                "full, weights 1, with its path",
                peer,
                (a, b) -> plain.align(a, b).distance());
        double peerBand = one(
                curves,
                "Smile 3.1.1, band of 80",
                Double.NaN,
                (a, b) -> smile.math.distance.DynamicTimeWarping.d(a, b, 80));
        one(curves, "band of 80", peerBand, band::distance);

        double all = pairs("Smile 3.1.1, all pairs, one thread", Double.NaN, () -> {
            double sum = 0;
            for (int i = 0; i < CURVES; i++) {
                for (int j = 0; j < i; j++) {
                    sum += smile.math.distance.DynamicTimeWarping.d(curves.get(i), curves.get(j));
                }
            }
            return sum;
        });
        pairs("all pairs, all processors", all, () -> total(plain.distances(curves)));
        pairs("all pairs, all processors, pruned", all, () -> total(pruned.distances(curves)));

        nearest();
        elastic();
    }

    /** The nearest of 10,000 curves, beside all 10,000 distances with the same code. */
    private static void nearest() {
        List<double[]> many = curves(10_000);
        int radius = POINTS / 10;
        CurveLibrary library = CurveLibrary.of(many, radius);
        DynamicTimeWarping band = DynamicTimeWarping.of(StepPattern.SYMMETRIC1).withWindow(Window.band(radius));
        List<double[]> queries = curves(10_020).subList(10_000, 10_020);
        double[] ratios = new double[queries.size()];
        double[] times = new double[queries.size()];
        for (int round = 0; round < 2; round++) {
            for (int q = 0; q < ratios.length; q++) {
                long start = System.nanoTime();
                CurveLibrary.Neighbour found =
                        library.nearest(queries.get(q), 1).get(0);
                times[q] = (System.nanoTime() - start) / 1e6;
                if (q < 5) {
                    start = System.nanoTime();
                    double least = Double.POSITIVE_INFINITY;
                    for (double[] curve : many) {
                        least = Math.min(least, band.distance(queries.get(q), curve));
                    }
                    ratios[q] = (System.nanoTime() - start) / 1e6 / times[q];
                    if (least != found.distance()) {
                        throw new AssertionError("nearest " + found + " but brute force finds " + least);
                    }
                }
            }
        }
        double[] tried = Arrays.copyOf(ratios, 5);
        Arrays.sort(tried);
        Arrays.sort(times);
        System.out.printf(
                Locale.ROOT,
                "nearest of 10,000 in a band of %d: median %.1f ms of %d queries; %.0f times as fast as all distances"
                        + " (%.0f to %.0f in 5 queries)%n",
                radius,
                times[times.length / 2],
                times.length,
                tried[2],
                tried[0],
                tried[4]);
    }

    private static double one(
            List<double[]> curves, String name, double peer, ToDoubleBiFunction<double[], double[]> distance) {
        double sum = 0;
        for (int k = 0; k < 300; k++) {
            sum += distance.applyAsDouble(curves.get(k % 10), curves.get(10 + k % 20));
        }
        double[] times = new double[101];
        for (int k = 0; k < times.length; k++) {
            long start = System.nanoTime();
            sum += distance.applyAsDouble(curves.get(k % 10), curves.get(10 + k % 20));
            times[k] = (System.nanoTime() - start) / 1e6;
        }
        Arrays.sort(times);
        double median = times[times.length / 2];
        System.out.printf(
                Locale.ROOT,
                "%-36s %7.3f ms (%.3f to %.3f)%s, check %.4f%n",
                name,
                median,
                times[0],
                times[times.length - 1],
                Double.isNaN(peer) ? "" : String.format(Locale.ROOT, ", %.1f times as fast", peer / median),
                sum);
        return median;
    }

    private interface Job {
        double run();
    }

    private static double pairs(String name, double peer, Job job) {
        double[] times = new double[3];
        double sum = job.run();
        for (int k = 0; k < times.length; k++) {
            long start = System.nanoTime();
            sum = job.run();
            times[k] = (System.nanoTime() - start) / 1e9;
        }
        Arrays.sort(times);
        System.out.printf(
                Locale.ROOT,
                "%-36s %7.3f s%s, check %.4f%n",
                name,
                times[1],
                Double.isNaN(peer) ? "" : String.format(Locale.ROOT, ", %.1f times as fast", peer / times[1]),
                sum);
        return times[1];
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

    private static void elastic() {
        double exact = 0.278855638417920;
        double[] t = new double[801];
        double[] plain = new double[801];
        double[] warped = new double[801];
        for (int k = 0; k <= 800; k++) {
            t[k] = k / 800.0;
            plain[k] = wave(t[k]);
            warped[k] = wave(Math.expm1(2 * t[k]) / Math.expm1(2));
        }
        for (int cells : new int[] {50, 100, 200, 400}) {
            ElasticAlignment alignment = ElasticAlignment.of(cells);
            double[] times = new double[31];
            ElasticMatch match = alignment.align(t, warped, plain);
            for (int k = 0; k < 2 * times.length; k++) {
                long start = System.nanoTime();
                match = alignment.align(t, warped, plain);
                times[k / 2] = (System.nanoTime() - start) / 1e6;
            }
            Arrays.sort(times);
            System.out.printf(
                    Locale.ROOT,
                    "elastic alignment on %d cells and half of them %.1f ms; phase distance off its closed form by %.1e,"
                            + " amplitude distance %.4f in place of 0%n",
                    cells,
                    times[times.length / 2],
                    match.phaseDistance() - exact,
                    match.amplitudeDistance());
        }
    }

    private static double wave(double t) {
        return Math.sin(2 * Math.PI * t) + 0.4 * Math.cos(5 * Math.PI * t) + t;
    }

    /** Rising curves with an early dip, noise and a bent clock: invented, with a fixed seed. */
    private static List<double[]> curves(int count) {
        SplittableRandom random = new SplittableRandom(20240501);
        List<double[]> curves = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double rate = 0.0025 * Math.exp(0.1 * random.nextGaussian());
            double top = 230 + 8 * random.nextGaussian();
            double width = 45 + 4 * random.nextGaussian();
            double bend = Math.exp(0.15 * random.nextGaussian());
            double[] curve = new double[POINTS];
            for (int k = 0; k < POINTS; k++) {
                double t = (POINTS - 1) * Math.pow(k / (POINTS - 1.0), bend);
                curve[k] = top
                        - (top - 25) * Math.exp(-rate * t)
                        + 90 * Math.exp(-t / width - rate * t)
                        + 0.3 * random.nextGaussian();
            }
            curves.add(curve);
        }
        return curves;
    }
}
