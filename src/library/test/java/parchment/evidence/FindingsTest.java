package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import parchment.evidence.finding.Slope;
import parchment.feature.kind.Role;
import parchment.stats.Interval;

/** Holds when a finding rules out zero, and what is gathered for a feature that was drawn by chance and for one that was not. */
class FindingsTest {
    private static final Slope NONE = VerdictRulesTest.atChance(0.5);

    private static Findings of(Slope slope, Interval told, Slope bend) {
        return new Findings(
                "drop temperature",
                Findings.Planned.NOT_BY_CHANCE,
                slope,
                20,
                told,
                bend,
                new Reliability(0.95, 0.3, 5, 80),
                List.of(),
                List.of(),
                new Equivalence(0.5, "stated", 200, 210, slope, told, told, told),
                NegativeControl.MISSING,
                new Blindness(1, 1),
                30,
                PredictiveSkill.MISSING,
                8,
                8,
                VerdictRulesTest.MANY_STEPS);
    }

    private static boolean ruledOut(Slope slope, double lower, double upper, Slope bend) {
        return of(slope, new Interval(lower, upper, 0.9), bend).zeroRuledOut();
    }

    @Test
    void anIntervalThatEndsAtZeroHoldsIt() {
        assertFalse(ruledOut(NONE, -0.1, 0.1, NONE));
        assertFalse(ruledOut(NONE, 0, 0.1, NONE));
        assertTrue(ruledOut(NONE, 0.001, 0.1, NONE));
        assertFalse(ruledOut(NONE, -0.1, 0, NONE));
        assertTrue(ruledOut(NONE, -0.1, -0.001, NONE));
    }

    @Test
    void aSlopeOrABendThatIsAFindingRulesOutZeroWhateverTheInterval() {
        assertTrue(ruledOut(VerdictRulesTest.atChance(0.0399), -0.1, 0.1, NONE));
        assertFalse(ruledOut(VerdictRulesTest.atChance(0.0401), -0.1, 0.1, NONE));
        assertTrue(ruledOut(NONE, -0.1, 0.1, VerdictRulesTest.atChance(0.0099)));
        assertFalse(ruledOut(NONE, -0.1, 0.1, VerdictRulesTest.atChance(0.0101)));
        assertFalse(ruledOut(Slope.MISSING, -0.1, 0.1, Slope.MISSING));
    }

    /** A control in lockstep stands in the way of what was only watched; chance has broken whatever moved along with a drawn target. */
    @Test
    void whatMovedAlongCountsOnlyAgainstWhatWasNotDrawnByChance() {
        KnownTruth truth = new KnownTruth();
        truth.days = 12;
        KnownTruth.Drawn drawn = truth.draw(3);
        ModelFrame material = KnownTruth.material(drawn);
        Analysis analysis = Analysis.of(
                        material,
                        drawn.measure(),
                        EvidenceSettings.standard(),
                        SmallestDifference.of("sweetness", drawn.logbook(), EvidenceSettings.standard()))
                .orElseThrow();
        Map<String, Double> same = new LinkedHashMap<>();
        drawn.measure().readings().forEach((batch, reading) -> same.put(batch, 2 * reading.value()));
        List<CollinearFeatures.Other> others =
                List.of(new CollinearFeatures.Other("gas in development", same, "", Role.CONTROL));
        Facts facts = Facts.of(List.of(
                new Facts.Fact("operator", 0.9, Facts.Handled.IN_ANOTHER_LOOK, 48),
                new Facts.Fact("lot", 0.1, Facts.Handled.IN_THE_MODEL, 48)));
        Findings watched = Findings.of(
                "drop temperature", Findings.Planned.NOT_BY_CHANCE, analysis, facts, others, new Blindness(1, 1));
        assertEquals(
                List.of("gas in development"),
                watched.twins().stream().map(Collinearity.Twin::name).toList());
        assertEquals(
                List.of("operator"),
                watched.standIns().stream().map(Facts.Fact::name).toList());
        assertEquals(analysis.fittedSlope(), watched.slope());
        assertEquals(analysis.headline().interval(0.9), watched.told());
        assertEquals(12, watched.roastDays());
        Findings drawnByChance = Findings.of(
                "drop temperature", Findings.Planned.BY_CHANCE, analysis, facts, others, new Blindness(1, 1));
        assertEquals(List.of(), drawnByChance.twins());
        assertEquals(watched.slope(), drawnByChance.slope());
    }
}
