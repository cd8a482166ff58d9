package parchment.display;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;
import parchment.chart.Axis;
import parchment.chart.Plot;
import parchment.chart.Points;
import parchment.display.answer.Report;

/** Holds what is shown against an XML parser that knows nothing of it: the JDK's. */
class HtmlTest {
    private static Element parsed(String xml) throws Exception {
        DocumentBuilder builder = DocumentBuilderFactory.newInstance().newDocumentBuilder();
        builder.setErrorHandler(null);
        byte[] bytes = xml.getBytes(StandardCharsets.UTF_8);
        return builder.parse(new InputSource(new ByteArrayInputStream(bytes))).getDocumentElement();
    }

    /** Production 2 of Extensible Markup Language 1.0: Char. */
    private static boolean isInXml(int point) {
        return point == 0x9
                || point == 0xA
                || point == 0xD
                || point >= 0x20 && point <= 0xD7FF
                || point >= 0xE000 && point <= 0xFFFD
                || point >= 0x10000;
    }

    @Test
    void everyCodePointStandsInTextAndInAnAttribute() throws Exception {
        for (int block = 0; block <= Character.MAX_CODE_POINT; block += 0x1000) {
            StringBuilder all = new StringBuilder();
            for (int point = block; point < block + 0x1000; point++) {
                // A letter between them, or two halves would make a character.
                all.appendCodePoint(point).append('x');
            }
            String escaped = Html.escape(all.toString());
            Element element = parsed("<p title=\"" + escaped + "\">" + escaped + "</p>");
            StringBuilder expected = new StringBuilder();
            for (int point = block; point < block + 0x1000; point++) {
                boolean kept = isInXml(point)
                        && !(point >= 0x7F && point <= 0x9F)
                        && !(point >= 0xFDD0 && point <= 0xFDEF)
                        && (point & 0xFFFE) != 0xFFFE;
                expected.appendCodePoint(point == '\r' ? '\n' : kept ? point : 0xFFFD)
                        .append('x');
            }
            assertEquals(expected.toString(), element.getTextContent(), "from " + Integer.toHexString(block));
            // The parser makes blanks of tabs and line ends in attributes.
            assertEquals(
                    expected.toString().replaceAll("[\\t\\n]", " "),
                    element.getAttribute("title"),
                    "from " + Integer.toHexString(block));
        }
    }

    @Test
    void picturesAndTablesAreWellFormedForAnyNames() {
        Random random = new Random(1);
        for (int round = 0; round < 100; round++) {
            String name = name(random);
            String svg = Plot.of(name, Axis.number(name, name), Axis.number(name, "°C"))
                    .with(Points.of(name, new double[] {1, 2}, new double[] {2, 1})
                            .withNames(List.of(name, name)))
                    .withNote(name)
                    .svg()
                    .orElseThrow();
            assertDoesNotThrow(() -> parsed(svg), svg);
            String html = Report.titled(name)
                    .say(name)
                    .add(Table.titled(name)
                            .withColumn(Column.text(name, List.of(name)))
                            .withNote(name))
                    .html()
                    .orElseThrow();
            assertDoesNotThrow(() -> parsed(html), html);
        }
    }

    /** Twelve signs: any code point, halves of characters among them, and those that no document may hold more often. */
    private static String name(Random random) {
        StringBuilder name = new StringBuilder();
        for (int i = 0; i < 12; i++) {
            switch (random.nextInt(4)) {
                case 0 -> name.append((char) (0xD800 + random.nextInt(0x800)));
                case 1 -> name.append((char) (0xFFF0 + random.nextInt(0x10)));
                case 2 -> name.append((char) random.nextInt(0xA0));
                default -> name.appendCodePoint(random.nextInt(Character.MAX_CODE_POINT + 1));
            }
        }
        return name.toString();
    }
}
