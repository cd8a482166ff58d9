package parchment.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MarkdownTextTest {
    /** A fence may be indented by up to three spaces (CommonMark 0.31, 4.5); with four it is text. */
    @ParameterizedTest
    @CsvSource({"0,````", "1,````", "3,````", "4,```"})
    void nothingInATextClosesItsFence(int spaces, String fence) {
        String text = "before\n" + " ".repeat(spaces) + "```\nafter";
        assertEquals(fence + "text\n" + text + "\n" + fence, MarkdownText.fenced("text", text));
    }

    @Test
    void signsAreShownAsTheyAre() {
        assertEquals("a\\*b\\_c\\#1", MarkdownText.escaped("a*b_c#1"));
    }
}
