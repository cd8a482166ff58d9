package parchment.align;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.logbook.Batch;
import parchment.quantity.TemperatureUnit;
import parchment.stats.Interval;

/** Holds each first sentence on where a batch's time went, which roast is nearest, and many batches on one clock. */
class AlignShortSentencesTest {
    private static void says(InShort words, String found, String howSure, String next) {
        ShortSentences.keptBy(words);
        assertEquals(found + "\n" + howSure + "\n" + next, words.text());
    }

    private static WhereTimeWent.Step step(double from, double seconds) {
        return new WhereTimeWent.Step(from, from + 10, seconds, 30, 25, 35);
    }

    private static InShort time(TemperatureUnit reader, WhereTimeWent.Step... steps) {
        return TimeInShort.of("H240", List.of(steps), 24, reader);
    }

    @Test
    void whereTheTimeWentIsToldWithItsWay() {
        says(
                time(TemperatureUnit.CELSIUS, step(150, 52), step(160, 36)),
                "From 150 °C to 170 °C batch H240 took 28 s more than usual.",
                "Most of all it was 22 s slower between 150 and 160 °C, outside what is usual for 24 others.",
                "Look at gas and air just before that temperature in its picture.");
        says(
                time(TemperatureUnit.CELSIUS, step(150, 28), step(160, 9)),
                "From 150 °C to 170 °C batch H240 took 23 s less than usual.",
                "Most of all it was 21 s faster between 160 and 170 °C, outside what is usual for 24 others.",
                "Look at gas and air just before that temperature in its picture.");
    }

    @Test
    void aStepInsideWhatIsUsualAsksForNothing() {
        says(
                time(TemperatureUnit.FAHRENHEIT, step(150, 35), step(160, Double.NaN)),
                "From 302 °F to 320 °F batch H240 took 5 s more than usual.",
                "Most of all it was 5 s slower between 302 and 320 °F, inside what is usual for 24 others.",
                "Nothing to do; the cup decides.");
        assertEquals(
                "Most of all it was 20 s faster between 150 and 160 °C, inside what is usual for 24 others.",
                time(TemperatureUnit.CELSIUS, step(150, 10)).howSure());
        assertEquals(
                "Most of all it was 20 s slower between 150 and 160 °C, inside what is usual for 24 others.",
                time(TemperatureUnit.CELSIUS, step(150, 50)).howSure());
        // The middle half is 25 to 35 s; beyond it by more than 1.5 times its width is unusual.
        assertEquals(
                "Most of all it was 20 s slower between 150 and 160 °C, outside what is usual for 24 others.",
                time(TemperatureUnit.CELSIUS, step(150, 50.1)).howSure());
        assertEquals(
                "Most of all it was 20 s faster between 150 and 160 °C, outside what is usual for 24 others.",
                time(TemperatureUnit.CELSIUS, step(150, 9.9)).howSure());
    }

    @Test
    void noDifferenceIsToldAsNone() {
        says(
                time(TemperatureUnit.CELSIUS, step(150, 30.4)),
                "From 150 °C to 160 °C batch H240 took as long as usual.",
                "In no step of temperature was it faster or slower by a second.",
                "Nothing to do; the cup decides.");
        assertEquals(
                "From 150 °C to 170 °C batch H240 took as long as usual.",
                time(TemperatureUnit.CELSIUS, step(150, 40), step(160, 20)).found());
    }

    @Test
    void tooFewOthersCannotTell() {
        says(
                TimeInShort.of("H240", List.of(), 3, TemperatureUnit.CELSIUS),
                "Where the time of batch H240 went cannot be told.",
                "There are 3 other batches of its kind, and 4 are needed.",
                "Ask again when more such batches have been roasted.");
        assertEquals(
                "There is 1 other batch of its kind, and 4 are needed.",
                ShortSentences.keptBy(TimeInShort.of("H240", List.of(), 1, TemperatureUnit.CELSIUS))
                        .howSure());
        assertEquals(
                "It passed no step of temperature whole that 4 others passed.",
                ShortSentences.keptBy(TimeInShort.of("H240", List.of(), 4, TemperatureUnit.CELSIUS))
                        .howSure());
    }

    private static Nearest.Neighbour other(String name, double seconds, Nearest.Lot lot) {
        return new Nearest.Neighbour(Batch.named(name).build(), seconds, lot, Optional.empty());
    }

    @Test
    void theNearestRoastIsToldWithHowNearItIs() {
        List<Nearest.Neighbour> two =
                List.of(other("H205", 44.6, Nearest.Lot.SAME), other("H180", 90, Nearest.Lot.OTHER));
        says(
                NearestInShort.of("H240", two, 67.3, 142),
                "Of 2 batches on its probe, batch H205 was roasted most like batch H240.",
                "One of the two spent 45 s at other temperatures; of half of all batches it is more than 67 s.",
                "Taste the two side by side: alike on paper is not alike in the cup.");
        assertEquals(
                "Of its own lot batch H205 is nearest: taste the two side by side.",
                ShortSentences.keptBy(NearestInShort.of(
                                "H240",
                                List.of(other("H180", 44.6, Nearest.Lot.OTHER), other("H205", 90, Nearest.Lot.SAME)),
                                67.3,
                                0))
                        .next());
    }

    @Test
    void withoutOneOfItsLotTheCoffeeMayBeTheReason() {
        assertEquals(
                "None of them is known to be of its lot, so a different cup may be the coffee.",
                ShortSentences.keptBy(NearestInShort.of(
                                "H240",
                                List.of(other("H180", 44.6, Nearest.Lot.OTHER), other("H181", 90, Nearest.Lot.OTHER)),
                                67.3,
                                0))
                        .next());
    }

    @Test
    void oneOtherBatchOrNoneIsToldAsThat() {
        says(
                NearestInShort.of("H240", List.of(other("H205", 44.6, Nearest.Lot.SAME)), Double.NaN, 0),
                "The only other batch on the probe of batch H240 is batch H205.",
                "One of the two spent 45 s at other temperatures; whether that is much, one other batch cannot tell.",
                "Taste the two side by side: alike on paper is not alike in the cup.");
        says(
                NearestInShort.of("H240", List.of(), Double.NaN, 12),
                "Which roast was most like batch H240 cannot be told.",
                "All 12 others were read by another probe, or before or after it was moved.",
                "Ask again when more batches have been roasted on its probe.");
        assertEquals(
                "The one other batch was read by another probe, or before or after it was moved.",
                ShortSentences.keptBy(NearestInShort.of("H240", List.of(), Double.NaN, 1))
                        .howSure());
        assertEquals(
                "No other batch has a bean temperature.",
                ShortSentences.keptBy(NearestInShort.of("H240", List.of(), Double.NaN, 0))
                        .howSure());
    }

    private static InShort clock(Clock clock, int asked, int laid, double at, double mean, double half, int batches) {
        return ClockInShort.of(
                clock,
                asked,
                laid,
                Optional.of(new ClockInShort.HalfWay(at, mean, half, batches, 25)),
                TemperatureUnit.CELSIUS);
    }

    @Test
    void manyBatchesAreToldByTheirMeanHalfWay() {
        says(
                clock(Clock.SINCE_CHARGE, 240, 98, 372, 158.3, 1.3, 89),
                "Half way, at 6:12, the bean temperature of 89 batches was on average 158.3 °C (157.0 °C to 159.6 °C).",
                "98 of 240 batches are on this clock; their mean is that of 25 roast days.",
                "Look for lines that leave the crowd, and ask what was different that day.");
        assertEquals(
                "At 158 °C the rate of rise of 89 batches was on average 12.4 °C/min (12.1 °C/min to 12.7 °C/min).",
                ShortSentences.keptBy(clock(Clock.BY_BEAN_TEMPERATURE, 240, 98, 158, 12.4, 0.3, 89))
                        .found());
        assertEquals(
                "Half way, at -3:20, the bean temperature of the one batch was 158.3 °C.",
                ShortSentences.keptBy(clock(Clock.SINCE_FIRST_CRACK_START, 1, 1, -200, 158.3, Double.NaN, 1))
                        .found());
    }

    @Test
    void aMeanOfFewDaysIsToldWithoutAnInterval() {
        says(
                clock(Clock.SINCE_CHARGE, 1, 1, 372, 158.3, Double.NaN, 3),
                "Half way, at 6:12, the bean temperature of 3 batches was on average 158.3 °C.",
                "1 of 1 batch is on this clock; how well their mean is known cannot be told from so few roast days.",
                "Look for lines that leave the crowd, and ask what was different that day.");
    }

    @Test
    void whatCannotBeLaidOnAClockIsToldAsThat() {
        says(
                ClockInShort.of(Clock.SINCE_YELLOWING, 9, 0, Optional.empty(), TemperatureUnit.CELSIUS),
                "None of these batches can be laid on this clock.",
                "It needs a bean temperature and the yellowing.",
                "Write that mark while you roast, or take another clock.");
        says(
                ClockInShort.of(Clock.SINCE_CHARGE, 9, 2, Optional.empty(), TemperatureUnit.CELSIUS),
                "2 of 9 batches are on this clock, but they share no stretch of it.",
                "So they have no mean.",
                "Look at the lines one by one.");
    }

    @Test
    void groupsThatDifferAreToldWhereMostOfAll() {
        says(
                DifferenceInShort.of(
                        "Cinder Ridge",
                        "Low Orchard",
                        List.of("Cinder Ridge is hotter between 2:00 and 4:00, by up to 3.1 °C (1.2 to 5.0)"),
                        "5.0 °C"),
                "Cinder Ridge is hotter between 2:00 and 4:00, by up to 3.1 °C (1.2 to 5.0).",
                "That is more than luck, also over the whole curve at once.",
                "Chance did not part these groups: look for what else differed between them.");
        assertEquals(
                "That is more than luck, also over the whole curve at once, and so is one other stretch below.",
                ShortSentences.keptBy(DifferenceInShort.of("A", "B", List.of("a is hotter", "A is colder"), ""))
                        .howSure());
        assertEquals(
                "That is more than luck, also over the whole curve at once, and so are 2 other stretches below.",
                ShortSentences.keptBy(DifferenceInShort.of(
                                "A", "B", List.of("a is hotter", "A is colder", "A is hotter"), ""))
                        .howSure());
    }

    @Test
    void groupsThatDoNotDifferOrCannotBeComparedAreToldAsThat() {
        says(
                DifferenceInShort.of("Cinder Ridge", "Low Orchard", List.of(), "2.1 °C"),
                "No difference is seen: Cinder Ridge against Low Orchard.",
                "Differences of up to 2.1 °C are not ruled out.",
                "More batches of both on more roast days would rule out smaller ones.");
        says(
                DifferenceInShort.cannotTell("Cinder Ridge", "Low Orchard"),
                "Whether these two differ cannot be told: Cinder Ridge and Low Orchard.",
                "Each needs batches of 5 roast days that reach over a common stretch.",
                "Roast both on more days, then ask again.");
    }

    private static InShort split(double pace, double lower, double upper) {
        return ShortSentences.keptBy(SplitInShort.of("204 °C", pace, new Interval(lower, upper, 0.90)));
    }

    @Test
    void theSpreadOfDropTimesIsToldByItsLargerPart() {
        says(
                split(0.72, 0.61, 0.84),
                "Of what makes drop times differ, about 72 parts in 100 are pace up to 204 °C and 28 a hotter or colder drop.",
                "Anything from 61 to 84 parts in 100 for pace agrees with the batches.",
                "To even out drop times, look where slow and fast batches lose or gain theirs.");
        says(
                split(0.2, 0.1, 0.3),
                "Of what makes drop times differ, about 20 parts in 100 are pace up to 204 °C and 80 a hotter or colder drop.",
                "Anything from 10 to 30 parts in 100 for pace agrees with the batches.",
                "To even out drop times, drop nearer to one temperature.");
        String open = "Which of the two is larger cannot be told: more roast days would tell.";
        assertEquals(open, split(0.72, 0.5, 0.84).next());
        assertEquals(open, split(0.3, 0.1, 0.5).next());
        assertEquals(
                "To even out drop times, look where slow and fast batches lose or gain theirs.",
                split(0.72, 0.51, 0.84).next());
        assertEquals(
                "To even out drop times, drop nearer to one temperature.",
                split(0.3, 0.1, 0.49).next());
    }

    @Test
    void aPartThatMadeUpForTheOtherIsToldAsThat() {
        says(
                split(1.2, 0.9, 1.4),
                "Drop times differ by pace, and the drop temperature made up for a part of it.",
                "Anything from 90 to 100 parts in 100 for pace agrees with the batches.",
                "To even out drop times, look where slow and fast batches lose or gain theirs.");
        says(
                split(-0.1, -0.3, 0.2),
                "Drop times differ by the drop temperature, and pace made up for a part of it.",
                "Anything from 0 to 20 parts in 100 for pace agrees with the batches.",
                "To even out drop times, drop nearer to one temperature.");
        assertEquals(
                "How sure that is cannot be told from so few roast days.",
                split(0.72, Double.NaN, Double.NaN).howSure());
        says(
                SplitInShort.cannotTell(7),
                "How much of what makes drop times differ is pace cannot be told.",
                "It takes 5 batches on one probe with a bean temperature and a drop, more than these 7 give.",
                "Ask again when more batches have been roasted on today's probe.");
    }
}
