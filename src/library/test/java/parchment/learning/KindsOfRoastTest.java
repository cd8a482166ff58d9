package parchment.learning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import parchment.curve.Curve;
import parchment.display.ShortSentences;
import parchment.learning.KindsOfRoast.Kind;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.CupScores;
import parchment.quantity.Elapsed;
import parchment.quantity.Unit;

class KindsOfRoastTest {
    private static KindsOfRoast two;

    /** A roast towards air of 260 °C; one that takes its heat slowly until 130 °C reaches yellowing late, and then goes as any other. */
    private static Batch roast(int number, double early, SplittableRandom random) {
        List<Double> seconds = new ArrayList<>();
        List<Double> celsius = new ArrayList<>();
        double bean = 75;
        double yellow = 0;
        double crack = 0;
        double late = 420 + 8 * random.nextGaussian();
        double first = early + 8 * random.nextGaussian();
        int t = 0;
        for (; bean < 210; t += 2) {
            bean += t < 40 ? 0 : 2 * (260 - bean) / (bean < 130 ? first : late);
            seconds.add((double) t);
            celsius.add(bean + 105 * Math.exp(-t / 14.0) + 0.1 * random.nextGaussian());
            yellow = yellow == 0 && bean >= 150 ? t : yellow;
            crack = crack == 0 && bean >= 196 ? t : crack;
        }
        return Batch.named("b" + number)
                .lot(number % 3 == 0 ? "A" : "B")
                .machine("drum")
                .roastedAt(OffsetDateTime.of(2025, 3, 1, 9, 0, 0, 0, ZoneOffset.UTC)
                        .plusDays(number / 4)
                        .plusMinutes(30L * (number % 4)))
                .curve(
                        Quantity.BEAN_TEMPERATURE,
                        Curve.of(
                                "bean temperature",
                                Unit.TEMPERATURE,
                                seconds.stream()
                                        .mapToDouble(Double::doubleValue)
                                        .toArray(),
                                celsius.stream()
                                        .mapToDouble(Double::doubleValue)
                                        .toArray()))
                .writtenMark(MarkKind.YELLOWING, Elapsed.seconds(yellow))
                .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(crack))
                .writtenMark(MarkKind.DROP, Elapsed.seconds(t))
                .build();
    }

    private static Logbook logbook(int size, double otherEarly) {
        SplittableRandom random = new SplittableRandom(3);
        List<Batch> batches = new ArrayList<>();
        List<CupScores> cups = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            boolean other = i % 5 < 2;
            batches.add(roast(i, other ? otherEarly : 420, random));
            for (String cupper : List.of("C1", "C2")) {
                double score = 6 + (other ? 1 : 0) + (cupper.equals("C1") ? 0.5 : 0) + 0.3 * random.nextGaussian();
                cups.add(new CupScores(
                        "cupping " + i / 8,
                        LocalDate.of(2025, 6, 1).plusDays(i / 8),
                        cupper,
                        "b" + i,
                        Optional.empty(),
                        Optional.empty(),
                        OptionalInt.empty(),
                        Map.of("sweetness", score),
                        Optional.empty()));
            }
        }
        return Logbook.of(LogbookContents.ofBatches("invented", batches).toBuilder()
                .cups(cups)
                .build());
    }

    @BeforeAll
    static void look() {
        two = KindsOfRoast.of(logbook(60, 560));
    }

    @Test
    void twoKindsAreToldApartAndNamedByWhatDiffers() {
        assertEquals(2, two.kinds().size(), two.text());
        Kind usual = two.kinds().get(0);
        Kind slow = two.kinds().get(1);
        assertEquals(36, usual.batches().size());
        assertEquals(24, slow.batches().size());
        for (String name : slow.batches()) {
            assertTrue(Integer.parseInt(name.substring(1)) % 5 < 2, name);
        }
        assertTrue(slow.name().contains("slower to yellowing"), slow.name());
        assertTrue(usual.name().contains("faster to yellowing"), usual.name());
        assertTrue(slow.stability() > 0.9 && usual.stability() > 0.9);
        assertEquals(List.of(), two.inNoKind());
    }

    /** One point was put on the batches of the slow kind. */
    @Test
    void theScoresOfAKindStandBesideThoseOfTheOthersWithTheirUncertainty() {
        Kind slow = two.kinds().get(1);
        assertEquals(24, slow.scored());
        assertEquals(1, slow.score().estimate(), 0.2);
        assertTrue(slow.score().interval(0.9).lower() > 0.6
                && slow.score().interval(0.9).upper() < 1.4);
        assertTrue(slow.score().standardError() > 0.02);
        assertEquals(-slow.score().estimate(), two.kinds().get(0).score().estimate(), 1e-9);
        assertTrue(two.text().contains("Nobody drew the kinds by chance"), two.text());
    }

    @Test
    void theAnswerIsThreeShortSentences() {
        ShortSentences.keptBy(two.inShort());
        assertTrue(
                two.inShort()
                        .found()
                        .matches(
                                "There are two kinds of roast: faster to yellowing \\(36\\), slower to yellowing \\(24\\)\\."
                                        + "|There are two kinds of roast: earlier drop \\(36\\), later drop \\(24\\)\\."),
                two.inShort().found());
        assertEquals(
                "When roast days are drawn anew, each kind comes again whole.",
                two.inShort().howSure());
        assertTrue(two.svg().orElseThrow().contains("<svg"));
    }

    @Test
    void batchesThatOnlyWanderAreOneKind() {
        KindsOfRoast one = KindsOfRoast.of(logbook(60, 420));
        assertEquals(List.of(), one.kinds(), one.text());
        ShortSentences.keptBy(one.inShort());
        assertEquals(
                "Cannot tell: the 60 batches may all be of one kind.",
                one.inShort().found());
        assertEquals(60, one.inNoKind().size());
    }

    /** The whole page: a refusal tells what is missing and what to do, nothing of draws that were not made. */
    @Test
    void aRefusalTellsWhatIsMissingAndNothingElse() {
        List<String> missing = List.of(
                "That takes 20 batches of 8 roast days on one machine; there are 0 of 0.",
                "That takes 20 batches of 8 roast days on one machine; there is 1 of 1.",
                "That takes 20 batches of 8 roast days on one machine; there are 2 of 1.");
        for (int size = 0; size < missing.size(); size++) {
            assertEquals(
                    List.of(
                            "Kinds of roast in invented",
                            "Whether there are kinds of roast cannot be told.",
                            missing.get(size),
                            "Ask again when more are roasted."),
                    KindsOfRoast.of(logbook(size, 560))
                            .text()
                            .lines()
                            .filter(line -> !line.isBlank())
                            .toList());
        }
        assertEquals(
                "1 batch of invented, too few to look for kinds",
                KindsOfRoast.of(logbook(1, 560)).toString());
    }

    @Test
    void nineteenBatchesAreTooFewAndTwentyAreNot() {
        KindsOfRoast few = KindsOfRoast.of(logbook(19, 560));
        ShortSentences.keptBy(few.inShort());
        assertEquals(
                "That takes 20 batches of 8 roast days on one machine; there are 19 of 5.",
                few.inShort().howSure());
        assertTrue(KindsOfRoast.of(logbook(32, 560)).enough());
        assertTrue(!KindsOfRoast.of(logbook(28, 560)).enough(), "seven roast days");
    }
}
