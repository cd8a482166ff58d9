package parchment.kernel;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import parchment.control.Control;
import parchment.control.ControlBox;
import parchment.control.OutputArea;
import parchment.display.ChosenNames;
import parchment.display.Live;

/**
 * The controls of a session that are alive on a page, by the widget messaging protocol 2.1.0: which models stand for each.
 *
 * <p>A control with callbacks stands in a column with an output area of its own. What the callbacks print and show goes there as the
 * area's state, and so it is there again when a page is loaded anew. There is a most of live controls; past it the oldest are closed, and
 * the page says so.
 *
 * @see <a href="https://www.npmjs.com/package/@jupyter-widgets/schema">messages.md of the npm package @jupyter-widgets/schema</a>
 */
final class LiveControls {
    static final int MOST = 200;

    private static final String VIEW = "application/vnd.jupyter.widget-view+json";

    /** Runs what a person set off, as a cell would run. */
    @FunctionalInterface
    interface Runner {
        Outcome run(CellPage page, Runnable work);
    }

    private record Alive(String view, List<WidgetModel> models) {}

    private final Comms comms;
    private final Runner runner;
    private final Map<Live, Alive> alive = new LinkedHashMap<>();
    private final ControlsClosed closed = new ControlsClosed();

    LiveControls(Comms comms, Runner runner) {
        this.comms = comms;
        this.runner = runner;
        WidgetTargets.accept(comms, this::states);
    }

    /** Brings something to life, or finds it alive; returns the form in which a page shows it. */
    synchronized Map<String, String> open(Live live, CellPage page) {
        Optional<String> view = view(live, page);
        if (view.isEmpty()) {
            return Map.of();
        }
        JsonObject shown = new JsonObject();
        shown.addProperty("model_id", view.get());
        shown.addProperty("version_major", 2);
        shown.addProperty("version_minor", 0);
        return Map.of(VIEW, shown.toString());
    }

    private Optional<String> view(Live live, CellPage page) {
        Alive already = alive.get(live);
        if (already != null) {
            return Optional.of(already.view());
        }
        List<WidgetModel> models = new ArrayList<>();
        String view;
        if (live instanceof ControlBox box) {
            List<String> members = new ArrayList<>();
            box.members().forEach(member -> view(member, page).ifPresent(members::add));
            view = box(models, live, box.lie() == ControlBox.Lie.ROW ? "HBox" : "VBox", members);
        } else if (live instanceof ChosenNames names) {
            view = chosen(models, names);
        } else if (live instanceof OutputArea area) {
            WidgetModel output =
                    inPage(models, live, WidgetState.output().with("outputs", AreaPage.outputs(area.shown())));
            area.wire().connect(values -> output.set("outputs", AreaPage.outputs(values)));
            view = output.id();
        } else if (live instanceof Control control) {
            Optional<WidgetForm<?>> form = WidgetForm.of(control);
            if (form.isEmpty()) {
                return Optional.empty();
            }
            view = control(models, control, form.get());
        } else {
            return Optional.empty();
        }
        alive.put(live, new Alive(view, models));
        closeOldest(page);
        return Optional.of(view);
    }

    private <V> String control(List<WidgetModel> models, Control control, WidgetForm<V> form) {
        form.state().with("style", reference(open(models, control, WidgetState.wideStyle(form.style()))));
        WidgetModel model = inPage(models, control, form.state());
        form.wire().connect(value -> model.set(form.key(), form.value()));
        if (control.label().isEmpty()) {
            return model.id(); // Nobody sets it but Java.
        }
        JsonArray first = new JsonArray();
        form.wire().shownBefore().ifPresent(value -> first.add(AreaPage.output(Shown.of(value))));
        WidgetModel area = inPage(models, control, WidgetState.output().with("outputs", first));
        model.listen(new WidgetModel.Listener() {
            @Override
            public boolean set(JsonObject state) {
                JsonElement value = state.get(form.key());
                if (value == null || !form.take(value)) {
                    return false;
                }
                state.add(form.key(), form.value());
                return true;
            }

            @Override
            public void setLast() {
                tell(control, form.wire()::tell, area);
            }

            @Override
            public void custom(JsonObject content) {
                JsonElement event = content.get("event");
                if (control instanceof parchment.control.Button button
                        && event != null
                        && event.isJsonPrimitive()
                        && event.getAsString().equals("click")) {
                    button.wire().take(button.presses() + 1);
                    tell(control, button.wire()::tell, area);
                }
            }
        });
        return box(models, control, "VBox", List.of(model.id(), area.id()));
    }

    /** Runs the callbacks; whatever goes wrong in them is said in the control's output area. */
    private void tell(Control control, Runnable work, WidgetModel area) {
        AreaPage page = new AreaPage(outputs -> area.set("outputs", outputs), this);
        Outcome outcome = runner.run(page, work);
        outcome.error().ifPresent(error -> page.fail(control.label(), error));
        page.send();
    }

    /** A sentence, and a field that nobody sees: the page that the choice is made on writes into it. */
    private String chosen(List<WidgetModel> models, ChosenNames names) {
        WidgetState words = WidgetState.html()
                .with("value", names.html().orElse(""))
                .with("style", reference(open(models, names, WidgetState.style("HTMLStyle"))));
        WidgetModel sentence = inPage(models, names, words);
        JsonObject first = new JsonObject();
        first.addProperty("told", 0);
        first.add("chosen", WidgetState.strings(names.names()));
        WidgetState text = WidgetState.text()
                .with("value", first.toString())
                .with("description", "chosen")
                .with("_dom_classes", WidgetState.strings(List.of(names.place())))
                .with("style", reference(open(models, names, WidgetState.style("TextStyle"))))
                .with(
                        "layout",
                        reference(open(models, names, WidgetState.layout().with("display", "none"))));
        WidgetModel field = open(models, names, text);
        field.listen(state -> {
            JsonElement value = state.get("value");
            List<String> chosen = new ArrayList<>();
            try {
                JsonParser.parseString(value.getAsString())
                        .getAsJsonObject()
                        .getAsJsonArray("chosen")
                        .forEach(name -> chosen.add(name.getAsString()));
            } catch (RuntimeException e) { // Not what our page writes.
                return false;
            }
            names.take(chosen);
            sentence.set("value", new JsonPrimitive(names.html().orElse("")));
            return true;
        });
        return box(models, names, "VBox", List.of(sentence.id(), field.id()));
    }

    private String box(List<WidgetModel> models, Live of, String name, List<String> members) {
        JsonArray children = new JsonArray();
        members.forEach(member -> children.add(WidgetState.reference(member)));
        return inPage(models, of, WidgetState.box(name).with("children", children))
                .id();
    }

    private WidgetModel inPage(List<WidgetModel> models, Live of, WidgetState state) {
        return open(models, of, state.with("layout", reference(open(models, of, WidgetState.layout()))));
    }

    private static String reference(WidgetModel model) {
        return WidgetState.reference(model.id());
    }

    private WidgetModel open(List<WidgetModel> models, Live of, WidgetState state) {
        WidgetModel model = new WidgetModel(comms, UUID.randomUUID().toString(), state.json(), () -> left(of));
        model.open();
        models.add(model);
        return model;
    }

    /** A client has closed a model, or could not make it: what it belongs to no longer answers. */
    private synchronized void left(Live live) {
        Alive was = alive.remove(live);
        if (was != null) {
            was.models().forEach(model -> comms.forget(model.id()));
            disconnect(live);
        }
    }

    private void closeOldest(CellPage page) {
        while (alive.size() > MOST) {
            Live oldest = alive.keySet().iterator().next();
            Alive was = alive.remove(oldest);
            if (was != null) {
                was.models().forEach(model -> comms.close(model.id()));
            }
            disconnect(oldest);
            closed.one(page, oldest).ifPresent(words -> page.print(CellPage.Stream.STDERR, words));
        }
    }

    private static void disconnect(Live live) {
        if (live instanceof Control control) {
            control.wire().disconnect();
        } else if (live instanceof ChosenNames names) {
            names.close();
        }
    }

    /** Returns the state of every live model, by its line. */
    private synchronized JsonObject states() {
        JsonObject states = new JsonObject();
        alive.values().forEach(one -> one.models().forEach(model -> states.add(model.id(), model.described())));
        return states;
    }
}
