package parchment.learning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import parchment.display.ShortSentences;
import parchment.learning.Yardstick.Missed;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.contents.LogbookException;
import parchment.logbook.written.CupScores;

class YardstickTest {
    private static final List<String> NAMES = List.of("one", "two", "three", "four");

    /** Batches of a known truth: four a day, two lots whose levels differ, four features. */
    private static ScoredRows scored(int size, double noise, long seed, ToDoubleFunction<double[]> truth) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Batch> batches = new ArrayList<>();
        List<double[]> rows = new ArrayList<>();
        List<Double> levels = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            double[] row = new double[NAMES.size()];
            Arrays.setAll(row, k -> random.nextGaussian());
            rows.add(row);
            batches.add(Batch.named("b" + i)
                    .lot(i % 2 == 0 ? "A" : "B")
                    .roastedAt(OffsetDateTime.of(2025, 1, 1, 9, 0, 0, 0, ZoneOffset.UTC)
                            .plusDays(i / 4))
                    .build());
            levels.add(6 + i % 2 + truth.applyAsDouble(row) + noise * random.nextGaussian());
        }
        return new ScoredRows(new CentredRows(batches, NAMES, rows, 0, List.of()), levels, 0);
    }

    private static double corner(double[] row) {
        return row[0] > 0 && row[1] > 0 ? 1.5 : 0;
    }

    private static double smooth(double[] row) {
        return 0.6 * row[0] - 0.3 * row[2] * row[2];
    }

    @Test
    void aPairOfFeaturesThatOnlyCountTogetherIsFoundAndNamed() {
        Yardstick found = Yardstick.of("sweetness", scored(160, 0.3, 1, YardstickTest::corner));
        assertEquals(Missed.YES, found.missed());
        assertEquals(
                Set.of("one", "two"),
                Set.of(found.shares().get(0).feature(), found.shares().get(1).feature()));
        ShortSentences.keptBy(found.inShort());
        assertEquals(
                "Something in the roast goes with the sweetness in a way that lines and bends miss.",
                found.inShort().found());
        assertTrue(
                found.inShort()
                        .howSure()
                        .matches(
                                "With it, 40 roast days left out were missed by \\d\\.\\d\\d points, with lines and bends alone by"
                                        + " \\d\\.\\d\\d: likely \\d\\.\\d\\d to \\d\\.\\d\\d nearer\\."),
                found.inShort().howSure());
        assertTrue(
                found.inShort().next().matches("Look first at the (one|two): .*"),
                found.inShort().next());
    }

    /** Squared misses smaller by 0.19 leave 0.90 of 1.00 point, by 0.51 leave 0.70: the ends of a 90 % interval around 0.35. */
    @Test
    void whatIsMissedIsToldInPoints() {
        HeldOutDays days = new HeldOutDays(160, 40, 1.2, 1, 0.9, 0.8, 0.35, 0.16 / 1.645);
        ScoredRows rows = scored(4, 0.3, 1, YardstickTest::corner);
        assertEquals(
                "With it, 40 roast days left out were missed by 0.80 points, with lines and bends alone by 1.00: likely 0.10 to 0.30 nearer.",
                YardstickInShort.of(
                                "sweetness",
                                Missed.YES,
                                Optional.of(days),
                                Optional.empty(),
                                List.of(new Yardstick.Share("one", 0.5)),
                                rows)
                        .howSure());
    }

    @Test
    void whereLinesAndBendsAreTheTruthNothingIsMissed() {
        Yardstick found = Yardstick.of("sweetness", scored(320, 0.3, 2, YardstickTest::smooth));
        assertEquals(Missed.NO, found.missed(), found.text());
        assertEquals(List.of(), found.shares());
        ShortSentences.keptBy(found.inShort());
        assertEquals(
                "Nothing was found in the roast that lines and bends miss about the sweetness.",
                found.inShort().found());
    }

    @Test
    void whereAPlantedStepWouldNotBeFoundEitherItCannotBeTold() {
        Yardstick found = Yardstick.of("sweetness", scored(80, 1, 3, row -> 0));
        assertEquals(Missed.CANNOT_TELL, found.missed(), found.text());
        ShortSentences.keptBy(found.inShort());
        assertEquals(
                "Whether lines and bends miss something about the sweetness cannot be told.",
                found.inShort().found());
        assertTrue(
                found.inShort()
                        .howSure()
                        .matches(
                                "Nothing was found, but a hidden step of \\d\\.\\d points was found in (only [12]|none) of 3 trials\\."),
                found.inShort().howSure());
    }

    @Test
    void truthsOfLinesAndBendsAreSeldomCalledMissed() {
        int wrong = 0;
        for (int seed = 0; seed < 8; seed++) {
            ScoredRows rows = scored(100, 0.4, 10 + seed, YardstickTest::smooth);
            wrong += HeldOutDays.of(rows.rows(), rows.response(), rows.lots(), rows.days(), 1)
                                    .low()
                            > 0
                    ? 1
                    : 0;
        }
        assertTrue(wrong <= 1, wrong + " of 8");
    }

    @Test
    void fiftyNineBatchesAreTooFew() {
        Yardstick found = Yardstick.of("sweetness", scored(59, 0.3, 1, YardstickTest::corner));
        assertEquals(Missed.CANNOT_TELL, found.missed());
        assertTrue(Double.isNaN(found.gain()));
        ShortSentences.keptBy(found.inShort());
        assertEquals(
                "That takes 60 scored batches of 20 roast days; there are 59 of 15.",
                found.inShort().howSure());
    }

    private static Logbook logbook(int batches, List<CupScores> cups) {
        List<Batch> roasted = new ArrayList<>();
        for (int i = 0; i < batches; i++) {
            roasted.add(Batch.named("b" + i)
                    .roastedAt(OffsetDateTime.of(2025, 1, 1, 9, 0, 0, 0, ZoneOffset.UTC)
                            .plusDays(i / 3))
                    .build());
        }
        return Logbook.of(LogbookContents.ofBatches("invented", roasted).toBuilder()
                .cups(cups)
                .build());
    }

    private static List<CupScores> cups(int batches, ToDoubleFunction<Integer> score) {
        List<CupScores> cups = new ArrayList<>();
        for (int i = 0; i < batches; i++) {
            cups.add(new CupScores(
                    "cupping " + i / 8,
                    LocalDate.of(2025, 6, 1).plusDays(i / 8),
                    "C1",
                    "b" + i,
                    Optional.empty(),
                    Optional.empty(),
                    OptionalInt.empty(),
                    Map.of("sweetness", score.applyAsDouble(i)),
                    Optional.empty()));
        }
        return cups;
    }

    /** Asserts the whole page: a refusal tells what is missing and what to do, nothing else. */
    private static void refuses(Logbook logbook, String missing, String next) {
        Yardstick found = Yardstick.of("sweetness", logbook);
        assertEquals(Missed.CANNOT_TELL, found.missed());
        ShortSentences.keptBy(found.inShort());
        assertEquals(missing, found.inShort().howSure());
        assertEquals(next, found.inShort().next());
        assertEquals(
                List.of(
                        "Do lines and bends miss something about the sweetness?",
                        "Whether lines and bends miss something about the sweetness cannot be told.",
                        missing,
                        next),
                found.text()
                        .replaceAll("(?m)^[=\\-]+$", "")
                        .lines()
                        .filter(line -> !line.isBlank())
                        .toList());
    }

    @Test
    void aLogbookWithoutScoresIsAnsweredWithWhatToWrite() {
        refuses(
                logbook(3, List.of()),
                "No batch is scored.",
                "Write scores into cuppings.csv, one row per cup and cupper, and ask again.");
        refuses(
                logbook(0, List.of()),
                "No batch is scored.",
                "Write scores into cuppings.csv, one row per cup and cupper, and ask again.");
    }

    @Test
    void oneScoredBatchIsCountedAsOne() {
        refuses(
                logbook(3, cups(1, i -> 6)),
                "That takes 60 scored batches of 20 roast days; there is 1 of 1.",
                "Ask again when more are scored.");
    }

    @Test
    void sixtyBatchesOfOneScoreAreToldForWhatTheyAre() {
        refuses(
                logbook(60, cups(60, i -> 6)),
                "All 60 scored batches have the same score.",
                "Ask about a score that differs from batch to batch.");
    }

    @Test
    void anotherAttributeThanThoseScoredIsASlip() {
        LogbookException slip =
                assertThrows(LogbookException.class, () -> Yardstick.of("body", logbook(3, cups(1, i -> 6))));
        assertEquals("The logbook has no attribute 'body'. Attributes: sweetness.", slip.getMessage());
    }

    @Test
    void sameScoresAndSeedGiveTheSameAnswer() {
        ScoredRows rows = scored(100, 0.4, 5, YardstickTest::corner);
        assertEquals(
                HeldOutDays.of(rows.rows(), rows.response(), rows.lots(), rows.days(), 1),
                HeldOutDays.of(rows.rows(), rows.response(), rows.lots(), rows.days(), 1));
    }
}
