package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What a gathering says, as text and on a page. */
class GatherLinesTest {
    @Test
    void aPageHasParagraphsPointsAndLinesOfTheFileAndEscapesThem() {
        GatherLines lines = new GatherLines(List.of(
                "Style a: 2 recordings.",
                "    a & b | <i>",
                "    1 | 2",
                "  Column 1: time",
                "  Column 2: gas",
                "",
                "Sheet a"));

        assertEquals(
                "Style a: 2 recordings.\n    a & b | <i>\n    1 | 2\n  Column 1: time\n  Column 2: gas\n\nSheet a",
                lines.text());
        assertEquals(
                Optional.of("<p style=\"max-width:50em\">Style a: 2 recordings.</p>\n"
                        + "<pre style=\"overflow-x:auto\">a &amp; b | &lt;i&gt;\n1 | 2\n</pre>\n"
                        + "<ul style=\"max-width:50em\"><li>Column 1: time</li>\n<li>Column 2: gas</li>\n</ul>\n"
                        + "<p style=\"max-width:50em\">Sheet a</p>\n"),
                lines.html());
    }

    @Test
    void aListAtTheEndIsClosed() {
        assertEquals(
                Optional.of("<ul style=\"max-width:50em\"><li>x</li>\n</ul>\n"),
                new GatherLines(List.of("  x")).html());
    }
}
