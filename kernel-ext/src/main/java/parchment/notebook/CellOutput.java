package parchment.notebook;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import parchment.kernel.page.CellPage;
import parchment.kernel.page.Shown;
import parchment.kernel.words.CellError;

/** One output of a code cell. */
public sealed interface CellOutput {

    /** Text that the cell printed. */
    record Printed(CellPage.Stream stream, String text) implements CellOutput {
        @Override
        public JsonObject json(int number) {
            JsonObject json = new JsonObject();
            json.addProperty("output_type", "stream");
            json.addProperty("name", stream == CellPage.Stream.STDERR ? "stderr" : "stdout");
            json.add("text", Cell.lines(text));
            return json;
        }
    }

    /** Something shown while the cell ran. */
    record Display(Shown shown) implements CellOutput {
        @Override
        public JsonObject json(int number) {
            JsonObject json = new JsonObject();
            json.addProperty("output_type", "display_data");
            json.add("data", data(shown));
            json.add("metadata", new JsonObject());
            return json;
        }
    }

    /** The value of the last line. */
    record Result(Shown shown) implements CellOutput {
        @Override
        public JsonObject json(int number) {
            JsonObject json = new JsonObject();
            json.addProperty("output_type", "execute_result");
            json.addProperty("execution_count", number);
            json.add("data", data(shown));
            json.add("metadata", new JsonObject());
            return json;
        }
    }

    /** Why the cell failed. */
    record Failed(CellError error) implements CellOutput {
        @Override
        public JsonObject json(int number) {
            JsonObject json = new JsonObject();
            json.addProperty("output_type", "error");
            json.addProperty("ename", error.name());
            json.addProperty("evalue", error.message());
            JsonArray lines = new JsonArray();
            error.lines().forEach(lines::add);
            json.add("traceback", lines);
            return json;
        }
    }

    /** Returns the output as a notebook file holds it. */
    JsonObject json(int number);

    private static JsonObject data(Shown shown) {
        return shown.data(Cell::lines);
    }

    /** Reads an output from a notebook file. */
    static CellOutput of(JsonObject json) {
        String type = json.has("output_type") ? json.get("output_type").getAsString() : "";
        switch (type) {
            case "stream" -> {
                boolean err = json.has("name") && json.get("name").getAsString().equals("stderr");
                return new Printed(
                        err ? CellPage.Stream.STDERR : CellPage.Stream.STDOUT, Cell.joined(json.get("text")));
            }
            case "error" -> {
                List<String> lines = new ArrayList<>();
                json.getAsJsonArray("traceback").forEach(line -> lines.add(line.getAsString()));
                return new Failed(new CellError(
                        json.get("ename").getAsString(), json.get("evalue").getAsString(), lines));
            }
            default -> {
                Map<String, String> forms = new LinkedHashMap<>();
                if (json.has("data")) {
                    json.getAsJsonObject("data")
                            .entrySet()
                            .forEach(entry -> forms.put(
                                    entry.getKey(),
                                    Shown.isJson(entry.getKey())
                                            ? entry.getValue().toString()
                                            : Cell.joined(entry.getValue())));
                }
                return type.equals("execute_result") ? new Result(new Shown(forms)) : new Display(new Shown(forms));
            }
        }
    }
}
