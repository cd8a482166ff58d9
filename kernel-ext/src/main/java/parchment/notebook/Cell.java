package parchment.notebook;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.ArrayList;
import java.util.List;

/** One cell of a notebook file. What the file holds beyond what is needed here is kept as it was. */
public final class Cell {

    /** What a cell is; anything else in a file is treated as raw. */
    public enum Kind {
        CODE,
        MARKDOWN,
        RAW
    }

    private final JsonObject json;

    Cell(JsonObject json) {
        this.json = json;
    }

    public Kind kind() {
        String type = json.has("cell_type") ? json.get("cell_type").getAsString() : "";
        return switch (type) {
            case "code" -> Kind.CODE;
            case "markdown" -> Kind.MARKDOWN;
            default -> Kind.RAW;
        };
    }

    /** Returns what was written in the cell. */
    public String source() {
        return json.has("source") ? joined(json.get("source")) : "";
    }

    /** Returns the outputs that the file holds, in order. */
    public List<CellOutput> outputs() {
        List<CellOutput> outputs = new ArrayList<>();
        if (json.has("outputs") && json.get("outputs").isJsonArray()) {
            for (JsonElement output : json.getAsJsonArray("outputs")) {
                outputs.add(CellOutput.of(output.getAsJsonObject()));
            }
        }
        return outputs;
    }

    /** Tells whether the cell carries the tag, as set in the notebook's own metadata. */
    public boolean tagged(String tag) {
        if (!json.has("metadata") || !json.get("metadata").isJsonObject()) {
            return false;
        }
        JsonElement tags = json.getAsJsonObject("metadata").get("tags");
        return tags != null && tags.isJsonArray() && tags.getAsJsonArray().contains(new JsonPrimitive(tag));
    }

    /** Returns a copy with other outputs, run under the number. */
    Cell ran(int number, List<CellOutput> outputs) {
        JsonObject copy = json.deepCopy();
        copy.addProperty("execution_count", number);
        JsonArray list = new JsonArray();
        outputs.forEach(output -> list.add(output.json(number)));
        copy.add("outputs", list);
        return new Cell(copy);
    }

    /** Returns a copy without outputs. */
    Cell notRun() {
        JsonObject copy = json.deepCopy();
        copy.add("execution_count", com.google.gson.JsonNull.INSTANCE);
        copy.add("outputs", new JsonArray());
        return new Cell(copy);
    }

    JsonObject json() {
        return json;
    }

    /** The format allows one text or a list of lines. */
    static String joined(JsonElement text) {
        if (text.isJsonArray()) {
            StringBuilder all = new StringBuilder();
            text.getAsJsonArray().forEach(line -> all.append(line.getAsString()));
            return all.toString();
        }
        return text.isJsonPrimitive() ? text.getAsString() : text.toString();
    }

    /** Writes text as the list of lines that notebook files use, so that they compare well in version control. */
    static JsonArray lines(String text) {
        JsonArray lines = new JsonArray();
        int start = 0;
        while (start < text.length()) {
            int end = text.indexOf('\n', start);
            int next = end < 0 ? text.length() : end + 1;
            lines.add(text.substring(start, next));
            start = next;
        }
        return lines;
    }
}
