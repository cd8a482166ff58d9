package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.chart.Line;
import parchment.chart.Weight;
import parchment.evidence.finding.Verdict;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.CupScores;

@Tag("holds-for-any")
class TradeOffTest {
    /** Sweetness rises by 0.15 points per °C, acidity falls by the given slope; both lie on scales around 6. */
    private static TradeOff ask(double acidity, long seed) {
        KnownTruth truth = new KnownTruth();
        truth.days = 30;
        // The compromise is about these lots and cuppers; so that its truth is known, they do not differ.
        truth.lotSpread = 0;
        truth.cupperSpread = 0;
        truth.cuppingSpread = 0;
        KnownTruth.Drawn drawn = truth.draw(seed);
        Random random = new Random(seed + 5);
        List<CupScores> cups = new ArrayList<>();
        for (CupScores cup : drawn.logbook().cups()) {
            double x = drawn.measure()
                            .readings()
                            .getOrDefault(cup.batch(), ModelFrames.Reading.NONE)
                            .value()
                    - 205;
            Map<String, Double> scores = new LinkedHashMap<>(cup.scores());
            scores.put("acidity", 6 + acidity * x + 0.5 * random.nextGaussian());
            cups.add(cup.withScores(scores));
        }
        LogbookContents c = drawn.logbook().contents();
        Logbook both = Logbook.of(c.toBuilder().cups(cups).build());
        return TradeOff.of(List.of("sweetness", "acidity"), drawn.measure(), both, EvidenceSettings.standard());
    }

    @Test
    void namesTheCompromiseWhereOneGainsAndTheOtherLoses() {
        int held = 0;
        int named = 0;
        for (long seed = 1; seed <= 4; seed++) {
            // Equal and opposite: with aims that mirror each other the best lies where both are equally welcome, at 205
            // °C.
            TradeOff asked = ask(-0.15, seed)
                    .withAim("sweetness", Desirability.larger(5, 7))
                    .withAim("acidity", Desirability.larger(5, 7));
            held += asked.compromise().contains(205) ? 1 : 0;
            named += asked.verdict() == Verdict.SUGGESTIVE ? 1 : 0;
        }
        assertTrue(held >= 3, held + " of 4");
        assertTrue(named >= 2, named + " of 4");
    }

    @Test
    void bothRisingPutsItAtTheHotEnd() {
        TradeOff asked = ask(0.15, 3);
        assertTrue(asked.compromise().lower() > 205, asked.text());
        assertTrue(asked.text().contains("inside lots: sweetness +"), asked.text());
        assertTrue(asked.svg().isPresent());
    }

    @Test
    void saysThatThereIsNothingToTradeWhereNothingWentWithIt() {
        KnownTruth truth = new KnownTruth();
        truth.slope = 0;
        int cannotTell = 0;
        for (long seed = 1; seed <= 4; seed++) {
            KnownTruth.Drawn drawn = truth.draw(seed);
            ModelFrame material = KnownTruth.material(drawn);
            JointCourses courses = JointCourses.of(List.of(material, material), 0.9);
            cannotTell += courses.fit(0).slope().chance() > 0.02 ? 1 : 0;
        }
        assertTrue(cannotTell >= 3, cannotTell + " of 4");
    }

    /** A short version of {@link TradeOffStudy}: 6 logbooks, nine of ten give or take two errors of 12 points. */
    @Test
    void holdsTheBestPlaceWithUsualAndWithStatedAims() {
        TradeOffStudy.Count count =
                TradeOffStudy.count(TradeOffStudy.cells().get("equal and opposite, 120 batches, 30 days"), 6, 5000);
        assertTrue(count.usual() >= 4, count.toString());
        assertTrue(count.stated() >= 4, count.toString());
    }

    @Test
    void anAimThatIsStatedStaysAndTheOtherIsStillAnEstimate() {
        TradeOff asked = ask(-0.15, 2).withAim("acidity", Desirability.larger(5, 7));
        assertTrue(asked.stated("acidity"));
        assertFalse(asked.stated("sweetness"));
        assertEquals(Desirability.larger(5, 7).toString(), asked.aims().get(1).toString());
        assertTrue(
                asked.text().contains("Acidity: the more the better, from 5.00 (not welcome) to 7.00 (fully)."),
                asked.text());
        assertTrue(
                asked.text()
                        .contains(
                                "; that is the middle 80 % of the batches' scores, and how sure it is, is in the draws."),
                asked.text());
    }

    private static TradeOff moved(double shiftError) {
        TradeOffStudy.Cell cell = new TradeOffStudy.Cell();
        cell.truth.lotSpread = 0;
        cell.truth.cupperSpread = 0;
        cell.truth.cuppingSpread = 0;
        cell.truth.probeMovedOnDay = 18;
        cell.truth.probeShift = -4;
        cell.truth.shiftError = shiftError;
        return TradeOffStudy.ask(TradeOffStudy.draw(cell, 4))
                .withAim("sweetness", cell.sweetAim)
                .withAim("acidity", cell.acidAim);
    }

    /** Equal and opposite, so the best lies at 205 °C as read before the probe moved by -4 °C, and at 201 °C as read on today's. */
    @Test
    void theCompromiseIsAReadingOnTodaysProbeAndWiderWhereTheMoveIsNotKnownWell() {
        TradeOff known = moved(0);
        assertTrue(known.compromise().contains(201), known.text());
        assertFalse(known.compromise().contains(205), known.text());
        assertTrue(known.text().contains("Places are readings as on today's probe."), known.text());
        TradeOff unsure = moved(1.5);
        assertTrue(
                unsure.compromise().width() > known.compromise().width(),
                unsure.compromise() + " against " + known.compromise());
    }

    @Test
    void sameSeedSameAnswer() {
        assertEquals(ask(-0.15, 4).text(), ask(-0.15, 4).text());
    }

    @Test
    void oneAttributeLeavesNothingToTrade() {
        KnownTruth.Drawn drawn = new KnownTruth().draw(1);
        TradeOff asked = TradeOff.of(
                List.of("sweetness", "sweetness"), drawn.measure(), drawn.logbook(), EvidenceSettings.standard());
        assertEquals(Verdict.CANNOT_TELL, asked.verdict());
        assertTrue(asked.text().contains("two different attributes"), asked.text());
        assertTrue(asked.svg().isPresent());
    }

    @Test
    void coursesFromWhichNothingCanBeToldAreDashedAndThePictureSaysWhy() {
        Logbook hillside = Logbook.open(Path.of("..", "datasets", "hillside"));
        TradeOff asked = TradeOff.of(List.of("sweetness", "acidity"), Features.dropTemperature(), hillside);
        assertEquals(Verdict.CANNOT_TELL, asked.verdict());
        List<Weight> weights = asked.picture().plots().stream()
                .flatMap(plot -> plot.layers().stream())
                .filter(Line.class::isInstance)
                .map(layer -> ((Line) layer).weight())
                .distinct()
                .toList();
        assertEquals(List.of(Weight.TENTATIVE), weights);
        assertTrue(asked.picture()
                .notes()
                .contains("The lines are dashed because these batches cannot tell: they may be luck."));
    }
}
