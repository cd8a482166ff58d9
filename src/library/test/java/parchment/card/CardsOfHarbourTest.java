package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import parchment.align.Nearest;
import parchment.curve.Curve;
import parchment.display.ShortSentences;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.Quantity;
import parchment.period.ProbePeriods;
import parchment.quantity.TemperatureUnit;

/** The cards of the demo logbook, whose probe was moved before the roasts of 7 October 2024. */
class CardsOfHarbourTest {
    private static final Logbook HARBOUR = Logbook.open(Path.of("..", "datasets", "harbour"));

    @Test
    void readingsOfBeforeTheMoveAreTodaysOnTheCardAndInThePicture() {
        Batch before = HARBOUR.batch("H036");
        Batch after = HARBOUR.batch("H168");
        TodaysReadings readings = TodaysReadings.of(HARBOUR);
        double added = ProbePeriods.of(HARBOUR).toToday(before, 203).estimate();
        assertEquals(203 + added, readings.today(before, 203), 1e-12);
        assertTrue(added < -0.5 && added > -2, "the move was written and seen: " + added);
        assertEquals(203, readings.today(after, 203), 0);
        Curve read = before.curve(Quantity.BEAN_TEMPERATURE).orElseThrow();
        Curve today = readings.today(before)
                .orElseThrow()
                .curve(Quantity.BEAN_TEMPERATURE)
                .orElseThrow();
        for (int i = 0; i < read.size(); i++) {
            double value = read.valueAt(i);
            assertEquals(value + ProbePeriods.of(HARBOUR).toToday(before, value).estimate(), today.valueAt(i), 1e-9);
        }
        assertEquals(after, readings.today(after).orElseThrow());
        assertEquals(List.of(), readings.sentences(List.of(after), 203, "at the drop"));
    }

    @Test
    void saysWhichReadingsWereMovedByHowMuchAndSinceWhen() {
        List<Batch> batches = List.of(HARBOUR.batch("H036"), HARBOUR.batch("H075"), HARBOUR.batch("H168"));
        assertEquals(
                List.of(
                        "Temperatures of batches H036, H075 are told as today's probe would show them: at the drop 1.1 °C below what was"
                                + " read, give or take 0.2 °C; since 2024-10-07 the probe reads otherwise."),
                TodaysReadings.of(HARBOUR).sentences(batches, 203, "at the drop"));
        assertEquals(
                List.of(
                        "Temperatures of batch H036 are told as today's probe would show them: at the drop 2.0 °F below what was"
                                + " read, give or take 0.3 °F; since 2024-10-07 the probe reads otherwise."),
                TodaysReadings.of(HARBOUR.in(TemperatureUnit.FAHRENHEIT))
                        .sentences(batches.subList(0, 1), 203, "at the drop"));
    }

    @Test
    void aBatchThatNobodyCanPutBeforeOrAfterTheMoveHasNoTemperatures() {
        Batch undated = Batch.named("X1")
                .machine("drum on the quay")
                .curve(
                        Quantity.BEAN_TEMPERATURE,
                        HARBOUR.batch("H036").beanTemperature().orElseThrow())
                .build();
        TodaysReadings readings = TodaysReadings.of(HARBOUR);
        assertTrue(readings.today(undated).isEmpty());
        assertEquals(
                "Temperatures of batch X1 are left out: what today's probe would have read is not known; since 2024-10-07 the probe"
                        + " reads otherwise.",
                readings.sentences(List.of(undated), 203, "at the drop").get(0));
    }

    @Test
    void theCardOfALotSaysWhereItsScoresWereBestAndPromisesNothing() {
        LotCard card = LotCard.of("Cinder Ridge", HARBOUR);
        ShortSentences.keptBy(card.inShort());
        String page = card.text();
        assertTrue(page.startsWith("Lot card of Cinder Ridge\n\nInvented machine: do not roast."), page);
        assertTrue(
                page.contains(
                        "Their cups scored highest in liking, blind: 4 of 17 lie within the luck of tasting of the very best."),
                page);
        assertTrue(
                page.matches(
                        "(?s).*All 71 scored batches of the lot together put the best drop for liking at 203\\.\\d °C"
                                + " \\(202\\.\\d to 203\\.\\d °C\\), as today's probe reads; of the 4 dropped here 2 lie within\\."
                                + " It is the best seen in this logbook, not a setting to make\\..*Side by side.*"),
                page);
        // One batch alone has its charge temperature on today's probe.
        assertTrue(page.matches("(?s).*charge temperature +only 1: others on the probe as it was .*"), page);
        assertTrue(page.contains("A charge temperature that was read before the probe was changed is left out"), page);
        assertFalse(page.matches("(?is).*(do this|you should|set the|to get).*"), page);
        // Every one of the cards' batches was roasted by the recipe of the newest, of about its mass.
        double newest = 2.1;
        for (Batch batch : card.batches()) {
            assertEquals("filter", batch.label(Batch.Label.RECIPE).orElseThrow());
            assertEquals(newest, batch.conditions().greenMass().orElseThrow().kilograms(), 0.1 * newest);
        }
    }

    @Test
    void theCardOfABatchHoldsEveryPart() {
        String page = BatchCard.of("H123", HARBOUR).text();
        for (String part : List.of(
                "Batch H123 of Salt Meadow, 2024-08-23",
                "Invented machine: do not roast.",
                "Batch H123 is like 16 others of lot Salt Meadow, recipe espresso, about the same mass.",
                "Bean temperature of 17 batches",
                "Feature by feature",
                "Roasted on 2024-08-23 on drum on the quay, batch 2 of 5 of the day.",
                "Its recipe was espresso; that of most of its lot's others was filter (36 of 67).",
                "The drop was planned at 200.0 °C and came at 200.7 °C, as read then; today's probe would show 199.6 °C.",
                "Its liking was 1.2 points above its lot's others by the same cuppers (10 scores, give or take 0.3): more than cups"
                        + " differ by as a rule. All were scored blind.",
                "Nearest by path, on the same probe",
                "carbon monoxide")) {
            assertTrue(page.contains(part), part + "\n" + page);
        }
    }

    /** The drop of the batch and those of its neighbours are on one scale, and the neighbours in the order of their number. */
    @Test
    void theNearestStandInOrderAndOnTodaysProbe() {
        String page = BatchCard.of("H142", HARBOUR).text();
        String nearest = page.substring(page.indexOf("Nearest by path"), page.indexOf("For how long one of the two"));
        List<Integer> seconds = Pattern.compile("2024-\\d\\d-\\d\\d +(\\d+):(\\d\\d) ")
                .matcher(nearest)
                .results()
                .map(found -> 60 * Integer.parseInt(found.group(1)) + Integer.parseInt(found.group(2)))
                .toList();
        assertEquals(6, seconds.size(), nearest);
        assertEquals(seconds.stream().sorted().toList(), seconds, nearest);
        double read = Nearest.to(HARBOUR.batch("H142"), HARBOUR)
                .list()
                .get(0)
                .drop()
                .orElseThrow()
                .beanTemperature()
                .orElseThrow()
                .celsius();
        assertTrue(nearest.contains(String.format(Locale.ROOT, "%.1f", read - 1.1)), read + "\n" + nearest);
        assertTrue(page.contains("Temperatures are as today's probe would show them."), page);
        assertFalse(page.contains("as read then. "), page);
        assertTrue(page.contains("came at 205.9 °C, as read then; today's probe would show 204.7 °C."), page);
        assertEquals(
                "Its cups scored 1.0 points above its lot's others in liking, blind: cup it again, nothing measured says why.",
                ShortSentences.keptBy(BatchCard.of("H142", HARBOUR).inShort()).next());
        assertTrue(
                page.contains(
                        "All 9 numbers that can be held against theirs lie where 80 of 100 batches have all theirs; of 2 more it cannot be told."));
    }
}
