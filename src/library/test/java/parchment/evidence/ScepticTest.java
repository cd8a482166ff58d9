package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.evidence.finding.Effect;
import parchment.evidence.finding.Verdict;
import parchment.logbook.written.Cupping;

/**
 * Asks logbooks that were each made to break a statement. What one cupper, late marks, marks that are mostly error, a moved probe and a
 * calendar behind both do is tested in {@link EvidenceTest} and {@link DestinationOrPathTest}.
 */
@Tag("holds-for-any")
class ScepticTest {
    private static final int LOGBOOKS = 60;

    private static Evidence ask(KnownTruth truth, long seed) {
        KnownTruth.Drawn drawn = truth.draw(seed);
        return new Question("sweetness", drawn.measure(), List.of(), EvidenceSettings.standard()).ask(drawn.logbook());
    }

    /** The beans' own behaviour moves the drop and the score: no adjustment sees it, so only the words can be right. */
    @Test
    void aDropThatReactsToTheBeansIsNeverMoreThanSuggestive() {
        KnownTruth truth = new KnownTruth();
        truth.slope = 0;
        truth.days = 30;
        truth.hiddenInDrop = 1.5;
        truth.hiddenInScore = 0.4;
        int fooled = 0;
        for (long seed = 1; seed <= 4; seed++) {
            Evidence evidence = ask(truth, seed);
            fooled += evidence.interval().contains(0) ? 0 : 1;
            assertTrue(
                    evidence.verdict() == Verdict.SUGGESTIVE || evidence.verdict() == Verdict.CANNOT_TELL,
                    evidence.toString());
            String text = evidence.text();
            assertTrue(text.contains("hidden cause"), text);
            if (evidence.verdict() == Verdict.SUGGESTIVE) {
                assertTrue(text.contains("what the roaster saw in the beans may stand behind both"), text);
            }
        }
        assertTrue(fooled >= 2, "the logbooks were to fool the interval; they did in " + fooled + " of 4");
    }

    /** The same beans, but the target drawn by chance before charge: now zero is zero. */
    @Test
    void aTargetDrawnByChanceIsNotFooledByTheBeans() {
        KnownTruth truth = new KnownTruth();
        truth.slope = 0;
        truth.days = 30;
        truth.byChance = true;
        truth.hiddenInScore = 0.4;
        int held = 0;
        for (long seed = 1; seed <= 4; seed++) {
            Evidence evidence = ask(truth, seed);
            assertTrue(evidence.claim() instanceof Effect);
            held += evidence.interval().contains(0) ? 1 : 0;
        }
        assertTrue(held >= 3, held + " of 4");
    }

    @Test
    void onlyGoodBatchesCuppedIsSaid() {
        KnownTruth truth = new KnownTruth();
        truth.days = 30;
        truth.lotSpread = 0;
        truth.leastCuppedTruth = 6.1;
        Evidence evidence = ask(truth, 2);
        assertTrue(evidence.cuppedBatches().differ(), evidence.cuppedBatches().toString());
        assertTrue(evidence.text().contains("differ from the"), evidence.text());
        assertTrue(
                evidence.leftOut().stream().anyMatch(left -> left.reason().contains("no score of sweetness")),
                evidence.leftOut().toString());
    }

    @Test
    void aLotRoastedInOneSeasonOnlyDoesNotLendItsLevelToTheDrop() {
        KnownTruth truth = new KnownTruth();
        truth.slope = 0;
        truth.days = 24;
        truth.lotsInTurn = true;
        truth.lotSpread = 1.5;
        truth.lotSpreadOfDrop = 4;
        truth.drift = 1;
        CoverageStudy.Counts counts = CoverageStudy.run(truth, LOGBOOKS, 9000);
        assertTrue(counts.slopeCovered() >= 0.80, counts.toString());
        assertTrue(counts.findings() <= 0.14, counts.toString());
        Facts.Fact lot = ask(truth, 9001).facts().facts().get(0);
        assertEquals("lot and probe period", lot.name());
        assertTrue(lot.explains() > 0.3, lot.toString());
    }

    @Test
    void daysThatDifferMoreThanBatchesDoNotMakeFindings() {
        KnownTruth truth = new KnownTruth();
        truth.slope = 0;
        truth.days = 24;
        truth.daySpread = 1.5;
        truth.batchSpread = 0.1;
        truth.dayShareOfDrop = 0.9;
        CoverageStudy.Counts counts = CoverageStudy.run(truth, LOGBOOKS, 9500);
        assertTrue(counts.slopeCovered() >= 0.80, counts.toString());
        assertTrue(counts.findings() <= 0.14, counts.toString());
    }

    @Test
    void oneCupperNotBlindIsCappedAndToldWhatBlindingWouldBuy() {
        KnownTruth truth = new KnownTruth();
        truth.cuppers = 1;
        truth.days = 30;
        truth.byChance = true;
        truth.blind = Cupping.Said.NO;
        Evidence evidence = ask(truth, 3);
        assertTrue(evidence.verdict() == Verdict.SUGGESTIVE, evidence.toString());
        assertTrue(evidence.text().contains("What blinding would buy"), evidence.text());
        truth.blind = Cupping.Said.YES;
        assertTrue(!ask(truth, 3).text().contains("What blinding would buy"));
    }

    @Test
    void theBestBatchIsShrunkenAndCalledPartlyLuck() {
        KnownTruth truth = new KnownTruth();
        truth.batchSpread = 0.3;
        Evidence evidence = ask(truth, 4);
        String text = evidence.text();
        assertTrue(text.contains("The best of many is partly luck"), text);
        assertTrue(text.contains("shrunken"), text);
    }
}
