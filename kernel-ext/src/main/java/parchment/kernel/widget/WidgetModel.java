package parchment.kernel.widget;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.Map;
import java.util.Set;
import parchment.kernel.protocol.Comms;

/** One live model: its line, its state, and what is done when a client sets a part of the state. */
final class WidgetModel implements Comms.Line {
    private static final Map<String, Object> VERSION = Map.of("version", "2.1.0");

    /** The parts of a state that a person sets at a page; everything else is Java's. */
    private static final Set<String> VALUES = Set.of("value", "index");

    /** Hears what a person does at the page. */
    @FunctionalInterface
    interface Listener {
        /** Takes what a client has set, and puts in its place what was taken of it; returns false if it cannot be. */
        boolean set(JsonObject state);

        /** Is told after {@link #set}, unless something newer waits. */
        default void setLast() {}

        /** Takes a message of a kind of its own. */
        default void custom(JsonObject content) {}
    }

    private final Comms comms;
    private final String id;
    private final JsonObject state;
    private final Runnable left;
    private Listener listener = set -> false;

    /** @param left is called when the clients' end is gone */
    WidgetModel(Comms comms, String id, JsonObject state, Runnable left) {
        this.comms = comms;
        this.id = id;
        this.state = state;
        this.left = left;
    }

    void listen(Listener other) {
        listener = other;
    }

    String id() {
        return id;
    }

    void open() {
        JsonObject data = new JsonObject();
        data.add("state", copy());
        data.add("buffer_paths", new JsonArray());
        comms.open(id, WidgetTargets.WIDGET, data, VERSION, this);
    }

    /** Sets one part of the state from here; the clients follow. */
    void set(String key, JsonElement value) {
        JsonObject changed = new JsonObject();
        changed.add(key, value);
        keep(changed);
        comms.say(id, Comms.state("update", changed));
    }

    /** Returns a copy of a part of the state that is a list; an empty one if there is none. */
    JsonArray array(String key) {
        return copy().get(key) instanceof JsonArray array ? array : new JsonArray();
    }

    /** Returns the state with the names that a client needs to make the model from it. */
    JsonObject described() {
        JsonObject described = new JsonObject();
        JsonObject now = copy();
        described.add("model_name", now.get("_model_name"));
        described.add("model_module", now.get("_model_module"));
        described.add("model_module_version", now.get("_model_module_version"));
        described.add("state", now);
        return described;
    }

    private synchronized JsonObject copy() {
        return state.deepCopy();
    }

    private synchronized void keep(JsonObject changed) {
        changed.entrySet()
                .forEach(entry -> state.add(entry.getKey(), entry.getValue().deepCopy()));
    }

    @Override
    public void said(JsonObject data, Comms.Haste haste) {
        JsonElement method = data.get("method");
        switch (method != null && method.isJsonPrimitive() ? method.getAsString() : "") {
            case "request_state" -> comms.say(id, Comms.state("update", copy()));
            case "update" -> {
                if (data.get("state") instanceof JsonObject changed) {
                    changed(changed, haste);
                }
            }
            case "custom" -> {
                if (data.get("content") instanceof JsonObject content) {
                    listener.custom(content);
                }
            }
            default -> {
                // A method of a later protocol.
            }
        }
    }

    private void changed(JsonObject changed, Comms.Haste haste) {
        JsonObject refused = copy();
        refused.keySet().retainAll(changed.keySet());
        changed.keySet().retainAll(state.keySet());
        changed.keySet().retainAll(VALUES);
        if (listener.set(changed)) {
            refused.keySet().removeAll(changed.keySet());
            keep(changed);
            // So that another client that shows the same control follows.
            comms.say(id, Comms.state("echo_update", changed));
            if (haste == Comms.Haste.NEWEST) {
                listener.setLast();
            }
        }
        if (refused.size() > 0) {
            comms.say(id, Comms.state("update", refused));
        }
    }

    @Override
    public void closed() {
        left.run();
    }
}
