package parchment.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FileNameTest {
    @ParameterizedTest
    @ValueSource(
            strings = {"CON", "con", "Prn", "aux.csv", "NUL.a.b", "com0", "COM9", "lpt1.txt", "com\u00B9", "con .csv"})
    void windowsKeepsSomeWords(String name) {
        assertTrue(FileName.isKeptByWindows(name));
    }

    @ParameterizedTest
    @ValueSource(strings = {"cone", "my con", "com", "com10", "lpt", "con-1", "a.con", "co n", ""})
    void theirNeighboursAreFree(String name) {
        assertFalse(FileName.isKeptByWindows(name));
    }

    @Test
    void aNameFitsUpTo255BytesHoweverFewLettersItHas() {
        assertTrue(FileName.fits("x".repeat(255)));
        assertFalse(FileName.fits("x".repeat(256)));
        assertTrue(FileName.fits("\u7126".repeat(85)));
        assertFalse(FileName.fits("\u7126".repeat(85) + "x"));
    }

    @Test
    void namesAreAlikeByCaseAndByUnicodeForm() {
        assertEquals(FileName.alike("A.csv"), FileName.alike("a.CSV"));
        assertEquals(FileName.alike("Caf\u00C9"), FileName.alike("cafe\u0301"));
        assertEquals(FileName.alike("\u03C3"), FileName.alike("\u03C2"), "a small sigma at the end of a word");
        assertNotEquals(FileName.alike("cafe"), FileName.alike("caf\u00E9"));
    }
}
