package parchment.kernel.widget;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.dflib.jjava.jupyter.messages.MessageType;
import org.jspecify.annotations.Nullable;
import parchment.display.live.Live;
import parchment.kernel.page.CellPage;
import parchment.kernel.page.Shown;
import parchment.kernel.words.CellError;

/**
 * The page of a callback: the output area of its control. What the last callback left there stays until this one has something, so that
 * a picture that follows a slider does not blink.
 */
final class AreaPage implements CellPage {
    /** More outputs than this are of no use to a reader; the first of them go. */
    private static final int MOST = 200;

    private static final long PATIENCE_NS = 150_000_000L;

    /** Under which key of an output's metadata the name of its place stands. */
    private static final String PLACE = "parchment_place";

    private final WidgetModel area;
    private final LiveControls controls;
    private final Map<String, JsonObject> outputs = new LinkedHashMap<>();
    private final StringBuilder printed = new StringBuilder();
    private @Nullable JsonObject printing;
    private boolean clearsAtNext;
    private long sent = System.nanoTime();

    AreaPage(WidgetModel area, LiveControls controls) {
        this.area = area;
        this.controls = controls;
    }

    @Override
    public synchronized void print(Stream stream, String text) {
        clearIfAsked();
        String name = stream == Stream.STDERR ? "stderr" : "stdout";
        JsonObject last = printing;
        if (last == null || !name.equals(last.get("name").getAsString())) {
            JsonObject output = new JsonObject();
            output.addProperty("output_type", "stream");
            output.addProperty("name", name);
            add(UUID.randomUUID().toString(), output);
            printing = output;
        }
        printed.append(text);
        sendFromTimeToTime();
    }

    @Override
    public synchronized void show(Shown shown) {
        show(UUID.randomUUID().toString(), shown);
    }

    @Override
    public synchronized void show(String id, Shown shown) {
        clearIfAsked();
        add(id, output(shown));
        sendFromTimeToTime();
    }

    @Override
    public synchronized void showNamed(String name, Shown shown) {
        clearIfAsked();
        add(UUID.randomUUID().toString(), named(name, shown));
        sendFromTimeToTime();
    }

    @Override
    public void update(String name, Shown shown) {
        updateHere(named(name, shown));
        controls.publish(MessageType.PUBLISH_UPDATE_DISPLAY_DATA, shown.contentUnder(name));
        controls.update(name, shown);
    }

    /** Where this callback has shown nothing yet, what the last one left is what changes, and stays. */
    private synchronized void updateHere(JsonObject output) {
        if (outputs.isEmpty() && !clearsAtNext) {
            JsonArray standing = area.array("outputs");
            if (replace(standing, output)) {
                standing.forEach(each -> add(UUID.randomUUID().toString(), each.getAsJsonObject()));
            }
        }
        outputs.replaceAll((key, each) -> isOfPlace(each, output) ? output : each);
        sendFromTimeToTime();
    }

    @Override
    public synchronized void clear() {
        clearsAtNext = true;
    }

    @Override
    public void result(Shown shown) {
        show(shown);
    }

    @Override
    public Map<String, String> live(Live value) {
        return controls.open(value, this);
    }

    @Override
    public String readLine() {
        throw new IllegalStateException(
                "What a control sets off cannot ask for a line of input. Put a TextField beside the control, and"
                        + " read its value().");
    }

    /** Says why the callback ended early. */
    synchronized void fail(String label, CellError error) {
        JsonObject output = new JsonObject();
        output.addProperty("output_type", "error");
        output.addProperty("ename", error.name());
        output.addProperty("evalue", error.message());
        JsonArray lines = new JsonArray();
        lines.add("What '" + label + "' was to do ended early:");
        error.lines().forEach(lines::add);
        output.add("traceback", lines);
        add(UUID.randomUUID().toString(), output);
    }

    /** Sends all that is there. */
    synchronized void send() {
        sent = System.nanoTime();
        writePrinted();
        JsonArray all = new JsonArray();
        outputs.values().forEach(output -> all.add(output.deepCopy()));
        area.set("outputs", all);
    }

    private void add(String key, JsonObject output) {
        endPrinted();
        outputs.put(key, output);
        if (outputs.size() > MOST) {
            outputs.remove(outputs.keySet().iterator().next());
        }
    }

    private void writePrinted() {
        if (printing != null) {
            printing.addProperty("text", printed.toString());
        }
    }

    private void endPrinted() {
        writePrinted();
        printing = null;
        printed.setLength(0);
    }

    private void clearIfAsked() {
        if (clearsAtNext) {
            clearsAtNext = false;
            endPrinted();
            outputs.clear();
        }
    }

    private void sendFromTimeToTime() {
        if (System.nanoTime() - sent > PATIENCE_NS) {
            send();
        }
    }

    /** Returns what is shown, in the form of a notebook file's outputs. */
    static JsonObject output(Shown shown) {
        JsonObject output = shown.content();
        output.addProperty("output_type", "display_data");
        return output;
    }

    /** Returns what is shown for a place with a name, so that {@link #replace} finds it. */
    static JsonObject named(String name, Shown shown) {
        JsonObject output = output(shown);
        output.getAsJsonObject("metadata").addProperty(PLACE, name);
        return output;
    }

    /** Puts an output in place of each that has a place of the same name; returns whether there was one. */
    static boolean replace(JsonArray outputs, JsonObject output) {
        boolean replaced = false;
        for (int i = 0; i < outputs.size(); i++) {
            if (isOfPlace(outputs.get(i), output)) {
                outputs.set(i, output);
                replaced = true;
            }
        }
        return replaced;
    }

    private static boolean isOfPlace(JsonElement output, JsonObject other) {
        JsonElement place = place(output);
        return place != null && place.equals(place(other));
    }

    private static @Nullable JsonElement place(JsonElement output) {
        return output.getAsJsonObject().get("metadata") instanceof JsonObject metadata ? metadata.get(PLACE) : null;
    }
}
