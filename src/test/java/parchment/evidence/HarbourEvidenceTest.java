package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import parchment.feature.Features;
import parchment.logbook.Cautions;
import parchment.logbook.Logbook;
import parchment.quantity.TemperatureUnit;

/** Puts the first question of the tour to the demo logbook, from the folder to the page. */
class HarbourEvidenceTest {
    private static final Logbook HARBOUR =
            Logbook.open(Path.of("..", "datasets", "harbour").toString());

    /** The features are measured once for the questions that need not go through the front door. */
    private static final List<Measure> MEASURES = Readings.all(HARBOUR);

    private static Evidence ask(String feature) {
        Measure measure = MEASURES.stream()
                .filter(candidate -> candidate.name().equals(feature))
                .findFirst()
                .orElseThrow();
        return new Question("sweetness", measure, List.of(), EvidenceSettings.standard()).ask(HARBOUR);
    }

    @Test
    void answersTheFirstQuestionOfTheTour() {
        Evidence evidence = Evidence.of("sweetness", Features.dropTemperature(), HARBOUR);
        assertEquals("drop temperature", evidence.feature());
        assertTrue(evidence.batches() > 150, evidence.toString());
        assertTrue(evidence.cuppers() == 5, evidence.toString());
        // The demo logbook holds targets drawn by chance, and cuppings that were not blind: an effect, but never a
        // strong one.
        assertTrue(evidence.claim() instanceof Effect, evidence.toString());
        assertFalse(evidence.blindness().enough());
        assertTrue(evidence.verdict() != Verdict.STRONG, evidence.toString());
        assertTrue(evidence.html().orElseThrow().contains("<svg"));
        assertTrue(evidence.movedTogether().companions().stream()
                .anyMatch(companion -> companion.name().equals("development time")));
    }

    @Test
    void speaksTheReadersUnitAllThePageDown() {
        Logbook fahrenheit = HARBOUR.in(TemperatureUnit.FAHRENHEIT);
        Evidence evidence = Evidence.of("sweetness", Features.dropTemperature(), fahrenheit);
        String words = evidence.page().text();
        assertFalse(words.contains("°C"), words);
        assertTrue(words.contains("1 °F more in drop temperature"), words);
        DestinationOrPath path = DestinationOrPath.of("sweetness", fahrenheit);
        assertFalse(path.text().contains("°C"), path.text());
        assertTrue(path.text().contains("1 °F"), path.text());
        TradeOff trade = TradeOff.of(List.of("sweetness", "acidity"), Features.dropTemperature(), fahrenheit);
        assertFalse(trade.text().contains("°C"), trade.text());
    }

    @Test
    void tellsDestinationFromPathAndACompromise() {
        DestinationOrPath acidity = DestinationOrPath.of("acidity", HARBOUR);
        PathContrast later = acidity.contrast("later drop");
        // In the virtual roastery acidity falls with the end temperature.
        assertEquals(Verdict.SUGGESTIVE, later.verdict(), acidity.toString());
        assertTrue(later.interval().upper() < 0, later.toString());
        acidity.contrasts().forEach(contrast -> assertTrue(contrast.verdict() != Verdict.STRONG));
        TradeOff trade = TradeOff.of(List.of("sweetness", "acidity"), Features.dropTemperature(), HARBOUR);
        assertTrue(trade.compromise().lower() < trade.compromise().upper(), trade.toString());
        assertTrue(trade.text().contains(Cautions.BESIDE_A_READING), trade.text());
        assertEquals(Halo.Cuppers.SEVERAL, Halo.of(HARBOUR).cuppers());
    }

    @Test
    void aTimeIsToldPerTenSeconds() {
        Evidence evidence = ask("development time");
        assertTrue(evidence.text().contains("10 s more in development time"), evidence.text());
        assertTrue(evidence.effect().isEmpty());
    }

    @Test
    void ageingOfALotCannotBeToldFromTheCalendar() {
        Evidence evidence = ask("days since arrival");
        assertEquals(Verdict.CANNOT_TELL, evidence.verdict());
        assertTrue(
                evidence.reasons().get(0).contains("calendar"),
                evidence.reasons().toString());
    }

    @Test
    void aFactAskedAboutDoesNotStandInForItself() {
        Evidence evidence = ask("room temperature");
        assertFalse(
                evidence.reasons().get(0).contains("explains the room temperature"),
                evidence.reasons().toString());
    }
}
