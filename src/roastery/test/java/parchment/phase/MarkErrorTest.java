package parchment.phase;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import parchment.logbook.MarkKind;

/** Short version of docs/measurements/marks.md: how often the intervals of found marks hold the truth, for roasts of two kinds. */
class MarkErrorTest {
    private static final List<MarkErrorStudy.Reading> READINGS =
            List.of(new MarkErrorStudy.Reading(2, 0.2, 0.5, 0.1), new MarkErrorStudy.Reading(5, 0.4, 0.3, 0.1));

    @Test
    void intervalsHoldTheTruthForRoastsOfTwoKinds() {
        List<MarkErrorStudy.Truth> truths = new ArrayList<>(MarkErrorStudy.virtual(77, 30));
        truths.addAll(MarkErrorStudy.other(77, 30));
        for (MarkErrorStudy.Reading reading : READINGS) {
            for (MarkErrorStudy.Cell cell : MarkErrorStudy.run("both kinds", truths, reading, 77)) {
                // 60 marks: 7.7 points are two Monte-Carlo errors of a share of 90 %.
                assertTrue(cell.within90() > 0.82, cell.row());
                // An interval that always holds says too little of what is known: the stated error is no more than 1.6
                // of the real one.
                assertTrue(cell.error() < 1.6 * cell.root() || cell.error() < 0.4, cell.row());
                assertTrue(cell.found() >= 56, cell.row());
                assertTrue(cell.kind() == MarkKind.TURNING_POINT || cell.root() < 1.6, cell.row());
            }
        }
    }
}
