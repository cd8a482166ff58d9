package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Verdict;

/** Feeds the rules of destination and path with built records: one row per rule, one on each side of each threshold. */
@Tag("holds-for-any")
class PathRulesTest {
    private static final double MANY = 1e6;
    private static final NegativeControl QUIET = new NegativeControl(new Slope(0, 1, MANY), 20);
    private static final NegativeControl SET_OFF = new NegativeControl(new Slope(1.97, 1, MANY), 20);

    /** Eleven batches from 0 to 12.5 units: the middle 80 % spans 10. */
    private static final double[] COMPARED =
            IntStream.rangeClosed(0, 10).mapToDouble(k -> 1.25 * k).toArray();

    private static final Reliability EXACT = new Reliability(1, 0.01, 10, 11);

    private static final class Case {
        Slope fitted = new Slope(0, 0.1, 20);
        Slope told = new Slope(0, 0.1, 20);
        Reliability reliability = EXACT;
        double inflation = 2;
        List<String> controls = List.of();
        Slope bend = new Slope(0, 0.0001, MANY);
        NegativeControl control = QUIET;
        double margin = 0.5;

        Case slope(double estimate, double error, double degrees) {
            fitted = new Slope(estimate, error, degrees);
            told = fitted;
            return this;
        }

        PathRules.Judgement judge() {
            Supplier<PairsOfPlaces> bent = () -> new PairsOfPlaces(told, bend, 0);
            return PathRules.judge(new PathRules.Findings(
                    new JointSlope(fitted, told, reliability, inflation, COMPARED),
                    told.interval(0.9),
                    () -> controls,
                    bent,
                    () -> control,
                    margin));
        }

        void gives(Verdict verdict, PathContrast.Because because, String words) {
            PathRules.Judgement found = judge();
            assertEquals(words, found.words());
            assertEquals(because, found.because());
            assertEquals(verdict, found.verdict());
        }

        void gives(Verdict verdict, PathContrast.Because because) {
            PathRules.Judgement found = judge();
            assertEquals(because, found.because(), found.toString());
            assertEquals(verdict, found.verdict(), found.toString());
        }
    }

    private static Case of() {
        return new Case();
    }

    @Test
    void aMeasureThatFollowsFromTheOthersCannotBeTold() {
        Case asked = of();
        asked.fitted = Slope.MISSING;
        asked.told = Slope.MISSING;
        asked.gives(
                Verdict.CANNOT_TELL,
                PathContrast.Because.FOLLOWS_FROM_OTHERS,
                "in this logbook one of drop temperature, development time and time to first crack follows from the others");
    }

    @Test
    void underThreeDegreesOfFreedomItCannotBeTold() {
        of().slope(5, 0.1, 2.99)
                .gives(
                        Verdict.CANNOT_TELL,
                        PathContrast.Because.TOO_FEW_DAYS,
                        "once lots, dates and the rest are taken into account, too few roast days are left to compare");
        of().slope(5, 0.1, 3).gives(Verdict.SUGGESTIVE, PathContrast.Because.SLOPE);
        Case uncorrected = of().slope(5, 0.1, 20);
        uncorrected.told = Slope.MISSING;
        uncorrected.gives(Verdict.CANNOT_TELL, PathContrast.Because.TOO_FEW_DAYS);
    }

    @Test
    void beyondAVarianceInflationOfTenItMovedTogetherWithTheRest() {
        Case over = of().slope(1, 0.1, 20);
        over.inflation = 10.01;
        over.gives(
                Verdict.CANNOT_TELL,
                PathContrast.Because.MOVED_TOGETHER,
                "the batches differ in it only together with the rest (variance inflation 10, over 10)");
        Case at = of().slope(1, 0.1, 20);
        at.inflation = 10;
        at.gives(Verdict.SUGGESTIVE, PathContrast.Because.SLOPE);
    }

    @Test
    void aControlInLockstepBlocks() {
        Case asked = of().slope(1, 0.1, 20);
        asked.controls = List.of("gas in development", "green mass");
        asked.gives(
                Verdict.CANNOT_TELL,
                PathContrast.Because.MOVED_WITH_A_CONTROL,
                "the batches differ in it only together with gas in development and green mass, and the score may have gone with either");
    }

    @Test
    void errorOfMeasuringBlocksUnderHalfAndUnderThreeErrorsOfSpread() {
        String words = "once the rest is held, the batches differ in it by little more than the error of measuring";
        Case low = of().slope(1, 0.1, 20);
        low.reliability = new Reliability(0.49, 0.01, 10, 11);
        low.gives(Verdict.CANNOT_TELL, PathContrast.Because.ERROR_OF_MEASURING, words);
        low.reliability = new Reliability(0.5, 0.01, 10, 11);
        low.gives(Verdict.SUGGESTIVE, PathContrast.Because.SLOPE);
        Case narrow = of().slope(1, 0.1, 20);
        narrow.reliability = new Reliability(0.9, 3.34, 10, 11);
        narrow.gives(Verdict.CANNOT_TELL, PathContrast.Because.ERROR_OF_MEASURING, words);
        narrow.reliability = new Reliability(0.9, 3.33, 10, 11);
        narrow.gives(Verdict.SUGGESTIVE, PathContrast.Because.SLOPE);
        Case unknown = of().slope(1, 0.1, 20);
        unknown.reliability = new Reliability(Double.NaN, Double.NaN, 10, 11);
        unknown.gives(Verdict.SUGGESTIVE, PathContrast.Because.SLOPE);
    }

    @Test
    void aSlopeIsAFindingUnderOneInAHundred() {
        of().slope(2.58, 1, MANY)
                .gives(
                        Verdict.SUGGESTIVE,
                        PathContrast.Because.SLOPE,
                        "chance alone would do as much in fewer than 1 of 100 logbooks; nobody drew the way there by chance, whatever set the drop, so what the roaster saw in the"
                                + " beans may stand behind both");
        of().slope(-2.58, 1, MANY).gives(Verdict.SUGGESTIVE, PathContrast.Because.SLOPE);
        of().slope(2.57, 1, MANY)
                .gives(
                        Verdict.CANNOT_TELL,
                        PathContrast.Because.TOO_WIDE,
                        "zero lies outside its interval, but as five comparisons are looked at that is not rare enough: chance alone would do as"
                                + " much in 1 of 100 logbooks or more");
        of().slope(-1.7, 1, MANY)
                .gives(
                        Verdict.CANNOT_TELL,
                        PathContrast.Because.TOO_WIDE,
                        "zero lies outside its interval, but as five comparisons are looked at that is not rare enough: chance alone would do as"
                                + " much in 1 of 100 logbooks or more");
        of().slope(1.6, 1, MANY)
                .gives(
                        Verdict.CANNOT_TELL,
                        PathContrast.Because.TOO_WIDE,
                        "zero and differences large enough to matter (0.50 points over what was tried) both agree with the scores");
    }

    @Test
    void theFittedSlopeIsTestedAndTheToldOneIsMeasured() {
        Case asked = of();
        asked.fitted = new Slope(2.58, 1, MANY);
        asked.told = new Slope(0.01, 0.001, MANY);
        asked.gives(Verdict.TOO_SMALL, PathContrast.Because.SLOPE);
    }

    @Test
    void aFindingSmallerThanMattersIsTooSmall() {
        // 0.03 a unit over 10 units is 0.3 points, give or take 1.645 x 0.1.
        of().slope(0.03, 0.01, MANY)
                .gives(
                        Verdict.TOO_SMALL,
                        PathContrast.Because.SLOPE,
                        "chance alone would do as much in fewer than 1 of 100 logbooks, but over what was tried of it no difference and no bend"
                                + " larger than 0.50 points is left");
        of().slope(0.034, 0.01, MANY).gives(Verdict.SUGGESTIVE, PathContrast.Because.SLOPE);
        of().slope(-0.034, 0.01, MANY).gives(Verdict.SUGGESTIVE, PathContrast.Because.SLOPE);
        of().slope(-0.033, 0.01, MANY).gives(Verdict.TOO_SMALL, PathContrast.Because.SLOPE);
    }

    @Test
    void whatIsNotRareIsTooSmallWithZeroLeftOutAndNothingSeenOtherwise() {
        of().slope(0.02, 0.01, MANY)
                .gives(
                        Verdict.TOO_SMALL,
                        PathContrast.Because.NONE_THAT_MATTERS,
                        "zero lies outside its interval, but over what was tried of it no difference and no bend larger than 0.50 points is left");
        of().slope(-0.02, 0.01, MANY).gives(Verdict.TOO_SMALL, PathContrast.Because.NONE_THAT_MATTERS);
        of().slope(0.016, 0.01, MANY)
                .gives(
                        Verdict.NOTHING_SEEN,
                        PathContrast.Because.NONE_THAT_MATTERS,
                        "over what was tried of it no difference and no bend larger than 0.50 points is left");
        of().slope(-0.016, 0.01, MANY).gives(Verdict.NOTHING_SEEN, PathContrast.Because.NONE_THAT_MATTERS);
        // 1.645 x 0.0305 x 10 is 0.502, over half a point.
        of().slope(0, 0.0305, MANY).gives(Verdict.CANNOT_TELL, PathContrast.Because.TOO_WIDE);
        of().slope(0, 0.0303, MANY).gives(Verdict.NOTHING_SEEN, PathContrast.Because.NONE_THAT_MATTERS);
        Case wide = of().slope(0, 0.0305, MANY);
        wide.margin = 0.51;
        wide.gives(Verdict.NOTHING_SEEN, PathContrast.Because.NONE_THAT_MATTERS);
    }

    @Test
    void aBendIsAFindingUnderOneInFiveHundred() {
        Case down = of().slope(0, 0.01, MANY);
        down.bend = new Slope(-3.1, 1, MANY);
        down.gives(
                Verdict.SUGGESTIVE,
                PathContrast.Because.BEND,
                "the score rises and falls along it, so no one slope describes it; chance alone brings about such a bend in fewer than 1 of 500"
                        + " logbooks; nobody drew the way there by chance, whatever set the drop, so what the roaster saw in the beans may stand behind both");
        Case up = of().slope(0, 0.01, MANY);
        up.bend = new Slope(3.1, 1, MANY);
        assertTrue(
                up.judge().words().startsWith("the score falls and rises along it"),
                up.judge().words());
        up.bend = new Slope(3.08, 1, MANY);
        up.gives(Verdict.CANNOT_TELL, PathContrast.Because.TOO_WIDE);
        Case both = of().slope(3, 1, MANY);
        both.bend = new Slope(3.1, 1, MANY);
        both.gives(Verdict.SUGGESTIVE, PathContrast.Because.SLOPE);
    }

    @Test
    void aBendTooShallowToMatterIsTooSmallAndOneThatMayBeDeepIsNotNothing() {
        // A square of 0.01 over a width of 10 is 0.25 points deep.
        Case shallow = of().slope(0, 0.01, MANY);
        shallow.bend = new Slope(0.01, 0.001, MANY);
        shallow.gives(Verdict.TOO_SMALL, PathContrast.Because.BEND);
        Case open = of().slope(0, 0.01, MANY);
        open.bend = new Slope(0, 0.0123, MANY);
        open.gives(Verdict.CANNOT_TELL, PathContrast.Because.TOO_WIDE);
        open.bend = new Slope(0, 0.0119, MANY);
        open.gives(Verdict.NOTHING_SEEN, PathContrast.Because.NONE_THAT_MATTERS);
    }

    /** A line of 0.25 points and a bend of 0.3 points each lie inside half a point; from the middle to an end they are 0.425. */
    @Test
    void aLineAndABendAreHeldAgainstTheMarginTogether() {
        Case both = of().slope(0.025, 0.01, MANY);
        both.bend = new Slope(0.012, 0.001, MANY);
        both.gives(Verdict.SUGGESTIVE, PathContrast.Because.BEND);
        both.bend = new Slope(0.008, 0.001, MANY);
        both.gives(Verdict.TOO_SMALL, PathContrast.Because.BEND);
    }

    @Test
    void aBendThatTheDataCouldNotCarryIsOpen() {
        Case unknown = of().slope(0, 0.01, MANY);
        unknown.gives(Verdict.NOTHING_SEEN, PathContrast.Because.NONE_THAT_MATTERS);
        unknown.bend = Slope.MISSING;
        unknown.gives(Verdict.CANNOT_TELL, PathContrast.Because.TOO_WIDE);
    }

    @Test
    void theNextDaysMeasureTakesAFindingBack() {
        Case slope = of().slope(5, 1, MANY);
        slope.control = SET_OFF;
        slope.gives(
                Verdict.CANNOT_TELL,
                PathContrast.Because.CALENDAR,
                "it went with the score, but the next roast day's does too, which cannot be by itself: something that moves with the calendar may"
                        + " be behind both (by chance alone 1 logbook in 20 shows this)");
        slope.control = new NegativeControl(new Slope(1.95, 1, MANY), 20);
        slope.gives(Verdict.SUGGESTIVE, PathContrast.Because.SLOPE);
        Case bend = of().slope(0, 0.01, MANY);
        bend.bend = new Slope(4, 1, MANY);
        bend.control = SET_OFF;
        bend.gives(Verdict.CANNOT_TELL, PathContrast.Because.CALENDAR);
        Case nothing = of().slope(0, 0.01, MANY);
        nothing.control = SET_OFF;
        nothing.gives(Verdict.NOTHING_SEEN, PathContrast.Because.NONE_THAT_MATTERS);
    }

    @Test
    void thresholdsAreThoseOfTheHandbook() throws IOException {
        String handbook = Files.readString(Path.of("..", "docs", "evidence.md")).replaceAll("\\s+", " ");
        assertTrue(handbook.contains(
                "\"Cannot tell\" if the inflation is over 10, the reliability under 0.5, the tried spread under"
                        + " three errors, or fewer than 3 degrees of freedom are left."));
        assertTrue(handbook.contains("a finding needs a chance under 1 in 100 each"));
        assertTrue(handbook.contains("a bend at 1 in 500"));
        assertEquals(10, PathRules.MOST_INFLATION);
        assertEquals(0.01, PathRules.CHANCE);
        assertEquals(0.002, PathRules.CHANCE_OF_BEND);
        assertEquals(3, PathRules.FEWEST_DEGREES);
        assertEquals(0.5, Reliability.TOO_LOW);
        assertEquals(3, Reliability.ERRORS_IN_SPREAD);
        assertTrue(handbook.contains("Past 60 batches only the first 16 are named"));
        assertEquals(30, SeparatingBatches.MOST_PAIRS);
        assertEquals(8, SeparatingBatches.START);
    }
}
