package parchment.display.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import parchment.display.Column;
import parchment.display.Showable;
import parchment.display.Table;

class ReportTest {
    private final Report report = Report.titled("Drop & cup")
            .say("38 of 41 batches were cupped.")
            .heading("What it moved with")
            .caution("Seen in this logbook only.")
            .add(Table.titled("Lots").withColumn(Column.text("lot", List.of("<b>"))));

    @Test
    void keepsItsPartsInOrder() {
        assertEquals("""
                Drop & cup

                38 of 41 batches were cupped.

                What it moved with

                Seen in this logbook only.

                Lots
                lot
                <b>""", report.text());
    }

    @Test
    void composesThePartsIntoOnePage() {
        String html = report.html().orElseThrow();
        assertTrue(html.contains("<h3>Drop &amp; cup</h3>"), html);
        assertTrue(html.contains("<caption>Lots</caption>"), html);
        assertFalse(html.contains("<b>"), html);
    }

    @Test
    void keepsNamesAndDatesOnOneLineInASentence() {
        String html = Report.titled("Batch of 2031-12-20")
                .say("Batch 20311220-01 of 2031-12-20.")
                .caution("a/b <i>")
                .add(new InShort("Found on 2031-12-20.", "Sure of 1-2.", "Next x/y."))
                .html()
                .orElseThrow();
        String whole = "<span style=\"white-space:nowrap\">";
        assertTrue(html.contains("<h3>Batch of " + whole + "2031-12-20</span></h3>"), html);
        assertTrue(html.contains("Batch " + whole + "20311220-01</span> of " + whole + "2031-12-20.</span></p>"), html);
        assertTrue(html.contains(whole + "a/b</span> &lt;i&gt;</p>"), html);
        assertTrue(html.contains("Found on " + whole + "2031-12-20.</span></p>"), html);
        assertTrue(html.contains("Sure of " + whole + "1-2.</span> Next " + whole + "x/y.</span></p>"), html);
    }

    @Test
    void keepsNumbersWithTheirUnitsOnOneLineInASentence() {
        String html = Report.titled("t")
                .say("From (200.6 °C to 0.7 °C/min), 50 ± 3 %, 12 kg. In 2 groups, 3 kgs.")
                .html()
                .orElseThrow();
        String whole = "<span style=\"white-space:nowrap\">";
        String end = "</span>";
        assertTrue(
                html.contains("From " + whole + "(200.6 °C" + end + " to " + whole + "0.7 °C/min)," + end + " " + whole
                        + "50 ± 3 %," + end + " " + whole + "12 kg." + end + " In 2 groups, 3 kgs."),
                html);
    }

    @Test
    void leavesTheFirstReportAsItWas() {
        int before = report.text().length();
        report.say("One more.");
        assertEquals(before, report.text().length());
    }

    @Test
    void putsTextInWhereThereIsNoHtml() {
        Showable plain = new Showable() {
            @Override
            public String toString() {
                return "a < b";
            }
        };
        assertTrue(Report.titled("t").add(plain).html().orElseThrow().contains("<pre>a &lt; b</pre>"));
    }

    @Test
    void whatIsFoldedIsThereInTextAndBehindItsTitleOnThePage() {
        Report page = Report.titled("Answer")
                .add(new InShort("Found <it>.", "Sure.", "Do this."))
                .fold(Report.titled("How this was worked out").say("By a line.").heading("More"));
        assertEquals("""
                Answer

                Found <it>.
                Sure.
                Do this.

                How this was worked out

                By a line.

                More""", page.text());
        String html = page.html().orElseThrow();
        assertTrue(html.contains("Found &lt;it&gt;."), html);
        assertTrue(
                html.matches(
                        "(?s).*<details><summary[^>]*>How this was worked out</summary>\\s*<p[^>]*>By a line.</p>\\s*"
                                + "<h4>More</h4>\\s*</details>.*"),
                html);
        assertFalse(html.contains("<details open"), html);
    }
}
