package parchment.display;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

class DisplayTest {
    private static String refused(Runnable work) {
        return assertThrows(IllegalArgumentException.class, work::run).getMessage();
    }

    @Test
    void isInTheMediaTypeThatItWasGiven() {
        assertEquals(
                Optional.of("<b>x</b>"), Display.as("text/html", "<b>x</b>").html());
        assertEquals(
                "x & y", Display.as("text/html", "<b>x</b> &amp;\n<i>y</i>").text());
        assertEquals(
                "after",
                Display.as("text/html", "<style>p { color: red }</style><p>after</p><!-- no -->")
                        .text());
        assertEquals(
                "A value in text/html",
                Display.as("text/html", "<hr><script>let a = 1</script>").text());
        assertEquals(
                Optional.of("<svg/>"), Display.as("image/svg+xml", "<svg/>").svg());
        assertEquals(
                "A picture (image/svg+xml)",
                Display.as("image/svg+xml", "<svg/>").text());
        assertEquals(
                Map.of("text/markdown", "*x*"),
                Display.as("text/markdown", "*x*").otherForms());
        assertEquals("*x*", Display.as("text/markdown", "*x*").text());
        assertEquals("plain", Display.as("text/plain", "plain").text());
        assertEquals(Map.of(), Display.as("text/plain", "plain").otherForms());
        assertEquals(
                Map.of("image/png", "AQI="),
                Display.as("image/png", new byte[] {1, 2}).otherForms());
        assertEquals("A picture (image/png)", Display.as("image/png", "AQI=").text());
    }

    @Test
    void saysWhatIsNoMediaType() {
        assertEquals(
                "Display.as needs a media type, such as text/html or image/png, but was given 'HTML'. Did you mean 'text/html'?",
                refused(() -> Display.as("HTML", "<b>x</b>")));
        assertEquals(
                "Display.as needs a media type, such as text/html or image/png, but was given '<b>x</b>'.",
                refused(() -> Display.as("<b>x</b>", "text/html")));
    }

    @Test
    void saysWhatIsMadeOfBytesAndWhatOfText() {
        assertEquals(
                "A value in image/png is made of bytes, but Display.as was given a text. Give it the bytes (byte[]), or their text in"
                        + " Base64.",
                refused(() -> Display.as("image/png", "picture.png")));
        assertEquals(
                "A value in text/html is a text, but Display.as was given bytes. Give it the text: new String(bytes,"
                        + " StandardCharsets.UTF_8).",
                refused(() -> Display.as("text/html", new byte[] {1})));
    }

    @Test
    void saysWhatCannotBeRegisteredOrNamed() {
        assertTrue(refused(() -> Display.register(Table.class, table -> "x"))
                .startsWith("A Table shows itself, so that nothing registered for it would be asked."));
        assertTrue(refused(() -> Display.register(int.class, number -> "x"))
                .startsWith("No value is of the class int.class by the time it is shown"));
        assertTrue(refused(() -> Display.register(" ", number -> "x")).contains("the name of a class"));
        assertTrue(refused(() -> Display.show("", 1)).startsWith("A place on the page needs a name"));
        assertTrue(refused(() -> Display.update(" ", 1)).startsWith("A place on the page needs a name"));
    }

    @Test
    void passesEverythingOnWhereQuestionsAreNotCounted() {
        List<String> seen = new ArrayList<>();
        Display.Target page = new Display.Target() {
            @Override
            public void show(Object value) {
                seen.add("show " + value);
            }

            @Override
            public void show(String id, Object value) {
                seen.add("show " + id + " " + value);
            }

            @Override
            public void update(String id, Object value) {
                seen.add("update " + id + " " + value);
            }

            @Override
            public void register(Class<?> type, Function<Object, ?> form) {
                seen.add(type.getSimpleName() + " " + form.apply(3));
            }

            @Override
            public void register(String className, Function<Object, ?> form) {
                seen.add(className + " " + form.apply(3));
            }
        };
        try (Display.Shown shown = Display.on(page)) {
            Display.uncounted(() -> {
                Display.show(1);
                Display.show("id", 2);
                Display.update("id", 3);
                Display.register(Integer.class, number -> number + 1);
                Display.register("a.B", number -> "any");
                return shown;
            });
        }
        assertEquals(List.of("show 1", "show id 2", "update id 3", "Integer 4", "a.B any"), seen);
    }

    @Test
    void whatPutsAnotherPageInPlaceMeanwhileKeepsIt() {
        List<String> seen = new ArrayList<>();
        try (Display.Shown first = Display.on(value -> seen.add("first " + value))) {
            Display.uncounted(() -> {
                Display.show(1);
                return Display.on(value -> seen.add("second " + value));
            });
            Display.show(2);
            assertEquals("first 1", seen.get(0), () -> "through " + first);
        }
        assertEquals(List.of("first 1", "second 2"), seen);
    }

    @Test
    void aPageSaysHowAValueShowsItselfAlsoWhereQuestionsAreNotCounted() {
        assertEquals("3", Display.showable(3).text());
        assertEquals("null", Display.showable(null).text());
        Display.Target page = new Display.Target() {
            @Override
            public void show(Object value) {}

            @Override
            public Showable showable(Object value) {
                return Display.as("text/html", "<b>" + value + "</b>");
            }
        };
        try (Display.Shown shown = Display.on(page)) {
            assertEquals("<b>3</b>", Display.showable(3).html().orElseThrow());
            String uncounted =
                    Display.uncounted(() -> Display.showable(3).html().orElseThrow(() -> new AssertionError(shown)));
            assertEquals("<b>3</b>", uncounted);
        }
    }

    @Test
    void aPictureOfNoBytesIsRefused() {
        assertEquals(
                "A value in image/png is made of bytes, but Display.as was given none. Look where they come from: the file or the"
                        + " picture may be empty.",
                assertThrows(IllegalArgumentException.class, () -> Display.as("image/png", new byte[0]))
                        .getMessage());
        assertEquals(
                "A value in image/png is made of bytes, but Display.as was given an empty text. Give it the bytes (byte[]), or their"
                        + " text in Base64.",
                assertThrows(IllegalArgumentException.class, () -> Display.as("image/png", " "))
                        .getMessage());
    }
}
