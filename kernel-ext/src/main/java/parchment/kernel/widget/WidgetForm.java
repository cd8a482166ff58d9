package parchment.kernel.widget;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonPrimitive;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
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
import parchment.display.live.Wire;

/**
 * A control as a model of the core widgets, and how its value is written there and read from there.
 *
 * @param state the model's state, with the value that the control has
 * @param style the name of the style that goes with it
 * @param key under which the state holds the value; empty if it holds none
 * @param written how a value is written
 * @param read how a value is read; nothing if it is none that the control can have
 */
record WidgetForm<V>(
        WidgetState state,
        String style,
        String key,
        Wire<V> wire,
        Function<V, JsonElement> written,
        Function<JsonElement, Optional<V>> read) {

    private static final String VALUE = "value";
    private static final String INDEX = "index";

    WidgetForm {
        if (!key.isEmpty()) {
            state.with(key, written.apply(wire.value()));
        }
    }

    /** Takes a value that came from a page; returns false if it is none that the control can have. */
    boolean take(JsonElement value) {
        Optional<V> fitting;
        try {
            fitting = read.apply(value);
        } catch (RuntimeException e) { // Of another type than the schema says.
            fitting = Optional.empty();
        }
        fitting.ifPresent(wire::take);
        return fitting.isPresent();
    }

    /** Returns the value as it is now, as the state holds it. */
    JsonElement value() {
        return written.apply(wire.value());
    }

    /** Returns the form of any control but an output area, which holds more than a value. */
    static Optional<WidgetForm<?>> of(Control control) {
        if (control instanceof Slider slider) {
            return Optional.of(slider(slider));
        } else if (control instanceof CountSlider slider) {
            return Optional.of(slider(slider));
        } else if (control instanceof RangeSlider slider) {
            return Optional.of(slider(slider));
        } else if (control instanceof Choice choice) {
            return Optional.of(choice(choice));
        } else if (control instanceof Choices choices) {
            return Optional.of(choices(choices));
        } else if (control instanceof CheckBox box) {
            return Optional.of(new WidgetForm<>(
                    WidgetState.checkbox().with("description", box.label()).with("indent", false),
                    "CheckboxStyle",
                    VALUE,
                    box.wire(),
                    JsonPrimitive::new,
                    json -> json.getAsJsonPrimitive().isBoolean()
                            ? Optional.of(json.getAsBoolean())
                            : Optional.empty()));
        } else if (control instanceof Button button) {
            return Optional.of(new WidgetForm<>(
                    WidgetState.button().with("description", button.label()),
                    "ButtonStyle",
                    "",
                    button.wire(),
                    JsonPrimitive::new,
                    json -> Optional.empty()));
        } else if (control instanceof TextField field) {
            return Optional.of(new WidgetForm<>(
                    WidgetState.text().with("description", field.label()).with("continuous_update", false),
                    "TextStyle",
                    VALUE,
                    field.wire(),
                    JsonPrimitive::new,
                    WidgetForm::text));
        } else if (control instanceof HtmlNote note) {
            return Optional.of(new WidgetForm<>(
                    WidgetState.html(), "HTMLStyle", VALUE, note.wire(), JsonPrimitive::new, json -> Optional.empty()));
        }
        return Optional.empty();
    }

    private static Optional<String> text(JsonElement json) {
        return json.getAsJsonPrimitive().isString() ? Optional.of(json.getAsString()) : Optional.empty();
    }

    private static double number(JsonElement json) {
        if (!json.isJsonPrimitive() || !json.getAsJsonPrimitive().isNumber()) {
            throw new IllegalArgumentException("It is no number.");
        }
        return json.getAsDouble();
    }

    private static int whole(JsonElement json) {
        double number = number(json);
        if (number != Math.rint(number) || Math.abs(number) > Integer.MAX_VALUE) {
            throw new IllegalArgumentException("It is no whole number.");
        }
        return (int) number;
    }

    private static WidgetForm<Double> slider(Slider slider) {
        return new WidgetForm<>(
                WidgetState.slider("FloatSlider")
                        .with("description", slider.label())
                        .with("min", slider.low())
                        .with("max", slider.high())
                        .with("step", slider.step())
                        .with("readout_format", "." + slider.digits() + "f"),
                "SliderStyle",
                VALUE,
                slider.wire(),
                JsonPrimitive::new,
                json -> Optional.of(number(json)).filter(v -> v >= slider.low() && v <= slider.high()));
    }

    private static WidgetForm<Integer> slider(CountSlider slider) {
        return new WidgetForm<>(
                WidgetState.slider("IntSlider")
                        .with("description", slider.label())
                        .with("min", slider.low())
                        .with("max", slider.high())
                        .with("step", 1)
                        .with("readout_format", "d"),
                "SliderStyle",
                VALUE,
                slider.wire(),
                JsonPrimitive::new,
                json -> Optional.of(whole(json)).filter(v -> v >= slider.low() && v <= slider.high()));
    }

    private static WidgetForm<RangeSlider.Between> slider(RangeSlider slider) {
        return new WidgetForm<>(
                WidgetState.slider("FloatRangeSlider")
                        .with("description", slider.label())
                        .with("min", slider.low())
                        .with("max", slider.high())
                        .with("step", slider.step())
                        .with("readout_format", "." + slider.digits() + "f"),
                "SliderStyle",
                VALUE,
                slider.wire(),
                range -> {
                    JsonArray ends = new JsonArray();
                    ends.add(range.from());
                    ends.add(range.to());
                    return ends;
                },
                json -> Optional.of(new RangeSlider.Between(
                                number(json.getAsJsonArray().get(0)),
                                number(json.getAsJsonArray().get(1))))
                        .filter(range -> json.getAsJsonArray().size() == 2
                                && range.from() >= slider.low()
                                && range.to() >= range.from()
                                && range.to() <= slider.high()));
    }

    private static WidgetForm<String> choice(Choice choice) {
        List<String> options = choice.options();
        return new WidgetForm<>(
                WidgetState.selection("Dropdown", options).with("description", choice.label()),
                "DescriptionStyle",
                INDEX,
                choice.wire(),
                option -> new JsonPrimitive(options.indexOf(option)),
                json -> at(options, json));
    }

    private static WidgetForm<List<String>> choices(Choices choices) {
        List<String> options = choices.options();
        return new WidgetForm<>(
                WidgetState.selection("SelectMultiple", options)
                        .with("description", choices.label())
                        .with("rows", Math.min(8, Math.max(2, options.size()))),
                "DescriptionStyle",
                INDEX,
                choices.wire(),
                chosen -> {
                    JsonArray places = new JsonArray();
                    chosen.forEach(option -> places.add(options.indexOf(option)));
                    return places;
                },
                json -> {
                    List<String> chosen = new ArrayList<>();
                    for (JsonElement place : json.getAsJsonArray()) {
                        chosen.add(at(options, place).orElseThrow());
                    }
                    return Optional.of(options.stream().filter(chosen::contains).toList());
                });
    }

    private static Optional<String> at(List<String> options, JsonElement place) {
        int index = whole(place);
        return index >= 0 && index < options.size() ? Optional.of(options.get(index)) : Optional.empty();
    }
}
