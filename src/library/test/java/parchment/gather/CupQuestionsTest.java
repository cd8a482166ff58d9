package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What is asked about a cup that several batches can be meant by, and what stands until it is answered. */
class CupQuestionsTest {
    private static final String KEY = "cup.2031-06-11-três-velas-2031-06-18";
    private static final FoundTable SHEET = MadeTables.of("a|b");
    private static final List<NamedBatch> BATCHES = List.of(
            batch("61", "2031-06-11", "Três Velas"),
            batch("62", "2031-06-11", "Três Velas"),
            batch("63", "2031-06-11", "Wren"),
            batch("64", "2031-06-11", "Três Velas"),
            batch("2031-06-12-1", "2031-06-12", "Kela"),
            batch("2031-06-12-2", "2031-06-12", "Kela"));

    private static NamedBatch batch(String name, String day, String lot) {
        return new NamedBatch(name, List.of(), Optional.of(LocalDate.parse(day)), Optional.empty(), lot);
    }

    private static TastedCup cup(int line, String tasted, String batch, String code, String lot) {
        return new TastedCup(
                Optional.of(LocalDate.parse(tasted)),
                "",
                "Inês",
                batch,
                code,
                lot,
                0,
                Map.of("body", 7.0),
                0,
                "",
                SHEET,
                line);
    }

    private static List<String> joined(GatherQuestions questions, TastedCup... cups) {
        return new CupQuestions(questions)
                .joined(CupJoin.of(Arrays.asList(cups), List.of(), BATCHES)).stream()
                        .map(joined -> joined.cup().line() + " " + joined.batch())
                        .toList();
    }

    private static TastedCup[] ofTheDay() {
        return new TastedCup[] {
            cup(2, "2031-06-18", "2031-06-11", "", "Três Velas"), cup(3, "2031-06-18", "2031-06-11", "", "Três Velas")
        };
    }

    @Test
    void noneOfSeveralBatchesStandsUntilItIsAnswered() {
        GatherQuestions questions = new GatherQuestions(Map.of());
        assertEquals(List.of(), joined(questions, ofTheDay()));
        GatherQuestions.Open open = questions.open().get(0);
        assertEquals(
                "Of which batch are the 2 cups of 'Três Velas', roasted on 2031-06-11, tasted on 2031-06-18? It is not certain:"
                        + " scores.csv line 2: 3 batches were of lot 'Três Velas' roasted on 2031-06-11. It can be '61', '62', '64'."
                        + " Answer with the batch's name, or none. Not answered yet; until then, in doubt: none ("
                        + KEY + "; it decides 2 cups)",
                open.listed());
        assertEquals(
                List.of("2 cups of 'Três Velas', roasted on 2031-06-11, tasted on 2031-06-18: no batch, so left out ("
                        + KEY + ")."),
                questions.leftOut());
    }

    @Test
    void whatIsAnsweredIsTakenForEachOfThem() {
        assertEquals(List.of("2 62", "3 62"), joined(new GatherQuestions(Map.of(KEY, "62")), ofTheDay()));
    }

    @Test
    void theOnlyBatchThatIsCalledSoStandsThoughItIsAskedAbout() {
        GatherQuestions questions = new GatherQuestions(Map.of());
        assertEquals(List.of("2 63"), joined(questions, cup(2, "2031-06-10", "63", "", "")));
        assertEquals("63", questions.open().get(0).proposal());
        assertTrue(
                questions
                        .open()
                        .get(0)
                        .question()
                        .startsWith("Of which batch is the cup of '63', tasted on 2031-06-10?"),
                questions.open().toString());
    }

    @Test
    void aCodeAmongOthersThatAreNoBatchesIsNotTakenForTheBatchOfThatName() {
        GatherQuestions questions = new GatherQuestions(Map.of());
        assertEquals(
                List.of(), joined(questions, cup(2, "2031-06-18", "", "63", ""), cup(3, "2031-06-18", "", "417", "")));
        assertEquals("none", questions.open().get(0).proposal());
    }

    @Test
    void aBatchWhoseNameBeginsWithItsDayIsFoundByItsName() {
        assertEquals(
                List.of("2 2031-06-12-2"),
                joined(new GatherQuestions(Map.of()), cup(2, "2031-06-18", "2031-06-12-2", "", "")));
    }
}
