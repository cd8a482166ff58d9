package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Two recordings that may be of one roast are told, and stay two batches. */
class RecordedTwiceTest {
    private static List<String> told(GatheredBatch... batches) {
        GatherQuestions questions = new GatherQuestions(Map.of());
        RecordedTwice.tell(List.of(batches), questions);
        return questions.leftOut();
    }

    @Test
    void twoRecordingsOfOneTimeThatAreHottestAtOneTimeAreTold() {
        assertEquals(
                List.of(
                        "Batches 'a' and 'b' may be one roast that two loggers recorded: charged 0:20 apart, and hottest at"
                                + " 10:00 and 10:00 after the charge. They are written as two; if they are one, take one of the"
                                + " files out of the folder and gather into a new one."),
                told(
                        MadeJoins.curveAt("b", MadeJoins.EIGHT.plusSeconds(20)),
                        MadeJoins.curveAt("c", MadeJoins.EIGHT.plusHours(1)),
                        MadeJoins.curveAt("a", MadeJoins.EIGHT)));
    }

    @ParameterizedTest
    @CsvSource({"90, 0, 1", "91, 0, 0", "10, 20, 1", "10, 21, 0"})
    void chargesAndHottestReadingsAreNear(int seconds, double zero, int pairs) {
        GatheredBatch other = MadeJoins.curveAt("b", MadeJoins.EIGHT.plusSeconds(seconds));
        GatheredBatch moved = new GatheredBatch(
                other.name(),
                0,
                other.roastedAt(),
                other.day(),
                other.recording(),
                zero,
                other.from(),
                other.to(),
                Map.of(),
                Map.of(),
                List.of());
        assertEquals(pairs, told(MadeJoins.curveAt("a", MadeJoins.EIGHT), moved).size());
    }
}
