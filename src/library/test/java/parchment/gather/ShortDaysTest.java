package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ShortDaysTest {
    private final GatherQuestions questions = new GatherQuestions(Map.of());

    private static FoundTable list(String file, String... days) {
        return Tables.of(
                file,
                List.of(),
                List.of("Date"),
                Arrays.stream(days).map(List::of).toList());
    }

    private FoundTable settled(FoundTable list, FoundTable... others) {
        return ShortDays.settled(List.of(list), List.of(others), questions).get(0);
    }

    @Test
    void theYearStandsFirstWhereItWouldScatterTheRowsIfItStoodLast() {
        FoundTable settled = settled(list("list.csv", "31-01-05", "31-01-09", "31-02-03"));
        assertEquals(List.of("2031-01-05", "2031-01-09", "2031-02-03"), settled.column(0));
        assertTrue(
                settled.leftOut().get(0).startsWith("The days under 'Date', such as '31-01-05', have the year first"));
    }

    @Test
    void theYearStandsFirstWhereTheFolderIsOfThatYear() {
        FoundTable settled = settled(list("list.csv", "31-01-05", "31-02-05"), list("2031-01-05 a.csv"));
        assertEquals(List.of("2031-01-05", "2031-02-05"), settled.column(0));
    }

    @Test
    void theYearStandsLastWhereTheFolderIsOfThatYear() {
        FoundTable list = list("list.csv", "05-01-31", "09-01-31");
        assertEquals(list, settled(list, list("2031-01-05 a.csv")));
        assertEquals(List.of(), questions.leftOut());
    }

    @Test
    void whatCanBeReadBothWaysIsNamedAndStaysAsItIs() {
        FoundTable list = list("list.csv", "05-01-06", "05-02-06");
        assertEquals(list, settled(list));
        assertEquals(1, questions.leftOut().size());
        assertTrue(
                questions.leftOut().get(0).contains("could have the year first too; they are read with the year last"),
                questions.leftOut().toString());
    }

    @Test
    void daysWithDotsOrLongYearsAreNoneOfThese() {
        FoundTable list = list("list.csv", "31.01.05", "05-02-2031");
        assertEquals(list, settled(list));
    }
}
