package parchment.kernel.widget;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.dflib.jjava.jupyter.messages.MessageType;
import parchment.control.Control;
import parchment.control.ControlBox;
import parchment.control.OutputArea;
import parchment.display.live.Live;
import parchment.display.page.ChosenNames;
import parchment.kernel.page.CellPage;
import parchment.kernel.page.Outcome;
import parchment.kernel.page.Shown;
import parchment.kernel.protocol.Comms;
import parchment.kernel.stop.CellGuard;

/**
 * The controls of a session that are alive on a page, by the widget messaging protocol 2.1.0: which models stand for each.
 *
 * <p>A control with callbacks stands in a column with an output area of its own. What the callbacks print and show goes there as the
 * area's state, and so it is there again when a page is loaded anew. There is a most of live controls; past it the oldest are closed, and
 * the page says so. Safe for threads; no lock is held while the reader's own code draws something, because that may never end.
 *
 * @see <a href="https://www.npmjs.com/package/@jupyter-widgets/schema">messages.md of the npm package @jupyter-widgets/schema</a>
 */
public final class LiveControls {
    private static final String OUTPUTS = "outputs";
    private static final String VIEW = "application/vnd.jupyter.widget-view+json";

    /** Runs what a person set off, as a cell would run. */
    @FunctionalInterface
    public interface Runner {
        Outcome run(CellPage page, Runnable work);
    }

    private final Comms comms;
    private final Runner runner;
    private final Function<Object, Shown> forms;
    private final AliveControls alive = new AliveControls();
    private final ControlsClosed closed = new ControlsClosed();

    /** @param forms returns how the session shows a value */
    public LiveControls(Comms comms, Runner runner, Function<Object, Shown> forms) {
        this.comms = comms;
        this.runner = runner;
        this.forms = forms;
        WidgetTargets.accept(comms, this::states);
    }

    /** Brings something to life, or finds it alive; returns the form in which a page shows it. */
    public Map<String, String> open(Live live, CellPage page) {
        Map<Live, JsonArray> drawn = new IdentityHashMap<>();
        draw(live, drawn);
        CellGuard.check(); // The cell may have been left behind while it drew.
        Optional<String> view;
        List<Live> past = List.of();
        synchronized (this) {
            view = view(live, drawn);
            if (view.isPresent()) {
                alive.shownByItself(live);
                past = alive.past(live);
                past.forEach(this::close);
            }
        }
        if (!past.isEmpty()) {
            closed.told(page, past).ifPresent(words -> page.print(CellPage.Stream.STDERR, words));
        }
        return view.map(LiveControls::reference).orElse(Map.of());
    }

    private static Map<String, String> reference(String view) {
        JsonObject shown = new JsonObject();
        shown.addProperty("model_id", view);
        shown.addProperty("version_major", 2);
        shown.addProperty("version_minor", 0);
        return Map.of(VIEW, shown.toString());
    }

    /** Works out what is shown below each control at first; the reader's own code does it. */
    private void draw(Live live, Map<Live, JsonArray> drawn) {
        if (live instanceof ControlBox box) {
            box.members().forEach(member -> draw(member, drawn));
        } else if (!isWhole(live) && live instanceof OutputArea area) {
            drawn.put(live, outputs(area.shown()));
        } else if (!isWhole(live) && live instanceof Control control) {
            drawn.put(live, outputs(control.wire().shownBefore().stream().toList()));
        }
    }

    private JsonArray outputs(List<?> values) {
        JsonArray outputs = new JsonArray();
        values.forEach(value -> outputs.add(AreaPage.output(forms.apply(value))));
        return outputs;
    }

    private synchronized boolean isWhole(Live live) {
        return alive.whole(live).isPresent();
    }

    private Optional<String> view(Live live, Map<Live, JsonArray> drawn) {
        Optional<String> already = alive.whole(live).map(AliveControls.Alive::view);
        if (already.isPresent()) {
            return already;
        }
        close(live); // Something in it may be gone.
        JsonArray first = drawn.getOrDefault(live, new JsonArray());
        List<WidgetModel> models = new ArrayList<>();
        List<String> members = new ArrayList<>();
        String view;
        if (live instanceof ControlBox box) {
            box.members().forEach(member -> view(member, drawn).ifPresent(members::add));
            view = box(models, live, box.lie() == ControlBox.Lie.ROW ? "HBox" : "VBox", members);
        } else if (live instanceof ChosenNames names) {
            view = chosen(models, names);
        } else if (live instanceof OutputArea area) {
            WidgetModel output = inPage(models, live, WidgetState.output().with(OUTPUTS, first));
            area.wire().connect(values -> output.set(OUTPUTS, outputs(values)));
            view = output.id();
        } else if (live instanceof Control control) {
            Optional<WidgetForm<?>> form = WidgetForm.of(control);
            if (form.isEmpty()) {
                return Optional.empty();
            }
            view = control(models, control, form.get(), first);
        } else {
            return Optional.empty();
        }
        alive.add(live, new AliveControls.Alive(view, models, members));
        return Optional.of(view);
    }

    private <V> String control(List<WidgetModel> models, Control control, WidgetForm<V> form, JsonArray first) {
        form.state().with("style", reference(open(models, control, WidgetState.wideStyle(form.style()))));
        WidgetModel model = inPage(models, control, form.state());
        form.wire().connect(value -> model.set(form.key(), form.value()));
        if (control.label().isEmpty()) {
            return model.id(); // Nobody sets it but Java.
        }
        WidgetModel area = inPage(models, control, WidgetState.output().with(OUTPUTS, first));
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
        AreaPage page = new AreaPage(area, this);
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
        alive.remove(live).ifPresent(was -> {
            was.models().forEach(model -> comms.forget(model.id()));
            disconnect(live);
        });
    }

    private void close(Live live) {
        alive.remove(live).ifPresent(was -> {
            was.models().forEach(model -> comms.close(model.id()));
            disconnect(live);
        });
    }

    /** Shows something in every place of that name, on the pages and in the output areas of controls. */
    public void update(String name, Shown shown) {
        JsonObject output = AreaPage.named(name, shown);
        for (WidgetModel model : models()) {
            JsonArray outputs = model.array(OUTPUTS);
            if (AreaPage.replace(outputs, output)) {
                model.set(OUTPUTS, outputs);
            }
        }
    }

    private synchronized List<WidgetModel> models() {
        return alive.all().stream().flatMap(one -> one.models().stream()).toList();
    }

    private static void disconnect(Live live) {
        if (live instanceof Control control) {
            control.wire().disconnect();
        } else if (live instanceof ChosenNames names) {
            names.close();
        }
    }

    /** Returns the state of every live model, by its line. */
    JsonObject states() {
        JsonObject states = new JsonObject();
        models().forEach(model -> states.add(model.id(), model.described()));
        return states;
    }

    /** Says something to the pages in answer to what is being answered. */
    void publish(MessageType<?> type, JsonObject content) {
        comms.publish(type, content);
    }
}
