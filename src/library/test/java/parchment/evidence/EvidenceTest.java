package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.display.Showable;
import parchment.evidence.finding.Association;
import parchment.evidence.finding.Effect;
import parchment.evidence.finding.Verdict;
import parchment.feature.kind.Role;
import parchment.logbook.contents.Cautions;
import parchment.logbook.written.Cupping;
import parchment.quantity.TemperatureUnit;

/** Asks logbooks whose truth is known, each made to break one rule of what a statement must survive. */
@Tag("holds-for-any")
class EvidenceTest {
    private static final Pattern CAUSAL =
            Pattern.compile("\\b(causes?|caused|makes|made|leads to|improves?|because of|thanks to|due to)\\b");

    private static Evidence ask(KnownTruth truth, long seed) {
        return ask(truth.draw(seed));
    }

    private static Evidence ask(KnownTruth.Drawn drawn) {
        return new Question("sweetness", drawn.measure(), List.of(), EvidenceSettings.standard()).ask(drawn.logbook());
    }

    @Test
    void recoversASlopeAndCallsWatchedDataSuggestiveAtMost() {
        Evidence evidence = ask(new KnownTruth(), 1);
        assertEquals(Verdict.SUGGESTIVE, evidence.verdict());
        assertTrue(evidence.interval().contains(0.15), evidence.toString());
        assertTrue(evidence.claim() instanceof Association);
        assertTrue(evidence.gain().lowerBound() > 0, evidence.gain().toString());
        assertEquals(
                8,
                evidence.specificationCurve()
                        .orElseThrow()
                        .agreeing(evidence.association().slope()));
    }

    @Test
    void speaksOfAnEffectOnlyWhereTheTargetWasDrawnByChance() {
        KnownTruth truth = new KnownTruth();
        truth.byChance = true;
        Evidence evidence = ask(truth, 3);
        assertTrue(evidence.claim() instanceof Effect);
        assertEquals(Verdict.STRONG, evidence.verdict());
        assertTrue(evidence.interval().contains(0.15), evidence.toString());
        assertTrue(evidence.effect().orElseThrow().toString().contains("drawn by chance"));
        assertTrue(evidence.association().toString().contains("went with"));
    }

    @Test
    void neverSpeaksOfCausesWhereThingsWereOnlyWatched() {
        for (long seed = 1; seed <= 2; seed++) {
            Evidence evidence = ask(new KnownTruth(), seed);
            String words = evidence.association() + " " + evidence.reasons();
            assertFalse(CAUSAL.matcher(words).find(), words);
            assertTrue(evidence.text().contains("went with"));
        }
    }

    @Test
    void everyAnswerCarriesCountsIntervalAndVerdict() {
        KnownTruth nothing = new KnownTruth();
        nothing.slope = 0;
        KnownTruth one = oneCupper();
        KnownTruth chance = new KnownTruth();
        chance.byChance = true;
        for (KnownTruth truth : List.of(new KnownTruth(), nothing, one, chance)) {
            Evidence evidence = ask(truth, 5);
            String text = evidence.text();
            assertTrue(text.contains("Verdict: " + evidence.verdict().words()), text);
            assertTrue(text.contains(evidence.batches() + " batches"), text);
            assertTrue(text.contains(evidence.roastDays() + " roast days"), text);
            assertTrue(text.contains(evidence.cuppings() + " cuppings"), text);
            assertTrue(text.contains("90 % interval"), text);
            assertTrue(text.contains("Tried: "), text);
            assertTrue(text.contains("Fieller"), text);
            assertTrue(text.contains("hidden cause"), text);
            assertTrue(text.contains("Eight other ways"), text);
        }
    }

    @Test
    void cannotTellWhereTheDropHardlyVaried() {
        KnownTruth truth = new KnownTruth();
        truth.dropSpread = 0.03;
        Evidence evidence = ask(truth, 2);
        assertEquals(Verdict.CANNOT_TELL, evidence.verdict());
        assertTrue(
                evidence.reasons().get(0).contains("hardly varied"),
                evidence.reasons().toString());
        assertTrue(
                evidence.text()
                        .contains(
                                "What would tell: batches in which the drop temperature is moved on purpose, inside what your"
                                        + " machine's maker allows; it hardly varied, and more batches like these tell nothing, however"
                                        + " many."),
                evidence.text());
    }

    private static KnownTruth oneCupper() {
        KnownTruth truth = new KnownTruth();
        truth.cuppers = 1;
        truth.lots = 1;
        truth.days = 10;
        return truth;
    }

    @Test
    void oneCupperWithFortyBatchesAndOneCupEachGetsAModestAnswer() {
        KnownTruth truth = oneCupper();
        truth.slope = 0.05;
        for (long seed = 1; seed <= 3; seed++) {
            Evidence evidence = ask(truth, seed);
            assertEquals(40, evidence.batches());
            assertEquals(40, evidence.scores());
            assertEquals(1, evidence.cuppers());
            String text = evidence.text();
            assertTrue(text.contains("this one cupper"), text);
            assertTrue(text.contains("Each batch has one score only"), text);
            assertEquals(Verdict.CANNOT_TELL, evidence.verdict());
            assertEquals(
                    NextBatches.Kind.TOO_MANY,
                    evidence.nextBatches().orElseThrow().kind());
            assertTrue(
                    text.contains("No affordable number tells: over the range tried so far a difference of 0.50 points"
                            + " would take more than 200 further batches."),
                    text);
        }
    }

    @Test
    void aLotThatExplainsTheDropIsNamedAndNothingIsClaimed() {
        KnownTruth truth = new KnownTruth();
        truth.dropSpread = 0.25;
        truth.lotSpreadOfDrop = 4;
        Evidence evidence = ask(truth, 2);
        assertEquals(Verdict.CANNOT_TELL, evidence.verdict());
        Facts.Fact lot = evidence.facts().facts().get(0);
        assertEquals("lot and probe period", lot.name());
        assertTrue(lot.explains() > 0.9, lot.toString());
        assertTrue(evidence.text().contains("Lot and probe period explains"), evidence.text());
    }

    @Test
    void scoresThatWereNotBlindCapTheVerdict() {
        KnownTruth truth = new KnownTruth();
        truth.byChance = true;
        truth.blind = Cupping.Said.NO;
        Evidence evidence = ask(truth, 3);
        assertEquals(Verdict.SUGGESTIVE, evidence.verdict());
        assertTrue(
                evidence.reasons().toString().contains("blind"),
                evidence.reasons().toString());
        truth.blind = Cupping.Said.YES;
        truth.beforeDiscussion = Cupping.Said.NOT_WRITTEN;
        assertEquals(Verdict.SUGGESTIVE, ask(truth, 3).verdict());
    }

    @Test
    void aMeasureThatIsMostlyErrorSaysNothing() {
        KnownTruth truth = new KnownTruth();
        truth.measureError = 3.5;
        Evidence evidence = ask(truth, 2);
        assertEquals(Verdict.CANNOT_TELL, evidence.verdict());
        assertTrue(
                evidence.reasons().get(0).contains("error of measuring")
                        || evidence.reasons().get(0).contains("own error"),
                evidence.reasons().toString());
    }

    @Test
    void nothingLargeEnoughToMatterIsAnAnswer() {
        KnownTruth truth = new KnownTruth();
        truth.slope = 0;
        truth.days = 40;
        truth.cupsEach = 3;
        truth.batchSpread = 0.1;
        Evidence evidence = ask(truth, 3);
        assertEquals(Verdict.NOTHING_SEEN, evidence.verdict());
        assertTrue(
                evidence.reasons().get(0).startsWith("no difference larger than"),
                evidence.reasons().toString());
        EvidenceSettings strict = EvidenceSettings.standard().withSmallestDifference(0.05);
        KnownTruth.Drawn drawn = truth.draw(3);
        Evidence asked = new Question("sweetness", drawn.measure(), List.of(), strict).ask(drawn.logbook());
        assertEquals(Verdict.CANNOT_TELL, asked.verdict());
    }

    @Test
    void tomorrowsDropGoingWithTodaysScoreLowersTheVerdict() {
        KnownTruth truth = new KnownTruth();
        truth.days = 40;
        truth.dayShareOfDrop = 0.7;
        truth.nextDayInScore = 0.3;
        truth.daySpread = 0.1;
        Evidence evidence = ask(truth, 6);
        assertTrue(
                evidence.negativeControl().setOff(), evidence.negativeControl().toString());
        assertEquals(Verdict.CANNOT_TELL, evidence.verdict());
    }

    @Test
    void onlyHotBatchesCuppedIsSaid() {
        KnownTruth truth = new KnownTruth();
        truth.leastCuppedDrop = 204;
        Evidence evidence = ask(truth, 2);
        assertTrue(evidence.cuppedBatches().differ());
        assertTrue(evidence.text().contains("differ from the"), evidence.text());
        assertTrue(evidence.leftOut().get(0).reason().contains("no score of sweetness"));
    }

    @Test
    void aMovedProbeDoesNotShiftTheSlope() {
        KnownTruth truth = new KnownTruth();
        truth.days = 16;
        truth.probeMovedOnDay = 8;
        truth.lots = 1;
        Evidence moved = ask(truth, 9);
        assertEquals(2, moved.material().groupMeans().size());
        truth.probeShift = 0;
        Evidence unmoved = ask(truth, 9);
        assertEquals(
                unmoved.association().slope().estimate(),
                moved.association().slope().estimate(),
                1e-6);
    }

    @Test
    void outsideTheTriedRangeItRefusesAndNamesTheNearestBatches() {
        Evidence evidence = ask(new KnownTruth(), 1);
        ScorePrediction outside = evidence.at(230);
        assertEquals(ScorePrediction.Tried.NO, outside.tried());
        assertTrue(Double.isNaN(outside.difference()));
        assertEquals(3, outside.nearest().size());
        assertTrue(outside.words().contains("was not tried"), outside.words());
        ScorePrediction inside = evidence.at(207);
        assertEquals(ScorePrediction.Tried.YES, inside.tried());
        assertTrue(inside.interval().contains(inside.difference()));
    }

    @Test
    void whateverNamesAPlaceCarriesTheCautionWhenItIsShown() {
        KnownTruth truth = new KnownTruth();
        truth.slope = 0;
        truth.bend = -0.04;
        truth.days = 30;
        truth.batchSpread = 0.1;
        truth.cupSpread = 0.2;
        Evidence evidence = ask(truth, 4);
        assertEquals(Peak.Answer.INSIDE, evidence.peak().orElseThrow().answer());
        for (Showable named : List.of(
                evidence.at(207),
                evidence.at(230),
                evidence.peak().orElseThrow(),
                evidence.bests().orElseThrow(),
                evidence.bests().orElseThrow().lots().get(0))) {
            String text = named.text();
            assertTrue(text.endsWith(". " + Cautions.BESIDE_A_READING), text);
            assertFalse(named.toString().contains(Cautions.BESIDE_A_READING), "a part of a longer sentence");
        }
    }

    @Test
    void readersInFahrenheitGetSlopesPerDegreeFahrenheit() {
        KnownTruth truth = new KnownTruth();
        Evidence celsius = ask(truth, 1);
        truth.reader = TemperatureUnit.FAHRENHEIT;
        Evidence fahrenheit = ask(truth, 1);
        assertEquals(
                celsius.association().perStep().estimate() / 1.8,
                fahrenheit.association().perStep().estimate(),
                1e-9);
        assertEquals(celsius.verdict(), fahrenheit.verdict());
        assertTrue(fahrenheit.text().contains("1 °F more in drop temperature"), fahrenheit.text());
        assertFalse(fahrenheit.text().contains("°C"), fahrenheit.text());
    }

    @Test
    void sameSeedGivesTheSameAnswer() {
        String eight = ask(new KnownTruth(), 8).text();
        assertEquals(eight, ask(new KnownTruth(), 8).text());
        assertNotEquals(eight, ask(new KnownTruth(), 9).text());
    }

    @Test
    void anUnknownAttributeIsAnsweredWithTheNearestOne() {
        KnownTruth.Drawn drawn = new KnownTruth().draw(1);
        Question question = new Question("sweetnes", drawn.measure(), List.of(), EvidenceSettings.standard());
        IllegalArgumentException refusal =
                assertThrows(IllegalArgumentException.class, () -> question.ask(drawn.logbook()));
        assertEquals(
                "The logbook 'known truth' has no attribute 'sweetnes'. Did you mean 'sweetness'? Attributes: sweetness.",
                refusal.getMessage());
    }

    @Test
    void aLogbookWithoutScoresSaysWhereToWriteThem() {
        KnownTruth truth = new KnownTruth();
        truth.cuppedShare = 0;
        KnownTruth.Drawn drawn = truth.draw(1);
        Evidence evidence = ask(drawn);
        assertEquals(Verdict.CANNOT_TELL, evidence.verdict());
        assertTrue(evidence.text().contains("cuppings.csv"), evidence.text());
        assertTrue(evidence.text().contains("o batch has both a score and the measure"), evidence.text());
    }

    @Test
    void aMissingMeasureEverywhereIsASentenceAndAnEmptyPicture() {
        KnownTruth.Drawn drawn = new KnownTruth().draw(1);
        Measure nothing = new Measure("drop temperature", drawn.measure().unit(), TemperatureUnit.CELSIUS, Map.of());
        Evidence evidence =
                new Question("sweetness", nothing, List.of(), EvidenceSettings.standard()).ask(drawn.logbook());
        assertEquals(Verdict.CANNOT_TELL, evidence.verdict());
        assertTrue(
                evidence.text()
                        .contains(
                                "80 batches left out (B001, B002, B003, B004, B005 and 75 more): the measure is missing"),
                evidence.text());
        assertTrue(evidence.svg().isPresent());
        assertTrue(assertThrows(IllegalStateException.class, () -> evidence.at(200))
                .getMessage()
                .contains("no batch has both"));
    }

    @Test
    void countsWhatIsLeftOutAndWhy() {
        KnownTruth.Drawn drawn = new KnownTruth().draw(1);
        Map<String, ModelFrames.Reading> readings =
                new LinkedHashMap<>(drawn.measure().readings());
        readings.put("B001", new ModelFrames.Reading(Double.NaN, Double.NaN, "no drop was found"));
        readings.put("B002", new ModelFrames.Reading(Double.NaN, Double.NaN, "no drop was found"));
        ModelFrame material = ModelFrames.of("sweetness", drawn.logbook(), readings);
        assertEquals(78, material.batches().size());
        assertEquals(
                List.of(new Exclusion(2, Exclusion.What.BATCHES, "no drop was found", List.of("B001", "B002"))),
                material.leftOut());
        assertEquals(
                "2 batches left out (B001, B002): no drop was found",
                material.leftOut().get(0).toString());
    }

    @Test
    void anotherFeatureThatMovedAlongIsNamed() {
        KnownTruth.Drawn drawn = new KnownTruth().draw(1);
        Map<String, Double> twin = new LinkedHashMap<>();
        drawn.measure()
                .readings()
                .forEach((name, reading) -> twin.put(name, 3 * reading.value() + name.hashCode() % 3));
        Question question = new Question(
                "sweetness",
                drawn.measure(),
                List.of(new CollinearFeatures.Other("twin", twin, "", Role.FOLLOWS)),
                EvidenceSettings.standard());
        Evidence evidence = question.ask(drawn.logbook());
        assertEquals("twin", evidence.movedTogether().companions().get(0).name());
        assertTrue(evidence.text().contains("cannot well be told apart from twin"), evidence.text());
    }
}
