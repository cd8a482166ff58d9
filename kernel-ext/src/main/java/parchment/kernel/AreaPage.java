package parchment.kernel;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;
import parchment.display.Live;

/**
 * The page of a callback: the output area of its control. What the last callback left there stays until this one has something, so that
 * a picture that follows a slider does not blink.
 */
final class AreaPage implements CellPage {
    /** More outputs than this are of no use to a reader; the first of them go. */
    private static final int MOST = 200;

    private static final long PATIENCE_NS = 150_000_000L;

    private final Consumer<JsonArray> area;
    private final LiveControls controls;
    private final Map<String, JsonObject> outputs = new LinkedHashMap<>();
    private String lastPrinted = "";
    private boolean clearsAtNext;
    private long sent = System.nanoTime();

    AreaPage(Consumer<JsonArray> area, LiveControls controls) {
        this.area = area;
        this.controls = controls;
    }

    @Override
    public synchronized void print(Stream stream, String text) {
        clearIfAsked();
        String name = stream == Stream.STDERR ? "stderr" : "stdout";
        JsonObject last = outputs.get(lastPrinted);
        if (last != null && last.get("name").getAsString().equals(name)) {
            last.addProperty("text", last.get("text").getAsString() + text);
        } else {
            JsonObject output = new JsonObject();
            output.addProperty("output_type", "stream");
            output.addProperty("name", name);
            output.addProperty("text", text);
            String key = UUID.randomUUID().toString();
            add(key, output);
            lastPrinted = key;
        }
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
        JsonArray all = new JsonArray();
        outputs.values().forEach(output -> all.add(output.deepCopy()));
        area.accept(all);
    }

    private void add(String key, JsonObject output) {
        lastPrinted = "";
        outputs.put(key, output);
        if (outputs.size() > MOST) {
            outputs.remove(outputs.keySet().iterator().next());
        }
    }

    private void clearIfAsked() {
        if (clearsAtNext) {
            clearsAtNext = false;
            lastPrinted = "";
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
        JsonObject output = ClientPage.data(shown);
        output.addProperty("output_type", "display_data");
        return output;
    }

    /** Returns several things shown, one below the other. */
    static JsonArray outputs(List<Object> values) {
        JsonArray all = new JsonArray();
        values.forEach(value -> all.add((JsonElement) output(Shown.of(value))));
        return all;
    }
}
