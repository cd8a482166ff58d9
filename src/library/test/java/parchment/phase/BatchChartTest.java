package parchment.phase;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import parchment.chart.Panels;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.quantity.Elapsed;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

class BatchChartTest {
    private static final double[] SECONDS =
            IntStream.rangeClosed(0, 300).mapToDouble(i -> 2.0 * i).toArray();

    /** An invented curve that falls from 190 °C, turns and rises to about 205 °C at ten minutes. */
    private static Curve bean() {
        double[] celsius = new double[SECONDS.length];
        for (int i = 0; i < SECONDS.length; i++) {
            celsius[i] = 225 - 150 * Math.exp(-SECONDS[i] / 300) + 115 * Math.exp(-SECONDS[i] / 25);
        }
        return Curve.of("bean temperature", Unit.TEMPERATURE, SECONDS, celsius);
    }

    private static Curve steady(String name, String unit, double value) {
        double[] values = new double[SECONDS.length];
        java.util.Arrays.fill(values, value);
        return Curve.of(name, unit.equals("°C") ? Unit.TEMPERATURE : Unit.labelled(unit), SECONDS, values);
    }

    private static Batch.Builder bare() {
        return Batch.named("112").curve(Quantity.BEAN_TEMPERATURE, bean());
    }

    private static Batch full() {
        return bare().lot("harbour <b>")
                .curve(Quantity.AIR_TEMPERATURE, steady("air temperature", "°C", 220))
                .curve(Quantity.GAS, steady("gas", "%", 80))
                .curve(Quantity.AIRFLOW, steady("airflow", "%", 30))
                .curve(Quantity.DRUM_SPEED, steady("drum speed", "1/min", 55))
                .writtenMark(MarkKind.YELLOWING, Elapsed.of(5, 0))
                .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.of(8, 30))
                .writtenMark(MarkKind.DROP, Elapsed.of(10, 0))
                .build();
    }

    @Test
    void putsControlsInPanelsOfTheirOwnByUnit() {
        Panels panels = BatchChart.of(full()).panels();
        assertEquals(3, panels.plots().size());
        assertEquals("setting (%)", panels.plots().get(1).y().fullLabel());
        assertEquals("drum speed (1/min)", panels.plots().get(2).y().fullLabel());
    }

    @Test
    void saysEachMarkInWordsWithItsErrorAndEachPhase() {
        String text = BatchChart.of(full()).text();
        assertTrue(text.contains("first crack start 8:30 ± 5 s"), text);
        assertTrue(
                text.contains("rying from 0:00 to 5:00; browning from 5:00 to 8:30; development from 8:30 to 10:00"),
                text);
        assertTrue(text.contains("yellowing, first crack start, drop: written by the roaster"), text);
    }

    @Test
    void drawsNoRateOverTheTemperatures() {
        assertFalse(BatchChart.of(full()).svg().orElseThrow().contains("rate of rise"));
    }

    @Test
    void saysWhatIsMissing() {
        String text = BatchChart.of(bare().build()).text();
        assertTrue(text.contains("No air temperature was logged."), text);
        assertTrue(text.contains("No control was logged."), text);
        assertTrue(text.contains("Yellowing and first crack start were not written"), text);
    }

    @Test
    void showsASentenceForABatchWithoutReadings() {
        String svg = BatchChart.of(Batch.named("empty").build()).svg().orElseThrow();
        assertTrue(svg.contains("No temperature was logged for this batch."), svg);
    }

    @Test
    void followsAChangeOfUnit() {
        String svg = BatchChart.of(full()).in(TemperatureUnit.FAHRENHEIT).svg().orElseThrow();
        assertTrue(svg.contains(">temperature (°F)<"), svg);
        assertFalse(svg.contains("°C"), svg);
    }

    @Test
    void escapesNames() {
        assertFalse(BatchChart.of(full()).html().orElseThrow().contains("<b>"));
    }

    @Test
    void leavesAGapInTheLineWhereTheProbeWasSilent() {
        Curve bean = bean();
        Curve early = bean.between(0, 200);
        Curve late = bean.between(300, 600);
        double[] seconds = new double[early.size() + late.size()];
        double[] values = new double[seconds.length];
        for (int i = 0; i < seconds.length; i++) {
            seconds[i] = i < early.size() ? early.secondsAt(i) : late.secondsAt(i - early.size());
            values[i] = i < early.size() ? early.valueAt(i) : late.valueAt(i - early.size());
        }
        Batch batch = Batch.named("gap")
                .curve(Quantity.BEAN_TEMPERATURE, Curve.of("bean temperature", Unit.TEMPERATURE, seconds, values))
                .build();
        var line = (parchment.chart.Line) BatchChart.of(batch).panels().plots().get(0).layers().stream()
                .filter(layer -> layer.label().equals("bean temperature"))
                .findFirst()
                .orElseThrow();
        long gaps = IntStream.range(0, line.size() - 1)
                .filter(i -> Double.isNaN(line.y(i)))
                .count();
        assertEquals(1, gaps);
    }
}
