package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.curve.Curve;
import parchment.display.Table;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.written.Upkeep;
import parchment.phase.ExampleRoast;
import parchment.quantity.Elapsed;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** How the controls of a batch are told, a record on each side of each rule. */
class ControlMovesTest {
    /** Stands for what is missing. */
    private static final String DASH = "–";

    /** The unbroken space of a move: its words stay on one line. */
    private static final String JOINED = "\u00a0";

    private static Curve control(String label, DoubleUnaryOperator of) {
        return ExampleRoast.curve("control", Unit.labelled(label), of, -40, 740, 2);
    }

    /** The example roast: from five minutes on its beans rise by 8 °C in 40 seconds, and read 140 °C at five minutes. */
    private static Batch.Builder roast(Batch.Builder batch) {
        return batch.curve(Quantity.BEAN_TEMPERATURE, ExampleRoast.bean(-40, 740))
                .writtenMark(MarkKind.DROP, Elapsed.seconds(740));
    }

    private static CardLogbook gas(DoubleUnaryOperator of) {
        return CardLogbook.of(1).change("B1", b -> roast(b).curve(Quantity.GAS, control("%", of)));
    }

    private static List<List<String>> rows(Logbook logbook) {
        return ControlMoves.of(logbook.batches(), logbook).stream()
                .flatMap(table -> IntStream.range(0, table.rowCount())
                        .mapToObj(row -> IntStream.range(0, table.columns().size())
                                .mapToObj(column -> table.cell(row, column))
                                .toList()))
                .toList();
    }

    private static String moved(Logbook logbook) {
        return rows(logbook).get(0).get(3).replace(JOINED, " ");
    }

    /** Down by one every 40 seconds from five minutes on. */
    @ParameterizedTest
    @CsvSource({"1,''", "8,''", "9,' and 1 more'", "10,' and 2 more'"})
    void eightMovesAreToldAndTheOthersCounted(int moves, String more) {
        List<String> told = new ArrayList<>();
        for (int i = 1; i <= Math.min(8, moves); i++) {
            int seconds = 300 + 40 * (i - 1);
            told.add(String.format("%d:%02d (%d °C) to %d %%", seconds / 60, seconds % 60, 140 + 8 * (i - 1), 90 - i));
        }
        Logbook logbook = gas(t -> t < 300 ? 90 : 90 - Math.min(moves, 1 + Math.floor((t - 300) / 40)))
                .logbook();
        assertEquals(String.join(", ", told) + more, moved(logbook));
    }

    @Test
    void theSettingAtChargeIsThatAtChargeAndNotTheOneBefore() {
        Logbook logbook = gas(t -> t < 0 ? 30 : t < 600 ? 80 : 50).logbook();
        assertEquals(
                List.of(List.of("gas", "B1", "80 %", "10:00 (200 °C) to 50 %".replace(" ", JOINED))), rows(logbook));
        assertEquals(
                List.of(List.of("gas", "B1", "80 %", "10:00 (392 °F) to 50 %".replace(" ", JOINED))),
                rows(logbook.in(TemperatureUnit.FAHRENHEIT)));
        assertEquals(DASH, moved(gas(t -> 80).logbook()), "a control that stood still was not moved");
    }

    /** A valve that is turned for twenty seconds is one move, told from where it began. */
    @Test
    void aSlowMoveIsToldFromItsBegin() {
        assertEquals(
                "10:02 (200 °C) to 50 %",
                moved(gas(t -> t < 600 ? 80 : Math.max(50, 80 - 1.5 * (t - 600)))
                        .logbook()));
    }

    /** As many decimals as say something, and at most the two of a scale of its own. */
    @ParameterizedTest
    @CsvSource({
        "80,%,80 %",
        "100,%,100 %",
        "0,%,0 %",
        "50.5,%,50.5 %",
        "0.35,kPa,0.35 kPa",
        "0.30,kPa,0.3 kPa",
        "79.999,%,80 %",
        "6,'',6"
    })
    void aSettingHasTheDecimalsThatSaySomething(double setting, String label, String words) {
        Logbook logbook = CardLogbook.of(1)
                .change("B1", b -> roast(b).curve(Quantity.AIRFLOW, control(label, t -> setting)))
                .logbook();
        assertEquals(List.of("airflow", "B1", words, DASH), rows(logbook).get(0));
    }

    @Test
    void aMoveStandsWithoutATemperatureWhereNoneIsKnown() {
        Logbook without = CardLogbook.of(1)
                .change("B1", b -> b.curve(Quantity.GAS, control("%", t -> t < 600 ? 80 : 50)))
                .logbook();
        assertEquals("10:00 to 50 %", moved(without));
        // The probe was moved after B1, and nobody knows by how much it reads otherwise.
        CardLogbook two = CardLogbook.of(2);
        for (String name : List.of("B1", "B2")) {
            two = two.change(
                    name, b -> roast(b).machine("drum").curve(Quantity.GAS, control("%", t -> t < 600 ? 80 : 50)));
        }
        Logbook moved = Logbook.of(two.contents().toBuilder()
                .upkeep(List.of(new Upkeep("drum", LocalDate.of(2025, 1, 2), "bean probe moved", Optional.empty())))
                .build());
        assertEquals("10:00 to 50 %", moved(moved));
        assertEquals("10:00 (200 °C) to 50 %", rows(moved).get(1).get(3).replace(JOINED, " "));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "gas [%]|gas",
                "planned gas [%]|gas",
                "Planned Gas [%]|gas",
                "gas|gas",
                "planned airflow [%]|airflow",
                "heater power [%]|heater power",
                "planned drum speed [1/min]|drum speed",
                "gasket [days]|",
                "unplanned gas [%]|",
                "air temperature [°C]|",
                "last planned gas|"
            })
    void aColumnNamedAfterAControlStandsWhereNoneWasLogged(String header, String control) {
        Logbook logbook =
                CardLogbook.of(1).change("B1", b -> b.extra(header, "70")).logbook();
        assertEquals(
                control == null ? List.of() : List.of(List.of(control, "B1", DASH, "written: " + header + " 70")),
                rows(logbook));
    }

    @Test
    void eachControlIsToldOfAllBatchesAndWhatWasLoggedGoesBeforeWhatWasWritten() {
        CardLogbook built = CardLogbook.of(3)
                .change("B1", b -> roast(b).extra("planned gas [%]", "70").curve(Quantity.GAS, control("%", t -> 80)))
                .change("B2", b -> b.extra("planned gas [%]", "60"))
                .change("B3", b -> roast(b).curve(Quantity.AIRFLOW, control("%", t -> 20)))
                .change("B1", b -> b.curve(Quantity.DRUM_SPEED, control("1/min", t -> 45)))
                .change("B2", b -> roast(b).curve(Quantity.HEATER_POWER, control("%", t -> 90)));
        assertEquals(
                List.of(
                        List.of("gas", "B1", "80 %", DASH),
                        List.of("gas", "B2", DASH, "written: planned gas [%] 60"),
                        List.of("heater power", "B2", "90 %", DASH),
                        List.of("airflow", "B3", "20 %", DASH),
                        List.of("drum speed", "B1", "45 1/min", DASH)),
                rows(built.logbook()));
        Table table = ControlMoves.of(built.batches(), built.logbook()).orElseThrow();
        assertEquals("Gas, air and other controls", table.title());
        assertTrue(table.text().contains("on today's probe. It lags the beans."), table.text());
        assertFalse(ControlMoves.of(built.batches().subList(2, 3), built.logbook())
                .orElseThrow()
                .text()
                .contains("gas"));
        assertTrue(
                ControlMoves.of(CardLogbook.of(2).batches(), CardLogbook.of(2).logbook())
                        .isEmpty());
    }
}
