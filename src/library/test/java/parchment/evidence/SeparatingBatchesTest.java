package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Verdict;
import parchment.logbook.Logbook;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Estimate;
import parchment.stats.linear.Matrices;

/** Words of the batches that would tell, one built record for each outcome; and the search in batches of every mixture, where all is known. */
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

    /**
     * Holds 27 batches of one lot, three to a day: every mixture of three drops, three development times and three times to first crack, once.
     * All crack at 190 °C.
     */
    private static final class Mixtures {
        double[] drops = {200, 205, 210};
        double[] developments = {80, 90, 100};
        double[] times = {530, 540, 550};
        double firstDrop = 200;
        double batchSpread = 0.6;
        final Map<String, ModelFrames.Reading> rates = new LinkedHashMap<>();

        JointFit fit() {
            KnownTruth truth = new KnownTruth();
            truth.days = 9;
            truth.batchesPerDay = 3;
            truth.lots = 1;
            truth.slope = 0;
            truth.batchSpread = batchSpread;
            truth.daySpread = 0.1;
            truth.cupSpread = 0.2;
            Logbook logbook = truth.draw(3).logbook();
            List<Map<String, ModelFrames.Reading>> readings =
                    List.of(new LinkedHashMap<>(), new LinkedHashMap<>(), new LinkedHashMap<>());
            for (int i = 0; i < 27; i++) {
                String name = logbook.batches().get(i).name();
                // A Latin square, so that no measure follows the day.
                int first = i % 3;
                int second = i / 3 % 3;
                int third = (i / 9 + first + second) % 3;
                double[] mixture = {i == 0 ? firstDrop : drops[first], developments[second], times[third]};
                for (int k = 0; k < 3; k++) {
                    readings.get(k).put(name, new ModelFrames.Reading(mixture[k], Double.NaN));
                }
            }
            List<Measure> measures = new ArrayList<>();
            for (int k = 0; k < 3; k++) {
                measures.add(new Measure(
                        MEASURES.get(k).name(), MEASURES.get(k).unit(), TemperatureUnit.CELSIUS, readings.get(k)));
            }
            return JointFit.of(JointFrame.of("sweetness", logbook, measures), Map.of());
        }

        Measure rates() {
            return new Measure("development rate", Unit.RATE_OF_RISE, TemperatureUnit.CELSIUS, rates);
        }

        /** Writes the rate of rise after first crack of every batch of this drop and development. */
        Mixtures withRate(double drop, double development, double rate) {
            JointFrame joint = fit().joint();
            joint.material().batches().forEach(batch -> {
                int i = batch.position();
                if (joint.values(0)[i] == drop && joint.values(1)[i] == development) {
                    rates.put(batch.name(), new ModelFrames.Reading(rate, Double.NaN));
                }
            });
            return this;
        }
    }

    private static List<List<Double>> list(List<double[]> points) {
        return points.stream()
                .map(point -> Arrays.stream(point)
                        .map(x -> Math.rint(1e6 * x) / 1e6)
                        .boxed()
                        .toList())
                .toList();
    }

    @Test
    void everyMixtureOfTheEndsAndTheMiddleIsOfferedWhereNoRateIsKnown() {
        List<List<Double>> all = new ArrayList<>();
        for (double drop : new double[] {200, 205, 210}) {
            for (double development : new double[] {80, 90, 100}) {
                for (double time : new double[] {530, 540, 550}) {
                    all.add(List.of(drop, development, time));
                }
            }
        }
        Mixtures mixtures = new Mixtures();
        assertEquals(all, list(SeparatingBatches.points(mixtures.fit(), mixtures.rates())));
    }

    /** 20 °C in 100 s are 12 °C/min; a quarter less is 9 °C/min, 15 °C in 100 s, and a quarter more 15 °C/min, 20 °C in 80 s. */
    @Test
    void aMixtureMayFinishAQuarterFasterOrSlowerThanWasSeen() {
        Mixtures seen = new Mixtures().withRate(210, 100, 12);
        List<double[]> points = SeparatingBatches.points(seen.fit(), seen.rates());
        assertEquals(18, points.size());
        assertTrue(points.stream().allMatch(point -> point[0] > 204), "none of 200 °C, at 7.5 °C/min or less");
        Mixtures more = new Mixtures().withRate(210, 100, 12).withRate(205, 100, 9);
        // Now from 6.75 to 15 °C/min: 10 °C in 80 s too, not in 90.
        assertEquals(
                List.of(80.0, 80.0, 80.0),
                SeparatingBatches.points(more.fit(), more.rates()).stream()
                        .filter(point -> point[0] < 204)
                        .map(point -> point[1])
                        .toList());
    }

    private static Optional<SeparatingBatches> asked(
            Mixtures mixtures, double size, List<double[]> weights, PathContrast... contrasts) {
        return SeparatingBatches.of(mixtures.fit(), weights, List.of(contrasts), mixtures.rates(), size);
    }

    private static final double[] DROP = {1, 0, 0};
    private static final double[] DEVELOPMENT = {0, 10, 0};

    @Test
    void nothingIsLookedForWhereEverythingIsTold() {
        assertEquals(Optional.empty(), asked(new Mixtures(), 0.5, List.of(DROP), TOLD));
        assertTrue(asked(new Mixtures(), 0.5, List.of(DROP, DEVELOPMENT), TOLD, WIDE)
                .isPresent());
    }

    @Test
    void onlyWhatBatchesCanTellIsLookedFor() {
        assertEquals(
                SeparatingBatches.Outcome.NOT_BY_BATCHES,
                asked(
                                new Mixtures(),
                                0.5,
                                List.of(DROP, DEVELOPMENT),
                                TOLD,
                                contrast("added time", Verdict.CANNOT_TELL, PathContrast.Because.CALENDAR))
                        .orElseThrow()
                        .outcome());
    }

    @Test
    void aMeasureThatDidNotVaryIsNamedIfItIsAskedFor() {
        Mixtures still = new Mixtures();
        still.developments = new double[] {90, 90, 90};
        SeparatingBatches asked =
                asked(still, 0.5, List.of(DROP, DEVELOPMENT), TOLD, WIDE).orElseThrow();
        assertEquals(SeparatingBatches.Outcome.HARDLY_VARIED, asked.outcome());
        assertTrue(asked.words().contains(": development time hardly varied inside lots"), asked.words());
        assertNotEquals(
                SeparatingBatches.Outcome.HARDLY_VARIED,
                asked(still, 0.5, List.of(DROP, DEVELOPMENT), WIDE, TOLD)
                        .orElseThrow()
                        .outcome());
    }

    @Test
    void whereNoMixtureFinishesAtARateThatWasSeenNoneIsOffered() {
        // The only rate is that of one batch far from the others: 15 °C/min, and it cracked at 220 °C.
        Mixtures odd = new Mixtures();
        odd.firstDrop = 240;
        odd.withRate(240, 80, 15);
        SeparatingBatches asked = asked(odd, 0.5, List.of(DROP), WIDE).orElseThrow();
        assertEquals(SeparatingBatches.Outcome.OUT_OF_REACH, asked.outcome(), asked.words());
    }

    /** By formula: the step's error, times the steps in the middle 80 %, times what a test at 1 in 100 found in 8 of 10 needs. */
    private static double shown(JointFit fit, double[] weight, double steps, List<double[]> mixtures) {
        double[][] information =
                Matrices.inverse(fit.slopeCovariance().orElseThrow()).orElseThrow();
        for (int i = 0; i + 1 < mixtures.size(); i += 2) {
            for (int k = 0; k < 3; k++) {
                for (int l = 0; l < 3; l++) {
                    information[k][l] += (mixtures.get(i)[k] - mixtures.get(i + 1)[k])
                            * (mixtures.get(i)[l] - mixtures.get(i + 1)[l])
                            / (2 * fit.fitted().batchVariance());
                }
            }
        }
        double error =
                Math.sqrt(Matrices.form(weight, Matrices.inverse(information).orElseThrow(), weight));
        double degrees = Math.max(2, fit.fitted().mostDegrees());
        return steps * error * (new Estimate("", 0, 1, degrees).interval(0.99).upper() + 0.8416);
    }

    /** The fewest: with the last pair they show what matters, without it they do not. */
    @ParameterizedTest
    @CsvSource({"0.9", "1.2"})
    void thePairsThatWouldTellAreTheFewestThatShowWhatMatters(double size) {
        Mixtures mixtures = new Mixtures();
        mixtures.batchSpread = 0.8;
        JointFit fit = mixtures.fit();
        // The middle 80 % of the drops spans 10 steps of 1 °C, that of development two of 10 s.
        SeparatingBatches ofDrop = asked(mixtures, size, List.of(DROP), WIDE).orElseThrow();
        SeparatingBatches ofTime =
                asked(mixtures, size, List.of(DEVELOPMENT), WIDE).orElseThrow();
        for (SeparatingBatches asked : List.of(ofDrop, ofTime)) {
            double[] weight = asked == ofDrop ? DROP : DEVELOPMENT;
            double steps = asked == ofDrop ? 10 : 2;
            List<double[]> pairs = asked.mixtures();
            assertEquals(SeparatingBatches.Outcome.ENOUGH, asked.outcome(), asked.words());
            assertEquals(pairs.size(), asked.batches());
            assertTrue(pairs.size() >= 4, asked.words());
            assertTrue(shown(fit, weight, steps, pairs) <= size * 1.0001, asked.words());
            assertTrue(shown(fit, weight, steps, pairs.subList(0, pairs.size() - 2)) > size, asked.words());
        }
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
