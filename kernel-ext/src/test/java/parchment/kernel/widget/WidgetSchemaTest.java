package parchment.kernel.widget;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import parchment.control.Button;
import parchment.control.CheckBox;
import parchment.control.Choice;
import parchment.control.Choices;
import parchment.control.Control;
import parchment.control.CountSlider;
import parchment.control.HtmlNote;
import parchment.control.RangeSlider;
import parchment.control.Slider;
import parchment.control.TextField;

/** What is sent of each control, against the published schema (src/test/resources/reference/jupyter-widgets-schema). */
class WidgetSchemaTest {
    private static final Map<String, JsonObject> SCHEMA = schema();

    private static Map<String, JsonObject> schema() {
        Map<String, JsonObject> models = new LinkedHashMap<>();
        try (InputStreamReader in = new InputStreamReader(
                Objects.requireNonNull(WidgetSchemaTest.class.getResourceAsStream(
                        "/reference/jupyter-widgets-schema/jupyterwidgetmodels.latest.json")),
                StandardCharsets.UTF_8)) {
            for (JsonElement model : JsonParser.parseReader(in).getAsJsonArray()) {
                models.put(
                        model.getAsJsonObject()
                                .getAsJsonObject("model")
                                .get("name")
                                .getAsString(),
                        model.getAsJsonObject());
            }
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        return models;
    }

    /** Holds a state against its model's schema; the named keys are set by the control, all others have the schema's default. */
    private static void fits(JsonObject state, String... own) {
        String name = state.get("_model_name").getAsString();
        JsonObject model = SCHEMA.get(name);
        assertTrue(model != null, "a model of the schema: " + name);
        Set<String> keys = new TreeSet<>();
        List<String> wrong = new ArrayList<>();
        for (JsonElement each : model.getAsJsonArray("attributes")) {
            JsonObject attribute = each.getAsJsonObject();
            String key = attribute.get("name").getAsString();
            keys.add(key);
            JsonElement value = state.get(key);
            if (value == null || !fitsType(attribute, value)) {
                wrong.add(key + " is " + value + ", not of the type " + attribute.get("type"));
            } else if (!Set.of(own).contains(key)
                    && !attribute.get("type").getAsString().equals("reference")
                    && !value.equals(attribute.get("default"))) {
                wrong.add(key + " is " + value + ", not " + attribute.get("default"));
            }
        }
        assertEquals(List.of(), wrong, name);
        Set<String> sent = new TreeSet<>(state.keySet());
        keys.removeAll(List.of("layout", "style")); // References, put in when their models are open.
        sent.removeAll(List.of("layout", "style"));
        assertEquals(keys, sent, name);
    }

    private static boolean fitsType(JsonObject attribute, JsonElement value) {
        if (value.isJsonNull()) {
            return attribute.has("allow_none") && attribute.get("allow_none").getAsBoolean();
        }
        if (attribute.has("enum") && !attribute.getAsJsonArray("enum").contains(value)) {
            return false;
        }
        return switch (attribute.get("type").getAsString()) {
            case "string", "reference" -> isString(value);
            case "bool" -> value.isJsonPrimitive() && value.getAsJsonPrimitive().isBoolean();
            case "int" -> isNumber(value) && value.getAsDouble() == Math.rint(value.getAsDouble());
            case "float" -> isNumber(value);
            case "array" -> value.isJsonArray() && membersFit(attribute, value.getAsJsonArray());
            default -> false;
        };
    }

    private static boolean membersFit(JsonObject attribute, JsonArray members) {
        if (!attribute.has("items")) {
            return true;
        }
        String type = attribute.getAsJsonObject("items").get("type").getAsString();
        for (JsonElement member : members) {
            boolean fits = switch (type) {
                case "int" -> isNumber(member);
                case "object" -> member.isJsonObject();
                default -> isString(member);
            };
            if (!fits) {
                return false;
            }
        }
        return true;
    }

    private static boolean isString(JsonElement value) {
        return value.isJsonPrimitive() && value.getAsJsonPrimitive().isString();
    }

    private static boolean isNumber(JsonElement value) {
        return value.isJsonPrimitive() && value.getAsJsonPrimitive().isNumber();
    }

    private static JsonObject state(Control control) {
        JsonObject state = WidgetForm.of(control).orElseThrow().state().json().deepCopy();
        state.addProperty("layout", "IPY_MODEL_layout");
        state.addProperty("style", "IPY_MODEL_style");
        return state;
    }

    @Test
    void everyControlSendsTheKeysTypesAndDefaultsOfItsModel() {
        fits(
                state(Slider.of("a", 0, 1).withUnit("kg")),
                "description",
                "min",
                "max",
                "step",
                "value",
                "readout_format");
        fits(state(CountSlider.of("a", 2, 9)), "description", "min", "max", "value");
        fits(state(RangeSlider.of("a", 0, 5)), "description", "min", "max", "step", "value", "readout_format");
        fits(state(Choice.of("a", "x", "y")), "description", "_options_labels", "index");
        fits(state(Choices.of("a", "x", "y")), "description", "_options_labels", "rows");
        fits(state(CheckBox.of("a")), "description", "indent");
        fits(state(Button.of("a")), "description");
        fits(state(TextField.of("a")), "description", "continuous_update");
        fits(state(HtmlNote.ofText("a")), "value");
    }

    @Test
    void layoutsBoxesAndOutputAreasAreThoseOfTheSchema() {
        fits(WidgetState.layout().json());
        JsonObject output = WidgetState.output().with("layout", "IPY_MODEL_a").json();
        fits(output);
        for (String name : List.of("HBox", "VBox")) {
            fits(WidgetState.box(name).with("layout", "IPY_MODEL_a").json());
        }
        fits(WidgetState.text()
                .with("layout", "IPY_MODEL_a")
                .with("style", "IPY_MODEL_b")
                .json());
    }

    @Test
    void theStylesAreThoseTheSchemaNamesForTheirControls() {
        for (Control control : List.of(
                Slider.of("a", 0, 1),
                CountSlider.of("a", 0, 1),
                RangeSlider.of("a", 0, 1),
                Choice.of("a", "x"),
                Choices.of("a", "x"),
                CheckBox.of("a"),
                Button.of("a"),
                TextField.of("a"),
                HtmlNote.ofText("a"))) {
            WidgetForm<?> form = WidgetForm.of(control).orElseThrow();
            JsonObject model = SCHEMA.get(form.state().json().get("_model_name").getAsString());
            String named = "";
            for (JsonElement each : Objects.requireNonNull(model).getAsJsonArray("attributes")) {
                if (each.getAsJsonObject().get("name").getAsString().equals("style")) {
                    named = each.getAsJsonObject().get("widget").getAsString();
                }
            }
            assertEquals(named, form.style());
            fits(WidgetState.style(form.style()).json());
            fits(WidgetState.wideStyle(form.style()).json(), "description_width");
        }
    }

    @Test
    void whatAControlIsToldComesBackOnlyIfItCanHaveIt() {
        Slider slider = Slider.of("a", 0, 10);
        assertTrue(takes(slider, "0"));
        assertTrue(takes(slider, "10"));
        assertFalse(takes(slider, "10.01"));
        assertFalse(takes(slider, "-0.01"));
        assertFalse(takes(slider, "\"5\""));
        assertFalse(takes(slider, "null"));
        assertFalse(takes(slider, "[5]"));
        assertEquals(10, slider.value());
        CountSlider count = CountSlider.of("a", 1, 3);
        assertTrue(takes(count, "3"));
        assertTrue(takes(count, "2.0"));
        assertFalse(takes(count, "2.5"));
        assertFalse(takes(count, "4"));
        assertFalse(takes(count, "0"));
        assertEquals(2, count.value());
        RangeSlider range = RangeSlider.of("a", 0, 10);
        assertTrue(takes(range, "[2, 2]"));
        assertFalse(takes(range, "[3, 2]"));
        assertFalse(takes(range, "[2, 11]"));
        assertFalse(takes(range, "[-1, 2]"));
        assertFalse(takes(range, "[1]"));
        assertFalse(takes(range, "[1, 2, 3]"));
        assertEquals(new RangeSlider.Between(2, 2), range.value());
        Choice choice = Choice.of("a", "x", "y");
        assertTrue(takes(choice, "1"));
        assertFalse(takes(choice, "2"));
        assertFalse(takes(choice, "-1"));
        assertFalse(takes(choice, "null"));
        assertEquals("y", choice.value());
        Choices choices = Choices.of("a", "x", "y", "z");
        assertTrue(takes(choices, "[2, 0]"));
        assertFalse(takes(choices, "[3]"));
        assertFalse(takes(choices, "1"));
        assertEquals(List.of("x", "z"), choices.value());
        assertTrue(takes(choices, "[]"));
        assertEquals(List.of(), choices.value());
        CheckBox box = CheckBox.of("a");
        assertTrue(takes(box, "true"));
        assertFalse(takes(box, "\"false\""));
        assertFalse(takes(box, "0"));
        assertTrue(box.value());
        TextField text = TextField.of("a");
        assertTrue(takes(text, "\"caf\u00e9\""));
        assertFalse(takes(text, "3"));
        assertEquals("caf\u00e9", text.value());
        assertFalse(takes(HtmlNote.ofText("a"), "\"<b>b</b>\""), "nobody but Java writes a note");
    }

    private static boolean takes(Control control, String json) {
        return WidgetForm.of(control).orElseThrow().take(JsonParser.parseString(json));
    }
}
