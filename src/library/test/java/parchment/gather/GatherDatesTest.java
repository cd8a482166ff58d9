package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import parchment.sheet.DateOrder;

class GatherDatesTest {
    private static FoundTable list(String file, String... days) {
        return Tables.of(
                file,
                List.of(),
                List.of("date"),
                List.of(days).stream().map(List::of).toList());
    }

    @Test
    void listsOfOneNameInTwoFoldersAreReadEachByItsOwnDates() {
        FoundTable dayFirst = list("2030/list.csv", "13/06/2030", "03/04/2030");
        FoundTable monthFirst = list("2031/list.csv", "06/13/2031", "03/04/2031");
        for (List<FoundTable> sheets : List.of(List.of(dayFirst, monthFirst), List.of(monthFirst, dayFirst))) {
            GatherDates dates = GatherDates.decide(List.of(), sheets, new GatherQuestions(Map.of()));
            assertEquals(DateOrder.DAY_MONTH_YEAR, dates.of(dayFirst));
            assertEquals(DateOrder.MONTH_DAY_YEAR, dates.of(monthFirst));
        }
    }
}
