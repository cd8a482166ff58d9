package parchment.align;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.contents.LogbookException;

/** Holds the first sentences on a batch's own clock, on the way in which batches differ most, and on batches without a curve. */
class WarpAndShapesInShortTest {
    private static void says(InShort words, String found, String howSure, String next) {
        ShortSentences.keptBy(words);
        assertEquals(found + "\n" + howSure + "\n" + next, words.text());
    }

    private static InShort warp(Clock clock, double behind, int laid) {
        return WarpInShort.of(clock, "H240", new WarpInShort.Farthest(582, behind), laid);
    }

    @Test
    void aBatchIsToldAheadOrBehindTheMiddleOne() {
        says(
                warp(Clock.BY_ALL_MARKS, 6.4, 91),
                "Batch H240 was farthest from the middle batch at 9:42 on its clock: 6 s behind.",
                "The middle is that of 91 batches; a mark written late moves the line as a slow roast does.",
                "Where its line rises it lost time: look at gas and air there.");
        says(
                warp(Clock.BY_RATE_OF_RISE, -6.4, 91),
                "Batch H240 was farthest from the middle batch at 9:42 on its clock: 6 s ahead.",
                "The middle is that of 91 batches.",
                "Where its line rises it lost time: look at gas and air there.");
    }

    @Test
    void lessThanHalfASecondIsNoDifference() {
        String kept = "Batch H240 kept the pace of the middle batch to the second.";
        assertEquals(kept, warp(Clock.BY_ALL_MARKS, 0.49, 91).found());
        assertEquals(kept, warp(Clock.BY_ALL_MARKS, -0.49, 91).found());
        assertTrue(warp(Clock.BY_ALL_MARKS, 0.51, 91).found().endsWith("1 s behind."));
        assertTrue(warp(Clock.BY_ALL_MARKS, -0.51, 91).found().endsWith("1 s ahead."));
    }

    @Test
    void theMiddleOfFewerThanFiveIsNotYetWhatIsUsual() {
        says(
                warp(Clock.BY_ALL_MARKS, 6.4, 4),
                "Batch H240 was farthest from the middle batch at 9:42 on its clock: 6 s behind.",
                "The middle of 4 batches is not yet what is usual here.",
                "Ask again when more batches have been roasted.");
        assertEquals(
                "The middle is that of 5 batches.",
                warp(Clock.BY_RATE_OF_RISE, 6.4, 5).howSure());
    }

    @Test
    void aClockWithNoneOrOneOrThatMovesNoneIsToldAsThat() {
        says(
                WarpInShort.cannotTell(Clock.SINCE_YELLOWING, 0),
                "Which batch ran ahead or behind cannot be told: none is on this clock.",
                "It needs a bean temperature and the yellowing.",
                "Log the one and write the other while you roast, then ask again.");
        says(
                WarpInShort.cannotTell(Clock.BY_ALL_MARKS, 1),
                "Whether this batch ran ahead or behind cannot be told.",
                "It is the only one on this clock.",
                "Ask again when more batches have been roasted.");
        says(
                WarpInShort.cannotTell(Clock.SINCE_CHARGE, 2),
                "On this clock no batch is shifted, and none runs ahead or behind.",
                "All 2 batches keep the time on which they were logged.",
                "Take the clock of all marks.");
    }

    private static final ShapesInShort.First FIRST =
            new ShapesInShort.First("1.4 °C/min", "faster or slower", "161 °C", 0.804, "H229", "H207");

    @Test
    void theWayInWhichBatchesDifferMostIsToldWhereItShowsMost() {
        says(
                ShapesInShort.of(FIRST, 93),
                "Batches differ most in one way: about one in three runs more than 1.4 °C/min faster or slower at 161 °C.",
                "That way makes 80 parts in 100 of how far 93 batches lie apart; what brought it about is not told.",
                "Compare batch H229 with batch H207: they lie farthest apart in it.");
    }

    @Test
    void whereNoWayStandsOutOrFewReachTheReasonIsTold() {
        says(
                ShapesInShort.none(93),
                "No one way in which these batches differ stands out.",
                "What 93 batches differ in changes sides too often to be told from chance.",
                "Look at the lines one by one.");
        says(
                ShapesInShort.tooFew(9, 10),
                "In which way batches differ most cannot be told.",
                "9 batches reach over a common stretch of this clock, and 10 are needed.",
                "Ask again when more batches with a bean temperature have been roasted.");
        assertEquals(
                "1 batch reaches over a common stretch of this clock, and 10 are needed.",
                ShortSentences.keptBy(ShapesInShort.tooFew(1, 10)).howSure());
    }

    @Test
    void thePagesBeginWithTheThreeSentencesAndFoldTheRest() {
        Logbook logbook = InventedRoasts.logbook(InventedRoasts.batches("b", 24, 500, "A", 0, 13));
        Shapes shapes = Shapes.of(OneClock.of(logbook, Clock.BY_BEAN_TEMPERATURE));
        String page = shapes.html().orElseThrow();
        ShortSentences.keptBy(shapes.inShort());
        assertTrue(
                shapes.inShort()
                        .found()
                        .matches("Batches differ most in one way: .* °C/min faster or slower at .* °C\\."),
                shapes.inShort().found());
        assertTrue(page.indexOf("Batches differ most") < page.indexOf("<svg"), page);
        assertTrue(page.indexOf("standard deviation up on it") > page.indexOf("<details>"), page);
        WarpChart warp = WarpChart.of(OneClock.of(logbook, Clock.BY_ALL_MARKS));
        ShortSentences.keptBy(warp.inShort());
        assertTrue(
                warp.text()
                        .startsWith(
                                "The clock of batch b23\n\n" + warp.inShort().text()),
                warp.text());
    }

    private static Logbook without(List<Batch> batches) {
        return Logbook.of(LogbookContents.ofBatches("new", batches));
    }

    @Test
    void aLogbookWithoutCurvesIsAnsweredInWordsByEveryQuestionAboutABatch() {
        for (Logbook logbook : List.of(
                without(List.of()),
                without(List.of(Batch.named("a").build(), Batch.named("b").build())))) {
            Batch last = logbook.lastWithCurve();
            String name = logbook.batches().isEmpty() ? "(none yet)" : "b";
            says(
                    WhereTimeWent.of(last, logbook).inShort(),
                    "Where the time of batch " + name + " went cannot be told.",
                    "No batch of this logbook has a bean temperature curve yet.",
                    "Log the bean temperature, put one file for each batch into the folder 'curves', and ask again.");
            assertEquals(
                    "Which roast was most like batch " + name + " cannot be told.",
                    ShortSentences.keptBy(Nearest.to(last, logbook).inShort()).found());
            OneClock one = OneClock.of(logbook, Clock.BY_ALL_MARKS);
            assertEquals(
                    WarpInShort.cannotTell(Clock.BY_ALL_MARKS, 0),
                    WarpChart.of(one).inShort());
            assertTrue(
                    assertThrows(LogbookException.class, () -> WarpChart.of(one).warp())
                            .getMessage()
                            .startsWith("No batch is on the clock"));
            String pace = PaceChart.of(logbook).withHighlight(last.name()).text();
            assertTrue(pace.contains("so there is no pace to draw"), pace);
        }
    }

    @Test
    void aChosenBatchWithoutACurveIsRefusedWhereOthersHaveOne() {
        List<Batch> batches = new ArrayList<>(InventedRoasts.batches("b", 8, 500, "A", 0, 13));
        batches.add(Batch.named("blank").build());
        Logbook logbook = InventedRoasts.logbook(batches);
        assertEquals("b7", logbook.lastWithCurve().name());
        for (Executable question : List.<Executable>of(
                () -> WhereTimeWent.of(logbook.batch("blank"), logbook),
                () -> Nearest.to(logbook.batch("blank"), logbook))) {
            assertTrue(
                    assertThrows(LogbookException.class, question).getMessage().contains("has no bean temperature"));
        }
    }
}
