package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import parchment.evidence.ReadingsMoved.Entry;
import parchment.evidence.ReadingsMoved.Step;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Holds how an answer says that readings of an earlier probe were told otherwise than they were written. */
class ReadingsMovedTest {
    private static final LocalDate FIRST = LocalDate.of(2024, 3, 1);
    private static final LocalDate SECOND = LocalDate.of(2025, 2, 10);

    private static String words(TemperatureUnit reader, Step... steps) {
        return new ReadingsMoved(List.of(steps))
                .words(new Measure("drop temperature", Unit.TEMPERATURE, reader, Map.of()));
    }

    private static String words(Step... steps) {
        return words(TemperatureUnit.CELSIUS, steps);
    }

    @Test
    void whereNothingWasMovedNothingIsSaid() {
        assertEquals("", words());
    }

    @Test
    void theDirectionIsThatOfWhatWasAdded() {
        assertEquals(
                "Readings from before 2025-02-10 were lowered by about 2.8 °C, to what today's probe would show; your logbook stays as it is.",
                words(new Step(SECOND, -2.8, Entry.WRITTEN)));
        assertEquals(
                "Readings from before 2025-02-10 were raised by about 1.1 °C, to what today's probe would show; your logbook stays as it is.",
                words(new Step(SECOND, 1.1, Entry.WRITTEN)));
        assertEquals(
                "Readings from before 2025-02-10 were lowered by about 5.0 °F, to what today's probe would show; your logbook stays as it is.",
                words(TemperatureUnit.FAHRENHEIT, new Step(SECOND, -2.8, Entry.WRITTEN)));
        assertEquals(
                "Readings from before 2025-02-10 were left as they are, to what today's probe would show; your logbook stays as it is.",
                words(new Step(SECOND, 0, Entry.WRITTEN)));
    }

    @Test
    void aMoveThatNobodyWroteIsSaidToShowInTheReadings() {
        assertEquals(
                "Readings from before 2025-02-10 were lowered by about 2.8 °C, to what today's probe would show; your logbook stays as it is. Nobody wrote that the probe"
                        + " was changed; the readings themselves show it.",
                words(new Step(SECOND, -2.8, Entry.NOT_WRITTEN)));
    }

    @Test
    void severalStepsAreToldPeriodByPeriod() {
        assertEquals(
                "Readings from before 2024-03-01 were lowered by about 2.8 °C; those from 2024-03-01 until"
                        + " before 2025-02-10 were raised by about 1.1 °C, to what today's probe would show; your logbook stays as it is.",
                words(new Step(FIRST, -2.8, Entry.WRITTEN), new Step(SECOND, 1.1, Entry.WRITTEN)));
        assertEquals(
                "Readings from before 2024-03-01 were lowered by about 2.8 °C; those from 2024-03-01 until"
                        + " before 2025-02-10 were raised by about 1.1 °C, to what today's probe would show; your logbook stays as it is. Nobody wrote that the probe was changed each time; the readings"
                        + " themselves show it.",
                words(new Step(FIRST, -2.8, Entry.NOT_WRITTEN), new Step(SECOND, 1.1, Entry.WRITTEN)));
    }

    @Test
    void theDemoLogbookSaysHowItsEarlierReadingsWereTold() {
        Logbook harbour = Logbook.open(Path.of("..", "datasets", "harbour"));
        Evidence drop = Evidence.of("sweetness", Features.dropTemperature(), harbour);
        assertEquals(HARBOUR, drop.readingsMoved());
        assertEquals(
                "",
                Evidence.of("sweetness", Features.developmentTime(), harbour).readingsMoved());
    }

    private static final String HARBOUR =
            "Readings from before 2024-10-07 were lowered by about 1.1 °C, to what today's probe would show; your logbook stays as it is.";
}
