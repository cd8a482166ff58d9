package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.Quantity;
import parchment.logbook.written.Upkeep;
import parchment.period.BuiltProbe;
import parchment.period.ProbePeriods;
import parchment.phase.ExampleRoast;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** What is added to readings of before a change of the probe, and how it is told; three batches a roast day, B1 to B3 on the first. */
class TodaysReadingsTest {
    private static List<Batch> named(Logbook logbook, String... names) {
        return Stream.of(names).map(logbook::batch).toList();
    }

    private static List<String> sentences(Logbook logbook, String... names) {
        return TodaysReadings.of(logbook).sentences(named(logbook, names), 203, "at the drop");
    }

    /** The probe reads 3 °C less or more from the seventh day on, all but exactly: the error is told as the least step that prints. */
    @ParameterizedTest
    @CsvSource({
        "-3,CELSIUS,3.0 °C below,0.1 °C",
        "3,CELSIUS,3.0 °C above,0.1 °C",
        "-3,FAHRENHEIT,5.4 °F below,0.1 °F",
        "3,FAHRENHEIT,5.4 °F above,0.1 °F"
    })
    void whatWasAddedIsToldWithItsSideAndNeverAsFreeOfError(
            double step, TemperatureUnit reader, String added, String error) {
        BuiltProbe built = new BuiltProbe(14).step(7, step);
        built.noise = 0.001;
        Logbook logbook = built.logbook().in(reader);
        assertEquals(
                List.of("Temperatures of batches B1, B21 are told as today's probe would show them: at the drop "
                        + added
                        + " what was read, give or take " + error + "; since " + BuiltProbe.day(7)
                        + " the probe reads otherwise."),
                sentences(logbook, "B1", "B22", "B21"));
        TodaysReadings readings = TodaysReadings.of(logbook);
        assertEquals(203 + step, readings.today(logbook.batch("B1"), 203), 0.05);
        assertEquals(203, readings.today(logbook.batch("B22"), 203));
        assertEquals(List.of(), sentences(logbook, "B22"));
    }

    /** Half a degree of noise leaves an error of more than the least step, and that is the one told. */
    @Test
    void anErrorThatPrintsIsToldAsItIs() {
        Logbook logbook = noisy();
        double error =
                ProbePeriods.of(logbook).toToday(logbook.batch("B1"), 203).standardError();
        assertTrue(error > 0.15, "the error " + error);
        String words = sentences(logbook, "B1").get(0);
        assertTrue(
                words.contains(
                        ", give or take " + Unit.TEMPERATURE_STEP.formatStep(error, TemperatureUnit.CELSIUS) + ";"),
                words);
        assertTrue(words.startsWith("Temperatures of batch B1 are told"), words);
    }

    private static Logbook noisy() {
        BuiltProbe built = new BuiltProbe(14).step(7, -3);
        built.noise = 0.6;
        return built.logbook();
    }

    @Test
    void eachPeriodHasItsSentenceWithEveryChangeSince() {
        BuiltProbe built = new BuiltProbe(20).step(6, -3).step(13, 5).written("bean probe moved", BuiltProbe.day(6));
        built.noise = 0.001;
        Logbook logbook = built.logbook();
        assertEquals(
                List.of(
                        "Temperatures of batch B1 are told as today's probe would show them: at the drop 2.0 °C above what was read,"
                                + " give or take 0.1 °C; since " + BuiltProbe.day(6) + " and since "
                                + BuiltProbe.day(13)
                                + " the probe reads otherwise.",
                        "Temperatures of batches B19, B20 are told as today's probe would show them: at the drop 5.0 °C above what"
                                + " was read, give or take 0.1 °C; since " + BuiltProbe.day(13)
                                + " the probe reads otherwise."),
                sentences(logbook, "B1", "B19", "B60", "B20"));
    }

    /** Two batches with a change of the probe between them, so that nobody knows by how much it reads otherwise. */
    private static Logbook unknown() {
        CardLogbook built = CardLogbook.of(2)
                .change("B1", b -> b.machine("drum").curve(Quantity.BEAN_TEMPERATURE, ExampleRoast.bean(-40, 740)));
        built = built.change(
                "B2", b -> b.machine("drum").curve(Quantity.BEAN_TEMPERATURE, ExampleRoast.bean(-40, 740)));
        return Logbook.of(built.contents().toBuilder()
                .upkeep(List.of(new Upkeep("drum", LocalDate.of(2025, 1, 2), "bean probe moved", Optional.empty())))
                .build());
    }

    @Test
    void whatIsNotKnownOnTodaysProbeIsLeftOut() {
        Logbook logbook = unknown();
        TodaysReadings readings = TodaysReadings.of(logbook);
        assertTrue(readings.today(logbook.batch("B1")).isEmpty());
        assertTrue(Double.isNaN(readings.today(logbook.batch("B1"), 203)));
        assertEquals(logbook.batch("B2"), readings.today(logbook.batch("B2")).orElseThrow());
        Batch empty = logbook.batch("B1").toBuilder()
                .curve(
                        Quantity.BEAN_TEMPERATURE,
                        Curve.of("bean temperature", Unit.TEMPERATURE, new double[0], new double[0]))
                .build();
        assertTrue(readings.today(empty).isEmpty());
        assertEquals(
                "Temperatures of batch B1 are left out: what today's probe would have read is not known; since 2025-01-02 the probe"
                        + " may read otherwise.",
                sentences(logbook, "B1", "B2").get(0));
    }

    /** The probe was moved after the last roast, so "today's" is the one before it, and that is said. */
    @Test
    void whatStandsAgainstTheScaleIsSaidToo() {
        Logbook logbook = new BuiltProbe(14)
                .written("bean probe moved", BuiltProbe.day(14))
                .logbook();
        assertEquals(
                List.of(
                        "The upkeep says that the bean probe of drum was changed on 2025-03-17, after the last roast written here:"
                                + " readings are told as the probe before it read them, and \"today's probe\" means that one. What the new one"
                                + " reads shows only once batches are roasted with it."),
                sentences(logbook, "B1"));
    }

    @Test
    void aCurveIsMovedReadingByReadingAndOneThatIsMissingStaysMissing() {
        BuiltProbe built = new BuiltProbe(14).step(7, -3);
        built.noise = 0.001;
        Logbook logbook = built.logbook();
        TodaysReadings readings = TodaysReadings.of(logbook);
        Batch before = logbook.batch("B1");
        Curve moved = readings.today(before).flatMap(Batch::beanTemperature).orElseThrow();
        double[] read = before.beanTemperature().orElseThrow().values();
        assertEquals(
                Arrays.stream(read)
                        .map(value -> readings.today(before, value))
                        .boxed()
                        .toList(),
                Arrays.stream(moved.values()).boxed().toList());
        assertEquals(
                Arrays.stream(before.beanTemperature().orElseThrow().seconds())
                        .boxed()
                        .toList(),
                Arrays.stream(moved.seconds()).boxed().toList());
        CardLogbook none = CardLogbook.of(1);
        assertTrue(
                TodaysReadings.of(none.logbook()).today(none.batches().get(0)).isEmpty());
    }
}
