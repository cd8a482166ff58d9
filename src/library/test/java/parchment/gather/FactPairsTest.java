package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Holds how a corner of headings with their values above the readings of one batch is read. */
class FactPairsTest {
    private static final String[] READINGS = {
        "", "Seconds|Bean °F|Air °F||", "0|390.1|420|||", "1|377.4|421|||", "2|363|422|||", "3|350|423|||"
    };

    @Test
    void headingsWithTheirValuesBesideOneAnotherAreOneRow() {
        List<FoundTable> tables = tables(
                "Batch|61||Yellow at|5:44",
                "Date|2031-06-11||First crack at|10:22",
                "Charged|8:56||Out at|12:34",
                "Coffee:|Wren||",
                "Green g|5380||");
        assertEquals(2, tables.size());
        FoundTable facts = tables.get(0);
        assertEquals(
                List.of("Batch", "Yellow at", "Date", "First crack at", "Charged", "Out at", "Coffee", "Green g"),
                facts.headings());
        assertEquals(
                List.of(List.of("61", "5:44", "2031-06-11", "10:22", "8:56", "12:34", "Wren", "5380")), facts.rows());
        assertEquals(List.of("The sheet holds one row of values, each beside its heading."), facts.leftOut());
        assertEquals(List.of("Seconds", "Bean °F", "Air °F"), tables.get(1).headings());
        ListColumns columns = ListColumns.of(facts, Clues.NONE);
        assertEquals("10:22", value(columns, ListMeaning.FIRST_CRACK_START));
        assertEquals("5:44", value(columns, ListMeaning.YELLOWING));
        assertEquals("12:34", value(columns, ListMeaning.DROP));
        assertEquals("8:56", value(columns, ListMeaning.TIME_OF_DAY));
    }

    @Test
    void aFormThatWasNeverFilledInIsNoBatch() {
        List<FoundTable> tables = tables("Batch|||Yellow at|", "Date|||First crack at|", "Coffee|||Out at|");
        assertEquals(1, tables.size());
        assertEquals("Seconds", tables.get(0).headings().get(0));
    }

    /** Three cells side by side, words of no trade, a heading that stands twice, a value without a heading, and one column of headings are no such corner. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "Batch|61|62|Yellow at|5:44;Date|2031-06-11||Coffee|Wren",
                "Anna|61||Ben|62;Cara|63||Dirk|64",
                "Batch|61||Coffee|Wren;Batch|62||Coffee|Sola",
                "Batch|61||5:44|;Date|2031-06-11||Coffee|Wren",
                "Batch|61|||;Date|2031-06-11|||;Coffee|Wren|||",
                "Batch|61||Coffee|Wren"
            })
    void otherBlocksAreNoCornerOfFacts(String block) {
        String[] lines = block.split(";");
        List<Integer> all = List.of(0, 1, 2, 3, 4);
        SheetArea area = new SheetArea(Sheets.of(lines), all, lines.length);
        assertEquals(false, FactPairs.of(area, 0, lines.length).isPresent());
    }

    @Test
    void timesInOneStepHeadColumnsOfReadings() {
        String title = "by hand|||bean temperature in °C at||||";
        String[] rows = {"61|Wren|5.38|200.6|82.7|72.5|79.9|89.4", "62|Sola|7.72|172.4|75.5|70.8|78.8|88.4"};
        FoundTable table = Sheets.table(title, "batch|coffee|kg green|0:00|0:30|1:00|1:30|2:00", rows[0], rows[1]);
        assertEquals(2, table.rows().size());
        assertEquals(
                List.of("batch", "coffee", "kg green", "bean temperature in °C at 0:00"),
                table.headings().subList(0, 4));
        assertEquals("bean temperature in °C at 2:00", table.headings().get(7));
        FoundTable odd = Sheets.table(title, "batch|coffee|kg green|0:00|0:30|1:00|1:30|2:05", rows[0], rows[1]);
        assertEquals("by hand", odd.headings().get(0));
    }

    private static String value(ListColumns columns, ListMeaning meaning) {
        return columns.of(meaning)
                .map(column -> columns.table().rows().get(0).get(column.place()))
                .orElse("");
    }

    private static List<FoundTable> tables(String... facts) {
        String[] all = new String[facts.length + READINGS.length];
        System.arraycopy(facts, 0, all, 0, facts.length);
        System.arraycopy(READINGS, 0, all, facts.length, READINGS.length);
        return FoundTable.in(Sheets.of(all));
    }
}
