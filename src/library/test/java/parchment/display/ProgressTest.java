package parchment.display;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProgressTest {
    private final Page page = new Page();
    private final Display.Shown shown = Display.on(page);

    /** Keeps what was shown, one list per place. */
    private static final class Page implements Display.Target {
        final List<List<String>> places = Collections.synchronizedList(new ArrayList<>());

        @Override
        public void show(Object value) {
            throw new AssertionError("progress moves, it is not shown once");
        }

        @Override
        public Display.Moving moving() {
            List<String> place = Collections.synchronizedList(new ArrayList<>());
            places.add(place);
            return new Display.Moving() {
                @Override
                public void now(Showable value) {
                    place.add(value.text());
                }

                @Override
                public void last(Showable value) {
                    place.add(value.text());
                }
            };
        }
    }

    /** A time that passes when it is told to. */
    private static final class ToldTime implements ProgressClock.Time {
        private final List<Waking> wakings = new ArrayList<>();
        private long milliseconds;

        private static final class Waking {
            private long next;
            private boolean ended;
        }

        @Override
        public long nanoseconds() {
            return 1_000_000 * milliseconds;
        }

        @Override
        public ProgressClock.Ticks every(BooleanSupplier work) {
            Waking waking = new Waking();
            waking.next = milliseconds + ProgressClock.SILENT_MS;
            wakings.add(waking);
            works.add(work);
            return () -> waking.ended = true;
        }

        private final List<BooleanSupplier> works = new ArrayList<>();

        void pass(long more) {
            long until = milliseconds + more;
            for (; milliseconds < until; milliseconds++) {
                for (int i = 0; i < wakings.size(); i++) {
                    Waking waking = wakings.get(i);
                    if (!waking.ended && waking.next == milliseconds) {
                        waking.ended = !works.get(i).getAsBoolean();
                        waking.next += ProgressClock.TICK_MS;
                    }
                }
            }
        }
    }

    private final ToldTime time = new ToldTime();

    @AfterEach
    void takeThePageAway() {
        shown.close();
        Interruption.forget(Thread.currentThread());
    }

    @Test
    void showsNothingOfShortWork() {
        for (int batch : Progress.over(List.of(1, 2, 3), "measuring batches", time)) {
            time.pass(600L + batch);
        }
        time.pass(5000);
        assertEquals(List.of(), page.places);
    }

    @Test
    void showsWorkFromTwoSecondsOn() {
        try (Progress progress = Progress.of(4, "asking questions", time)) {
            progress.step();
            time.pass(2000);
            assertEquals(List.of(), page.places);
            time.pass(1);
            assertEquals(List.of("asking questions: 1 of 4, about 6 seconds left"), page.places.get(0));
            time.pass(10_000);
            assertTrue(page.places.get(0).size() <= 41, "at most four a second: " + page.places);
        }
    }

    @Test
    void tellsOfTheOuterWorkAloneAndLeavesOneSentence() {
        try (Progress outer = Progress.of(4, "asking questions", time);
                Progress inner = Progress.of(100, "shuffling", time)) {
            outer.step();
            inner.step();
            time.pass(3200);
            outer.step();
            outer.step();
            outer.step();
        }
        assertEquals(1, page.places.size());
        List<String> told = page.places.get(0);
        assertTrue(told.get(0).matches("asking questions: 1 of 4, about [5-8] seconds left"), told.toString());
        assertEquals("asking questions: all 4 in 3 seconds", told.get(told.size() - 1));
        assertTrue(told.size() <= 7, "at most four a second: " + told);
    }

    @Test
    void tellsOfWorkThatComesAfterOtherWork() {
        for (String work : List.of("first", "second")) {
            try (Progress progress = Progress.of(1, work, time)) {
                time.pass(2300);
                progress.step();
            }
        }
        assertEquals(
                List.of("first: all 1 in 2 seconds", "second: all 1 in 2 seconds"),
                page.places.stream().map(told -> told.get(told.size() - 1)).toList());
    }

    @Test
    void countsStepsOfSeveralThreads() {
        try (Progress progress = Progress.of(1000, "counting")) {
            IntStream.range(0, 1000).parallel().forEach(i -> progress.step());
            assertEquals(1000, progress.done());
        }
    }

    @Test
    void stopsALoopThatIsInterrupted() {
        List<Integer> seen = new ArrayList<>();
        assertThrows(CancellationException.class, () -> {
            for (int item : Progress.over(List.of(1, 2, 3), "counting")) {
                seen.add(item);
                Thread.currentThread().interrupt();
            }
        });
        assertEquals(List.of(1), seen);
        assertTrue(Thread.interrupted(), "the interrupt stays set for the loops around");
    }

    @Test
    void stopsTheWorkersWhenTheirCallerIsInterrupted() {
        AtomicInteger seen = new AtomicInteger();
        Thread caller = Thread.currentThread();
        assertThrows(CancellationException.class, () -> {
            try (Progress progress = Progress.of(100_000, "counting")) {
                IntStream.range(0, 100_000).parallel().forEach(i -> {
                    if (seen.incrementAndGet() == 10) {
                        Interruption.ask(caller);
                    }
                    progress.step();
                });
            }
        });
        assertTrue(seen.get() < 1000, "steps after the interrupt: " + seen);
    }

    /** By the machine's time. */
    @Test
    void saysWhereStoppedWorkWas() throws InterruptedException {
        try (Progress progress = Progress.of(400, "shuffling batches")) {
            progress.step();
            Thread.sleep(2300);
        }
        List<String> told = page.places.get(0);
        assertEquals("shuffling batches: stopped at 1 of 400 after 2 seconds", told.get(told.size() - 1));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "3000|100|about 6 seconds left",
                "4000|150|about 4 seconds left",
                "10000|100|about 20 seconds left",
                "60000|100|about 2 minutes left",
                "9000000|100|about 5 hours left",
                "3000|0|time left not known yet",
                "5000|299|about 1 second left",
            })
    void tellsTheTimeLeftInWords(long took, long done, String words) {
        ProgressNote note = new ProgressNote("reading", done, 300, Duration.ofMillis(took), ProgressNote.State.RUNNING);
        assertEquals("reading: " + done + " of 300, " + words, note.text());
    }

    @Test
    void drawsABarThatIsEscaped() {
        String html = new ProgressNote("<b>", 3, 12, Duration.ofSeconds(3), ProgressNote.State.RUNNING)
                .html()
                .orElseThrow();
        assertTrue(html.contains("<progress value=\"3\" max=\"12\" aria-label=\"&lt;b&gt;\">"), html);
        assertFalse(html.contains("<b>"), html);
    }

    @Test
    void refusesANegativeNumberOfSteps() {
        assertThrows(IllegalArgumentException.class, () -> Progress.of(-1, "nothing"));
    }
}
