package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.period.ProbeChange;
import parchment.period.ProbePeriods;
import parchment.quantity.TemperatureUnit;
import parchment.stats.Estimate;

class WeekOldNumbersTest {
    private static final Logbook HARBOUR = Logbook.open(Path.of("..", "datasets", "harbour"));

    private static ProbeChange change(String machine, ProbeChange.Kind kind) {
        LocalDate day = LocalDate.of(2025, 1, 10);
        return new ProbeChange(machine, kind, day, day, day, List.of(), 0.01, "");
    }

    /** 90 % of a normal distribution lie within 1.645 standard deviations (table), so an error of 0.6 reaches to 0.99. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "-1.1; drum; The bean probe of drum reads 1.1 °C (0.1 to 2.1) lower at the drop today than before 2025-01-10; numbers from before"
                        + " are told as it reads today. Dropped at an old number, a batch comes out hotter.",
                "1.1; ''; The bean probe of the machine reads 1.1 °C (0.1 to 2.1) higher at the drop today than before 2025-01-10; numbers from"
                        + " before are told as it reads today. Dropped at an old number, a batch comes out less hot.",
            })
    void saysWhichWayABatchComesOut(double added, String machine, String first, String second) {
        assertEquals(
                first + "; " + second,
                WeekOldNumbers.words(
                                change(machine, ProbeChange.Kind.FOUND_AND_WRITTEN),
                                new Estimate("added", added, 0.6, Double.POSITIVE_INFINITY),
                                TemperatureUnit.CELSIUS)
                        .orElseThrow());
    }

    /** On either side of where the interval holds zero, and where nothing is known. */
    @ParameterizedTest
    @CsvSource({"-0.98, false", "-1.0, true", "0.98, false", "1.0, true", "NaN, false"})
    void saysNothingOfWhatMayBeNothing(double added, boolean said) {
        assertEquals(
                said,
                WeekOldNumbers.words(
                                change("drum", ProbeChange.Kind.FOUND_AND_WRITTEN),
                                new Estimate("added", added, 0.6, Double.POSITIVE_INFINITY),
                                TemperatureUnit.CELSIUS)
                        .isPresent());
    }

    private static List<Batch> week(Logbook logbook) {
        return Week.of(logbook).batches().stream().map(Usual::batch).toList();
    }

    @Test
    void aChangeOfMonthsAgoIsOnThePageAsLongAsItsLotsWereRoastedBefore() {
        String page = Week.of(HARBOUR).text();
        String sentence = "lower at the drop today than before 2024-10-07;";
        assertEquals(1, page.split(sentence, -1).length - 1, page);
        assertTrue(page.indexOf(sentence) < page.indexOf("How this was worked out"), page);
        assertFalse(page.contains("reckoned with and no news: 2024-10-07"), page);
        assertFalse(Week.of(HARBOUR).inShort().text().contains("2024-10-07"));
        ProbeChange change = ProbePeriods.of(HARBOUR).changes().stream()
                .filter(one -> one.on().equals(LocalDate.of(2024, 10, 7)))
                .findFirst()
                .orElseThrow();
        assertTrue(WeekOldNumbers.of(change, week(HARBOUR), HARBOUR).isPresent());
        List<Batch> ofAnotherLot = week(HARBOUR).stream()
                .map(b -> b.toBuilder().lot("new").build())
                .toList();
        assertEquals(Optional.empty(), WeekOldNumbers.of(change, ofAnotherLot, HARBOUR));
        ProbeChange unsure = change(change.machine(), ProbeChange.Kind.LOT_OR_PROBE);
        assertEquals(Optional.empty(), WeekOldNumbers.of(unsure, week(HARBOUR), HARBOUR));
    }
}
