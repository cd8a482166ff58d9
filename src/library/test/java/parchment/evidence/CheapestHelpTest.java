package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import parchment.display.ShortSentences;

/** Holds what is told to do first where the batches cannot tell. */
class CheapestHelpTest {
    private static final String MORE = "About 14 more batches would tell.";
    private static final String CODES = "Put codes on the cups first: who knows the batch tastes what they expect.";

    private static String words(long scored, long lots, long dates, double blind) {
        String words = new CheapestHelp(scored, lots, dates, blind).words(MORE);
        ShortSentences.keptBy(words);
        return words;
    }

    @Test
    void aLotIsToBeWrittenFromAQuarterOfTheScoredBatchesOn() {
        assertEquals("17 more batches have no lot written: add it, then they count too.", words(23, 17, 0, 0));
        assertEquals("5 more batches have no lot written: add it, then they count too.", words(15, 5, 0, 1));
        assertEquals(MORE, words(16, 5, 0, 1));
        assertEquals("1 more batch has no lot written: add it, then that batch counts too.", words(3, 1, 0, 1));
        assertEquals(MORE, words(0, 0, 0, 1));
    }

    @Test
    void soIsADateAndTheMoreFrequentComesFirst() {
        assertEquals("5 more batches have no date written: add it, then they count too.", words(15, 0, 5, 1));
        assertEquals("6 more batches have no date written: add it, then they count too.", words(9, 5, 6, 1));
        assertEquals("5 more batches have no lot written: add it, then they count too.", words(9, 5, 5, 1));
        assertEquals(MORE, words(17, 0, 5, 1));
    }

    @Test
    void codesComeNextWhereHardlyAnyCupWasBlind() {
        assertEquals(CODES, words(30, 0, 0, 0.09));
        assertEquals(MORE, words(30, 0, 0, 0.1));
    }

    @Test
    void whatElseHelpsIsToldBelowThePicture() {
        assertEquals(
                "After that: put codes on the cups. About 14 more batches would tell.",
                new CheapestHelp(23, 17, 0, 0).afterThat(MORE));
        assertEquals("After that: about 14 more batches would tell.", new CheapestHelp(23, 17, 0, 1).afterThat(MORE));
        assertEquals("After that: about 14 more batches would tell.", new CheapestHelp(30, 0, 0, 0).afterThat(MORE));
        assertEquals("", new CheapestHelp(30, 0, 0, 1).afterThat(MORE));
    }
}
