package parchment.display;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

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
}
