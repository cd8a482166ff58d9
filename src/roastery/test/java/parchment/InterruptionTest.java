package parchment;

import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static parchment.feature.Features.dropTemperature;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import parchment.display.Interruption;
import parchment.evidence.Evidence;
import parchment.logbook.Logbook;
import parchment.stats.resample.GroupBootstrap;
import parchment.stats.resample.Permutation;
import parchment.stats.resample.PermutationTest;
import parchment.stats.warp.DynamicTimeWarping;
import parchment.stats.warp.ElasticAlignment;
import parchment.stats.warp.StepPattern;
import parchment.virtual.Scenario;
import parchment.virtual.VirtualRoastery;

/** Holds that long work of the library ends within a second of an interrupt, with no help from outside its loops. */
class InterruptionTest {
    private static final long SECOND = 1_000_000_000L;

    /** Repeats that would take far longer than the test waits. */
    private static final int MANY = 3_000_000;

    private final Set<Thread> asked = ConcurrentHashMap.newKeySet();

    @TempDir
    Path folder;

    @AfterEach
    void forgetTheInterrupt() {
        asked.forEach(Interruption::forget);
    }

    /** Runs work that would last far longer, interrupts it, and looks at the time between the two. */
    private void assertStops(Executable work) {
        assertTimeoutPreemptively(Duration.ofSeconds(30), () -> {
            Thread caller = Thread.currentThread();
            asked.add(caller);
            long[] begin = new long[1];
            // A thread of its own: from Java 25 on a delayed task waits for the common pool, which the work may fill.
            Thread asking = new Thread(() -> askLater(caller, begin), "stop button");
            asking.start();
            assertThrows(CancellationException.class, work);
            asking.join();
            long took = System.nanoTime() - begin[0];
            assertTrue(took < SECOND, "stopped " + took / 1_000_000 + " ms after it was asked");
        });
    }

    private static void askLater(Thread caller, long[] begin) {
        try {
            TimeUnit.MILLISECONDS.sleep(300);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
        begin[0] = System.nanoTime();
        Interruption.ask(caller);
    }

    private static List<double[]> curves(int count, int samples) {
        SplittableRandom random = new SplittableRandom(1);
        return Stream.generate(() -> random.doubles(samples).toArray())
                .limit(count)
                .toList();
    }

    @Test
    void stopsAllPairsOfWarpedCurves() {
        List<double[]> curves = curves(400, 900);
        assertStops(() -> DynamicTimeWarping.of(StepPattern.SYMMETRIC2).distances(curves));
    }

    @Test
    void stopsOneVeryLargeWarp() {
        List<double[]> curves = curves(2, 15_000);
        assertStops(() -> {
            while (true) {
                DynamicTimeWarping.of(StepPattern.SYMMETRIC2).align(curves.get(0), curves.get(1));
            }
        });
    }

    @Test
    void stopsAnElasticMean() {
        double[] times = IntStream.range(0, 600).asDoubleStream().toArray();
        List<double[]> curves = curves(200, 600);
        assertStops(() -> ElasticAlignment.of(200).mean(times, curves));
    }

    @Test
    void stopsAPermutationTest() {
        Permutation permutation = Permutation.withinBlocks(
                IntStream.range(0, 500).mapToObj(i -> "lot " + i % 5).toList(), 1);
        assertStops(() -> PermutationTest.run(permutation, MANY, order -> new double[] {order[0]}));
    }

    @Test
    void stopsABootstrap() {
        GroupBootstrap bootstrap = GroupBootstrap.of(
                IntStream.range(0, 500).mapToObj(i -> "day " + i % 50).toList(), 1);
        assertStops(() -> bootstrap.interval(MANY, 0.9, draw -> draw.rows()[0]));
    }

    @Test
    void stopsTheVirtualRoastery() {
        assertStops(() -> VirtualRoastery.of(Scenario.named("big-works"))
                .withBatches(100_000)
                .run());
    }

    @Test
    void stopsAnAnswerFromEvidence() throws IOException {
        VirtualRoastery.harbour().withBatches(60).run().writeTo(folder);
        Logbook logbook = Logbook.open(folder);
        assertNotNull(Evidence.of("sweetness", dropTemperature(), logbook));
        assertStops(() -> {
            while (true) {
                Evidence.of("sweetness", dropTemperature(), logbook);
            }
        });
    }
}
