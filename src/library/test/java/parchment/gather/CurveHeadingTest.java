package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.gather.ColumnClaim.UnitDoubt;

/** What a heading says of a column of readings, in six languages; the words are common practice, no source. */
class CurveHeadingTest {
    /** A column from a number to another in even steps. */
    private record Written(String heading, double low, double high) {}

    private static List<MeaningProposal> proposals(Written... written) {
        int rows = 60;
        List<List<String>> lines = new ArrayList<>();
        for (int r = 0; r < rows; r++) {
            List<String> line = new ArrayList<>(List.of(Integer.toString(10 * r)));
            for (Written one : written) {
                line.add(String.format(Locale.ROOT, "%.2f", one.low() + (one.high() - one.low()) * r / (rows - 1)));
            }
            lines.add(line);
        }
        List<String> headings = new ArrayList<>(List.of("Time [s]"));
        List.of(written).forEach(one -> headings.add(one.heading()));
        FoundTable file = Tables.of(headings, lines);
        return MeaningProposal.of(IntStream.range(0, headings.size())
                .mapToObj(i -> StrangeColumn.of(file, i))
                .toList());
    }

    private static List<String> meanings(Written... written) {
        return proposals(written).stream().map(one -> one.meaning().toString()).toList();
    }

    /** Each stands beside a probe without a name, and falls lower than it: by its values it would be the beans. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Fan [rpm]|airflow [rpm]",
                "Fan (RPM)|airflow [RPM]",
                "Fan rpm|airflow [rpm]",
                "rpm|extra",
                "Fan|airflow",
                "Lüfter|airflow",
                "Gebläse U/min|airflow [U/min]",
                "Ventilador|airflow",
                "Ventilateur (tr/min)|airflow [tr/min]",
                "Ventola [giri/min]|airflow [giri/min]",
                "Air flow|airflow",
                "Airflow m³/h|airflow [m³/h]",
                "Flujo de aire|airflow",
                "Fluxo de ar|airflow",
                "Débit d'air|airflow",
                "Flusso d'aria|airflow",
                "Luftklappe|airflow",
                "Air [Pa]|airflow [Pa]",
                "Drum speed|drum speed",
                "Drum [Hz]|drum speed [Hz]",
                "Trommeldrehzahl|drum speed",
                "Velocidad del tambor|drum speed",
                "Vitesse tambour|drum speed",
                "Velocità tamburo|drum speed",
                "Gas [mbar]|gas [mbar]",
                "Gas mbar|gas [mbar]",
                "Gasdruck|gas",
                "Burner [kW]|gas [kW]",
                "Gas pressure|gas",
                "Leistung|heater power",
                "Heater [W]|heater power [W]",
                "Potencia|heater power",
                "Puissance W|heater power [W]",
                "probe 2 [bar]|extra",
                "probe 2 [%]|extra",
                "Draft Pa|extra",
                "Druck|extra",
                "Velocità|extra",
                "RoR|extra",
                "Rise [°F/min]|extra",
                "Anstieg (°C/min)|extra",
                "Weight|extra",
            })
    void whatIsNoTemperatureByItsHeadingIsNeverTheBeans(String heading, String meaning) {
        assertEquals(
                List.of("time [s]", meaning, "bean temperature [°C]"),
                meanings(new Written(heading, 60, 290), new Written("T1", 95, 210)));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Fan inlet temp",
                "Drum [°C]",
                "Drum temp",
                "Gastemperatur",
                "Abgas",
                "Exhaust gas",
                "Burner °C",
                "Air C",
                "Trommel",
                "Drum"
            })
    void aTemperatureByItsUnitOrWordsIsNoControl(String heading) {
        assertEquals(
                List.of("time [s]", "bean temperature [°C]", "air temperature [°C]"),
                meanings(new Written("Beans", 95, 210), new Written(heading, 150, 240)));
    }

    @Test
    void aColumnInDegreesThatIsTooColdForARoastIsNoControlEither() {
        assertEquals(
                List.of("time [s]", "bean temperature [°C]", "extra"),
                meanings(new Written("Beans", 95, 210), new Written("Air [°C]", 20, 25)));
        assertEquals(
                "its heading has a unit of temperature, and its values are none of a roast; kept under its own name",
                proposals(new Written("Beans", 95, 210), new Written("Air [°C]", 20, 25))
                        .get(2)
                        .reason());
    }

    @ParameterizedTest
    @CsvSource({
        "Beans F, °F",
        "Beans-F, °F",
        "Beans/F, °F",
        "Beans_F, °F",
        "'Beans, F', °F",
        "BT °F, °F",
        "°F beans, °F",
        "Beans (°F) raw, °F",
        "Beans [deg F], °F",
        "Beans (degrees F), °F",
        "Beans (Fahrenheit), °F",
        "Beans fahrenheit, °F",
        "Probe 1 F, °F",
        "Beans [Celsius], °C",
        "Bohnen Grad C, °C",
        "Beans (C), °C",
        "Beans [K], K",
        "Beans (probe 1), °C",
    })
    void theScaleIsReadHoweverItIsWritten(String heading, String unit) {
        // Values up to 213 are °C where nothing says otherwise.
        assertEquals(
                "bean temperature [" + unit + "]",
                meanings(new Written(heading, 80, 215)).get(1));
    }

    @ParameterizedTest
    @CsvSource({"gas %, gas [%]", "Gas%, gas [%]", "Gas [%], gas [%]", "Gas, gas", "Fan Percent, airflow [Percent]"})
    void aControlKeepsItsUnitWithoutBrackets(String heading, String meaning) {
        assertEquals(
                meaning,
                meanings(new Written("Beans", 80, 215), new Written(heading, 20, 80))
                        .get(2));
    }

    @Test
    void degreesCelsiusThatNoBeanStandsAreAsked() {
        MeaningProposal hot = proposals(new Written("Beans [C]", 180, 420)).get(1);
        assertEquals("bean temperature [°F]", hot.meaning().toString());
        assertEquals(UnitDoubt.OPEN, hot.doubt());
        assertEquals(
                "its heading says so; its heading says °C, but values go up to 416, which no bean stands in °C",
                hot.reason());
        assertEquals(
                UnitDoubt.KNOWN,
                proposals(new Written("Beans [C]", 80, 299)).get(1).doubt());
    }

    @Test
    void theBeansAreInTheScaleOfTheTemperatureBeside() {
        MeaningProposal beans = proposals(new Written("Beans", 140, 280), new Written("Exhaust [F]", 250, 400))
                .get(1);
        assertEquals("bean temperature [°F]", beans.meaning().toString());
        assertEquals(
                "its heading says so; the unit is not written; another temperature beside it is in °F", beans.reason());
        assertEquals(
                "bean temperature [°F]",
                meanings(new Written("Beans", 140, 420), new Written("Room temp [C]", 121, 122))
                        .get(1));
    }

    @Test
    void theAirIsTheOneThatIsNamedSoAndNeverATarget() {
        assertEquals(
                List.of("time [s]", "bean temperature [°C]", "extra", "air temperature [°C]", "extra"),
                meanings(
                        new Written("Beans", 95, 210),
                        new Written("Probe 3", 100, 220),
                        new Written("Exhaust", 150, 240),
                        new Written("Target temp", 150, 240)));
        assertEquals(
                List.of("time [s]", "extra", "bean temperature [°C]"),
                meanings(new Written("Bean target", 90, 212), new Written("Beans", 95, 210)));
    }

    @ParameterizedTest
    @CsvSource({
        "Seconds since charge, true",
        "Time after drop-in, true",
        "Zeit seit Füllen (s), true",
        "Zeit nach Einwurf, true",
        "Zeit ab Charge, true",
        "Tiempo desde la carga, true",
        "Tempo desde a carga, true",
        "Temps depuis le chargement, true",
        "Temps depuis l'enfournement, true",
        "Tempo dal carico, true",
        "Time since start, false",
        "Zeit seit Start, false",
        "Elapsed, false",
        "Charge time, false",
    })
    void aHeadingSaysThatTimesCountFromTheCharge(String heading, boolean since) {
        assertEquals(since, new CurveHeading(heading).isSinceCharge());
    }

    @Test
    void aRecordingNeedsATemperatureAmongItsColumns() {
        assertTrue(!MeaningProposal.isRecording(proposals(new Written("Fan [rpm]", 120, 900))));
        assertTrue(MeaningProposal.isRecording(proposals(new Written("T1", 120, 210))));
    }
}
