package parchment.kernel.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.google.gson.JsonPrimitive;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import parchment.display.Display;
import parchment.display.Showable;

class ShownTest {
    private static final String VIEW = "application/vnd.jupyter.widget-view+json";

    private static Showable inForms(Map<String, String> forms) {
        return new Showable() {
            @Override
            public String text() {
                return "in words";
            }

            @Override
            public Map<String, String> otherForms() {
                return forms;
            }
        };
    }

    @Test
    void sendsJsonAsJsonAndAllElseAsText() {
        Shown shown = Shown.of(inForms(Map.of(VIEW, "{\"model_id\":\"7\"}")));
        assertEquals(
                "{\"text/plain\":\"in words\",\"" + VIEW + "\":{\"model_id\":\"7\"}}",
                shown.data(JsonPrimitive::new).toString());
    }

    @Test
    void sendsAsTextWhatIsCalledJsonAndIsNone() {
        Shown shown = Shown.of(Display.as("application/json", "{\"open"));
        assertEquals(
                "{\"open",
                shown.data(JsonPrimitive::new).get("application/json").getAsString());
    }

    @Test
    void takesAsJsonWhatItsTypeSaysIsJson() {
        assertEquals(
                List.of(true, true, false, false),
                List.of("application/json", VIEW, "text/plain", "application/jsonlines").stream()
                        .map(Shown::isJson)
                        .toList());
    }
}
