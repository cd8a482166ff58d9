package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BatchBesideTest {
    @ParameterizedTest
    @CsvSource({"Batch, 30, 2", "Batch, 29, 1", "Lot, 30, 1"})
    void aColumnThatNamesTheBatchOfThirtyReadingsOrMoreCutsTheTable(String heading, int readings, int parts) {
        List<List<String>> rows = new ArrayList<>();
        for (String batch : List.of("101", "102")) {
            for (int i = 0; i < readings; i++) {
                rows.add(List.of(batch, Integer.toString(10 * i), "200"));
            }
        }
        Table table = Tables.of(List.of(heading, "time [s]", "beans"), rows);
        assertEquals(parts, BatchBeside.parts(table).size());
    }
}
