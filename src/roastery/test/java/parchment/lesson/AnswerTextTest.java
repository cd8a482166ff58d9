package parchment.lesson;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.OptionalDouble;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AnswerTextTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "9:35|575",
                "9:35 min|575",
                "09:35:00|575",
                "1:23:00|83",
                "00:58:00|3480",
                "0:09:00|540",
                "0:9:00|540",
                "00:09:00|540",
                "00:00:58|58",
                "0:09:35|575",
                "00:09:35|575",
                "1:09:35|",
                "9:60|",
                "9:35:60|",
                "12,5 %|12.5",
                "12.5|12.5",
                "\u22121,5 s|-1.5",
                "+3 points|3",
                ",5|0.5",
                "1.5.2|",
                "5 to 6|",
                "hot|",
            })
    void readsNumbersAndTimesAsPeopleAndSpreadsheetsWriteThem(String text, Double expected) {
        assertEquals(
                expected == null ? OptionalDouble.empty() : OptionalDouble.of(expected), AnswerText.number(text), text);
    }
}
