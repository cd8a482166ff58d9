package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.evidence.finding.PointsWords;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Verdict;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.feature.kind.Need;
import parchment.feature.kind.Role;
import parchment.feature.path.OnProbe;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Interval;

/** Holds each of the first three sentences, whole, and what all of them keep to. */
class FirstWordsTest {
    private static final Measure DROP =
            new Measure("drop temperature", Unit.TEMPERATURE, TemperatureUnit.FAHRENHEIT, Map.of());
    private static final NextBatches MORE = new NextBatches(14, 5, 197.6, 206.0, 0.5, NextBatches.Kind.MORE);

    private Verdict verdict = Verdict.SUGGESTIVE;
    private VerdictRules.Why why = VerdictRules.Why.NOT_DRAWN_BY_CHANCE;
    private List<String> beside = List.of();
    private Interval interval = new Interval(0.5, 1.1, 0.90);
    private Optional<Double> top = Optional.empty();
    private boolean rises = true;
    private boolean readings = true;
    private double chance = 0.07;
    private NextBatches next = MORE;
    private CheapestHelp help = CheapestHelp.NOTHING;
    private Findings.Planned planned = Findings.Planned.NOT_BY_CHANCE;

    private static final String SHOWN =
            " In brackets: what many more batches like these would show lies in there 9 times in 10; what the drop temperature itself"
                    + " does may lie outside.";

    private InShort words() {
        double middle = (interval.lower() + interval.upper()) / 2;
        return FirstWords.of(
                "sweetness",
                DROP,
                new VerdictRules.Judgement(
                        verdict, List.of(), NextBatches.Kind.MORE, new VerdictRules.Decisive(why, beside)),
                new TwoReadings(
                        rises ? "388 °F" : "402 °F",
                        rises ? "402 °F" : "388 °F",
                        new Slope(middle, 0.2, 30),
                        interval,
                        top,
                        rises ? 197.8 : 205.6,
                        rises ? 205.6 : 197.8,
                        readings),
                0.5,
                chance,
                next,
                help);
    }

    private void found(String sentence) {
        assertEquals(sentence, words().found());
    }

    private void sure(VerdictRules.Why decided, String sentence) {
        why = decided;
        assertEquals(sentence, words().howSure());
    }

    private void next(VerdictRules.Why decided, String sentence) {
        why = decided;
        assertEquals(sentence, words().next());
    }

    @Test
    void aFindingIsToldBetweenTwoReadings() {
        found("A drop temperature of 402 °F scored about 0.8 points of sweetness (likely 0.5 to 1.1) above 388 °F.");
        verdict = Verdict.STRONG;
        found("A drop temperature of 402 °F scored about 0.8 points of sweetness (likely 0.5 to 1.1) above 388 °F.");
        rises = false;
        found("A drop temperature of 388 °F scored about 0.8 points of sweetness (likely 0.5 to 1.1) above 402 °F.");
        readings = false;
        found("Of two batches of a lot 14.0 °F apart in drop temperature, the lower scored about 0.8 points"
                + " (likely 0.5 to 1.1) more sweetness.");
        rises = true;
        found("Of two batches of a lot 14.0 °F apart in drop temperature, the higher scored about 0.8 points"
                + " (likely 0.5 to 1.1) more sweetness.");
    }

    @Test
    void anIntervalThatLeavesOutZeroNeverLooksAsIfItHeldIt() {
        assertEquals("just above 0 to 0.5", PointsWords.range(new Interval(0.04, 0.5, 0.90)));
        assertEquals("0.1 to 0.5", PointsWords.range(new Interval(0.06, 0.5, 0.90)));
        assertEquals("0.0 to 0.5", PointsWords.range(new Interval(0, 0.5, 0.90)));
        assertEquals("-0.1 to 0.5", PointsWords.range(new Interval(-0.1, 0.5, 0.90)));
        assertEquals("0.1 to 0.5", PointsWords.range(new Interval(-0.5, -0.1, 0.90)));
        assertEquals("just above 0 to 0.15", PointsWords.range(new Interval(-0.15, -0.004, 0.90)));
    }

    @Test
    void aHumpIsToldByItsTopAndNeverByASlope() {
        top = Optional.of(205.5);
        found(
                "Sweetness was highest at a drop temperature near 402 °F, about 0.8 points (likely 0.5 to 1.1) above 388 °F.");
    }

    @Test
    void otherVerdictsSayWhatTheyMean() {
        verdict = Verdict.TOO_SMALL;
        interval = new Interval(0.11, 0.29, 0.90);
        found(
                "A drop temperature of 402 °F scored 0.20 points of sweetness (likely 0.11 to 0.29) above 388 °F, too little to matter.");
        interval = new Interval(0.1, 0.31, 0.90);
        found(
                "A drop temperature of 402 °F scored 0.2 points of sweetness (likely 0.1 to 0.3) above 388 °F, too little to matter.");
        verdict = Verdict.NOTHING_SEEN;
        found("Between a drop temperature of 388 °F and 402 °F no difference in sweetness was seen.");
        verdict = Verdict.CANNOT_TELL;
        found(
                "Whether sweetness is higher at a drop temperature of 388 °F or 402 °F cannot be told from these batches.");
        rises = false;
        found(
                "Whether sweetness is higher at a drop temperature of 388 °F or 402 °F cannot be told from these batches.");
        readings = false;
        found("How sweetness goes with the drop temperature cannot be told from these batches.");
        verdict = Verdict.NOTHING_SEEN;
        found("No difference in sweetness was seen over the drop temperature that was tried.");
    }

    /** The picture shows the difference, so the sentence must not say that none can be told. */
    @Test
    void aClearDifferenceOfUnknownCauseIsSaid() {
        verdict = Verdict.CANNOT_TELL;
        beside = List.of("gas in drying");
        for (VerdictRules.Why cause : List.of(
                VerdictRules.Why.MOVED_WITH_ANOTHER,
                VerdictRules.Why.FOLLOWS_A_FACT,
                VerdictRules.Why.NEXT_DAY_GOES_WITH_IT_TOO)) {
            why = cause;
            interval = new Interval(0.5, 1.1, 0.90);
            found(
                    "A drop temperature of 402 °F went with more sweetness than 388 °F, but what brought it about cannot be told.");
            interval = new Interval(0, 1.1, 0.90);
            found(
                    "Whether sweetness is higher at a drop temperature of 388 °F or 402 °F cannot be told from these batches.");
        }
        why = VerdictRules.Why.NOT_RARE_ENOUGH;
        interval = new Interval(0.1, 1.1, 0.90);
        found(
                "Whether sweetness is higher at a drop temperature of 388 °F or 402 °F cannot be told from these batches.");
    }

    @Test
    void howSureFollowsWhatDecided() {
        sure(
                VerdictRules.Why.NOT_DRAWN_BY_CHANCE,
                "This is more than luck, but something that moved along with the drop temperature may be the cause.");
        sure(
                VerdictRules.Why.NOT_BLIND,
                "In 100 logbooks without any true difference, luck shows as much 7 times, but not all cups were blind.");
        sure(
                VerdictRules.Why.TOO_FEW_DAYS,
                "In 100 logbooks without any true difference, luck shows as much 7 times, but fewer than 15 roast days are behind it.");
        sure(
                VerdictRules.Why.ONLY_A_BEND,
                "The bend is more than luck, but nothing here could check it a second time.");
        sure(
                VerdictRules.Why.OTHER_LOOKS_DIFFER,
                "In 100 logbooks without any true difference, luck shows as much 7 times, but other ways of looking differ.");
        sure(
                VerdictRules.Why.NO_GAIN,
                "In 100 logbooks without any true difference, luck shows as much 7 times, but days kept aside were not foretold.");
        sure(
                VerdictRules.Why.STEPS_SAY_ANOTHER_SIZE,
                "In 100 logbooks without any true difference, luck shows as much 7 times, but the few steps of the scores leave its size open.");
        sure(
                VerdictRules.Why.STEPS_NOT_FITTED,
                "In 100 logbooks without any true difference, luck shows as much 7 times, but the few steps of the scores allow no second look.");
        sure(
                VerdictRules.Why.STEPS_SHOW_NOTHING,
                "The scores come in few steps, and counted only as lower or higher they do not show a difference.");
        sure(
                VerdictRules.Why.STEPS_LEAVE_ROOM,
                "The scores come in few steps, and counted only as lower or higher they leave room for 0.50 points.");
        sure(
                VerdictRules.Why.ALL_HOLDS,
                "In 100 logbooks without any true difference, luck shows as much 7 times, and the cups were blind.");
        sure(
                VerdictRules.Why.NO_DIFFERENCE_THAT_MATTERS,
                "From the lowest to the highest that was tried the score changes by less than 0.50 points: Parchment's limit unless you set another.");
        sure(
                VerdictRules.Why.HARDLY_VARIED,
                "The drop temperature hardly varied: what there is of it may be error of reading.");
        sure(
                VerdictRules.Why.MOSTLY_ERROR,
                "Most of the spread of the drop temperature is error of reading, not the roasts.");
        sure(
                VerdictRules.Why.TOO_FEW_DAYS_LEFT,
                "Too few roast days are left to compare once lots and dates are taken into account.");
        sure(
                VerdictRules.Why.NEXT_DAY_GOES_WITH_IT_TOO,
                "Today's scores also go with the drop temperature of the next roast day, so something that changes with the date may be behind both.");
        sure(
                VerdictRules.Why.NOT_RARE_ENOUGH,
                "In 100 logbooks without any true difference, luck shows as much 7 times; over 4 is too often to build on.");
        chance = 0.041;
        sure(
                VerdictRules.Why.NOT_RARE_ENOUGH,
                "In 100 logbooks without any true difference, luck shows as much just over 4 times; over 4 is too often to build on.");
        chance = 0.046;
        sure(
                VerdictRules.Why.NOT_RARE_ENOUGH,
                "In 100 logbooks without any true difference, luck shows as much 5 times; over 4 is too often to build on.");
        beside = List.of("gas in development", "green mass", "the calendar");
        sure(
                VerdictRules.Why.MOVED_WITH_ANOTHER,
                "The drop temperature moved together with the gas during development and green mass, so the scores may have gone with"
                        + " any.");
        beside = List.of("operator");
        sure(
                VerdictRules.Why.FOLLOWS_A_FACT,
                "The drop temperature followed operator so closely that the two cannot be told apart.");
    }

    @Test
    void anOpenAnswerSaysWhatAgreesWithTheScores() {
        verdict = Verdict.CANNOT_TELL;
        interval = new Interval(-0.3, 0.9, 0.90);
        sure(
                VerdictRules.Why.OPEN,
                "Anything from 0.3 points less to 0.9 points more at 402 °F agrees with the scores.");
        interval = new Interval(-0.04, 0.9, 0.90);
        sure(VerdictRules.Why.OPEN, "Anything from no difference to 0.9 points more at 402 °F agrees with the scores.");
        readings = false;
        interval = new Interval(-0.9, 0.04, 0.90);
        sure(VerdictRules.Why.OPEN, "Anything from 0.9 points less to no difference agrees with the scores.");
    }

    @Test
    void whatToDoNextFollowsTheVerdict() {
        next(
                VerdictRules.Why.NOT_DRAWN_BY_CHANCE,
                "To know, toss a coin between 388 °F and 402 °F before each charge, and cup blind.");
        next(VerdictRules.Why.NOT_BLIND, "Put codes on the cups and write scores down before anybody speaks.");
        next(
                VerdictRules.Why.TOO_FEW_DAYS,
                "Roast more such batches on other days, their targets drawn by chance, and cup them blind.");
        verdict = Verdict.STRONG;
        next(
                VerdictRules.Why.ALL_HOLDS,
                "Roast the next batches nearer to 402 °F, inside what your machine's maker allows, and keep cupping.");
        verdict = Verdict.NOTHING_SEEN;
        next(
                VerdictRules.Why.NO_DIFFERENCE_THAT_MATTERS,
                "Choose the drop temperature for other reasons; more batches like these would change little.");
        verdict = Verdict.CANNOT_TELL;
        next(
                VerdictRules.Why.OPEN,
                "About 14 more batches on 5 roast days would tell, half near 388 °F and half near 402 °F.");
        next(
                VerdictRules.Why.STEPS_SHOW_NOTHING,
                "Score further batches in finer steps, with room left at both ends of the scale, then ask again.");
        next(
                VerdictRules.Why.STEPS_LEAVE_ROOM,
                "Score further batches in finer steps, with room left at both ends of the scale, then ask again.");
        next = new NextBatches(1, 1, 197.6, 206.0, 0.5, NextBatches.Kind.AFRESH);
        next(
                VerdictRules.Why.TOO_FEW_DAYS_LEFT,
                "About 1 new batch on 1 roast day would tell, half near 388 °F and half near 402 °F.");
        next = new NextBatches(15, 5, 197.6, 206.0, 0.5, NextBatches.Kind.BEND);
        next(
                VerdictRules.Why.OPEN,
                "About 15 more batches on 5 roast days would tell: a third each near 388 °F, 396 °F and 402 °F.");
        next = new NextBatches(0, 0, 197.6, 206.0, 0.5, NextBatches.Kind.TOO_MANY);
        next(
                VerdictRules.Why.OPEN,
                "It takes over 200 batches between 388 °F and 402 °F; cup each more often, or go slightly beyond, inside what your machine's maker allows.");
        next = new NextBatches(0, 0, 197.6, 206.0, 0.5, NextBatches.Kind.MOVE_IT);
        next(
                VerdictRules.Why.HARDLY_VARIED,
                "Move the drop temperature on purpose from batch to batch, inside what your machine's maker allows.");
        beside = List.of("gas in development");
        next(
                VerdictRules.Why.MOVED_WITH_ANOTHER,
                "Vary only the drop temperature from 388 °F to 402 °F, and keep the gas during development the same.");
        assertEquals(
                "Vary only the drop temperature from batch to batch, and keep what moved with it the same.",
                new NextBatches(0, 0, 197.6, 206.0, 0.5, NextBatches.Kind.MOVE_APART).inShort(DROP));
    }

    @Test
    void whereNothingCouldBeFittedItSaysWhatIsMissing() {
        assertEquals(
                new InShort(
                        "These batches cannot tell how sweetness goes with the drop temperature.",
                        "Only 5 batches have both a score and the measure; at least 8 are needed.",
                        "Cup at least 8 batches from 3 roast days, then ask again."),
                FirstWords.nothingFitted(
                        "sweetness",
                        DROP,
                        "only 5 batches have both a score and the measure; at least 8 are needed",
                        7));
        assertEquals(
                "Look why batches that were scored have no drop temperature, then ask again.",
                FirstWords.nothingFitted("sweetness", DROP, "no batch has both", 8)
                        .next());
    }

    /** A drop temperature has no column of its own: it is worked out of the bean temperature and the drop. */
    @Test
    void whatIsWorkedOutIsNotToBeWritten() {
        assertEquals(
                "Log the bean temperature and write the drop of more of the batches that were scored, then ask again.",
                nextOf(Features.dropTemperature()));
        assertEquals(
                "Write first crack start and the drop of more of the batches that were scored, then ask again.",
                nextOf(Features.developmentRatio()));
        assertEquals(
                "Write the green mass of more of the batches that were scored, then ask again.",
                nextOf(Features.greenMass()));
        assertEquals(
                "Write the quakers of more of the batches that were scored, then ask again.",
                nextOf(Features.quakers()));
    }

    private static String nextOf(Feature feature) {
        Measure asked = new Measure(
                feature.name(),
                feature.unit(),
                TemperatureUnit.CELSIUS,
                Map.of(),
                Map.of(),
                feature.onProbe(),
                feature.role(),
                Need.howToHave(feature));
        InShort said = FirstWords.nothingFitted("sweetness", asked, "no batch has both", 8);
        return ShortSentences.keptBy(said).next();
    }

    @Test
    void readingsThatHardlyDifferAreNotQuoted() {
        verdict = Verdict.CANNOT_TELL;
        why = VerdictRules.Why.HARDLY_VARIED;
        found("How sweetness goes with the drop temperature cannot be told from these batches.");
    }

    @Test
    void whatNoHandMovesIsNotToBeMoved() {
        Measure days = new Measure(
                "days since arrival",
                Unit.DAYS,
                TemperatureUnit.CELSIUS,
                Map.of(),
                Map.of(),
                OnProbe.FREE_OF_IT,
                Role.CALENDAR,
                "");
        String wait =
                "The calendar moves the days since arrival, so ask again when batches of other seasons and lots have been cupped.";
        ShortSentences.keptBy(wait);
        assertEquals(wait, FirstWords.apart(days, "", List.of("gas in drying")));
        for (NextBatches.Kind kind : NextBatches.Kind.values()) {
            assertEquals(
                    kind != NextBatches.Kind.TOO_MANY,
                    new NextBatches(14, 5, 10, 90, 0.5, kind).inShort(days).equals(wait),
                    kind.toString());
        }
        for (String calendar : List.of(
                "the calendar",
                "date and season",
                "lot and probe period",
                "days since arrival",
                "room temperature",
                "green temperature")) {
            assertEquals(
                    "Let the drop temperature differ within each roast day, so that the calendar cannot follow it.",
                    FirstWords.apart(DROP, "", List.of(calendar, "gas in drying")));
        }
        assertEquals(
                "Vary only the drop temperature and keep the gas during drying the same.",
                FirstWords.apart(DROP, "", List.of("gas in drying")));
    }

    @Test
    void theCalendarNeedsNoSmallerRangeButOtherSeasons() {
        Measure days = new Measure(
                "days since arrival",
                Unit.DAYS,
                TemperatureUnit.CELSIUS,
                Map.of(),
                Map.of(),
                OnProbe.FREE_OF_IT,
                Role.CALENDAR,
                "");
        String sentence = new NextBatches(0, 0, 10, 90, 0.5, NextBatches.Kind.TOO_MANY).inShort(days);
        ShortSentences.keptBy(sentence);
        assertEquals(
                "It takes over 200 batches between 10 days and 90 days; wait for batches of other seasons and lots.",
                sentence);
    }

    @Test
    void eachCompanionHasAnAdviceThatCanBeFollowed() {
        apart(
                "Put the drop temperature in another order each roast day, so that batch of the day cannot follow it.",
                "batch of the day");
        apart(
                "Put the drop temperature in another order each roast day, so that minutes since last drop cannot follow it.",
                "minutes since last drop");
        apart("Let all cups rest equally long, whatever their drop temperature.", "rest days");
        apart(
                "Vary only the drop temperature and keep the gas during drying and the gas during browning the same.",
                "gas in drying",
                "gas in browning",
                "airflow in drying");
        apart("Vary only the drop temperature and keep the gas during drying the same.", "gas in drying", "rest days");
    }

    /** The two readings of the first sentence are those to vary it between, where the sentence has room for them. */
    @Test
    void whatToVaryIsToldWithItsReadingsWhereThereIsRoom() {
        String longest =
                "Vary only the drop temperature from 388 °F to 402 °F, and keep the gas during drying and the gas during browning the same.";
        ShortSentences.keptBy(longest);
        assertEquals(longest, FirstWords.apart(DROP, "388 °F to 402 °F", List.of("gas in drying", "gas in browning")));
        Measure charge =
                new Measure("lasting room temperature", Unit.TEMPERATURE, TemperatureUnit.FAHRENHEIT, Map.of());
        assertEquals(
                "Vary only the lasting room temperature from 388 °F to 402 °F, and keep the gas during drying and the gas during browning the"
                        + " same.",
                FirstWords.apart(charge, "388 °F to 402 °F", List.of("gas in drying", "gas in browning")));
        Measure four =
                new Measure("a lasting room temperature", Unit.TEMPERATURE, TemperatureUnit.FAHRENHEIT, Map.of());
        assertEquals(
                "Vary only the a lasting room temperature and keep the gas during drying and the gas during browning the same.",
                FirstWords.apart(four, "388 °F to 402 °F", List.of("gas in drying", "gas in browning")));
    }

    @Test
    void oneCompanionMakesEitherAndSeveralMakeAny() {
        assertEquals("either", FirstWords.eitherOrAny(List.of("gas in drying")));
        assertEquals("any", FirstWords.eitherOrAny(List.of("gas in drying", "gas in browning")));
    }

    private static void apart(String sentence, String... beside) {
        ShortSentences.keptBy(sentence);
        assertEquals(sentence, FirstWords.apart(DROP, "", List.of(beside)));
    }

    @Test
    void luckIsCountedWhereChanceSetTheTargets() {
        chance = 0.0099;
        sure(
                VerdictRules.Why.NOT_BLIND,
                "In 100 logbooks without any true difference, luck shows as much less than once, but not all cups were blind.");
        chance = 0.01;
        sure(
                VerdictRules.Why.NOT_BLIND,
                "In 100 logbooks without any true difference, luck shows as much once, but not all cups were blind.");
        chance = 0.026;
        sure(
                VerdictRules.Why.ALL_HOLDS,
                "In 100 logbooks without any true difference, luck shows as much 3 times, and the cups were blind.");
    }

    private TwoReadings two() {
        return new TwoReadings(
                rises ? "388 °F" : "402 °F",
                rises ? "402 °F" : "388 °F",
                new Slope(0.8, 0.2, 30),
                interval,
                top,
                rises ? 197.8 : 205.6,
                rises ? 205.6 : 197.8,
                readings);
    }

    private void because(String sentence) {
        assertEquals(sentence, WhyThese.words(two(), DROP, verdict, why, planned));
    }

    @Test
    void itSaysWhyTheseTwoReadingsAndWhatTheBracketsHold() {
        because(
                "Why 388 °F and 402 °F: there the drawn line is lowest and highest, the outermost tenth of the batches at either end left aside."
                        + SHOWN);
        rises = false;
        because(
                "Why 388 °F and 402 °F: there the drawn line is highest and lowest, the outermost tenth of the batches at either end left aside."
                        + SHOWN);
        for (Verdict bare : List.of(Verdict.CANNOT_TELL, Verdict.NOTHING_SEEN)) {
            verdict = bare;
            because(
                    "Why 388 °F and 402 °F: there the drawn line is highest and lowest, the outermost tenth of the batches at either end left aside.");
        }
        for (Verdict bracketed : List.of(Verdict.TOO_SMALL, Verdict.STRONG)) {
            verdict = bracketed;
            because(
                    "Why 388 °F and 402 °F: there the drawn line is highest and lowest, the outermost tenth of the batches at either end left aside."
                            + SHOWN);
        }
    }

    /** Only where chance set the targets is the difference what the drop itself did. */
    @Test
    void bracketsPromiseTheDifferenceItselfOnlyWhereChanceSetTheTargets() {
        String why =
                "Why 388 °F and 402 °F: there the drawn line is lowest and highest, the outermost tenth of the batches at either end left aside.";
        because(why + SHOWN);
        planned = Findings.Planned.BY_CHANCE;
        because(why
                + " In brackets: the difference that the drop temperature itself makes lies in there 9 times in 10.");
        verdict = Verdict.NOTHING_SEEN;
        because(why);
    }

    private String beyond() {
        return WhyThese.beyond(two(), DROP, verdict, new TriedRange(195, 208.4, 197.6, 206, 201));
    }

    @Test
    void beyondTheBetterEndNobodyTriedIt() {
        String above =
                "402 °F is only the better of these two: it lies near the edge, and nobody tried a drop temperature above 407.1 °F. There it may"
                        + " score higher still, or lower: go in small steps only, inside what your machine's maker allows.";
        assertEquals(above, beyond());
        verdict = Verdict.STRONG;
        assertEquals(above, beyond());
        rises = false;
        assertEquals(
                "388 °F is only the better of these two: it lies near the edge, and nobody tried a drop temperature below 383.0 °F. There it may"
                        + " score higher still, or lower: go in small steps only, inside what your machine's maker allows.",
                beyond());
        top = Optional.of(200.0);
        assertEquals("", beyond());
        top = Optional.empty();
        readings = false;
        assertEquals("", beyond());
        readings = true;
        for (Verdict bare : List.of(Verdict.CANNOT_TELL, Verdict.NOTHING_SEEN, Verdict.TOO_SMALL)) {
            verdict = bare;
            assertEquals("", beyond(), bare.toString());
        }
    }

    @Test
    void aBendThatIsBestInsideSendsNobodyBeyondTheEnd() {
        // The better reading is 205.6 °C; a fifth of the range below its end it is no end any more.
        assertFalse(WhyThese.beyond(two(), DROP, verdict, new TriedRange(195, 209, 197.1, 207.6, 201))
                .isEmpty());
        assertEquals("", WhyThese.beyond(two(), DROP, verdict, new TriedRange(195, 210, 197.1, 207.8, 201)));
    }

    /** What is only to be written comes before what is to be roasted, but not where something else stands in the way. */
    @Test
    void theCheapestThingThatHelpsIsToldFirst() {
        verdict = Verdict.CANNOT_TELL;
        help = new CheapestHelp(23, 17, 0, 0);
        next(VerdictRules.Why.OPEN, "17 more batches have no lot written: add it, then they count too.");
        ShortSentences.keptBy(words());
        next = new NextBatches(0, 0, 197.6, 206.0, 0.5, NextBatches.Kind.MOVE_IT);
        next(
                VerdictRules.Why.HARDLY_VARIED,
                "Move the drop temperature on purpose from batch to batch, inside what your machine's maker allows.");
        next = MORE;
        beside = List.of("gas in development");
        next(
                VerdictRules.Why.MOVED_WITH_ANOTHER,
                "Vary only the drop temperature from 388 °F to 402 °F, and keep the gas during development the same.");
    }

    @Test
    void whereNoReadingIsNamedItSaysHowWideTheComparisonIsOrNothing() {
        readings = false;
        because("Why 14.0 °F: so far apart the batches lie, the outermost tenth at either end left aside." + SHOWN);
        verdict = Verdict.CANNOT_TELL;
        because("");
        readings = true;
        why = VerdictRules.Why.HARDLY_VARIED;
        because("");
    }

    @Test
    void aFeatureIsNamedAtItsReadingsInPlainEnglish() {
        Measure rest = new Measure("rest days", Unit.DAYS, TemperatureUnit.CELSIUS, Map.of());
        assertEquals("4 or 8 rest days", rest.at("4 days or 8 days"));
        assertEquals("4", rest.afterName("4 days"));
        Measure ratio = new Measure("development ratio", Unit.SHARE, TemperatureUnit.CELSIUS, Map.of());
        assertEquals("a development ratio of 12 % or 19 %", ratio.at("12 % or 19 %"));
        assertEquals("12 %", ratio.afterName("12 %"));
        Measure air = new Measure("airflow in drying", Unit.SHARE, TemperatureUnit.CELSIUS, Map.of());
        assertEquals("an airflow in drying of 12 %", air.at("12 %"));
    }

    /** At most 25 words and two clauses, and no word that only a statistician knows. */
    @Test
    void everySentenceIsShortAndPlain() {
        beside = List.of("airflow at first crack", "place in the roast day");
        for (Verdict each : Verdict.values()) {
            for (VerdictRules.Why decided : VerdictRules.Why.values()) {
                for (boolean turns : new boolean[] {false, true}) {
                    verdict = each;
                    why = decided;
                    top = turns ? Optional.of(205.5) : Optional.empty();
                    ShortSentences.keptBy(words());
                }
            }
        }
    }
}
