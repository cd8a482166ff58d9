package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.sheet.DateOrder;

class WrittenDayTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "2031-06-01",
                "2031/06/01",
                "2031.6.1",
                "20310601",
                "01.06.2031",
                "1.6.31",
                "1. 6. 2031",
                "1 June 2031",
                "1. Juni 2031",
                "1 juin 2031",
                "zo 1 juni 2031",
                "1er juin 2031",
                "1 de junio de 2031",
                "1 de junho de 2031",
                "1 giugno 2031",
                "Jun 1, 2031",
                "June 1st, 2031",
                "1-Jun-31",
                "1-jun.-2031",
                "Sunday, 1 June 2031",
                "So, 01.06.2031",
                "2031-06-01 00:00:00"
            })
    void readsTheFirstOfJuneWithoutAnOrder(String written) {
        assertEquals(
                Optional.of(LocalDate.of(2031, 6, 1)),
                WrittenDay.ofCell(written).flatMap(day -> day.on(DateOrder.ISO_ONLY)),
                written);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "3/4/2031|DAY_MONTH_YEAR|2031-04-03",
                "3/4/2031|MONTH_DAY_YEAR|2031-03-04",
                "3/4/2031|ISO_ONLY|",
                "3-4-31|DAY_MONTH_YEAR|2031-04-03",
                "4/4/2031|ISO_ONLY|2031-04-04",
                // 13 is no month: one reading only, whatever was decided.
                "13/4/2031|MONTH_DAY_YEAR|2031-04-13",
                "4/13/2031|DAY_MONTH_YEAR|2031-04-13",
                "12/4/2031|MONTH_DAY_YEAR|2031-12-04",
                // Dots are written day first: common practice, no source.
                "03.04.2031|MONTH_DAY_YEAR|2031-04-03",
                "03.13.2031|DAY_MONTH_YEAR|2031-03-13",
                "31/4/2031|DAY_MONTH_YEAR|",
            })
    void needsTheOrderWhereBothCouldBeMonths(String written, DateOrder order, LocalDate day) {
        assertEquals(Optional.ofNullable(day), WrittenDay.find(written).flatMap(found -> found.on(order)));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "12/12/2031|",
                "12/11/2031|",
                "13/12/2031|DAY_MONTH_YEAR",
                "12/13/2031|MONTH_DAY_YEAR",
                "13.12.2031|DAY_MONTH_YEAR",
                "2031-12-13|"
            })
    void provesAnOrderFromThirteenOn(String written, DateOrder proved) {
        assertEquals(
                Optional.ofNullable(proved),
                WrittenDay.find(written).orElseThrow().proves());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "2031-06-01 08:15|08:15", "2031-06-01T08:15:30|08:15:30", "1.6.2031 8:15|08:15",
                        "6/1/2031 8:15 PM|20:15",
                "1 juin 2031 8h15|08:15", "roast 2031-06-01_0815|08:15", "2031-06-01 08-15-30 H101|08:15:30",
                        "20310601-0815|08:15"
            })
    void readsTheTimeBesideIt(String written, LocalTime time) {
        assertEquals(
                Optional.of(time),
                WrittenDay.find(written).flatMap(WrittenDay::clock),
                () -> WrittenDay.find(written).toString());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "H101",
                "5.25",
                "12:30",
                "1 crack 2",
                "2031",
                "12345678",
                "32/1/2031",
                "13/13/2031",
                "2031-13-01",
                "10.12 kg"
            })
    void takesNothingElseForADate(String written) {
        assertTrue(
                WrittenDay.find(written).isEmpty(),
                () -> WrittenDay.find(written).toString());
    }

    @ParameterizedTest
    @ValueSource(strings = {"Batch 101 of 1.6.2031", "2031-06-01 burnt", "1.6.2031 and 2.6.2031"})
    void aCellWithMoreThanADateIsWords(String written) {
        assertEquals(CellForm.WORDS, CellForm.of(written));
    }

    @ParameterizedTest
    @CsvSource({
        "1 januari 2031,1",
        "1 februari 2031,2",
        "zondag 2 maart 2031,3",
        "1 april 2031,4",
        "1 mei 2031,5",
        "1 juni 2031,6",
        "1 juli 2031,7",
        "1 augustus 2031,8",
        "1 september 2031,9",
        "1 oktober 2031,10",
        "1 november 2031,11",
        "1 december 2031,12"
    })
    void readsTheMonthsOfDutch(String written, int month) {
        assertEquals(
                Optional.of(month),
                WrittenDay.find(written)
                        .flatMap(day -> day.on(DateOrder.ISO_ONLY))
                        .map(LocalDate::getMonthValue));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "niedziela 2 marca 2031|niedziela 2 marca 2031",
                "Roasted 2. marca 2031, drum|Roasted 2. marca 2031",
                "marca 2, 2031|marca 2, 2031",
                "zondag 2 maart 2031|",
                "2 bags of 2031|",
                "2031-03-02|",
                "Batch 1234|"
            })
    void aDateWithAnUnknownWordIsNamed(String text, String expected) {
        assertEquals(Optional.ofNullable(expected), WrittenDay.unknown(text));
    }
}
