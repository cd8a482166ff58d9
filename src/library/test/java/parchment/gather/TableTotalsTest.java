package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Holds which rows that are called a sum, a mean or a limit are left out. */
class TableTotalsTest {
    private static final String[] LIST = {
        "Lot|Date|Green|Drop", "Kela|2031-06-01|5|11:00", "Low|2031-06-01|5.2|11:10", "Ridge|2031-06-02|4.9|11:30"
    };
    private static final String KEPT =
            "Line 5 is called '%s', and its numbers are not worked out of the other rows: it is read as a row like them.";

    private static FoundTable with(String... rows) {
        List<String> lines = new ArrayList<>(Arrays.asList(LIST));
        lines.addAll(Arrays.asList(rows));
        return Sheets.table(lines.toArray(String[]::new));
    }

    @ParameterizedTest
    @ValueSource(strings = {"Max", "Min", "N", "SD", "Media", "Soma", "Media Luna", "Sum Mountain", "Mean"})
    void aRowLikeTheOthersIsKeptWhateverItIsCalled(String name) {
        FoundTable table = with(name + "|2031-06-03|5.1|11:05");
        assertEquals(List.of(2, 3, 4, 5), table.lines());
        assertEquals(List.of(KEPT.formatted(name)), table.leftOut());
    }

    @ParameterizedTest
    @ValueSource(strings = {"Total", "Average", "Summe", "Ø", "Mittelwert"})
    void aWordThatNamesNothingElseIsATotalWhateverStandsBesideIt(String word) {
        assertEquals(List.of(2, 3, 4), with(word + "|2031-06-03|5.1|11:05").lines());
    }

    /** 5, 5.2 and 4.9: sum 15.1, mean 5.03, deviation 0.153 or 0.125; times 660, 670 and 690 s. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "Max|x|5.2|11:30; 0",
                "Max|x|5.2|11:10; 1",
                "Max|x|5.0|11:30; 1",
                "Min|x|4.9|11:00; 0",
                "Min|x|5.0|11:00; 1",
                "N|x|3|0:03; 0",
                "N|x|4|0:03; 1",
                "SD|x|0.15|0:15; 0",
                "SD|x|0.12|0:12; 0",
                "SD|x|0.18|0:15; 1",
                "Media|x|5.03|11:13; 0",
                "Media|x|15.1|11:13; 0",
                "Media|x|5.3|11:13; 1",
            })
    void aRowLikeTheOthersIsATotalIfEachNumberIsWhatItsWordSays(String row, int kept) {
        String[] lines = {"Lot|What|Green|Drop", "Kela|x|5|11:00", "Low|x|5.2|11:10", "Ridge|x|4.9|11:30", row};
        assertEquals(3 + kept, Sheets.table(lines).rows().size());
    }

    @Test
    void aRowWithoutWhatAllOthersHaveIsATotal() {
        assertEquals(List.of(2, 3, 4), with("Max||5.1|11:05").lines());
        assertEquals(List.of(2, 3, 4), with("Max|2031-06-03|5.1|").lines());
        assertEquals(
                List.of("Line 5 is worked out of the other rows: 'Max 5.1 11:05'."),
                with("Max||5.1|11:05").leftOut());
    }

    @Test
    void aRowWithAnotherKindOfValueIsATotal() {
        assertEquals(List.of(2, 3, 4), with("Max|three days|5.1|11:05").lines());
    }

    @Test
    void sumsOfAPartAreTotalsToo() {
        String[] lines = {
            "Lot|Bags", "Kela|5", "Low|6", "Suma Norte|11", "Ridge|4", "Mist|3", "Suma Sul|7", "Suma Alta|18"
        };
        assertEquals(List.of(2, 3, 5, 6), Sheets.table(lines).lines());
    }

    @Test
    void whereAllHaveOneValueItTellsNothing() {
        String[] lines = {"Lot|Bags|Days", "Kela|5|10", "Low|5|12", "Max|5|11"};
        assertEquals(List.of(2, 3, 4), Sheets.table(lines).lines());
        lines[3] = "Max|5|12";
        assertEquals(List.of(2, 3), Sheets.table(lines).lines());
    }

    /** 6 is the mean of 5, 6 and 7, and 7 of 6, 7 and 8: scores of an attribute may be so near the others. */
    @ParameterizedTest
    @ValueSource(strings = {"Corpo", "Acidity", "Körper"})
    void aRowThatIsCalledLikeAnAttributeIsNoTotal(String attribute) {
        String[] rows = {"Batch|Attribute|Ana|Ben", "|Aroma|5|6", "|Sweetness|6|7", "|Overall|7|8"};
        List<String> lines = new ArrayList<>(Arrays.asList(rows));
        lines.add("|" + attribute + "|6|7");
        assertEquals(4, Sheets.table(lines.toArray(String[]::new)).rows().size());
        lines.set(4, "||6|7");
        assertEquals(3, Sheets.table(lines.toArray(String[]::new)).rows().size());
    }
}
