package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.sheet.Numbers;

class ColumnTimesTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "9:19|min:s|559",
                "09:19|min:s|559",
                "9:19.5|min:s|559.5",
                "9'19|min:s|559",
                "9m19s|min:s|559",
                "9 min 19|min:s|559",
                "9.19|min:s|559",
                "9,19|min:s|559",
                "9|min:s|540",
                "9.75|min:s|NaN",
                "9:19:00|min:s, as h:mm:ss|559",
                "0:09:19|h:min:s|559",
                "0:09:19|min:s, as h:mm:ss|559",
                "1:00:01|h:min:s|3601",
                "559|s|559",
                "559 s|s|559",
                "9.5|min|570",
                "9,5|min|570",
                "0.00647|share of a day|559",
                "0.38819|share of a day, as h:mm|559",
                "late|min:s|NaN",
                "9:61|min:s|NaN",
                "|s|NaN"
            })
    void readsTheTime(String cell, String form, double seconds) {
        assertEquals(seconds, ColumnTimes.seconds(cell == null ? "" : cell, form, Numbers.Decimal.EITHER), 1e-9);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "5|5|",
                "5 kg|5|kg",
                "14,2 %|14.2|%",
                "205°C|205|°C",
                "1,250.5|1250.5|",
                "1.250,5|1250.5|",
                "1'250|1250|",
                "1 250 g|1250|g",
                "1,250,000|1250000|",
                "11 lbs|11|lbs"
            })
    void readsANumberWithItsUnit(String cell, double value, String unit) {
        CellNumber number = CellNumber.of(cell, Numbers.Decimal.EITHER).orElseThrow();
        assertEquals(value, number.value(), 1e-9);
        assertEquals(unit == null ? "" : unit, number.unit());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "5|NUMBER",
                "5 kg|NUMBER",
                "16 %|NUMBER",
                "9:19|CLOCK",
                "8:15 PM|CLOCK",
                "8'50|CLOCK",
                "8h15|CLOCK",
                "1.6.2031|DATE",
                "2031-06-01 08:00|DATE_AND_TIME",
                "H101|WORDS",
                "5 bags|WORDS",
                "-|BLANK",
                "n/a|BLANK",
                "NaN|BLANK",
                "1. Crack|WORDS"
            })
    void tellsTheFormOfACell(String cell, CellForm form) {
        assertEquals(form, CellForm.of(cell));
    }
}
