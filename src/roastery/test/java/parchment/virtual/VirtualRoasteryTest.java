package parchment.virtual;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.temporal.ChronoUnit;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import parchment.virtual.people.GivenScore;
import parchment.virtual.physics.SimulatedRoast;
import parchment.virtual.physics.SimulatedRoast.Trace;
import parchment.virtual.written.PlannedBatch;
import parchment.virtual.written.VirtualBatch;
import parchment.virtual.written.VirtualCupping;
import parchment.virtual.written.WrittenMarks;

class VirtualRoasteryTest {
    private static final VirtualLogbook HARBOUR = VirtualRoastery.harbour().run();

    @Test
    void theHarbourLogbookIsAsLargeAsItsStorySays() {
        List<VirtualBatch> batches = HARBOUR.batches();
        assertEquals(240, batches.size());
        long days = ChronoUnit.DAYS.between(
                batches.get(0).plan().roastedAt(), batches.get(239).plan().roastedAt());
        assertEquals(14 * 30.4, days, 30);
        assertEquals(3, HARBOUR.lots().size());
        assertEquals(
                1,
                HARBOUR.lots().stream()
                        .filter(lot -> lot.process().equals("natural"))
                        .count());
        assertEquals(5, HARBOUR.cuppers().size());
        Set<Integer> periods = new TreeSet<>();
        Set<String> lots = new HashSet<>();
        for (VirtualBatch batch : batches) {
            periods.add(batch.conditions().probePeriod());
            lots.add(batch.plan().lot().name());
        }
        assertEquals(Set.of(1, 2), periods);
        assertEquals(3, lots.size());
    }

    @Test
    void eachLotIsRoastedOnBothSidesOfTheProbesMoveOrTheStorySaysWhyNot() {
        Set<String> before = new HashSet<>();
        Set<String> after = new HashSet<>();
        for (VirtualBatch batch : HARBOUR.batches()) {
            (batch.conditions().probePeriod() == 1 ? before : after)
                    .add(batch.plan().lot().name());
        }
        before.retainAll(after);
        assertTrue(before.size() >= 2, "at least two lots across the move, or lot and probe cannot be told apart");
    }

    @Test
    void dropsDrawnByChanceDoNotFollowTheBeans() {
        double sum = 0;
        double meant = 0;
        double hidden = 0;
        double meantSquares = 0;
        double hiddenSquares = 0;
        int count = 0;
        for (VirtualBatch batch : VirtualRoastery.harbour().withSeed(5).run().batches()) {
            if (batch.plan().plan() == PlannedBatch.Plan.CHANCE) {
                double m = batch.plan().meantDrop();
                double h = batch.hidden();
                sum += m * h;
                meant += m;
                hidden += h;
                meantSquares += m * m;
                hiddenSquares += h * h;
                count++;
                assertEquals(m, batch.dropReading(), 4);
            }
        }
        assertTrue(count >= 40, count + " batches by chance");
        double covariance = sum / count - meant / count * (hidden / count);
        double correlation = covariance
                / Math.sqrt((meantSquares / count - Math.pow(meant / count, 2))
                        * (hiddenSquares / count - Math.pow(hidden / count, 2)));
        assertEquals(0, correlation, 3 / Math.sqrt(count));
    }

    @Test
    void everyRoastLooksLikeADrumRoast() {
        for (VirtualBatch batch : HARBOUR.batches()) {
            SimulatedRoast roast = batch.roast();
            double turning = roast.turningPoint();
            double lowest = roast.at(Trace.BEAN_READING, turning);
            assertTrue(turning > 55 && turning < 105, batch.name() + " turns at " + turning);
            assertTrue(lowest > 62 && lowest < 110, batch.name() + " turns at " + lowest + " °C");
            assertTrue(roast.yellowing() > 240 && roast.yellowing() < 480, batch.name());
            assertTrue(roast.firstCrackStart() > roast.yellowing() + 100, batch.name());
            assertTrue(roast.drop() > roast.firstCrackStart() && roast.drop() < 1000, batch.name());
            double loss = 1 - batch.cooledMass() / batch.plan().greenMass();
            assertTrue(loss > 0.08 && loss < 0.21, batch.name() + " loses " + loss);
        }
    }

    @Test
    void theMovedProbeReadsLowerAtTheSameBeanTemperature() {
        double[] sums = new double[3];
        int[] counts = new int[3];
        for (VirtualBatch batch : HARBOUR.batches()) {
            int period = batch.conditions().probePeriod();
            sums[period] += batch.dropReading() - batch.endTemperature();
            counts[period]++;
        }
        double shift = sums[2] / counts[2] - sums[1] / counts[1];
        assertTrue(shift < -1 && shift > -3.5, "shift " + shift + " °C");
    }

    @Test
    void writtenMarksAreLateOnTheWholeAndNeverAfterTheDrop() {
        double sum = 0;
        int count = 0;
        for (VirtualBatch batch : HARBOUR.batches()) {
            WrittenMarks marks = batch.marks();
            if (!Double.isNaN(marks.firstCrackStart())) {
                sum += marks.firstCrackStart() - batch.roast().firstCrackStart();
                count++;
                assertTrue(Double.isNaN(marks.drop()) || marks.firstCrackStart() < marks.drop(), batch.name());
            }
        }
        assertTrue(count > 190 && count < 240, "some are forgotten: " + count);
        assertTrue(sum / count > 2 && sum / count < 8, "late by " + sum / count + " s on average");
    }

    @Test
    void scoresAreQuartersOnTheirScaleUnderCodesThatDifferWithinATable() {
        for (VirtualCupping cupping : HARBOUR.cuppings()) {
            Set<String> cups = new HashSet<>();
            Set<String> codes = new HashSet<>();
            for (GivenScore score : cupping.scores()) {
                for (double points : score.points()) {
                    assertTrue(points >= 0 && points <= 10 && points * 4 == Math.rint(points * 4));
                }
                cups.add(score.batch() + " " + score.cup());
                codes.add(score.blindCode());
            }
            boolean blind = cupping.blind() == VirtualCupping.Blind.YES;
            assertEquals(blind ? cups.size() : 1, codes.size(), cupping.name());
        }
    }

    @Test
    void theBatchesAlreadyRoastedStayWhenMoreAreAskedFor() {
        VirtualLogbook few = VirtualRoastery.harbour().withBatches(30).run();
        for (int i = 0; i < 30; i++) {
            VirtualBatch one = few.batches().get(i);
            VirtualBatch other = HARBOUR.batches().get(i);
            assertEquals(other.curve(), one.curve());
            assertEquals(other.marks(), one.marks());
            assertEquals(other.flavour(), one.flavour());
        }
    }

    @Test
    void anotherSeedIsAnotherYear() {
        VirtualLogbook other =
                VirtualRoastery.harbour().withSeed(8).withBatches(10).run();
        assertNotEquals(HARBOUR.batches().get(3).curve(), other.batches().get(3).curve());
        assertEquals(
                other.files(),
                VirtualRoastery.harbour().withSeed(8).withBatches(10).run().files());
    }

    @Test
    void theHillsideLogbookIsAwkwardOnPurpose() {
        VirtualLogbook hillside = VirtualRoastery.hillside().run();
        assertEquals(40, hillside.batches().size());
        assertEquals(1, hillside.cuppers().size());
        Set<String> cupped = new HashSet<>();
        int cups = 0;
        for (VirtualCupping cupping : hillside.cuppings()) {
            for (GivenScore score : cupping.scores()) {
                cupped.add(score.batch());
                cups++;
            }
        }
        assertEquals(40, cupped.size());
        assertEquals(40, cups);
        int missing = 0;
        for (VirtualBatch batch : hillside.batches()) {
            missing += Double.isNaN(batch.marks().yellowing()) ? 1 : 0;
            missing += Double.isNaN(batch.marks().firstCrackStart()) ? 1 : 0;
        }
        assertEquals(40, missing, 14, "about half of the marks");
        String curve = hillside.files().get("curves/K001.csv");
        assertTrue(curve.startsWith("time [min:s],bean temperature [°F]\n0:"), curve.substring(0, 60));
    }
}
