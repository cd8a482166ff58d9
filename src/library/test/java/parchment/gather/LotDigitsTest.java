package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.OptionalInt;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.sheet.DateOrder;

/** Holds what a comma before three digits becomes in a list of lots. */
class LotDigitsTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"1,850 | 980 | 1850", "1,850 | 1,9 | 1.850", "1,850 | 1,900 | 1,850", "18,5 | 17,5 | 18.5"})
    void theColumnSaysWhatItIs(String first, String second, String written) {
        FoundTable table =
                Sheets.table("Lot|Origin|Process|Height", "Kela|Low|washed|" + first, "Ridge|Mist|natural|" + second);
        LotList list = LotList.of(ListColumns.of(table, Clues.NONE), OptionalInt.empty(), DateOrder.ISO_ONLY);
        assertEquals(written, list.lots().get(0).written().get("Height"));
    }
}
