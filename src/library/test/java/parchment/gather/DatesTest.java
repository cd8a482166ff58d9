package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import parchment.sheet.DateOrder;

class DatesTest {
    private static Dates.Source source(String name, String... dates) {
        return new Dates.Source(
                name,
                name,
                Arrays.stream(dates)
                        .map(date -> WrittenDay.find(date).orElseThrow())
                        .toList());
    }

    @Test
    void oneImpossibleMonthAnywhereDecidesForAll() {
        Dates dates = Dates.decide(
                List.of(source("'list.csv'", "1/6/2031", "2/6/2031"), source("the names of the files", "13/6/2031")));
        assertEquals(Optional.of(DateOrder.DAY_MONTH_YEAR), dates.order());
        assertEquals(Optional.of(DateOrder.DAY_MONTH_YEAR), dates.of("'list.csv'"));
        assertEquals("'13/6/2031' in the names of the files can only be day/month/year", dates.reason());
        assertFalse(dates.isOpen());
    }

    @Test
    void withoutOneTheOrderIsOpen() {
        Dates dates = Dates.decide(List.of(source("'list.csv'", "1/6/2031", "12/6/2031")));
        assertEquals(Optional.empty(), dates.order());
        assertTrue(dates.isOpen());
        assertEquals(2, dates.inQuestion());
    }

    @Test
    void nothingIsOpenWhereNoDateNeedsAnOrder() {
        Dates dates =
                Dates.decide(List.of(source("'list.csv'", "2031-06-01", "06.01.2031", "6/6/2031", "1 juin 2031")));
        assertFalse(dates.isOpen());
        assertEquals(0, dates.inQuestion());
    }

    @Test
    void filesThatContradictEachOtherAreReadEachByItsOwn() {
        Dates dates = Dates.decide(
                List.of(source("'a.csv'", "13/6/2031"), source("'b.csv'", "6/13/2031"), source("'c.csv'", "1/6/2031")));
        assertEquals(Optional.of(DateOrder.DAY_MONTH_YEAR), dates.of("'a.csv'"));
        assertEquals(Optional.of(DateOrder.MONTH_DAY_YEAR), dates.of("'b.csv'"));
        assertEquals(Optional.empty(), dates.of("'c.csv'"));
        assertTrue(dates.isOpen());
        assertEquals(
                List.of(
                        "The folder has dates of both kinds: '13/6/2031' in 'a.csv' can only be day/month/year; '6/13/2031' in 'b.csv'"
                                + " can only be month/day/year. Files that show their kind are read by it; for the others it is open."),
                dates.told());
    }

    @Test
    void aFileWithBothKindsTellsNothing() {
        Dates dates = Dates.decide(List.of(source("'a.csv'", "13/6/2031", "6/14/2031", "1/6/2031")));
        assertEquals(Optional.empty(), dates.of("'a.csv'"));
        assertEquals(
                "'a.csv' has dates of both kinds: '13/6/2031' and '6/14/2031'; its other dates cannot be told from it.",
                dates.told().get(0));
    }
}
