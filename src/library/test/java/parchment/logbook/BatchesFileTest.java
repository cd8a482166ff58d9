package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.StatedPage;
import parchment.logbook.written.BatchConditions;
import parchment.logbook.written.BatchPlan;
import parchment.logbook.written.Problem;
import parchment.quantity.Elapsed;
import parchment.quantity.MassUnit;
import parchment.quantity.TemperatureUnit;

/** A row of batches.csv on each side of each border of what is taken. */
class BatchesFileTest {
    private static final String HEAD = "batch,roasted at";
    private static final String ONE = "1,2025-03-04T09:15";

    @TempDir
    Path temporary;

    private Logbook batches(String... lines) throws IOException {
        return new WrittenFolder(temporary).with("batches.csv", lines).open();
    }

    private static List<String> problems(Logbook logbook, String part) {
        return logbook.problems().list().stream()
                .map(Problem::toString)
                .filter(line -> line.contains(part))
                .toList();
    }

    private static String held(Batch batch, String field) {
        BatchConditions conditions = batch.conditions();
        Optional<?> value = switch (field) {
            case "charge temperature" -> conditions.chargeTemperature().map(t -> t.celsius());
            case "green temperature" -> conditions.greenTemperature().map(t -> t.celsius());
            case "room temperature" -> conditions.roomTemperature().map(t -> t.celsius());
            case "room humidity" -> boxed(conditions.roomHumidity());
            case "room pressure" -> boxed(conditions.roomPressure());
            case "warm-up" -> conditions.warmUp().map(Elapsed::seconds);
            case "planned drop temperature" -> batch.plan().dropTemperature().map(t -> t.celsius());
            case "quakers" -> boxed(batch.looks().quakers());
            case "whole-bean colour" -> boxed(batch.looks().wholeBeanColour());
            case "ground colour" -> boxed(batch.looks().groundColour());
            case "green mass" -> conditions.greenMass().map(mass -> mass.kilograms());
            case "roasted mass" -> conditions.roastedMass().map(mass -> mass.kilograms());
            case "drop" -> batch.writtenMark(MarkKind.DROP).map(Elapsed::seconds);
            default -> throw new IllegalArgumentException(field);
        };
        return value.map(Object::toString).orElse("missing");
    }

    private static Optional<Double> boxed(OptionalDouble value) {
        return value.isEmpty() ? Optional.empty() : Optional.of(value.getAsDouble());
    }

    @ParameterizedTest
    @CsvSource({
        "charge temperature [°C], 19.9, missing",
        "charge temperature [°C], 20, 20.0",
        "charge temperature [°C], 350, 350.0",
        "charge temperature [°C], 350.1, missing",
        "green temperature [°C], -20.1, missing",
        "green temperature [°C], -20, -20.0",
        "green temperature [°C], 70, 70.0",
        "green temperature [°C], 70.1, missing",
        "room temperature [°C], -30.1, missing",
        "room temperature [°C], -30, -30.0",
        "room temperature [°C], 70, 70.0",
        "room temperature [°C], 70.1, missing",
        "planned drop temperature [°C], 119.9, missing",
        "planned drop temperature [°C], 120, 120.0",
        "planned drop temperature [°C], 300, 300.0",
        "planned drop temperature [°C], 300.1, missing",
        "room humidity [%], 45, 0.45",
        "room humidity [%], 101, missing",
        "room pressure [hPa], 1012, 1012.0",
        "room pressure [hPa], 10, missing",
        "warm-up [min], 1440, 86400.0",
        "warm-up [min], 1441, missing",
        "drop [min:s], 120:00, 7200.0",
        "drop [min:s], 120:01, missing",
        "quakers, 0, 0.0",
        "quakers, -1, missing",
        "quakers, 10000, 10000.0",
        "quakers, 10001, missing",
        "whole-bean colour, -12.5, -12.5",
        "ground colour, 62, 62.0",
        "ground colour, dark, missing",
        "green mass [kg], 5, 5.0",
        "roasted mass [kg], 4.25, 4.25",
    })
    void takesWhatARoastCanHaveAndSaysWhatItDoesNotTake(String header, String written, String held) throws IOException {
        Logbook logbook = batches(HEAD + "," + header, ONE + "," + written);
        assertEquals(held, held(logbook.batch("1"), header.replaceAll(" \\[.*", "")));
        assertEquals(
                held.equals("missing") ? 1 : 0,
                problems(logbook, "column '" + header).size());
    }

    /** A roast loses something, and no more than 40 % of its green mass. */
    @ParameterizedTest
    @CsvSource({
        "10, 10.01, missing, 'less than the green mass, 10'",
        "10, 10, 10.0, ''",
        "10, 8.5, 8.5, ''",
        "10, 6, 6.0, ''",
        "10, 5.99, missing, 'more than 60 % of the green mass, 10'",
        "'', 5.99, 5.99, ''",
        "10, '', missing, ''"
    })
    void theRoastedMassIsLessThanTheGreenAndMoreThanThreeFifthsOfIt(
            String green, String roasted, String held, String expected) throws IOException {
        Logbook logbook = batches(HEAD + ",green mass [kg],roasted mass [kg]", ONE + "," + green + "," + roasted);
        assertEquals(held, held(logbook.batch("1"), "roasted mass"));
        assertEquals(green.isEmpty() ? "missing" : "10.0", held(logbook.batch("1"), "green mass"));
        List<String> found = problems(logbook, "roasted mass");
        assertEquals(expected.isEmpty() ? 0 : 1, found.size(), found.toString());
        assertTrue(
                expected.isEmpty()
                        || found.get(0).contains("found '" + roasted + "'; expected " + expected)
                                && found.get(0).contains("value treated as missing"),
                found.toString());
    }

    @Test
    void theLeastRoastedMassIsTheShareThatThePageStates() throws IOException {
        double share = StatedPage.of("logbook-format.md").number("above the green mass, or below # % of it") / 100;
        Logbook logbook = batches(
                HEAD + ",green mass [kg],roasted mass [kg]",
                ONE + ",10," + 10 * share,
                ONE.replaceFirst("1", "2") + ",10," + (10 * share - 0.001));
        assertEquals("" + 10 * share, held(logbook.batch("1"), "roasted mass"));
        assertEquals("missing", held(logbook.batch("2"), "roasted mass"));
    }

    @ParameterizedTest
    @CsvSource({"chance, CHANCE, 0", "Choice, CHOICE, 0", "me, NOT_WRITTEN, 1", "'', NOT_WRITTEN, 0"})
    void aPlanIsByChanceOrByChoice(String written, BatchPlan.PlannedBy by, int problems) throws IOException {
        Logbook logbook = batches(HEAD + ",planned by", ONE + "," + written);
        assertEquals(by, logbook.batch("1").plan().plannedBy());
        List<String> found = problems(logbook, "planned by");
        assertEquals(problems, found.size(), found.toString());
        assertTrue(problems == 0
                || found.get(0).contains("found 'me'; expected 'chance' or 'choice'; value treated as missing"));
    }

    /** Earlier logbooks have a column that is read no longer; whatever stands in it harms nothing. */
    @ParameterizedTest
    @ValueSource(strings = {"13:17", "9:59", "300:00", "soon"})
    void anEndOfCoolingIsKeptAsAColumnOfTheRoastersOwn(String end) throws IOException {
        Logbook logbook =
                batches(HEAD + ",drop [min:s],cooling end [min:s],green mass [kg]", ONE + ",10:00," + end + ",5");
        assertEquals(Map.of("cooling end [min:s]", end), logbook.batch("1").extras());
        assertEquals("600.0", held(logbook.batch("1"), "drop"));
        assertEquals("5.0", held(logbook.batch("1"), "green mass"));
        assertEquals(List.of(), problems(logbook, "batches.csv"));
    }

    @ParameterizedTest
    @CsvSource({
        "planned charge temperature [°C], 195, charge temperature, 195.0, °C",
        "planned charge temperature [°F], 383, charge temperature, 195.0, °C",
        "Planned  First Gas [%], 72.5, first gas, 72.5, %",
        "planned first gas [mbar], 12, first gas, 12.0, mbar",
        "planned airflow, 3, airflow, 3.0, ''",
        "planned charge temperature [°C], 20, charge temperature, 20.0, °C",
        "planned charge temperature [°C], 350, charge temperature, 350.0, °C",
        "planned drop temperature [°F], 410, drop temperature, 210.0, °C",
    })
    void readsWhatWasPlannedForAnyControl(String header, String written, String control, double value, String unit)
            throws IOException {
        Logbook logbook = batches(HEAD + "," + header, ONE + "," + written);
        BatchPlan.Planned planned = logbook.batch("1").plan().planned(control).orElseThrow();
        assertEquals(value, planned.value(), 1e-9);
        assertEquals(unit, planned.unit());
        assertEquals(List.of(), problems(logbook, "batches.csv"));
        assertEquals(Optional.empty(), logbook.batch("1").plan().planned("another control"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "planned charge temperature [°C];19.9;a number from 20 to 350 °C (another unit in the heading?)",
                "planned charge temperature [°C];350.1;a number from 20 to 350 °C (another unit in the heading?)",
                "planned charge temperature [°F];hot;a number from 68 to 662 °F (another unit in the heading?)",
                "planned first gas [%];full;a number from -1,000,000 to 1,000,000",
            })
    void saysWhatIsNoPlanOfAControl(String header, String written, String expected) throws IOException {
        Logbook logbook = batches(HEAD + "," + header, ONE + "," + written);
        assertEquals(
                List.of("batches.csv, line 2, column '" + header + "': found '" + written + "'; expected " + expected
                        + "; kept as an extra, not used as a plan."),
                problems(logbook, "batches.csv"));
        assertEquals(Map.of(), logbook.batch("1").plan().others());
        assertEquals(Map.of(header, written), logbook.batch("1").extras());
    }

    @Test
    void aPlannedTemperatureWithoutItsUnitIsNotGuessedAt() throws IOException {
        Logbook logbook = batches(HEAD + ",planned charge temperature", ONE + ",195");
        assertEquals(Map.of(), logbook.batch("1").plan().others());
    }

    @ParameterizedTest
    @CsvSource({
        "flip-1, 1, flip-1, 1, ''",
        "flip-1, 13, flip-1, 13, ''",
        "flip-1, 0, flip-1, missing, '0'",
        "flip-1, 100000, flip-1, missing, '100000'",
        "flip-1, first, flip-1, missing, 'first'",
        "flip-1, '', flip-1, missing, nothing",
        "'', 2, missing, missing, ''",
    })
    void readsTrialAndSetAndSaysWhatIsNoSet(String trial, String set, String heldTrial, String heldSet, String found)
            throws IOException {
        Logbook logbook = batches(HEAD + ",trial,set", ONE + "," + trial + "," + set);
        BatchPlan plan = logbook.batch("1").plan();
        assertEquals(heldTrial, plan.trial().orElse("missing"));
        assertEquals(heldSet, plan.set().orElse("missing"));
        String quoted = found.equals("nothing") ? found : "'" + found + "'";
        assertEquals(
                found.isEmpty()
                        ? List.of()
                        : List.of("batches.csv, line 2, column 'set': found " + quoted
                                + "; expected the number of the set in the trial 'flip-1'; value treated as missing."),
                problems(logbook, "batches.csv"));
    }

    @Test
    void aColumnSetOfNoTrialStaysTheRoastersOwn() throws IOException {
        assertEquals(
                Map.of("set", "blue"),
                batches(HEAD + ",set", ONE + ",blue").batch("1").extras());
    }

    /** As the format's page has them: before the roast, what is heard or seen, and afterwards. */
    @Test
    void theColumnsFollowTheRoastersDay() throws IOException {
        List<String> columns = BatchesFile.FIELDS.stream().map(Field::name).toList();
        assertEquals(
                List.of(
                        "batch, roasted at, lot, machine, operator, recipe, purpose, room temperature, room humidity, room pressure,"
                                + " warm-up, green temperature, green mass, charge temperature, planned drop temperature, planned by,"
                                + " trial, set, yellowing, first crack start, first crack end, second crack start, drop, roasted mass,"
                                + " ground colour, whole-bean colour, quakers, tipping, scorching, note"),
                List.of(String.join(", ", columns)));
        String page = Files.readString(Path.of("..", "docs", "logbook-format.md"));
        String table = page.substring(page.indexOf("### batches.csv"), page.indexOf("```csv batches.csv"));
        List<String> documented = table.lines()
                .filter(line -> line.startsWith("| ") && !line.startsWith("| column") && !line.startsWith("| ---"))
                .map(line -> line.split("\\|")[1].replace("*", "").replaceAll(" \\[[^]]*]", ""))
                .flatMap(cell -> Stream.of(cell.split(",")))
                .map(String::strip)
                .toList();
        assertEquals(columns, documented);
    }

    /** Each pair of marks in the wrong order by a second, in the order of the columns. */
    @ParameterizedTest
    @CsvSource({
        "yellowing, first crack start, both kept and questioned: check them",
        "yellowing, drop, both kept; yellowing is questioned: check it",
        "first crack start, first crack end, both kept and questioned: check them",
        "first crack start, second crack start, both kept and questioned: check them",
        "first crack start, drop, both kept; first crack start is questioned: check it",
        "first crack end, drop, both kept; first crack end is questioned: check it",
        "second crack start, drop, both kept; second crack start is questioned: check it",
    })
    void questionsEveryPairThatStandsInTheWrongOrder(String first, String second, String done) throws IOException {
        String head = HEAD + "," + first + " [min:s]," + second + " [min:s]";
        Logbook logbook = batches(head, ONE + ",8:01,8:00", "2,2025-03-04T10:15,8:00,8:00");
        assertEquals(
                List.of("batches.csv, line 2, column '" + first + " [min:s]': found " + first + " at 8:01 and " + second
                        + " at 8:00; expected " + first + " before " + second + "; " + done + "."),
                problems(logbook, " before "));
        assertTrue(logbook.batch("1").writtenMark(MarkKind.DROP).isPresent() == second.equals("drop"));
    }

    @Test
    void keepsARowWithoutADateAndSaysSo() throws IOException {
        Logbook logbook = batches(HEAD, "1,", "2,2025-03-04T10:15");
        assertTrue(logbook.batch("1").roastedAt().isEmpty());
        assertTrue(logbook.batch("2").roastedAt().isPresent());
        assertEquals(
                List.of(
                        "batches.csv, line 2, column 'roasted at': found nothing; expected the date and time of the charge; kept"
                                + " without a date."),
                problems(logbook, "roasted at"));
    }

    @Test
    void setsARowOfTheSameNameAsideAndGoesOn() throws IOException {
        Logbook logbook = batches(
                HEAD + ",lot", ONE + ",a", "1,2025-03-04T10:15,b", ",2025-03-04T10:30,c", "3,2025-03-04T11:15,d");
        assertEquals(
                List.of("1", "3"), logbook.batches().stream().map(Batch::name).toList());
        assertEquals(Optional.of("a"), logbook.batch("1").lot());
        assertEquals(
                List.of(
                        "batches.csv, line 3, column 'batch': found the batch '1' again; expected a name of its own; it stands on"
                                + " line 2 too; row set aside, the first one kept."),
                problems(logbook, "again"));
    }

    @Test
    void keepsLabelsWordsAndColumnsOfTheRoastersOwn() throws IOException {
        Logbook logbook = batches(
                HEAD + ",lot,machine,operator,tipping,scorching,whole-bean colour [shade],gas dial",
                ONE + ",kela,drum,Ida,a few,none,61,7");
        Batch batch = logbook.batch("1");
        assertEquals(Optional.of("kela"), batch.label(Batch.Label.LOT));
        assertEquals(Optional.of("drum"), batch.machine());
        assertEquals(Optional.of("Ida"), batch.operator());
        assertEquals(Optional.of("a few"), batch.looks().tipping());
        assertEquals(Optional.of("none"), batch.looks().scorching());
        assertEquals("shade", batch.looks().colourMeter());
        assertEquals(Map.of("gas dial", "7"), batch.extras());
    }

    @ParameterizedTest
    @CsvSource({"ground colour [tint], tint", "ground colour, ''", "quakers, ''"})
    void theMeterIsThatOfTheGroundColourWhereNoOtherIsThere(String header, String meter) throws IOException {
        assertEquals(
                meter,
                batches(HEAD + "," + header, ONE + ",50").batch("1").looks().colourMeter());
    }

    @ParameterizedTest
    @CsvSource({
        "charge temperature [°F], FAHRENHEIT",
        "planned drop temperature [°F], FAHRENHEIT",
        "room temperature [°F], FAHRENHEIT",
        "room temperature [°C], CELSIUS",
        "green temperature [°F], ",
    })
    void theFirstTemperatureColumnTellsTheReadersUnit(String header, TemperatureUnit unit) throws IOException {
        new WrittenFolder(temporary).with("batches.csv", HEAD + "," + header, ONE + ",70");
        Logbook logbook = Logbook.open(temporary);
        assertEquals(
                unit == null ? TemperatureUnit.CELSIUS : unit,
                logbook.batch("1").readerUnit());
    }

    @ParameterizedTest
    @CsvSource({
        "green mass [kg], KILOGRAM",
        "green mass [g], GRAM",
        "green mass [lb], POUND",
        "green mass [oz], OUNCE",
        "chaff [g], KILOGRAM",
    })
    void massesAreShownInTheUnitThatTheGreenMassIsWrittenIn(String heading, MassUnit unit) throws IOException {
        Logbook logbook = new WrittenFolder(temporary)
                .with("batches.csv", "batch,roasted at," + heading, "1,2025-03-04T09:15,20")
                .open();
        assertEquals(unit, logbook.massUnit());
        assertEquals(unit, logbook.only("1").massUnit());
        assertEquals(unit, logbook.in(TemperatureUnit.FAHRENHEIT).massUnit());
    }
}
