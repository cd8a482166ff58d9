package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.sheet.DateOrder;
import parchment.sheet.Numbers;

/** Holds how the cells of a list of batches are written into the logbook. */
class BatchCellsTest {
    private static BatchList read(Numbers.Decimal decimal, String... lines) {
        return BatchList.of(
                ListColumns.of(FoundTable.in(Sheets.of(decimal, lines)).get(0), Clues.NONE), DateOrder.ISO_ONLY);
    }

    /** Reads one column of masses, and returns what is written of each row. */
    private static List<String> written(BatchList list, String heading) {
        return list.batches().stream()
                .map(batch -> batch.written().getOrDefault(heading, ""))
                .toList();
    }

    private static String[] lines(String heading, String cells) {
        List<String> lines = new ArrayList<>(List.of("Batch|Date|" + heading + "|Drop"));
        String[] each = cells.split(" ");
        for (int i = 0; i < each.length; i++) {
            lines.add((101 + i) + "|2031-06-0" + (1 + i) + "|" + each[i] + "|11:0" + i);
        }
        return lines.toArray(String[]::new);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                // Nobody roasts a gram and a quarter.
                "Green g | 1,250 1,300 1,310 | green mass [g] | 1250 1300 1310",
                "Green g | 1,250 985 990     | green mass [g] | 1250 985 990",
                "Green g | 1,250 985.5 990   | green mass [g] | 1250 985.5 990",
                "Green g | 12,125 8,5 9,25   | green mass [g] | 12.125 8.5 9.25",
                "Green g | 120,125 98,5 99,2 | green mass [g] | 120.125 98.5 99.2",
                "Green kg | 1,250 1,3 1,31   | green mass [kg] | 1.250 1.3 1.31",
                "Green kg | 1,250 1 2        | green mass [kg] | 1.250 1 2",
                "Height m | 1,250 980 990    | Height m | 1250 980 990",
                "Height m | 1.250 980 990    | Height m | 1250 980 990",
                "Height m | 1,250 1.5 2.5    | Height m | 1250 1.5 2.5",
                "Height m | 1,250 1,5 2,5    | Height m | 1.250 1.5 2.5",
                "Height m | 1,250,000 1,250 7 | Height m | 1250000 1250 7",
            })
    void theColumnSaysWhatThreeDigitsBehindACommaAre(String heading, String cells, String name, String expected) {
        BatchList list = read(Numbers.Decimal.EITHER, lines(heading, cells));
        assertEquals(Arrays.asList(expected.split(" ")), written(list, name));
        assertEquals(List.of(), list.told());
    }

    @Test
    void theOtherColumnsOfTheTableSayItWhereTheColumnDoesNot() {
        String[] comma = {
            "Batch|Date|Height m|Drop|Loss %", "101|2031-06-01|1,250|11:00|14,2", "102|2031-06-02|1,300|11:01|15,1"
        };
        String[] point = {
            "Batch|Date|Height m|Drop|Loss %", "101|2031-06-01|1,250|11:00|14.2", "102|2031-06-02|1,300|11:01|15.1"
        };
        assertEquals(List.of("1.250", "1.300"), written(read(Numbers.Decimal.EITHER, comma), "Height m"));
        assertEquals(List.of("1250", "1300"), written(read(Numbers.Decimal.EITHER, point), "Height m"));
    }

    @Test
    void whereNothingSaysItAPersonIsTold() {
        BatchList extra = read(Numbers.Decimal.EITHER, lines("Height m", "1,250 1,300 1,310"));
        assertEquals(List.of("1,250", "1,300", "1,310"), written(extra, "Height m"));
        assertEquals(
                List.of(
                        "'1,250' under 'Height m' can be 1.25 or 1250, and no number of the list shows which: such numbers are"
                                + " kept as they are written."),
                extra.told());
        BatchList mass = read(Numbers.Decimal.EITHER, lines("Green kg", "1,250 1,300 1,310"));
        assertEquals(List.of("1.250", "1.300", "1.310"), written(mass, "green mass [kg]"));
        assertEquals(
                List.of(
                        "'1,250' under 'Green kg' can be 1.25 or 1250, and no number of the list shows which: such numbers are"
                                + " read with a decimal comma."),
                mass.told());
    }

    /** Asked for its unit, a person says grams: then they are thousands. */
    @Test
    void anAnsweredUnitDecidesToo() {
        FoundTable table =
                FoundTable.in(Sheets.of(lines("Green", "1,250 1,300 1,310"))).get(0);
        ListColumns columns = ListColumns.of(table, Clues.NONE).with(2, ListMeaning.GREEN_MASS, "g");
        assertEquals(
                List.of("1250", "1300", "1310"), written(BatchList.of(columns, DateOrder.ISO_ONLY), "green mass [g]"));
    }

    @Test
    void aWorkbooksPointIsADecimalPoint() {
        BatchList list = read(Numbers.Decimal.POINT, lines("Height m", "1.255 980 990"));
        assertEquals(List.of("1.255", "980", "990"), written(list, "Height m"));
    }

    @Test
    void aRunningNumberThatNamesNoBatchIsKept() {
        BatchList list = read(
                Numbers.Decimal.EITHER,
                "Batch|Date|No. of day|Drop",
                "R101|2031-06-01|1|11:00",
                "R102|2031-06-01|2|11:10",
                "R103|2031-06-02|1|11:05",
                "R104|2031-06-02|2|11:15");
        assertEquals("R104", list.batches().get(3).name());
        assertEquals(List.of("1", "2", "1", "2"), written(list, "No. of day"));
    }

    @Test
    void twoDaysAndTwoTimesOfOneRowAreBothKept() {
        BatchList list = read(
                Numbers.Decimal.EITHER,
                "Batch|Date|Time|Roasted at|Drop",
                "R101|2031-06-01|8:00|2031-06-01 08:00|11:00",
                "R102|2031-06-01|9:30|2031-06-02 09:30|11:10",
                "R103|2031-06-02|10:10|2031-06-02 10:20|11:05");
        assertEquals(List.of(), list.batches().get(0).notes());
        assertEquals(
                List.of("Roasted at: 2031-06-02 09:30"), list.batches().get(1).notes());
        assertEquals(
                List.of("Roasted at: 2031-06-02 10:20"), list.batches().get(2).notes());
        assertEquals(
                Optional.of("2031-06-02T10:10"),
                list.batches().get(2).roastedAt().map(Object::toString));
    }
}
