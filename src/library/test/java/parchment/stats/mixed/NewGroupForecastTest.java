package parchment.stats.mixed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import parchment.stats.resample.GroupedConformal;

class NewGroupForecastTest {
    private static final double[] Y = {1, 2, 3, 5, 9, 11, 4, 6, 8};
    private static final List<String> LOTS = List.of("a", "a", "a", "b", "b", "b", "c", "c", "c");
    private static final List<String> DAYS = List.of("1", "2", "3", "4", "5", "6", "7", "8", "9");

    private static double[][] ones(int n) {
        double[][] fixed = new double[n][];
        java.util.Arrays.setAll(fixed, i -> new double[] {1});
        return fixed;
    }

    /** Searle, Casella and McCulloch 1992, Variance Components, section 3.4 (formula from memory): balanced one-way classification. */
    @Test
    void agreesWithTheBalancedOneWayFormula() {
        double lot = 3;
        double rest = 2;
        NewGroupForecast forecast = NewGroupForecast.of(Y, ones(9), List.of(LOTS), DAYS, new double[] {lot}, 0, rest);
        double shrink = 3 * lot / (3 * lot + rest);
        double mean = 49 / 9.0;
        double ofMean = (3 * lot + rest) / 9;
        NewGroupForecast.Forecast b = forecast.at(new double[] {1}, List.of("b"));
        assertEquals(mean + shrink * (25 / 3.0 - mean), b.value(), 1e-12);
        double variance = rest + lot * (1 - shrink) + (1 - shrink) * (1 - shrink) * ofMean;
        assertEquals(Math.sqrt(variance), b.standardDeviation(), 1e-12);
        NewGroupForecast.Forecast unseen = forecast.at(new double[] {1}, List.of("d"));
        assertEquals(mean, unseen.value(), 1e-12);
        assertEquals(Math.sqrt(rest + lot + ofMean), unseen.standardDeviation(), 1e-12);
    }

    @Test
    void leavingAGroupOutIsTheModelOfTheOthers() {
        List<String> days = List.of("1", "1", "2", "2", "3", "3", "4", "4", "4");
        NewGroupForecast all = NewGroupForecast.of(Y, ones(9), List.of(LOTS), days, new double[] {3}, 1.5, 2);
        NewGroupForecast others = NewGroupForecast.of(
                java.util.Arrays.copyOf(Y, 6),
                ones(6),
                List.of(LOTS.subList(0, 6)),
                days.subList(0, 6),
                new double[] {3},
                1.5,
                2);
        NewGroupForecast.Forecast left = all.without("4").at(new double[] {1}, List.of("a"));
        NewGroupForecast.Forecast anew = others.at(new double[] {1}, List.of("a"));
        assertEquals(anew.value(), left.value(), 1e-10);
        // The lot that is left without rows keeps its variance out of a forecast for another.
        assertEquals(anew.standardDeviation(), left.standardDeviation(), 1e-10);
    }

    /** With groups of one score it is split conformal prediction: the ceil(level (n + 1))-th smallest (Lei et al. 2018, J. Am. Stat. Assoc. 113:1094). */
    @Test
    void isSplitConformalWhereEveryGroupHasOneScore() {
        double[] scores = new double[19];
        List<String> groups = new ArrayList<>();
        for (int i = 0; i < 19; i++) {
            scores[i] = i + 1;
            groups.add("g" + i);
        }
        assertEquals(18, GroupedConformal.of(scores, groups).factor(0.9));
        assertEquals(10, GroupedConformal.of(scores, groups).factor(0.5));
        assertEquals(17, GroupedConformal.of(scores, groups).without("g18").factor(0.85));
        assertTrue(Double.isInfinite(GroupedConformal.of(new double[] {1, 2, 3}, List.of("a", "b", "c"))
                .factor(0.9)));
    }

    @Test
    void holdsNewGroupsAsOftenAsItSays() {
        int held = 0;
        int asked = 400;
        Random random = new Random(5);
        for (int run = 0; run < asked; run++) {
            double[] scores = new double[100];
            List<String> groups = new ArrayList<>();
            for (int i = 0; i < 100; i++) {
                groups.add("g" + i / 4);
            }
            double shared = 0;
            for (int i = 0; i < 100; i++) {
                shared = i % 4 == 0 ? random.nextGaussian() : shared;
                scores[i] = Math.abs(shared + random.nextGaussian());
            }
            double next = Math.abs(random.nextGaussian() + random.nextGaussian());
            held += next <= GroupedConformal.of(scores, groups).factor(0.9) ? 1 : 0;
        }
        // At least 90 %, and with 25 groups at most about 94 % (one part in 26 more); two Monte-Carlo errors are 3
        // points.
        assertTrue(held >= 0.87 * asked && held <= 0.97 * asked, "held " + held + " of " + asked);
    }
}
