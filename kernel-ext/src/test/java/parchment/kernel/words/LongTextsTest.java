package parchment.kernel.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.cell.RecordingPage;

/** What a cell with a text does that is longer than Java takes, and what the cells after it do. */
@Timeout(60)
class LongTextsTest {
    private static Evaluator evaluator;

    @BeforeAll
    static void open() {
        evaluator = Evaluator.open();
    }

    @AfterAll
    static void close() {
        evaluator.close();
    }

    private final RecordingPage page = new RecordingPage();

    private Optional<String> errorOf(String code) {
        return evaluator.run(code, page).error().map(CellError::text);
    }

    private void assertGoesOn() {
        assertEquals(Optional.empty(), errorOf("var y = 3; y + 39"));
        assertEquals("42", page.result());
    }

    @Test
    void aTextLongerThanJavaTakesIsRefusedInWordsAndLaterCellsRun() {
        String rows = "lot,score\n" + ("harbour blend,84.5;".repeat(100) + "\n").repeat(41);
        assertEquals(
                "Line 2:  var csv = \"\"\"\nThis text is " + String.format("%,d", rows.length())
                        + " bytes long, and Java takes at most 65,534 between quotes. Save it as a file, and read it with"
                        + " `Files.readString(Path.of(\"name-of-the-file\"))`.",
                errorOf("int before = 1;\nvar csv = \"\"\"\n" + rows + "\"\"\";\ncsv.length()")
                        .orElseThrow());
        assertGoesOn();
    }

    @ParameterizedTest
    @CsvSource({
        "x, 65534, 65534",
        "x, 65535, 65535",
        "é, 32767, 65534",
        "é, 32768, 65536",
        "☕, 21844, 65532",
        "☕, 21845, 65535"
    })
    void theBytesOfATextAreCounted(String letter, int times, int bytes) {
        Optional<String> error = errorOf("var t = \"" + letter.repeat(times) + "\"; t.length()");
        assertEquals(bytes > LongTexts.MOST_BYTES, error.isPresent(), () -> error.orElse("fine"));
        assertTrue(error.isEmpty() || error.get().contains(String.format("This text is %,d bytes", bytes)));
        assertGoesOn();
    }

    @Test
    void anErrorInALineWithALongTextIsStillExplained() {
        String error = errorOf("int t = \"" + "x".repeat(30_000) + "\";").orElseThrow();
        assertTrue(error.endsWith("This is of type String, but int is needed here."), error);
    }

    @Test
    void textsThatTheCompilerJoinsCountAsOne() {
        String half = "y".repeat(40_000);
        assertTrue(errorOf("var t = \"" + half + "\" + (\"" + half + "\");")
                .orElseThrow()
                .contains("80,000 bytes"));
        assertTrue(errorOf("int n() { final String h = \"" + half + "\"; return (h + h).length(); }")
                .orElseThrow()
                .contains("80,000 bytes"));
        assertGoesOn();
        assertEquals(
                Optional.empty(), errorOf("int m() { String h = \"" + half + "\"; return (h + h).length(); }\nm()"));
        assertEquals("80000", page.result());
    }

    @Test
    void constantsOfEarlierCellsThatTheCompilerJoinsCountToo() {
        String half = "z".repeat(40_000);
        assertEquals(
                Optional.empty(),
                errorOf("class Held { static final String HEAD = \"" + half
                        + "\"; String own = \"a\"; }\ninterface Rows { String TAIL = \"" + half + "\"; }"));
        for (String joined :
                new String[] {"(Held.HEAD + Rows.TAIL).length()", "String m = Held.HEAD + \"\" + (Held.HEAD);"}) {
            assertTrue(
                    errorOf(joined)
                            .orElse("fine")
                            .contains("This text is 80,000 bytes long, and Java takes at most 65,534"),
                    joined);
            assertGoesOn();
        }
        assertEquals(Optional.empty(), errorOf("Held.HEAD.length() + Rows.TAIL.length()"));
        assertEquals("80000", page.result());
        assertEquals(
                Optional.empty(),
                errorOf("class Held { static final String HEAD = \"short\"; }\n(Held.HEAD + Rows.TAIL).length()"));
        assertEquals("40005", page.result());
        assertTrue(
                errorOf("class Late { static final String HEAD = \"" + half + "\"; }\n(Late.HEAD + Late.HEAD).length()")
                        .orElse("fine")
                        .contains("80,000 bytes"));
        assertGoesOn();
    }

    /** Twenty-two of 3,000 letters are more than Java takes, and no line of the cell that adds them up is long. */
    @Test
    void aConstantOfAFewThousandLettersIsKeptToo() {
        assertEquals(
                Optional.empty(),
                errorOf("class Page { static final String ROW = \"" + "r".repeat(3_000)
                        + "\"; static final String WORD = \"lot\"; }"));
        assertTrue(errorOf("(" + "Page.ROW + ".repeat(21) + "Page.ROW).length()")
                .orElse("fine")
                .contains("This text is 66,000 bytes long"));
        assertGoesOn();
        assertEquals(Optional.empty(), errorOf("(" + "Page.ROW + ".repeat(20) + "Page.ROW).length()"));
        assertEquals("63000", page.result());
    }

    @Test
    void aFilePastedUnderAPercentLineMayBeLonger() {
        String body = "<project>" + ("<!-- \"roast\" -->".repeat(100) + "\n").repeat(90);
        assertTrue(!errorOf("%%loadFromPOM\n" + body).orElseThrow().contains("bytes long"));
        assertGoesOn();
    }
}
