package parchment.phase;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import parchment.curve.CleanCurve;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.MarkKind;
import parchment.quantity.Elapsed;
import parchment.quantity.Unit;

class EndOfRoastTest {
    private static MarkFinder.Result begun(double end, Optional<OnCurve.Found> fall) {
        Curve curve = ExampleRoast.curve("bean temperature", Unit.TEMPERATURE, t -> 100 + t / 6, 0, end, 2);
        return new MarkFinder.Result(
                Map.of(),
                Map.of(),
                List.of(),
                0,
                MarkFinder.CurveUse.USED,
                fall,
                Optional.of(CleanCurve.of(curve)),
                Optional.empty());
    }

    private static EndOfRoast of(double[] written, double[] end, boolean... falls) {
        List<Batch> batches = new ArrayList<>();
        List<MarkFinder.Result> results = new ArrayList<>();
        for (int i = 0; i < written.length; i++) {
            batches.add(Batch.named("b" + i)
                    .writtenMark(MarkKind.DROP, Elapsed.seconds(written[i]))
                    .build());
            results.add(begun(end[i], falls.length > 0 ? Optional.of(new OnCurve.Found(600, 0.6)) : Optional.empty()));
        }
        return EndOfRoast.of(batches, results);
    }

    @Test
    void takesTheUsualWithFewerThanEightBatches() {
        double[] written = {600, 600, 600, 600, 600, 600, 600};
        double[] end = {604, 604, 606, 604, 604, 606, 604};
        EndOfRoast ends = of(written, end);
        assertEquals(0, ends.lateSeconds());
        assertEquals(5, ends.lateError());
        assertEquals(2, ends.writtenError(2));
        assertEquals("the log ends", ends.how());
    }

    @Test
    void readsOffEightBatchesHowLateTheLoggerIsStopped() {
        double[] written = {600, 600, 600, 600, 600, 600, 600, 600};
        double[] end = {602, 602, 604, 604, 604, 604, 606, 606};
        EndOfRoast ends = of(written, end);
        assertEquals(4, ends.lateSeconds());
        // Median distance of 1 s from the median, times 1.4826.
        assertEquals(1.4826, ends.lateError(), 1e-3);
        assertEquals("the log ends, by 8 batches usually 4 s after the drop", ends.how());
        assertEquals(2, ends.writtenError(2));
    }

    @Test
    void readsOffTheFallHowFarOffADropIsWritten() {
        double[] written = {602, 602, 602, 603, 603, 604, 604, 604};
        double[] end = {640, 640, 640, 640, 640, 640, 640, 640};
        EndOfRoast ends = of(written, end, true);
        // Always 3 s late, give or take 1.4826 s; the fall itself is off by 0.6 s.
        assertEquals(Math.sqrt(9 + 1.4826 * 1.4826 - 0.36), ends.writtenError(2), 1e-3);
        assertEquals(0, ends.lateSeconds());
    }
}
