package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import parchment.evidence.finding.Verdict;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;
import parchment.stats.Estimate;
import parchment.stats.mixed.LinearMixedModel;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.ordinal.OrdinalMixedModel;

/**
 * Holds what the second answer takes from the first: the correction for the measure's error, and an error that is wider by as much as the whole
 * linear model's is than that of a linear model with the columns and groups of the steps alone. Logbooks are drawn.
 */
class OrdinalAnswerTest {
    private static final FewStepsStudy.Cell CELL = new FewStepsStudy.Cell(4, FewStepsStudy.IN_THE_MIDDLE, 0.15);

    /** Asks drawn scores, put on the nearest of four steps, both ways, and works the parts of the second answer out anew. */
    private static final class Asked {
        final Analysis analysis;
        final OrdinalCheck check;
        final TwoReadings told;
        final double from;
        final double to;
        private final MixedDesign design;
        private final OrdinalMixedModel model;
        private final LinearMixedModel twin;

        Asked(KnownTruth truth, long seed) {
            KnownTruth.Drawn felt = truth.draw(seed);
            List<CupScores> cups = new ArrayList<>();
            for (CupScores cup : felt.logbook().cups()) {
                cups.add(cup.withScores(Map.of("sweetness", CELL.given(cup.score("sweetness")))));
            }
            Logbook logbook =
                    Logbook.of(felt.logbook().contents().toBuilder().cups(cups).build());
            KnownTruth.Drawn drawn = new KnownTruth.Drawn(logbook, felt.measure(), felt.gas());
            EvidenceSettings settings = EvidenceSettings.standard();
            analysis = Analysis.of(
                            KnownTruth.material(drawn),
                            drawn.measure(),
                            settings,
                            SmallestDifference.of("sweetness", logbook, settings))
                    .orElseThrow();
            check = analysis.ordinal();
            told = TwoReadings.of(analysis, drawn.measure(), Verdict.CANNOT_TELL);
            from = told.from() - analysis.range().center();
            to = told.to() - analysis.range().center();
            FittedScores linear = analysis.bendSeen() ? analysis.drawn() : analysis.fitted();
            design = linear.forSteps();
            twin = design.fit();
            model = OrdinalMixedModel.fit(
                    design.withResponse(ScoreSteps.joined(linear.design().material().scores().stream()
                            .mapToDouble(ScoreRow::score)
                            .toArray())));
        }

        Estimate plain() {
            return model.expectedDifference(at(from), at(to));
        }

        private MixedDesign at(double place) {
            double[] feature = new double[design.rows()];
            Arrays.fill(feature, place);
            MixedDesign rows = design.withoutFixed(ScoreDesign.FEATURE).withCovariate(ScoreDesign.FEATURE, feature);
            double[] square = new double[design.rows()];
            Arrays.fill(square, place * place);
            return analysis.bendSeen()
                    ? rows.withoutFixed(ScoreDesign.SQUARE).withCovariate(ScoreDesign.SQUARE, square)
                    : rows;
        }
    }

    private static KnownTruth truth() {
        KnownTruth truth = CELL.truth(0.5);
        truth.season = 0.4;
        return truth;
    }

    @Test
    void theErrorIsAsMuchWiderAsTheWholeModelsIsAndNeverNarrowerThanThatOfTheSteps() {
        int wider = 0;
        for (long seed = 1; seed <= 4; seed++) {
            Asked asked = new Asked(truth(), seed);
            assertTrue(asked.check.fitted()
                    && !asked.analysis.bendSeen()
                    && !asked.analysis.reliability().corrects());
            double widened = asked.told.difference().standardError()
                    / (Math.abs(asked.to - asked.from)
                            * asked.twin.term(ScoreDesign.FEATURE).standardError());
            Estimate plain = asked.plain();
            assertEquals(plain.estimate(), asked.check.ordinal().estimate(), 1e-9);
            assertEquals(
                    plain.standardError() * Math.max(1, widened),
                    asked.check.ordinal().standardError(),
                    1e-9);
            wider += widened > 1.001 ? 1 : 0;
        }
        assertTrue(wider > 0, "no logbook had anything to widen");
    }

    @Test
    void theMeasuresErrorCorrectsBothAnswersAlike() {
        KnownTruth truth = truth();
        truth.measureError = 1.3;
        Asked asked = new Asked(truth, 2);
        assertTrue(asked.check.fitted()
                && !asked.analysis.bendSeen()
                && asked.analysis.reliability().corrects());
        Estimate plain = asked.plain();
        double reliability = asked.analysis.reliability().value();
        assertEquals(plain.estimate() / reliability, asked.check.ordinal().estimate(), 1e-9);
        assertTrue(asked.check.ordinal().standardError() >= plain.standardError() / reliability - 1e-12);
    }

    @Test
    void aBendsErrorsAreWidenedByTheDifferenceOfTheTwoPlacesAndOfTheirSquares() {
        int wider = 0;
        for (long seed = 1; seed <= 4; seed++) {
            KnownTruth truth = truth();
            truth.slope = 0.1;
            truth.bend = -0.04;
            Asked asked = new Asked(truth, seed);
            assertTrue(asked.check.fitted() && asked.analysis.bendSeen());
            double between = asked.twin
                    .contrast(
                            "between",
                            Map.of(
                                    ScoreDesign.FEATURE,
                                    asked.to - asked.from,
                                    ScoreDesign.SQUARE,
                                    (asked.to + asked.from) * (asked.to - asked.from)))
                    .standardError();
            Estimate plain = asked.plain();
            assertEquals(plain.estimate(), asked.check.ordinal().estimate(), 1e-9);
            assertEquals(
                    plain.standardError() * Math.max(1, asked.told.difference().standardError() / between),
                    asked.check.ordinal().standardError(),
                    1e-9);
            Estimate square = asked.model.term(ScoreDesign.SQUARE);
            double widened = asked.analysis.bendSlope().standardError()
                    / asked.twin.term(ScoreDesign.SQUARE).standardError();
            assertEquals(square.estimate(), asked.check.bend().estimate(), 1e-9);
            assertEquals(
                    square.standardError() * Math.max(1, widened),
                    asked.check.bend().standardError(),
                    1e-9);
            wider += widened > 1.001 ? 1 : 0;
        }
        assertTrue(wider > 0, "no logbook had anything to widen");
    }
}
