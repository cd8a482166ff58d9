package parchment.kernel.widget;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.List;

/**
 * The state of one model of the core widgets: every key of its published schema, first with the schema's default.
 *
 * @see <a href="https://www.npmjs.com/package/@jupyter-widgets/schema">The npm package @jupyter-widgets/schema, version 0.5.6,
 *     jupyterwidgetmodels.latest.json</a>
 */
final class WidgetState {
    private static final String BASE = "@jupyter-widgets/base";
    private static final String CONTROLS = "@jupyter-widgets/controls";
    private static final String OUTPUT = "@jupyter-widgets/output";
    private static final String TWO = "2.0.0";

    private static final List<String> LAYOUT = List.of(
            "align_content",
            "align_items",
            "align_self",
            "border_bottom",
            "border_left",
            "border_right",
            "border_top",
            "bottom",
            "display",
            "flex",
            "flex_flow",
            "grid_area",
            "grid_auto_columns",
            "grid_auto_flow",
            "grid_auto_rows",
            "grid_column",
            "grid_gap",
            "grid_row",
            "grid_template_areas",
            "grid_template_columns",
            "grid_template_rows",
            "height",
            "justify_content",
            "justify_items",
            "left",
            "margin",
            "max_height",
            "max_width",
            "min_height",
            "min_width",
            "object_fit",
            "object_position",
            "order",
            "overflow",
            "padding",
            "right",
            "top",
            "visibility",
            "width");

    private final JsonObject json = new JsonObject();

    private WidgetState(String module, String version, String name, String viewModule, String view) {
        with("_model_module", module)
                .with("_model_module_version", version)
                .with("_model_name", name + "Model")
                .with("_view_module", viewModule)
                .with("_view_module_version", version)
                .with("_view_name", view);
    }

    static WidgetState layout() {
        return new WidgetState(BASE, TWO, "Layout", BASE, "LayoutView").missing(LAYOUT);
    }

    /** Returns the style that goes with a kind of control. */
    static WidgetState style(String name) {
        WidgetState style = new WidgetState(CONTROLS, TWO, name, BASE, "StyleView");
        return switch (name) {
            case "SliderStyle" -> style.with("description_width", "").missing(List.of("handle_color"));
            case "CheckboxStyle" -> style.with("description_width", "").missing(List.of("background"));
            case "TextStyle", "HTMLStyle" ->
                style.with("description_width", "").missing(List.of("background", "font_size", "text_color"));
            case "ButtonStyle" ->
                style.missing(List.of(
                        "button_color",
                        "font_family",
                        "font_size",
                        "font_style",
                        "font_variant",
                        "font_weight",
                        "text_color",
                        "text_decoration"));
            default -> style.with("description_width", "");
        };
    }

    /** Returns the style of a control whose words are never cut off. */
    static WidgetState wideStyle(String name) {
        WidgetState style = style(name);
        return style.json.has("description_width") ? style.with("description_width", "initial") : style;
    }

    static WidgetState output() {
        return new WidgetState(OUTPUT, "1.0.0", "Output", OUTPUT, "OutputView")
                .inPage()
                .with("msg_id", "")
                .with("outputs", new JsonArray());
    }

    /** Returns a box; its name is that of a column or of a row. */
    static WidgetState box(String name) {
        return control(name).with("box_style", "").with("children", new JsonArray());
    }

    static WidgetState slider(String name) {
        return described(name)
                .with("behavior", "drag-tap")
                .with("continuous_update", true)
                .with("disabled", false)
                .with("orientation", "horizontal")
                .with("readout", true);
    }

    /** Returns a list to choose from. */
    static WidgetState selection(String name, List<String> options) {
        return described(name).with("disabled", false).with("_options_labels", strings(options));
    }

    static WidgetState checkbox() {
        return described("Checkbox")
                .with("disabled", false)
                .with("indent", true)
                .with("value", false);
    }

    static WidgetState button() {
        return control("Button")
                .with("button_style", "")
                .with("description", "")
                .with("disabled", false)
                .with("icon", "");
    }

    static WidgetState text() {
        return described("Text")
                .with("continuous_update", true)
                .with("disabled", false)
                .with("placeholder", "\u200b")
                .with("value", "");
    }

    static WidgetState html() {
        return described("HTML").with("placeholder", "\u200b").with("value", "");
    }

    private static WidgetState control(String name) {
        return new WidgetState(CONTROLS, TWO, name, CONTROLS, name + "View").inPage();
    }

    private static WidgetState described(String name) {
        return control(name).with("description", "").with("description_allow_html", false);
    }

    private WidgetState inPage() {
        return with("_dom_classes", new JsonArray()).missing(List.of("tabbable", "tooltip"));
    }

    private WidgetState missing(List<String> keys) {
        keys.forEach(key -> json.add(key, JsonNull.INSTANCE));
        return this;
    }

    WidgetState with(String key, JsonElement value) {
        json.add(key, value);
        return this;
    }

    WidgetState with(String key, String value) {
        return with(key, new JsonPrimitive(value));
    }

    WidgetState with(String key, boolean value) {
        return with(key, new JsonPrimitive(value));
    }

    WidgetState with(String key, Number value) {
        return with(key, new JsonPrimitive(value));
    }

    static JsonArray strings(List<String> texts) {
        JsonArray array = new JsonArray();
        texts.forEach(array::add);
        return array;
    }

    /** Returns how a state names another model in it. */
    static String reference(String id) {
        return "IPY_MODEL_" + id;
    }

    /** Returns the keys and values; what is put into it is part of the state. */
    JsonObject json() {
        return json;
    }
}
