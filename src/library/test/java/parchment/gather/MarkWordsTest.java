package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.MarkKind;

class MarkWordsTest {
    @ParameterizedTest
    @CsvSource({
        "first crack, FIRST_CRACK_START",
        "1st pop, FIRST_CRACK_START",
        "End of first crack, FIRST_CRACK_END",
        "first crack over, FIRST_CRACK_END",
        "second crack, SECOND_CRACK_START",
        "2nd crack, SECOND_CRACK_START",
        "second crack end,",
        "yellow, YELLOWING",
        "turning point, TURNING_POINT",
        "beans in, CHARGE",
        "beans out, DROP",
        "End of roast, DROP",
        "roast over, DROP",
        "before the end of the roast,",
        "Auswurf, DROP",
        "erster Crack, FIRST_CRACK_START",
        "before first crack,",
        "waiting for 1st crack,",
        "no first crack,",
        "not yet yellow,",
        "kein erster Crack,",
        "noch nicht gelb,",
        "prima del primo crack,",
        "pas de premier crack,",
        "smells of bread,"
    })
    void theTradesWordsNameMarksAndOthersNone(String typed, MarkKind mark) {
        assertEquals(Optional.ofNullable(mark), MarkWords.of(typed));
    }
}
