package parchment.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import parchment.quantity.TemperatureUnit;

class ChartTest {
    static List<String> pictures() {
        return List.copyOf(Gallery.all().keySet());
    }

    private static Panels picture(String name) {
        return Objects.requireNonNull(Gallery.all().get(name), name);
    }

    /** The approved text stands in the resources; to approve a new one, look at the picture first. */
    @Tag("still-prints")
    @ParameterizedTest
    @ValueSource(strings = {"panels", "scatter", "empty", "rows"})
    void stillPaintsTheApprovedPicture(String name) throws IOException {
        try (var approved = ChartTest.class.getResourceAsStream("/approved/chart/" + name + ".svg")) {
            String expected = new String(Objects.requireNonNull(approved, name).readAllBytes(), StandardCharsets.UTF_8);
            assertEquals(expected.strip(), picture(name).svg().orElseThrow().strip());
        }
    }

    @ParameterizedTest
    @MethodSource("pictures")
    void isWellFormedAndHasWordsForThoseWhoDoNotSee(String name) throws Exception {
        Element svg = parse(picture(name).svg().orElseThrow()).getDocumentElement();
        assertEquals("img", svg.getAttribute("role"));
        assertFalse(svg.getAttribute("aria-label").isEmpty());
        assertEquals(
                picture(name).text(), svg.getElementsByTagName("desc").item(0).getTextContent());
        parse(picture(name).html().orElseThrow());
    }

    @ParameterizedTest
    @MethodSource("pictures")
    void keepsAllItsTextOnThePage(String name) throws Exception {
        keepsAllItsText(parse(picture(name).svg().orElseThrow()).getDocumentElement(), 800);
        keepsAllItsText(narrow(name), 420);
    }

    /** The layout for narrow pages, which is hidden on others. */
    private static Element narrow(String name) throws Exception {
        String html = picture(name).html().orElseThrow();
        assertTrue(html.contains("<style>@media (max-width:600px){"), html);
        Element narrow = (Element)
                parse(html).getDocumentElement().getElementsByTagName("svg").item(wide(name));
        assertEquals("narrow", narrow.getAttribute("class"));
        assertTrue(narrow.getAttribute("style").endsWith("display:none"));
        return narrow;
    }

    /** How many pictures, one within the other, the wide layout takes. */
    private static int wide(String name) throws Exception {
        Element svg = parse(picture(name).svg().orElseThrow()).getDocumentElement();
        return 1 + svg.getElementsByTagName("svg").getLength();
    }

    private static void keepsAllItsText(Element svg, double width) {
        double height = Double.parseDouble(svg.getAttribute("height"));
        NodeList texts = svg.getElementsByTagName("text");
        assertTrue(texts.getLength() > 0);
        for (int i = 0; i < texts.getLength(); i++) {
            Box box = Box.of((Element) texts.item(i));
            assertTrue(
                    box.left() >= 0 && box.right() <= width && box.top() >= 0 && box.bottom() <= height,
                    box + " on a page of " + width + " by " + height);
        }
    }

    @ParameterizedTest
    @MethodSource("pictures")
    void coversNoTextWithAnother(String name) throws Exception {
        coversNoText(parse(picture(name).svg().orElseThrow()).getDocumentElement());
        coversNoText(narrow(name));
    }

    private static void coversNoText(Element svg) {
        NodeList texts = svg.getElementsByTagName("text");
        List<Box> boxes = new ArrayList<>();
        for (int i = 0; i < texts.getLength(); i++) {
            boxes.add(Box.of((Element) texts.item(i)));
        }
        for (int i = 0; i < boxes.size(); i++) {
            for (int j = 0; j < i; j++) {
                assertFalse(boxes.get(i).covers(boxes.get(j)), boxes.get(i) + " covers " + boxes.get(j));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("pictures")
    void runsNothingThatAUserWrote(String name) {
        String html = picture(name).html().orElseThrow();
        assertFalse(html.contains("<script"), html);
        assertFalse(html.contains("<i>"), html);
    }

    @Test
    void showsTheReadersUnit() {
        assertTrue(Gallery.panels(TemperatureUnit.CELSIUS).svg().orElseThrow().contains(">temperature (°C)</text>"));
        String fahrenheit = Gallery.panels(TemperatureUnit.FAHRENHEIT).svg().orElseThrow();
        assertTrue(fahrenheit.contains(">temperature (°F)</text>"));
        assertTrue(fahrenheit.contains(">450</text>"));
    }

    /** Text of 13 units and more is at least 12 pixels high on a page of 800 and 11 on one of 400, with 15 pixels of margin on either side. */
    @ParameterizedTest
    @MethodSource("pictures")
    void textIsReadableOnAWideAndOnANarrowPage(String name) throws Exception {
        assertTrue(smallest(parse(picture(name).svg().orElseThrow()).getDocumentElement()) * 770 / 800 >= 12);
        assertTrue(smallest(narrow(name)) * 370 / 420 >= 11);
    }

    private static double smallest(Element svg) {
        NodeList texts = svg.getElementsByTagName("text");
        double smallest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < texts.getLength(); i++) {
            smallest = Math.min(smallest, Box.number((Element) texts.item(i), "font-size", 14));
        }
        return smallest;
    }

    @Test
    void onAPageTheNotesAreThePagesTextAndAloneThePicturesOwn() {
        Panels picture = picture("panels");
        String start =
                ">Marks as heard by the roaster; the narrow bands are their uncertainty. The air probe was silent from 3:20 to";
        String html = picture.html().orElseThrow();
        assertTrue(html.contains("<figcaption style=\"font-size:14px;"), html);
        assertTrue(html.contains("<div" + start + " 3:50.</div>"), html);
        assertFalse(html.contains(start + "</text>"), html);
        assertTrue(picture.svg().orElseThrow().contains(start + "</text>"));
    }

    @Test
    void namesLinesInTheKeyWhereThePageIsNarrow() throws Exception {
        NodeList texts = narrow("panels").getElementsByTagName("text");
        List<String> words = new ArrayList<>();
        for (int i = 0; i < texts.getLength(); i++) {
            words.add(texts.item(i).getTextContent());
        }
        assertTrue(
                words.containsAll(List.of("bean temperature", "air temperature", "gas", "airflow")), words.toString());
    }

    @Test
    void showsASentenceInThePlaceOfNoData() {
        String svg = Gallery.empty().svg().orElseThrow();
        assertTrue(svg.contains(">No batch has an air temperature.</text>"), svg);
    }

    @Test
    void takesThePagesColourInHtmlAndAWhiteGroundAlone() {
        Plot plot = Gallery.scatter();
        assertTrue(plot.html().orElseThrow().contains("color:inherit;background:none"));
        assertTrue(plot.svg().orElseThrow().contains("<rect x=\"0\" y=\"0\" width=\"800\""));
    }

    /** Shrunk or moved sideways, a picture is hard to read on a telephone; there another one of half the width is shown. */
    @Test
    void isLaidOutForANarrowPageInsteadOfBeingMovedSideways() {
        String html = picture("scatter").html().orElseThrow();
        assertTrue(
                html.contains("@media (max-width:600px){.parchment-chart>.wide{display:none}"
                        + ".parchment-chart>.narrow{display:block!important}}"),
                html);
        assertFalse(html.contains("overflow-x") || html.contains("tabindex"), html);
    }

    @Test
    void isSmallWithSixtyCurves() {
        int size = Gallery.crowd(60).svg().orElseThrow().length();
        assertTrue(size < 40_000, size + " characters");
    }

    @Test
    void tellsTheLinesApartByDashToo() throws Exception {
        NodeList paths = parse(Gallery.panels(TemperatureUnit.CELSIUS).svg().orElseThrow())
                .getElementsByTagName("path");
        List<String> looks = new ArrayList<>();
        for (int i = 0; i < paths.getLength(); i++) {
            Element path = (Element) paths.item(i);
            if (List.of("1.7", "2.8").contains(path.getAttribute("stroke-width"))) {
                looks.add(path.getAttribute("stroke-dasharray"));
            }
        }
        assertEquals(4, looks.stream().distinct().count(), looks.toString());
    }

    @Test
    void linesOfOneNameAndOneColourLookAlike() throws Exception {
        double[] x = {0, 1};
        Plot plot = Plot.of("", Axis.number("x", ""), Axis.number("y", ""))
                .with(Line.of("mean", x, new double[] {1, 2}).withColour(Colour.BLUE))
                .with(Line.of("limit", x, new double[] {0, 0}).withColour(Colour.INK))
                .with(Line.of("limit", x, new double[] {3, 3}).withColour(Colour.INK))
                .with(Line.of("limit", x, new double[] {4, 4}).withColour(Colour.VERMILLION));
        NodeList paths = parse(plot.chart().svg().orElseThrow()).getElementsByTagName("path");
        List<String> looks = new ArrayList<>();
        for (int i = 0; i < paths.getLength(); i++) {
            Element path = (Element) paths.item(i);
            if (path.getAttribute("stroke-width").equals("1.7")
                    && path.getAttribute("d").contains("M")) {
                looks.add(path.getAttribute("stroke-dasharray"));
            }
        }
        // In the order of the layers; after them those beside the names at their ends.
        assertEquals(List.of("", "7 3", "7 3", "2 3"), looks.subList(0, 4));
    }

    @Test
    void aLongNameOfARowGoesOnBelowWhereThereIsRoom() {
        List<String> rows = List.of("cups of a batch, and what else is left (120)", "lot (4)");
        Plot plot = Plot.of("", Axis.number("x", ""), Axis.rows("", rows))
                .with(Points.of("share", new double[] {1, 2}, new double[] {0, 1}));
        String svg = plot.withHeight(60).svg().orElseThrow();
        assertTrue(svg.contains(">cups of a batch, and what else is left<") && svg.contains(">(120)<"), svg);
        assertTrue(plot.withHeight(59).svg().orElseThrow().contains("…<"));
    }

    @Test
    void onANarrowPageTheWordsOfAnAxisAcrossGoOnBelow() {
        Plot plot = Plot.of(
                        "",
                        Axis.number("below or above what is usual; 95 of 100 batches lie between -1 and 1", ""),
                        Axis.number("y", ""))
                .with(Line.of("", new double[] {0, 1}, new double[] {0, 1}));
        String html = plot.html().orElseThrow();
        assertTrue(html.contains(">below or above what is usual; 95 of 100 batches lie between -1 and 1<"), html);
        String narrow = html.substring(html.indexOf("class=\"narrow\""));
        assertTrue(narrow.contains(">below or above what is usual; 95 of 100 batches lie<"), narrow);
        assertTrue(narrow.contains(">between -1 and 1<"), narrow);
    }

    @Test
    void anUprightAxisHasTwoNumbersAtLeast() {
        Plot plot = Plot.of("", Axis.number("x", ""), Axis.number("sum", "").withLimits(-80, 80))
                .with(Line.of("", new double[] {0, 1}, new double[] {-70, 70}))
                .withHeight(140);
        String svg = plot.svg().orElseThrow();
        assertTrue(svg.contains(">-50<") && svg.contains(">0<") && svg.contains(">50<"), svg);
    }

    @Test
    void savesADocumentOfItsOwn(@TempDir Path folder) throws Exception {
        Path file = Gallery.scatter().chart().save(folder.resolve("a.svg").toString());
        assertTrue(Files.readString(file).startsWith("<svg xmlns=\"http://www.w3.org/2000/svg\""));
    }

    private static Document parse(String xml) throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
    }

    /** The box that a text takes up, from the table of widths. */
    private record Box(String words, double left, double top, double right, double bottom) {
        static Box of(Element text) {
            double size = number(text, "font-size", 14);
            double width = TextWidth.of(text.getTextContent(), size);
            double x = number(text, "x", 0);
            double y = number(text, "y", 0);
            double before = switch (inherited(text, "text-anchor")) {
                case "middle" -> width / 2;
                case "end" -> width;
                default -> 0;
            };
            if (text.getAttribute("transform").startsWith("rotate(-90")) {
                return new Box(text.getTextContent(), x - size * 0.75, y - width / 2, x + size * 0.2, y + width / 2);
            }
            return new Box(text.getTextContent(), x - before, y - size * 0.75, x - before + width, y + size * 0.2);
        }

        private static double number(Element element, String name, double otherwise) {
            String value = inherited(element, name);
            return value.isEmpty() ? otherwise : Double.parseDouble(value);
        }

        private static String inherited(Element element, String name) {
            String own = element.getAttribute(name);
            return own.isEmpty() && element.getParentNode() instanceof Element parent ? inherited(parent, name) : own;
        }

        boolean covers(Box other) {
            return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
        }
    }
}
