package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import parchment.display.InShort;
import parchment.display.ShortSentences;
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
                next);
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
        found("A drop temperature of 402 °F scored about 0.8 points of sweetness above 388 °F (0.5 to 1.1).");
        verdict = Verdict.STRONG;
        found("A drop temperature of 402 °F scored about 0.8 points of sweetness above 388 °F (0.5 to 1.1).");
        rises = false;
        found("A drop temperature of 388 °F scored about 0.8 points of sweetness above 402 °F (0.5 to 1.1).");
        readings = false;
        found(
                "Of two batches of a lot 14.0 °F apart in drop temperature, the lower scored about 0.8 points more sweetness"
                        + " (0.5 to 1.1).");
        rises = true;
        found(
                "Of two batches of a lot 14.0 °F apart in drop temperature, the higher scored about 0.8 points more sweetness"
                        + " (0.5 to 1.1).");
    }

    @Test
    void anIntervalThatLeavesOutZeroNeverLooksAsIfItHeldIt() {
        assertEquals("just above 0 to 0.5", FirstWords.range(new Interval(0.04, 0.5, 0.90)));
        assertEquals("0.1 to 0.5", FirstWords.range(new Interval(0.06, 0.5, 0.90)));
        assertEquals("0.0 to 0.5", FirstWords.range(new Interval(0, 0.5, 0.90)));
        assertEquals("-0.1 to 0.5", FirstWords.range(new Interval(-0.1, 0.5, 0.90)));
        assertEquals("0.1 to 0.5", FirstWords.range(new Interval(-0.5, -0.1, 0.90)));
        assertEquals("just above 0 to 0.15", FirstWords.range(new Interval(-0.15, -0.004, 0.90)));
    }

    @Test
    void aHumpIsToldByItsTopAndNeverByASlope() {
        top = Optional.of(205.5);
        found("Sweetness was highest at a drop temperature near 402 °F, about 0.8 points above 388 °F (0.5 to 1.1).");
    }

    @Test
    void otherVerdictsSayWhatTheyMean() {
        verdict = Verdict.TOO_SMALL;
        interval = new Interval(0.11, 0.29, 0.90);
        found(
                "A drop temperature of 402 °F scored 0.20 points of sweetness above 388 °F (0.11 to 0.29), too little to matter.");
        interval = new Interval(0.1, 0.31, 0.90);
        found(
                "A drop temperature of 402 °F scored 0.2 points of sweetness above 388 °F (0.1 to 0.3), too little to matter.");
        verdict = Verdict.NOTHING_SEEN;
        found("Between 388 °F and 402 °F of drop temperature no difference in sweetness was seen.");
        verdict = Verdict.CANNOT_TELL;
        found("Whether 388 °F or 402 °F of drop temperature gives more sweetness cannot be told from these batches.");
        rises = false;
        found("Whether 388 °F or 402 °F of drop temperature gives more sweetness cannot be told from these batches.");
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
                    "402 °F of drop temperature went with more sweetness than 388 °F, but what brought it about cannot be told.");
            interval = new Interval(0, 1.1, 0.90);
            found(
                    "Whether 388 °F or 402 °F of drop temperature gives more sweetness cannot be told from these batches.");
        }
        why = VerdictRules.Why.NOT_RARE_ENOUGH;
        interval = new Interval(0.1, 1.1, 0.90);
        found("Whether 388 °F or 402 °F of drop temperature gives more sweetness cannot be told from these batches.");
    }

    @Test
    void howSureFollowsWhatDecided() {
        sure(
                VerdictRules.Why.NOT_DRAWN_BY_CHANCE,
                "This is more than luck, but something that moved along with the drop temperature may be the cause.");
        sure(
                VerdictRules.Why.NOT_BLIND,
                "Chance set the targets, but not all cups were scored blind and before anybody spoke.");
        sure(VerdictRules.Why.TOO_FEW_DAYS, "Chance set the targets, but fewer than 15 roast days are behind it.");
        sure(
                VerdictRules.Why.ONLY_A_BEND,
                "The bend is more than luck, but nothing here could check it a second time.");
        sure(
                VerdictRules.Why.OTHER_LOOKS_DIFFER,
                "Chance set the targets, but looked at in other ways it does not always hold.");
        sure(
                VerdictRules.Why.NO_GAIN,
                "Chance set the targets, but it did not foretell the scores of roast days kept aside.");
        sure(
                VerdictRules.Why.ALL_HOLDS,
                "That is as sure as a logbook can be: chance set the targets and the cups were blind.");
        sure(
                VerdictRules.Why.NO_DIFFERENCE_THAT_MATTERS,
                "No two readings that were tried differ by as much as 0.50 points, the least that matters.");
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
                "The next roast day's drop temperature goes with today's scores too, so the calendar may be behind both.");
        sure(
                VerdictRules.Why.NOT_RARE_ENOUGH,
                "Luck alone would do as much in 7 of 100 logbooks, which is too often to count.");
        chance = 0.041;
        sure(
                VerdictRules.Why.NOT_RARE_ENOUGH,
                "Luck alone would do as much in 5 of 100 logbooks, which is too often to count.");
        beside = List.of("gas in development", "green mass", "the calendar");
        sure(
                VerdictRules.Why.MOVED_WITH_ANOTHER,
                "The drop temperature moved together with gas in development and green mass, so the scores may have gone with"
                        + " either.");
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
                "To know, let chance choose between 388 °F and 402 °F before each charge, and cup blind.");
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
        next = new NextBatches(1, 1, 197.6, 206.0, 0.5, NextBatches.Kind.AFRESH);
        next(
                VerdictRules.Why.TOO_FEW_DAYS_LEFT,
                "About 1 new batch on 1 roast day would tell, half near 388 °F and half near 402 °F.");
        next = new NextBatches(15, 5, 197.6, 206.0, 0.5, NextBatches.Kind.BEND);
        next(
                VerdictRules.Why.OPEN,
                "About 15 more batches on 5 roast days would tell: a third each near 388 °F, 395 °F and 402 °F.");
        next = new NextBatches(0, 0, 197.6, 206.0, 0.5, NextBatches.Kind.TOO_MANY);
        next(
                VerdictRules.Why.OPEN,
                "More batches like these will not settle it: try a wider range, inside what your machine's maker allows.");
        next = new NextBatches(0, 0, 197.6, 206.0, 0.5, NextBatches.Kind.MOVE_IT);
        next(
                VerdictRules.Why.HARDLY_VARIED,
                "Move the drop temperature on purpose from batch to batch, inside what your machine's maker allows.");
        beside = List.of("gas in development");
        next(
                VerdictRules.Why.MOVED_WITH_ANOTHER,
                "Roast some batches with another drop temperature and leave gas in development as it was.");
        assertEquals(
                "Roast some batches with another drop temperature and leave what moved with it as it was.",
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
                        "sweetness", DROP, "only 5 batches have both a score and the measure; at least 8 are needed"));
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
