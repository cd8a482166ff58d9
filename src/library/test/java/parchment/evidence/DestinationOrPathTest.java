package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.BiFunction;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.evidence.finding.Verdict;
import parchment.logbook.Logbook;
import parchment.logbook.contents.Cautions;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Asks logbooks whose truth is known whether the destination or the path went with the score. */
@Tag("holds-for-any")
class DestinationOrPathTest {
    /** A batch's three measures: what stands behind the score is one of them. */
    private record Three(double drop, double development, double early) {}

    /** Draws a logbook in which the score follows the drop temperature by 0.15 points per °C, and reads three measures off it. */
    private static DestinationOrPath ask(
            KnownTruth truth, long seed, double markError, BiFunction<Double, Random, Three> path) {
        KnownTruth.Drawn drawn = truth.draw(seed);
        Random random = new Random(seed + 77);
        Map<String, Three> batches = new LinkedHashMap<>();
        Map<String, double[][]> errors = new LinkedHashMap<>();
        drawn.measure().readings().forEach((name, reading) -> {
            Three true3 = path.apply(reading.value() - truth.center, random);
            double late = markError * random.nextGaussian();
            batches.put(name, new Three(true3.drop(), true3.development() - late, true3.early() + late));
            double square = markError * markError;
            errors.put(name, new double[][] {{0, 0, 0}, {0, square, -square}, {0, -square, square}});
        });
        List<Measure> measures = List.of(
                measure("drop temperature", Unit.TEMPERATURE, batches, Three::drop),
                measure("development time", Unit.SECONDS, batches, Three::development),
                measure("first crack time", Unit.SECONDS.withNaturalStep(30), batches, Three::early));
        Measure rates = measure(
                "development rate",
                Unit.RATE_OF_RISE,
                batches,
                three -> 60 * (three.drop() - 190) / three.development());
        return new PathQuestion("sweetness", measures, rates, errors, List.of(), EvidenceSettings.standard())
                .ask(drawn.logbook());
    }

    private static Measure measure(String name, Unit unit, Map<String, Three> batches, ToDoubleFunction<Three> value) {
        Map<String, ModelFrames.Reading> readings = new LinkedHashMap<>();
        batches.forEach(
                (batch, three) -> readings.put(batch, new ModelFrames.Reading(value.applyAsDouble(three), Double.NaN)));
        return new Measure(name, unit, TemperatureUnit.CELSIUS, readings);
    }

    private static KnownTruth truth() {
        KnownTruth truth = new KnownTruth();
        truth.measureError = 0;
        return truth;
    }

    /** The drop temperature is what counts; development follows it in part. */
    private static Three destination(double x, Random random) {
        return new Three(205 + x, 90 + 4 * x + 12 * random.nextGaussian(), 540 + 25 * random.nextGaussian());
    }

    /** Development time is what counts, 1 s for each 0.2 °C of the truth; the drop follows it in part. */
    private static Three path(double x, Random random) {
        return new Three(205 + 0.7 * x + 2 * random.nextGaussian(), 90 + 5 * x, 540 + 25 * random.nextGaussian());
    }

    /** Both rise together, but for a little. */
    private static Three together(double x, Random random) {
        return new Three(205 + x, 90 + 5 * x + random.nextGaussian(), 540 + 25 * random.nextGaussian());
    }

    @Test
    void findsTheDestinationWhereItCounted() {
        int found = 0;
        int held = 0;
        for (long seed = 1; seed <= 5; seed++) {
            DestinationOrPath asked = ask(truth(), seed, 0, DestinationOrPathTest::destination);
            PathContrast finish = asked.contrast("faster finish");
            found += finish.verdict() == Verdict.SUGGESTIVE && finish.perStep().estimate() > 0 ? 1 : 0;
            held += asked.contrast("added time").interval().contains(0) ? 1 : 0;
            assertTrue(finish.verdict() != Verdict.STRONG);
        }
        assertTrue(found >= 4, found + " of 5");
        assertTrue(held >= 3, held + " of 5");
    }

    @Test
    void findsThePathWhereItCounted() {
        int found = 0;
        for (long seed = 1; seed <= 5; seed++) {
            DestinationOrPath asked = ask(truth(), seed, 0, DestinationOrPathTest::path);
            PathContrast added = asked.contrast("added time");
            // 0.15 points per °C of the truth, 5 s per °C: 0.3 points per 10 s.
            found += added.interval().lower() > 0 && added.interval().contains(0.3) ? 1 : 0;
        }
        assertTrue(found >= 3, found + " of 5");
    }

    @Test
    void cannotTellThemApartWhereTheyMovedTogether() {
        int told = 0;
        for (long seed = 1; seed <= 3; seed++) {
            DestinationOrPath asked = ask(truth(), seed, 0, DestinationOrPathTest::together);
            told += asked.contrast("added time").verdict() == Verdict.CANNOT_TELL ? 0 : 1;
            told += asked.contrast("faster finish").verdict() == Verdict.CANNOT_TELL ? 0 : 1;
            assertEquals(
                    PathContrast.Separation.NOT_SEPARATED,
                    asked.contrast("added time").separation());
            assertTrue(asked.contrast("added time").inflation() > 10);
            // What they did together can still be told.
            assertEquals(
                    PathContrast.Separation.SEPARATED,
                    asked.contrast("later drop").separation());
            // Pairs, no more than anybody will roast, and the same number in words and in the table.
            int batches = asked.batchesThatWouldTell();
            assertEquals(0, batches % 2, asked.text());
            assertTrue(batches >= 2 && batches <= 2 * SeparatingBatches.MOST_PAIRS, asked.text());
            assertEquals(batches, asked.next().orElseThrow().mixtures().size());
            assertTrue(
                    asked.text().contains("What would tell: " + batches + " batches in pairs.")
                            || asked.text().contains("The " + batches + " batches in pairs below")
                            || batches == 2 * SeparatingBatches.START
                                    && asked.text().contains("The best " + batches + " batches to start with"),
                    asked.text());
        }
        assertEquals(0, told);
    }

    @Test
    void saysSoWhereOneFollowsFromTheOther() {
        DestinationOrPath asked =
                ask(truth(), 1, 0, (x, random) -> new Three(205 + x, 90 + 5 * x, 540 + 25 * random.nextGaussian()));
        assertEquals(Verdict.CANNOT_TELL, asked.contrast("added time").verdict());
        assertTrue(asked.text().contains("follows from the others"), asked.text());
        assertTrue(asked.svg().isPresent());
    }

    @Test
    void theNamedPairsTakeApartWhatMovedTogether() {
        DestinationOrPath asked = ask(truth(), 3, 0, DestinationOrPathTest::together);
        String text = asked.text();
        assertTrue(text.contains("batches in pairs"), text);
        assertTrue(text.contains("drawn by chance"), text);
        assertTrue(text.contains(Cautions.BESIDE_A_READING), text);
    }

    @Test
    void aLateMarkMovesTwoTimesAtOnceAndIsCorrectedFor() {
        int held = 0;
        int attenuated = 0;
        KnownTruth truth = truth();
        truth.days = 40;
        for (long seed = 1; seed <= 8; seed++) {
            PathContrast added =
                    ask(truth, seed, 8, DestinationOrPathTest::path).contrast("added time");
            assertTrue(added.reliability().value() < 0.9, added.reliability().toString());
            held += added.interval().contains(0.3) ? 1 : 0;
            attenuated += added.fitted().estimate() < added.perStep().estimate() ? 1 : 0;
        }
        assertTrue(held >= 5, held + " of 8 held by 90 % intervals");
        assertTrue(attenuated >= 7, attenuated + " of 8");
    }

    @Test
    void calendarBehindBothIsFoundOutByTheNextDay() {
        KnownTruth truth = truth();
        truth.days = 40;
        truth.dayShareOfDrop = 0.7;
        truth.nextDayInScore = 0.3;
        truth.daySpread = 0.1;
        DestinationOrPath asked = ask(truth, 6, 0, DestinationOrPathTest::destination);
        assertTrue(
                asked.contrasts().stream().noneMatch(contrast -> contrast.verdict() == Verdict.SUGGESTIVE),
                asked.toString());
    }

    @Test
    void sameLogbookGivesTheSameAnswer() {
        assertEquals(
                ask(truth(), 4, 0, DestinationOrPathTest::path).text(),
                ask(truth(), 4, 0, DestinationOrPathTest::path).text());
    }

    @Test
    void aSmallLogbookWithBlanksGetsSentences() {
        Logbook hillside = Logbook.open(Path.of("..", "datasets", "hillside"));
        DestinationOrPath asked = DestinationOrPath.of("sweetness", hillside);
        assertEquals(5, asked.contrasts().size());
        asked.contrasts().forEach(contrast -> assertEquals(Verdict.CANNOT_TELL, contrast.verdict()));
        assertTrue(asked.text().contains("first crack start is missing;")
                || asked.text().contains("is missing."));
        assertFalse(asked.text().contains("°C"), asked.text());
        assertFalse(asked.text().contains("NaN"), asked.text());
    }

    @Test
    void saysWhichComparisonsThereAre() {
        DestinationOrPath asked = ask(truth(), 1, 0, DestinationOrPathTest::path);
        assertTrue(assertThrows(IllegalArgumentException.class, () -> asked.contrast("longer"))
                .getMessage()
                .contains("added time, swapped time"));
    }

    @Test
    void foretellsOnlyMixturesThatWereTried() {
        DestinationOrPath asked = ask(truth(), 5, 0, DestinationOrPathTest::destination);
        ScorePrediction usual = asked.at(205, 90, 540);
        assertEquals(ScorePrediction.Tried.YES, usual.tried());
        assertEquals(0, usual.difference(), 0.15);
        assertEquals(3, usual.nearest().size());
        ScorePrediction hotter = asked.at(208, 102, 540);
        assertTrue(hotter.interval().contains(0.45), hotter.words());
        // Each value was tried, the mixture never: hot with a short development.
        ScorePrediction strange = asked.at(209, 72, 540);
        assertEquals(ScorePrediction.Tried.NO, strange.tried());
        assertTrue(strange.words().contains("not in this mixture"), strange.words());
        ScorePrediction far = asked.at(230, 90, 540);
        assertTrue(far.words().contains("was not tried"), far.words());
        assertTrue(Double.isNaN(far.difference()));
    }

    /** The probe was moved by -4 °C after the first 40 batches; by how much, is known to an error that they share. */
    private static DestinationOrPath moved(double shiftError) {
        KnownTruth.Drawn drawn = truth().draw(5);
        Random random = new Random(82);
        Map<String, ModelFrames.Reading> drops = new LinkedHashMap<>();
        Map<String, ModelFrames.Reading> developments = new LinkedHashMap<>();
        Map<String, ModelFrames.Reading> early = new LinkedHashMap<>();
        drawn.measure().readings().forEach((name, reading) -> {
            Three three = destination(reading.value() - 205, random);
            boolean before = Integer.parseInt(name.substring(1)) <= 40;
            drops.put(
                    name,
                    new ModelFrames.Reading(before ? three.drop() : three.drop() - 4, Double.NaN)
                            .onTodaysProbe(three.drop() - 4, before ? shiftError : 0, before ? "before" : "now"));
            developments.put(name, new ModelFrames.Reading(three.development(), Double.NaN));
            early.put(name, new ModelFrames.Reading(three.early(), Double.NaN));
        });
        List<Measure> measures = List.of(
                new Measure("drop temperature", Unit.TEMPERATURE, TemperatureUnit.CELSIUS, drops),
                new Measure("development time", Unit.SECONDS, TemperatureUnit.CELSIUS, developments),
                new Measure("first crack time", Unit.SECONDS, TemperatureUnit.CELSIUS, early));
        Measure rates = new Measure("development rate", Unit.RATE_OF_RISE, TemperatureUnit.CELSIUS, Map.of());
        return new PathQuestion("sweetness", measures, rates, Map.of(), List.of(), EvidenceSettings.standard())
                .ask(drawn.logbook());
    }

    @Test
    void whatIsForetoldIsAtAReadingOnTodaysProbeAndWiderWhereTheMoveIsNotKnownWell() {
        ScorePrediction known = moved(0).at(201, 90, 540);
        assertEquals(ScorePrediction.Tried.YES, known.tried());
        assertEquals(0, known.difference(), 0.15);
        ScorePrediction unsure = moved(1.5).at(201, 90, 540);
        assertEquals(known.difference(), unsure.difference(), 1e-9);
        // Half of the batches lie before the move: 0.75 °C of the mean drop is not known, so 0.75 times the slope is
        // added.
        double slope = moved(0).contrast("faster finish").fitted().estimate();
        double degrees = 1.645;
        double more = Math.pow(unsure.interval().width() / 2, 2)
                - Math.pow(known.interval().width() / 2, 2);
        assertEquals(0.75 * slope, Math.sqrt(more) / degrees, 0.12 * 0.75 * slope);
    }

    @Test
    void phasesThatSumToNearlyTheSameWholeLeaveOnlyTheSwap() {
        DestinationOrPath asked = ask(truth(), 2, 0, (x, random) -> {
            double development = 90 + 20 * random.nextGaussian();
            return new Three(205 + x, development, 600 - development + random.nextGaussian());
        });
        assertEquals(
                PathContrast.Separation.NOT_SEPARATED,
                asked.contrast("added time").separation());
        assertEquals(
                PathContrast.Separation.NOT_SEPARATED,
                asked.contrast("slower start").separation());
        assertEquals(
                PathContrast.Separation.SEPARATED,
                asked.contrast("swapped time").separation());
    }

    @Test
    void aPeakAlongAComparisonIsNotCalledNothing() {
        KnownTruth truth = truth();
        truth.slope = 0;
        truth.bend = -0.06;
        truth.days = 40;
        DestinationOrPath asked = ask(truth, 3, 0, DestinationOrPathTest::destination);
        PathContrast later = asked.contrast("later drop");
        assertEquals(Verdict.SUGGESTIVE, later.verdict(), asked.toString());
        assertTrue(later.reason().contains("rises and falls"), later.reason());
    }
}
