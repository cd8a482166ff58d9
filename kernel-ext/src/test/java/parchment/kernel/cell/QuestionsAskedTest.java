package parchment.kernel.cell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.display.live.Asked;
import parchment.kernel.page.Shown;

class QuestionsAskedTest {
    private static final String SCORES = "the scores of Tidewater";

    private final QuestionsAsked questions = new QuestionsAsked();

    private List<String> cell(String... asked) {
        return cellOf(SCORES, asked);
    }

    private List<String> cellOf(String of, String... asked) {
        questions.beginCell();
        for (String question : asked) {
            questions.add(new Asked(of, question));
        }
        return questions.foot();
    }

    private void askDifferent(int count) {
        cell(IntStream.rangeClosed(1, count).mapToObj(i -> "question " + i).toArray(String[]::new));
    }

    /** 1 - 0.95^n, worked out by hand for 1, 2 and 3 (0.05, 0.0975, 0.142625) and by logarithms for the rest. */
    @ParameterizedTest
    @CsvSource({
        "2, about one time in ten, 10",
        "3, about one time in seven, 14",
        "4, about one time in five, 19",
        "5, about one time in four, 23",
        "6, about one time in four, 26",
        "7, about one time in three, 30",
        "8, about one time in three, 34",
        "9, about one time in three, 37",
        "10, about one time in three, 40",
        "11, about one time in two, 43",
        "14, about one time in two, 51",
        "20, about two times in three, 64",
        "27, about three times in four, 75",
        "32, about four times in five, 81",
        "45, about nine times in ten, 90",
        "58, about 19 times in 20, 95",
        "80, nearly always, 98",
        "100, nearly always, over 99",
    })
    void saysHowOftenLuckAloneWouldFindSomething(int count, String how, String inHundred) {
        assertEquals(
                "If nothing went with them, " + count + " questions would still bring a finding by luck " + how + " ("
                        + inHundred + " in 100, at 5 in 100 each and as if each stood for itself).",
                LuckWords.sentence(count));
    }

    @Test
    void saysWhatOneQuestionMeans() {
        assertEquals(
                "If nothing went with them, it would still bring a finding by luck about one time in 20 (5 in 100).",
                LuckWords.sentence(1));
    }

    @ParameterizedTest
    @CsvSource({
        "1, first",
        "2, 2nd",
        "3, 3rd",
        "4, 4th",
        "11, 11th",
        "12, 12th",
        "13, 13th",
        "21, 21st",
        "22, 22nd",
        "23, 23rd",
        "101, 101st",
        "111, 111th"
    })
    void countsInWords(int number, String words) {
        assertEquals(words, LuckWords.ordinal(number));
    }

    @Test
    void theChanceOfOneQuestionIsTheOneThatTheMethodStates() throws IOException {
        String method = Files.readString(Path.of("../docs/evidence.md"));
        assertTrue(
                method.contains("(" + Math.round(100 * LuckWords.CHANCE) + " together)"), "docs/evidence.md, Verdicts");
    }

    @Test
    void theFirstQuestionSaysThatARestartBeginsAnew() {
        assertEquals(
                List.of(
                        "The first question put to the scores of Tidewater in this session; after a restart the count begins anew."
                                + " If nothing went with them, it would still bring a finding by luck about one time in 20 (5 in 100)."),
                cell("sweetness; drop temperature"));
    }

    @Test
    void theNinthQuestionSaysWhatNineMean() {
        askDifferent(8);
        assertEquals(
                List.of(
                        "The 9th question put to the scores of Tidewater in this session. If nothing went with them, 9 questions would"
                                + " still bring a finding by luck about one time in three (37 in 100, at 5 in 100 each and as if each stood"
                                + " for itself)."),
                cell("question 9"));
    }

    @Test
    void manyQuestionsOfOneCellAreToldTogether() {
        askDifferent(2);
        assertEquals(
                List.of("Questions 3 to 5 put to the scores of Tidewater in this session. " + LuckWords.sentence(5)),
                cell("question 1", "question 3", "question 4", "question 5", "question 4"));
    }

    @Test
    void aFirstCellOfManyQuestionsSaysThatARestartBeginsAnew() {
        assertEquals(
                List.of(
                        "Questions 1 and 2 put to the scores of Tidewater in this session; after a restart the count begins anew. "
                                + LuckWords.sentence(2)),
                cell("question 1", "question 2"));
    }

    @Test
    void theSameQuestionOnceMoreIsNoNewOne() {
        cell("question 1");
        assertEquals(
                List.of(
                        "Asked before, so not counted again: one question has been put to the scores of Tidewater in this session. "
                                + LuckWords.sentence(1)),
                cell("question 1"));
        cell("question 2");
        assertEquals(
                List.of(
                        "Asked before, so not counted again: 2 questions have been put to the scores of Tidewater in this session. "
                                + LuckWords.sentence(2)),
                cell("question 1", "question 2"));
    }

    @Test
    void scoresOfTwoLogbooksAreCountedApart() {
        askDifferent(3);
        assertEquals(
                "The first question put to the scores of Hillside",
                cellOf("the scores of Hillside", "question 1").get(0).replaceFirst(" in this session.*", ""));
        assertEquals(
                "The 4th question put to the scores of Tidewater",
                cell("question 4").get(0).replaceFirst(" in this session.*", ""));
    }

    /** Otherwise five students, each asked once, would read as one logbook asked five times. */
    @Test
    void logbooksOfOneNameAreCountedApartAndToldApart() {
        questions.beginCell();
        questions.add(new Asked(SCORES, "student-01/logbook", "question 1"));
        questions.add(new Asked(SCORES, "student-02/logbook", "question 1"));
        questions.add(new Asked(SCORES, "student-01/logbook", "question 1"));
        assertEquals(
                List.of(
                        "The first question put to the scores of Tidewater in this session; after a restart the count begins anew. "
                                + LuckWords.sentence(1),
                        "The first question put to the scores of Tidewater (the 2nd logbook of that name) in this session; after a"
                                + " restart the count begins anew. " + LuckWords.sentence(1)),
                questions.foot());
        assertEquals(
                List.of(
                        "One question was put to the scores of Tidewater on this page; every run counts anew. "
                                + LuckWords.sentence(1),
                        "One question was put to the scores of Tidewater (the 2nd logbook of that name) on this page; every run counts"
                                + " anew. " + LuckWords.sentence(1)),
                questions.ofSession());
    }

    @Test
    void aCellThatAsksTwoLogbooksHasTwoLines() {
        questions.beginCell();
        questions.add(new Asked("the scores of Hillside", "question 1"));
        questions.add(new Asked(SCORES, "question 1"));
        assertEquals(2, questions.foot().size());
    }

    @Test
    void aCellThatAsksNothingHasNoFoot() {
        askDifferent(3);
        assertEquals(List.of(), cell());
    }

    @Test
    void thePageAsAWholeSaysHowManyItAsked() {
        assertEquals(List.of(), questions.ofSession());
        cell("question 1");
        assertEquals(
                List.of("One question was put to the scores of Tidewater on this page; every run counts anew. "
                        + LuckWords.sentence(1)),
                questions.ofSession());
        cell("question 1", "question 2");
        assertEquals(
                List.of(
                        "2 different questions were put to the scores of Tidewater on this page; every run counts anew. "
                                + LuckWords.sentence(2)),
                questions.ofSession());
    }

    @Test
    void showsItselfAsTextAndAsHtmlThatEscapesALogbooksName() {
        Shown shown = QuestionsAsked.shown(cellOf("the scores of <Tide & Water>", "question 1"));
        assertTrue(shown.text().startsWith("The first question put to the scores of <Tide & Water> in"), shown.text());
        String html = shown.forms().get(Shown.HTML);
        assertTrue(html.contains("<p>The first question put to the scores of &lt;Tide &amp; Water&gt; in"), html);
    }
}
