package parchment.stats.resample;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.stats.Estimate;
import parchment.stats.Fieller;
import parchment.stats.Interval;
import parchment.stats.ReferenceData;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.Quantiles;
import parchment.stats.mixed.SlopeInsideSets;

class SetShuffleTest {
    private final JsonObject whole = ReferenceData.expected("coin-flip", "coin_flip_example");
    private final JsonObject weak = ReferenceData.expected("coin-flip", "coin_flip_weak");
    private final JsonObject expected = whole.getAsJsonObject("expected");

    private static double[] column(JsonObject check, String name) {
        return ReferenceData.numbers(check.getAsJsonObject("inputs").get(name));
    }

    private static List<String> sets(JsonObject check) {
        return Arrays.stream(column(check, "set"))
                .mapToObj(set -> "set " + (int) set)
                .toList();
    }

    private double number(String name) {
        return expected.get(name).getAsDouble();
    }

    private static void assertEnds(double[] ends, double lower, double upper, double tolerance) {
        assertArrayEquals(ends, new double[] {lower, upper}, tolerance);
    }

    @Test
    @Tag("agrees-with")
    void agreesWithTheClosedFormsOfTheExample() {
        SlopeInsideSets slope = SlopeInsideSets.on(sets(whole), column(whole, "target"));
        Estimate assigned = slope.slope("score", column(whole, "score"));
        assertEquals(number("itt"), assigned.estimate(), 1e-9);
        assertEquals(number("itt_se"), assigned.standardError(), 1e-9);
        assertEquals(number("df"), assigned.degreesOfFreedom());
        Interval interval = assigned.interval(0.9);
        assertEnds(ReferenceData.numbers(expected.get("itt90")), interval.lower(), interval.upper(), 1e-9);
        Estimate first = slope.slope("achieved", column(whole, "achieved"));
        assertEquals(number("first_stage"), first.estimate(), 1e-9);
        assertEquals(number("first_stage_se"), first.standardError(), 1e-9);
        assertEquals(number("first_F"), first.t() * first.t(), 1e-9);
    }

    @Test
    @Tag("agrees-with")
    void agreesWithTheAndersonRubinSetOfTheExample() {
        SlopeInsideSets slope = SlopeInsideSets.on(sets(whole), column(whole, "target"));
        Fieller set = slope.ratio(column(whole, "score"), column(whole, "achieved"), 0.9);
        assertEquals(number("iv"), set.ratio(), 1e-9);
        assertEnds(ReferenceData.numbers(expected.get("AR90")), set.lower(), set.upper(), 1e-9);
        assertEnds(ReferenceData.numbers(expected.get("fieller90")), set.lower(), set.upper(), 1e-9);
    }

    @Test
    @Tag("agrees-with")
    void agreesWithAllAssignmentsOfTheExample() {
        SetShuffle shuffle = SetShuffle.of(sets(whole), column(whole, "target"), 1);
        assertEquals(number("assignments"), shuffle.assignments());
        assertTrue(shuffle.isComplete());
        ShuffledSlope slope = shuffle.slope(column(whole, "score"));
        assertEquals(number("itt"), slope.estimate(), 1e-9);
        assertEquals(number("exact_two_sided"), slope.probability(), 1e-12);
        assertEquals(number("exact_one_sided"), slope.upperProbability(), 1e-12);
        Interval interval = slope.interval(0.9);
        assertEnds(
                ReferenceData.numbers(expected.get("itt90_randomisation")), interval.lower(), interval.upper(), 1e-9);
        ShuffledRatio twin = shuffle.ratio(column(whole, "score"), column(whole, "achieved"), 0.9);
        assertEquals(1, twin.parts().size());
        assertEnds(
                ReferenceData.numbers(expected.get("AR90_randomisation")),
                twin.parts().get(0).lower(),
                twin.parts().get(0).upper(),
                1e-3);
    }

    @Test
    @Tag("agrees-with")
    void agreesThatWeakTargetsLeaveTheWholeLine() {
        SlopeInsideSets slope = SlopeInsideSets.on(sets(weak), column(weak, "target"));
        Fieller set = slope.ratio(column(weak, "score"), column(weak, "achieved"), 0.9);
        assertEquals(Fieller.Form.EVERYTHING, set.form());
        // The quadratic that decides the form, in sums of squares.
        double[] both = new double[15];
        Arrays.setAll(both, i -> column(weak, "score")[i] + column(weak, "achieved")[i]);
        double scores = slope.residualVariance(column(weak, "score"));
        double achieved = slope.residualVariance(column(weak, "achieved"));
        double shared = (slope.residualVariance(both) - scores - achieved) / 2;
        double b = slope.slope("score", column(weak, "score")).estimate();
        double first = slope.slope("achieved", column(weak, "achieved")).estimate();
        double t2 = Math.pow(Quantiles.tTwoSided(0.9, 9), 2) / slope.squares();
        double scale = slope.squares() * 9;
        double a = first * first - t2 * achieved;
        double middle = b * first - t2 * shared;
        assertEquals(weak.getAsJsonObject("expected").get("A").getAsDouble(), a * scale, 1e-9);
        assertEquals(
                weak.getAsJsonObject("expected").get("discriminant").getAsDouble(),
                4 * (middle * middle - a * (b * b - t2 * scores)) * scale * scale,
                1e-8);
        ShuffledRatio twin = SetShuffle.of(sets(weak), column(weak, "target"), 1)
                .ratio(column(weak, "score"), column(weak, "achieved"), 0.9);
        assertEquals("anything (90 %)", twin.toString());
        assertFalse(twin.isBounded());
    }

    /** Quarter points of a tiny trial can lie on the line exactly; rounding must not refuse that. */
    @Test
    @Tag("holds-for-any")
    void aLineThatLeavesNothingStillHasItsSet() {
        List<String> sets = List.of("a", "a", "b", "b", "c", "c");
        double[] targets = {-1.5, 1.5, 1.5, -1.5, -1.5, 1.5};
        double[] scores = {6, 6.75, 7.1, 6.35, 5.3, 6.05};
        double[] achieved = {201.3, 204.6, 204.2, 201.9, 201.1, 204.4};
        Fieller set = SlopeInsideSets.on(sets, targets).ratio(scores, achieved, 0.9);
        assertEquals(Fieller.Form.BETWEEN, set.form());
        assertTrue(set.contains(0.25 / (2.9 / 3)), set.toString());
    }

    /** The interval's ends, found without a grid, against the count of shuffles at single slopes. */
    @Test
    @Tag("holds-for-any")
    void theIntervalHoldsJustTheSlopesThatNoSideSpeaksAgainst() {
        Random random = new Random(5);
        for (int run = 0; run < 20; run++) {
            List<String> sets = new ArrayList<>();
            double[] targets = new double[12];
            double[] scores = new double[12];
            double[] achieved = new double[12];
            for (int i = 0; i < 12; i++) {
                sets.add("set " + i / 4);
                targets[i] = i % 4 == 3 ? (run % 2 == 0 ? 1 : -1) : i % 4 - 1;
                scores[i] = random.nextGaussian();
                achieved[i] = (run % 3) * targets[i] + random.nextGaussian();
            }
            SetShuffle shuffle = SetShuffle.of(sets, targets, 1);
            assertEquals(12 * 12 * 12, shuffle.assignments());
            Interval interval = shuffle.slope(scores).interval(0.9);
            ShuffledRatio ratio = shuffle.ratio(scores, achieved, 0.9);
            for (double slope = -3; slope <= 3; slope += 0.0625) {
                assertEquals(kept(shuffle, scores, targets, slope), interval.contains(slope), "slope " + slope);
                assertEquals(kept(shuffle, scores, achieved, slope), ratio.contains(slope), "slope " + slope + ratio);
            }
        }
    }

    private static boolean kept(SetShuffle shuffle, double[] scores, double[] by, double slope) {
        double[] left = new double[scores.length];
        Arrays.setAll(left, i -> scores[i] - slope * by[i]);
        ShuffledSlope of = shuffle.slope(left);
        return of.upperProbability() > 0.05 && of.lowerProbability() > 0.05;
    }

    /** Two sets of three and five of two cannot give 0.05, three and six can; a fourth batch at one end breaks the mirror. */
    @ParameterizedTest
    @CsvSource({
        "2, 3, 36, 0.05555556",
        "3, 3, 216, 0.00925926",
        "5, 2, 32, 0.0625",
        "6, 2, 64, 0.03125",
        "2, 4, 144, 0.00694444"
    })
    @Tag("says")
    void saysTheSmallestChanceThatADesignCanGive(int count, int size, double assignments, double least) {
        double[] levels = size == 2 ? new double[] {-1, 1} : new double[] {-1, 0, 1, 1};
        List<String> sets = new ArrayList<>();
        double[] targets = new double[count * size];
        double[] best = new double[count * size];
        for (int i = 0; i < targets.length; i++) {
            sets.add("set " + i / size);
            targets[i] = levels[i % size];
            best[i] = 3 * targets[i];
        }
        SetShuffle shuffle = SetShuffle.of(sets, targets, 1);
        assertEquals(assignments, shuffle.assignments());
        assertEquals(least, shuffle.smallestProbability(), 1e-8);
        assertEquals(least, shuffle.slope(best).probability(), 1e-8);
    }

    @Test
    @Tag("holds-for-any")
    void drawnShufflesAgreeWithAllOfThem() {
        Random random = new Random(3);
        // 6^6 ways are gone through, 6^7 are drawn; the seventh set says nothing of its own.
        for (int run = 0; run < 3; run++) {
            List<String> sets = new ArrayList<>();
            double[] targets = new double[21];
            double[] scores = new double[21];
            for (int i = 0; i < 21; i++) {
                sets.add("set " + i / 3);
                targets[i] = i < 18 ? i % 3 - 1 : 1e-7 * (i % 3 - 1);
                scores[i] = i < 18 ? random.nextGaussian() + 0.4 * targets[i] : 0;
            }
            ShuffledSlope all = SetShuffle.of(sets.subList(0, 18), Arrays.copyOf(targets, 18), 1)
                    .slope(Arrays.copyOf(scores, 18));
            ShuffledSlope drawn = SetShuffle.of(sets, targets, 1).slope(scores);
            assertTrue(all.shuffle().isComplete());
            assertFalse(drawn.shuffle().isComplete());
            assertEquals(10_000, drawn.shuffle().counted());
            assertEquals(all.estimate(), drawn.estimate(), 1e-6);
            assertEquals(all.probability(), drawn.probability(), 0.02);
            assertEquals(all.interval(0.9).lower(), drawn.interval(0.9).lower(), 0.03);
            assertEquals(all.interval(0.9).upper(), drawn.interval(0.9).upper(), 0.03);
            assertEquals(
                    drawn.probability(),
                    SetShuffle.of(sets, targets, 1).slope(scores).probability());
        }
    }

    @Test
    @Tag("holds-for-any")
    void aSetOfManyDifferentValuesIsShuffledToo() {
        List<String> sets = new ArrayList<>();
        double[] targets = new double[24];
        double[] scores = new double[24];
        Random random = new Random(9);
        for (int i = 0; i < 24; i++) {
            sets.add("set " + i / 12);
            targets[i] = i % 12;
            scores[i] = 0.5 * targets[i] + random.nextGaussian();
        }
        ShuffledSlope slope = SetShuffle.of(sets, targets, 1).slope(scores);
        assertEquals(1e-4, slope.probability(), 1e-12);
        assertTrue(slope.interval(0.9).contains(0.5), slope.interval(0.9).toString());
        assertTrue(slope.interval(0.9).width() < 0.3, slope.interval(0.9).toString());
    }

    @Test
    @Tag("holds-for-any")
    void aSlopeOfNothingIsNoFinding() {
        ShuffledSlope flat = SetShuffle.of(List.of("a", "a", "b", "b"), new double[] {-1, 1, -1, 1}, 1)
                .slope(new double[] {6, 6, 5, 5});
        assertEquals(0, flat.estimate(), 0);
        assertEquals(1, flat.probability(), 0);
        assertEquals(Double.NEGATIVE_INFINITY, flat.interval(0.9).lower());
        assertEquals("slope 0.000, two-sided p 1.00 among all 4 ways of dealing the values out", flat.toString());
    }

    @Test
    @Tag("says")
    void saysWhatItNeeds() {
        assertEquals(
                "Shuffling inside sets needs a set with two different values, but in each set all values are the same.",
                assertThrows(
                                CannotFitException.class,
                                () -> SetShuffle.of(List.of("a", "a", "b"), new double[] {1, 1, 2}, 1))
                        .getMessage());
        assertEquals(
                "Shuffling inside sets needs every one of the responses, but row 2 is missing. Leave the row out first.",
                assertThrows(
                                IllegalArgumentException.class,
                                () -> SetShuffle.of(List.of("a", "a"), new double[] {1, 2}, 1)
                                        .slope(new double[] {1, Double.NaN}))
                        .getMessage());
        assertEquals(
                "2 sets, 5 rows: all 12 ways of dealing the values out",
                SetShuffle.of(List.of("a", "a", "a", "b", "b"), new double[] {1, 2, 3, 1, 2}, 1)
                        .toString());
    }
}
