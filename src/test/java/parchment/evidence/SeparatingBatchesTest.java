package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Words of the batches that would tell, one built record for each outcome. */
@Tag("says")
class SeparatingBatchesTest {
    private static final String HOW =
            " Both of a pair are of one lot and roasted on one day, which of them goes first drawn by chance before charge, cupped blind and"
                    + " scored before anybody speaks. Each value was reached before, but perhaps not in this mixture: whether your machine can do it,"
                    + " one trial batch will tell.";

    private static final List<Measure> MEASURES = List.of(
            new Measure("drop temperature", Unit.TEMPERATURE, TemperatureUnit.CELSIUS, Map.of()),
            new Measure("development time", Unit.SECONDS, TemperatureUnit.CELSIUS, Map.of()),
            new Measure("first crack time", Unit.SECONDS, TemperatureUnit.CELSIUS, Map.of()));

    private static final List<double[]> POINTS =
            List.of(new double[] {200, 80, 540}, new double[] {210, 80, 540}, new double[] {210, 100, 540});

    private static PathContrast contrast(String name, Verdict verdict, PathContrast.Because because) {
        return new PathContrast(
                name,
                "",
                "1",
                new Slope(0, 1, 9),
                new Slope(0, 1, 9),
                new Slope(0, 1, 9).interval(0.9),
                new Reliability(1, 0, 1, 9),
                1,
                1,
                verdict,
                because,
                "");
    }

    private static SeparatingBatches of(
            SeparatingBatches.Outcome outcome, List<String> unmoved, PathContrast... contrasts) {
        return new SeparatingBatches(
                MEASURES,
                POINTS,
                new SeparatingBatches.Plan(
                        outcome,
                        unmoved.isEmpty() && outcome.ordinal() <= SeparatingBatches.Outcome.MORE_THAN_OFFERED.ordinal()
                                ? Map.of(List.of(0, 1), 2, List.of(0, 2), 1)
                                : Map.of(),
                        unmoved),
                List.of(contrasts),
                0.5);
    }

    private static final PathContrast WIDE = contrast("added time", Verdict.CANNOT_TELL, PathContrast.Because.TOO_WIDE);
    private static final PathContrast TOGETHER =
            contrast("faster finish", Verdict.CANNOT_TELL, PathContrast.Because.MOVED_TOGETHER);
    private static final PathContrast TOLD = contrast("later drop", Verdict.SUGGESTIVE, PathContrast.Because.SLOPE);

    @Test
    void namesThePairsThatWouldTell() {
        SeparatingBatches next = of(SeparatingBatches.Outcome.ENOUGH, List.of(), WIDE, TOLD, TOGETHER);
        assertEquals(
                "What would tell: 6 batches in pairs. By formula they would show a difference of 0.50 points over the middle 80 % of what was"
                        + " tried, in 8 of 10 logbooks, for added time and faster finish." + HOW,
                next.words());
        assertEquals(6, next.batches());
        assertEquals(6, next.mixtures().size());
        assertEquals(200, next.mixtures().get(0)[0]);
        assertEquals(210, next.mixtures().get(1)[0]);
        String table = next.table().text();
        assertTrue(table.contains("The fewest pairs of batches that would tell"), table);
        assertTrue(table.contains("200.0 °C and 210.0 °C"), table);
        assertTrue(table.contains("both 80 s"), table);
        assertTrue(table.indexOf("both 80 s") < table.indexOf("80 s and 100 s"), table);
    }

    @Test
    void saysWhenTheAnswerLiesBetween() {
        assertEquals(
                "By formula this logbook could have shown a difference of 0.50 points over the middle 80 % of what was tried, in 8 of 10"
                        + " logbooks, for added time: what it found lies between that and zero. The 6 batches in pairs below would halve the"
                        + " variance of the answer." + HOW,
                of(SeparatingBatches.Outcome.BETWEEN, List.of(), WIDE).words());
    }

    @Test
    void saysWhenMoreAreNeededThanAnybodyWillRoast() {
        SeparatingBatches next = of(SeparatingBatches.Outcome.MORE_THAN_OFFERED, List.of(), WIDE);
        assertEquals(
                "To show a difference of 0.50 points over the middle 80 % of what was tried, in 8 of 10 logbooks, for added time, more than 60"
                        + " batches would be needed, by formula. More cups or cuppers for each batch, or a wider range inside what your machine's"
                        + " maker allows, would be cheaper. The best 6 batches to start with are below." + HOW,
                next.words());
        assertTrue(next.table().text().contains("The pairs to start with"));
    }

    @Test
    void saysHardlyVariedOnlyOfWhatHardlyVaried() {
        assertEquals(
                "No batches can be named that would tell: development time hardly varied inside lots, so nothing is known of what your machine"
                        + " can do elsewhere.",
                of(SeparatingBatches.Outcome.HARDLY_VARIED, List.of("development time"), WIDE)
                        .words());
        assertEquals(
                "No batches can be named that would tell: whatever is mixed from the values of drop temperature, development time and first"
                        + " crack time seen so far asks for a finish more than a quarter faster or slower than any batch had.",
                of(SeparatingBatches.Outcome.OUT_OF_REACH, List.of(), WIDE).words());
    }

    @Test
    void saysWhatMoreBatchesCannotTell() {
        SeparatingBatches next = of(
                SeparatingBatches.Outcome.NOT_BY_BATCHES,
                List.of(),
                contrast("added time", Verdict.CANNOT_TELL, PathContrast.Because.ERROR_OF_MEASURING),
                contrast("swapped time", Verdict.CANNOT_TELL, PathContrast.Because.ERROR_OF_MEASURING),
                contrast("faster finish", Verdict.CANNOT_TELL, PathContrast.Because.MOVED_WITH_A_CONTROL),
                contrast("slower start", Verdict.CANNOT_TELL, PathContrast.Because.CALENDAR));
        assertEquals(
                "For added time and swapped time more batches of the same kind would not tell: they differ in it by little more than the error"
                        + " of measuring. Marks written as they happen, or a wider range inside what your machine's maker allows, would. For"
                        + " faster finish only batches would tell in which it moves and the control that moved with it stays. For slower start"
                        + " more batches of the same kind would not tell: only batches drawn by chance, on days to come, are free of what moves"
                        + " with the calendar.",
                next.words());
        assertEquals(0, next.batches());
        assertFalse(next.words().contains("hardly varied"), next.words());
    }

    @Test
    void thirtyPairsThatAreJustEnoughAreEnough() {
        // Each pair adds 1 to an information of 1: 31 after 30 pairs.
        SeparatingBatches.Plan enough = SeparatingBatches.planned(search(1 / Math.sqrt(30.5)));
        assertEquals(SeparatingBatches.Outcome.ENOUGH, enough.outcome());
        assertEquals(Map.of(List.of(0, 1), 30), enough.pairs());
        SeparatingBatches.Plan more = SeparatingBatches.planned(search(1 / Math.sqrt(31.5)));
        assertEquals(SeparatingBatches.Outcome.MORE_THAN_OFFERED, more.outcome());
        assertEquals(Map.of(List.of(0, 1), 8), more.pairs());
    }

    @Test
    void whereTheFormulaAsksForNoneTheVarianceIsHalved() {
        SeparatingBatches.Plan between = SeparatingBatches.planned(search(2));
        assertEquals(SeparatingBatches.Outcome.BETWEEN, between.outcome());
        assertEquals(Map.of(List.of(0, 1), 1), between.pairs());
        assertEquals(
                SeparatingBatches.Outcome.BETWEEN,
                SeparatingBatches.planned(search(1)).outcome());
        assertEquals(
                SeparatingBatches.Outcome.ENOUGH,
                SeparatingBatches.planned(search(0.999)).outcome());
    }

    private static PairSearch search(double error) {
        return new PairSearch(
                new double[][] {{1}},
                List.of(new double[] {0}, new double[] {2}),
                List.of(new double[] {1}),
                new double[] {error},
                2);
    }
}
