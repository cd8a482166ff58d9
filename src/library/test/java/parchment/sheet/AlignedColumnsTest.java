package parchment.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Pins when a text lined up with blanks is a table, and what its cells are. */
class AlignedColumnsTest {
    private static final String LIST = """
            ROASTS, green and roasted in kilograms

            batch  day         coffee         green
            ---------------------------------------
            61     2031-06-11  Salt Meadow     5.38
            62     2031-06-11  Quay             10.00
            63     2031-06-12                  4.20
            64     2031-06-12  Lantern Hill    4.20
            65     2031-06-13  Quay, late      4.20
            """;

    @TempDir
    Path folder;

    private Sheet read(String text) throws IOException {
        return Workbook.read(Files.writeString(folder.resolve("typed.txt"), text))
                .sheets()
                .get(0);
    }

    @Test
    void columnsLinedUpWithBlanksAreCells() throws IOException {
        Sheet sheet = read(LIST);
        assertEquals(List.of("batch", "day", "coffee", "green"), sheet.rows().get(2));
        assertEquals(
                List.of("61", "2031-06-11", "Salt Meadow", "5.38"), sheet.rows().get(3));
        assertEquals(List.of("62", "2031-06-11", "Quay", "10.00"), sheet.rows().get(4));
    }

    @Test
    void aMissingCellLeavesTheOthersInTheirColumns() throws IOException {
        assertEquals(List.of("63", "2031-06-12", "", "4.20"), read(LIST).rows().get(5));
    }

    @Test
    void aTitleStaysOneCellAndARuleIsNoRow() throws IOException {
        Sheet sheet = read(LIST);
        assertEquals(
                List.of("ROASTS, green and roasted in kilograms"), sheet.rows().get(0));
        assertEquals(8, sheet.rows().size());
    }

    @Test
    void numbersMayHaveDecimalCommas() throws IOException {
        Sheet sheet = read("   s    bean\n   0   201,5\n  30   140,2\n  60    98,1\n 120   110,0\n 150   119,3\n");
        assertEquals(List.of("30", "140,2"), sheet.rows().get(2));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "s,   bean\n0,   201.5\n30,  140.2\n60,  98.1\n120, 110.0\n150, 119.3\n",
                "s;   bean\n0;   201.5\n30;  140.2\n60;  98.1\n120; 110.0\n150; 119.3\n",
                "s  |  bean\n0  |  201.5\n30  |  140.2\n60  |  98.1\n120  |  110.0\n150  |  119.3\n",
            })
    void anotherSignBetweenTheColumnsGoesBeforeBlanks(String text) throws IOException {
        assertEquals(
                List.of("60", "98.1"),
                read(text).rows().get(3).stream().map(String::strip).toList());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                // Two blanks behind each sentence, as typists did.
                "Try a slower start.  Then wait.\nNever before breakfast.  Or after.\nThe drum is loud.  Oil it.\n"
                        + "Ask for sacks.  Today.\nPay the miller.  Now.\n",
                // Lined up, but without values.
                "Monday     sweep\nTuesday    oil\nWednesday  roast\nThursday   roast\nFriday     rest\n",
                // Too few lines.
                "s   bean\n0   201.5\n30  140.2\n60   98.1\n",
            })
    void notesStayNoTable(String text) throws IOException {
        assertTrue(read(text).rows().stream().allMatch(row -> row.size() < 2));
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3})
    void linesWithoutCellsMayBeAQuarter(int words) throws IOException {
        String table = " 0   201.5\n30   140.2\n60    98.1\n90   100.0\n99   110.0\n99   119.3\n";
        Sheet sheet = read("A longer sentence than the table.\n".repeat(words) + table);
        assertEquals(words == 2 ? 2 : 1, sheet.rows().get(words).size());
    }
}
