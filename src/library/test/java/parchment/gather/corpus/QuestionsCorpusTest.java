package parchment.gather.corpus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.gather.corpus.CorpusScore.Verdict;
import parchment.gather.corpus.CorpusStudy.Asked;
import parchment.gather.corpus.StrangeKind.Fact;

/** Questions of whole folders; those of bare masses and of two lists are held by NotAnsweredTest. */
class QuestionsCorpusTest {
    /** What cannot be known from the files is right once the roaster has answered, and said to be in doubt until then. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    questions: the list's clock an hour behind             | TIMES
                    questions: nobody is named on a score sheet            | SCORES
                    questions: a lot in small letters on some rows         | LOTS
                    questions: a cool charge in °F or a hot one in °C, and no recording | CHARGE_TEMPERATURES
                    """)
    void whatOnlyTheRoasterKnowsIsInDoubtUntilItIsAnswered(String kind, Fact fact) throws IOException {
        CorpusScore alone = CorpusStudy.measure(CorpusKinds.named(kind), 1, Asked.NOBODY);
        assertEquals(0, alone.count(Verdict.WRONG_IN_SILENCE), alone.failures());
        assertEquals(0, alone.count(Verdict.LEFT_OUT_IN_SILENCE), alone.failures());
        assertTrue(
                alone.items().stream().anyMatch(item -> item.fact() == fact && item.verdict() != Verdict.RIGHT),
                "nothing is open");
        CorpusScore asked = CorpusStudy.measure(CorpusKinds.named(kind), 1, Asked.THE_ROASTER);
        assertEquals(100, asked.share(Verdict.RIGHT), asked.failures());
    }
}
