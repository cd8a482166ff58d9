package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.drift.found.YearPart;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.contents.LogbookException;
import parchment.quantity.Elapsed;
import parchment.stats.Estimate;

class LotYearTest {
    private static final Logbook HARBOUR = Logbook.open(Path.of("..", "datasets", "harbour"));

    /** Ten batches that all have a drop; a yellowing and a first crack are written for some. */
    @ParameterizedTest
    @CsvSource({"5,10,browning time", "4,10,development time", "0,5,development time", "0,4,drop time", "0,0,drop time"
    })
    void followsATimeThatHalfOfTheBatchesHave(int yellowings, int cracks, String feature) {
        List<Batch> batches = IntStream.range(0, 10)
                .mapToObj(i -> {
                    Batch.Builder batch = Batch.named("B" + i)
                            .lot("one")
                            .roastedAt(LocalDate.of(2025, 1, 1 + i).atTime(9, 0).atOffset(ZoneOffset.UTC))
                            .writtenMark(MarkKind.CHARGE, Elapsed.seconds(0))
                            .writtenMark(MarkKind.DROP, Elapsed.seconds(600));
                    if (i < yellowings) {
                        batch.writtenMark(MarkKind.YELLOWING, Elapsed.seconds(300));
                    }
                    if (i < cracks) {
                        batch.writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(500));
                    }
                    return batch.build();
                })
                .toList();
        assertEquals(
                feature,
                LotYear.timeToFollow(Logbook.of(LogbookContents.ofBatches("built", batches)))
                        .name());
        assertEquals("browning time", LotYear.timeToFollow(HARBOUR).name());
    }

    @Test
    void givesTheSumWhereAgeingAndDriftCannotBeToldApart() {
        KnownYear truth = new KnownYear();
        LotYear year =
                LotYear.of(KnownYear.LOT, Features.massLoss(), truth.draw(1).logbook());
        YearPart ageing = year.ageing().orElseThrow();
        assertEquals(YearPart.Verdict.SUM_ONLY, ageing.verdict());
        assertTrue(ageing.words().contains("date is arrival plus age"), ageing.words());
        assertTrue(year.assuming(LotYear.Assumption.MACHINE_DID_NOT_DRIFT)
                .ageing()
                .orElseThrow()
                .words()
                .contains("stated assumption"));
    }

    @Test
    void theFirstSentencesSayHowMuchAndWhose() {
        KnownYear truth = new KnownYear();
        // The first seed whose interval leaves out zero.
        long clear = 2;
        LotYear year =
                LotYear.of(KnownYear.LOT, Features.massLoss(), truth.draw(clear).logbook());
        InShort words = ShortSentences.keptBy(year.inShort());
        assertEquals(
                new InShort(
                        "In 100 days the mass loss of " + KnownYear.LOT + " changed by "
                                + year.ageing().orElseThrow().shown() + ".",
                        "That is ageing, machine, season and room together, which these batches cannot part.",
                        "Roast a coffee that does not age now and then: it shows what the machine does."),
                words);
        assertEquals(
                new InShort(
                        "In 100 days the mass loss of " + KnownYear.LOT + " changed by "
                                + year.ageing().orElseThrow().shown() + ".",
                        "That is the lot's own ageing, as far as what was stated holds.",
                        "Roast it now and then as long as it lasts."),
                ShortSentences.keptBy(
                        year.assuming(LotYear.Assumption.MACHINE_DID_NOT_DRIFT).inShort()));
        InShort open = ShortSentences.keptBy(
                LotYear.of("Cinder Ridge", Features.dropTime(), HARBOUR).inShort());
        assertEquals("Whether the drop time of Cinder Ridge changed through its months cannot be told.", open.found());
        assertEquals("Anything from -15.0 s to 23.6 s in 100 days agrees with the batches.", open.howSure());
    }

    /** The model counts the batches of all lots of the machine, so the sentence says so. */
    @Test
    void tooFewBatchesAreCountedOverAllLots() {
        Logbook few = BuiltBatch.logbook(
                List.of(BuiltBatch.losing(0.15), BuiltBatch.losing(0.16).withLot("two"), BuiltBatch.losing(0.15)));
        InShort words = ShortSentences.keptBy(
                LotYear.of("one", Features.massLoss(), few).inShort());
        assertEquals("How the mass loss of one moved through its months cannot be told.", words.found());
        assertTrue(
                words.howSure()
                        .matches(
                                "\\d batche?s? of all lots on its machine ha(s|ve) it with a date and what the roaster did; 24 are"
                                        + " needed\\."),
                words.howSure());
    }

    @Test
    void tellsAgeingWithAReferenceCoffee() {
        YearStudy.Counts counts = YearStudy.run(YearStudy.wandering(0), YearStudy.Anchor.REFERENCE, 30, 5);
        assertEquals(30, counts.told());
        assertTrue(counts.held() >= 22, counts.toString());
        assertTrue(counts.clear() >= 20, counts.toString());
        assertTrue(counts.seasonTold() == 30 && counts.seasonHeld() >= 22, counts.toString());
    }

    private static YearPart part(LotYear year, String name) {
        return year.parts().stream()
                .filter(p -> p.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void tellsOnlyTheSumOfWhatSwungWithinFourteenMonths() {
        LotYear year = LotYear.of("Cinder Ridge", Features.browningTime(), HARBOUR);
        assertEquals(YearPart.Verdict.SUM_ONLY, year.ageing().orElseThrow().verdict());
        YearPart swing = part(year, "mid-January against mid-July");
        assertEquals(YearPart.Verdict.SUM_ONLY, swing.verdict());
        assertTrue(
                swing.words()
                        .startsWith(
                                "This is the sum of the time of year, the room, ageing and drift of the machine: the logbook"
                                        + " holds 14 months of roasting, and 24 in nearly every month of the year would tell them apart."),
                swing.words());
        assertTrue(
                year.parts().stream().noneMatch(p -> p.name().startsWith("room")),
                year.parts().toString());
        KnownYear half = new KnownYear();
        half.months = 9;
        half.lots = 3;
        half.life = 7;
        YearPart none =
                part(LotYear.of(KnownYear.LOT, Features.massLoss(), half.draw(2).logbook()), "time of year");
        assertEquals(YearPart.Verdict.CANNOT_TELL, none.verdict());
        assertTrue(none.words().contains("24 months"), none.words());
    }

    @Test
    void aSwingOfTheYearIsNotHiddenByASlopeNearZero() {
        KnownYear truth = YearStudy.oneYear(0.03, 0);
        truth.ageing = 0;
        truth.ageingSpread = 0;
        truth.life = 14;
        truth.lots = 3;
        LotYear year =
                LotYear.of(KnownYear.LOT, Features.massLoss(), truth.draw(3).logbook());
        YearPart swing = part(year, "mid-January against mid-July");
        assertTrue(swing.estimate().interval(0.99).contains(0.03), swing.toString());
        assertTrue(
                year.toString()
                        .endsWith(" Within the year it swung: mid-January against mid-July " + swing.shown()
                                + ", a sum too."),
                year.toString());
    }

    @Test
    void roomAndTimeOfYearAreToldTogetherWhereTheyMovedTogether() {
        KnownYear truth = new KnownYear();
        truth.roomSwing = 25;
        LotYear year =
                LotYear.of(KnownYear.LOT, Features.massLoss(), truth.draw(4).logbook());
        YearPart swing = part(year, "mid-January against mid-July");
        assertEquals(YearPart.Verdict.SUM_ONLY, swing.verdict());
        assertEquals(
                "This is the sum of the time of year and the room's temperature and humidity, which moved together in this logbook.",
                swing.words());
        assertTrue(swing.estimate().interval(0.99).contains(0.008), swing.toString());
        truth.roomSwing = 1;
        assertEquals(
                YearPart.Verdict.TOLD,
                part(
                                LotYear.of(
                                        KnownYear.LOT,
                                        Features.massLoss(),
                                        truth.draw(4).logbook()),
                                "mid-January against mid-July")
                        .verdict());
    }

    /** Short version of the rows of 14 months in docs/measurements/drift.md. */
    @Test
    void seesAnAgeingOfHalfAPointInAYearOfRoasting() {
        YearStudy.Counts counts = YearStudy.run(YearStudy.oneYear(0, 0), YearStudy.Anchor.NONE, 16, 50);
        assertEquals(16, counts.numbers());
        assertTrue(counts.clear() >= 12 && counts.held() >= 12, counts.toString());
        assertEquals(0, counts.told());
    }

    @Test
    void numbersThatRoundToNothingHaveNoSign() {
        LotYear year = LotYear.of("Cinder Ridge", Features.massLoss(), HARBOUR);
        assertEquals(
                "0.00 percentage points (-1.65 to 1.64)",
                year.shown(new Estimate("x", -0.00001, 0.01, Double.POSITIVE_INFINITY)));
        assertEquals(
                "+0.10 percentage points (0.00 to 0.20)",
                year.shown(new Estimate("x", 0.001, 0.00061, Double.POSITIVE_INFINITY)));
        // Digits follow the interval: at two decimals all three numbers would read 0.01.
        assertEquals(
                "+0.0120 percentage points (0.0104 to 0.0136)",
                year.shown(new Estimate("x", 0.00012, 0.00001, Double.POSITIVE_INFINITY)));
    }

    @Test
    void namesHarvestArrivalAndMeasuredMoisture() {
        String words = String.join(
                " ",
                LotYear.of("Cinder Ridge", Features.browningTime(), HARBOUR).ageWords());
        assertTrue(words.contains("Harvested on 2023-05-20"), words);
        assertTrue(words.contains("Its moisture was measured 7 times"), words);
    }

    @Test
    void followsScoresAndNamesTheCuppersAmongTheReasons() {
        YearPart part = LotYear.of("Cinder Ridge", "acidity", HARBOUR).ageing().orElseThrow();
        assertTrue(part.words().contains("drift of all cuppers"), part.words());
    }

    @Test
    void suggestsTheLotThatWasMeant() {
        LogbookException error =
                assertThrows(LogbookException.class, () -> LotYear.of("Cinder Rige", Features.browningTime(), HARBOUR));
        assertTrue(error.getMessage().contains("Did you mean"), error.getMessage());
        error = assertThrows(LogbookException.class, () -> LotYear.of("Cinder Ridge", "acidty", HARBOUR));
        assertTrue(error.getMessage().contains("Did you mean 'acidity'?"), error.getMessage());
    }

    @Test
    void cannotTellFromAFewBatches() {
        Logbook hillside = Logbook.open(Path.of("..", "datasets", "hillside"));
        LotYear year = LotYear.of("Moth Field", Features.browningTime(), hillside);
        assertTrue(year.parts().isEmpty());
        assertTrue(
                year.toString().startsWith("Cannot tell how browning time of Moth Field moved: 7 batches"),
                year.toString());
    }

    /** What goes on for as long as the beans are in the drum is compared at like drop and like time; what the drop alone settles at like drop. */
    @Test
    void massLossIsComparedAtLikeDropAndLikeTimeDevelopmentAtLikeDropAndBrowningAtNeither() {
        Logbook harbour = Logbook.open(Path.of("..", "datasets", "harbour"));
        List<String> drops = List.of("drop temperature", "drop time");
        assertEquals(drops, kept(LotYear.of("Low Orchard", Features.massLoss(), harbour), drops));
        assertEquals(
                List.of("drop temperature"),
                kept(LotYear.of("Low Orchard", Features.developmentTime(), harbour), drops));
        assertEquals(List.of(), kept(LotYear.of("Low Orchard", Features.browningTime(), harbour), drops));
        assertEquals(List.of("drop temperature"), kept(LotYear.of("Low Orchard", Features.dropTime(), harbour), drops));
    }

    private static List<String> kept(LotYear year, List<String> of) {
        return year.roaster().stream().filter(of::contains).toList();
    }
}
