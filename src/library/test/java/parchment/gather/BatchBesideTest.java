package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BatchBesideTest {
    @ParameterizedTest
    @CsvSource({
        "Batch, 30, 7, 2",
        "Batch, 29, 7, 1",
        "Lot, 30, 7, 1",
        "Batch, 10, up, 2",
        "Batch, 9, up, 1",
        "Batch, 29, clock, 2",
        "Lot, 29, clock, 1",
        "Batch, 29, cup, 1"
    })
    void aColumnThatNamesTheBatchOfManyReadingsOrOfTenWithAClockCutsTheTable(
            String heading, int readings, String beside, int parts) {
        List<List<String>> rows = new ArrayList<>();
        for (String batch : List.of("101", "102")) {
            for (int i = 0; i < readings; i++) {
                String value = switch (beside) {
                    case "up" -> Integer.toString(10 * i);
                    case "clock" -> i / 6 + ":" + i % 6 + "0";
                    // Five cups of each of some cuppers.
                    case "cup" -> Integer.toString(1 + i % 5);
                    default -> beside;
                };
                rows.add(List.of(batch, value, "200"));
            }
        }
        FoundTable table = Tables.of(List.of(heading, "time [s]", "beans"), rows);
        assertEquals(parts, BatchBeside.parts(table).size());
    }
}
