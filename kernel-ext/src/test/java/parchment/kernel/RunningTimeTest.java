package parchment.kernel;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.kernel.page.Shown;

class RunningTimeTest {
    @ParameterizedTest
    @CsvSource({
        "20, nothing",
        "1000, nothing",
        "1001, took 1.0 s",
        "3249, took 3.2 s",
        "9949, took 9.9 s",
        "9950, took 10 s",
        "59499, took 59 s",
        "59500, took 1 min",
        "60499, took 1 min",
        "125000, took 2 min 5 s",
        "3600000, took 60 min",
    })
    void isSaidWhereACellRanForMoreThanASecond(long milliseconds, String said) {
        assertEquals(
                said,
                RunningTime.shown(Duration.ofMillis(milliseconds))
                        .map(Shown::text)
                        .orElse("nothing"));
    }
}
