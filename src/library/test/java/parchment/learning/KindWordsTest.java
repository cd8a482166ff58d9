package parchment.learning;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import parchment.learning.KindWords.Column;
import parchment.learning.KindWords.Place;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Holds how kinds are named: twelve invented batches, four in each of three kinds, whose numbers wander by one to either side. */
class KindWordsTest {
    private static final double MISSING = Double.NaN;
    private static final double[] WANDER = {-1, 0, 0, 1};

    /** Numbers of four batches around each middle. */
    private static double[] around(double... middles) {
        return IntStream.range(0, 4 * middles.length)
                .mapToDouble(i -> middles[i / 4] + 2 * WANDER[i % 4])
                .toArray();
    }

    private static List<BitSet> kinds(int count) {
        return IntStream.range(0, count)
                .mapToObj(k -> {
                    BitSet kind = new BitSet();
                    kind.set(4 * k, 4 * k + 4);
                    return kind;
                })
                .toList();
    }

    private static Column time(String what, double... values) {
        return new Column(what, "later " + what, "earlier " + what, Unit.SECONDS, Place.FIRST, values, values);
    }

    private static Column rate(String where, double... values) {
        return new Column(
                "rate of rise " + where,
                "faster " + where,
                "slower " + where,
                Unit.RATE_OF_RISE,
                Place.AFTER,
                values,
                values);
    }

    private static KindWords words(Column... columns) {
        return new KindWords(List.of(columns), TemperatureUnit.CELSIUS);
    }

    @Test
    void twoTimesNameAKindThatWhichDiffersMostFirstAndRatesAreToldAfterThem() {
        KindWords words =
                words(time("crack", around(400, 420)), time("drop", around(500, 540)), rate("early", around(9, 99)));
        assertEquals(List.of("earlier drop, earlier crack", "later drop, later crack"), words.names(kinds(2)));
        assertEquals(
                "later drop, by 40 s; later crack, by 20 s; faster early, by 90.00 °C/min",
                words.words(kinds(2).get(1)));
    }

    /** The times are the same: the third in which the rates differ most against their spread names the kinds. */
    @Test
    void whereNoTimeDiffersTheRateThatDiffersMostNamesAKind() {
        KindWords words =
                words(time("drop", around(500, 500)), rate("early", around(20, 14)), rate("late", around(9, 19)));
        assertEquals(List.of("slower late", "faster late"), words.names(kinds(2)));
        assertEquals("slower late, by 10.00 °C/min; faster early, by 6.00 °C/min", words.words(kinds(2).get(0)));
    }

    /** Eight batches, and two kinds of four that drop later than those. */
    private static List<BitSet> oneLargeTwoSmall() {
        BitSet large = new BitSet();
        large.set(0, 8);
        return List.of(large, kinds(4).get(2), kinds(4).get(3));
    }

    /** Times say the same of the second and the third kind, the rates do not. */
    @Test
    void kindsOfOneNameAreToldApartByWhatDiffersNext() {
        KindWords words = words(time("drop", around(500, 500, 540, 540)), rate("late", around(20, 20, 10, 30)));
        assertEquals(
                List.of("earlier drop", "later drop, slower late", "later drop, faster late"),
                words.names(oneLargeTwoSmall()));
    }

    @Test
    void kindsThatNothingTellsApartAreNumbered() {
        assertEquals(
                List.of("first kind", "second kind"),
                words(time("drop", around(500, 500))).names(kinds(2)));
        assertEquals(
                "nothing that was compared differs much",
                words(time("drop", around(500, 500))).words(kinds(2).get(0)));
        assertEquals(
                List.of("earlier drop", "second kind", "third kind"),
                words(time("drop", around(500, 500, 540, 540))).names(oneLargeTwoSmall()));
    }

    /** The usual distance of -2, 0, 0, 2 is 1.4826 times 1, and 0.8 of it 1.186. */
    @Test
    void aDifferenceBelowEightTenthsOfTheUsualDistanceIsNotTold() {
        assertEquals(
                "nothing that was compared differs much",
                words(rate("late", around(10, 11.18))).words(kinds(2).get(1)));
        assertEquals(
                "faster late, by 1.19 °C/min",
                words(rate("late", around(10, 11.19))).words(kinds(2).get(1)));
    }

    @Test
    void whatCouldNotBeComparedIsNamedWithItsReason() {
        double[] read = around(200, 210);
        double[] today = read.clone();
        Arrays.fill(today, 2, 4, MISSING);
        double[] two = around(2, 3);
        Arrays.fill(two, 6, 8, MISSING);
        double[] three = around(2, 3);
        three[7] = MISSING;
        Column probe = new Column(
                "drop temperature", "hotter drop", "cooler drop", Unit.TEMPERATURE_STEP, Place.FIRST, today, read);
        String changed = "drop temperature (the probe changed, and what today's would have read is not known)";
        assertEquals(
                Optional.of("Not compared: " + changed + "; mass (known of too few batches)."),
                words(probe, time("mass", two), time("drop", three)).notCompared(kinds(2)));
        assertEquals(Optional.of("Not compared: " + changed + "."), words(probe).notCompared(kinds(2)));
        assertEquals(
                Optional.of("Not compared: mass (known of too few batches)."),
                words(time("mass", two)).notCompared(kinds(2)));
        assertEquals(Optional.empty(), words(time("drop", three)).notCompared(kinds(2)));
        assertEquals(
                List.of("first kind", "second kind"),
                words(probe, time("mass", two)).names(kinds(2)));
    }
}
