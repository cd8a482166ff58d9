package parchment.gather;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import parchment.quantity.Elapsed;
import parchment.sheet.Words;

/**
 * Tells of recordings in two files that may be of one roast, as two loggers on one machine leave them: charged at about one time, with the lowest and the
 * highest bean temperature at about one time since. They stay two batches, for two machines may run side by side. The figures are our own.
 */
final class RecordedTwice {
    static final long CHARGE_SECONDS = 90;
    static final double TURN_SECONDS = 20;

    private RecordedTwice() {}

    /** Tells of each such pair. */
    static void tell(List<GatheredBatch> batches, GatherQuestions questions) {
        List<GatheredBatch> timed = new ArrayList<>(batches.stream()
                .filter(batch ->
                        batch.recording().isPresent() && batch.roastedAt().isPresent() && batch.part() == 0)
                .toList());
        timed.sort(Comparator.comparing(batch -> batch.roastedAt().orElseThrow()));
        for (int i = 0; i < timed.size(); i++) {
            for (int k = i + 1; k < timed.size() && apart(timed.get(i), timed.get(k)) <= CHARGE_SECONDS; k++) {
                tell(timed.get(i), timed.get(k), questions);
            }
        }
    }

    private static long apart(GatheredBatch one, GatheredBatch other) {
        return Duration.between(one.roastedAt().orElseThrow(), other.roastedAt().orElseThrow())
                .toSeconds();
    }

    private static void tell(GatheredBatch one, GatheredBatch other, GatherQuestions questions) {
        boolean alike = Math.abs(one.hottestSecond() - other.hottestSecond()) <= TURN_SECONDS
                && Math.abs(lowest(one) - lowest(other)) <= TURN_SECONDS;
        if (alike) {
            questions.leaveOut("Batches " + Words.quote(one.name()) + " and " + Words.quote(other.name())
                    + " may be one roast that two loggers recorded: charged " + Elapsed.seconds(apart(one, other))
                    + " apart, and hottest at " + Elapsed.seconds(one.hottestSecond()) + " and "
                    + Elapsed.seconds(other.hottestSecond())
                    + " after the charge. They are written as two; if they are one, take one of the files out of the folder and"
                    + " gather into a new one.");
        }
    }

    private static double lowest(GatheredBatch batch) {
        return batch.recording()
                .map(recording -> recording.lowestSecond() - batch.zero())
                .orElse(Double.NaN);
    }
}
