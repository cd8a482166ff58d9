package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.evidence.finding.Verdict;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;

/**
 * Holds what scores in few steps do to an answer: the short version of {@link FewStepsStudy}, whose table is in
 * docs/measurements/few-steps.md, and one page on which it is told.
 */
class FewStepsTest {
    private static final int LOGBOOKS = 8;

    /** Nominal 90 %: of 8 logbooks no fewer than 5 hold it, which chance alone would break in fewer than 1 of 200 tries. */
    @Test
    @Tag("holds-for-any")
    void intervalsByStepsHoldTheDifferenceOfTheScoresGivenAlsoAtTheEndOfAScale() {
        FewStepsStudy.Counts counts =
                FewStepsStudy.run(new FewStepsStudy.Cell(4, FewStepsStudy.NEAR_ITS_END, 0.15), LOGBOOKS, 50_000);
        assertEquals(1, counts.fitted(), counts.toString());
        assertTrue(counts.heldBySteps() * LOGBOOKS >= 5, counts.toString());
        // A slope of 1 point in 7 °C is a finding by both.
        assertTrue(counts.foundByBoth() * LOGBOOKS >= 7, counts.toString());
        assertTrue(counts.foundByBoth() <= counts.found(), counts.toString());
        assertTrue(counts.bendByBoth() <= counts.bend(), counts.toString());
    }

    private static Logbook rounded(KnownTruth.Drawn drawn, FewStepsStudy.Cell cell) {
        List<CupScores> cups = new ArrayList<>();
        for (CupScores cup : drawn.logbook().cups()) {
            cups.add(cup.withScores(Map.of("sweetness", cell.given(cup.score("sweetness")))));
        }
        return Logbook.of(drawn.logbook().contents().toBuilder().cups(cups).build());
    }

    private static Evidence asked(Logbook logbook, Measure measure) {
        return new Question("sweetness", measure, List.of(), EvidenceSettings.standard()).ask(logbook);
    }

    @Test
    void bothAnswersAreFoldedAwayAndTheFirstScreenIsSilentWhereTheyAgree() {
        FewStepsStudy.Cell cell = new FewStepsStudy.Cell(4, FewStepsStudy.IN_THE_MIDDLE, 0.15);
        KnownTruth.Drawn drawn = cell.truth(0.5).draw(3);
        Evidence fine = asked(drawn.logbook(), drawn.measure());
        assertEquals("", fine.bySteps());
        assertEquals("", fine.stepsDiffer());
        Evidence coarse = asked(rounded(drawn, cell), drawn.measure());
        assertTrue(coarse.bySteps().startsWith("96 % of the scores take one of 3 values"), coarse.bySteps());
        assertTrue(coarse.bySteps().endsWith("The two agree."), coarse.bySteps());
        assertEquals(Verdict.SUGGESTIVE, coarse.verdict());
        assertEquals("", coarse.stepsDiffer());
        String page = coarse.page().html().orElseThrow();
        int fold = page.indexOf("How this was worked out");
        assertTrue(page.indexOf("as steps in their order") > fold, page);
        assertFalse(page.substring(0, fold).contains("few steps"));
    }

    /** The rows of the model of steps are those of the scores, the answer does not depend on the numbers given to the steps. */
    @Test
    void theAnswerByStepsIsThatOfTheScaleAsGiven() {
        FewStepsStudy.Cell cell = new FewStepsStudy.Cell(5, FewStepsStudy.NEAR_ITS_END, 0.15);
        KnownTruth.Drawn drawn = cell.truth(0.5).draw(11);
        Logbook logbook = rounded(drawn, cell);
        List<CupScores> doubled = new ArrayList<>();
        for (CupScores cup : logbook.cups()) {
            doubled.add(cup.withScores(Map.of("sweetness", 2 * cup.score("sweetness") + 1)));
        }
        OrdinalCheck once =
                asked(logbook, drawn.measure()).judged().orElseThrow().ordinal();
        OrdinalCheck twice = asked(
                        Logbook.of(logbook.contents().toBuilder().cups(doubled).build()), drawn.measure())
                .judged()
                .orElseThrow()
                .ordinal();
        assertEquals(2 * once.ordinal().estimate(), twice.ordinal().estimate(), 1e-4);
        assertEquals(2 * once.ordinal().standardError(), twice.ordinal().standardError(), 1e-3);
    }
}
