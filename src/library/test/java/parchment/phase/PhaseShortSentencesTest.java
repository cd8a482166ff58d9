package parchment.phase;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.contents.LogbookContents;
import parchment.phase.found.Moment;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Holds each first sentence on marks that are foretold, on notable moments, and on the phases of many batches. */
class PhaseShortSentencesTest {
    private static void says(InShort words, String found, String howSure, String next) {
        ShortSentences.keptBy(words);
        assertEquals(found + "\n" + howSure + "\n" + next, words.text());
    }

    private static MarkPrediction predicted(MarkPrediction.Basis basis, MarkPrediction.Shape shape, double error) {
        return new MarkPrediction(
                "H240",
                MarkKind.FIRST_CRACK_START,
                basis,
                612,
                8,
                new MarkPrediction.Passing(607, 618),
                new MarkPrediction.Passing(599, 626),
                196.04,
                error,
                shape,
                TemperatureUnit.CELSIUS);
    }

    private static final String KEEP =
            "Go on writing what you hear and see: this foretells your pen and not the beans.";
    private static final String MORE = "Write first crack start of every batch, then your own habit takes its place.";

    @Test
    void aForetoldMarkIsToldByTimeAndReadingAndWhatItRestsOn() {
        says(
                predicted(MarkPrediction.Basis.HABIT, MarkPrediction.Shape.RISING, 1.2)
                        .inShort(),
                "You would have written first crack start of batch H240 at about 10:12, when the bean probe read 196 °C.",
                "By your marks of other days, 9 of 10 are written between 9:59 and 10:26.",
                KEEP);
        says(
                predicted(MarkPrediction.Basis.ASSUMED, MarkPrediction.Shape.RISING, 7.6)
                        .inShort(),
                "You would have written first crack start of batch H240 at about 10:12, when the bean probe read 196 °C.",
                "By common practice it lies between 9:59 and 10:26; too few marks are written to know your habit.",
                MORE);
    }

    @Test
    void aReadingHasADecimalOnlyWhereItIsKnownToLessThanADegree() {
        assertTrue(predicted(MarkPrediction.Basis.HABIT, MarkPrediction.Shape.RISING, 0.99)
                .inShort()
                .found()
                .endsWith("read 196.0 °C."));
        assertTrue(predicted(MarkPrediction.Basis.HABIT, MarkPrediction.Shape.RISING, 1)
                .inShort()
                .found()
                .endsWith("read 196 °C."));
    }

    @Test
    void aFlatCurveALowOneAndNoneAreToldAsThat() {
        says(
                predicted(MarkPrediction.Basis.HABIT, MarkPrediction.Shape.FLAT, 1.2)
                        .inShort(),
                "You would have written first crack start of batch H240 between 9:59 and 10:26, and no nearer can be told.",
                "The curve is flat there, at about 196 °C.",
                KEEP);
        assertEquals(
                MORE,
                predicted(MarkPrediction.Basis.ASSUMED, MarkPrediction.Shape.FLAT, 7)
                        .inShort()
                        .next());
        String cannot = "When you would have written first crack start of batch H240 cannot be told.";
        says(
                predicted(MarkPrediction.Basis.HABIT, MarkPrediction.Shape.NEVER_REACHED, 1.2)
                        .inShort(),
                cannot,
                "Its bean temperature never reached 196 °C, where it is expected.",
                "Nothing to do: the batch may have been dropped before it.");
        assertEquals(
                MORE,
                predicted(MarkPrediction.Basis.ASSUMED, MarkPrediction.Shape.NEVER_REACHED, 7)
                        .inShort()
                        .next());
        says(
                predicted(MarkPrediction.Basis.HABIT, MarkPrediction.Shape.NO_CURVE, 1.2)
                        .inShort(),
                cannot,
                "It has no bean temperature that rises for a minute.",
                "Log the bean temperature of the next batches, then ask about one of them.");
    }

    @Test
    void thePageOfAForetoldMarkFoldsTheRest() {
        MarkPrediction mark = predicted(MarkPrediction.Basis.HABIT, MarkPrediction.Shape.RISING, 1.2);
        assertTrue(
                mark.text()
                        .startsWith("First crack start of batch H240\n\n"
                                + mark.inShort().text()),
                mark.text());
        String page = mark.html().orElseThrow();
        assertTrue(page.indexOf("1 in 2 from") > page.indexOf("<details>"), page);
    }

    private static MarkReport.Summary summary(MarkKind kind, int compared, int days, int leftOut, double seconds) {
        return new MarkReport.Summary(
                kind, MarkPrediction.Basis.HABIT, compared, days, leftOut, seconds, 1, 0.5, 0.912, 0.03, 0.02);
    }

    private static MarkReport.Summary crack(int compared, int days, int leftOut) {
        return summary(MarkKind.FIRST_CRACK_START, compared, days, leftOut, 8.4);
    }

    private static InShort report(int questions, MarkReport.Summary... all) {
        return ShortSentences.keptBy(ForetoldInShort.of(List.of(all), questions));
    }

    @Test
    void howWellMarksAreForetoldIsToldInSeconds() {
        MarkReport.Summary yellowing = summary(MarkKind.YELLOWING, 227, 90, 0, 7.3);
        says(
                report(0, yellowing, crack(225, 90, 0)),
                "Half of your marks lie this near to what your other days foretell: yellowing 7 s, first crack start 8 s.",
                "Ranges meant to hold 90 marks in 100 held 91 (yellowing, 227 marks) and 91 (first crack start, 225 marks).",
                "Nothing to do: no written mark lies far off.");
        assertEquals(
                "One written mark lies far off: look below whether it was mistyped.",
                report(1, yellowing, crack(225, 90, 0)).next());
        assertEquals(
                "2 written marks lie far off: look below whether they were mistyped.",
                report(2, yellowing, crack(225, 90, 0)).next());
    }

    @Test
    void aKindWithTooFewMarksOrDaysIsAskedFor() {
        MarkReport.Summary yellowing = summary(MarkKind.YELLOWING, 227, 90, 0, 7.3);
        String more = "Write first crack start of more batches too.";
        assertEquals(more, report(0, yellowing, crack(5, 4, 0)).next());
        assertEquals(more, report(0, yellowing, crack(6, 3, 0)).next());
        assertEquals(
                "Nothing to do: no written mark lies far off.",
                report(0, yellowing, crack(6, 4, 0)).next());
        assertEquals(
                "Half of your marks lie this near to what your other days foretell: yellowing 7 s.",
                report(0, yellowing, crack(5, 4, 0)).found());
    }

    @Test
    void withTooFewOfBothItSaysWhichHalfIsMissing() {
        says(
                report(0, summary(MarkKind.YELLOWING, 0, 0, 5, Double.NaN), crack(0, 0, 5)),
                "How well your marks can be foretold cannot be told yet.",
                "Each kind needs 6 written marks on 4 roast days, of batches with a bean temperature.",
                "Write yellowing and first crack start of every batch, then ask again.");
        assertEquals(
                "The marks are written: log the bean temperature too, then ask again.",
                report(0, summary(MarkKind.YELLOWING, 0, 0, 6, Double.NaN), crack(0, 0, 5))
                        .next());
    }

    private static List<Moment> moments(int count, double apart, int rank) {
        MomentDetector stall = new MomentDetector() {
            @Override
            public String name() {
                return "stall";
            }

            @Override
            public Unit unit() {
                return Unit.SECONDS;
            }

            @Override
            public double noticeable() {
                return 1;
            }

            @Override
            public Side side() {
                return Side.HIGH;
            }

            @Override
            public String source() {
                return "invented";
            }

            @Override
            public Optional<Sighting> look(Phases phases) {
                return Optional.empty();
            }
        };
        return new ArrayList<>(Collections.nCopies(
                count,
                new Moment(
                        "H125", stall, 513, 90, 20, apart, rank, 94, "batches of this lot", TemperatureUnit.CELSIUS)));
    }

    @Test
    void theMostUnusualMomentIsToldBesideWhatIsUsual() {
        says(
                MomentsInShort.of(moments(14, 5, 1), 240, 240, 230),
                "Batch H125 stands out at 8:33: stall, 90 s where 20 s is usual.",
                "It is the largest of 94 batches of this lot.",
                "Look at its picture, then at the 13 below; unusual is not wrong.");
        says(
                MomentsInShort.of(moments(1, -5, 2), 1, 240, 1),
                "Batch H125 stands out at 8:33: stall, 90 s where 20 s is usual.",
                "It is the 2nd smallest of 94 batches of this lot.",
                "Look at its picture and ask what happened then; unusual is not wrong.");
        assertEquals(
                "How unusual that is cannot be told from 94 batches of this lot.",
                ShortSentences.keptBy(MomentsInShort.of(moments(1, Double.NaN, 1), 3, 3, 3))
                        .howSure());
    }

    @Test
    void nothingUnusualIsSaidOnlyWhereItCouldHaveBeenSeen() {
        says(
                MomentsInShort.of(List.of(), 6, 6, 1),
                "In these 6 batches nothing was far enough from the others to be listed.",
                "What is small, or slow, or the same in all of them, could still hide.",
                "Nothing to do; the cup decides.");
        assertEquals(
                "In this batch nothing was far enough from the others to be listed.",
                ShortSentences.keptBy(MomentsInShort.of(List.of(), 1, 6, 1)).found());
        says(
                MomentsInShort.of(List.of(), 5, 5, 5),
                "Whether anything unusual happened cannot be told.",
                "Each batch is held against at least 5 others, and there are 5 batches in all.",
                "Ask again when more have been roasted.");
        assertEquals(
                "Each batch is held against at least 5 others, and there is 1 batch in all.",
                ShortSentences.keptBy(MomentsInShort.of(List.of(), 1, 1, 1)).howSure());
        says(
                MomentsInShort.of(List.of(), 6, 6, 0),
                "Whether anything unusual happened cannot be told.",
                "None of these 6 batches has a bean temperature.",
                "Log the bean temperature of the next batches, then ask again.");
        assertEquals(
                "The batch has no bean temperature.",
                ShortSentences.keptBy(MomentsInShort.of(List.of(), 1, 9, 0)).howSure());
        assertEquals(
                "There is no batch yet.",
                ShortSentences.keptBy(MomentsInShort.of(List.of(), 0, 0, 0)).howSure());
    }

    @Test
    void thePhasesOfManyAreToldByTheMiddleHalfOfTheDevelopment() {
        says(
                PhasesInShort.of(6, List.of(100.0, 110.0, 120.0, 130.0), 0),
                "From first crack start to drop half of 4 batches took between 1:48 and 2:03.",
                "2 of 6 batches lack a mark and are not counted.",
                "Write yellowing, first crack start and drop of every batch.");
        says(
                PhasesInShort.of(3, List.of(120.0, 100.0, 110.0), 0),
                "From first crack start to drop the 3 batches took between 1:40 and 2:00.",
                "All three phases are known of every batch, as well as its marks are.",
                "Nothing to do; the cup decides.");
        says(
                PhasesInShort.of(2, List.of(100.0), 1),
                "From first crack start to drop the one batch took 1:40.",
                "1 of 2 batches lacks a mark and is not counted.",
                "Look at the batch with something in the last column.");
        assertEquals(
                "Look at the 2 batches with something in the last column.",
                ShortSentences.keptBy(PhasesInShort.of(2, List.of(100.0), 2)).next());
    }

    @Test
    void phasesThatNobodyWroteCannotBeTold() {
        says(
                PhasesInShort.of(6, List.of(), 6),
                "How long the phases took cannot be told.",
                "None of 6 batches has all three marks: yellowing, first crack start and drop.",
                "Write yellowing, first crack start and drop of every batch.");
        assertEquals(
                "The one batch has not all three marks: yellowing, first crack start and drop.",
                ShortSentences.keptBy(PhasesInShort.of(1, List.of(), 0)).howSure());
        says(
                PhasesInShort.of(0, List.of(), 0),
                "How long the phases took cannot be told.",
                "The logbook has no batch yet.",
                "Write a line for each batch into batches.csv and open the logbook again.");
    }

    @Test
    void questionsAboutABatchOfAnEmptyLogbookAreAnswered() {
        Logbook empty = Logbook.of(LogbookContents.ofBatches("new", List.of()));
        LearntHabit habit = LearntHabit.of(empty);
        Batch none = empty.lastWithCurve();
        assertEquals(
                MarkPrediction.Shape.NO_CURVE,
                habit.predict(none, MarkKind.YELLOWING).shape());
        assertEquals(none.name(), habit.newestWithout(MarkKind.YELLOWING).name());
        assertTrue(habit.withPredictions(none).list().isEmpty());
        assertEquals(none.name(), Moments.of(habit).mostUnusualBatch().name());
        Logbook bare = Logbook.of(LogbookContents.ofBatches(
                "two", List.of(Batch.named("a").build(), Batch.named("b").build())));
        assertEquals("b", LearntHabit.of(bare).newestWithout(MarkKind.YELLOWING).name());
    }
}
