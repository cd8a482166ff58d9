package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import parchment.chart.Boundary;
import parchment.chart.Layer;
import parchment.chart.Line;
import parchment.chart.Plot;
import parchment.chart.Weight;
import parchment.evidence.finding.Effect;
import parchment.evidence.finding.Verdict;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.logbook.contents.Cautions;
import parchment.quantity.TemperatureUnit;

/** Puts the first question of the tour to the demo logbook, from the folder to the page. */
class HarbourEvidenceTest {
    private static final Logbook HARBOUR =
            Logbook.open(Path.of("..", "datasets", "harbour").toString());

    /** The features are measured once for the questions that need not go through the front door. */
    private static final List<Measure> MEASURES = FeatureReadings.all(HARBOUR);

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

    @Test
    void aCourseWhoseCauseCannotBeToldIsDrawnDashedAndSaysSo() {
        Evidence unsettled = ask("development time");
        assertEquals(Verdict.CANNOT_TELL, unsettled.verdict());
        Plot plot = unsettled.picture();
        assertEquals(Weight.TENTATIVE, line(plot).weight());
        assertEquals("average line, in doubt", line(plot).label());
        assertEquals(
                "The line is dashed because what it shows may come from something that changes with the date.",
                plot.notes().get(0));
        assertTrue(plot.svg().orElseThrow().contains("stroke-dasharray=\"9 7\""));
        Evidence told = ask("drop temperature");
        assertTrue(told.verdict() != Verdict.CANNOT_TELL, told.toString());
        assertEquals(Weight.STRONG, line(told.picture()).weight());
        assertEquals("average line", line(told.picture()).label());
        assertFalse(told.picture().chart().text().contains("dashed"));
    }

    private static Line line(Plot plot) {
        return plot.layers().stream()
                .filter(Line.class::isInstance)
                .map(Line.class::cast)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void thePictureSaysInPlainWordsWhatBandAndBarsAre() {
        Plot plot = ask("drop temperature").picture();
        assertTrue(plot.notes()
                .contains("At any one place along the axis the true average lies inside the band 90 times in 100."));
        assertEquals(
                "drop temperature as planned, as read on today's probe",
                plot.x().label());
        assertEquals("development time", ask("development time").picture().x().label());
        List<String> labels = plot.layers().stream().map(Layer::label).toList();
        assertTrue(
                labels.containsAll(List.of("where the average may lie", "one batch, average of its cups")),
                labels.toString());
    }

    @Test
    void theTwoReadingsOfTheFirstSentenceAreMarkedAndNoLineStrikesThroughTheWords() {
        Evidence told = ask("drop temperature");
        List<Boundary> marks = told.picture().layers().stream()
                .filter(Boundary.class::isInstance)
                .map(Boundary.class::cast)
                .toList();
        assertEquals(List.of(196.0, 202.0), marks.stream().map(Boundary::x).toList());
        String svg = told.picture().svg().orElseThrow();
        assertTrue(svg.contains(">compared: 196.0 °C</text>") && svg.contains(">compared: 202.0 °C</text>"), svg);
        assertTrue(svg.contains(">where the best may lie</text>"), svg);
        assertTrue(svg.contains(", not tried in the grey beyond</text>"), svg);
        // Each line ends at the frame and goes on above the words: two starts and two strokes for each.
        String stems = Pattern.compile("d=\"([^\"]*)\" fill=\"none\" stroke=\"currentColor\" stroke-opacity=\".7\"")
                .matcher(svg)
                .results()
                .map(found -> found.group(1))
                .findFirst()
                .orElseThrow();
        assertEquals(4, stems.chars().filter(sign -> sign == 'M').count(), stems);
    }

    @Test
    void theKeyOfACompromiseHasNoTwoSwatchesOfOneColour() {
        TradeOff trade = TradeOff.of(List.of("sweetness", "acidity"), Features.dropTemperature(), HARBOUR);
        String svg = trade.picture().svg().orElseThrow();
        List<String> fills = Pattern.compile("<rect [^>]* height=\"12\" (fill=\"[^\"]+\" fill-opacity=\"[^\"]+\")/>")
                .matcher(svg)
                .results()
                .map(found -> found.group(1))
                .toList();
        assertEquals(2, fills.size(), fills.toString());
        assertEquals(2, new HashSet<>(fills).size(), fills.toString());
        assertTrue(svg.contains(">holds the mean 90 times in 100</text>"), svg);
        assertTrue(svg.contains(">holds all together 90 times in 100</text>"), svg);
    }

    @Test
    void rowsWhoseNamesSpeakHaveNoLabelBesideThem() {
        assertEquals("", Screen.of(HARBOUR).picture().y().fullLabel());
        assertEquals("", Halo.of(HARBOUR).picture().y().fullLabel());
        assertEquals(
                "",
                DestinationOrPathPage.picture(DestinationOrPath.of("acidity", HARBOUR))
                        .y()
                        .fullLabel());
    }
}
