package parchment.display.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;

class SpellingTest {
    /** The textbook pair of Wagner and Fischer's algorithm, from memory: kitten to sitting takes three changes. */
    @Test
    void countsTheChangesOfTheTextbookPair() {
        assertEquals(3, Spelling.changes("kitten", "sitting"));
        assertEquals(3, Spelling.changesOrSwaps("kitten", "sitting"));
    }

    @Test
    void aSwapOfNeighboursIsOneSlipOrTwoChanges() {
        assertEquals(2, Spelling.changes("temprature", "tepmrature"));
        assertEquals(1, Spelling.changesOrSwaps("temprature", "tepmrature"));
    }

    @Test
    void anEmptyNameIsAsFarAsTheOtherIsLong() {
        assertEquals(5, Spelling.changes("", "chaff"));
        assertEquals(5, Spelling.changesOrSwaps("chaff", ""));
    }

    @Test
    void aTextLongerThanAnyNameIsNotComparedLetterByLetter() {
        String longest = "n".repeat(Spelling.LONGEST_COMPARED);
        assertEquals(1, Spelling.changes(longest, longest.substring(1)));
        assertEquals(Spelling.LONGEST_COMPARED + 1, Spelling.changes(longest + "n", longest));
        assertEquals(10_000_000, Spelling.changesOrSwaps("n".repeat(10_000_000), "name"));
        assertEquals(0, Spelling.changes(longest + "n", longest + "n"));
    }

    @Test
    void theLongerANameIsTheMoreSlipsItMayHold() {
        List<String> known = List.of("ab", "cut", "drops", "yellow", "air steps", "chargetemp");
        assertEquals(Optional.of("ab"), Spelling.closest(" AB", known));
        assertEquals(Optional.empty(), Spelling.closest("ac", known));
        assertEquals(Optional.of("cut"), Spelling.closest("cot", known));
        assertEquals(Optional.empty(), Spelling.closest("cod", known));
        assertEquals(Optional.of("drops"), Spelling.closest("drips", known));
        assertEquals(Optional.empty(), Spelling.closest("grips", known));
        assertEquals(Optional.of("yellow"), Spelling.closest("jellov", known));
        assertEquals(Optional.empty(), Spelling.closest("jellas", known));
        assertEquals(Optional.of("air steps"), Spelling.closest("are steps", known));
        assertEquals(Optional.empty(), Spelling.closest("are stops", known));
        assertEquals(Optional.of("chargetemp"), Spelling.closest("shargetamb", known));
        assertEquals(Optional.empty(), Spelling.closest("shorgetamb", known));
        assertEquals(Optional.empty(), Spelling.closest("n".repeat(Spelling.LONGEST_COMPARED + 1), known));
        assertEquals(Optional.empty(), Spelling.closest("", known));
    }

    @Test
    void ofTwoNamesAsNearTheFirstIsOffered() {
        assertEquals(" Did you mean 'body'?", Spelling.question("bodi", List.of("acid", "body", "bode")));
        assertEquals("", Spelling.question("sweetness", List.of("acid", "body")));
        assertEquals(" Did you mean 'Body'?", Spelling.question("bdoy", List.of("Body")));
    }

    @RepeatedTest(50)
    void neitherDirectionNorSwapsMakeANameFarther(RepetitionInfo repetition) {
        SplittableRandom random = new SplittableRandom(repetition.getCurrentRepetition());
        String a = word(random);
        String b = word(random);
        assertEquals(Spelling.changes(a, b), Spelling.changes(b, a));
        assertTrue(Spelling.changesOrSwaps(a, b) <= Spelling.changes(a, b));
        assertTrue(Spelling.changes(a, b) >= Math.abs(a.length() - b.length()));
        assertEquals(0, Spelling.changes(a, a));
    }

    private static String word(SplittableRandom random) {
        StringBuilder word = new StringBuilder();
        int length = random.nextInt(9);
        for (int i = 0; i < length; i++) {
            word.append((char) ('a' + random.nextInt(4)));
        }
        return word.toString();
    }
}
