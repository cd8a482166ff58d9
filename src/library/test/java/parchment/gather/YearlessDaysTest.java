package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class YearlessDaysTest {
    private static FoundTable list(String file, String heading, String... days) {
        return Tables.of(
                file,
                List.of(),
                List.of(heading, "Nr"),
                java.util.Arrays.stream(days).map(day -> List.of(day, "1")).toList());
    }

    @Test
    void aDayWithoutAYearGetsTheOneOfTheFilesName() {
        FoundTable completed = YearlessDays.completed(list("Liste 2031.csv", "Tag", "04.03.", "", "7.3."));
        assertEquals(List.of("04.03.2031", "", "7.3.2031"), completed.column(0));
        assertEquals(
                List.of("The days under 'Tag' have no year and got that of the file's name, tab or title, 2031."),
                completed.leftOut());
    }

    @ParameterizedTest
    @CsvSource({
        "Liste.csv, 04.03., 07.03., none stands in the file's name or above the list",
        "2031 and 2032.csv, 04.03., 07.03., several stand in the file's name and above the list",
        "Liste 2031.csv, 28.12., 04.01., they go from a later month to an earlier one"
    })
    void withoutOneYearTheDaysStayAsWrittenAndAreNamed(String file, String one, String two, String reason) {
        FoundTable table = YearlessDays.completed(list(file, "Tag", one, two));
        assertEquals(List.of(one, two), table.column(0));
        assertEquals(1, table.leftOut().size());
        assertTrue(table.leftOut().get(0).contains(reason), table.leftOut().toString());
    }

    @ParameterizedTest
    @CsvSource({"Ratio, 4.3, 7.3", "Tag, 40.3, 7.3", "Datum, 04.03.2031, 07.03.2031", "Tag, 4, 7"})
    void numbersAndWholeDatesAreNoDaysWithoutAYear(String heading, String one, String two) {
        FoundTable table = list("Liste 2031.csv", heading, one, two);
        assertEquals(table, YearlessDays.completed(table));
    }

    @Test
    void theNewestDayMayStandFirst() {
        FoundTable table = YearlessDays.completed(list("Liste 2031.csv", "Datum", "7.4.", "4.3."));
        assertEquals(List.of("7.4.2031", "4.3.2031"), table.column(0));
    }
}
