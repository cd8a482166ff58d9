package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import parchment.display.ShortSentences;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Verdict;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.logbook.contents.Cautions;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

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
                Sweetness was highest at a drop temperature near 202 °C, about 1.3 points (likely 0.9 to 1.7) above 196 °C.
                In 100 logbooks without any true difference, luck shows as much less than once, but not all cups were blind.
                Put codes on the cups and write scores down before anybody speaks.""", page.get(1));
        assertEquals(
                "How to read the picture: At any one place along the axis the true average lies inside the band 90 times in 100. If many more"
                        + " cups of a batch were tasted, its dot would stay within its bar about 2 times in 3. A dot stands at the drop"
                        + " temperature that chance planned for the batch, not at what came out. The dots are not the raw scores: what lot,"
                        + " roast day, cupper, cupping, rest days, place in the day, green mass and date add to them is subtracted, as far as"
                        + " these batches show it. No batch is removed for that. 56 batches, 16 roast days, 15 cuppings, 5 cuppers, 468 scores.",
                page.get(8));
        assertFalse(page.get(2).contains("How to read"), page.get(2));
        assertEquals(
                List.of(
                        "Readings from before 2024-10-07 were lowered by about 1.1 °C, to what today's probe would show; your logbook stays as it is.",
                        "From 56 scored batches on 16 roast days, tasted by 5 cuppers. Batches of each lot: Cinder Ridge 20, Low Orchard 20 and"
                                + " Salt Meadow 16. These 56 alone do not show whether the score goes with the drop temperature differently from lot to lot."
                                + " All 183 scored batches, not all of them drawn by chance, show that it does: to see each lot, open \"How this"
                                + " was worked out\" below.",
                        "What could be wrong: cuppers may have known what they tasted.",
                        "Why 196 °C and 202 °C: there the drawn line is lowest and highest, the outermost tenth of the batches at either end left"
                                + " aside. In brackets: the difference that the drop temperature itself makes lies in there 9 times in 10.",
                        Cautions.BESIDE_A_READING,
                        page.get(8),
                        "How this was worked out"),
                page.subList(3, 10));
        assertTrue(page.get(10).startsWith("Verdict: suggestive."), page.get(10));
        assertTrue(
                page.stream()
                        .anyMatch(
                                part -> part.contains(
                                        "Among all 183 scored batches, drawn or not, the lots do differ, so this one slope describes none of them:")),
                page.toString());
        assertTrue(
                page.stream()
                        .anyMatch(
                                ("From here on all 183 scored batches count, their targets drawn by chance or not; the sentences and the"
                                                + " picture above are of the 56 whose targets were.")::equals),
                page.toString());
    }

    @Test
    void whatCannotBeToldNamesNoPlaceAndCarriesTheCautionForTheReadingsItNames() {
        List<String> page = paragraphs(Evidence.of("sweetness", Features.dropTemperature(), HILLSIDE));
        assertEquals(
                "Whether sweetness is higher at a drop temperature of 394 °F or 404 °F cannot be told from these batches.",
                page.get(1).split("\n")[0]);
        assertEquals(
                "17 more batches have no lot written: add it, then they count too.",
                page.get(1).split("\n")[2]);
        String why =
                "Why 394 °F and 404 °F: there the drawn line is lowest and highest, the outermost tenth of the batches at either end left aside.";
        assertEquals(
                List.of(
                        "From 23 scored batches on 13 roast days, tasted by 1 cupper. Batches of each lot: Moth Field 16 and Stone Bridge 7. Whether"
                                + " this differs from lot to lot cannot be told either.",
                        "What could be wrong: cuppers may have known what they tasted; it is one cupper's taste.",
                        "A higher drop temperature also means a higher development ratio and a longer development time: scores cannot tell the"
                                + " three apart.",
                        "After that: put codes on the cups. It takes over 200 batches between 394 °F and 404 °F; cup each more often, or go"
                                + " slightly beyond, inside what your machine's maker allows.",
                        Cautions.BESIDE_A_READING,
                        page.get(8),
                        "How this was worked out"),
                page.subList(3, 10));
        assertTrue(
                page.get(8)
                        .startsWith(
                                "How to read the picture: The line is dashed because what it shows may be luck. At any"),
                page.get(8));
        assertTrue(page.indexOf(why) > 9, page.toString());
    }

    @Test
    void tooFewBatchesSayWhatIsMissingAndKeepTheRestFolded() {
        Evidence evidence = Evidence.of("acidity", Features.browningTime(), HILLSIDE);
        List<String> page = paragraphs(evidence);
        assertTrue(
                page.get(1).startsWith("These batches cannot tell how acidity goes with the browning time."),
                page.get(1));
        assertFalse(page.contains(Cautions.BESIDE_A_READING), page.toString());
        assertTrue(page.contains("How this was worked out"), page.toString());
    }

    private static final TriedRange TRIED = new TriedRange(196, 208, 198, 206, 202);

    private Verdict verdict = Verdict.SUGGESTIVE;
    private FirstScreen.Behind behind = new FirstScreen.Behind(12, 3, FirstScreen.Cups.BLIND);
    private FirstScreen.Sameness sameness = FirstScreen.Sameness.ALIKE;
    private List<LotBest> bests = List.of();
    private OptionalInt among = OptionalInt.empty();
    private List<String> alongside = List.of();

    /** A screen over lots with so many batches each, named A, B, C and so on. */
    private FirstScreen screen(int... batches) {
        Map<String, Integer> lots = new LinkedHashMap<>();
        for (int count : batches) {
            lots.put(String.valueOf((char) ('A' + lots.size())), count);
        }
        return new FirstScreen(
                verdict,
                new Measure("drop temperature", Unit.TEMPERATURE, TemperatureUnit.CELSIUS, Map.of()),
                behind,
                lots,
                sameness,
                Optional.empty(),
                bests,
                Optional.of(TRIED),
                among,
                alongside,
                "");
    }

    private static final String UNNAMED =
            "The lots differ in how the score goes with the drop temperature: to see each, open \"How this was worked out\" below. ";

    private static LotBest best(String lot, double bend) {
        Slope flat = new Slope(0, 0.001, 100);
        return new LotBest(
                lot, 8, 3, flat, LotBest.Own.OWN, Peak.of(flat, new Slope(bend, 0.001, 100), 0, TRIED, 0.90));
    }

    @Test
    void fiveLotsAreAllNamedAndOfSixTheTwoSmallestAreCounted() {
        assertEquals(
                "From 20 scored batches on 12 roast days, tasted by 3 cuppers. Batches of each lot: E 6, D 5, C 4, B 3 and A 2. Nothing shows that the score goes with the drop temperature differently from lot to lot"
                        + ", so one answer is given for all.",
                screen(2, 3, 4, 5, 6).forWhich());
        assertEquals(
                "From 21 scored batches on 12 roast days, tasted by 3 cuppers. Batches of each lot: F 6, E 5, D 4, C 3 and 2 more lots. Nothing shows that the score goes with the drop temperature differently from lot to lot"
                        + ", so one answer is given for all.",
                screen(1, 2, 3, 4, 5, 6).forWhich());
    }

    @Test
    void lotsAreCalledAlikeOnlyWhereSomethingIsTold() {
        String two = "From 9 scored batches on 12 roast days, tasted by 3 cuppers. Batches of each lot: B 5 and A 4.";
        assertEquals(
                two
                        + " Nothing shows that the score goes with the drop temperature differently from lot to lot, so one answer is given for all.",
                screen(4, 5).forWhich());
        verdict = Verdict.NOTHING_SEEN;
        assertEquals(
                two + " Nothing shows that the score goes with the drop temperature differently from lot to lot.",
                screen(4, 5).forWhich());
        among = OptionalInt.of(30);
        assertEquals(
                two
                        + " These 9 alone do not show whether the score goes with the drop temperature differently from lot to lot. All 30 scored"
                        + " batches, not all of them drawn by chance, show that it does: to see each lot, open \"How this was worked out\" below.",
                screen(4, 5).forWhich());
        verdict = Verdict.CANNOT_TELL;
        assertEquals(
                two + " Whether this differs from lot to lot cannot be told either.",
                screen(4, 5).forWhich());
        among = OptionalInt.empty();
        sameness = FirstScreen.Sameness.DIFFERENT;
        assertEquals(UNNAMED + two, screen(4, 5).forWhich());
        sameness = FirstScreen.Sameness.NOT_COMPARED;
        verdict = Verdict.SUGGESTIVE;
        assertEquals(two, screen(4, 5).forWhich());
        sameness = FirstScreen.Sameness.ALIKE;
        assertEquals(
                "From 1 scored batch on 12 roast days, tasted by 3 cuppers. All of lot A.",
                screen(1).forWhich());
        assertEquals("No scored batch stands behind it.", screen().forWhich());
    }

    @Test
    void eachLotsBestIsNamedOnlyWhereAllLieInsideAndSomethingIsTold() {
        sameness = FirstScreen.Sameness.DIFFERENT;
        bests = List.of(best("A", -0.1), best("B", -0.1));
        String two = "From 9 scored batches on 12 roast days, tasted by 3 cuppers. Batches of each lot: B 5 and A 4.";
        assertEquals(
                "The lots differ in how the score goes with the drop temperature. Highest: A near 202 °C and B near 202 °C. "
                        + two,
                screen(4, 5).forWhich());
        verdict = Verdict.CANNOT_TELL;
        assertEquals(UNNAMED + two, screen(4, 5).forWhich());
        verdict = Verdict.STRONG;
        bests = List.of(best("A", -0.1), best("B", 0.1));
        assertEquals(UNNAMED + two, screen(4, 5).forWhich());
    }

    @Test
    void whatCouldBeWrongNamesCompanionsOpenCupsAndASingleCupper() {
        String nothing = "What could be wrong: something that nobody wrote down, such as the draught or dirty ducts.";
        assertEquals(nothing, screen(4).whatCouldBeWrong());
        behind = new FirstScreen.Behind(12, 2, FirstScreen.Cups.NONE);
        assertEquals(nothing, screen(4).whatCouldBeWrong());
        behind = new FirstScreen.Behind(12, 2, FirstScreen.Cups.OPEN);
        assertEquals(
                "What could be wrong: cuppers may have known what they tasted.",
                screen(4).whatCouldBeWrong());
        behind = new FirstScreen.Behind(12, 1, FirstScreen.Cups.BLIND);
        alongside = List.of("gas in drying", "green mass");
        assertEquals(
                "What could be wrong: gas in drying and green mass moved along with the drop temperature; it is one cupper's taste.",
                screen(4).whatCouldBeWrong());
    }

    @Test
    void onlyAPlaceThatIsNamedNeedsTheCaution() {
        for (Verdict each : Verdict.values()) {
            verdict = each;
            assertEquals(
                    each == Verdict.STRONG || each == Verdict.SUGGESTIVE,
                    screen(4).namesAPlace(),
                    each.toString());
        }
    }

    /** Where chance set the targets of some batches and that settles it, all of the first screen is about just those. */
    @Test
    void whereChanceSetTheTargetsTheWholeScreenIsOfTheDrawnBatches() {
        Evidence evidence = Evidence.of("sweetness", Features.dropTemperature(), HARBOUR);
        assertTrue(evidence.judgedByChance());
        assertTrue(evidence.batches() > 56, evidence.batches() + " batches");
        FirstScreen screen = FirstScreen.of(evidence);
        assertEquals(
                56, screen.lots().values().stream().mapToInt(Integer::intValue).sum());
        Analysis judged = evidence.judged().orElseThrow();
        assertEquals(judged.range(), screen.range().orElseThrow());
        assertEquals(
                judged.bests().orElseThrow().lots().stream()
                        .map(LotBest::batches)
                        .toList(),
                screen.bests().stream().map(LotBest::batches).toList());
        assertEquals(56, screen.bests().stream().mapToInt(LotBest::batches).sum());
        assertEquals(List.of(), screen.alongside());
        assertFalse(evidence.movedTogether().notable().isEmpty()
                && evidence.facts().notable().isEmpty());
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
