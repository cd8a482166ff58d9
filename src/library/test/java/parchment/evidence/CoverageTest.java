package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Holds the intervals to their level on logbooks whose truth is known: the short version of {@link CoverageStudy}, whose table is in
 * docs/measurements/evidence-coverage.md. Each bound is the nominal share give or take three Monte-Carlo errors.
 */
@Tag("holds-for-any")
class CoverageTest {
    private static final int LOGBOOKS = 200;

    private static double bound(double share, double errors) {
        return share + errors * Math.sqrt(share * (1 - share) / LOGBOOKS);
    }

    @Test
    void ninetyPerCentIntervalsHoldTheSlope() {
        CoverageStudy.Counts counts = CoverageStudy.run(new KnownTruth(), LOGBOOKS, 1000);
        assertTrue(counts.slopeCovered() > bound(0.90, -3), counts.toString());
        assertTrue(counts.slopeCovered() < bound(0.90, 3), counts.toString());
    }

    @Test
    void withoutAnEffectAFindingIsAsRareAsPromised() {
        KnownTruth truth = new KnownTruth();
        truth.slope = 0;
        CoverageStudy.Counts counts = CoverageStudy.run(truth, LOGBOOKS, 2000);
        assertTrue(counts.findings() < bound(0.05, 3), counts.toString());
    }

    @Test
    void oneCupperWithFortyBatchesKeepsItsLevel() {
        KnownTruth truth = new KnownTruth();
        truth.cuppers = 1;
        truth.lots = 1;
        truth.days = 14;
        truth.batchesPerDay = 3;
        CoverageStudy.Counts counts = CoverageStudy.run(truth, LOGBOOKS, 3000);
        assertTrue(counts.slopeCovered() > bound(0.90, -3), counts.toString());
    }

    @Test
    void fiellerSetsHoldThePeakOverAllLogbooks() {
        KnownTruth truth = new KnownTruth();
        truth.slope = 0;
        truth.bend = -0.02;
        truth.lots = 1;
        CoverageStudy.Counts counts = CoverageStudy.run(truth, LOGBOOKS, 4000);
        assertTrue(counts.peakCovered() > bound(0.90, -3), counts.toString());
    }
}
