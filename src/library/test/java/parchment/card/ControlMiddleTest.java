package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import parchment.curve.Curve;
import parchment.display.Table;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.phase.ExampleRoast;
import parchment.quantity.Elapsed;
import parchment.quantity.Unit;

/** Where the middle of three batches had their gas, every two minutes, as long as three were roasting. */
class ControlMiddleTest {
    /** Batch n has n more than 80 until five minutes and 20 less from then on; it is dropped in the time given. */
    private static Logbook gas(String label, int... drops) {
        CardLogbook built = CardLogbook.of(drops.length);
        for (int i = 0; i < drops.length; i++) {
            int more = i == 0 ? 0 : i * i;
            int drop = drops[i];
            String scale = i == 0 ? label : "%";
            Curve gas =
                    ExampleRoast.curve("control", Unit.labelled(scale), t -> (t < 300 ? 80 : 60) + more, -40, 740, 2);
            built = built.change(
                    "B" + (i + 1),
                    b -> b.curve(Quantity.BEAN_TEMPERATURE, ExampleRoast.bean(-40, 740))
                            .writtenMark(MarkKind.DROP, Elapsed.seconds(drop))
                            .curve(Quantity.GAS, gas));
        }
        return built.logbook();
    }

    private static List<String> row(Logbook logbook) {
        Table table = ControlMiddle.of(logbook.batches(), logbook).orElseThrow();
        return IntStream.range(0, table.columns().size())
                .mapToObj(column -> table.columns().get(column).heading() + " " + table.cell(0, column))
                .toList();
    }

    @Test
    void theMiddleIsToldAsLongAsThreeWereRoasting() {
        List<String> all = List.of(
                "control gas",
                "at charge 81 %",
                "2:00 81 %",
                "4:00 81 %",
                "6:00 61 %",
                "8:00 61 %",
                "10:00 61 %",
                "12:00 61 %");
        assertEquals(all, row(gas("%", 720, 725, 730)));
        assertEquals(all.subList(0, 7), row(gas("%", 719, 725, 730)));
        assertTrue(
                ControlMiddle.of(gas("%", 700, 700).batches(), gas("%", 700, 700))
                        .isEmpty(),
                "two have no middle");
        Logbook scales = gas("kPa", 700, 700, 700);
        assertTrue(ControlMiddle.of(scales.batches(), scales).isEmpty(), "two scales have no middle");
    }

    @Test
    void theCardHasTheMiddleInSightAndTheMovesOfEachBatchFoldedAway() {
        String page = LotCard.of("one", gas("%", 700, 710, 720)).html().orElseThrow();
        int fold = page.indexOf("Gas, air and other controls, batch by batch");
        assertTrue(page.indexOf("the middle of these batches") < fold, page);
        assertTrue(page.lastIndexOf("<details", fold) > page.lastIndexOf("</details", fold), page);
    }
}
