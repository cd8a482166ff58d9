package parchment.stats.warp;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Times dynamic time warping beside Smile's and elastic alignment, in JMH; run by {@code warping_speed.py}, which says how.
 *
 * <p>The curves come from a file named by the property {@code parchment.curves}: 8-byte numbers, lowest byte first, 800 to a curve.
 * Smile is used here only, not by the library. {@link WarpingAnswers} compares
 * what both sides answer.
 */
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 500, timeUnit = TimeUnit.MILLISECONDS)
@Measurement(iterations = 5, time = 500, timeUnit = TimeUnit.MILLISECONDS)
@Fork(2)
public class WarpingBenchmark {
    static final int POINTS = 800;
    static final int RADIUS = 80;
    static final DynamicTimeWarping PLAIN = DynamicTimeWarping.of(StepPattern.SYMMETRIC1);
    static final DynamicTimeWarping PRUNED = PLAIN.withPruning(Pruning.UPPER_BOUND);
    static final DynamicTimeWarping BAND = PLAIN.withWindow(Window.band(RADIUS));

    /** The first two curves. */
    @State(Scope.Thread)
    public static class Pair {
        double[] first = {};
        double[] second = {};

        @Setup
        public void read() throws IOException {
            List<double[]> curves = curves(2);
            first = curves.get(0);
            second = curves.get(1);
        }
    }

    /** The first hundred curves. */
    @State(Scope.Thread)
    public static class Hundred {
        List<double[]> curves = List.of();

        @Setup
        public void read() throws IOException {
            curves = curves(100);
        }
    }

    /** The first 10,000 curves and the twenty after them, asked for in turn. */
    @State(Scope.Thread)
    public static class Library {
        List<double[]> curves = List.of();
        List<double[]> queries = List.of();
        CurveLibrary library = CurveLibrary.of(List.of(new double[] {0, 0}), 1);
        private int asked;

        @Setup
        public void read() throws IOException {
            List<double[]> all = curves(10_020);
            curves = all.subList(0, 10_000);
            queries = all.subList(10_000, 10_020);
            library = CurveLibrary.of(curves, RADIUS);
        }

        double[] next() {
            return queries.get(asked++ % queries.size());
        }
    }

    /** A curve of 201 points, straight between them, and the same on another clock. */
    @State(Scope.Thread)
    public static class Bent {
        final double[] times = new double[201];
        final double[] plain = new double[201];
        final double[] warped = new double[201];

        @Setup
        public void bend() {
            for (int k = 0; k <= 200; k++) {
                times[k] = k / 200.0;
                plain[k] = wave(times[k]);
                warped[k] = wave(Math.expm1(2 * times[k]) / Math.expm1(2));
            }
        }

        private static double wave(double t) {
            return Math.sin(2 * Math.PI * t) + 0.4 * Math.cos(5 * Math.PI * t) + t;
        }
    }

    @Benchmark
    public double fullOurs(Pair pair) {
        return PLAIN.distance(pair.first, pair.second);
    }

    @Benchmark
    public double fullOursPruned(Pair pair) {
        return PRUNED.distance(pair.first, pair.second);
    }

    @Benchmark
    public double fullSmile(Pair pair) {
        return smile.math.distance.DynamicTimeWarping.d(pair.first, pair.second);
    }

    @Benchmark
    public WarpingPath pathOurs(Pair pair) {
        return PLAIN.align(pair.first, pair.second);
    }

    @Benchmark
    public double bandOurs(Pair pair) {
        return BAND.distance(pair.first, pair.second);
    }

    @Benchmark
    public double bandSmile(Pair pair) {
        return smile.math.distance.DynamicTimeWarping.d(pair.first, pair.second, RADIUS);
    }

    @Benchmark
    @BenchmarkMode(Mode.SingleShotTime)
    @Warmup(iterations = 2)
    @Measurement(iterations = 4)
    public DistanceTable pairsOurs(Hundred hundred) {
        return PLAIN.distances(hundred.curves);
    }

    @Benchmark
    @BenchmarkMode(Mode.SingleShotTime)
    @Warmup(iterations = 2)
    @Measurement(iterations = 4)
    public DistanceTable pairsOursPruned(Hundred hundred) {
        return PRUNED.distances(hundred.curves);
    }

    @Benchmark
    @BenchmarkMode(Mode.SingleShotTime)
    @Warmup(iterations = 1)
    @Measurement(iterations = 2)
    public double pairsSmile(Hundred hundred) {
        return smilePairs(hundred.curves);
    }

    @Benchmark
    @Warmup(iterations = 4, time = 1)
    @Measurement(iterations = 5, time = 1)
    public CurveLibrary.Neighbour nearestOurs(Library library) {
        return library.library.nearest(library.next(), 1).get(0);
    }

    @Benchmark
    @BenchmarkMode(Mode.SingleShotTime)
    @Warmup(iterations = 1)
    @Measurement(iterations = 3)
    public double nearestOursBrute(Library library) {
        double[] query = library.next();
        double least = Double.POSITIVE_INFINITY;
        for (double[] curve : library.curves) {
            least = Math.min(least, BAND.distance(query, curve));
        }
        return least;
    }

    @Benchmark
    @BenchmarkMode(Mode.SingleShotTime)
    @Warmup(iterations = 1)
    @Measurement(iterations = 2)
    public double nearestSmileBrute(Library library) {
        double[] query = library.next();
        double least = Double.POSITIVE_INFINITY;
        for (double[] curve : library.curves) {
            least = Math.min(least, smile.math.distance.DynamicTimeWarping.d(query, curve, RADIUS));
        }
        return least;
    }

    @Benchmark
    public ElasticMatch elastic(Bent bent) {
        return ElasticAlignment.of(200).align(bent.times, bent.warped, bent.plain);
    }

    static double smilePairs(List<double[]> curves) {
        double sum = 0;
        for (int i = 0; i < curves.size(); i++) {
            for (int j = 0; j < i; j++) {
                sum += smile.math.distance.DynamicTimeWarping.d(curves.get(i), curves.get(j));
            }
        }
        return sum;
    }

    static List<double[]> curves(int count) throws IOException {
        byte[] bytes = Files.readAllBytes(Path.of(System.getProperty("parchment.curves")));
        var numbers = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).asDoubleBuffer();
        List<double[]> curves = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double[] curve = new double[POINTS];
            numbers.get(curve);
            curves.add(curve);
        }
        return curves;
    }
}
