package parchment.display.page;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LinkedViewsTest {
    private static final String EVIL = "</script><script>alert(1)</script>\u2028<img src=x onerror=alert(2)>&quot;'";
    private static final LinkedPaths.Scale HOURS = new LinkedPaths.Scale("time", "h", 1);
    private static final LinkedPaths.Scale METRES = new LinkedPaths.Scale("height", "m", 1);

    private static LinkedViews views(List<String> names) {
        return LinkedViews.of("Ships", "ship", names)
                .withNumber(LinkedNumber.of(
                        "length", "m", 1, names.stream().mapToDouble(n -> 20.04).toArray()));
    }

    private static JsonObject data(LinkedViews views) {
        return JsonParser.parseString(views.data()).getAsJsonObject();
    }

    @Test
    void noNameCanEndTheBlockThatHoldsTheData() {
        LinkedViews views = views(List.of(EVIL, "Ida")).withGroup("harbour", List.of(EVIL, ""));
        String data = views.data();
        for (String dangerous : List.of("<", ">", "&", "\u2028", "\u2029")) {
            assertFalse(data.contains(dangerous), dangerous);
        }
        JsonObject read = data(views);
        assertEquals(EVIL, read.getAsJsonArray("names").get(0).getAsString());
        assertEquals(
                EVIL,
                read.getAsJsonArray("groups")
                        .get(0)
                        .getAsJsonObject()
                        .getAsJsonArray("labels")
                        .get(0)
                        .getAsString());
    }

    @Test
    void thePageHoldsNothingOfAnEvilNameButTheEscapedData() {
        String page = views(List.of(EVIL)).withNote(EVIL).html().orElseThrow();
        assertFalse(page.contains("<script>alert"), "a script of the name's own");
        assertFalse(page.contains("<img"), "a picture of the name's own");
        Matcher ends = Pattern.compile("</script", Pattern.CASE_INSENSITIVE).matcher(page);
        assertEquals(2, ends.results().count(), "one end for the data, one for the script");
    }

    @Test
    void thePageNamesNoOtherPlaceToLoadFrom() {
        String page = views(List.of("Ida")).html().orElseThrow();
        String withoutTheHomeOfTheLibrary = page.replace("https://github.com/leeoniya/uPlot", "");
        Matcher address = Pattern.compile("(?:https?:)?//[a-z0-9.-]+\\.[a-z]{2,}|@import|url\\(")
                .matcher(withoutTheHomeOfTheLibrary);
        assertFalse(address.find(), () -> "loads from " + address.group());
        assertTrue(page.contains("Permission is hereby granted, free of charge"), "the plotting library's licence");
    }

    @Test
    void writesMissingNumbersAsMissingAndRoundsTheOthers() {
        LinkedViews views = LinkedViews.of("Ships", "ship", List.of("a", "b", "c"))
                .withNumber(LinkedNumber.of("length", "m", 1, new double[] {20.0449, Double.NaN, -0.0001}))
                .withDates(
                        "built on", List.of(Optional.of(LocalDate.of(1901, 2, 3)), Optional.empty(), Optional.empty()));
        JsonObject read = data(views);
        assertEquals(
                "[20.04,null,0]",
                read.getAsJsonArray("numbers")
                        .get(0)
                        .getAsJsonObject()
                        .get("values")
                        .toString());
        assertEquals(
                "[\"1901-02-03\",\"\",\"\"]",
                read.getAsJsonObject("dates").get("values").toString());
    }

    @Test
    void keepsAGapInAPathAGap() {
        LinkedPaths paths = LinkedPaths.titled("Tide", HOURS, METRES)
                .withPath(new double[] {0, 1, 2, 3, 4}, new double[] {Double.NaN, 5, Double.NaN, 6, 7});
        JsonObject path = data(LinkedViews.of("Ships", "ship", List.of("a")).withPaths(paths))
                .getAsJsonArray("paths")
                .get(0)
                .getAsJsonObject()
                .getAsJsonArray("paths")
                .get(0)
                .getAsJsonObject();
        assertEquals("[1,2,3,4]", path.get("x").toString());
        assertEquals("[5,null,6,7]", path.get("y").toString());
    }

    @Test
    void saysWhichPartDoesNotFitTheNames() {
        LinkedViews two = LinkedViews.of("Ships", "ship", List.of("a", "b"));
        Exception e = assertThrows(IllegalArgumentException.class, () -> two.withGroup("harbour", List.of("x")));
        assertEquals("'harbour' needs one entry for each of the 2 names; it has 1.", e.getMessage());
    }

    @Test
    void thinsAPathAndKeepsItsEndsAndItsPeak() {
        int size = 1000;
        double[] x = IntStream.range(0, size).mapToDouble(i -> i).toArray();
        double[] y = IntStream.range(0, size)
                .mapToDouble(i -> i == 333 ? 50 : Math.sin(i / 90.0))
                .toArray();
        double[][] thinned = LargestTriangles.thin(x, y, 120);
        assertEquals(120, thinned[0].length);
        assertEquals(0, thinned[0][0]);
        assertEquals(999, thinned[0][119]);
        assertTrue(IntStream.range(0, 120).anyMatch(i -> thinned[0][i] == 333), "the peak is kept");
    }

    @Test
    void holdsForAnyPathThatThinningNeverBridgesAGapOrMovesAPoint() {
        Random random = new Random(20260);
        for (int round = 0; round < 200; round++) {
            int size = random.nextInt(400);
            double[] x = new double[size];
            double[] y = new double[size];
            for (int i = 0; i < size; i++) {
                x[i] = i;
                y[i] = random.nextInt(20) == 0 ? Double.NaN : random.nextGaussian();
            }
            double[][] thinned = LargestTriangles.thin(x, y, 60);
            int last = -1;
            for (int i = 0; i < thinned[0].length; i++) {
                int at = (int) thinned[0][i];
                assertEquals(y[at], thinned[1][i], String.format(Locale.ROOT, "round %d, point %d", round, i));
                if (i > 0 && Double.isFinite(thinned[1][i]) && Double.isFinite(thinned[1][i - 1])) {
                    for (int between = last; between <= at; between++) {
                        assertTrue(Double.isFinite(y[between]), "a gap was bridged in round " + round);
                    }
                }
                last = at;
            }
        }
    }

    @Test
    void keepsEveryPointOfAShortPath() {
        double[] x = {0, 1, 2};
        assertArrayEquals(x, LargestTriangles.thin(x, x, 120)[0]);
    }
}
