package parchment.kernel.cell;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.util.ArrayList;
import java.util.List;

/** The code of a notebook's file, cell by cell. */
final class NotebookCode {
    private NotebookCode() {}

    /** @throws IllegalArgumentException if the text is no notebook */
    static List<String> of(String text) {
        List<String> cells = new ArrayList<>();
        try {
            JsonArray all = JsonParser.parseString(text).getAsJsonObject().getAsJsonArray("cells");
            for (JsonElement each : all) {
                JsonObject cell = each.getAsJsonObject();
                if (cell.get("cell_type").getAsString().equals("code")) {
                    cells.add(source(cell.get("source")));
                }
            }
        } catch (JsonParseException | IllegalStateException | NullPointerException | ClassCastException e) {
            throw new IllegalArgumentException("It is not a whole notebook.", e);
        }
        return cells;
    }

    private static String source(JsonElement source) {
        if (!source.isJsonArray()) {
            return source.getAsString();
        }
        StringBuilder text = new StringBuilder();
        source.getAsJsonArray().forEach(line -> text.append(line.getAsString()));
        return text.toString();
    }
}
