package parchment.kernel.stop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Memory that runs out is seen before there is none. */
class MemoryWatchTest {
    @ParameterizedTest
    @CsvSource({
        "1000, 950, false",
        "1000, 951, true",
        "200, 152, false",
        "200, 153, true",
        "40, 26, false",
        "40, 27, true",
        "-1, 100, false"
    })
    void tooFullIsWhatLeavesLessThanTheRestNeeds(long most, long used, boolean full) {
        assertEquals(full, MemoryWatch.isTooFull(used << 20, most < 0 ? -1 : most << 20));
    }

    @Test
    void aWatchSaysNothingOfWhatWasThereBefore() {
        assertFalse(new MemoryWatch().runsOut());
    }
}
