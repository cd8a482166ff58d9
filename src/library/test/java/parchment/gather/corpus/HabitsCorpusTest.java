package parchment.gather.corpus;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import parchment.gather.corpus.CorpusScore.Verdict;

/** Holds that folders kept by habits that many roasters may have are read whole, with nobody there to answer. */
class HabitsCorpusTest {
    static List<Kind> kinds() {
        return KindsOfHabits.all();
    }

    @ParameterizedTest
    @MethodSource("kinds")
    void aHabitOfKeepingFilesIsReadWhole(Kind kind) throws IOException {
        CorpusScore score = CorpusStudy.measure(kind, 1, CorpusStudy.Asked.NOBODY);
        for (Verdict verdict : Verdict.values()) {
            if (verdict != Verdict.RIGHT) {
                assertEquals(0, score.count(verdict), kind.name() + " " + verdict + ": " + score.failures());
            }
        }
    }
}
