package parchment.kernel.stop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Field;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.display.Interruption;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.cell.RecordingPage;
import parchment.kernel.page.Outcome;
import parchment.kernel.words.CellError;

/** The stop button ends whatever a cell does within a second, and the next cell runs. */
class StoppingTest {
    /** Far more than the second that docs/measurements/kernel.md holds it to, for machines that run eight builds at once. */
    private static final long LONGEST_NANOSECONDS = 5_000_000_000L;

    private static Evaluator evaluator;

    @BeforeAll
    static void open() {
        evaluator = Evaluator.open();
        Outcome defined = evaluator.run("""
                int hashCode = 0;
                final Object LOCK = new Object();
                int fib(int n) { return n < 2 ? n : fib(n - 1) + fib(n - 2); }
                int swallowing(int n) {
                    try { return swallowing(n + 1); } catch (Throwable t) { return swallowing(n); }
                }
                class Counting implements PrimitiveIterator.OfInt {
                    public boolean hasNext() { return true; }
                    public int nextInt() { return 1; }
                }""", new RecordingPage());
        assertTrue(defined.fine());
    }

    @AfterAll
    static void close() {
        evaluator.close();
    }

    private final RecordingPage page = new RecordingPage();

    private String shownBy(String code) {
        Outcome outcome = evaluator.run(code, page);
        assertTrue(outcome.fine(), () -> outcome.error().orElseThrow().text());
        return page.result();
    }

    private CellError errorOf(String code) {
        Outcome outcome = evaluator.run(code, page);
        assertFalse(outcome.fine(), "the cell should fail");
        return outcome.error().orElseThrow();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "while (true) { }",
                "while (true) { try { Thread.sleep(10); } catch (Throwable t) { } }",
                "while (true) { try { throw new Exception(); } catch (Throwable t) { continue; } finally { hashCode++; } }",
                "int[] counts = new int[1000]; while (true) { for (int i = 0; i < 1000; i++) counts[i] += i; }",
                "fib(60);",
                "swallowing(1);",
                "Stream.iterate(1, i -> i + 1).mapToLong(i -> i).sum();",
                "IntStream.iterate(0, i -> i + 1).forEach(i -> { });",
                "new Random(1).doubles().map(d -> d * d).filter(d -> d > 2_000).findFirst();",
                "IntStream.iterate(0, i -> i + 1).parallel().forEach(i -> { });",
                "Stream.generate(Math::random).mapToDouble(Double::doubleValue).sum();",
                "Stream.generate(ArrayList::new).mapToInt(List::size).sum();",
                "var words = new StringBuilder(); Stream.generate(words::length).mapToInt(Integer::intValue).sum();",
                "new Counting().forEachRemaining((IntConsumer) i -> { });",
                "Thread.sleep(60_000);",
                "synchronized (LOCK) { LOCK.wait(); }",
                "new java.util.concurrent.LinkedBlockingQueue<Integer>().take();",
                "new java.util.concurrent.CountDownLatch(1).await();",
                "var all = java.util.concurrent.Executors.newFixedThreadPool(2); all.submit(() -> { while (true) { } }).get();",
                "java.util.concurrent.CompletableFuture.runAsync(() -> { while (true) { } }).join();",
            })
    void stopsWhatACellDoes(String statement) {
        assertStops(statement);
        assertEquals("", page.err());
    }

    @Test
    void stopsAShufflingOfTheLibrary() {
        shownBy(
                "import parchment.stats.resample.*;\nvar rows = Permutation.withinBlocks(Collections.nCopies(200, \"a\"), 1);");
        assertStops("PermutationTest.run(rows, 3_000_000, order -> new double[] {order[0]});");
    }

    @Test
    void stopsAComparisonOfAllCurves() {
        shownBy("""
                import parchment.stats.warp.*;
                var curves = Stream.generate(() -> new Random(1).doubles(900).toArray()).limit(400).toList();""");
        assertStops("DynamicTimeWarping.of(StepPattern.SYMMETRIC2).distances(curves);");
    }

    @Test
    void stopsTheVirtualRoasteryOfTheLibrary() {
        assertStops("VirtualRoastery.of(Scenario.named(\"big-works\")).withBatches(20_000).run();");
    }

    /** Nothing of the cell is in this loop, and from Java 20 on nothing can end another thread. */
    @Test
    void leavesBehindWhatCannotBeStoppedAndSaysSo() throws InterruptedException {
        CellError error = stopped("new Random(1).doubles(300_000_000).sum();");
        if (Runtime.version().feature() < 20) {
            assertEquals(
                    "Interrupted: the cell was stopped before its end.",
                    error.lines().get(0));
        } else {
            assertEquals(
                    "Interrupted: the cell was stopped before its end.\nWhat it was doing inside `DoublePipeline.sum` cannot be"
                            + " ended from outside: it goes on in the background until it is done, and slows down what runs meanwhile."
                            + " To be rid of it, restart the kernel from the notebook's menu.",
                    error.text());
        }
        assertEquals("2", shownBy("1 + 1"));
    }

    /** Java 17 ends the thread outright; nothing of it may be kept from then on. */
    @Test
    void forgetsTheThreadsThatItHasEnded() throws ReflectiveOperationException {
        stopped("new Random(1).doubles(300_000_000).sum();");
        Field asked = Interruption.class.getDeclaredField("ASKED");
        asked.setAccessible(true);
        List<Thread> kept = ((Set<?>) asked.get(null))
                .stream()
                        .map(Thread.class::cast)
                        .filter(thread -> !LeftBehind.has(thread))
                        .toList();
        assertEquals(List.of(), kept);
    }

    @Test
    void endsWhatWasLeftBehindOnceItComesBackToTheCell() throws InterruptedException {
        shownBy("var turns = new java.util.concurrent.atomic.AtomicInteger();");
        stopped("while (true) { turns.incrementAndGet(); new Random(1).doubles(60_000_000).sum(); }");
        int before = Integer.parseInt(shownBy("turns.get()"));
        for (int i = 0; i < 100 && !LeftBehind.isEmpty(); i++) {
            TimeUnit.MILLISECONDS.sleep(50);
            LeftBehind.sweep();
        }
        assertTrue(LeftBehind.isEmpty(), "it has ended");
        assertEquals(before, Integer.parseInt(shownBy("turns.get()")), "it made no further turn");
    }

    @Test
    void endsTheThreadsThatCellsHaveStarted() {
        shownBy(
                "var own = new Thread(() -> { try { while (true) Thread.sleep(5); } catch (InterruptedException e) { } });\n"
                        + "var busy = new Thread(() -> { while (true) { } });\nown.start();\nbusy.start();");
        assertEquals("true", shownBy("own.isAlive() && busy.isAlive()"), "they outlive their cell");
        assertStops("while (true) { }");
        assertEquals("false", shownBy("own.isAlive() || busy.isAlive()"));
    }

    @Test
    void aPoolOfThreadsWorksOnAfterAStop() {
        shownBy("var pool = java.util.concurrent.Executors.newFixedThreadPool(1);");
        assertStops("pool.submit(() -> { while (true) { } }).get();");
        assertEquals("5", shownBy("pool.submit(() -> 5).get()"));
        shownBy("pool.shutdown();");
    }

    @Test
    void stopsAValueThatDrawsItselfWithoutEnd() {
        shownBy("record Endless(int a) implements Showable {\n"
                + "    public String text() { System.out.println(\"begun\"); while (true) { } }\n}");
        assertEquals("Interrupted", stoppedCell("new Endless(1)").name());
        assertEquals("2", shownBy("1 + 1"));
    }

    @Test
    void aStopAskedForBeforeTheCellCouldBeginIsKept() {
        Outcome outcome = evaluator.run(1, "int never = 1;", page, () -> true);
        assertEquals("Interrupted", outcome.error().orElseThrow().name());
        assertFalse(evaluator.run("never", page).fine());
        assertTrue(evaluator.run("1 + 1", page).fine());
    }

    @Test
    void aStopBetweenCellsIsForgotten() {
        evaluator.interrupt();
        assertEquals("2", shownBy("Thread.sleep(1);\n1 + 1"));
    }

    private void assertStops(String statement) {
        // A machine that is busy with other work may leave behind what would have ended a moment later.
        assertEquals(
                "Interrupted: the cell was stopped before its end.",
                stopped(statement).lines().get(0));
        assertEquals("2", shownBy("1 + 1"), "the session goes on");
    }

    private CellError stopped(String statement) {
        return stoppedCell("{ System.out.println(\"begun\"); " + statement + " }");
    }

    /** Runs a cell, interrupts it a while after it has begun, and looks at the time from then on. */
    private CellError stoppedCell(String cell) {
        AtomicLong asked = new AtomicLong();
        return assertTimeoutPreemptively(Duration.ofSeconds(30), () -> {
            Thread asking = new Thread(() -> interruptOnceBegun(asked), "stop button");
            asking.start(); // A thread of its own, because the cell may fill the common pool.
            CellError error = errorOf(cell);
            long took = System.nanoTime() - asked.get();
            assertTrue(took < LONGEST_NANOSECONDS, "stopped " + took / 1_000_000 + " ms after it was asked");
            return error;
        });
    }

    private void interruptOnceBegun(AtomicLong asked) {
        try {
            while (!page.out().contains("begun")) {
                TimeUnit.MILLISECONDS.sleep(5);
            }
            TimeUnit.MILLISECONDS.sleep(150);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
        asked.set(System.nanoTime());
        evaluator.interrupt();
    }
}
