package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.logbook.CupScores;
import parchment.logbook.Logbook;
import parchment.logbook.LogbookContents;

/** Draws scores whose covariance is known and asks how far attributes move together. */
@Tag("holds-for-any")
class HaloTest {
    /** Scores in which cups differ by batch (shared share of acidity and sweetness: none) and each cupper likes a cup as a whole. */
    private static Logbook logbook(int cuppers, double liking, double inTheCup, long seed) {
        Random random = new Random(seed);
        List<CupScores> cups = new ArrayList<>();
        for (int cupping = 0; cupping < 40; cupping++) {
            for (int batch = 0; batch < 6; batch++) {
                double acidity = random.nextGaussian();
                double sweetness = inTheCup * acidity + Math.sqrt(1 - inTheCup * inTheCup) * random.nextGaussian();
                for (int cupper = 0; cupper < cuppers; cupper++) {
                    double whole = liking * random.nextGaussian();
                    double own = Math.sqrt(1 - liking * liking);
                    cups.add(new CupScores(
                            "C" + cupping,
                            LocalDate.of(2024, 3, 4),
                            "cupper " + cupper,
                            "B" + cupping + "-" + batch,
                            Optional.empty(),
                            Optional.empty(),
                            OptionalInt.empty(),
                            Map.of(
                                    "acidity",
                                    6 + acidity + whole + own * random.nextGaussian() + cupper,
                                    "sweetness",
                                    6 + sweetness + whole + own * random.nextGaussian() - cupper),
                            Optional.empty()));
                }
            }
        }
        KnownTruth none = new KnownTruth();
        none.cuppedShare = 0;
        Logbook empty = none.draw(1).logbook();
        LogbookContents c = empty.contents();
        return Logbook.of(c.toBuilder().cups(cups).build());
    }

    @Test
    void tellsTheCupperFromTheCup() {
        Halo halo = Halo.of(logbook(4, 0.8, -0.5, 1));
        assertEquals(0.64, halo.meanCorrelation(), 0.08);
        assertEquals(-0.5, halo.pairs().get(0).agreed(), 0.15);
        assertTrue(halo.interval().contains(halo.meanCorrelation()), halo.toString());
        assertEquals(Halo.Cuppers.SEVERAL, halo.cuppers());
        assertTrue(halo.countsAs() < 1.6, halo.text());
    }

    @Test
    void findsNoneWhereThereIsNone() {
        Halo halo = Halo.of(logbook(4, 0, 0.7, 2));
        assertEquals(0, halo.meanCorrelation(), 0.1);
        assertEquals(0.7, halo.pairs().get(0).agreed(), 0.12);
    }

    @Test
    void holdsTheTruthInNineOfTenLogbooks() {
        int held = 0;
        for (long seed = 100; seed < 200; seed++) {
            held += Halo.of(logbook(3, 0.7, 0, seed)).interval().contains(0.49) ? 1 : 0;
        }
        assertTrue(held >= 81 && held <= 98, held + " of 100");
    }

    @Test
    void oneCupperCannotBeToldFromTheCup() {
        Halo halo = Halo.of(logbook(1, 0.8, 0, 3));
        assertEquals(Halo.Cuppers.ONE, halo.cuppers());
        assertTrue(halo.text().contains("A second cupper"), halo.text());
        assertTrue(Double.isNaN(halo.pairs().get(0).agreed()));
    }

    @Test
    void oneAttributeIsAnsweredWithCannotTell() {
        Halo halo = Halo.of(new KnownTruth().draw(1).logbook());
        assertTrue(halo.text().contains("needs two attributes"), halo.text());
        assertTrue(halo.svg().isPresent());
    }
}
