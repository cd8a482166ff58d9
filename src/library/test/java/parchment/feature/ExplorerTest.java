package parchment.feature;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import parchment.align.Clock;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookException;
import parchment.quantity.TemperatureUnit;

class ExplorerTest {
    private static final String EVIL = "<script>alert(1)</script>";
    private static final Batch FULL = ExampleLogbook.full().build();
    private static final Batch BARE = Batch.named("bare").lot(EVIL).build();
    private static final Logbook LOGBOOK = ExampleLogbook.of(FULL, BARE);

    private static JsonObject data(Explorer explorer) {
        String page = explorer.html().orElseThrow();
        String from = "class=\"data\">";
        int start = page.indexOf(from) + from.length();
        return JsonParser.parseString(page.substring(start, page.indexOf("</script>", start)))
                .getAsJsonObject();
    }

    private static JsonObject named(JsonArray list, String name) {
        return StreamSupport.stream(list.spliterator(), false)
                .map(JsonElement::getAsJsonObject)
                .filter(o -> o.get("name").getAsString().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void tellsTheFactsOfEachBatchAndLeavesMissingOnesMissing() {
        JsonObject data = data(Explorer.of(LOGBOOK).withFeatures(Features.dropTime(), Features.greenMass()));
        assertEquals("[\"112\",\"bare\"]", data.get("names").toString());
        assertEquals(
                "[7,null]",
                named(data.getAsJsonArray("numbers"), "sweetness").get("values").toString());
        JsonObject first = data.getAsJsonArray("paths").get(0).getAsJsonObject();
        assertEquals(
                0,
                first.getAsJsonArray("paths")
                        .get(1)
                        .getAsJsonObject()
                        .getAsJsonArray("x")
                        .size());
        assertTrue(first.getAsJsonArray("paths")
                        .get(0)
                        .getAsJsonObject()
                        .getAsJsonArray("x")
                        .size()
                <= 125);
    }

    @Test
    void startsOnTheClockThatWasAskedFor() {
        JsonObject data = data(Explorer.of(LOGBOOK).withClock(Clock.BY_BEAN_TEMPERATURE));
        JsonObject first = data.getAsJsonArray("paths")
                .get(0)
                .getAsJsonObject()
                .getAsJsonArray("settings")
                .get(0)
                .getAsJsonObject();
        assertEquals("bean temperature", first.get("name").getAsString());
        assertEquals("turned", first.get("turn").getAsString());
    }

    @Test
    void showsTemperaturesOnTheReadersScale() {
        JsonObject data = data(Explorer.of(LOGBOOK).in(TemperatureUnit.FAHRENHEIT));
        JsonObject upwards = data.getAsJsonArray("paths")
                .get(0)
                .getAsJsonObject()
                .getAsJsonArray("settings")
                .get(0)
                .getAsJsonObject()
                .getAsJsonObject("upwards");
        assertEquals("°F", upwards.get("unit").getAsString());
    }

    @Test
    void aLotThatIsAScriptIsOnlyEverText() {
        String page = Explorer.of(LOGBOOK).html().orElseThrow();
        assertFalse(page.contains(EVIL));
        assertTrue(data(Explorer.of(LOGBOOK)).get("groups").toString().contains("alert(1)"));
    }

    @Test
    void showsBatchesWithoutTheirLogbook() {
        assertEquals("[\"112\"]", data(Explorer.of(List.of(FULL))).get("names").toString());
        assertEquals("[]", data(Explorer.of(List.of())).get("names").toString());
    }

    @Test
    void aLogbookOfTheChosenHoldsThemInItsOwnOrder() {
        assertEquals(
                List.of("112", "bare"),
                LOGBOOK.only("bare", "112").batches().stream().map(Batch::name).toList());
        assertEquals(1, LOGBOOK.only("112").cups().size());
        assertEquals(0, LOGBOOK.only("bare").cups().size());
        Exception e = assertThrows(LogbookException.class, () -> LOGBOOK.only("112", "bar"));
        assertTrue(e.getMessage().contains("Did you mean 'bare'?"), e.getMessage());
    }
}
