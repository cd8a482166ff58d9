package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import parchment.display.ShortSentences;
import parchment.feature.Features;
import parchment.logbook.Logbook;

/** Holds what stands on the first screen of an answer, on the two demo logbooks. */
class FirstScreenTest {
    private static final Logbook HARBOUR = Logbook.open(Path.of("..", "datasets", "harbour"));
    private static final Logbook HILLSIDE = Logbook.open(Path.of("..", "datasets", "hillside"));

    private static List<String> paragraphs(Evidence evidence) {
        ShortSentences.keptBy(evidence.inShort());
        return List.of(evidence.page().text().split("\n\n"));
    }

    @Test
    void aHumpIsToldByItsTopInTheBatchesThatTheVerdictRestsOn() {
        Evidence evidence = Evidence.of("sweetness", Features.dropTemperature(), HARBOUR);
        List<String> page = paragraphs(evidence);
        assertEquals("""
                Sweetness was highest at a drop temperature near 202 °C, about 1.3 points above 196 °C (0.9 to 1.7).
                Chance set the targets, but not all cups were scored blind and before anybody spoke.
                Put codes on the cups and write scores down before anybody speaks.""", page.get(1));
        assertTrue(page.get(2).contains("56 batches, 16 roast days"), page.get(2));
        assertEquals(
                "From 56 scored batches on 16 roast days, tasted by 5 cuppers: Cinder Ridge (20), Low Orchard (20) and Salt Meadow (16)."
                        + " Not the same in every lot: Salt Meadow differs most. Highest: Cinder Ridge near 203 °C, Low Orchard near"
                        + " 203 °C and Salt Meadow near 202 °C.",
                page.get(3));
        assertEquals("What could be wrong: cuppers may have known what they tasted.", page.get(4));
        assertEquals(EvidencePage.CAUTION, page.get(5));
        assertEquals("How this was worked out", page.get(6));
        assertTrue(page.get(7).startsWith("Verdict: suggestive."), page.get(7));
    }

    @Test
    void whatCannotBeToldNamesNoPlaceAndNeedsNoCaution() {
        List<String> page = paragraphs(Evidence.of("sweetness", Features.dropTemperature(), HILLSIDE));
        assertEquals(
                "Whether 394 °F or 405 °F of drop temperature gives more sweetness cannot be told from these batches.",
                page.get(1).split("\n")[0]);
        assertEquals(
                "From 23 scored batches on 13 roast days, tasted by 1 cupper: Moth Field (16) and Stone Bridge (7).",
                page.get(3));
        assertEquals(
                "What could be wrong: development ratio and development time moved along with the drop temperature; cuppers may have"
                        + " known what they tasted; it is one cupper's taste.",
                page.get(4));
        assertEquals("How this was worked out", page.get(5));
    }

    @Test
    void tooFewBatchesSayWhatIsMissingAndKeepTheRestFolded() {
        Evidence evidence = Evidence.of("acidity", Features.browningTime(), HILLSIDE);
        List<String> page = paragraphs(evidence);
        assertTrue(
                page.get(1).startsWith("These batches cannot tell how acidity goes with the browning time."),
                page.get(1));
        assertFalse(page.contains(EvidencePage.CAUTION), page.toString());
        assertTrue(page.contains("How this was worked out"), page.toString());
    }

    /** Whatever is asked of the demo logbooks, the first sentences are short and plain. */
    @Test
    void theFirstSentencesOfManyAnswersAreShortAndPlain() {
        for (Logbook logbook : List.of(HARBOUR, HILLSIDE)) {
            for (String attribute : logbook.attributes().stream().limit(2).toList()) {
                ShortSentences.keptBy(Evidence.of(attribute, Features.developmentRatio(), logbook)
                        .inShort());
                ShortSentences.keptBy(
                        Evidence.of(attribute, Features.dryingRate(), logbook).inShort());
            }
            ShortSentences.keptBy(
                    TradeOff.of(logbook.attributes().stream().limit(2).toList(), Features.dropTemperature(), logbook)
                            .inShort());
            ShortSentences.keptBy(
                    DestinationOrPath.of(logbook.attributes().iterator().next(), logbook)
                            .inShort());
        }
    }
}
