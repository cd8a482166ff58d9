package parchment.phase;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.LogbookContents;
import parchment.logbook.MarkKind;
import parchment.quantity.Elapsed;

class PhaseTableTest {
    private static Batch batch(String name, double yellowing, double crack, double drop) {
        return Batch.named(name)
                .writtenMark(MarkKind.YELLOWING, Elapsed.seconds(yellowing))
                .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(crack))
                .writtenMark(MarkKind.DROP, Elapsed.seconds(drop))
                .build();
    }

    @Test
    void namesTheMarksToCheckInWords() {
        PhaseTable table = PhaseTable.of(Logbook.of(LogbookContents.ofBatches(
                "three", List.of(batch("a", 300, 600, 700), batch("b", 300, 702, 700), batch("c", 540, 490, 559)))));
        assertEquals(List.of(), table.rows().get(0).questioned());
        assertEquals(List.of(MarkKind.FIRST_CRACK_START), table.rows().get(1).questioned());
        assertEquals(
                List.of(MarkKind.YELLOWING, MarkKind.FIRST_CRACK_START),
                table.rows().get(2).questioned());
        List<String> lines = Arrays.asList(table.shownAs().text().split("\n"));
        assertTrue(
                lines.stream().anyMatch(line -> line.contains("to check")),
                table.shownAs().text());
        assertTrue(lines.stream()
                .anyMatch(line -> line.startsWith("a") && line.stripTrailing().endsWith("nothing")));
        assertTrue(lines.stream()
                .anyMatch(line -> line.startsWith("b") && line.stripTrailing().endsWith("first crack start")));
        assertTrue(
                lines.stream()
                        .anyMatch(line ->
                                line.startsWith("c") && line.stripTrailing().endsWith("yellowing, first crack start")),
                table.shownAs().text());
    }
}
