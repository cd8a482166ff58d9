package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Holds that logbooks with the headings of before are read as those of today are. */
class EarlierHeadingsTest {
    @TempDir
    Path temporary;

    private double[] air(Logbook logbook) {
        assertEquals(0, logbook.problems().size(), logbook.problems().text());
        return logbook.batch("1").airTemperature().orElseThrow().values();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "air temperature",
                "environment temperature",
                "Environment_Temperature",
                "environment-temperature"
            })
    void bothWordsNameTheAirTemperatureOfACurve(String heading) throws IOException {
        Logbook logbook = new WrittenFolder(temporary)
                .with(
                        "curves/1.csv",
                        "time [s],bean temperature [°C]," + heading + " [°F]",
                        "0,200,482",
                        "1,190,464",
                        "2,185,446")
                .open();
        assertArrayEquals(new double[] {250, 240, 230}, air(logbook), 1e-9);
        assertEquals(
                "air temperature",
                logbook.batch("1").airTemperature().orElseThrow().name());
        assertEquals(List.of(), List.copyOf(logbook.batch("1").otherCurves().keySet()));
    }

    @Test
    void whereBothWordsStandInOneFileTheFirstIsReadAndTheOtherKeptWithAWord() throws IOException {
        Logbook logbook = new WrittenFolder(temporary)
                .with(
                        "curves/1.csv",
                        "time [s],bean temperature [°C],environment temperature [°C],air temperature [°C]",
                        "0,200,250,90",
                        "1,190,240,91",
                        "2,185,230,92")
                .open();
        assertEquals(
                List.of("air temperature [°C]: found the same column twice; expected one of them; kept as an extra"),
                logbook.problems().list().stream()
                        .map(problem -> problem.column() + ": found " + problem.found() + "; expected "
                                + problem.expected() + "; " + problem.done())
                        .toList());
        assertArrayEquals(
                new double[] {250, 240, 230},
                logbook.batch("1").airTemperature().orElseThrow().values());
        assertArrayEquals(
                new double[] {90, 91, 92},
                logbook.batch("1").otherCurves().get("air temperature [°C]").values());
    }

    @ParameterizedTest
    @ValueSource(strings = {"air.temperature", "environment.temperature", "Environment temperature"})
    void bothWordsNameTheAirTemperatureInACurveLayout(String key) throws IOException {
        Logbook logbook = new WrittenFolder(temporary)
                .with(
                        "curves/layout.properties",
                        "time=t [s]",
                        "bean.temperature=b [°C]",
                        key.replace(" ", "\\ ") + "=e [°F]")
                .with("curves/1.csv", "t,b,e", "0,200,482", "1,190,464", "2,185,446")
                .open();
        assertArrayEquals(new double[] {250, 240, 230}, air(logbook), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(strings = {"highest air temperature", "highest environment temperature"})
    void bothWordsNameTheHottestAirOfAMachine(String heading) throws IOException {
        Logbook logbook = new WrittenFolder(temporary)
                .with("batches.csv", "batch,roasted at,machine", "1,2025-07-04T09:15Z,drum")
                .with("machines.csv", "machine," + heading + " [°F]", "drum,572")
                .withText("curves/1.csv", WrittenFolder.CURVE)
                .open();
        assertEquals(0, logbook.problems().size(), logbook.problems().text());
        assertEquals(
                300,
                logbook.machines().get(0).highestAirTemperature().orElseThrow().celsius(),
                1e-9);
        assertEquals(List.of(), List.copyOf(logbook.machines().get(0).extras().keySet()));
    }

    @ParameterizedTest
    @CsvSource({
        "air temperature, AIR_TEMPERATURE",
        "Environment  Temperature, AIR_TEMPERATURE",
        "bean temperature, BEAN_TEMPERATURE",
        "drum_speed, DRUM_SPEED",
        "environment, missing",
        "temperature, missing"
    })
    void quantitiesAreNamedByTheirHeadings(String heading, String quantity) {
        assertEquals(quantity, Quantity.named(heading).map(Quantity::name).orElse("missing"));
    }
}
