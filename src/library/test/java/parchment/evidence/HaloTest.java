package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.CupScores;

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

    /** A short version of {@link HaloStudy}: 120 tables a cell, so 87 to 93 % give or take two errors of 2.7 points. */
    @Test
    void holdsTheTruthInNineOfTenTables() {
        for (int cuppings : new int[] {8, 20}) {
            for (double halo : new double[] {0, 0.5}) {
                HaloStudy.Cell cell = new HaloStudy.Cell();
                cell.cuppings = cuppings;
                cell.alone = halo;
                HaloStudy.Count count = HaloStudy.count(cell, 120, 50_000);
                assertEquals(120, count.known());
                assertTrue(count.held() >= 98 && count.held() <= 118, count + ", " + cuppings + ", " + halo);
            }
        }
    }

    @Test
    void underEightCuppingsItCannotTellHowSureItIs() {
        HaloStudy.Cell cell = new HaloStudy.Cell();
        cell.cuppings = 7;
        Halo seven = Halo.of(HaloStudy.logbook(HaloStudy.empty(), cell.draw(1)));
        assertTrue(Double.isNaN(seven.interval().lower()));
        assertTrue(
                seven.toString().contains("(how sure that is cannot be told: at least 8 cuppings are needed)"),
                seven.toString());
        cell.cuppings = 8;
        Halo eight = Halo.of(HaloStudy.logbook(HaloStudy.empty(), cell.draw(1)));
        assertTrue(eight.interval().lower() < eight.meanCorrelation());
        assertTrue(eight.interval().upper() > eight.meanCorrelation());
        assertTrue(eight.toString().contains("each cupping left out in turn"), eight.toString());
    }

    @Test
    void neitherTheNamesNorTheOrderOfRowsMatter() {
        HaloStudy.Cell cell = new HaloStudy.Cell();
        cell.cuppings = 9;
        cell.uneven = true;
        List<CupScores> cups = cell.draw(4);
        Halo before = Halo.of(HaloStudy.logbook(HaloStudy.empty(), cups));
        List<CupScores> renamed = new ArrayList<>();
        for (CupScores cup : cups) {
            renamed.add(HaloStudy.cup(
                    "renamed " + new StringBuilder(cup.cupping()).reverse()
                            + (char) ('z' - cup.cupping().charAt(1) + '0'),
                    "another " + (9 - Character.getNumericValue(cup.cupper().charAt(7))),
                    new StringBuilder(cup.batch()).reverse().toString(),
                    cup.scores()));
        }
        Collections.shuffle(renamed, new Random(3));
        Halo after = Halo.of(HaloStudy.logbook(HaloStudy.empty(), renamed));
        assertEquals(before.interval().lower(), after.interval().lower(), 1e-9);
        assertEquals(before.interval().upper(), after.interval().upper(), 1e-9);
        assertEquals(before.meanCorrelation(), after.meanCorrelation(), 1e-9);
    }

    @Test
    void whereOneCuppingCarriesAllItCannotTellHowSureItIs() {
        // Eight cuppings, but two cuppers met in one only; without it nothing tells the cup from the cupper.
        HaloStudy.Cell cell = new HaloStudy.Cell();
        cell.cuppers = 1;
        cell.cupSpread = 0;
        List<CupScores> cups = new ArrayList<>(cell.draw(2));
        for (CupScores cup : cell.draw(3)) {
            if (cup.cupping().equals("C0")) {
                cups.add(HaloStudy.cup("C0", "cupper 2", cup.batch(), cup.scores()));
            }
        }
        Halo halo = Halo.of(HaloStudy.logbook(HaloStudy.empty(), cups));
        assertEquals(Halo.Cuppers.SEVERAL, halo.cuppers());
        assertTrue(halo.toString().contains("without one of the cuppings it cannot be worked out"), halo.toString());
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
