package parchment.kernel.words;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** What helps a beginner over an error. */
class AdviceTest {
    @Test
    void saysHowAFileIsReadWhereTheGuesserOfLettersIsNotThere() {
        assertEquals(
                "Tablesaw guesses the letters of a file with a library that is not here. Say which they are by opening the file yourself:"
                        + " Table.read().csv(Files.newBufferedReader(Path.of(\"sales.csv\"))) reads UTF-8.",
                Advice.on(new NoClassDefFoundError(), "com/ibm/icu/text/CharsetDetector"));
    }
}
