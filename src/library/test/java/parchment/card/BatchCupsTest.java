package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.drift.Usual;
import parchment.logbook.Logbook;

/** A batch's cups beside its lot's others. */
class BatchCupsTest {
    /** Four others with a score of 5 and of 7 each by one cupper: their standard deviation is the root of 8/7, 1.069 points. */
    private static CardLogbook others(int others) {
        CardLogbook built = CardLogbook.of(others + 1);
        for (int batch = 1; batch <= others; batch++) {
            built = built.cupBy("Ida", "blind", "B" + batch, "liking", 5)
                    .cupBy("Ida", "blind", "B" + batch, "liking", 7);
        }
        return built;
    }

    private static BatchCups cups(CardLogbook built, String batch) {
        Logbook logbook = built.logbook();
        return BatchCups.of(logbook.batch(batch), logbook);
    }

    /** One score has the standard error 1.069; 1.645 of it are 1.7585 points. */
    @ParameterizedTest
    @CsvSource({
        "7.759,'Its liking was 1.8 points above its lot''s others by the same cuppers (1 score, give or take 1.1): more than cups differ by as a rule.'",
        "7.758,'Its liking was 1.8 points above its lot''s others by the same cuppers (1 score, give or take 1.1): no more than cups differ by anyhow.'",
        "4.241,'Its liking was 1.8 points below its lot''s others by the same cuppers (1 score, give or take 1.1): more than cups differ by as a rule.'",
        "4.242,'Its liking was 1.8 points below its lot''s others by the same cuppers (1 score, give or take 1.1): no more than cups differ by anyhow.'",
        "6.01,'Its liking was that of its lot''s others by the same cuppers (1 score, give or take 1.1): no more than cups differ by anyhow.'"
    })
    void aDifferenceIsToldWithWhatCupsDifferByAnyhow(double score, String sentence) {
        CardLogbook built = others(4).cupBy("Ida", "blind", "B5", "liking", score);
        assertEquals(sentence + " All were scored blind.", cups(built, "B5").words());
    }

    @Test
    void saysHowManyScoresWereBlind() {
        CardLogbook open = others(4).cupBy("Ida", "open", "B5", "liking", 6);
        assertTrue(cups(open, "B5").words().endsWith(" None is known to be scored blind."));
        CardLogbook both = open.cupBy("Ida", "blind", "B5", "liking", 6);
        assertTrue(cups(both, "B5").words().endsWith(" 1 of 2 were scored blind."));
    }

    /** Eight scores of the lot's others are needed. */
    @Test
    void tooFewOthersAreSaidToBeTooFew() {
        assertEquals("It was not cupped.", cups(others(4), "B5").words());
        assertEquals(
                "It has 1 score sheet, and too few of its lot's others by the same cuppers to hold them against. All were scored"
                        + " blind.",
                cups(others(3).cupBy("Ida", "blind", "B4", "liking", 6), "B4").words());
        assertEquals(
                "It has 2 score sheets, and too few of its lot's others by the same cuppers to hold them against. All were scored"
                        + " blind.",
                cups(others(4).cup("blind", "B5", "sweetness", 6), "B5").words());
    }

    @Test
    void eachCupperStandsBesideWhatTheSameCupperScored() {
        CardLogbook built = others(4)
                .cupBy("Ida", "blind", "B5", "liking", 7)
                .cupBy("Ida", "blind", "B5", "liking", 8)
                .cupBy("Jon", "blind", "B5", "liking", 4);
        String table = cups(built, "B5").table().orElseThrow().text();
        assertTrue(
                table.lines().anyMatch(l -> l.replaceAll("\\s+", " ").strip().equals("Ida 2025-06-01 2 7.5 (6.0)")),
                table);
        assertTrue(
                table.lines().anyMatch(l -> l.replaceAll("\\s+", " ").strip().equals("Jon 2025-06-01 1 4.0")), table);
        assertTrue(table.contains("for the other batches of lot one."), table);
        assertTrue(cups(others(4), "B5").table().isEmpty());
    }

    private static final InShort BESIDE = new InShort("Found.", "How sure.", "Cup it.");

    private static String next(CardLogbook built, String batch) {
        InShort after = ShortSentences.keptBy(cups(built, batch).after(BESIDE, Usual.Verdict.UNLIKE_THE_OTHERS));
        assertEquals("Found. How sure.", after.found() + " " + after.howSure());
        return after.next();
    }

    @ParameterizedTest
    @CsvSource({
        "blind,7.759,'Its cups scored 1.8 points above its lot''s others in liking, blind: look at what else differed.'",
        "blind,7.758,'It was cupped, blind: its liking differs no more from its lot''s others than cups do anyhow.'",
        "blind,4.242,'It was cupped, blind: its liking differs no more from its lot''s others than cups do anyhow.'",
        "open,4.241,'Its cups scored 1.8 points below its lot''s others in liking: look at what else differed.'",
        "open,6.0,'It was cupped: its liking differs no more from its lot''s others than cups do anyhow.'"
    })
    void whatTheCupsSaidStandsInTheFirstSentences(String cupping, double score, String next) {
        assertEquals(next, next(others(4).cupBy("Ida", cupping, "B5", "liking", score), "B5"));
    }

    /** Where no number of the batch was unlike, there is nothing else to look at. */
    @ParameterizedTest
    @CsvSource({
        "LIKE_THE_OTHERS,'cup it again, nothing measured says why.'",
        "A_LITTLE_UNLIKE_THE_OTHERS,'look at what else differed.'",
        "UNLIKE_THE_OTHERS,'look at what else differed.'",
        "CANNOT_TELL,'why cannot be told.'"
    })
    void whatToDoAboutLowCupsHangsOnWhatElseDiffered(Usual.Verdict verdict, String then) {
        CardLogbook built = others(4).cupBy("Ida", "open", "B5", "liking", 4.241);
        assertEquals(
                "Its cups scored 1.8 points below its lot's others in liking: " + then,
                ShortSentences.keptBy(cups(built, "B5").after(BESIDE, verdict)).next());
    }

    /** Two scores of 5 and 9 lie 2.83 points about their mean, the others 1.07: the mean of the two is no surer than 2.83 over the root of two. */
    @Test
    void scoresThatLieFartherApartThanTheOthersMakeTheMeanLessSure() {
        CardLogbook built = others(4).cupBy("Ida", "open", "B5", "liking", 5).cupBy("Ida", "open", "B5", "liking", 9);
        assertEquals(
                "Its liking was 1.0 points above its lot's others by the same cuppers (2 scores, give or take 2.0): no more than"
                        + " cups differ by anyhow. None is known to be scored blind.",
                cups(built, "B5").words());
    }

    @Test
    void withoutCupsOrOthersTheFirstSentencesSaySo() {
        assertEquals("Cup it.", next(others(4), "B5"));
        assertEquals(
                "It was cupped, blind, but its scores cannot be held against its lot's others yet.",
                next(others(3).cupBy("Ida", "blind", "B4", "liking", 6), "B4"));
    }
}
