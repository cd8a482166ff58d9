package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.gather.ListColumn.Confidence;
import parchment.sheet.DateOrder;
import parchment.sheet.Numbers;

class ColumnUnitsTest {
    private static BatchList list(String... lines) {
        return BatchList.of(ListColumns.of(Sheets.table(lines), Clues.NONE), DateOrder.DAY_MONTH_YEAR);
    }

    private static ListColumn green(Clues clues, String heading, String... masses) {
        List<String> lines = new ArrayList<>(List.of("Batch|Date|" + heading + "|Drop"));
        for (int i = 0; i < masses.length; i++) {
            lines.add((101 + i) + "|2031-06-0" + (1 + i) + "|" + masses[i] + "|" + (9 + i % 2) + ":1" + i);
        }
        return ListColumns.of(Sheets.table(lines.toArray(String[]::new)), clues)
                .of(ListMeaning.GREEN_MASS)
                .orElseThrow();
    }

    private static List<String> written(BatchList list, String heading) {
        return list.batches().stream()
                .map(batch -> batch.written().getOrDefault(heading, "missing"))
                .toList();
    }

    @ParameterizedTest
    @CsvSource({"5 lb 4 oz,5.25,lb", "5 lbs. 4 oz,5.25,lb", "'4 kg, 500 g',4.5,kg", "250 gram,250,gram", "900 g,900,g"})
    void aCellIsReadWithBothOfItsUnits(String cell, double value, String unit) {
        assertEquals(Optional.of(new CellNumber(value, unit)), CellNumber.of(cell, Numbers.Decimal.EITHER));
        assertEquals(CellForm.NUMBER, CellForm.of(cell));
    }

    @Test
    void ouncesBesideKilogramsAreNoMass() {
        assertEquals(Optional.empty(), CellNumber.of("5 kg 4 oz", Numbers.Decimal.EITHER));
    }

    @Test
    void eachCellIsConvertedByTheUnitItCarries() {
        BatchList list = list(
                "Batch|Date|Green|Roasted|Drop temp",
                "1|2031-06-01|8 kg|6,7 kg|210 °C",
                "2|2031-06-01|900 g|750 g|410 °F",
                "3|2031-06-02|9 kg|7,6 kg|211 °C",
                "4|2031-06-02|4,5 kg|3,9 kg|209 °C");
        assertEquals(List.of("8", "0.9", "9", "4.5"), written(list, "green mass [kg]"));
        assertEquals(List.of("6.7", "0.75", "7.6", "3.9"), written(list, "roasted mass [kg]"));
        assertEquals(List.of(), list.told());
    }

    @Test
    void aCellsUnitStandsAgainstTheHeadings() {
        BatchList list = list("Batch|Date|Green (kg)", "1|2031-06-01|8", "2|2031-06-01|900 g", "3|2031-06-02|9");
        assertEquals(List.of("8", "0.9", "9"), written(list, "green mass [kg]"));
    }

    @Test
    void poundsAndOuncesInOneCellAreOneMass() {
        BatchList list = list(
                "Batch|Date|Green|Roasted",
                "1|2031-06-01|5 lb 4 oz|4 lb 8 oz",
                "2|2031-06-01|5 lb|4 lb 4 oz",
                "3|2031-06-02|6 lb 8 oz|5 lb 8 oz");
        assertEquals(List.of("5.25", "5", "6.5"), written(list, "green mass [lb]"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "8;9;8;900;800|holds numbers in two groups, 8 to 9 and 800 to 900: kg and g",
                // No mass of the one group is one of the other in another unit, and the factor is small.
                "8;9;8;70;80|has a median of 9, in a list with °C, so kg",
                "1;1.5;2;16;24|holds numbers in two groups, 1 to 2 and 16 to 24: lb and oz",
                "1;1.5;2;15;23|has a median of 2, in a list with °C, so kg",
                "10;12;11;22.05;26.45|holds numbers in two groups, 10 to 12 and 22.1 to 26.5: kg and lb",
                "10;12;11;22.6;27.2|has a median of 12, in a list with °C, so kg",
                "8;9;8;9;900|has a median of 9, in a list with °C, so kg"
            })
    void bareNumbersInTwoGroupsOfTwoUnitsAreOpen(String masses, String reason) {
        ListColumn column = green(Clues.NONE, "Green|Drop temp", withTemperatures(masses));
        assertEquals("is named 'Green' and " + reason, column.reason());
        assertEquals(reason.startsWith("holds") ? Confidence.OPEN : Confidence.CERTAIN, column.confidence());
    }

    private static String[] withTemperatures(String masses) {
        return List.of(masses.split(";")).stream().map(mass -> mass + "|210").toArray(String[]::new);
    }

    @Test
    void aMassFiftyTimesTheMedianIsNamedAndNotWritten() {
        BatchList list = list(
                "Batch|Date|Green kg",
                "1|2031-06-01|8",
                "2|2031-06-01|8",
                "3|2031-06-02|400",
                "4|2031-06-02|401",
                "5|2031-06-02|8");
        assertEquals(List.of("8", "8", "400", "missing", "8"), written(list, "green mass [kg]"));
        assertEquals(
                List.of(
                        "Line 5: '401' under 'Green kg' is above the others' median of 8 by a factor of 50: it is in another unit or a slip,"
                                + " and is not written as green mass."),
                list.told());
    }

    @Test
    void ofTwoGroupsTheOneThatIsNotTheUnitsOwnIsNotWritten() {
        BatchList list = list(
                "Batch|Date|Green",
                "1|2031-06-01|900",
                "2|2031-06-01|8",
                "3|2031-06-02|900",
                "4|2031-06-02|9",
                "5|2031-06-02|800");
        assertEquals(List.of("900", "missing", "900", "missing", "800"), written(list, "green mass [g]"));
        assertEquals(2, list.told().size());
        assertTrue(list.told().get(0).startsWith("Line 3: '8' under 'Green' is below the others' median"));
    }

    @Test
    void massesWithoutAUnitAreProposedInPoundsWhereTheFolderIsInFahrenheitAndMonthFirst() {
        ListColumn pounds = green(new Clues(List.of(), ListScale.FAHRENHEIT), "Green", "10", "12", "11.5");
        assertEquals("lb", pounds.unit());
        assertEquals(Confidence.OPEN, pounds.confidence());
        assertEquals(
                "is named 'Green' and has a median of 11.5 without a unit: kg or lb; lb goes with temperatures in °F",
                pounds.reason());
        ListColumn unknown = green(Clues.NONE, "Green", "10", "12", "11.5");
        assertEquals("kg", unknown.unit());
        assertEquals(Confidence.OPEN, unknown.confidence());
        ListColumn celsius = green(
                new Clues(List.of(), ListScale.FAHRENHEIT), "Green|Drop temp (°C)", "10|210", "12|211", "11.5|209");
        assertEquals("kg", celsius.unit());
    }
}
