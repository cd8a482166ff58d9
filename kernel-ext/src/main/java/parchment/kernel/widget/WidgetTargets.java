package parchment.kernel.widget;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.function.Supplier;
import parchment.kernel.protocol.Comms;

/** The targets of the widget protocols on which clients open lines. */
final class WidgetTargets {
    /** Where the kernel opens a line for each model; a client cannot make a control of Java, so its own are closed. */
    static final String WIDGET = "jupyter.widget";

    /** Where a client asks for all states at once; control messaging protocol 1.0. */
    private static final String CONTROL = "jupyter.widget.control";

    /** Where clients of protocol 1 ask whether they are understood. */
    private static final String VERSION = "jupyter.widget.version";

    /** No client of protocol 1 has this version, so each of them knows that it is not understood. */
    private static final String NEEDED = ">=3.0.0";

    private WidgetTargets() {}

    /** @param states returns the state of every live model, by its line */
    static void accept(Comms comms, Supplier<JsonObject> states) {
        comms.accept(CONTROL, id -> (data, haste) -> {
            JsonElement method = data.get("method");
            if (method != null
                    && method.isJsonPrimitive()
                    && method.getAsString().equals("request_states")) {
                JsonObject reply = new JsonObject();
                reply.addProperty("method", "update_states");
                reply.add("states", states.get());
                reply.add("buffer_paths", new JsonArray());
                comms.say(id, reply);
            }
        });
        comms.accept(VERSION, id -> new Comms.Line() {
            @Override
            public void opened() {
                JsonObject needed = new JsonObject();
                needed.addProperty("version", NEEDED);
                comms.say(id, needed);
            }

            @Override
            public void said(JsonObject data, Comms.Haste haste) {
                // Whether the client holds itself to be understood changes nothing here.
            }
        });
    }
}
