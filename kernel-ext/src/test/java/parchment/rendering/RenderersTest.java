package parchment.rendering;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Scanner;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import parchment.display.Display;
import parchment.display.Showable;
import parchment.display.Table;

class RenderersTest {
    record Cup(String lot, double score, int day, Optional<String> note) {}

    record Empty() {}

    private final Renderers renderers =
            Renderers.explainingErrors(error -> List.of("It failed: " + error.getMessage(), "Do it again."));

    private String text(Object value) {
        return renderers.of(value).text();
    }

    private String html(Object value) {
        return renderers.of(value).html().orElse("");
    }

    /** The words of a page's table, a line for each row. */
    private String table(Object value) {
        String body = Pattern.compile("<style>.*?</style>|<script>.*?</script>", Pattern.DOTALL)
                .matcher(html(value))
                .replaceAll("");
        return Pattern.compile("<tr>|<caption>|<p>")
                .splitAsStream(body)
                .map(row -> row.replaceAll("</t[hd]>", "|")
                        .replaceAll("<[^>]*>", "")
                        .strip())
                .filter(row -> !row.isEmpty())
                .collect(Collectors.joining("\n"));
    }

    @Test
    void showsArraysOfNumbersAsText() {
        assertEquals("[1, 2, 3]", text(new int[] {1, 2, 3}));
        assertEquals("", html(new int[] {1, 2, 3}));
        assertEquals("[]", text(new double[0][0]));
        String long101 = text(new long[101]);
        assertTrue(long101.endsWith("0, ... 101 in all]"), long101);
        assertTrue(text(new long[100]).endsWith("0, 0]"));
    }

    @Test
    void showsRowsOfEqualLengthAsATable() {
        double[][] rows = {{1.5, 20}, {-0.25, Double.NaN}};
        assertEquals("[[1.5, 20.0],\n [-0.25, NaN]]", text(rows));
        assertEquals("""
                An array of 2 rows and 2 columns
                row|0|1|
                0|1.50|20|
                1|-0.25|missing|
                Rows and columns count from 0, as in Java.""", table(rows));
        assertEquals(
                "A list of 1 row and 2 columns\nrow|0|1|\n0|a|7|\nRows and columns count from 0, as in Java.",
                table(List.of(List.of("a", 7))));
        assertEquals("", html(new int[][] {{1}, {2, 3}}), "rows of unequal length stay text");
        assertEquals("", html(new int[][][] {{{1}}}), "rows of rows stay text");
        assertEquals("", html(new int[1][0]), "rows of nothing stay text");
        assertEquals("", html(Arrays.asList(List.of(1), null)));
    }

    @Test
    void boundsATableAndSaysSo() {
        String page = table(new int[1_001][41]);
        assertTrue(
                page.contains("The first 1,000 of 1,001 rows are here.\nThe first 40 of 42 columns are here."), page);
        String whole = table(new int[1_000][39]);
        assertFalse(whole.contains("are here"), whole);
        String words = table(List.of(new Cup("a".repeat(200), 1, 1, Optional.of("b".repeat(201)))));
        assertTrue(words.contains("a".repeat(200) + "|"));
        assertTrue(words.contains("b".repeat(200) + "...|"));
        assertTrue(words.endsWith("Texts end after 200 characters."), words);
    }

    @Test
    void showsRecordsOfOneClassAsATable() {
        List<Cup> cups =
                List.of(new Cup("North", 84.25, 3, Optional.empty()), new Cup("South", 85, 12, Optional.of("fine")));
        String expected = """
                Cup, 2 rows
                lot    score  day  note
                North  84.25    3  missing
                South  85.00   12  fine""";
        assertEquals(expected, text(cups));
        assertEquals(expected, text(new LinkedHashSet<>(cups)));
        assertEquals(expected, text(cups.toArray()));
        assertEquals("Cup, 2 rows\nlot|score|day|note|\nNorth|84.25|3|missing|\nSouth|85.00|12|fine|", table(cups));
        assertEquals("[Empty[]]", text(List.of(new Empty())));
        assertEquals("", html(List.of(new Empty(), new Cup("a", 1, 1, Optional.empty()))));
        assertEquals(
                "Cup, 2 rows\nlot|score|day|note|\na|1|1|missing|\nmissing|missing|missing|missing|",
                table(Arrays.asList(new Cup("a", 1, 1, Optional.empty()), null)));
    }

    @Test
    void showsMapsAsATable() {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("North", 3);
        map.put("South", 4.5);
        assertEquals("{North=3, South=4.5}", text(map));
        assertEquals("A map of 2 entries\nkey|value|\nNorth|3.0|\nSouth|4.5|", table(map));
        assertEquals(
                "A map of 1 entry\nkey|lot|score|day|note|\n7|a|2|1|missing|",
                table(Map.of(7, new Cup("a", 2, 1, Optional.empty()))));
        assertEquals("{}", text(Map.of()));
        assertEquals("", html(Map.of()));
    }

    @Test
    void showsMembersThatShowThemselvesEachInItsOwnForm() {
        Showable bold = Display.as("text/html", "<b>one</b>");
        String list = html(List.of(bold, bold));
        assertEquals(2, list.split("<b>one</b>", -1).length - 1);
        assertTrue(html(Map.of("first <lot>", bold))
                .startsWith("<p><strong>first &lt;lot&gt;</strong></p>\n<div><b>one</b>"));
        assertEquals("<b>one</b>", html(Optional.of(bold)));
        List<Showable> many = Collections.nCopies(61, bold);
        assertTrue(html(many).endsWith("<p>and 1 more, not shown</p>\n"));
        assertFalse(html(many.subList(1, 61)).contains("not shown"));
        assertTrue(
                html(List.of(Display.as("image/png", new byte[] {1}))).contains("<img alt=\"A picture (image/png)\""));
    }

    @Test
    void staysWithTextWhereTextSaysIt() {
        assertEquals("null", text((Object) null));
        assertEquals("Optional[3]", text(Optional.of(3)));
        assertEquals("Optional.empty", text(Optional.empty()));
        assertEquals("a/b", text(Path.of("a", "b")).replace('\\', '/'));
        assertEquals("2031-01-06", text(LocalDate.of(2031, 1, 6)));
        assertEquals("[a, null, [1]]", text(Arrays.asList("a", null, new int[] {1})));
        assertEquals("a function (->)", text((Runnable) () -> {}));
    }

    @Test
    void endsInListsThatHoldThemselvesAndInDeepOnes() {
        List<Object> self = new ArrayList<>(List.of(1));
        self.add(List.of(self));
        assertEquals("[1, [(the same list again)]]", text(self));
        Map<String, Object> map = new HashMap<>();
        map.put("in", new Object[] {map});
        assertEquals("{in=[(the same map again)]}", text(map));
        Object six = "here";
        for (int i = 0; i < 6; i++) {
            six = List.of(six, 1);
        }
        assertTrue(text(six).contains("here"), text(six));
        assertEquals(
                "[[[[[[(list within), 1], 1], 1], 1], 1], 1]",
                text(List.of(six, 1)).replace("here, 1", "?"));
        String wide = text(Collections.nCopies(100, Collections.nCopies(100, "a word of some length")));
        assertTrue(wide.length() < 25_000 && wide.endsWith("... 100 in all]"), wide.length() + "");
    }

    @Test
    void showsTheFirstElementsOfAStreamAndSaysThatItIsUsedUp() {
        String used = "\nThe stream is used up by this: make it anew, or end it with .toList() to keep what is in it.";
        String twenty = IntStream.rangeClosed(1, 20).boxed().toList().toString();
        assertEquals("The first 20 elements of a stream:\n" + twenty + used, text(Stream.iterate(1, i -> i + 1)));
        assertEquals("All 20 elements of a stream:\n" + twenty + used, text(IntStream.rangeClosed(1, 20)));
        assertEquals("The one element of a stream:\n[5]" + used, text(LongStream.of(5)));
        assertEquals("All 2 elements of a stream:\n[0.5, 1.5]" + used, text(DoubleStream.of(0.5, 1.5)));
        assertEquals("An empty stream.", text(Stream.empty()));
        Stream<Integer> read = Stream.of(1);
        read.toList();
        assertEquals(
                "A stream that was read before: a stream gives its elements once. Make it anew, and keep them with .toList().",
                text(read));
        AtomicInteger asked = new AtomicInteger();
        AtomicInteger closed = new AtomicInteger();
        text(Stream.generate(asked::incrementAndGet).onClose(closed::incrementAndGet));
        assertEquals(List.of(21, 1), List.of(asked.get(), closed.get()), "asks for no more than it needs, and closes");
        assertTrue(table(Stream.of(new Cup("a", 1, 1, Optional.empty()))).contains("lot|score|day|note|"));
        assertThrows(ArithmeticException.class, () -> text(Stream.of(0).map(i -> 1 / i)));
    }

    @Test
    void takesNoMoreOfAnIteratorThanItShowsAndLeavesOthersAlone() {
        var numbers = IntStream.range(0, 30).boxed().toList().iterator();
        assertTrue(text(numbers).startsWith("The first 20 elements of an iterator:\n[0, 1,"));
        assertEquals(20, numbers.next());
        assertEquals("An iterator with nothing left.", text(List.of().iterator()));
        Scanner scanner = new Scanner("a b");
        assertTrue(text(scanner).startsWith("java.util.Scanner["), "nobody is asked for a line");
        assertEquals("a", scanner.next());
    }

    @Test
    void putsErrorsIntoWords() {
        assertEquals(
                "An error as a value; nothing was thrown here.\nIt failed: no lot\nDo it again.",
                text(new IllegalStateException("no lot")));
        assertEquals(
                "2 errors, none of them thrown here\nerror|what else is known|\nIt failed: a|Do it again.|\nIt failed: b|Do it again.|",
                table(List.of(new IOException("a"), new Error("b"))));
    }

    @Test
    void showsPicturesAsPng() throws IOException {
        BufferedImage dots = new BufferedImage(30, 20, BufferedImage.TYPE_INT_RGB);
        dots.setRGB(7, 9, 0xff8800);
        Showable shown = renderers.of(dots);
        assertEquals("A picture of 30 by 20 dots", shown.text());
        assertEquals(0xffff8800, decoded(shown).getRGB(7, 9));
        assertTrue(shown.html().orElseThrow().startsWith("<img alt=\"A picture of 30 by 20 dots\" width=\"30\""));
        Showable scaled = renderers.of(dots.getScaledInstance(60, 40, java.awt.Image.SCALE_FAST));
        assertEquals("A picture of 60 by 40 dots", scaled.text());
        assertEquals(60, decoded(scaled).getWidth());
        Showable large = renderers.of(new BufferedImage(4_800, 10, BufferedImage.TYPE_BYTE_GRAY));
        assertEquals("A picture of 4,800 by 10 dots, shown at 2,400 by 5", large.text());
        assertEquals(2_400, decoded(large).getWidth());
        assertEquals(
                2_400,
                decoded(renderers.of(new BufferedImage(2_400, 1, BufferedImage.TYPE_INT_ARGB)))
                        .getWidth());
    }

    @Test
    void aVeryLargePictureIsNotCopiedWholeBeforeItIsShownSmaller() throws IOException {
        BufferedImage huge = new BufferedImage(26_000, 26_000, BufferedImage.TYPE_BYTE_BINARY);
        for (int x = 0; x < 13_000; x++) {
            for (int y = 12_000; y < 14_000; y++) {
                huge.setRGB(x, y, 0xffffffff);
            }
        }
        Showable shown = renderers.of(huge); // Four bytes for each of its dots would be 2.7 GB.
        assertEquals("A picture of 26,000 by 26,000 dots, shown at 2,400 by 2,400", shown.text());
        BufferedImage small = decoded(shown);
        assertEquals(0xffffffff, small.getRGB(1_100, 1_200));
        assertEquals(0xff000000, small.getRGB(1_300, 1_200));
        assertEquals(0xff000000, small.getRGB(1_100, 900));
    }

    private static BufferedImage decoded(Showable shown) throws IOException {
        byte[] png = Base64.getDecoder().decode(shown.otherForms().get("image/png"));
        return java.util.Objects.requireNonNull(ImageIO.read(new ByteArrayInputStream(png)));
    }

    @Test
    void asksWhatWasRegisteredLastAndFits() {
        renderers.register(Number.class, number -> "a number");
        renderers.register(Integer.class, number -> (Integer) number > 5 ? "a large one" : number);
        assertEquals("a number", text(2.5));
        assertEquals("a large one", text(6));
        assertEquals("a number", text(5), "one that returns the value passes it on");
        renderers.register("java.lang.Comparable", each -> Display.as("text/html", "<i>" + each + "</i>"));
        assertEquals("<i>6</i>", html(6));
        assertEquals("<div><i>6</i></div>\n", html(List.of(6)));
        assertEquals(
                "Table: 0 rows, 0 columns", renderers.of(Table.titled("Table")).toString());
        renderers.register(List.class, list -> List.of(list, "more"));
        assertEquals("[[7, 8], more]", text(List.of(7, 8)), "what it makes does not come back to it");
    }

    @Test
    void leavesResultsOfTheLibraryToThemselves() {
        renderers.register(Object.class, any -> "anything");
        Showable table = Table.titled("ours");
        assertSame(table, renderers.of(table));
        assertEquals("anything", text(3));
    }

    @Test
    void saysThatARegisteredFunctionGaveNothing() {
        renderers.register("java.lang.Integer", number -> null);
        assertEquals(
                "What is registered for 'java.lang.Integer' gave nothing (null) for a value. Let it return text, Display.as(...), a table,"
                        + " or the value itself.",
                assertThrows(IllegalStateException.class, () -> text(3)).getMessage());
    }

    @Test
    void writesNumbersWithTheDigitsThatTheyNeed() {
        assertEquals("1 2", digits(1.0, 2.0));
        assertEquals("1.25 2.00", digits(1.25, 2.0));
        assertEquals("203.333 0.500 rounded", digits(203.0 + 1 / 3.0, 0.5));
        assertEquals("0.333333 rounded", digits(1 / 3.0));
        assertEquals("0.00012 1000.00000", digits(0.00012, 1000.0));
        assertEquals("1.00000e-12 5.00000e+00 rounded", digits(1e-12, 5.0));
        assertEquals("1.00000e+12 rounded", digits(1e12));
        assertEquals("999999999999", digits(999_999_999_999.0));
        assertEquals("infinite -infinite 0", digits(Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -0.0));
        assertEquals("9223372036854775807 1", digits(Long.MAX_VALUE, (byte) 1));
        assertEquals("1267650600228229401496703205376", digits(BigInteger.TWO.pow(100)));
        assertEquals("0.10 0.25", digits(new BigDecimal("0.10"), 0.25));
        assertEquals("0.1", digits(0.1f), "as it was written, not as its nearest double");
    }

    /** Worked-out columns of another library's table; what was counted, or picked out of the rows, keeps its digits. */
    @Test
    void meansOfAnotherLibrarysTableHaveFourDigits() {
        var table = tech.tablesaw.api.Table.create(
                "summary",
                tech.tablesaw.api.DoubleColumn.create("Mean [sweetness [points]]", 4.951388, 5.0),
                tech.tablesaw.api.DoubleColumn.create("Std. Deviation [time [s]]", 1234.56, 7.891),
                tech.tablesaw.api.DoubleColumn.create("Max [sweetness [points]]", 8.123456, 7.0),
                tech.tablesaw.api.DoubleColumn.create("Meant [points]", 8.123456, 7.0));
        String text = Renderers.explainingErrors(thrown -> List.of()).of(table).text();
        for (String shown : List.of("4.951 ", "5.000 ", "1234.6 ", "7.9 ", "8.12346 ", "7.00000")) {
            assertTrue(text.contains(shown), text);
        }
        assertTrue(text.contains("What was worked out is rounded to about 4 digits."), text);
    }

    private static String digits(Object... numbers) {
        NumberDigits digits = NumberDigits.of(List.of(numbers), NumberDigits.SHOWN);
        return Arrays.stream(numbers)
                        .map(number -> digits.print((Number) number))
                        .collect(Collectors.joining(" "))
                + (digits.rounds() ? " rounded" : "");
    }

    @Test
    void keepsTheDigitsOfLargeWholeNumbersInATable() {
        assertTrue(table(Map.of("a", Long.MAX_VALUE)).endsWith("a|9223372036854775807|"));
        assertNotNull(html(Map.of("a", BigInteger.TWO)));
    }

    @Test
    void anOptionalShowsWhatIsInIt() {
        assertEquals("Optional[[1, 2]]", text(Optional.of(new int[] {1, 2})));
        assertEquals("Optional[Optional[[a, b]]]", text(Optional.of(Optional.of(new String[] {"a", "b"}))));
        assertEquals("[Optional[[1]], Optional.empty]", text(List.of(Optional.of(new int[] {1}), Optional.empty())));
        assertEquals("Optional[x]", text(Optional.of("x")));
        Object[] round = new Object[1];
        round[0] = Optional.of(round);
        assertEquals("Optional[[(the same optional again)]]", PlainText.of(round[0]));
    }
}
