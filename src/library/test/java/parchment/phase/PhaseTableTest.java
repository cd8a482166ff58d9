package parchment.phase;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.contents.LogbookContents;
import parchment.quantity.Elapsed;
import parchment.quantity.Unit;

class PhaseTableTest {
    private static Batch batch(String name, double yellowing, double crack, double drop) {
        return Batch.named(name)
                .writtenMark(MarkKind.YELLOWING, Elapsed.seconds(yellowing))
                .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(crack))
                .writtenMark(MarkKind.DROP, Elapsed.seconds(drop))
                .build();
    }

    @ParameterizedTest
    @CsvSource({"1,false,no bean temperature at the drop", "0,false,nothing", "0,true,the drop is missing"})
    void saysWhyTheDropTemperatureIsMissing(int readings, boolean withoutDrop, String toCheck) {
        Batch.Builder batch = Batch.named("a")
                .writtenMark(MarkKind.YELLOWING, Elapsed.seconds(300))
                .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(600));
        if (!withoutDrop) {
            batch.writtenMark(MarkKind.DROP, Elapsed.seconds(700));
        }
        if (readings > 0) {
            batch.curve(
                    Quantity.BEAN_TEMPERATURE,
                    Curve.of("bean temperature", Unit.TEMPERATURE, new double[] {10}, new double[] {150}));
        }
        String page = PhaseTable.of(Logbook.of(LogbookContents.ofBatches("one", List.of(batch.build()))))
                .shownAs()
                .text();
        assertTrue(
                page.lines()
                        .anyMatch(line ->
                                line.startsWith("a") && line.stripTrailing().endsWith("  " + toCheck)),
                page);
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
