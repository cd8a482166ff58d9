package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.logbook.LogbookFiles;

/** Numbers that mean "no reading": a recording has none that the logbook would read as a temperature. */
class StrangeColumnTest {
    @Test
    void whatALogbookTakesForNoReadingIsNoneInARecording() {
        assertEquals(
                new TreeSet<>(LogbookFiles.MISSING_READINGS),
                new TreeSet<>(LogbookFiles.MISSING_READINGS.stream()
                        .filter(StrangeColumn::isOdd)
                        .toList()));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-99.9, 9999, -9999, 32767, -1, 999.9, 65535})
    void loggersWriteThese(double value) {
        assertTrue(StrangeColumn.isOdd(value));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -0.0, 1, 99.9, 999, 32768, Double.NaN})
    void theseAreReadings(double value) {
        assertTrue(!StrangeColumn.isOdd(value));
    }
}
