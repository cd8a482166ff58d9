package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.logbook.LogbookException;

class LotYearTest {
    private static final Logbook HARBOUR = Logbook.open(Path.of("..", "datasets", "harbour"));

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
    void tellsAgeingWithAReferenceCoffee() {
        YearStudy.Counts counts = YearStudy.run(YearStudy.wandering(0), YearStudy.Anchor.REFERENCE, 30, 5);
        assertEquals(30, counts.told());
        assertTrue(counts.held() >= 22, counts.toString());
        assertTrue(counts.clear() >= 20, counts.toString());
        assertTrue(counts.seasonTold() == 30 && counts.seasonHeld() >= 22, counts.toString());
    }

    @Test
    void fitsNoSeasonOnFourteenMonths() {
        LotYear year = LotYear.of("Cinder Ridge", Features.browningTime(), HARBOUR);
        assertEquals(YearPart.Verdict.SUM_ONLY, year.ageing().orElseThrow().verdict());
        YearPart season = year.parts().stream()
                .filter(p -> p.name().equals("time of year"))
                .findFirst()
                .orElseThrow();
        assertEquals(YearPart.Verdict.CANNOT_TELL, season.verdict());
        assertTrue(season.words().contains("24 months"), season.words());
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
}
