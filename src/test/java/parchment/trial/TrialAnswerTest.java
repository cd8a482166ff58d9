package parchment.trial;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static parchment.trial.TrialTables.SEAL;
import static parchment.trial.TrialTables.lost;
import static parchment.trial.TrialTables.scored;
import static parchment.trial.TrialTables.sets;
import static parchment.trial.TrialTables.terms;

import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.display.InShort;
import parchment.display.ShortSentences;
import parchment.evidence.TrialVerdict;
import parchment.stats.Estimate;
import parchment.stats.Interval;
import parchment.stats.ReferenceData;
import parchment.trial.TrialJudgement.Why;

class TrialAnswerTest {
    private static TrialAnswer answer(double smallest, List<AssignedBatch> batches) {
        return TrialAnswer.of(terms(smallest, 1), batches, SEAL);
    }

    private static void says(TrialAnswer answer, Why why, String found, String howSure, String next) {
        assertEquals(why, answer.judgement().why());
        InShort words = ShortSentences.keptBy(answer.inShort());
        assertEquals(List.of(found, howSure, next), List.of(words.found(), words.howSure(), words.next()));
    }

    /** Values from the outside example, over the three degrees from the lowest target to the highest. */
    @Test
    @Tag("agrees-with")
    void agreesWithTheOutsideExample() {
        JsonObject expected =
                ReferenceData.expected("coin-flip", "coin_flip_example").getAsJsonObject("expected");
        TrialAnswer answer = answer(0.5, TrialTables.example());
        AsAssigned assigned = answer.assigned().orElseThrow();
        assertEquals(3 * expected.get("itt").getAsDouble(), answer.difference(), 1e-9);
        assertEquals(expected.get("exact_two_sided").getAsDouble(), assigned.chance(), 1e-12);
        double[] ends = ReferenceData.numbers(expected.get("itt90_randomisation"));
        assertEquals(3 * ends[0], answer.interval().lower(), 1e-9);
        assertEquals(3 * ends[1], answer.interval().upper(), 1e-9);
        AsAchieved achieved = answer.achieved().orElseThrow();
        double[] set = ReferenceData.numbers(expected.get("AR90"));
        assertEquals(set[0], achieved.set().lower(), 1e-9);
        assertEquals(set[1], achieved.set().upper(), 1e-9);
        assertEquals(expected.get("first_stage").getAsDouble(), achieved.pull(), 1e-9);
    }

    @Test
    @Tag("says")
    void saysThatItDid() {
        TrialAnswer answer = answer(0.5, sets(8, 0.25, 0.1));
        assertEquals("did", answer.verdictWords());
        says(
                answer,
                Why.SEEN,
                "A higher drop temperature did raise sweetness: 201.5 °C to 204.5 °C, 0.5 points (likely 0.3 to 0.7).",
                "In 100 trials without any true difference, luck shows as much less than once.",
                "Roast the next batches nearer to 204.5 °C, inside what your machine's maker allows, and keep cupping.");
        says(
                answer(0.5, sets(8, -0.25, 0.1)),
                Why.SEEN,
                "A higher drop temperature did lower sweetness: 201.5 °C to 204.5 °C, 0.5 points (likely 0.3 to 0.7).",
                "In 100 trials without any true difference, luck shows as much less than once.",
                "Roast the next batches nearer to 201.5 °C, inside what your machine's maker allows, and keep cupping.");
    }

    /** The upper end of the example lies at 0.6667 points. */
    @Test
    @Tag("says")
    void saysThatItDidNothingLargerThanWhatWasStated() {
        TrialAnswer answer = answer(0.67, TrialTables.example());
        assertEquals(TrialVerdict.NOTHING_LARGER, answer.verdict());
        assertEquals("did nothing larger than 0.67 points", answer.verdictWords());
        says(
                answer,
                Why.NONE_AS_LARGE,
                "From 201.5 °C to 204.5 °C the drop temperature did nothing larger than 0.67 points to sweetness.",
                "Anything from 0.4 points less to 0.7 points more agrees with the scores.",
                "Choose the drop temperature for other reasons; more batches like these would change little.");
        assertEquals(Why.OPEN, answer(0.66, TrialTables.example()).judgement().why());
    }

    @Test
    @Tag("says")
    void whatItDidAndIsSmallerThanWhatWasStatedIsNothingLarger() {
        TrialAnswer answer = answer(0.7, sets(8, 0.25, 0.1));
        assertEquals(Why.SEEN_BUT_SMALLER, answer.judgement().why());
        assertEquals("did nothing larger than 0.70 points", answer.verdictWords());
        assertEquals(Why.SEEN, answer(0.6, sets(8, 0.25, 0.1)).judgement().why());
        assertTrue(
                answer.page()
                        .text()
                        .contains(
                                "Verdict: did nothing larger than 0.70 points. Zero is ruled out, and so is every difference of"
                                        + " 0.70 points or more: it did something, and less than matters."),
                answer.page().text());
    }

    @Test
    @Tag("says")
    void saysThatItCannotTell() {
        TrialAnswer answer = answer(0.5, TrialTables.example());
        assertEquals("cannot tell", answer.verdictWords());
        says(
                answer,
                Why.OPEN,
                "Whether sweetness is higher at 201.5 °C or 204.5 °C cannot be told from these batches.",
                "Anything from 0.4 points less to 0.7 points more agrees with the scores.",
                "A new trial of about 42 batches would show 0.50 points four times in five.");
        assertEquals(
                "No trial of a size worth roasting would show 0.10 points here.",
                answer(0.1, TrialTables.example()).inShort().next());
    }

    @Test
    @Tag("says")
    void saysThatSoFewSetsCouldNotTell() {
        says(
                answer(0.5, sets(2, 0.3, 0.02)),
                Why.TOO_FEW_SETS,
                "Whether sweetness is higher at 201.5 °C or 204.5 °C cannot be told from these batches.",
                "With 2 sets like these even the clearest result comes by luck in 6 of 100 trials.",
                "A new trial of about 6 batches would show 0.50 points four times in five.");
        assertEquals(Why.SEEN, answer(0.5, sets(3, 0.3, 0.02)).judgement().why());
    }

    @Test
    @Tag("says")
    void saysThatAsMuchComesByLuckTooOften() {
        Random random = new Random(4);
        for (int run = 0; run < 400; run++) {
            List<AssignedBatch> batches = new ArrayList<>();
            for (int set = 0; set < 5; set++) {
                for (int place = 0; place < 3; place++) {
                    batches.add(scored(set, place, place - 1, 6 + 0.3 * (place - 1) + 0.5 * random.nextGaussian()));
                }
            }
            TrialAnswer answer = answer(0.5, batches);
            double chance = answer.judgement().chance();
            if (answer.judgement().why() == Why.NOT_RARE_ENOUGH) {
                assertTrue(chance > 0.05 && chance < 0.11, "chance " + chance);
                assertFalse(answer.interval().contains(0));
                assertEquals(
                        "In 100 trials without any true difference, luck shows as much " + Math.round(100 * chance)
                                + " times; over 5 is too often to build on.",
                        ShortSentences.keptBy(answer.inShort()).howSure());
                return;
            }
        }
        assertTrue(false, "no such trial was drawn");
    }

    @Test
    @Tag("says")
    void saysThatThereIsNothingToCompare() {
        List<AssignedBatch> batches = List.of(scored(1, 1, -1, 6), TrialTables.place(1, 2, 1), scored(2, 1, 1, 7));
        TrialAnswer answer = answer(0.5, batches);
        says(
                answer,
                Why.NOTHING_TO_COMPARE,
                "Whether sweetness is higher at 201.5 °C or 204.5 °C cannot be told from these batches.",
                "No set has two batches with different targets and a blind score.",
                "Cup the trial's batches blind, a set on one table, then ask again.");
        assertTrue(answer.page().text().contains("Verdict: cannot tell. No set has two scored batches"), answer.text());
        assertTrue(Double.isNaN(answer.difference()));
    }

    @Test
    @Tag("says")
    void aFurtherLookIsOneTooMany() {
        List<AssignedBatch> batches = sets(8, 0.25, 0.1);
        assertEquals(
                TrialVerdict.DID,
                TrialAnswer.atLook(1, terms(0.5, 1), batches, SEAL).verdict());
        says(
                TrialAnswer.atLook(2, terms(0.5, 1), batches, SEAL),
                Why.ONE_LOOK_TOO_MANY,
                "Whether sweetness is higher at 201.5 °C or 204.5 °C cannot be told from these batches.",
                "This is look 2 at a trial that was stated for one, and whoever looks on finds something by luck.",
                "Keep the answer of the last planned look, and draw a new trial for whatever is still open.");
        assertEquals(
                TrialVerdict.DID,
                TrialAnswer.atLook(2, terms(0.5, 2), batches, SEAL).verdict());
        assertEquals(
                "This is look 3 at a trial that was stated for two, and whoever looks on finds something by luck.",
                TrialAnswer.atLook(3, terms(0.5, 2), batches, SEAL).inShort().howSure());
    }

    @Test
    @Tag("says")
    void theFirstOfTwoLooksSendsOnToTheSecond() {
        TrialAnswer first = TrialAnswer.atLook(1, terms(0.5, 2), TrialTables.example(), SEAL);
        assertEquals(0.9412, first.interval().level(), 1e-9);
        assertEquals(
                "Roast the remaining sets as they were drawn, and look a second and last time.",
                ShortSentences.keptBy(first.inShort()).next());
        assertTrue(first.page().text().contains("two looks at 0.0294 each"), first.text());
        TrialAnswer second = TrialAnswer.atLook(2, terms(0.5, 2), TrialTables.example(), SEAL);
        assertTrue(
                second.inShort().next().startsWith("A new trial of about"),
                second.inShort().next());
    }

    @ParameterizedTest
    @CsvSource({
        "1, 0.0500, -0.1, 0.7, SEEN",
        "1, 0.0501, -0.1, 0.7, OPEN",
        "1, 0.0501, 0.01, 0.7, NOT_RARE_ENOUGH",
        "1, 0.0501, 0.00, 0.7, OPEN",
        "2, 0.0294, 0.1, 0.7, SEEN",
        "2, 0.0295, 0.1, 0.7, NOT_RARE_ENOUGH",
        "1, 0.2000, -0.4999, 0.4999, NONE_AS_LARGE",
        "1, 0.2000, -0.4999, 0.5, OPEN",
        "1, 0.2000, -0.5, 0.4999, OPEN",
        "1, 0.0500, -0.1, 0.4999, SEEN_BUT_SMALLER",
        "1, 0.0500, -0.1, 0.5, SEEN"
    })
    @Tag("says")
    void eachThresholdHasTwoSides(int looks, double chance, double lower, double upper, Why why) {
        assertEquals(why, TrialJudgement.why(terms(0.5, looks), 0.01, new Interval(lower, upper, 0.9), chance));
    }

    @Test
    @Tag("says")
    void aDesignThatCannotGiveTheChanceSaysSo() {
        Interval wide = new Interval(-1, 1, 0.9);
        assertEquals(Why.OPEN, TrialJudgement.why(terms(0.5, 1), 0.05, wide, 0.3));
        assertEquals(Why.TOO_FEW_SETS, TrialJudgement.why(terms(0.5, 1), 0.0501, wide, 0.3));
        assertEquals(Why.TOO_FEW_SETS, TrialJudgement.why(terms(0.5, 2), 0.03, wide, 0.3));
        assertEquals(Why.OPEN, TrialJudgement.why(terms(0.5, 2), 0.0294, wide, 0.3));
    }

    private static List<AssignedBatch> losing(List<AssignedBatch> batches, int... rows) {
        List<AssignedBatch> fewer = new ArrayList<>(batches);
        for (int row : rows) {
            fewer.set(row, lost(fewer.get(row)));
        }
        return fewer;
    }

    @Test
    @Tag("says")
    void aLostBatchIsCountedByTargetAndBounded() {
        TrialAnswer answer = answer(0.5, losing(sets(8, 0.25, 0.1), 2));
        assertEquals(23, answer.assigned().orElseThrow().batches().size());
        assertEquals(TrialVerdict.DID, answer.verdict());
        assertEquals(
                "1 place has no score (1 lost): 0 of 8 at 201.5 °C, 0 of 8 at 203.0 °C, 1 of 8 at 204.5 °C. Chance would make it this"
                        + " uneven in 100 of 100 trials (Fisher's exact test).",
                answer.missing().words());
        // Set 0 has 6 - 0.25 + 0.1 and 6 - 0.2 left: its mean is 5.825, and the lost batch lay 1.5 °C above the middle.
        List<AssignedBatch> filled = new ArrayList<>(sets(8, 0.25, 0.1));
        filled.set(2, scored(0, 3, 1, 4.825));
        double lower = answer(0.5, filled).interval().lower();
        filled.set(2, scored(0, 3, 1, 6.825));
        double upper = answer(0.5, filled).interval().upper();
        Interval bounds = answer.missing().bounds().orElseThrow().interval();
        assertEquals(lower, bounds.lower(), 1e-9);
        assertEquals(upper, bounds.upper(), 1e-9);
        assertTrue(
                bounds.lower() < answer.interval().lower()
                        && bounds.upper() > answer.interval().upper(),
                bounds.toString());
        assertTrue(
                answer.page()
                        .text()
                        .contains("With every missing score within 1.00 points of its set's mean: Anything from"),
                answer.text());
    }

    /** 3 of 15 are a fifth, 4 are more. */
    @Test
    @Tag("says")
    void aboveAFifthMissingTheBoundsAreTheAnswer() {
        List<AssignedBatch> all = sets(5, 0.25, 0.02);
        TrialAnswer fifth = answer(0.5, losing(all, 2, 5, 8));
        assertFalse(fifth.missing().rule());
        assertEquals(fifth.assigned().orElseThrow().interval(), fifth.interval());
        TrialAnswer more = answer(0.5, losing(all, 2, 5, 8, 11));
        assertTrue(more.missing().rule());
        assertEquals(more.missing().bounds().orElseThrow().interval(), more.interval());
        assertEquals(TrialVerdict.CANNOT_TELL, more.verdict());
        assertEquals(
                "Find out why so many batches have no score before a new trial is drawn.",
                ShortSentences.keptBy(more.inShort()).next());
        assertTrue(
                more.page()
                        .text()
                        .contains(" As 27 % of the scores are missing, more than 20 %, this is the answer above."),
                more.page().text());
        assertTrue(
                more.missing()
                        .words()
                        .endsWith("Chance would make it this uneven in 1 of 100 trials, so what was lost hangs together"
                                + " with the target (Fisher's exact test)."),
                more.missing().words());
    }

    @Test
    @Tag("says")
    void whereTheBoundsRuleAndBothAgreeItDidAllTheSame() {
        List<AssignedBatch> all = sets(12, 2, 0.02);
        TrialAnswer answer = answer(0.5, losing(all, 0, 4, 8, 9, 13, 17, 18, 22));
        assertTrue(answer.missing().rule());
        assertEquals(TrialVerdict.DID, answer.verdict());
        assertTrue(
                ShortSentences.keptBy(answer.inShort())
                        .howSure()
                        .endsWith(", whatever the missing batches would have scored."),
                answer.inShort().howSure());
    }

    /** A set of which nothing was charged was never opened, so its missing scores favour no answer. */
    @Test
    @Tag("says")
    void setsThatWereNeverBegunAreLeftOutAndCounted() {
        List<AssignedBatch> batches = new ArrayList<>(sets(8, 0.25, 0.1));
        for (int place = 1; place <= 3; place++) {
            batches.add(TrialTables.place(20, place, place - 2));
        }
        TrialAnswer answer = answer(0.5, batches);
        assertEquals(0, answer.missing().count());
        assertEquals(3, answer.missing().neverBegun());
        assertTrue(
                answer.page()
                        .text()
                        .contains("3 places lie in sets of which nothing was charged; no target of theirs was seen, so"
                                + " leaving them out favours no answer."),
                answer.text());
        batches.set(24, lost(batches.get(24)));
        assertEquals(3, answer(0.5, batches).missing().count());
    }

    @Test
    @Tag("says")
    void aMissedTargetStaysAsAssignedAndIsCounted() {
        List<AssignedBatch> batches = new ArrayList<>(sets(8, 0.25, 0.1));
        batches.set(
                0, batches.get(0).with(OptionalDouble.of(202.25), batches.get(0).scores()));
        batches.set(
                2, batches.get(2).with(OptionalDouble.of(203.74), batches.get(2).scores()));
        batches.set(
                3, batches.get(3).with(OptionalDouble.empty(), batches.get(3).scores()));
        TrialAnswer answer = answer(0.5, batches);
        assertEquals(answer(0.5, sets(8, 0.25, 0.1)).interval(), answer.interval());
        assertTrue(
                answer.page()
                        .text()
                        .contains(
                                "1 of 23 targets were missed by more than 0.75 °C, half a step between targets; they count"
                                        + " above as they were assigned. Of 1 batch the drop temperature could not be read."),
                answer.page().text());
        assertEquals(1, answer.achieved().orElseThrow().notRead());
    }

    @Test
    @Tag("says")
    void whoSawTargetsIsLeftOutInASecondAnswer() {
        List<AssignedBatch> batches = new ArrayList<>();
        for (AssignedBatch batch : sets(8, 0, 0.02)) {
            double hoped = batch.scores().get(0).points() + 0.9 * (batch.target() - 203) / 1.5;
            batches.add(batch.with(
                            batch.achieved(),
                            List.of(
                                    batch.scores().get(0),
                                    batch.scores().get(1),
                                    new AssignedBatch.GivenScore("Cy", hoped)))
                    .seenBy(Set.of("Cy", "Dan")));
        }
        TrialAnswer answer = answer(0.5, batches);
        assertEquals(TrialVerdict.DID, answer.verdict());
        assertEquals(Set.of("Cy"), answer.sawTargets());
        TrialAnswer second = answer.blindOnly().orElseThrow();
        assertEquals(TrialVerdict.NOTHING_LARGER, second.verdict());
        assertTrue(
                answer.page()
                        .text()
                        .contains(
                                "Had seen targets and cupped all the same: Cy. Without their scores the answer is: did"
                                        + " nothing larger than 0.50 points. From 201.5 °C to 204.5 °C the drop temperature did nothing larger than"
                                        + " 0.50 points to sweetness."),
                answer.page().text());
        assertTrue(second.blindOnly().isEmpty());
    }

    @Test
    @Tag("says")
    void whoCuppedWithoutBeingStatedIsNamed() {
        assertFalse(answer(0.5, sets(8, 0.25, 0.1)).page().text().contains("Cupped without having been named"));
        List<AssignedBatch> batches = new ArrayList<>(sets(8, 0.25, 0.1));
        List<AssignedBatch.GivenScore> scores = new ArrayList<>(batches.get(0).scores());
        scores.add(new AssignedBatch.GivenScore("Dan", 6));
        batches.set(0, batches.get(0).with(batches.get(0).achieved(), scores));
        String page = answer(0.5, batches).page().text();
        assertTrue(
                page.contains("Cupped without having been named beforehand: Dan. Their scores are in the answer."),
                page);
    }

    /** One cupper with fewer cups than another does not weigh less, and a batch's mean is of cuppers, not of cups. */
    @Test
    @Tag("holds-for-any")
    void aBatchMeanIsOverCuppersOfTheirMeansOverCups() {
        AssignedBatch batch = TrialTables.place(1, 1, 0)
                .with(
                        OptionalDouble.empty(),
                        List.of(
                                new AssignedBatch.GivenScore("Ana", 6),
                                new AssignedBatch.GivenScore("Ana", 7),
                                new AssignedBatch.GivenScore("Bo", 8)));
        assertEquals(7.25, batch.mean(), 1e-12);
        assertEquals(AssignedBatch.State.CUPPED, batch.state());
        assertEquals(
                AssignedBatch.State.NOT_CUPPED,
                batch.seenBy(Set.of("Ana", "Bo")).blindOnly().state());
    }

    /** Balanced tables: the mixed model's slope is that of the batch means, and its width lies close to theirs. */
    @Test
    @Tag("holds-for-any")
    void theMixedModelStandsBesideWithTheSameSlope() {
        TrialDraws.Cell cell = new TrialDraws.Cell();
        cell.sets = 8;
        cell.cuppers = 3;
        double wide = 0;
        double means = 0;
        for (int seed = 0; seed < 12; seed++) {
            AsAssigned found = AsAssigned.of(cell.draw(seed), 3, 0.9).orElseThrow();
            Estimate mixed = TrialMixedModel.slope(found).orElseThrow();
            assertEquals(found.slope().estimate(), mixed.estimate(), 1e-6);
            assertTrue(mixed.degreesOfFreedom() <= 15, mixed.toString());
            wide += mixed.interval(0.9).width() * 3;
            means += found.plainInterval().width();
        }
        assertEquals(1, wide / means, 0.05);
    }

    @Test
    @Tag("says")
    void standsBesideAnAnswerInTheSameWords() {
        TrialAnswer answer = answer(0.5, sets(8, 0.25, 0.1));
        assertEquals(answer.inShort(), answer.finished().inShort());
        assertEquals(
                "Trial quay: did. Planning 1.0 °C more in drop temperature, as drawn by chance before charge, changed sweetness by"
                        + " +0.17 points (90 % interval +0.11 to +0.22). Seal: " + SEAL + ".",
                answer.finished().toString());
        assertTrue(answer.page().text().contains("Seal of plan and draw: " + SEAL + "."));
    }

    @Test
    @Tag("says")
    void refusesTermsThatAreNoTrial() {
        assertEquals(
                "A trial is looked at once, or twice at 0.0294 each, but for trial quay 3 looks were stated.",
                assertThrows(IllegalArgumentException.class, () -> terms(0.5, 3))
                        .getMessage());
        assertEquals(
                "The smallest difference that matters must be a number of points above 0, but it is 0.0.",
                assertThrows(IllegalArgumentException.class, () -> terms(0, 1)).getMessage());
    }
}
