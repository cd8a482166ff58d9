package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.sheet.DateOrder;

class YearSlipsTest {
    private static String slips(String days, String tab) {
        List<Optional<LocalDate>> read = new ArrayList<>();
        for (String day : days.split(" ")) {
            read.add(day.equals("-") ? Optional.empty() : Optional.of(LocalDate.parse(day)));
        }
        return YearSlips.of(read, tab).toString();
    }

    @ParameterizedTest
    @CsvSource({
        "2031-01-15 2030-01-18 2031-01-20,'',{1=2031}",
        "2031-01-15 - 2030-01-18 - 2031-01-20,'',{2=2031}",
        "2030-12-30 2030-01-02 2031-01-04,'',{1=2031}",
        "2030-01-15 2031-01-18 2031-01-20,'',{0=2031}",
        "2031-01-15 2031-01-18 2032-01-20,'',{2=2031}",
        // The month is another too: no slip of the year alone.
        "2031-01-15 2030-05-18 2031-01-20,'',{}",
        "2031-01-15 2031-01-18 2031-09-20,'',{}",
        "2030-12-30 2031-01-02 2031-01-04,'',{}",
        "2031-01-15 2030-01-18,'',{}",
        // Several in a row have no neighbours that tell, but a tab of their year.
        "2030-01-15 2030-01-16 2031-01-18 2031-01-20 2031-01-21,'',{}",
        "2030-01-15 2030-01-16 2031-01-18 2031-01-20 2031-01-21,2031,'{0=2031, 1=2031}'",
        "2031-12-15 2031-12-30 2032-01-02,2031,{}",
        "2030-01-15 2030-01-16 2030-01-17 2031-01-20,2031,{}"
    })
    void aYearThatDiffersFromItsNeighboursOrItsTabIsASlip(String days, String tab, String expected) {
        assertEquals(expected, slips(days, tab));
    }

    @Test
    void theRowIsNamedAndItsDayLeftOpen() {
        BatchList list = BatchList.of(
                ListColumns.of(
                        Sheets.table(
                                "Batch|Date|Start|Coffee",
                                "47|18/01/2031|8:10|Guji",
                                "48|18/01/2030|8:42|Guji",
                                "49|20/01/2031|8:15|Huila"),
                        Clues.NONE),
                DateOrder.DAY_MONTH_YEAR);
        ListedBatch slip = list.batches().get(1);
        assertEquals(Optional.empty(), slip.roastedAt());
        assertEquals(Optional.empty(), slip.day());
        assertEquals(
                "Line 3: '18/01/2030' under 'Date' is a year or more from the rows around it, which are of 2031: its day is left open.",
                list.told().get(0));
        assertEquals("day written as 18/01/2030", slip.notes().get(0));
    }
}
